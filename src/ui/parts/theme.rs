//! How the screens look: ink on paper for the sun, or dark for the night.

use leptos::prelude::*;

use super::el::El;
use super::field::choices;
use super::held::Held;
use crate::device::page;
use crate::store::keeper;

const SUN: &str = "sun";
const NIGHT: &str = "night";

/// The choice of theme.
pub fn theme_choice() -> El {
    let now = page::theme().unwrap_or_default();
    let chosen = Held::new(usize::from(now == NIGHT));
    let choose = Callback::new(move |at| {
        let theme = if at == 0 { SUN } else { NIGHT };
        chosen.set(at);
        page::set_theme(theme);
        keeper::keep_theme(theme);
    });
    let options = vec!["Sun".to_owned(), "Night garage".to_owned()];
    choices("Light", options, chosen.into(), choose)
}
