//! Fields of forms: a line of text, and one of a few.

use std::sync::Arc;

use leptos::prelude::*;

use super::el::{Child, El, el};
use super::live::{act, flag};
use super::press::press;

/// A line of text with its label.
pub fn text_field(
    label: impl Into<Child>,
    value: Signal<String>,
    set: Callback<String>,
    most: usize,
) -> El {
    let input = el("input", "")
        .set("type", "text")
        .set("autocomplete", "off")
        .set("maxlength", &most.to_string());
    field(label, input.value(value).on_input(set))
}

/// An input with its label.
pub fn field(label: impl Into<Child>, input: El) -> El {
    el("label", "field")
        .with(el("span", "").with(label))
        .with(input)
}

/// Which of a few is chosen, followed as the state changes.
pub type Chosen = Arc<dyn Fn() -> usize + Send + Sync>;

/// One of a few, all in sight; answers are told by their place.
pub fn choices(legend: &str, options: Vec<String>, chosen: Chosen, choose: Callback<usize>) -> El {
    let mut set = el("fieldset", "choices").with(el("legend", "").with(legend.to_owned()));
    for (at, label) in options.into_iter().enumerate() {
        let chosen = chosen.clone();
        let box_ = el("input", "")
            .set("type", "radio")
            .set("name", legend)
            .checked(flag(move || chosen() == at))
            .on_change(act(move || choose.run(at)));
        set = set.with(
            el("label", "choice")
                .with(box_)
                .with(el("span", "").with(label)),
        );
    }
    set
}

/// A small count with a key to either side; each key has what it does and
/// when it can do no more.
pub fn stepper(label: &'static str, count: Signal<String>, less: Step, more: Step) -> El {
    let key = |sign: &'static str, name: &str, (step, end): Step| {
        press(sign, step)
            .set("aria-label", &format!("{label}: {name}"))
            .when("disabled", end)
    };
    el("div", "stepper")
        .set("role", "group")
        .set("aria-label", label)
        .with(el("span", "").with(label))
        .with(key("−", "one less", less))
        .with(el("output", "").with(count))
        .with(key("+", "one more", more))
}

/// A key of a stepper.
pub type Step = (Callback<()>, Signal<bool>);

/// A choice among the values of a list, for a field of a form.
pub fn among<T, const N: usize>(
    all: [T; N],
    read: impl Fn() -> T + Send + Sync + 'static,
    write: impl Fn(T) + Send + Sync + 'static,
) -> (Chosen, Callback<usize>)
where
    T: Copy + PartialEq + Send + Sync + 'static,
{
    let place = Arc::new(move || {
        let now = read();
        all.iter().position(|one| *one == now).unwrap_or(N)
    });
    let choose: Box<dyn Fn(usize) + Send + Sync> = Box::new(move |at| {
        if let Some(one) = all.get(at) {
            write(*one);
        }
    });
    (place, Callback::new(choose))
}
