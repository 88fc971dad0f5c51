//! The frame: which screen is shown, and what is told above it.

use leptos::prelude::*;

use super::parts::notices::Notices;
use super::screens::{Bench, Findings, Limits, New, Route, SetUp, Stations};
use super::state::State;
use super::way::{Screen, Sheet, follow};
use crate::device::page;
use crate::session::SessionId;

/// The whole app.
#[component]
pub fn App() -> impl IntoView {
    let opened = LocalResource::new(State::open);
    view! {
        {move || {
            opened.get().map(|state| {
                provide_context(state);
                view! { <Frame/> }
            })
        }}
    }
}

#[component]
fn Frame() -> impl IntoView {
    let screen = follow();
    page::started();
    view! {
        <Notices/>
        {move || match screen.get() {
            Screen::Bench => view! { <Bench/> }.into_any(),
            Screen::New => view! { <New/> }.into_any(),
            Screen::Of(id, sheet) => view! { <OfSession id sheet/> }.into_any(),
        }}
    }
}

#[component]
fn OfSession(id: SessionId, sheet: Sheet) -> impl IntoView {
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
