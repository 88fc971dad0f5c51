//! The fender screen: where the gauge goes, the number, the keypad.

mod entry;
mod shown;
mod tools;

use leptos::ev::KeyboardEvent;
use leptos::html::Div;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use crate::session::SessionId;
use crate::ui::parts::bar::Bar;
use crate::ui::parts::keypad::{Keys, Touch, of_keyboard};
use crate::ui::parts::live::flag;
use crate::ui::state::State;
use crate::ui::way::{Sheet, sheet_address};
use entry::Entry;
use shown::Shown;
use tools::Tools;

/// The fender screen.
#[component]
pub fn Route(id: SessionId) -> impl IntoView {
    let entry = Entry::new(State::get(), id.clone());
    let whole = flag(move || entry.view.with(|view| view.face.whole));
    let root = NodeRef::<Div>::new();
    // Keys of a keyboard are taken while the screen itself has the focus.
    root.on_load(|root| {
        let _ = root.focus();
    });
    let on_key = move |event: KeyboardEvent| {
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
    let touch = Callback::new(move |touch| entry.touch(touch));
    let stations = sheet_address(&id, Sheet::Stations);
    view! {
        <div class="route" tabindex="-1" node_ref=root on:keydown=on_key>
            <Bar id here=Sheet::Route/>
            <Shown entry/>
            <Tools entry stations/>
            <Keys whole touch/>
        </div>
    }
}
