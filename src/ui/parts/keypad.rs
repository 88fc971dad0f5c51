//! The keypad: large keys that act when touched.

use std::cell::Cell;

use leptos::ev::{Event, KeyboardEvent, MouseEvent, PointerEvent};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::Element;

use super::el::{El, el};
use super::live::live;
use crate::present::{Key, Touches};

/// What a touch of the keypad means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Touch {
    /// A key of the number.
    Key(Key),
    /// ENTER.
    Enter,
    /// An hour of the clock, 1 to 12.
    Hour(u8),
}

/// What a touch does; true if it was taken.
pub type OnTouch = Callback<Touch, bool>;

const NUMBERS: [&str; 13] = [
    "0", "1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12",
];

/// The keys: 0 and ENTER at the bottom, and above the digits, far from
/// ENTER, the key that takes back and one that changes: the point of a number
/// in full, plus or minus on a dial, and else the way from the last digits to
/// the number in full.
pub fn keys(whole: Signal<bool>, dial: Signal<bool>, touch: OnTouch) -> El {
    let side = live(move || {
        match (dial.get(), whole.get()) {
            (true, _) => key("key side", "±", "plus or minus", "sign"),
            (false, true) => key("key side", ".", "decimal point", "point"),
            (false, false) => key("key side word", "as read", "enter as read", "whole"),
        }
        .done()
    });
    let mut keys = group("keys", "Keypad", touch).with(side).with(key(
        "key side back",
        "⌫",
        "take back the last key",
        "back",
    ));
    for n in [7, 8, 9, 4, 5, 6, 1, 2, 3, 0] {
        let label = NUMBERS.get(n).copied().unwrap_or_default();
        let class = if n == 0 { "key zero" } else { "key" };
        keys = keys.with(key(class, label, label, label));
    }
    keys.with(key("key enter", "ENTER", "ENTER", "enter"))
}

/// The hours of the clock, in place of the keys of a number. None lies where
/// ENTER was, which may be touched twice.
pub fn hours(touch: OnTouch) -> El {
    let mut keys = group("hours", "Hour of the high spot", touch);
    for label in NUMBERS.iter().skip(1) {
        keys = keys.with(key("key", label, label, label));
    }
    keys
}

/// Keys that act when the finger comes down, as those of a keypad do; `click`
/// serves the keyboard and assistive devices, which send no pointer.
fn group(class: &'static str, name: &'static str, on_touch: OnTouch) -> El {
    let is_hours = class != "keys";
    let act = move |event: &Event, counts: &dyn Fn(Touch) -> bool| {
        let target = event.target().and_then(|t| t.dyn_into::<Element>().ok());
        let key = target.and_then(|target| target.closest("button").ok().flatten());
        let code = key.as_ref().and_then(|key| key.get_attribute("value"));
        let touch = code.and_then(|code| of_code(&code, is_hours));
        if let Some((key, touch)) = key.zip(touch)
            && counts(touch)
        {
            flash(&key, on_touch.run(touch));
        }
    };
    let touches = Cell::new(Touches::default());
    let down = move |event: Event| {
        let event: PointerEvent = event.unchecked_into();
        if event.button() == 0 {
            act(&event, &|touch| {
                let mut now = touches.get();
                let counts = now.counts(touch, event.time_stamp() as u64);
                touches.set(now);
                counts
            });
        }
    };
    let click = move |event: Event| {
        let event: MouseEvent = event.unchecked_into();
        if event.detail() == 0 {
            act(&event, &|_| true);
        }
    };
    el("div", class)
        .set("role", "group")
        .set("aria-label", name)
        .on("pointerdown", down)
        .on("click", click)
}

fn key(class: &'static str, label: &'static str, name: &'static str, code: &'static str) -> El {
    el("button", class)
        .set("type", "button")
        .set("aria-label", name)
        .set("value", code)
        .with(label)
}

/// Lights a key up for as long as the styles say, however short the touch
/// was; in turn by two names, so that the same key lights up twice.
fn flash(key: &Element, taken: bool) {
    let last = key.get_attribute("data-flash").unwrap_or_default();
    let next = match (taken, last.ends_with('a')) {
        (true, false) => "taken-a",
        (true, true) => "taken-b",
        (false, false) => "refused-a",
        (false, true) => "refused-b",
    };
    // Refused only for a name that cannot be one.
    let _ = key.set_attribute("data-flash", next);
}

fn of_code(code: &str, is_hour: bool) -> Option<Touch> {
    let key = match code {
        "enter" => return Some(Touch::Enter),
        "back" => Key::Back,
        "point" => Key::Point,
        "sign" => Key::Sign,
        "whole" => Key::Whole,
        number => {
            let number = NUMBERS.iter().position(|n| *n == number)?;
            let number = u8::try_from(number).ok()?;
            if is_hour {
                return Some(Touch::Hour(number));
            }
            Key::Digit(number)
        }
    };
    Some(Touch::Key(key))
}

/// What a key of a keyboard means; `None` for every other.
pub fn of_keyboard(event: &KeyboardEvent) -> Option<Touch> {
    if event.ctrl_key() || event.meta_key() || event.alt_key() {
        return None;
    }
    let key = event.key();
    let code = match key.as_str() {
        "Enter" => "enter",
        "Backspace" => "back",
        "." | "," => "point",
        "+" | "-" => "sign",
        digit if digit.len() == 1 => digit,
        _ => return None,
    };
    of_code(code, false)
}
