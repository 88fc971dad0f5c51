//! A shake in the hand that holds the phone. Many phones have none and some
//! browsers hide it, so it only repeats what the screen already shows.

use js_sys::{Array, Reflect};
use web_sys::Navigator;

/// How long the shake for an accepted key lasts, in milliseconds.
const TICK_MS: u32 = 15;
/// Shake, pause, shake for a refusal, in milliseconds each.
const REFUSE_MS: [u32; 3] = [40, 60, 40];

/// A key was accepted.
pub fn tick() {
    if let Some(navigator) = able() {
        // False where the person has not touched the page yet; there is nothing to do about it.
        navigator.vibrate_with_duration(TICK_MS);
    }
}

/// An entry was refused.
pub fn refuse() {
    if let Some(navigator) = able() {
        let pattern: Array = REFUSE_MS
            .iter()
            .map(|&ms| wasm_bindgen::JsValue::from(ms))
            .collect();
        navigator.vibrate_with_pattern(&pattern);
    }
}

fn able() -> Option<Navigator> {
    let navigator = web_sys::window()?.navigator();
    Reflect::has(&navigator, &"vibrate".into())
        .unwrap_or(false)
        .then_some(navigator)
}
