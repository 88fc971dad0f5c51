//! What the fender screen shows above the keypad.

use leptos::prelude::*;

use super::entry::Entry;
use crate::present::{self, Fender, LastRead, RouteView};
use crate::ui::parts::bar::SavedWord;
use crate::ui::parts::live::{flag, some, text};
use crate::ui::parts::mark::MarkSign;
use crate::ui::parts::press::{Press, act};

/// Place, number, and what was said last.
#[component]
pub fn Shown(entry: Entry) -> impl IntoView {
    let view = entry.view;
    let part = move |part: fn(&RouteView) -> String| text(move || view.with(part));
    let last = entry.state.read(|session, _| present::last_read(session));
    let last = some(move || last.get(), last_read);
    let turn = act(move || entry.step(|fender: &mut Fender, _, _| fender.turn()));
    // A refusal hides what is less urgent; what the number is for hides what
    // was read last. One of them stands there at a time.
    let no_refusal = flag(move || view.with(|v| v.said.is_empty()));
    let no_purpose = flag(move || view.with(|v| !v.said.is_empty() || v.purpose.is_empty()));
    let no_last = flag(move || view.with(|v| !v.said.is_empty() || !v.purpose.is_empty()));
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
            <div class="value" role="group" aria-label=part(RouteView::label)>
                <output data-testid="value">
                    <span class="lead">{part(|v| v.face.lead.clone())}</span>
                    <span class="typed">{part(|v| v.face.typed.clone())}</span>
                    <span class="open">{part(|v| "▢".repeat(v.face.open))}</span>
                </output>
                <span class="unit">{part(|v| v.face.unit.to_owned())}</span>
            </div>
            <div class="said" aria-live="polite">
                <p class="refusal" data-testid="said" hidden=no_refusal>{part(|v| v.said.clone())}</p>
                <div class="purpose" hidden=no_purpose>
                    <p data-testid="purpose">{part(|v| v.purpose.clone())}</p>
                    <Press label=part(|v| v.turn.to_owned()) act=turn/>
                </div>
                <div hidden=no_last>{last}</div>
            </div>
        </div>
    }
}

fn last_read(last: LastRead) -> AnyView {
    view! {
        <p class="last" data-testid="last">
            <MarkSign mark=last.mark/>
            <span><b>{last.value}</b>" "{last.words}</span>
            <small>{last.station}</small>
            <SavedWord/>
        </p>
    }
    .into_any()
}
