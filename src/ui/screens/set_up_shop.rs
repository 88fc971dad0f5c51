//! How warm it is, and what the parts are made of: what sizes hang on.

use std::sync::Arc;

use leptos::prelude::*;

use super::set_up_fields::{Form, choice, place};
use crate::present::{self, BLOCKS, CLIMATES, CRANKS, NewSession, PISTONS};
use crate::session::NOTE_MAX;
use crate::ui::parts::el::{El, el};
use crate::ui::parts::field::{choices, text_field};
use crate::ui::parts::live::text;
use crate::uncertainty::Material;

/// The questions.
pub fn of_the_shop(form: Form) -> El {
    el("div", "")
        .with(warmth(form))
        .with(material(form, "The block is", &BLOCKS, |f| &mut f.block))
        .with(material(form, "Pistons are", &PISTONS, |f| &mut f.pistons))
        .with(material(form, "The crankshaft is", &CRANKS, |f| {
            &mut f.crank
        }))
}

/// How warm it is where the gauges are.
fn warmth(form: Form) -> El {
    let degrees = text(move || form.read(|f| f.degrees.clone()));
    let set = Callback::new(move |degrees| form.write(|f| f.degrees = degrees));
    let told =
        "By a thermometer beside the parts; blank to go by the word. Sizes are meant at 20 °C.";
    let word = choice(
        form,
        "The shop is",
        CLIMATES.map(present::climate).to_vec(),
        |f| match f.degrees.trim() {
            "" => place(&CLIMATES, &f.climate),
            _ => CLIMATES.len(),
        },
        |f, at| {
            f.climate = CLIMATES.get(at).copied().unwrap_or_default();
            f.degrees.clear();
        },
    );
    let field = text_field("Degrees, °C", degrees, set, NOTE_MAX);
    el("div", "")
        .with(word)
        .with(field.with(el("small", "").with(told)))
}

/// What a part is made of.
fn material(
    form: Form,
    legend: &'static str,
    all: &'static [Material],
    of: fn(&mut NewSession) -> &mut Material,
) -> El {
    let names = all.iter().map(|one| present::material(*one).to_owned());
    let shown = Arc::new(move || form.read(|f| place(all, of(&mut f.clone()))));
    let choose = Callback::new(move |at: usize| {
        if let Some(one) = all.get(at) {
            form.write(|f| *of(f) = *one);
        }
    });
    choices(legend, names.collect(), shown, choose)
}
