//! The sessions on this device.

use leptos::prelude::*;

use super::open_file::OpenFile;
use super::safety::Safety;
use crate::present::{self, BenchRow};
use crate::ui::parts::live::{live, text};
use crate::ui::parts::mark::MarkSign;
use crate::ui::parts::press::{Press, act};
use crate::ui::state::State;
use crate::ui::way::{Sheet, sheet_address};

/// The bench.
#[component]
pub fn Bench() -> impl IntoView {
    let state = State::get();
    state.leave();
    let here = live(move || {
        let rows = state.list(false, present::bench_row).into_iter();
        rows.map(on_bench).collect::<Vec<_>>().into_any()
    });
    let away = live(move || {
        let rows = state.list(true, present::bench_row).into_iter();
        let rows: Vec<AnyView> = rows.map(put_away).collect();
        if rows.is_empty() {
            return ().into_any();
        }
        view! { <section><h2>"Put away"</h2><ul class="sessions">{rows}</ul></section> }.into_any()
    });
    view! {
        <div class="sheet bench">
            <h1>"Fenderbench"</h1>
            <p class="lead-in">"Is it still to size, round and straight? Measure it and see."</p>
            <p class="actions"><a class="button main" href="#/new">"New session"</a></p>
            <ul class="sessions">{here}</ul>
            <OpenFile/>
            {away}
            <Safety/>
        </div>
    }
}

fn on_bench(row: BenchRow) -> AnyView {
    let state = State::get();
    let BenchRow {
        id,
        name,
        progress,
        mark,
        worst,
    } = row;
    let label = format!("Put away {name}");
    let address = sheet_address(&id, Sheet::Route);
    let put_away = act(move || state.put_away(&id));
    view! {
        <li data-testid="session">
            <a href=address>
                <b>{name}</b>
                <span>{progress}</span>
                <span class="worst"><MarkSign mark/><span>{worst}</span></span>
            </a>
            <Press label="Put away" name=label act=put_away/>
        </li>
    }
    .into_any()
}

fn put_away(row: BenchRow) -> AnyView {
    let state = State::get();
    let BenchRow {
        id, name, progress, ..
    } = row;
    let sure = RwSignal::new(false);
    let of = id.clone();
    let put_back = act(move || state.put_back(&of));
    let delete = act(move || {
        if sure.get_untracked() {
            state.delete(id.clone());
        } else {
            sure.set(true);
        }
    });
    let word = text(move || {
        let word = if sure.get() {
            "Yes, delete for good"
        } else {
            "Delete …"
        };
        word.to_owned()
    });
    view! {
        <li data-testid="away">
            <p><b>{name}</b><span>{progress}</span></p>
            <Press label="Put back" act=put_back/>
            <Press label=word act=delete class="grave"/>
        </li>
    }
    .into_any()
}
