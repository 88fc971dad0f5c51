//! What of the set-up has a good default, or can wait.

use std::sync::Arc;

use leptos::prelude::*;

use super::set_up_fields::{Form, choice, place};
use crate::present::{self, BLOCKS, CLIMATES, CRANKS, NewSession, PISTONS};
use crate::session::{Counting, FirstEnd, NOTE_MAX, Use};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::field::{choices, text_field};
use crate::ui::parts::live::{flag, text};
use crate::ui::parts::press::para;
use crate::uncertainty::Material;

const MORE: &str = "All of it can wait or stay as it is.";

/// The questions, folded.
pub fn more(form: Form) -> AnyView {
    let bore = text(move || form.read(|f| f.bore.clone()));
    let set_bore = Callback::new(move |bore| form.write(|f| f.bore = bore));
    let unit = text(move || format!("Bore as made, {}", form.read(|f| f.unit.sign())));
    let told = "With the oversize, if it was bored before. Blank where you do not know.";
    let counting = choice(
        form,
        "Cylinders are counted",
        Counting::ALL.map(present::counting).to_vec(),
        |f| place(&Counting::ALL, &f.counting),
        |f, at| f.counting = Counting::ALL.get(at).copied().unwrap_or(f.counting),
    );
    let one_bank = flag(move || !form.read(NewSession::has_banks));
    el("details", "more")
        .with(el("summary", "").with("Bore as made, use, warmth, materials, which end is 1"))
        .with(para("", MORE))
        .with(text_field(unit, bore, set_bore, NOTE_MAX).with(el("small", "").with(told)))
        .with(choice(
            form,
            "Use",
            Use::ALL.map(present::machine_use).to_vec(),
            |f| place(&Use::ALL, &f.machine_use),
            |f, at| f.machine_use = Use::ALL.get(at).copied().unwrap_or(f.machine_use),
        ))
        .with(of_the_shop(form))
        .with(choice(
            form,
            "Number 1 is at",
            FirstEnd::ALL.map(present::first_end).to_vec(),
            |f| place(&FirstEnd::ALL, &f.first_end),
            |f, at| f.first_end = FirstEnd::ALL.get(at).copied().unwrap_or(f.first_end),
        ))
        .with(el("div", "").when("hidden", one_bank).with(counting))
        .done()
}

/// What sizes hang on besides.
fn of_the_shop(form: Form) -> El {
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
