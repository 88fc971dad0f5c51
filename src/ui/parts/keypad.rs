//! The keypad: large keys that act when touched.

use leptos::ev::{Event, KeyboardEvent, MouseEvent, PointerEvent};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::el::{El, el};
use super::live::live;
use crate::present::Key;

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

const NUMBERS: [&str; 13] = [
    "0", "1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12",
];

/// The keys, 0 at the bottom, ENTER below them across the full width. The key
/// beside 0 is the point of a number in full, plus or minus on a dial, and
/// else the way from the last digits to the number in full.
pub fn keys(whole: Signal<bool>, dial: Signal<bool>, touch: Callback<Touch>) -> El {
    let digit = move |digit: u8| {
        let label = NUMBERS.get(usize::from(digit)).copied().unwrap_or("");
        key(
            "key digit",
            label,
            label,
            Touch::Key(Key::Digit(digit)),
            touch,
        )
    };
    let first = live(move || {
        let (class, label, name, means) = match (dial.get(), whole.get()) {
            (true, _) => ("key digit", "+/−", "plus or minus", Key::Sign),
            (false, true) => ("key digit", ".", "decimal point", Key::Point),
            (false, false) => ("key word", "enter as read", "enter as read", Key::Whole),
        };
        key(class, label, name, Touch::Key(means), touch).done()
    });
    let mut keys = el("div", "keys")
        .set("role", "group")
        .set("aria-label", "Keypad");
    for n in [7, 8, 9, 4, 5, 6, 1, 2, 3] {
        keys = keys.with(digit(n));
    }
    let back = Touch::Key(Key::Back);
    keys.with(first)
        .with(digit(0))
        .with(key("key digit", "⌫", "take back the last key", back, touch))
        .with(key("key enter", "ENTER", "ENTER", Touch::Enter, touch))
}

/// The hours of the clock, in place of the keys of a number.
pub fn hours(touch: Callback<Touch>) -> El {
    let mut keys = el("div", "keys hours")
        .set("role", "group")
        .set("aria-label", "Hour of the high spot");
    for hour in 1..=12 {
        let label = NUMBERS.get(usize::from(hour)).copied().unwrap_or("");
        keys = keys.with(key("key digit", label, label, Touch::Hour(hour), touch));
    }
    keys
}

/// A key that acts when the finger comes down, as a keypad does; `click`
/// serves the keyboard and assistive devices, which send no pointer.
fn key(
    class: &'static str,
    label: &'static str,
    name: &'static str,
    touch: Touch,
    on_touch: Callback<Touch>,
) -> El {
    let down = move |event: Event| {
        let event: PointerEvent = event.unchecked_into();
        if event.is_primary() && event.button() == 0 {
            on_touch.run(touch);
        }
    };
    let click = move |event: Event| {
        let event: MouseEvent = event.unchecked_into();
        if event.detail() == 0 {
            on_touch.run(touch);
        }
    };
    el("button", class)
        .set("type", "button")
        .set("aria-label", name)
        .on("pointerdown", down)
        .on("click", click)
        .with(label)
}

/// What a key of a keyboard means; `None` for every other.
pub fn of_keyboard(event: &KeyboardEvent) -> Option<Touch> {
    if event.ctrl_key() || event.meta_key() || event.alt_key() {
        return None;
    }
    let key = event.key();
    match key.as_str() {
        "Enter" => Some(Touch::Enter),
        "Backspace" => Some(Touch::Key(Key::Back)),
        "." | "," => Some(Touch::Key(Key::Point)),
        "+" | "-" => Some(Touch::Key(Key::Sign)),
        digit => {
            let digit = NUMBERS.iter().take(10).position(|d| *d == digit)?;
            Some(Touch::Key(Key::Digit(u8::try_from(digit).ok()?)))
        }
    }
}
