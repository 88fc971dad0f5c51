//! The keys beside those of the number: menu, undo and skip; and the menu
//! with the other tools and the ways to other screens.

use leptos::prelude::*;

use super::entry::Entry;
use crate::present::{Fender, RouteView};
use crate::session::SessionId;
use crate::ui::parts::el::{El, el};
use crate::ui::parts::held::Held;
use crate::ui::parts::live::{act, flag, text};
use crate::ui::parts::press::{link, press, styled};
use crate::ui::state::Change;
use crate::ui::way::{Sheet, sheet_address};

/// The row of tools; while a slip is asked about, the answers lie over it.
pub fn tools(entry: Entry, menu: Held<bool>) -> El {
    let state = entry.state;
    let undo = act(move || {
        entry.change(Change::Undo);
    });
    let skip = act(move || entry.step(Fender::go_on));
    let turn = act(move || menu.update(|open| *open = !*open));
    let progress = text(move || {
        let of = |v: &RouteView| format!("{} of {}", v.progress.read, v.progress.of);
        entry.view.with(of)
    });
    let left = text(move || entry.view.with(|v| v.time_left.clone()));
    let open = text(move || menu.with(bool::to_string));
    el("div", "tools")
        .set("role", "group")
        .set("aria-label", "Route")
        .with(
            styled("tool menu-key", "Menu ", turn)
                .follow("aria-expanded", open)
                .with(el("small", "").id("progress").with(progress))
                .with(" ")
                .with(el("small", "").id("time-left").with(left)),
        )
        .with(styled("tool undo", "Undo", undo).when("disabled", flag(move || !state.can_undo())))
        .with(styled("tool skip", "Skip", skip))
}

/// What the menu key opens, in place of the keys: the tools that are seldom
/// wanted, and the other screens.
pub fn menu(entry: Entry, id: &SessionId, menu: Held<bool>) -> El {
    let state = entry.state;
    let repeat = act(move || {
        menu.set(false);
        entry.step(|fender, session, _| fender.repeat(session));
    });
    let redo = act(move || {
        entry.change(Change::Redo);
    });
    let nothing_read = flag(move || entry.view.with(|v| v.progress.read == 0));
    let to = |label, sheet| link("button", &sheet_address(id, sheet), label);
    el("nav", "menu")
        .set("aria-label", "Session")
        .with(to("Go to", Sheet::Stations))
        .with(press("Repeat", repeat).when("disabled", nothing_read))
        .with(press("Redo", redo).when("disabled", flag(move || !state.can_redo())))
        .with(to("Findings", Sheet::Findings))
        .with(to("Look", Sheet::Looks))
        .with(link("button", "#/", "Bench"))
        .with(to("Limits", Sheet::Limits))
        .with(to("Set-up", Sheet::SetUp))
        .with(press("Keys", act(move || menu.set(false))))
}
