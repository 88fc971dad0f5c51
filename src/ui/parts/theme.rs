//! How the screens look: ink on paper for the sun, or dark for the night.

use leptos::prelude::*;

use crate::device::page;
use crate::store::keeper;
use crate::ui::screens::Choices;

const SUN: &str = "sun";
const NIGHT: &str = "night";

/// The choice of theme.
#[component]
pub fn ThemeChoice() -> impl IntoView {
    let now = if page::theme().as_deref() == Some(NIGHT) { NIGHT } else { SUN };
    let theme = RwSignal::new(now);
    let choose = Callback::new(move |chosen| {
        theme.set(chosen);
        page::set_theme(chosen);
        keeper::keep_theme(chosen);
    });
    view! {
        <Choices
            legend="Light"
            options=vec![(SUN, "Sun"), (NIGHT, "Night garage")]
            chosen=theme.into()
            choose
        />
    }
}
