//! The questions of the set-up, for a new session and for one that is there.

use leptos::prelude::*;

use crate::present::{self, NewSession};
use crate::quantity::Unit;
use crate::session::{Arrangement, CYLINDERS_MAX, MAINS_MAX, RouteChoice};

/// Name, layout, unit and route.
#[component]
pub fn SetUpFields(form: RwSignal<NewSession>) -> impl IntoView {
    let usual = move || form.with(NewSession::usual_name);
    view! {
        <label class="field">
            <span>"Name"</span>
            <input
                type="text"
                maxlength="200"
                autocomplete="off"
                placeholder=usual
                prop:value=move || form.with(|f| f.name.clone())
                on:input=move |event| form.update(|f| f.name = event_target_value(&event))
            />
        </label>
        <Choices
            legend="Cylinders stand"
            options=Arrangement::ALL.map(|a| (a, present::arrangement(a))).to_vec()
            chosen=Signal::derive(move || form.with(|f| f.arrangement))
            choose=Callback::new(move |a| form.update(|f| f.set_arrangement(a)))
        />
        <Stepper
            label="Cylinders"
            most=CYLINDERS_MAX
            value=Signal::derive(move || form.with(|f| f.cylinders))
            set=Callback::new(move |n| form.update(|f| f.set_cylinders(n)))
        />
        <Stepper
            label="Main journals"
            most=MAINS_MAX
            value=Signal::derive(move || form.with(|f| f.mains))
            set=Callback::new(move |n| form.update(|f| f.mains = n))
        />
        <Stepper
            label="Rods on a throw"
            most=2
            value=Signal::derive(move || form.with(|f| f.rods_per_throw))
            set=Callback::new(move |n| form.update(|f| f.rods_per_throw = n))
        />
        <Choices
            legend="Unit"
            options=Unit::ALL.map(|u| (u, u.sign())).to_vec()
            chosen=Signal::derive(move || form.with(|f| f.unit))
            choose=Callback::new(move |u| form.update(|f| f.unit = u))
        />
        <Choices
            legend="Route"
            options=RouteChoice::ALL.map(|r| (r, present::route_choice(r))).to_vec()
            chosen=Signal::derive(move || form.with(|f| f.route))
            choose=Callback::new(move |r| form.update(|f| f.route = r))
        />
        {move || form.with(|f| f.route == RouteChoice::Plain).then(|| view! {
            <p class="honest">{present::PLAIN_ROUTE_BLIND}</p>
        })}
    }
}

/// One of a few, all in sight.
#[component]
pub fn Choices<T>(
    legend: &'static str,
    options: Vec<(T, &'static str)>,
    chosen: Signal<T>,
    choose: Callback<T>,
) -> impl IntoView
where
    T: Copy + PartialEq + Send + Sync + 'static,
{
    let options = options.into_iter().map(move |(option, label)| {
        view! {
            <label class="choice">
                <input
                    type="radio"
                    name=legend
                    prop:checked=move || chosen.get() == option
                    on:change=move |_| choose.run(option)
                />
                <span>{label}</span>
            </label>
        }
    });
    view! {
        <fieldset class="choices"><legend>{legend}</legend>{options.collect_view()}</fieldset>
    }
}

/// A small count with a key to either side.
#[component]
fn Stepper(label: &'static str, most: u8, value: Signal<u8>, set: Callback<u8>) -> impl IntoView {
    let less = move |_| set.run(value.get_untracked().saturating_sub(1));
    let more = move |_| set.run(value.get_untracked().saturating_add(1));
    view! {
        <div class="stepper" role="group" aria-label=label>
            <span>{label}</span>
            <button type="button" aria-label=format!("{label}: one less") disabled=move || value.get() <= 1 on:click=less>"−"</button>
            <output>{move || value.get()}</output>
            <button type="button" aria-label=format!("{label}: one more") disabled=move || most <= value.get() on:click=more>"+"</button>
        </div>
    }
}
