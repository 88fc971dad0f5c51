//! The fender screen: where the gauge goes, the number, the keypad.

mod drawing;
mod entry;
mod shown;
mod tools;

use leptos::ev::{Event, KeyboardEvent};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use crate::device::page;
use crate::session::SessionId;
use crate::ui::parts::bar::bar;
use crate::ui::parts::el::el;
use crate::ui::parts::keypad::{Touch, hours, keys, of_keyboard};
use crate::ui::parts::live::{flag, live};
use crate::ui::state::State;
use crate::ui::way::{Sheet, sheet_address};
pub use drawing::drawing;
pub use entry::Entry;
use shown::shown;
use tools::tools;

/// The id by which the screen is given the focus.
const ID: &str = "fender";

/// The fender screen.
pub fn route(id: &SessionId) -> AnyView {
    let entry = Entry::new(State::get(), id);
    let whole = flag(move || entry.view.with(|view| view.face.whole));
    let dial = flag(move || entry.view.with(|view| view.face.dial.is_some()));
    let on_key = move |event: Event| {
        let event: KeyboardEvent = event.unchecked_into();
        let target = event
            .target()
            .and_then(|t| t.dyn_into::<web_sys::Element>().ok());
        let on_control = target.is_some_and(|t| matches!(t.tag_name().as_str(), "BUTTON" | "A"));
        match of_keyboard(&event) {
            Some(Touch::Enter) if on_control => {}
            Some(touch) if !event.repeat() => {
                event.prevent_default();
                entry.touch(touch);
            }
            _ => {}
        }
    };
    // Keys of a keyboard, or of a gauge that types, are taken while the screen
    // itself has the focus: no touch takes it away.
    let stay = |event: Event| event.prevent_default();
    request_animation_frame(|| page::focus(ID));
    let touch = Callback::new(move |touch| entry.touch(touch));
    let asks_hour = flag(move || entry.view.with(|view| view.asks_hour));
    let keys = live(move || {
        if asks_hour.get() {
            hours(touch).done()
        } else {
            keys(whole, dial, touch).done()
        }
    });
    el("div", "route")
        .set("id", ID)
        .set("tabindex", "-1")
        .on("keydown", on_key)
        .on("mousedown", stay)
        .with(bar(id, Sheet::Route))
        .with(shown(entry, &sheet_address(id, Sheet::Gauges)))
        .with(tools(entry, &sheet_address(id, Sheet::Stations)))
        .with(keys)
        .done()
}
