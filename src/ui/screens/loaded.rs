//! What is behind the gate, or why it is not there yet.

use leptos::prelude::AnyView;

use crate::device::page::Later;
use crate::ui::parts::el::el;
use crate::ui::parts::live::{Live, live, nothing};
use crate::ui::parts::press::{link, para};
use crate::ui::state::State;

const NOT_HERE: &str = "This part of the app is not on this device yet. It comes with the next \
                        start with a network; until then measure on, what you enter is safe.";

/// A screen of the second module, or a part of one, once it is there.
pub fn loaded(is_screen: bool, part: impl Fn() -> Option<AnyView> + Send + 'static) -> Live {
    let there = State::get().later;
    live(move || {
        let told = match there.get() {
            Later::Here => return part().unwrap_or_else(nothing),
            Later::OnItsWay => "One moment …",
            Later::NotHere => NOT_HERE,
        };
        let told = para("", told);
        let back = is_screen.then(|| para("", link("button", "#/", "To the bench")));
        let sheet = el("div", if is_screen { "sheet" } else { "" });
        sheet.with(told).with(back).done()
    })
}
