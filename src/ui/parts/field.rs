//! Fields of forms: a line of text, and one of a few.

use leptos::prelude::*;

use super::live::flag;

/// A line of text with its label.
#[component]
pub fn TextField(
    /// The label, the part in bold first.
    label: (&'static str, &'static str),
    /// What stands in it.
    value: Signal<String>,
    /// Takes what is typed.
    set: Callback<String>,
    /// Most characters.
    most: u16,
    /// What it means to leave it empty.
    #[prop(optional)]
    hint: Option<Signal<String>>,
    /// True for a number.
    #[prop(optional)]
    decimal: bool,
) -> impl IntoView {
    let (bold, plain) = label;
    view! {
        <label class="field">
            <span><b>{bold}</b>{plain}</span>
            <input
                type="text"
                inputmode=if decimal { "decimal" } else { "text" }
                autocomplete="off"
                maxlength=most.to_string()
                placeholder=hint
                prop:value=value
                on:input=move |event| set.run(event_target_value(&event))
            />
        </label>
    }
}

/// One of a few, all in sight.
#[component]
pub fn Choices(
    /// The question.
    legend: String,
    /// The answers.
    options: Vec<String>,
    /// Which is chosen, by place.
    chosen: Signal<usize>,
    /// Takes the place of what is chosen.
    choose: Callback<usize>,
) -> impl IntoView {
    let option = |(at, label): (usize, String)| {
        let checked = flag(move || chosen.get() == at);
        view! {
            <label class="choice">
                <input type="radio" name=legend.clone() prop:checked=checked on:change=move |_| choose.run(at)/>
                <span>{label}</span>
            </label>
        }
        .into_any()
    };
    let options: Vec<AnyView> = options.into_iter().enumerate().map(option).collect();
    view! {
        <fieldset class="choices"><legend>{legend.clone()}</legend>{options}</fieldset>
    }
}

/// A choice among the values of a list, for a field of a form.
pub fn among<T, const N: usize>(
    all: [T; N],
    read: impl Fn() -> T + Send + Sync + 'static,
    write: impl Fn(T) + Send + Sync + 'static,
) -> (Signal<usize>, Callback<usize>)
where
    T: Copy + PartialEq + Send + Sync + 'static,
{
    let read: Box<dyn Fn() -> usize + Send + Sync> = Box::new(move || {
        let now = read();
        all.iter().position(|one| *one == now).unwrap_or(N)
    });
    let write: Box<dyn Fn(usize) + Send + Sync> = Box::new(move |at| {
        if let Some(one) = all.get(at) {
            write(*one);
        }
    });
    (
        Signal::derive(move || read()),
        Callback::new(move |at| write(at)),
    )
}
