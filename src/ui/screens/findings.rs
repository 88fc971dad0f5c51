//! What the readings say, by kind and feature.

use leptos::prelude::*;

use crate::present::{self, FeatureView, FindingRow, KindView};
use crate::session::SessionId;
use crate::ui::parts::bar::Bar;
use crate::ui::parts::mark::MarkSign;
use crate::ui::state::State;
use crate::ui::way::{Sheet, sheet_address};

/// All findings.
#[component]
pub fn Findings(id: SessionId) -> impl IntoView {
    let state = State::get();
    let view = state.peek(present::findings).unwrap_or_default();
    let limits = sheet_address(&id, Sheet::Limits);
    let kinds = view.kinds.into_iter();
    let kinds = kinds.map(|kind| view! { <OfKind kind limits=limits.clone()/> });
    let outside = (!view.outside_layout.is_empty()).then(|| {
        let rows = view.outside_layout.into_iter();
        view! {
            <section>
                <h2>"Outside the layout"</h2>
                <p>"Kept and exported, but no feature of the layout has them."</p>
                <ul>{rows.map(|row| view! { <li>{row}</li> }).collect_view()}</ul>
            </section>
        }
    });
    view! {
        <Bar id here=Sheet::Findings/>
        <div class="sheet findings">
            <h1>"Findings"</h1>
            <p class="honest">{present::COMPARED_AS_READ}</p>
            {view.blind.map(|told| view! { <p class="honest">{told}</p> })}
            {view.contradiction.map(|told| view! { <p class="notice">{told}</p> })}
            {kinds.collect_view()}
            {outside}
            <p class="caution">
                "The service manual comes first. Cracks, heat colour and stretched bolts are not a \
                measuring question: have cranks, rods and bolts crack-tested before they are used again."
            </p>
        </div>
    }
}

#[component]
fn OfKind(kind: KindView, limits: String) -> impl IntoView {
    let KindView { title, source, features, .. } = kind;
    let given = kind.limits.into_iter().map(|row| {
        view! { <li><b>{row.quantity}</b>": "{row.text}</li> }
    });
    let given = given.collect_view();
    let told = if given.is_empty() {
        view! { <p><a href=limits>"No limits given yet: enter those of the manual"</a></p> }.into_any()
    } else {
        let source = if source.is_empty() { "no source noted".to_owned() } else { source };
        view! {
            <details class="limits-used">
                <summary>"Limits used"</summary>
                <ul>{given}</ul>
                <p>"Source: "{source}</p>
            </details>
        }
        .into_any()
    };
    let features = features.into_iter().map(|feature| view! { <OfFeature feature/> });
    view! {
        <section data-testid="kind">
            <h2>{title}</h2>
            {told}
            {features.collect_view()}
        </section>
    }
}

#[component]
fn OfFeature(feature: FeatureView) -> impl IntoView {
    let FeatureView { title, mark, words, rows, missing } = feature;
    let rows = rows.into_iter().map(|row| view! { <Row row/> });
    let missing = (!missing.is_empty()).then(|| view! {
        <p class="missing">"Not read: "{missing.join("; ")}"."</p>
    });
    view! {
        <details class="feature-findings" data-testid="feature-findings" data-mark=mark.key()>
            <summary>
                <MarkSign mark/>
                <b>{title}</b>
                <span>{words}</span>
            </summary>
            <table>
                <thead>
                    <tr><th scope="col">"What"</th><th scope="col">"Value"</th><th scope="col">"Reads"</th></tr>
                </thead>
                <tbody>{rows.collect_view()}</tbody>
            </table>
            {missing}
        </details>
    }
}

#[component]
fn Row(row: FindingRow) -> impl IntoView {
    let FindingRow { label, value, sense, mark, words } = row;
    view! {
        <tr data-testid="finding">
            <th scope="row">{label}</th>
            <td class="number">{value}{sense.map(|sense| view! { <small>{sense}</small> })}</td>
            <td class="reads"><MarkSign mark/><span>{words}</span></td>
        </tr>
    }
}
