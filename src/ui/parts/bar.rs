//! The bar above every screen of a session.

use leptos::prelude::*;

use super::live::text;
use crate::session::SessionId;
use crate::ui::state::{Saved, State};
use crate::ui::way::{Sheet, sheet_address};

/// Links to the bench and to the session's screens.
#[component]
pub fn Bar(id: SessionId, here: Sheet) -> impl IntoView {
    let link = move |sheet: Sheet, label: &'static str| {
        let current = (sheet == here).then_some("page");
        view! { <a href=sheet_address(&id, sheet) aria-current=current>{label}</a> }
    };
    view! {
        <nav class="bar" aria-label="Session">
            <a href="#/">"Bench"</a>
            {link(Sheet::Route, "Measure")}
            {link(Sheet::Findings, "Findings")}
            {link(Sheet::Limits, "Limits")}
            {link(Sheet::SetUp, "Set-up")}
        </nav>
    }
}

/// The word for how safe the latest change is.
#[component]
pub fn SavedWord() -> impl IntoView {
    let saved = State::get().saved;
    let key = text(move || {
        let key = match saved.get() {
            Saved::Untouched => "untouched",
            Saved::Writing => "writing",
            Saved::Safe => "safe",
            Saved::NotSafe(_) => "not-safe",
        };
        key.to_owned()
    });
    let word = text(move || {
        let word = match saved.get() {
            Saved::Untouched => "",
            Saved::Writing => "saving …",
            Saved::Safe => "saved",
            Saved::NotSafe(_) => "not saved",
        };
        word.to_owned()
    });
    view! { <span class="saved" data-saved=key data-testid="saved">{word}</span> }
}
