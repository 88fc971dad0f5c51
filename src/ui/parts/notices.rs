//! What the person must know, above whatever screen is shown.

use leptos::prelude::*;

use super::live::{live, some};
use super::press::{Press, act};
use crate::device::page::{Worker, take_over};
use crate::store::file;
use crate::ui::state::{Saved, State};
use crate::ui::way::{Screen, follow};

/// Notices, the state of the stores when it is bad, and a new version.
#[component]
pub fn Notices() -> impl IntoView {
    let state = State::get();
    let put_away = act(move || state.notices.write().clear());
    let told = live(move || {
        let told = state.notices.get();
        if told.is_empty() {
            return ().into_any();
        }
        let told: Vec<_> = told
            .into_iter()
            .map(|told| view! { <p>{told}</p> }.into_any())
            .collect();
        notice(
            "notice",
            told,
            view! { <Press label="Put away" act=put_away/> }.into_any(),
        )
    });
    let not_safe = move || match state.saved.get() {
        Saved::NotSafe(why) => Some(why),
        _ => None,
    };
    let not_safe = some(not_safe, |why| {
        let why = vec![view! { <p>{why}</p> }.into_any()];
        notice("not-safe", why, view! { <ExportButton/> }.into_any())
    });
    view! { <div class="notices" role="status">{told}{not_safe}<NewVersion/></div> }
}

fn notice(testid: &'static str, told: Vec<AnyView>, button: AnyView) -> AnyView {
    view! { <div class="notice" data-testid=testid><div>{told}</div>{button}</div> }.into_any()
}

/// Writes the open session to a file.
#[component]
pub fn ExportButton() -> impl IntoView {
    let state = State::get();
    let export = act(move || {
        if let Some((name, text)) = state.export()
            && let Err(why) = file::download(&name, &text)
        {
            state.tell(why.to_string());
        }
    });
    view! { <Press label="Export a file" act=export testid="export"/> }
}

/// Offers a version that waits, on the bench only: never during an entry.
#[component]
fn NewVersion() -> impl IntoView {
    let worker = State::get().worker;
    let screen = follow();
    let offered =
        move || (worker.get() == Worker::Waiting && screen.get() == Screen::Bench).then_some(());
    some(offered, |()| {
        let told =
            vec![view! { <p>"A new version is ready. It opens what is here."</p> }.into_any()];
        let use_it = view! { <Press label="Use it now" act=act(take_over)/> };
        notice("new-version", told, use_it.into_any())
    })
}
