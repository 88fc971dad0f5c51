//! The questions of the set-up, for a new session and for one that is there.

use leptos::prelude::*;

use crate::present::{self, NewSession};
use crate::quantity::Unit;
use crate::session::{Arrangement, CYLINDERS_MAX, MAINS_MAX, NOTE_MAX, RouteChoice};
use crate::ui::parts::field::{Choices, TextField, among};
use crate::ui::parts::live::{flag, some, text};
use crate::ui::parts::press::{Press, act};

/// A form, and what is done when it changes.
#[derive(Clone, Copy)]
struct Form {
    form: RwSignal<NewSession>,
    changed: Callback<()>,
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
#[component]
pub fn SetUpFields(form: RwSignal<NewSession>, changed: Callback<()>) -> impl IntoView {
    let form = Form { form, changed };
    let name = text(move || form.read(|f| f.name.clone()));
    let set_name = Callback::new(move |name| form.write(|f| f.name = name));
    let usual = text(move || form.read(NewSession::usual_name));
    let blind = some(
        move || form.read(|f| (f.route == RouteChoice::Plain).then_some(())),
        |()| view! { <p class="honest">{present::PLAIN_ROUTE_BLIND}</p> }.into_any(),
    );
    view! {
        <TextField label=("", "Name") value=name set=set_name most=NOTE_MAX as u16 hint=usual/>
        {choice(
            form,
            "Cylinders stand",
            Arrangement::ALL.map(|a| (a, present::arrangement(a))),
            |f| f.arrangement,
            NewSession::set_arrangement,
        )}
        {stepper(form, "Cylinders", CYLINDERS_MAX, |f| f.cylinders, NewSession::set_cylinders)}
        {stepper(form, "Main journals", MAINS_MAX, |f| f.mains, |f, n| f.mains = n)}
        {stepper(form, "Rods on a throw", 2, |f| f.rods_per_throw, |f, n| f.rods_per_throw = n)}
        {choice(form, "Unit", Unit::ALL.map(|u| (u, u.sign())), |f| f.unit, |f, u| f.unit = u)}
        {choice(
            form,
            "Route",
            RouteChoice::ALL.map(|r| (r, present::route_choice(r))),
            |f| f.route,
            |f, r| f.route = r,
        )}
        {blind}
    }
}

/// A choice for a field of the set-up.
fn choice<T, const N: usize>(
    form: Form,
    legend: &'static str,
    options: [(T, &'static str); N],
    read: fn(&NewSession) -> T,
    write: fn(&mut NewSession, T),
) -> AnyView
where
    T: Copy + PartialEq + Send + Sync + 'static,
{
    let (chosen, choose) = among(
        options.map(|(value, _)| value),
        move || form.read(read),
        move |value| form.write(|form| write(form, value)),
    );
    let options = options.map(|(_, label)| label.to_owned()).to_vec();
    view! { <Choices legend=legend.to_owned() options chosen choose/> }.into_any()
}

/// A small count with a key to either side.
fn stepper(
    form: Form,
    label: &'static str,
    most: u8,
    read: fn(&NewSession) -> u8,
    write: fn(&mut NewSession, u8),
) -> AnyView {
    let set = move |count: fn(u8) -> Option<u8>| {
        act(move || {
            form.write(|form| {
                if let Some(count) = count(read(form)) {
                    write(form, count);
                }
            });
        })
    };
    let less = set(|count| count.checked_sub(1));
    let more = set(|count| count.checked_add(1));
    let at_least = flag(move || form.read(read) <= 1);
    let at_most = flag(move || most <= form.read(read));
    let count = text(move || form.read(read).to_string());
    view! {
        <div class="stepper" role="group" aria-label=label>
            <span>{label}</span>
            <Press label="−" name=format!("{label}: one less") act=less off=at_least/>
            <output>{count}</output>
            <Press label="+" name=format!("{label}: one more") act=more off=at_most/>
        </div>
    }
    .into_any()
}
