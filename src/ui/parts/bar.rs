//! The bar above every screen of a session.

use super::el::{El, el};
use super::live::text;
use super::press::link;
use crate::session::SessionId;
use crate::ui::state::{Saved, State};
use crate::ui::way::{Sheet, sheet_address};

/// Links to the bench and to the session's screens.
pub fn bar(id: &SessionId, here: Sheet) -> El {
    let mut bar = el("nav", "bar")
        .set("aria-label", "Session")
        .with(link("", "#/", "Bench"));
    for (sheet, label) in [
        (Sheet::Route, "Measure"),
        (Sheet::Looks, "Look"),
        (Sheet::Findings, "Findings"),
        (Sheet::Limits, "Limits"),
        (Sheet::SetUp, "Set-up"),
    ] {
        let link = link("", &sheet_address(id, sheet), label);
        bar = bar.with(if sheet == here {
            link.set("aria-current", "page")
        } else {
            link
        });
    }
    bar
}

/// The title of a screen that is edited, and beside it whether all is saved.
pub fn head(title: &'static str) -> El {
    el("div", "head")
        .with(el("h1", "").with(title))
        .with(saved_word())
}

/// The word for how safe the latest change is.
pub fn saved_word() -> El {
    let saved = State::get().saved;
    let told = move |told: fn(&Saved) -> &'static str| text(move || saved.with(told).to_owned());
    let key = told(|saved| match saved {
        Saved::Untouched => "untouched",
        Saved::Writing => "writing",
        Saved::Safe => "safe",
        Saved::NotSafe(_) => "not-safe",
    });
    let word = told(|saved| match saved {
        Saved::Untouched => "",
        Saved::Writing => "saving …",
        Saved::Safe => "saved",
        Saved::NotSafe(_) => "not saved",
    });
    el("span", "saved")
        .follow("data-saved", key)
        .id("saved")
        .with(word)
}
