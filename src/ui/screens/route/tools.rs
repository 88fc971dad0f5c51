//! The keys beside the number: undo, redo, repeat, skip, go to.

use leptos::prelude::*;

use super::entry::Entry;
use crate::present::Purpose;
use crate::ui::state::Change;

/// The row of tools.
#[component]
pub fn Tools(entry: Entry, stations: String) -> impl IntoView {
    let history = entry.state.history();
    let repeat = move |_| {
        let last = |session: &crate::session::Session, _: &_| {
            let last = session.standing().next_back();
            last.map(|(_, reading)| reading.station)
        };
        if let Some(station) = entry.state.peek(last).flatten() {
            entry.said.set(None);
            entry.go(station, Purpose::Add);
        }
    };
    let skip = move |_| {
        entry.said.set(None);
        entry.go_on(entry.at.get_untracked().map(|(station, _)| station));
    };
    let can_undo = move || history.get().0;
    let can_redo = move || history.get().1;
    let nothing_read = entry.state.read(|s, _| s.standing().next().is_none());
    view! {
        <div class="tools" role="group" aria-label="Route">
            <button type="button" disabled=move || !can_undo() on:click=move |_| entry.step(Change::Undo)>
                "Undo"
            </button>
            <button type="button" disabled=move || !can_redo() on:click=move |_| entry.step(Change::Redo)>
                "Redo"
            </button>
            <button type="button" disabled=nothing_read on:click=repeat>"Repeat"</button>
            <button type="button" on:click=skip>"Skip"</button>
            <a class="button" href=stations>"Go to"</a>
        </div>
    }
}
