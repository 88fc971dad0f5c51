//! The form that sets a gauge, or checks it on a standard.

use leptos::prelude::*;

use super::LENGTH_MAX;
use crate::present::{self, GaugeRow, SetForm, SetOn};
use crate::session::{Feature, Kind, Sense};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::field::{among, choices, stepper, text_field};
use crate::ui::parts::live::{act, flag, text};
use crate::ui::parts::press::{main_press, refusal};
use crate::ui::state::{Change, State};

/// What a micrometer can be locked on.
const LOCKED_ON: [Kind; 3] = [Kind::Piston, Kind::MainJournal, Kind::RodJournal];

/// The form of a gauge, folded until it is wanted or nothing can be read.
pub fn set_form(state: State, row: GaugeRow) -> El {
    let form = RwSignal::new(SetForm::of(&row.gauge));
    let refused = RwSignal::new(None::<String>);
    let deviations = row.gauge.kind.reads_deviations();
    let unit = row.gauge.unit();
    let title = row.title.clone();
    let (on, set_on) = among(
        SetOn::ALL,
        move || form.with(|f| f.on),
        move |on| form.update(|f| f.on = on),
    );
    let names = SetOn::ALL.map(|on| present::set_on(on).to_owned());
    let on = choices(&format!("{title}: set on"), names.into(), on, set_on);
    let not_feature = flag(move || form.with(|f| f.on != SetOn::Feature));
    let feature = el("div", "")
        .when("hidden", not_feature)
        .with(feature(state, form, &row));
    let line =
        move |label: String, read: fn(&SetForm) -> &String, write: fn(&mut SetForm, String)| {
            let value = text(move || form.with(|f| read(f).clone()));
            let set = Callback::new(move |typed| form.update(|f| write(f, typed)));
            text_field(label, value, set, LENGTH_MAX)
        };
    let sign = unit.sign();
    let size = line(format!("Its size, {sign}"), |f| &f.size, |f, t| f.size = t);
    let shows = line(
        format!("What the gauge shows on it, {sign}"),
        |f| &f.shows,
        |f, t| f.shows = t,
    );
    let sense = deviations.then(|| {
        let (sense, set_sense) = among(
            Sense::ALL.map(Some),
            move || form.with(|f| f.sense),
            move |sense| form.update(|f| f.sense = sense),
        );
        let names = Sense::ALL.map(|sense| present::sense(sense).to_owned());
        choices(
            &format!("{title}: the dial"),
            names.into(),
            sense,
            set_sense,
        )
    });
    let word = if deviations {
        "Set it"
    } else {
        "Check it on a standard"
    };
    let unset = row.unset;
    let done = act(move || {
        let edit = form.with_untracked(|form| form.edit(&row));
        let done = edit.and_then(|edit| state.change(Change::Edit(&edit)));
        refused.set(done.err());
    });
    let form = el("details", "more")
        .with(el("summary", "").with(word))
        .with(on)
        .with(feature)
        .with(size)
        .with(shows)
        .with(sense)
        .with(refusal(refused))
        .with(main_press("Keep this setting", done));
    if unset { form.set("open", "") } else { form }
}

/// The feature the micrometer is locked on, and what was read there.
fn feature(state: State, form: RwSignal<SetForm>, row: &GaugeRow) -> El {
    let unit = row.gauge.unit();
    let fill = move || {
        let size = state.peek(|s, _| form.with_untracked(|f| f.size_read(s, unit)));
        form.update(|f| f.size = size.unwrap_or_default());
    };
    let (kind, set_kind) = among(
        LOCKED_ON,
        move || form.with(|f| f.feature.kind),
        move |kind| {
            form.update(|f| f.feature = Feature { kind, position: 1 });
            fill();
        },
    );
    let names = LOCKED_ON.map(|kind| present::kind(kind).to_owned());
    let count = move || {
        form.with(|f| state.peek(|s, _| s.count(f.feature.kind)))
            .unwrap_or(1)
    };
    let step = move |by: fn(u8) -> u8, end: fn(u8) -> u8| {
        let step = act(move || {
            form.update(|f| f.feature.position = by(f.feature.position));
            fill();
        });
        let at_end = flag(move || form.with(|f| f.feature.position) == end(count()));
        (step, at_end)
    };
    let position = text(move || form.with(|f| f.feature.position).to_string());
    let less = step(|n| n.saturating_sub(1), |_| 1);
    let more = step(|n| n.saturating_add(1), |last| last);
    let stepper = stepper("Which one", position, less, more);
    el("div", "")
        .with(choices(
            &format!("{}: locked on", row.title),
            names.into(),
            kind,
            set_kind,
        ))
        .with(stepper)
}
