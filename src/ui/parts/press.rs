//! A button.

use leptos::prelude::*;

use super::live::flag;

/// A button that acts when it is pressed.
#[component]
pub fn Press(
    /// What stands on it.
    #[prop(into)]
    label: Signal<String>,
    /// What it does.
    act: Callback<()>,
    /// Its class.
    #[prop(optional)]
    class: &'static str,
    /// Its name for screen readers, where the label says too little alone.
    #[prop(optional)]
    name: Option<String>,
    /// Its name for the tests.
    #[prop(optional)]
    testid: &'static str,
    /// Whether it can be pressed.
    #[prop(optional)]
    off: Option<Signal<bool>>,
) -> impl IntoView {
    let off = off.unwrap_or_else(|| flag(|| false));
    view! {
        <button
            type="button"
            class=class
            aria-label=name
            data-testid=testid
            disabled=off
            on:click=move |_| act.run(())
        >
            {label}
        </button>
    }
}

/// The action of a button.
pub fn act(act: impl Fn() + Send + Sync + 'static) -> Callback<()> {
    let act: Box<dyn Fn() + Send + Sync> = Box::new(act);
    Callback::new(move |()| act())
}
