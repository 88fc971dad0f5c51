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
use super::screens::{bench, new, route};
use super::state::State;
use super::way::{Screen, Sheet, follow};
use crate::device::page::{self, Later};
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
    let screen = live(move || match screen.get() {
        Screen::Bench => bench(),
        Screen::New => new(),
        Screen::Of(id, sheet) => of_session(&id, sheet),
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
        _ => once_loaded(id, sheet),
    }
}

/// A screen of the second module, or why it is not there yet.
fn once_loaded(id: &SessionId, sheet: Sheet) -> AnyView {
    let there = State::get().later;
    let id = id.clone();
    let told = |told: &'static str| {
        let told = para("", told).set("role", "status");
        let back = para("", link("button", "#/", "To the bench"));
        el("div", "sheet").with(told).with(back).done()
    };
    live(move || match there.get() {
        Later::Here => later::part(Part::Sheet(&id, sheet)).unwrap_or_else(nothing),
        Later::OnItsWay => told("One moment …"),
        Later::NotHere => told(
            "This part of the app is not on this device yet. It comes with the next start with a \
             network; what you entered is safe.",
        ),
    })
    .into_any()
}
