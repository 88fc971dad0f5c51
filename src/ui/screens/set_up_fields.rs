//! The questions of the set-up, for a new session and for one that is there.

use leptos::prelude::*;

use crate::present::{self, NewSession};
use crate::quantity::Unit;
use crate::session::{
    Arrangement, CYLINDERS_MAX, Counting, FirstEnd, MAINS_MAX, NOTE_MAX, RouteChoice, Use,
};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::field::{among, choices, stepper, text_field};
use crate::ui::parts::live::{act, flag, text};
use crate::ui::parts::press::{para, shown_while};

/// A form, and what is done when it changes.
#[derive(Clone, Copy)]
pub struct Form {
    /// What it holds.
    pub form: RwSignal<NewSession>,
    /// What is done after a change.
    pub changed: Callback<()>,
}

impl Form {
    fn read<T>(self, read: impl FnOnce(&NewSession) -> T) -> T {
        self.form.with(read)
    }

    fn write(self, write: impl FnOnce(&mut NewSession)) {
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
            Arrangement::ALL.map(|a| (a, present::arrangement(a))),
            |f| f.arrangement,
            NewSession::set_arrangement,
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
        .with(counted(
            form,
            "Rods on a throw",
            2,
            |f| f.rods_per_throw,
            |f, n| {
                f.rods_per_throw = n;
            },
        ))
        .with(choice(
            form,
            "Unit",
            Unit::ALL.map(|u| (u, u.sign())),
            |f| f.unit,
            |f, u| f.unit = u,
        ))
        .with(choice(
            form,
            "Route",
            RouteChoice::ALL.map(|r| (r, present::route_choice(r))),
            |f| f.route,
            |f, r| f.route = r,
        ))
        .with(blind)
        .with(more(form))
}

/// What has a good default, or can wait.
fn more(form: Form) -> El {
    let bore = text(move || form.read(|f| f.bore.clone()));
    let set_bore = Callback::new(move |bore| form.write(|f| f.bore = bore));
    let unit = text(move || format!("Bore as made, {}", form.read(|f| f.unit.sign())));
    let told = "With the oversize, if it was bored before. Blank where you do not know.";
    let counting = choice(
        form,
        "Cylinders are counted",
        Counting::ALL.map(|c| (c, present::counting(c))),
        |f| f.counting,
        |f, c| f.counting = c,
    );
    let one_bank = flag(move || !form.read(NewSession::has_banks));
    el("details", "more")
        .with(el("summary", "").with("Bore as made, use, which end is 1"))
        .with(text_field(unit, bore, set_bore, NOTE_MAX).with(el("small", "").with(told)))
        .with(choice(
            form,
            "Use",
            Use::ALL.map(|u| (u, present::machine_use(u))),
            |f| f.machine_use,
            |f, u| f.machine_use = u,
        ))
        .with(choice(
            form,
            "Number 1 is at",
            FirstEnd::ALL.map(|e| (e, present::first_end(e))),
            |f| f.first_end,
            |f, e| f.first_end = e,
        ))
        .with(el("div", "").when("hidden", one_bank).with(counting))
}

/// A choice for a field of the set-up.
fn choice<T, const N: usize>(
    form: Form,
    legend: &'static str,
    options: [(T, &'static str); N],
    read: fn(&NewSession) -> T,
    write: fn(&mut NewSession, T),
) -> El
where
    T: Copy + PartialEq + Send + Sync + 'static,
{
    let (chosen, choose) = among(
        options.map(|(value, _)| value),
        move || form.read(read),
        move |value| form.write(|form| write(form, value)),
    );
    let options = options.map(|(_, label)| label.to_owned()).to_vec();
    choices(legend, options, chosen, choose)
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
