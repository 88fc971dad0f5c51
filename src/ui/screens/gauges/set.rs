//! The form that sets a gauge, or checks it on a standard.

use leptos::prelude::*;

use super::LENGTH_MAX;
use crate::present::{self, GaugeRow, SetForm, SetOn};
use crate::session::{Feature, Kind, Sense};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::field::{choices, stepper, text_field};
use crate::ui::parts::held::Held;
use crate::ui::parts::live::{act, flag, text};
use crate::ui::parts::press::{main_press, para, refusal};
use crate::ui::state::{Change, State};

/// What a micrometer can be locked on.
const LOCKED_ON: [Kind; 3] = [Kind::Piston, Kind::MainJournal, Kind::RodJournal];

/// The fields of the form: places among the choices, and what is typed.
#[derive(Clone, Copy)]
struct Fields {
    on: Held<usize>,
    kind: Held<usize>,
    position: Held<usize>,
    sense: Held<usize>,
    size: Held<String>,
    shows: Held<String>,
}

impl Fields {
    fn of(form: SetForm) -> Self {
        Self {
            on: Held::new(0),
            kind: Held::new(0),
            position: Held::new(1),
            // None of them, until somebody says.
            sense: Held::new(Sense::ALL.len()),
            size: Held::new(form.size),
            shows: Held::new(form.shows),
        }
    }

    fn feature(self) -> Feature {
        let kind = LOCKED_ON.get(self.kind.get()).copied();
        Feature {
            kind: kind.unwrap_or(Kind::Piston),
            position: u8::try_from(self.position.get()).unwrap_or(1),
        }
    }

    fn form(self) -> SetForm {
        SetForm {
            on: SetOn::ALL
                .get(self.on.get())
                .copied()
                .unwrap_or(SetOn::Standard),
            feature: self.feature(),
            size: self.size.get(),
            shows: self.shows.get(),
            sense: Sense::ALL.get(self.sense.get()).copied(),
        }
    }
}

/// The form of a gauge, folded until it is wanted or nothing can be read.
pub fn set_form(row: GaugeRow) -> El {
    let state = State::get();
    let fields = Fields::of(SetForm::of(&row.gauge));
    let refused = Held::new(None::<String>);
    let deviations = row.gauge.kind.reads_deviations();
    let sign = row.gauge.unit().sign();
    let not_feature = flag(move || SetOn::ALL.get(fields.on.get()) != Some(&SetOn::Feature));
    let feature = el("div", "")
        .when("hidden", not_feature)
        .with(feature(state, fields, &row));
    let names = SetOn::ALL.map(|on| present::set_on(on).to_owned());
    let on = one_of(format!("{}: set on", row.title), names.into(), fields.on);
    let senses = Sense::ALL.map(|sense| present::sense(sense).to_owned());
    let dial = format!("{}: the dial", row.title);
    let sense = deviations.then(|| one_of(dial, senses.into(), fields.sense));
    let word = if deviations {
        "Set it"
    } else {
        "Check it on a standard"
    };
    let unset = row.unset;
    let keep = act(move || {
        let edit = untrack(|| fields.form()).edit(&row);
        let done = edit.and_then(|edit| state.change(Change::Edit(&edit)));
        refused.set(done.err());
    });
    let form = el("details", "more")
        .with(el("summary", "").with(word))
        .with(para("", present::why_set(deviations)))
        .with(on)
        .with(feature)
        .with(line(format!("Its size, {sign}"), fields.size))
        .with(line(
            format!("What the gauge shows on it, {sign}"),
            fields.shows,
        ))
        .with(sense)
        .with(refusal(refused))
        .with(main_press("Keep this setting", keep));
    if unset { form.set("open", "") } else { form }
}

fn one_of(legend: String, names: Vec<String>, chosen: Held<usize>) -> El {
    let choose = Callback::new(move |at| chosen.set(at));
    choices(&legend, names, chosen.into(), choose)
}

/// A length to be typed.
pub fn line(label: String, typed: Held<String>) -> El {
    let set = Callback::new(move |text| typed.set(text));
    text_field(label, typed.into(), set, LENGTH_MAX)
}

/// The feature the micrometer is locked on, and what was read there.
fn feature(state: State, fields: Fields, row: &GaugeRow) -> El {
    let unit = row.gauge.unit();
    let fill = move || {
        let form = untrack(|| fields.form());
        let size = state.peek(|s, _| form.size_read(s, unit));
        fields.size.set(size.unwrap_or_default());
    };
    let choose = Callback::new(move |at| {
        fields.kind.set(at);
        fields.position.set(1);
        fill();
    });
    let names = LOCKED_ON.map(|kind| present::kind(kind).to_owned());
    let step = move |by: fn(usize) -> usize, end: fn(usize) -> usize| {
        let step = act(move || {
            fields.position.set(by(fields.position.now()));
            fill();
        });
        let at_end = flag(move || {
            let count = state.now(|s, _| s.count(fields.feature().kind));
            fields.position.get() == end(count.unwrap_or(1).into())
        });
        (step, at_end)
    };
    let position = text(move || fields.position.get().to_string());
    let less = step(|n| n.saturating_sub(1), |_| 1);
    let more = step(|n| n.saturating_add(1), |last| last);
    el("div", "")
        .with(choices(
            &format!("{}: locked on", row.title),
            names.into(),
            fields.kind.into(),
            choose,
        ))
        .with(stepper("Which one", position, less, more))
}
