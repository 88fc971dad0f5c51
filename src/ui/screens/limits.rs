//! The limits of the manual, by kind.

use leptos::prelude::*;

use crate::present::{self, LimitsForm};
use crate::quantity::Unit;
use crate::session::{Kind, SessionId};
use crate::ui::parts::bar::{Bar, SavedWord};
use crate::ui::state::{Change, State};
use crate::ui::way::Sheet;

/// A form for each kind.
#[component]
pub fn Limits(id: SessionId) -> impl IntoView {
    let forms = Kind::ALL.map(|kind| view! { <OfKind kind/> });
    view! {
        <Bar id here=Sheet::Limits/>
        <div class="sheet">
            <h1>"Limits"</h1>
            <p>
                "From your own service manual, in its unit, as printed. Leave blank what it does \
                not give. A value equal to a limit is inside it."
            </p>
            {forms.collect_view()}
        </div>
    }
}

#[component]
fn OfKind(kind: Kind) -> impl IntoView {
    let state = State::get();
    let start = state.peek(|s, _| LimitsForm::of(s, kind));
    let Some(start) = start else {
        return ().into_any();
    };
    let form = RwSignal::new(start);
    let said = RwSignal::new(None::<Result<(), String>>);
    let save = move |_| {
        let edit = state.peek(|s, _| form.with_untracked(|form| form.edit(s)));
        let done = match edit {
            Some(Ok(edit)) => state.change(Change::Edit(&edit)).map(|_| ()),
            Some(Err(why)) => Err(why),
            None => Ok(()),
        };
        said.set(Some(done));
    };
    let count = form.with_untracked(|form| form.rows.len());
    let rows = (0..count).map(|at| view! { <Row form at said/> });
    let units = Unit::ALL.map(|unit| {
        let chosen = move || form.with(|form| form.unit == unit);
        let choose = move |_| form.update(|form| form.unit = unit);
        view! {
            <label class="choice">
                <input type="radio" name=format!("unit-{}", kind.key()) prop:checked=chosen on:change=choose/>
                <span>{unit.sign()}</span>
            </label>
        }
    });
    view! {
        <section class="limits" data-testid=format!("limits-{}", kind.key())>
            <h2>{present::kind_plural(kind)}</h2>
            <fieldset class="choices"><legend>"Unit of the manual"</legend>{units.collect_view()}</fieldset>
            <div class="rows">{rows.collect_view()}</div>
            <label class="field">
                <span>"Source: manual, page"</span>
                <input
                    type="text"
                    maxlength="200"
                    prop:value=move || form.with(|form| form.source.clone())
                    on:input=move |event| form.update(|form| form.source = event_target_value(&event))
                />
            </label>
            <p class="actions">
                <button type="button" class="main" on:click=save>"Keep these limits"</button>
                {move || said.get().map(|said| match said {
                    Ok(()) => view! { <span role="status">"Kept, "<SavedWord/></span> }.into_any(),
                    Err(why) => view! { <span class="refusal" role="alert">{why}</span> }.into_any(),
                })}
            </p>
        </section>
    }
    .into_any()
}

#[component]
fn Row(
    form: RwSignal<LimitsForm>,
    at: usize,
    said: RwSignal<Option<Result<(), String>>>,
) -> impl IntoView {
    let row = form.with_untracked(|form| form.rows.get(at).cloned());
    row.map(|row| {
        let text = move || form.with(|f| f.rows.get(at).map(|r| r.text.clone()).unwrap_or_default());
        let typed = move |event| {
            said.set(None);
            form.update(|form| {
                if let Some(row) = form.rows.get_mut(at) {
                    row.text = event_target_value(&event);
                }
            });
        };
        view! {
            <label class="field limit">
                <span><b>{row.quantity}</b>", "{row.bound}</span>
                <input type="text" inputmode="decimal" autocomplete="off" maxlength="16" prop:value=text on:input=typed/>
            </label>
        }
    })
}
