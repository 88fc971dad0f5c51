//! A new session in one screen.

use leptos::prelude::*;

use super::set_up_fields::SetUpFields;
use crate::present::NewSession;
use crate::ui::state::State;
use crate::ui::way::{Sheet, go, sheet_address};

/// Asks for the layout and starts measuring; all else has a default.
#[component]
pub fn New() -> impl IntoView {
    let state = State::get();
    state.leave();
    let form = RwSignal::new(NewSession::default());
    let said = RwSignal::new(None::<String>);
    let start = move |_| match form.with_untracked(NewSession::check) {
        Err(why) => said.set(Some(why)),
        Ok(()) => {
            let id = form.with_untracked(|form| state.create(form));
            go(&sheet_address(&id, Sheet::Route));
        }
    };
    view! {
        <nav class="bar" aria-label="Bench"><a href="#/">"Bench"</a></nav>
        <div class="sheet">
            <h1>"New session"</h1>
            <SetUpFields form/>
            <p>"Limits and gauges can wait; the set-up can be changed at any time."</p>
            <p class="actions">
                <button type="button" class="main" on:click=start>"Start measuring"</button>
                {move || said.get().map(|why| view! { <span class="refusal" role="alert">{why}</span> })}
            </p>
        </div>
    }
}
