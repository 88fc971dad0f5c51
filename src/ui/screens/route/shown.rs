//! What the fender screen shows above the keypad.

use leptos::prelude::*;

use super::entry::Entry;
use crate::present::{self, Face, Keypad, Purpose, RouteView};
use crate::ui::parts::bar::SavedWord;
use crate::ui::parts::mark::MarkSign;

/// Which feature and where on it.
#[component]
pub fn Place(entry: Entry) -> impl IntoView {
    let view = shown(entry);
    view! {
        <div class="place">
            <p class="feature">
                <span data-testid="feature">{move || view.read().feature.clone()}</span>
                <span class="progress">
                    {move || {
                        let progress = view.read().progress;
                        format!("{} of {}", progress.read, progress.of)
                    }}
                </span>
            </p>
            <p class="station" data-testid="place">{move || view.read().place.clone()}</p>
            <p class="where">{move || view.read().where_exactly}</p>
        </div>
    }
}

/// The number under way, whole at once, with its unit.
#[component]
pub fn Value(entry: Entry) -> impl IntoView {
    let view = shown(entry);
    let face = Memo::new(move |_| entry.keypad.with(|k| k.as_ref().map(Keypad::face)));
    let part = move |part: fn(&Face) -> String| {
        move || face.with(|face| face.as_ref().map(part).unwrap_or_default())
    };
    let label = move || {
        let view = view.read();
        let told = view.purpose.clone().unwrap_or_default();
        format!("{}, {} {told}", view.feature, view.place)
    };
    view! {
        <div class="value" role="group" aria-label=label>
            <output data-testid="value">
                <span class="lead">{part(|face| face.lead.clone())}</span>
                <span class="typed">{part(|face| face.typed.clone())}</span>
                <span class="open">{part(|face| "▢".repeat(face.open))}</span>
            </output>
            <span class="unit">{part(|face| face.unit.to_owned())}</span>
        </div>
    }
}

/// A refusal, what ENTER will do, or what was read last and how it reads.
#[component]
pub fn Last(entry: Entry) -> impl IntoView {
    let view = shown(entry);
    let last = entry.state.read(|session, _| present::last_read(session));
    let other = move || match entry.at.get() {
        Some((station, Purpose::Replace)) => entry.at.set(Some((station, Purpose::Add))),
        Some((station, Purpose::Add)) => entry.at.set(Some((station, Purpose::Replace))),
        None => {}
    };
    let other_word = move || match entry.at.get() {
        Some((_, Purpose::Replace)) => "keep both",
        _ => "replace it",
    };
    view! {
        <div class="said" aria-live="polite">
            {move || entry.said.get().map(|said| view! {
                <p class="refusal" data-testid="said">{said}</p>
            })}
            {move || view.read().purpose.clone().map(|purpose| view! {
                <p class="purpose" data-testid="purpose">
                    {purpose}
                    <button type="button" on:click=move |_| other()>{other_word}</button>
                </p>
            })}
            {move || last.get().map(|last| view! {
                <p class="last" data-testid="last">
                    <MarkSign mark=last.mark/>
                    <span><b>{last.value}</b>" "{last.words}</span>
                    <small>{last.station}</small>
                    <SavedWord/>
                </p>
            })}
        </div>
    }
}

fn shown(entry: Entry) -> Memo<RouteView> {
    Memo::new(move |_| {
        let Some((station, purpose)) = entry.at.get() else {
            return RouteView::default();
        };
        entry.stops.with(|stops| {
            let view = |s: &_, _: &_| present::view(s, stops, station, purpose);
            entry.state.peek(view).unwrap_or_default()
        })
    })
}
