//! How the screens look: ink on paper for the sun, or dark for the night.

use leptos::prelude::*;

use super::field::Choices;
use crate::device::page;
use crate::store::keeper;

const SUN: &str = "sun";
const NIGHT: &str = "night";

/// The choice of theme.
#[component]
pub fn ThemeChoice() -> impl IntoView {
    let now = page::theme().unwrap_or_default();
    let chosen = RwSignal::new(usize::from(now == NIGHT));
    let choose = Callback::new(move |at| {
        let theme = if at == 0 { SUN } else { NIGHT };
        chosen.set(at);
        page::set_theme(theme);
        keeper::keep_theme(theme);
    });
    let options = vec!["Sun".to_owned(), "Night garage".to_owned()];
    view! { <Choices legend="Light".to_owned() options chosen=chosen.into() choose/> }
}
