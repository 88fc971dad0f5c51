//! The frame: which screen is shown, and what is told above it.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::parts::el::el;
use super::parts::held::Held;
use super::parts::live::{live, nothing};
use super::parts::notices::notices;
use super::parts::phone;
use super::parts::press::{link, para};
use super::screens::later::{self, Part};
use super::screens::{bench, loaded, new, route};
use super::state::State;
use super::way::{Screen, Sheet, follow};
use crate::device::page;
use crate::session::SessionId;

/// The whole app.
#[component]
pub fn App() -> impl IntoView {
    phone::take_up();
    let state = Held::new(None::<State>);
    // The state is made in this owner, so that it lives as long as the app.
    let owner = Owner::current();
    spawn_local(async move {
        let found = State::open().await;
        state.set(owner.map(|owner| owner.with(|| State::new(found))));
    });
    live(move || match state.get() {
        None => nothing(),
        Some(state) => {
            provide_context(state);
            frame()
        }
    })
}

fn frame() -> AnyView {
    let screen = follow();
    page::started();
    let said = State::get().said;
    let screen = live(move || {
        // What was said of one screen is not said again on the next.
        said.set(String::new());
        match screen.get() {
            Screen::Bench => bench(),
            Screen::New => new(),
            Screen::First => loaded(true, || later::part(Part::First)).into_any(),
            Screen::Of(id, sheet) => of_session(&id, sheet),
        }
    });
    el("div", "frame").with(notices()).with(screen).done()
}

fn of_session(id: &SessionId, sheet: Sheet) -> AnyView {
    if !State::get().enter(id) {
        let told = "This session is not on this device. Open its file on the bench.";
        return el("div", "sheet")
            .with(el("h1", "").with("Not here"))
            .with(para("", told))
            .with(para("", link("button", "#/", "To the bench")))
            .done();
    }
    match sheet {
        Sheet::Route => route(id),
        _ => {
            let id = id.clone();
            loaded(true, move || later::part(Part::Sheet(&id, sheet))).into_any()
        }
    }
}
