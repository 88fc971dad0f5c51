//! A new session in one screen.

use leptos::prelude::*;

use super::set_up_fields::SetUpFields;
use crate::present::NewSession;
use crate::ui::parts::live::{said, some};
use crate::ui::parts::press::{Press, act};
use crate::ui::state::State;
use crate::ui::way::{Sheet, go, sheet_address};

/// Asks for the layout and starts measuring; all else has a default.
#[component]
pub fn New() -> impl IntoView {
    let state = State::get();
    state.leave();
    let form = RwSignal::new(NewSession::default());
    let told = RwSignal::new(None::<String>);
    let start = act(move || match form.with_untracked(NewSession::check) {
        Err(why) => told.set(Some(why)),
        Ok(()) => {
            let id = form.with_untracked(|form| state.create(form));
            go(&sheet_address(&id, Sheet::Route));
        }
    });
    view! {
        <nav class="bar" aria-label="Bench"><a href="#/">"Bench"</a></nav>
        <div class="sheet">
            <h1>"New session"</h1>
            <SetUpFields form changed=act(|| ())/>
            <p>"Limits and gauges can wait; the set-up can be changed at any time."</p>
            {some(move || told.get(), |why| said("refusal", "refused", why))}
            <Press label="Start measuring" act=start class="main"/>
        </div>
    }
}
