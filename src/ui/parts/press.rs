//! Buttons, links and sentences.

use leptos::prelude::*;

use super::el::{Child, El, el};
use super::held::Held;
use super::live::{Live, flag, live, nothing};

/// A button that acts when it is pressed.
pub fn press(label: impl Into<Child>, act: Callback<()>) -> El {
    styled("", label, act)
}

/// The button of a screen that matters most.
pub fn main_press(label: impl Into<Child>, act: Callback<()>) -> El {
    styled("main", label, act)
}

/// A button of a class.
pub fn styled(class: &'static str, label: impl Into<Child>, act: Callback<()>) -> El {
    el("button", class)
        .set("type", "button")
        .with(label)
        .on_click(act)
}

/// A link to an address.
pub fn link(class: &'static str, address: &str, label: impl Into<Child>) -> El {
    el("a", class).set("href", address).with(label)
}

/// A heading of the second order.
pub fn heading(text: impl Into<Child>) -> El {
    el("h2", "").with(text)
}

/// A paragraph.
pub fn para(class: &'static str, text: impl Into<Child>) -> El {
    el("p", class).with(text)
}

/// What to do where there is nothing yet, with the way there.
pub fn empty(told: &'static str, address: &str, word: &'static str) -> El {
    el("div", "fields")
        .id("empty")
        .with(para("", told))
        .with(para("actions", link("button main", address, word)))
}

/// Something that is folded away until it is wanted.
pub fn fold(summary: Child, within: Child) -> El {
    el("details", "more")
        .with(el("summary", "").with(summary))
        .with(within)
}

/// A refusal, there as long as there is one.
pub fn refusal(told: Held<Option<String>>) -> Live {
    live(move || match told.get() {
        Some(why) => para("refusal", why)
            .set("role", "alert")
            .id("refused")
            .done(),
        None => nothing(),
    })
}

/// Something that is there as long as this holds.
pub fn shown_while(
    holds: impl Fn() -> bool + Send + Sync + 'static,
    what: fn() -> AnyView,
) -> Live {
    let holds = flag(holds);
    live(move || if holds.get() { what() } else { nothing() })
}
