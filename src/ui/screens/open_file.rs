//! Opening a file: what it holds is shown before anything is stored.

use leptos::html::Input;
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::archive;
use crate::present;
use crate::store::{file, sample};
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
    let try_sample = move |_| {
        spawn_local(async move {
            take(sample::fetch().await.map_err(|why| why.to_string()));
        });
    };
    view! {
        <p class="actions">
            <label class="button">
                "Open a file"
                <input type="file" class="unseen" accept=".json,.txt,application/json,text/plain" node_ref=input on:change=chosen data-testid="file"/>
            </label>
            <button type="button" on:click=try_sample>"Try the sample"</button>
        </p>
        {move || refused.get().map(|why| view! { <p class="refusal" role="alert" data-testid="refused">{why}</p> })}
        <Before/>
    }
}

/// What the opened file holds, and the question whether to take it in.
#[component]
fn Before() -> impl IntoView {
    let state = State::get();
    let put_down = move || state.incoming.set(None);
    let take_in = move || {
        if let Some(incoming) = state.incoming.get_untracked() {
            state.take_in(&incoming.session);
            put_down();
        }
    };
    view! {
        {move || state.incoming.get().map(|incoming| {
            let here = state.find(&incoming.session.id);
            let preview = present::preview(&incoming, here.as_ref());
            let lines = preview.lines.into_iter().map(|line| view! { <p>{line}</p> });
            view! {
                <section class="preview" data-testid="preview" aria-live="polite">
                    <h2>{preview.name}</h2>
                    {preview.warning.map(|told| view! { <p class="refusal">{told}</p> })}
                    {lines.collect_view()}
                    <p class="actions">
                        <button type="button" class="main" disabled=preview.nothing_new on:click=move |_| take_in()>"Take it in"</button>
                        <button type="button" on:click=move |_| put_down()>"Leave it"</button>
                    </p>
                </section>
            }
        })}
    }
}
