//! What to measure: each kind of feature is asked for or not.

use leptos::prelude::*;

use crate::present::{self, Draft, KindRow, Purpose};
use crate::session::SessionId;
use crate::ui::parts::bar::{bar, head};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::live::{act, flag, text};
use crate::ui::parts::press::{heading, main_press, para};
use crate::ui::state::{Change, State};
use crate::ui::way::{Sheet, go, sheet_address};

const TOLD: &str = "Each brings its stations, its limits and the usual gauge. What was read stays \
                    when it is turned off.";

/// All kinds, in groups.
pub fn kinds(id: &SessionId) -> AnyView {
    let state = State::get();
    let length = text(move || state.now(present::length_of).unwrap_or_default());
    let mut sheet = el("div", "sheet wide")
        .with(head("What to measure"))
        .with(para("", TOLD))
        .with(para("", el("b", "").id("route-length").with(length)));
    for group in state.peek(|s, _| present::kinds(s)).unwrap_or_default() {
        let mut section = el("section", "asked-of").with(heading(group.title));
        for row in group.rows {
            section = section.with(one(state, &row));
        }
        sheet = sheet.with(section);
    }
    // What is asked for first may be gone once something else was done.
    let (of, address) = (id.clone(), sheet_address(id, Sheet::Route));
    let measure = act(move || {
        let first = state.peek(|s, a| present::next_open(&present::route(s, a), None));
        if let Some(station) = first.flatten() {
            state.keep_draft(&of, &Draft::to_read(station, Purpose::Add));
        }
        go(&address);
    });
    let sheet = sheet.with(para("actions", main_press("Measure", measure)));
    el("div", "").with(bar(id, Sheet::SetUp)).with(sheet).done()
}

fn one(state: State, row: &KindRow) -> El {
    let kind = row.kind;
    let asked = flag(move || state.now(|s, _| s.is_asked(kind)).unwrap_or_default());
    let turn = act(move || {
        let edit = state.peek(|s, _| s.ask_for(kind, !s.is_asked(kind)));
        if let Some(Err(why)) = edit.map(|edit| state.change(Change::Edit(&edit))) {
            state.tell(why);
        }
    });
    let read = (0 < row.read).then(|| format!(" Read so far: {}.", row.read));
    let words = el("span", "")
        .with(el("b", "").with(row.title))
        .with(el("small", "").with(row.why).with(read));
    let tick = el("input", "").set("type", "checkbox");
    el("label", "choice asked")
        .set("data-testid", &format!("ask-{}", kind.key()))
        .with(tick.checked(asked).on_change(turn))
        .with(words)
}
