//! What the fender screen shows above the keypad.

use leptos::prelude::*;

use super::entry::Entry;
use crate::present::{self, Face, Keypad, LastRead, Purpose, RouteView};
use crate::ui::parts::bar::SavedWord;
use crate::ui::parts::live::{said, some, text};
use crate::ui::parts::mark::MarkSign;
use crate::ui::parts::press::{Press, act};

/// Place, number, and what was said last.
#[component]
pub fn Shown(entry: Entry) -> impl IntoView {
    let view = Memo::new(move |_| {
        let Some((station, purpose)) = entry.at.get() else {
            return RouteView::default();
        };
        entry.stops.with(|stops| {
            let view = |s: &_, _: &_| present::view(s, stops, station, purpose);
            entry.state.peek(view).unwrap_or_default()
        })
    });
    let part = move |part: fn(&RouteView) -> String| text(move || view.with(part));
    view! {
        <div class="reading">
            <div class="place">
                <p class="feature">
                    <span data-testid="feature">{part(|v| v.feature.clone())}</span>
                    <span class="progress" data-testid="progress">
                        {part(|v| format!("{} of {}", v.progress.read, v.progress.of))}
                    </span>
                </p>
                <p class="station" data-testid="place">{part(|v| v.place.clone())}</p>
                <p class="where">{part(|v| v.where_exactly.to_owned())}</p>
            </div>
            {number(entry, view)}
            {last(entry, view)}
        </div>
    }
}

/// The number under way, whole at once, with its unit.
fn number(entry: Entry, view: Memo<RouteView>) -> AnyView {
    let face = Memo::new(move |_| entry.keypad.with(|k| k.as_ref().map(Keypad::face)));
    let part = move |part: fn(&Face) -> String| {
        text(move || face.with(|face| face.as_ref().map(part).unwrap_or_default()))
    };
    let label = text(move || view.with(RouteView::label));
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
    .into_any()
}

/// A refusal, what ENTER will do, or what was read last and how it reads.
fn last(entry: Entry, view: Memo<RouteView>) -> AnyView {
    let last = entry.state.read(|session, _| present::last_read(session));
    let refusal = some(
        move || entry.said.get(),
        |told| said("refusal", "said", told),
    );
    let purpose = some(
        move || view.with(|view| view.purpose.clone()),
        move |purpose| {
            let (other, word) = match entry.at.get() {
                Some((_, Purpose::Replace)) => (Purpose::Add, "keep both"),
                _ => (Purpose::Replace, "replace it"),
            };
            let turn = act(move || {
                entry.at.update(|at| {
                    if let Some((_, purpose)) = at {
                        *purpose = other;
                    }
                });
            });
            view! {
                <p class="purpose" data-testid="purpose">
                    <span>{purpose}</span>
                    <Press label=word act=turn/>
                </p>
            }
        },
    );
    let last = some(move || last.get(), |last: LastRead| {
        view! {
            <p class="last" data-testid="last">
                <MarkSign mark=last.mark/>
                <span><b>{last.value}</b>" "{last.words}</span>
                <small>{last.station}</small>
                <SavedWord/>
            </p>
        }
    });
    view! { <div class="said" aria-live="polite">{refusal}{purpose}{last}</div> }.into_any()
}
