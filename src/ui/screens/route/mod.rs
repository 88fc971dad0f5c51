//! The fender screen: where the gauge goes, the number, the keypad.

mod drawing;
mod entry;
mod shown;
mod tools;
mod typing;

use leptos::ev::Event;
use leptos::prelude::*;

use crate::device::{feel, page};
use crate::session::SessionId;
use crate::ui::parts::el::el;
use crate::ui::parts::held::Held;
use crate::ui::parts::keypad::{hours, keys};
use crate::ui::parts::live::{flag, live};
use crate::ui::state::State;
pub use drawing::drawing;
pub use entry::Entry;
use shown::{answers, shown};
use tools::{menu, tools};
use typing::take_typing;

/// The id by which the screen is given the focus.
const ID: &str = "fender";

/// The fender screen.
pub fn route(id: &SessionId) -> AnyView {
    let entry = Entry::new(State::get(), id);
    let whole = flag(move || entry.view.with(|view| view.face.whole));
    let dial = flag(move || entry.view.with(|view| view.face.dial.is_some()));
    feel::measures(true);
    on_cleanup(|| feel::measures(false));
    take_typing(entry, "#fender");
    // Keys of a keyboard are taken while the screen itself has the focus: no
    // touch takes it away.
    let stay = |event: Event| event.prevent_default();
    request_animation_frame(|| page::focus(ID));
    let touch = Callback::new(move |touch| entry.touch(touch));
    let asks_hour = flag(move || entry.view.with(|view| view.asks_hour));
    let opened = Held::new(false);
    let session = id.clone();
    let keys = live(move || {
        match (opened.get(), asks_hour.get()) {
            (true, _) => menu(entry, &session, opened),
            (false, true) => hours(touch),
            (false, false) => keys(whole, dial, touch),
        }
        .done()
    });
    let pad = el("div", "pad")
        .with(tools(entry, opened))
        .with(answers(entry))
        .with(keys);
    el("div", "route")
        .set("id", ID)
        .set("tabindex", "-1")
        .on("mousedown", stay)
        .with(el("h1", "unseen").with("Measure"))
        .with(shown(entry, id))
        .with(pad)
        .done()
}
