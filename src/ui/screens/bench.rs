//! The sessions on this device.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::later::{self, Part};
use super::loaded::loaded;
use crate::present::{self, BenchRow};
use crate::session::Session;
use crate::store::{keeper, persist};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::live::{act, live};
use crate::ui::parts::mark::mark_sign;
use crate::ui::parts::press::{link, para, press};
use crate::ui::state::State;
use crate::ui::way::{FIRST, Sheet, sheet_address};

const EMPTY: &str = "Nothing on the bench yet. New session asks how many cylinders there are and \
                     starts at bore 1; limits and gauges can wait.";

/// The bench.
pub fn bench() -> AnyView {
    let state = State::get();
    state.leave();
    let row = move |session: &Session| {
        let filed = state.filed(&session.id);
        present::bench_row(session, filed.as_ref())
    };
    let here = live(move || match state.list(false, row) {
        rows if rows.is_empty() => empty(state),
        rows => {
            // What is asked of the person once there is something to lose.
            spawn_local(async { _ = persist::persist().await });
            list(rows, on_bench).done()
        }
    });
    el("div", "sheet bench")
        .with(el("h1", "").with("Fenderbench"))
        .with(para(
            "lead-in",
            "Is it still to size, round and straight? Measure it and see.",
        ))
        .with(para("actions", link("button main", "#/new", "New session")))
        .with(here)
        .with(loaded(false, || later::part(Part::Below)))
        .done()
}

/// What to do with an empty bench; who was never here is shown the way.
fn empty(state: State) -> AnyView {
    let is_new = keeper::choice("seen").is_none() && state.list(true, |_| ()).is_empty();
    let invitation = is_new.then(|| {
        let word = "New here? See how it works";
        para("actions", link("button", FIRST, word).id("invitation"))
    });
    el("div", "fields")
        .id("empty")
        .with(invitation)
        .with(para("", EMPTY))
        .done()
}

pub fn list(rows: Vec<BenchRow>, one: fn(BenchRow) -> El) -> El {
    let rows = rows.into_iter().map(|row| one(row).done());
    el("ul", "sessions").with(rows.collect::<Vec<_>>())
}

fn on_bench(row: BenchRow) -> El {
    let state = State::get();
    let id = row.id.clone();
    let worst = el("span", "worst")
        .with(mark_sign(row.mark))
        .with(el("span", "").with(row.worst));
    let keys = el("div", "")
        .with((0 < row.unfiled).then(|| {
            let of = id.clone();
            let export = act(move || {
                if let Some(session) = untrack(|| state.find(&of)) {
                    state.export(&session);
                }
            });
            named("To a file", &row.name, export)
        }))
        .with({
            let id = id.clone();
            named("Put away", &row.name, act(move || state.put_away(&id)))
        });
    let open = link(
        "",
        &sheet_address(&id, Sheet::Route),
        el("b", "").with(row.name),
    )
    .with(el("span", "").with(row.progress))
    .with(worst)
    .with((!row.filed.is_empty()).then(|| el("small", "").id("filed").with(row.filed)));
    el("li", "").id("session").with(open).with(keys)
}

/// A key with a name that tells which session it is for.
fn named(word: &'static str, session: &str, act: Callback<()>) -> El {
    press(word, act).set("aria-label", &format!("{word} {session}"))
}
