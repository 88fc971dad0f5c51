//! What is chosen for this phone: light, hand, sound, speech, the screen.

use leptos::prelude::*;

use super::el::{El, el};
use super::field::choices;
use super::held::Held;
use crate::device::page;
use crate::present::{Choice, PHONE};
use crate::store::keeper;

/// Tells the page what was chosen, before anything is shown.
pub fn take_up() {
    for choice in &PHONE {
        let kept = keeper::choice(choice.name);
        page::set(choice.name, choice.word(kept.as_deref()));
    }
}

/// The choices of which this phone is capable.
pub fn this_phone() -> El {
    let all = el("div", "phone");
    PHONE
        .iter()
        .filter(|choice| page::is_able(choice.name))
        .fold(all, |all, choice| all.with(one(choice)))
}

fn one(choice: &'static Choice) -> El {
    let [(usual, _), _] = choice.options;
    let chosen = Held::new(usize::from(!page::is_set(choice.name, usual)));
    let choose = Callback::new(move |at| {
        let kept = choice.options.get(at).map(|(word, _)| *word);
        let word = choice.word(kept);
        chosen.set(at);
        page::set(choice.name, word);
        keeper::keep_choice(choice.name, word);
    });
    let labels = choice.options.map(|(_, label)| label.to_owned());
    choices(choice.legend, labels.into(), chosen.into(), choose)
}
