//! What the person must know, above whatever screen is shown.

use leptos::prelude::*;

use super::el::{El, el};
use super::live::{act, live, nothing, text};
use super::press::{para, press, shown_while};
use crate::device::page::{Worker, take_over};
use crate::store::file;
use crate::ui::state::{Saved, State};
use crate::ui::way::{Screen, Sheet, follow};

/// Notices, the state of the stores when it is bad, and a new version: on each
/// screen the one place from which a screen reader tells what happened.
pub fn notices() -> El {
    let state = State::get();
    let told = live(move || {
        let told = state.notices.get();
        if told.is_empty() {
            return nothing();
        }
        let put_away = act(move || state.notices.update(Vec::clear));
        notice("notice", told, press("Put away", put_away))
    });
    let not_safe = live(move || match state.saved.get() {
        Saved::NotSafe(why) => notice("not-safe", vec![why], export_button()),
        _ => nothing(),
    });
    let worker = state.worker;
    let screen = follow();
    // Offered on the bench only: never during an entry.
    let offered = move || worker.get() == Worker::Waiting && screen.get() == Screen::Bench;
    // The fender screen has its own place for what is said: there these are troubles.
    let role = text(move || {
        let at_fender = matches!(screen.get(), Screen::Of(_, Sheet::Route));
        if at_fender { "alert" } else { "status" }.to_owned()
    });
    let said = para("unseen", text(move || state.said.get()));
    let new_version = shown_while(offered, || {
        let told = "A new version is ready. It opens what is here.".to_owned();
        notice(
            "new-version",
            vec![told],
            press("Use it now", act(take_over)),
        )
    });
    el("div", "notices")
        .follow("role", role)
        .with(said)
        .with(told)
        .with(not_safe)
        .with(new_version)
}

fn notice(testid: &'static str, told: Vec<String>, button: El) -> AnyView {
    let told: Vec<AnyView> = told.into_iter().map(|told| para("", told).done()).collect();
    el("div", "notice")
        .id(testid)
        .with(el("div", "").with(told))
        .with(button)
        .done()
}

/// Writes the open session to a file.
pub fn export_button() -> El {
    let state = State::get();
    let export = act(move || {
        if let Some((name, text)) = state.export()
            && let Err(why) = file::download(&name, &text)
        {
            state.tell(why.to_string());
        }
    });
    press("Export a file", export).id("export")
}
