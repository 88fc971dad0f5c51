//! The quiz: the keypad, and what was right.

use leptos::ev::{Event, KeyboardEvent};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::sum;
use crate::device::feel::{Felt, feel};
use crate::device::{page, random};
use crate::present::instrument::{Helper, Quiz};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::held::Held;
use crate::ui::parts::keypad::{Touch, keys, of_keyboard};
use crate::ui::parts::live::{act, flag, text};
use crate::ui::parts::press::{main_press, para, press};
use crate::ui::way::to_top;

/// The id by which the keypad is given the focus.
const ID: &str = "quiz";

/// The quiz as it stands: to be typed, told, or over.
pub fn stage(held: Held<Helper>) -> El {
    to_top();
    let Some(quiz) = held.peek(|h| h.quiz.clone()) else {
        return el("div", "");
    };
    if quiz.micrometer().is_none() {
        return over(held, &quiz);
    }
    match (quiz.told(), quiz.micrometer()) {
        (Some(told), Some(micrometer)) => el("div", "reads")
            .with(para("told", told).set("role", "status").id("answer"))
            .with(main_press(
                "Next",
                act(move || {
                    touched(held, Touch::Enter);
                }),
            ))
            .with(sum(micrometer)),
        _ => asked(held),
    }
}

fn touched(held: Held<Helper>, touch: Touch) -> bool {
    let taken = held.update(|h| match (&mut h.quiz, touch) {
        (Some(quiz), Touch::Key(key)) => quiz.press(key),
        (Some(quiz), Touch::Enter) => quiz.enter(),
        _ => false,
    });
    if taken {
        feel(Felt::Key);
    } else {
        feel(Felt::Refusal);
    }
    taken
}

/// The number under way, and the keys.
fn asked(held: Held<Helper>) -> El {
    let part = move |part: fn(&Quiz) -> String| {
        text(move || held.with(|h| h.quiz.as_ref().map_or_else(String::new, part)))
    };
    let number = part(|quiz| {
        let face = quiz.face();
        face.typed + &"▢".repeat(face.open) + " " + face.unit
    });
    let refused = part(|quiz| quiz.refused().to_owned());
    let on_key = move |event: Event| {
        let event: KeyboardEvent = event.unchecked_into();
        if let Some(touch) = of_keyboard(&event) {
            event.prevent_default();
            touched(held, touch);
        }
    };
    // A touch acts at once; the click that follows would meet what stands in
    // its place by then.
    let stay = |event: Event| event.prevent_default();
    request_animation_frame(|| page::focus(ID));
    let touch = Callback::new(move |touch| touched(held, touch));
    el("div", "quiz")
        .set("id", ID)
        .set("tabindex", "-1")
        .on("keydown", on_key)
        .on("mousedown", stay)
        .on("touchstart", stay)
        .with(el("output", "value").id("value").with(number))
        .with(el("div", "pad").with(keys(flag(|| true), flag(|| false), touch)))
        .with(para("refusal", refused).set("role", "alert").id("said"))
}

/// The end: what was wrong once more, and the ways on.
fn over(held: Held<Helper>, quiz: &Quiz) -> El {
    let more = act(move || held.update(|h| h.quiz = Some(Quiz::new(h.held, random::number()))));
    let back = act(move || held.update(|h| h.quiz = None));
    let mut over = el("div", "reads");
    for (micrometer, told) in quiz.wrong() {
        let drawing = text(move || micrometer.drawing(true));
        over = over
            .with(para("told", told).id("wrong"))
            .with(el("div", "instrument").markup(drawing))
            .with(sum(micrometer));
    }
    over.with(main_press("Ten more", more))
        .with(press("Back to the helper", back))
}
