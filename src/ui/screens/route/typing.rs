//! A keyboard on the fender screen, or a gauge that types as one.

use std::cell::{Cell, RefCell};

use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::Element;

use super::entry::Entry;
use crate::device::feel::{Felt, feel};
use crate::present::{Burst, Key, Typist, gauge_typed};
use crate::ui::parts::keypad::{Touch, of_keyboard};

/// Takes what is typed as long as the screen is shown. A gauge is heard
/// wherever the focus is, a person where it is within the screen.
pub fn take_typing(entry: Entry, screen: &'static str) {
    // Followed by nothing: what is typed shows on the keypad.
    let burst = RefCell::new(Burst::default());
    let listener = window_event_listener_untyped("keydown", move |event| {
        let event: KeyboardEvent = event.unchecked_into();
        let has_modifier = event.ctrl_key() || event.meta_key() || event.alt_key();
        if !has_modifier && !event.repeat() && typed(entry, &burst, &event, screen) {
            event.prevent_default();
        }
    });
    on_cleanup(move || listener.remove());
}

/// True if the key was taken.
fn typed(entry: Entry, burst: &RefCell<Burst>, event: &KeyboardEvent, screen: &str) -> bool {
    let target = event.target().and_then(|t| t.dyn_into::<Element>().ok());
    let is_within = |selector: &str| {
        let target = target.as_ref();
        target.is_some_and(|target| target.closest(selector).is_ok_and(|found| found.is_some()))
    };
    // When it was typed, however late the page gets to it.
    let at_ms = event.time_stamp() as u64;
    let key = event.key();
    let is_enter = key == "Enter";
    if is_enter || key == "Tab" {
        let by_gauge = burst.borrow_mut().ended(at_ms);
        let by_person = is_enter && is_within(screen) && !is_within("button, a");
        if let Some(text) = &by_gauge {
            enter(entry, text);
        } else if by_person {
            entry.touch(Touch::Enter);
        }
        return by_gauge.is_some() || by_person;
    }
    let mut typist = Typist::Person;
    let mut chars = key.chars();
    if let (Some(c), None) = (chars.next(), chars.next()) {
        typist = burst.borrow_mut().typed(c, at_ms);
    }
    if typist == Typist::Gauge {
        show(entry, burst.borrow().text(), false);
        return true;
    }
    let touch = of_keyboard(event).filter(|_| is_within(screen));
    match (touch, typist) {
        (None, _) => return false,
        // A size with a plus is the size.
        (Some(Touch::Key(Key::Sign)), _) if key == "+" && !is_dial(entry) => {}
        // The first keys of a gauge make no sound.
        (Some(Touch::Key(key)), Typist::Unknown) => entry.step(|fender, session, _| {
            fender.press(session, key);
        }),
        (Some(touch), _) => {
            entry.touch(touch);
        }
    }
    true
}

/// Shows what a gauge has typed; true if it is a number.
fn show(entry: Entry, text: &str, has_ended: bool) -> bool {
    let is_number = Cell::new(false);
    entry.step(|fender, session, _| {
        is_number.set(gauge_typed(fender, session, text, has_ended));
    });
    is_number.get()
}

/// Enters what a gauge has typed. What is refused is told, and nothing of it
/// stays in the way of the next.
fn enter(entry: Entry, text: &str) {
    if show(entry, text, true) {
        entry.touch(Touch::Enter);
        entry.step(|fender, session, _| {
            if fender.said().is_some() && fender.is_refused() {
                fender.read_again(session, false);
            }
        });
    } else {
        feel(Felt::Refusal);
        entry.tell();
    }
}

fn is_dial(entry: Entry) -> bool {
    entry.view.with_untracked(|view| view.face.dial.is_some())
}
