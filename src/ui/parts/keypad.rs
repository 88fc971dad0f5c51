//! The keypad: large keys that act when touched.

use leptos::ev::{KeyboardEvent, MouseEvent, PointerEvent};
use leptos::prelude::*;

use super::live::live;
use crate::present::Key;

/// What a touch of the keypad means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Touch {
    /// A key of the number.
    Key(Key),
    /// ENTER.
    Enter,
}

/// The keys, 0 at the bottom, ENTER below them across the full width.
///
/// A key acts when the finger comes down, as a keypad does; `click` serves
/// the keyboard and assistive devices, which send no pointer.
#[component]
pub fn Keys(whole: Signal<bool>, touch: Callback<Touch>) -> impl IntoView {
    let key = move |key: Key, label: &'static str, name: &'static str, class: &'static str| {
        view! { <PadKey touch=Touch::Key(key) on=touch label name class/> }.into_any()
    };
    let digits = [7, 8, 9, 4, 5, 6, 1, 2, 3].map(|digit: u8| {
        let label = DIGITS.get(usize::from(digit)).copied().unwrap_or("");
        key(Key::Digit(digit), label, label, "key digit")
    });
    let digits: Vec<AnyView> = digits.into();
    let first = live(move || {
        if whole.get() {
            key(Key::Point, ".", "decimal point", "key digit")
        } else {
            key(Key::Whole, "enter as read", "enter as read", "key word")
        }
    });
    view! {
        <div class="keys" role="group" aria-label="Keypad">
            {digits}
            {first}
            {key(Key::Digit(0), "0", "0", "key digit")}
            {key(Key::Back, "⌫", "take back the last key", "key digit")}
            <PadKey touch=Touch::Enter on=touch label="ENTER" name="ENTER" class="key enter"/>
        </div>
    }
}

const DIGITS: [&str; 10] = ["0", "1", "2", "3", "4", "5", "6", "7", "8", "9"];

#[component]
fn PadKey(
    touch: Touch,
    on: Callback<Touch>,
    label: &'static str,
    name: &'static str,
    class: &'static str,
) -> impl IntoView {
    let down = move |event: PointerEvent| {
        // The focus stays where it is, so that a keyboard goes on working.
        event.prevent_default();
        if event.is_primary() && event.button() == 0 {
            on.run(touch);
        }
    };
    let click = move |event: MouseEvent| {
        if event.detail() == 0 {
            on.run(touch);
        }
    };
    view! {
        <button
            type="button"
            class=class
            aria-label=name
            on:pointerdown=down
            on:mousedown=move |event| event.prevent_default()
            on:click=click
        >
            {label}
        </button>
    }
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
        digit => {
            let digit = DIGITS.iter().position(|d| *d == digit)?;
            Some(Touch::Key(Key::Digit(u8::try_from(digit).ok()?)))
        }
    }
}
