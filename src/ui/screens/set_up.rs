//! Layout, gauges and handing on of a session.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::set_up_fields::SetUpFields;
use crate::present::{self, NewSession};
use crate::quantity::{Entered, Unit};
use crate::session::{Edit, Gauge, SessionId, Stamp};
use crate::store::file;
use crate::ui::parts::bar::{Bar, SavedWord};
use crate::ui::parts::notices::ExportButton;
use crate::ui::state::{Change, State};
use crate::ui::way::Sheet;

/// The set-up of a session.
#[component]
pub fn SetUp(id: SessionId) -> impl IntoView {
    let state = State::get();
    let start = state.peek(|s, _| NewSession::of(s)).unwrap_or_default();
    let form = RwSignal::new(start.clone());
    let said = RwSignal::new(None::<String>);
    // Every change is an edit of its own and can be undone.
    Effect::new(move |_| {
        let now = form.get();
        let edit = state.peek(|s, _| now.edit(s));
        let done = now.check().and_then(|()| match edit {
            Some(Edit::Batch(edits)) if edits.is_empty() => Ok(None),
            Some(edit) => state.change(Change::Edit(&edit)),
            None => Ok(None),
        });
        said.set(done.err());
    });
    let gauges = state.peek(|s, _| {
        let gauges = s.gauges.iter();
        gauges.map(|(id, g)| (*id, g.value.clone())).collect::<Vec<_>>()
    });
    let gauges = gauges.unwrap_or_default().into_iter();
    view! {
        <Bar id here=Sheet::SetUp/>
        <div class="sheet">
            <h1>"Set-up"</h1>
            <SetUpFields form/>
            <p>
                {move || said.get().map(|why| view! { <span class="refusal" role="alert">{why}</span> })}
                <SavedWord/>
            </p>
            <h2>"Gauges"</h2>
            <p>"A gauge keeps its own unit. Readings stay as they were typed."</p>
            {gauges.map(|(id, gauge)| view! { <OneGauge id gauge/> }).collect_view()}
            <HandOn/>
        </div>
    }
}

#[component]
fn OneGauge(id: Stamp, gauge: Gauge) -> impl IntoView {
    let state = State::get();
    let legend = present::gauge_choice(&gauge);
    let chosen = RwSignal::new((gauge.unit(), gauge.graduation.text().to_owned()));
    let options = Unit::ALL.into_iter().flat_map(|unit| {
        Gauge::graduations(unit).map(move |text| (unit, text))
    });
    let options = options.map(|(unit, text)| {
        let kind = gauge.kind;
        let is_chosen = move || chosen.with(|(u, t)| *u == unit && t == text);
        let choose = move |_| {
            if let Ok(graduation) = Entered::parse(text, unit) {
                chosen.set((unit, text.to_owned()));
                let edit = Edit::Gauge(id, Gauge { kind, graduation });
                if let Err(why) = state.change(Change::Edit(&edit)) {
                    state.tell(why);
                }
            }
        };
        view! {
            <label class="choice">
                <input type="radio" name=id.to_string() prop:checked=is_chosen on:change=choose/>
                <span>{format!("{text} {}", unit.sign())}</span>
            </label>
        }
    });
    view! { <fieldset class="choices"><legend>{legend}</legend>{options.collect_view()}</fieldset> }
}

/// Export and share.
#[component]
fn HandOn() -> impl IntoView {
    let state = State::get();
    let share = move |_| {
        if let Some((name, text)) = state.export() {
            spawn_local(async move {
                let shared = file::share(&name, &text).await;
                let done = match shared {
                    Ok(true) => Ok(()),
                    Ok(false) => file::download(&name, &text),
                    Err(why) => Err(why),
                };
                if let Err(why) = done {
                    state.tell(why.to_string());
                }
            });
        }
    };
    view! {
        <h2>"Hand on"</h2>
        <p>
            "The file holds everything entered here. It opens on any device, and taking it in twice \
            duplicates nothing. Files are the backup."
        </p>
        <p class="actions">
            <ExportButton/>
            <button type="button" on:click=share>"Share"</button>
        </p>
    }
}
