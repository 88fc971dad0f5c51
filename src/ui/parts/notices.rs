//! What the person must know, above whatever screen is shown.

use leptos::prelude::*;

use crate::device::page;
use crate::ui::state::{Saved, State};

/// Notices, the state of the stores when it is bad, and a new version.
#[component]
pub fn Notices() -> impl IntoView {
    let state = State::get();
    let put_away = move |_| state.notices.write().clear();
    let not_safe = move || match state.saved.get() {
        Saved::NotSafe(why) => Some(why),
        _ => None,
    };
    view! {
        <div class="notices" role="status">
            {move || {
                let notices = state.notices.get();
                (!notices.is_empty()).then(|| view! {
                    <div class="notice" data-testid="notice">
                        {notices.into_iter().map(|told| view! { <p>{told}</p> }).collect_view()}
                        <button type="button" on:click=put_away>"Put away"</button>
                    </div>
                })
            }}
            {move || not_safe().map(|why| view! {
                <div class="notice" data-testid="not-safe">
                    <p>{why}</p>
                    <ExportButton/>
                </div>
            })}
            <NewVersion/>
        </div>
    }
}

/// Writes the open session to a file.
#[component]
pub fn ExportButton() -> impl IntoView {
    let state = State::get();
    let export = move |_| {
        if let Some((name, text)) = state.export()
            && let Err(why) = crate::store::file::download(&name, &text)
        {
            state.tell(why.to_string());
        }
    };
    view! {
        <button type="button" on:click=export data-testid="export">"Export a file"</button>
    }
}

/// Offers a version that waits, on the bench only: never during an entry.
#[component]
fn NewVersion() -> impl IntoView {
    let worker = State::get().worker;
    let screen = crate::ui::way::follow();
    let offered = move || {
        worker.get() == page::Worker::Waiting && screen.get() == crate::ui::way::Screen::Bench
    };
    view! {
        <Show when=offered>
            <div class="notice" data-testid="new-version">
                <p>"A new version is ready. It opens what is here."</p>
                <button type="button" on:click=move |_| page::take_over()>"Use it now"</button>
            </div>
        </Show>
    }
}
