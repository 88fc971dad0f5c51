//! The keys beside the number: undo, redo, repeat, skip, go to.

use leptos::prelude::*;

use super::entry::Entry;
use crate::present::Fender;
use crate::ui::parts::live::flag;
use crate::ui::parts::press::{Press, act};
use crate::ui::state::Change;

/// The row of tools.
#[component]
pub fn Tools(entry: Entry, stations: String) -> impl IntoView {
    let state = entry.state;
    let undo = act(move || entry.change(Change::Undo));
    let redo = act(move || entry.change(Change::Redo));
    let repeat = act(move || entry.step(|fender, session, _| fender.repeat(session)));
    let skip = act(move || entry.step(Fender::go_on));
    let nothing_read = flag(move || entry.view.with(|v| v.progress.read == 0));
    view! {
        <div class="tools" role="group" aria-label="Route">
            <Press label="Undo" act=undo off=flag(move || !state.can_undo())/>
            <Press label="Redo" act=redo off=flag(move || !state.can_redo())/>
            <Press label="Repeat" act=repeat off=nothing_read/>
            <Press label="Skip" act=skip/>
            <a class="button" href=stations>"Go to"</a>
        </div>
    }
}
