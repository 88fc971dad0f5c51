//! A new session in one screen.

use leptos::prelude::*;

use super::set_up_fields::{Form, set_up_fields};
use crate::present::NewSession;
use crate::ui::parts::el::el;
use crate::ui::parts::held::Held;
use crate::ui::parts::live::act;
use crate::ui::parts::press::{link, main_press, para, refusal};
use crate::ui::state::State;
use crate::ui::way::{Sheet, go, sheet_address};

/// Asks for the layout and starts measuring; all else has a default.
pub fn new() -> AnyView {
    let state = State::get();
    state.leave();
    let form = Held::new(NewSession::default());
    let told = Held::new(None::<String>);
    let start = act(move || match form.peek(|form| state.create(form)) {
        Err(why) => told.set(Some(why)),
        Ok(id) => go(&sheet_address(&id, Sheet::Route)),
    });
    let bar = el("nav", "bar")
        .set("aria-label", "Bench")
        .with(link("", "#/", "Bench"));
    let changed = act(|| ());
    let later = "Limits and gauges can wait; the set-up can be changed at any time.";
    let sheet = el("div", "sheet")
        .with(el("h1", "").with("New session"))
        .with(set_up_fields(Form { form, changed }))
        .with(para("", later))
        .with(refusal(told))
        .with(main_press("Start measuring", start));
    el("div", "").with(bar).with(sheet).done()
}
