//! The keys beside the number: undo, redo, repeat, skip, go to.

use leptos::prelude::*;

use super::entry::Entry;
use crate::present::{Fender, RouteView};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::live::{act, flag, text};
use crate::ui::parts::press::{link, press};
use crate::ui::state::Change;

/// The row of tools.
pub fn tools(entry: Entry, stations: &str) -> El {
    let state = entry.state;
    let undo = act(move || entry.change(Change::Undo));
    let redo = act(move || entry.change(Change::Redo));
    let repeat = act(move || entry.step(|fender, session, _| fender.repeat(session)));
    let skip = act(move || entry.step(Fender::go_on));
    let progress = text(move || {
        let of = |v: &RouteView| format!("{} of {}", v.progress.read, v.progress.of);
        entry.view.with(of)
    });
    let left = text(move || entry.view.with(|v| v.time_left.clone()));
    let nothing_read = flag(move || entry.view.with(|v| v.progress.read == 0));
    el("div", "tools")
        .set("role", "group")
        .set("aria-label", "Route")
        .with(press("Undo", undo).when("disabled", flag(move || !state.can_undo())))
        .with(press("Redo", redo).when("disabled", flag(move || !state.can_redo())))
        .with(press("Repeat", repeat).when("disabled", nothing_read))
        .with(press("Skip", skip))
        .with(
            link("button", stations, "Go to")
                .with(el("small", "").id("progress").with(progress))
                .with(el("small", "").id("time-left").with(left)),
        )
}
