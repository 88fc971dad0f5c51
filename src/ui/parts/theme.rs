//! How the screens look: ink on paper for the sun, or dark for the night.

use leptos::prelude::*;

use super::field::{Choices, among};
use crate::device::page;
use crate::store::keeper;

const THEMES: [&str; 2] = ["sun", "night"];

/// The choice of theme.
#[component]
pub fn ThemeChoice() -> impl IntoView {
    let now = page::theme().unwrap_or_default();
    let [sun, night] = THEMES;
    let theme = RwSignal::new(if now == night { night } else { sun });
    let (chosen, choose) = among(
        THEMES,
        move || theme.get(),
        move |chosen| {
            theme.set(chosen);
            page::set_theme(chosen);
            keeper::keep_theme(chosen);
        },
    );
    let options = vec!["Sun".to_owned(), "Night garage".to_owned()];
    view! { <Choices legend="Light".to_owned() options chosen choose/> }
}
