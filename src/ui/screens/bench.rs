//! The sessions on this device.

use leptos::prelude::*;

use super::open_file::open_file;
use super::safety::safety;
use crate::present::{self, BenchRow};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::held::Held;
use crate::ui::parts::live::{act, live, nothing, text};
use crate::ui::parts::mark::mark_sign;
use crate::ui::parts::press::{heading, link, para, press, styled};
use crate::ui::state::State;
use crate::ui::way::{Sheet, sheet_address};

/// The bench.
pub fn bench() -> AnyView {
    let state = State::get();
    state.leave();
    let here = live(move || list(state.list(false, present::bench_row), on_bench).done());
    let away = live(move || {
        let rows = state.list(true, present::bench_row);
        if rows.is_empty() {
            return nothing();
        }
        el("section", "")
            .with(heading("Put away"))
            .with(list(rows, put_away))
            .done()
    });
    el("div", "sheet bench")
        .with(el("h1", "").with("Fenderbench"))
        .with(para(
            "lead-in",
            "Is it still to size, round and straight? Measure it and see.",
        ))
        .with(para("actions", link("button main", "#/new", "New session")))
        .with(here)
        .with(open_file())
        .with(away)
        .with(safety())
        .done()
}

fn list(rows: Vec<BenchRow>, one: fn(BenchRow) -> El) -> El {
    let rows = rows.into_iter().map(|row| one(row).done());
    el("ul", "sessions").with(rows.collect::<Vec<_>>())
}

fn on_bench(row: BenchRow) -> El {
    let state = State::get();
    let id = row.id.clone();
    let name = format!("Put away {}", row.name);
    let worst = el("span", "worst")
        .with(mark_sign(row.mark))
        .with(el("span", "").with(row.worst));
    let open = link(
        "",
        &sheet_address(&id, Sheet::Route),
        el("b", "").with(row.name),
    )
    .with(el("span", "").with(row.progress))
    .with(worst);
    let put_away = press("Put away", act(move || state.put_away(&id)));
    el("li", "")
        .id("session")
        .with(open)
        .with(put_away.set("aria-label", &name))
}

fn put_away(row: BenchRow) -> El {
    let state = State::get();
    let id = row.id.clone();
    let sure = Held::new(false);
    let put_back = act(move || state.put_back(&row.id));
    let delete = act(move || {
        if sure.now() {
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
    let told = para("", el("b", "").with(row.name)).with(el("span", "").with(row.progress));
    el("li", "")
        .id("away")
        .with(told)
        .with(press("Put back", put_back))
        .with(styled("grave", word, delete))
}
