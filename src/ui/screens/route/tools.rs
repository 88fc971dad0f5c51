//! The keys beside the number: undo, redo, repeat, skip, go to.

use leptos::prelude::*;

use super::entry::Entry;
use crate::present::{Purpose, last_station};
use crate::ui::parts::live::flag;
use crate::ui::parts::press::{Press, act};
use crate::ui::state::Change;

/// The row of tools.
#[component]
pub fn Tools(entry: Entry, stations: String) -> impl IntoView {
    let history = entry.state.history();
    let undo = act(move || entry.step(Change::Undo));
    let redo = act(move || entry.step(Change::Redo));
    let repeat = act(move || {
        if let Some(station) = entry.state.peek(|s, _| last_station(s)).flatten() {
            entry.said.set(None);
            entry.go(station, Purpose::Add);
        }
    });
    let skip = act(move || {
        entry.said.set(None);
        entry.go_on(entry.at.get_untracked().map(|(station, _)| station));
    });
    let nothing_read = entry.state.read(|s, _| last_station(s).is_none());
    view! {
        <div class="tools" role="group" aria-label="Route">
            <Press label="Undo" act=undo off=flag(move || !history.get().0)/>
            <Press label="Redo" act=redo off=flag(move || !history.get().1)/>
            <Press label="Repeat" act=repeat off=nothing_read.into()/>
            <Press label="Skip" act=skip/>
            <a class="button" href=stations>"Go to"</a>
        </div>
    }
}
