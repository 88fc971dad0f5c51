//! How a micrometer is read: set by big steps and taken apart, and a quiz.

mod quiz;

use leptos::prelude::*;

use crate::device::random;
use crate::present::instrument::{Helper, Micrometer, Quiz};
use crate::session::SessionId;
use crate::ui::parts::bar::bar;
use crate::ui::parts::el::{El, el};
use crate::ui::parts::field::choices;
use crate::ui::parts::held::Held;
use crate::ui::parts::live::{act, flag, live, text};
use crate::ui::parts::press::{main_press, para, press};
use crate::ui::state::State;
use crate::ui::way::{Sheet, go, sheet_address, to_top};

const TOLD: &str = "Set it to what yours shows. The thick lines count; the vernier stands below, \
                    with the thimble held down.";

/// The reading helper, and the quiz while there is one.
pub fn instrument(id: &SessionId) -> AnyView {
    let state = State::get();
    let draft = state.draft(id);
    let start = state.peek(|s, a| Helper::start(s, a, draft));
    let held = Held::new(start.unwrap_or_default());
    let id_ = id.clone();
    let title = text(move || {
        let title = held.with(|h| h.quiz.as_ref().map(Quiz::title));
        title.unwrap_or_else(|| "Reading a micrometer".to_owned())
    });
    // Made anew from one stage to the next, and for another micrometer.
    let stage = text(move || {
        held.with(|h| match &h.quiz {
            Some(quiz) => quiz.title() + quiz.told().map_or("", |_| "told"),
            None => h.held.name(),
        })
    });
    let shown = live(move || {
        stage.get();
        if held.peek(|h| h.quiz.is_some()) {
            quiz::stage(held).done()
        } else {
            keys(&id_, held).done()
        }
    });
    let drawing = text(move || held.with(Helper::drawing));
    let sheet = el("div", "sheet micrometer")
        .with(el("h1", "").id("title").with(title))
        .with(el("div", "instrument").id("drawn").markup(drawing))
        .with(el("div", "set").with(shown));
    el("div", "")
        .with(bar(id, Sheet::Instrument))
        .with(sheet)
        .done()
}

/// What sets the micrometer, and what it reads.
fn keys(id: &SessionId, held: Held<Helper>) -> El {
    let now = held.peek(|h| h.held);
    let mut set = el("div", "");
    for (at, (name, big, small)) in now.rows().into_iter().enumerate() {
        if small == 0 {
            continue;
        }
        let shown = text(move || held.with(|h| h.held.row_text(at)));
        let shown = el("span", "shown").with(name).with(el("b", "").with(shown));
        let row = el("div", if big == 0 { "scale one" } else { "scale" })
            .set("role", "group")
            .set("aria-label", name);
        let key = |by: i64| (by != 0).then(|| key(held, at, name, by));
        set = set.with(
            row.with(key(-big))
                .with(key(-small))
                .with(shown)
                .with(key(small))
                .with(key(big)),
        );
    }
    let others = now.others();
    let names = others.iter().map(|other| other.name()).collect();
    let choose = Callback::new(move |at: usize| {
        if let Some(other) = others.get(at) {
            held.update(|h| h.held = *other);
        }
    });
    let ask = act(move || {
        held.update(|h| h.quiz = Some(Quiz::new(h.held, random::number())));
        to_top();
    });
    let id = id.clone();
    set.with(live(move || reads(&id, held).done()))
        .with(choices(
            "Your micrometer",
            names,
            Held::new(0).into(),
            choose,
        ))
        .with(para("honest", TOLD))
        .with(press("A quiz of ten", ask))
}

/// A key of a row.
fn key(held: Held<Helper>, row: usize, name: &str, by: i64) -> El {
    let sign = held.peek(|h| h.held.sign(by));
    let label = [name, " ", &*sign].concat();
    let turned = move |h: &Helper| h.held.turned(row, by);
    let turn = act(move || {
        if let Some(turned) = held.peek(turned) {
            held.update(|h| h.held = turned);
        }
    });
    press(sign, turn)
        .set("aria-label", &label)
        .when("disabled", flag(move || held.with(turned).is_none()))
}

/// What it reads: for the keypad, where ENTER stays the person's, as a sum,
/// and where it goes wrong.
fn reads(id: &SessionId, held: Held<Helper>) -> El {
    let Helper { held: now, .. } = held.get();
    let take = held.peek(Helper::take).map(|draft| {
        let (id, address) = (id.clone(), sheet_address(id, Sheet::Route));
        let take = act(move || {
            State::get().keep_draft(&id, &draft);
            go(&address);
        });
        let value = [&*now.text(), " ", now.unit().sign()].concat();
        main_press(el("b", "").with(value), take).with(
            el("small", "")
                .with("to the keypad: ")
                .with(held.peek(Helper::place)),
        )
    });
    let warnings = now.warnings().into_iter().map(|told| para("caution", told));
    let reads = el("div", "reads").with(take).with(sum(now));
    warnings.fold(reads, El::with)
}

/// A reading written as a sum.
fn sum(of: Micrometer) -> El {
    let mut list = el("ul", "sum").id("sum");
    for line in of.sum() {
        let cells = line.into_iter().map(|cell| el("span", "").with(cell));
        list = list.with(cells.fold(el("li", ""), El::with));
    }
    list
}
