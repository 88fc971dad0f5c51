//! The frame: which screen is shown, and what is told above it.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::parts::live::{live, some};
use super::parts::notices::Notices;
use super::screens::{Bench, Findings, Limits, New, Route, SetUp, Stations};
use super::state::State;
use super::way::{Screen, Sheet, follow};
use crate::device::page;
use crate::session::SessionId;

/// The whole app.
#[component]
pub fn App() -> impl IntoView {
    // The state is made here, so that it lives as long as the app.
    let state = RwSignal::new(None::<State>);
    let owner = Owner::current();
    spawn_local(async move {
        let found = State::open().await;
        let made = owner.map(|owner| owner.with(|| State::new(found)));
        state.set(made);
    });
    some(
        move || state.get(),
        |state| {
            provide_context(state);
            frame()
        },
    )
}

fn frame() -> AnyView {
    let screen = follow();
    page::started();
    let screen = live(move || match screen.get() {
        Screen::Bench => view! { <Bench/> }.into_any(),
        Screen::New => view! { <New/> }.into_any(),
        Screen::Of(id, sheet) => of_session(id, sheet),
    });
    view! { <Notices/>{screen} }.into_any()
}

fn of_session(id: SessionId, sheet: Sheet) -> AnyView {
    if !State::get().enter(&id) {
        return view! {
            <div class="sheet">
                <h1>"Not here"</h1>
                <p>"This session is not on this device. Open its file on the bench."</p>
                <p><a class="button" href="#/">"To the bench"</a></p>
            </div>
        }
        .into_any();
    }
    match sheet {
        Sheet::Route => view! { <Route id/> }.into_any(),
        Sheet::Stations => view! { <Stations id/> }.into_any(),
        Sheet::Findings => view! { <Findings id/> }.into_any(),
        Sheet::Limits => view! { <Limits id/> }.into_any(),
        Sheet::SetUp => view! { <SetUp id/> }.into_any(),
    }
}
