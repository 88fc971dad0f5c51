//! The quiz: a drawing, the keypad, and what was right.

use leptos::ev::{Event, KeyboardEvent};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::{drawn, parts};
use crate::device::{buzz, page, random};
use crate::present::instrument::{Quiz, QuizView};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::held::Held;
use crate::ui::parts::keypad::{Touch, keys, of_keyboard};
use crate::ui::parts::live::{act, flag, live, text};
use crate::ui::parts::press::{heading, main_press, para, press};
use crate::ui::way::to_top;

/// The id by which the quiz is given the focus.
const ID: &str = "quiz";

type Held10 = Held<Option<Quiz>>;

fn view(quiz: Held10) -> QuizView {
    quiz.with(|quiz| quiz.as_ref().map(Quiz::view).unwrap_or_default())
}

fn touched(quiz: Held10, touch: Touch) {
    let taken = quiz.update(|quiz| match (quiz, touch) {
        (Some(quiz), Touch::Key(key)) => quiz.press(key),
        (Some(quiz), Touch::Enter) => quiz.enter(),
        _ => false,
    });
    if taken {
        buzz::tick();
    } else {
        buzz::refuse();
    }
}

/// The quiz, until it is left.
pub fn quiz(quiz: Held10) -> El {
    let on_key = move |event: Event| {
        let event: KeyboardEvent = event.unchecked_into();
        let itself = event.target() == event.current_target();
        if let Some(touch) = of_keyboard(&event).filter(|_| itself) {
            event.prevent_default();
            touched(quiz, touch);
        }
    };
    request_animation_frame(|| page::focus(ID));
    let title = text(move || view(quiz).title);
    let drawing = text(move || {
        let view = view(quiz);
        let marked = view.right.is_some();
        view.micrometer.map_or_else(String::new, |m| m.drawing(marked))
    });
    // Made anew from one to the next: to be typed, told, over.
    let stage = text(move || {
        let view = view(quiz);
        format!("{:?}{}", view.right, view.micrometer.is_some())
    });
    let stage = live(move || {
        stage.get();
        to_top();
        let now = untrack(|| view(quiz));
        match (now.micrometer, now.right) {
            (None, _) => over(quiz, now).done(),
            (Some(m), Some(_)) => {
                let next = act(move || touched(quiz, Touch::Enter));
                told(&now.told).with(main_press("Next", next)).with(parts(m)).done()
            }
            (Some(_), None) => asked(quiz).done(),
        }
    });
    el("div", "quiz")
        .set("id", ID)
        .set("tabindex", "-1")
        .on("keydown", on_key)
        .on("mousedown", |event: Event| event.prevent_default())
        .with(el("h1", "").with("What does it read? ").with(el("b", "").id("score").with(title)))
        .with(el("div", "bench").with(drawn(drawing)).with(el("div", "set").with(stage)))
}

/// The number under way, and the keys.
fn asked(quiz: Held10) -> El {
    let part = move |part: fn(QuizView) -> String| text(move || part(view(quiz)));
    let number = el("output", "")
        .id("value")
        .with(el("span", "typed").with(part(|v| v.face.typed)))
        .with(el("span", "open").with(part(|v| "▢".repeat(v.face.open))));
    let unit = el("span", "unit").with(part(|v| v.face.unit.to_owned()));
    let touch = Callback::new(move |touch| touched(quiz, touch));
    el("div", "")
        .with(el("div", "value").with(number).with(unit))
        .with(para("refusal", part(|v| v.refused)).set("role", "alert").id("said"))
        .with(keys(flag(|| true), flag(|| false), touch))
}

fn told(told: &str) -> El {
    let told = para("told", told.to_owned()).set("role", "status").id("answer");
    el("div", "answer").with(told)
}

/// The end: the score, what was wrong once more, and the ways on.
fn over(quiz: Held10, view: QuizView) -> El {
    let more = act(move || {
        quiz.update(|quiz| *quiz = quiz.take().map(|quiz| quiz.again(random::number())));
    });
    let mut over = el("div", "");
    if !view.wrong.is_empty() {
        over = over.with(heading("Once more what was wrong"));
    }
    for (micrometer, why) in view.wrong {
        let drawing = text(move || micrometer.drawing(true));
        let again = el("section", "")
            .id("wrong")
            .with(para("told", why))
            .with(drawn(drawing))
            .with(parts(micrometer));
        over = over.with(again);
    }
    let back = act(move || quiz.set(None));
    over.with(
        para("actions", main_press("Ten more", more)).with(press("Back to the helper", back)),
    )
}
