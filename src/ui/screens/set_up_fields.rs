//! The questions of the set-up, for a new session and for one that is there.

use std::sync::Arc;

use leptos::prelude::*;

use super::later::{self, Part};
use super::loaded::loaded;
use crate::present::{self, NewSession};
use crate::quantity::Unit;
use crate::session::{Arrangement, CYLINDERS_MAX, MAINS_MAX, NOTE_MAX, RouteChoice};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::field::{choices, stepper, text_field};
use crate::ui::parts::held::Held;
use crate::ui::parts::live::{act, flag, text};
use crate::ui::parts::press::{para, shown_while};

const RODS: &str = "Two where rods share a crankpin, as in most V engines.";
const UNIT: &str = "What your micrometer reads in; each gauge and each manual can have its own.";
const ROUTE: &str = "Standard shows an oval whichever way it lies. Fuller takes longer and sees \
                     more; plain is the quickest.";

/// A form, and what is done when it changes.
#[derive(Clone, Copy)]
pub struct Form {
    /// What it holds.
    pub form: Held<NewSession>,
    /// What is done after a change.
    pub changed: Callback<()>,
}

impl Form {
    pub(super) fn read<T>(self, read: impl FnOnce(&NewSession) -> T) -> T {
        self.form.with(read)
    }

    pub(super) fn write(self, write: impl FnOnce(&mut NewSession)) {
        self.form.update(write);
        self.changed.run(());
    }
}

/// Name, layout, unit and route.
pub fn set_up_fields(form: Form) -> El {
    let name = text(move || form.read(|f| f.name.clone()));
    let set_name = Callback::new(move |name| form.write(|f| f.name = name));
    let usual = text(move || form.read(|f| format!("“{}” unless you say", f.usual_name())));
    let blind = shown_while(
        move || form.read(|f| f.route == RouteChoice::Plain),
        || para("honest", present::PLAIN_ROUTE_BLIND).done(),
    );
    el("div", "fields")
        .with(text_field("Name", name, set_name, NOTE_MAX).with(el("small", "").with(usual)))
        .with(choice(
            form,
            "Cylinders stand",
            Arrangement::ALL.map(present::arrangement).to_vec(),
            |f| place(&Arrangement::ALL, &f.arrangement),
            |f, at| {
                Arrangement::ALL
                    .into_iter()
                    .nth(at)
                    .into_iter()
                    .for_each(|a| f.set_arrangement(a));
            },
        ))
        .with(counted(
            form,
            "Cylinders",
            CYLINDERS_MAX,
            |f| f.cylinders,
            NewSession::set_cylinders,
        ))
        .with(counted(
            form,
            "Main journals",
            MAINS_MAX,
            |f| f.mains,
            |f, n| f.mains = n,
        ))
        .with(
            counted(
                form,
                "Rods on a throw",
                2,
                |f| f.rods_per_throw,
                |f, n| {
                    f.rods_per_throw = n;
                },
            )
            .with(el("small", "").with(RODS)),
        )
        .with(
            choice(
                form,
                "Unit",
                Unit::ALL.map(Unit::sign).to_vec(),
                |f| place(&Unit::ALL, &f.unit),
                |f, at| f.unit = Unit::ALL.get(at).copied().unwrap_or(f.unit),
            )
            .with(el("small", "").with(UNIT)),
        )
        .with(
            choice(
                form,
                "Route",
                RouteChoice::ALL.map(present::route_choice).to_vec(),
                |f| place(&RouteChoice::ALL, &f.route),
                |f, at| f.route = RouteChoice::ALL.get(at).copied().unwrap_or(f.route),
            )
            .with(el("small", "").with(ROUTE)),
        )
        .with(blind)
        .with(loaded(false, move || later::part(Part::More(form))))
}

/// A choice for a field of the set-up, by places in a list.
pub(super) fn choice(
    form: Form,
    legend: &'static str,
    options: Vec<&'static str>,
    read: fn(&NewSession) -> usize,
    write: fn(&mut NewSession, usize),
) -> El {
    let options = options.into_iter().map(str::to_owned).collect();
    let shown = Arc::new(move || form.read(read));
    let choose = Callback::new(move |at| form.write(|form| write(form, at)));
    choices(legend, options, shown, choose)
}

/// The place of a value in a list.
pub(super) fn place<T: PartialEq>(all: &[T], one: &T) -> usize {
    all.iter()
        .position(|other| other == one)
        .unwrap_or(all.len())
}

/// A small count.
fn counted(
    form: Form,
    label: &'static str,
    most: u8,
    read: fn(&NewSession) -> u8,
    write: fn(&mut NewSession, u8),
) -> El {
    let step = move |count: fn(u8) -> u8, end: u8| {
        let step = act(move || form.write(|form| write(form, count(read(form)))));
        (step, flag(move || form.read(read) == end))
    };
    let count = text(move || form.read(read).to_string());
    let less = step(|count| count.saturating_sub(1), 1);
    let more = step(|count| count.saturating_add(1), most);
    stepper(label, count, less, more)
}
