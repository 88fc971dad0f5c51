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
    let kinds: Vec<AnyView> = view
        .kinds
        .into_iter()
        .map(|kind| of_kind(kind, &limits))
        .collect();
    let honest = |told: &'static str| view! { <p class="honest">{told}</p> }.into_any();
    view! {
        <Bar id here=Sheet::Findings/>
        <div class="sheet findings">
            <h1>"Findings"</h1>
            {honest(present::COMPARED_AS_READ)}
            {view.blind.map(honest)}
            {view.contradiction.map(|told| view! { <p class="notice">{told}</p> }.into_any())}
            {kinds}
            {outside(view.outside_layout)}
            <p class="caution">
                "The service manual comes first. Cracks, heat colour and stretched bolts are not a \
                measuring question: have cranks, rods and bolts crack-tested before they are used again."
            </p>
        </div>
    }
}

fn outside(readings: Vec<String>) -> Option<AnyView> {
    let row = |row: String| view! { <li>{row}</li> }.into_any();
    (!readings.is_empty()).then(|| {
        let rows: Vec<AnyView> = readings.into_iter().map(row).collect();
        view! {
            <section data-testid="outside-layout">
                <h2>"Outside the layout"</h2>
                <p>"Kept and exported, but the layout has no such feature."</p>
                <ul>{rows}</ul>
            </section>
        }
        .into_any()
    })
}

fn of_kind(kind: KindView, limits: &str) -> AnyView {
    let features: Vec<AnyView> = kind.features.into_iter().map(of_feature).collect();
    let told = if kind.limits.is_empty() {
        view! { <p><a href=limits.to_owned()>"No limits given yet: enter those of the manual"</a></p> }.into_any()
    } else {
        let row = |row: present::LimitRow| {
            view! { <li><b>{row.quantity}</b>": "{row.text}</li> }.into_any()
        };
        let rows: Vec<AnyView> = kind.limits.into_iter().map(row).collect();
        let source = if kind.source.is_empty() {
            "not noted".to_owned()
        } else {
            kind.source
        };
        view! {
            <details class="limits-used">
                <summary>"Limits used"</summary>
                <ul>{rows}</ul>
                <p>"Source: "{source}</p>
            </details>
        }
        .into_any()
    };
    view! { <section data-testid="kind"><h2>{kind.title}</h2>{told}{features}</section> }.into_any()
}

fn of_feature(feature: FeatureView) -> AnyView {
    let rows: Vec<AnyView> = feature.rows.into_iter().map(row).collect();
    let missing = (!feature.missing.is_empty()).then(|| {
        let missing = feature.missing.join("; ");
        view! { <p class="missing">"Not read: "{missing}"."</p> }.into_any()
    });
    view! {
        <details class="feature-findings" data-testid="feature-findings">
            <summary>
                <MarkSign mark=feature.mark/>
                <b>{feature.title}</b>
                <span>{feature.words}</span>
            </summary>
            <table>
                <thead>
                    <tr><th scope="col">"What"</th><th scope="col">"Value"</th><th scope="col">"Reads"</th></tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
            {missing}
        </details>
    }
    .into_any()
}

fn row(row: FindingRow) -> AnyView {
    let sense = row
        .sense
        .map(|sense| view! { <small>{sense}</small> }.into_any());
    view! {
        <tr data-testid="finding">
            <th scope="row">{row.label}</th>
            <td class="number">{row.value}{sense}</td>
            <td class="reads"><MarkSign mark=row.mark/><span>{row.words}</span></td>
        </tr>
    }
    .into_any()
}
