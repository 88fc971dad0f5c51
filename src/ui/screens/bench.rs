//! The sessions on this device.

use leptos::prelude::*;

use super::open_file::OpenFile;
use super::safety::Safety;
use crate::present::{self, BenchRow};
use crate::ui::parts::mark::MarkSign;
use crate::ui::state::State;
use crate::ui::way::{Sheet, sheet_address};

/// The bench.
#[component]
pub fn Bench() -> impl IntoView {
    let state = State::get();
    state.leave();
    let rows = move || state.list(false, present::bench_row);
    let away = move || state.list(true, present::bench_row);
    view! {
        <div class="sheet bench">
            <h1>"Fenderbench"</h1>
            <p class="lead-in">"Is it still to size, round and straight? Measure it and see."</p>
            <p class="actions">
                <a class="button main" href="#/new">"New session"</a>
            </p>
            <ul class="sessions">
                {move || rows().into_iter().map(|row| view! { <OnBench row/> }).collect_view()}
            </ul>
            <OpenFile/>
            {move || {
                let rows = away();
                (!rows.is_empty()).then(|| view! {
                    <section>
                        <h2>"Put away"</h2>
                        <ul class="sessions">
                            {rows.into_iter().map(|row| view! { <Away row/> }).collect_view()}
                        </ul>
                    </section>
                })
            }}
            <Safety/>
        </div>
    }
}

#[component]
fn OnBench(row: BenchRow) -> impl IntoView {
    let state = State::get();
    let BenchRow { id, name, progress, mark, worst } = row;
    let label = format!("Put away {name}");
    let put_away = {
        let id = id.clone();
        move |_| state.put_away(&id)
    };
    view! {
        <li data-testid="session">
            <a href=sheet_address(&id, Sheet::Route)>
                <b>{name}</b>
                <span>{progress}</span>
                <span class="worst"><MarkSign mark/>{worst}</span>
            </a>
            <button type="button" aria-label=label on:click=put_away>"Put away"</button>
        </li>
    }
}

#[component]
fn Away(row: BenchRow) -> impl IntoView {
    let state = State::get();
    let BenchRow { id, name, progress, .. } = row;
    let sure = RwSignal::new(false);
    let put_back = {
        let id = id.clone();
        move |_| state.put_back(&id)
    };
    let delete = move |_| {
        if sure.get_untracked() {
            state.delete(id.clone());
        } else {
            sure.set(true);
        }
    };
    let delete_word = move || {
        if sure.get() { "Yes, delete for good" } else { "Delete …" }
    };
    view! {
        <li data-testid="away">
            <p><b>{name}</b><span>{progress}</span></p>
            <button type="button" on:click=put_back>"Put back"</button>
            <button type="button" class="grave" on:click=delete>{delete_word}</button>
        </li>
    }
}
