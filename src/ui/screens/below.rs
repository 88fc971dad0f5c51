//! What stands below the sessions on the bench: where the data is, files and
//! samples, what is put away, the cautions, and what is chosen for the phone.

use leptos::prelude::*;

use super::bench::list;
use super::open_file::open_file;
use super::safety::safety;
use crate::present::{self, BenchRow};
use crate::session::Session;
use crate::ui::parts::el::{El, el};
use crate::ui::parts::held::Held;
use crate::ui::parts::live::{act, live, nothing, text};
use crate::ui::parts::phone::this_phone;
use crate::ui::parts::press::{fold, heading, link, para, press, styled};
use crate::ui::state::State;
use crate::ui::way::FIRST;

const CAUTION: &str = "Fenderbench does arithmetic on your readings; it approves nothing. The \
                       service manual, licensed practice and local rules come first. Not for \
                       aircraft, lifting engines or pressure vessels. An engine that fails at \
                       speed throws parts: have cranks, rods and bolts crack-tested. Support the \
                       engine on a rated stand, never work under it hanging; keep solvents from \
                       flames and eyes; broken rings cut.";

/// All of it.
pub fn below() -> AnyView {
    let state = State::get();
    let of =
        move |session: &Session| present::bench_row(session, state.filed(&session.id).as_ref());
    let away = live(move || {
        let rows = state.list(true, of);
        if rows.is_empty() {
            return nothing();
        }
        let told = "Off the bench, and kept until you delete it.";
        el("section", "")
            .with(heading("Put away"))
            .with(para("", told))
            .with(list(rows, put_away))
            .done()
    });
    let kept = text(move || {
        let unfiled =
            |session: &Session| present::unfiled(session, state.filed(&session.id).as_ref());
        let of = |away| state.list(away, unfiled);
        present::kept_words(&[of(false), of(true)].concat())
    });
    el("div", "below")
        .with(fold(kept.into(), safety().into()))
        .with(open_file())
        .with(away)
        .with(fold(
            "Before you trust it".into(),
            para("caution", CAUTION).into(),
        ))
        .with(fold("This phone".into(), this_phone().into()))
        .with(para("", link("button", FIRST, "How it works")))
        .done()
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
    let told = para("", el("b", "").with(row.name))
        .with(el("span", "").with(row.progress))
        .with((!row.filed.is_empty()).then(|| el("small", "").with(row.filed)));
    el("li", "").id("away").with(told).with(
        el("div", "")
            .with(press("Put back", put_back))
            .with(styled("grave", word, delete)),
    )
}
