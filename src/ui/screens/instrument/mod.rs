//! How a micrometer is read: set by big steps and taken apart, and a quiz.

mod quiz;

use leptos::prelude::*;

use crate::device::{buzz, random};
use crate::present::instrument::{Helper, Micrometer, Quiz, Row, helper};
use crate::session::SessionId;
use crate::ui::parts::bar::bar;
use crate::ui::parts::el::{El, el};
use crate::ui::parts::field::choices;
use crate::ui::parts::held::Held;
use crate::ui::parts::live::{act, flag, live, nothing, text};
use crate::ui::parts::press::{heading, main_press, para, press};
use crate::ui::state::State;
use crate::ui::way::{Sheet, go, sheet_address, to_top};

const TOLD: &str = "Set it to what yours shows: the sleeve, then the thimble, then the vernier. \
                    The thick blue lines are the ones that count.";

/// The reading helper, and the quiz while there is one.
pub fn instrument(id: &SessionId) -> AnyView {
    let state = State::get();
    let draft = state.draft(id);
    let start = state.peek(|s, a| helper(s, a, draft)).unwrap_or_default();
    let held = Held::new(start.micrometer);
    let quiz = Held::new(None::<Quiz>);
    let asking = flag(move || quiz.with(Option::is_some));
    let of = id.clone();
    let shown = live(move || {
        if asking.get() {
            quiz::quiz(quiz).done()
        } else {
            reading(&of, start.clone(), held, quiz).done()
        }
    });
    el("div", "")
        .with(bar(id, Sheet::Instrument))
        .with(el("div", "sheet micrometer").with(shown))
        .done()
}

fn reading(id: &SessionId, start: Helper, held: Held<Micrometer>, quiz: Held<Option<Quiz>>) -> El {
    let others = held.now().others();
    let names = others.iter().map(|other| other.name()).collect();
    let chosen = Held::new(others.iter().position(|one| *one == held.now()).unwrap_or(0));
    let choose = Callback::new(move |at: usize| {
        if let Some(other) = others.get(at) {
            held.set(*other);
            chosen.set(at);
        }
    });
    // The same keys for as long as it is the same micrometer.
    let rows = live(move || {
        chosen.get();
        let rows = held.now().rows().into_iter().enumerate();
        let rows = rows.map(|(at, row)| scale(held, at, row));
        rows.fold(el("div", "scales"), El::with).done()
    });
    let ask = act(move || {
        quiz.set(Some(Quiz::new(held.now(), random::number())));
        to_top();
    });
    let drawing = drawn(text(move || held.with(|m| m.drawing(true))));
    let apart = live(move || parts(held.get()).done());
    let wrong = live(move || {
        let told = held.get().warnings().into_iter();
        told.fold(el("ul", "warnings"), |list, one| list.with(el("li", "").with(one)))
            .id("warnings")
            .done()
    });
    let set = el("div", "set")
        .with(rows)
        .with(take(id.clone(), start, held))
        .with(para("honest", TOLD));
    let practise = "Ten settings by chance, drawn without the blue lines. Nothing of it is kept.";
    let ten = el("section", "")
        .with(heading("Practise"))
        .with(para("", practise))
        .with(para("actions", press("A quiz of ten", ask)));
    el("div", "")
        .with(el("h1", "").with("Reading a micrometer"))
        .with(el("div", "bench").with(drawing).with(set))
        .with(el("section", "").with(heading("Taken apart")).with(apart).with(wrong))
        .with(el("section", "").with(choices("Your micrometer", names, chosen.into(), choose)))
        .with(ten)
}

/// The drawing, and which part of it is the vernier.
fn drawn(markup: Signal<String>) -> El {
    el("div", "drawn").id("drawn").markup(markup)
}

/// The keys of one scale, with what it shows between them.
fn scale(held: Held<Micrometer>, at: usize, row: Row) -> El {
    let mut shown = Some(
        el("span", "shown")
            .with(row.name)
            .with(el("b", "").with(text(move || held.get().row_text(at)))),
    );
    let half = row.turns.len() / 2;
    let line = el("div", if half == 1 { "scale one" } else { "scale" })
        .set("role", "group")
        .set("aria-label", row.name);
    let keys = row.turns.into_iter().enumerate();
    keys.fold(line, |line, (place, turn)| {
        let sign = held.now().sign(turn);
        let name = format!("{} {sign}", row.name);
        let end = flag(move || held.get().turned(turn).is_none());
        let key = press(
            sign,
            act(move || {
                if let Some(turned) = held.now().turned(turn) {
                    buzz::tick();
                    held.set(turned);
                }
            }),
        );
        let shown = if place == half { shown.take() } else { None };
        line.with(shown)
            .with(key.set("aria-label", &name).when("disabled", end))
    })
}

/// Takes the number to the keypad, where ENTER stays the person's.
fn take(id: SessionId, start: Helper, held: Held<Micrometer>) -> El {
    let (place, draft) = (start.place.clone(), start);
    let value = text(move || {
        let held = held.get();
        format!("{} {}", held.text(), held.unit().sign())
    });
    let sum = el("output", "sum").id("sum").with("Reads ").with(el("b", "").with(value));
    let fits = Held::new(draft);
    let take = live(move || {
        let draft = fits.with(|start| start.take(held.get()));
        let (Some(draft), false) = (draft, place.is_empty()) else {
            return nothing();
        };
        let (id, address) = (id.clone(), sheet_address(&id, Sheet::Route));
        let take = act(move || {
            State::get().keep_draft(&id, &draft);
            go(&address);
        });
        main_press("Take it to the keypad", take)
            .with(el("small", "").with(place.clone()))
            .done()
    });
    el("div", "take").with(sum).with(take)
}

/// A reading written as a sum.
fn parts(of: Micrometer) -> El {
    let row = |what: &str, times: String, amount: String| {
        el("li", "")
            .with(el("span", "").with(what.to_owned()))
            .with(el("span", "").with(times))
            .with(el("span", "").with(amount))
    };
    let parts = of.parts().into_iter();
    let list = parts.fold(el("ul", "parts"), |list, part| {
        list.with(row(part.what, part.times, part.amount))
    });
    list.id("parts").with(row("It reads", of.unit().sign().to_owned(), of.text()))
}
