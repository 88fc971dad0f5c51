//! Opening a file: what it holds is shown before anything is stored.

use leptos::html::Input;
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::archive::{self, Incoming};
use crate::present;
use crate::store::{file, sample};
use crate::ui::parts::live::{flag, said, some};
use crate::ui::parts::press::{Press, act};
use crate::ui::state::State;

/// Open a file, or the sample.
#[component]
pub fn OpenFile() -> impl IntoView {
    let state = State::get();
    let refused = RwSignal::new(None::<String>);
    let input = NodeRef::<Input>::new();
    let take = move |text: Result<String, String>| {
        let read = text.and_then(|text| archive::import(&text).map_err(|why| why.to_string()));
        match read {
            Ok(incoming) => {
                refused.set(None);
                state.incoming.set(Some(incoming));
            }
            Err(why) => {
                state.incoming.set(None);
                refused.set(Some(format!("{why} Nothing was changed.")));
            }
        }
    };
    let chosen = move |_| {
        let Some(input) = input.get_untracked() else {
            return;
        };
        let first = input.files().and_then(|files| files.get(0));
        // The same file can be chosen again.
        input.set_value("");
        if let Some(chosen) = first {
            spawn_local(async move {
                take(file::read(chosen).await.map_err(|why| why.to_string()));
            });
        }
    };
    let try_sample = act(move || {
        spawn_local(async move {
            take(sample::fetch().await.map_err(|why| why.to_string()));
        });
    });
    view! {
        <p class="actions">
            <label class="button">
                "Open a file"
                <input type="file" class="unseen" accept=".json,.txt,application/json,text/plain" node_ref=input on:change=chosen data-testid="file"/>
            </label>
            <Press label="Try the sample" act=try_sample/>
        </p>
        {some(move || refused.get(), |why| said("refusal", "refused", why))}
        {some(move || state.incoming.get(), before)}
    }
}

/// What the opened file holds, and the question whether to take it in.
fn before(incoming: Incoming) -> AnyView {
    let state = State::get();
    let here = state.find(&incoming.session.id);
    let preview = present::preview(&incoming, here.as_ref());
    let put_down = act(move || state.incoming.set(None));
    let take_in = act(move || {
        if let Some(incoming) = state.incoming.get_untracked() {
            state.take_in(&incoming.session);
            state.incoming.set(None);
        }
    });
    let lines = preview
        .lines
        .into_iter()
        .map(|line| view! { <p>{line}</p> }.into_any());
    let lines: Vec<AnyView> = lines.collect();
    let nothing_new = preview.nothing_new;
    view! {
        <section class="preview" data-testid="preview" aria-live="polite">
            <h2>{preview.name}</h2>
            {preview.warning.map(|told| said("refusal", "warning", told))}
            {lines}
            <p class="actions">
                <Press label="Take it in" act=take_in class="main" off=flag(move || nothing_new)/>
                <Press label="Leave it" act=put_down/>
            </p>
        </section>
    }
    .into_any()
}
