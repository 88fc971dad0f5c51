//! What the fender screen shows above the keypad.

use leptos::prelude::*;

use super::entry::Entry;
use crate::device::page::Later;
use crate::present::{self, Fender, RouteView};
use crate::session::SessionId;
use crate::ui::parts::bar::saved_word;
use crate::ui::parts::el::{El, el};
use crate::ui::parts::live::{Live, act, flag, live, nothing, text};
use crate::ui::parts::mark::mark_sign;
use crate::ui::parts::press::{link, para, press, styled};
use crate::ui::screens::later::{self, Part};
use crate::ui::way::{Sheet, sheet_address};

/// Place, what was said last, and the number.
pub fn shown(entry: Entry, id: &SessionId) -> El {
    let view = entry.view;
    let part = move |part: fn(&RouteView) -> String| text(move || view.with(part));
    let explain = act(move || entry.step(|fender: &mut Fender, _, _| fender.explain()));
    let station = el("span", "station")
        .id("place")
        .with(part(|v| v.place_of().0.to_owned()))
        .with(el("span", "of").with(part(|v| v.place_of().1.to_owned())));
    let place = styled("place", "", explain)
        .set("aria-describedby", "where")
        .with(
            el("span", "feature")
                .id("feature")
                .with(part(|v| v.feature.clone())),
        )
        .with(" ")
        .with(station);
    let at = el("div", "at").with(place).with(drawing(entry));
    let explained = part(|v| if v.is_explained { "yes" } else { "no" }.to_owned());
    let spoken = el("div", "unseen")
        .set("aria-live", "polite")
        .id("spoken")
        .with(part(|v| v.announced.clone()));
    el("div", "reading")
        .follow("data-explained", explained)
        .with(at)
        .with(para("where", part(|v| v.where_exactly.to_owned())).set("id", "where"))
        .with(said(entry))
        .with(ways(entry, id))
        .with(value(entry))
        .with(spoken)
}

/// The number under way.
fn value(entry: Entry) -> El {
    let view = entry.view;
    let part = move |part: fn(&RouteView) -> String| text(move || view.with(part));
    let number = el("span", "number")
        .id("value")
        .with(el("span", "lead").with(part(|v| v.face.lead.clone())))
        .with(el("span", "typed").with(part(|v| v.face.typed.clone())))
        .with(el("span", "open").with(part(RouteView::open_slots)));
    let dial = el("span", "dial")
        .id("dial")
        .when("hidden", flag(move || view.with(|v| v.face.dial.is_none())))
        .with(part(|v| v.face.dial.clone().unwrap_or_default()));
    let refused = part(|v| if v.is_refused { "yes" } else { "no" }.to_owned());
    el("div", "value")
        .set("role", "group")
        .follow("aria-label", part(RouteView::label))
        .follow("data-refused", refused)
        .when("hidden", flag(move || view.with(|v| v.asks_hour)))
        .with(number)
        .with(el("span", "unit").with(part(|v| v.face.unit.to_owned())))
        .with(dial)
}

/// Where the person goes from here if there is nothing to type: to the gauge
/// that has to be set, to what is asked for while nothing is, or to the findings
/// once everything is read.
fn ways(entry: Entry, id: &SessionId) -> Live {
    let view = entry.view;
    let unset = flag(move || {
        view.with(|v| v.face.unit.is_empty() && !v.asks_hour && !v.feature.is_empty())
    });
    let all_read = flag(move || view.with(RouteView::is_all_read));
    let none_asked = flag(move || view.with(|v| v.progress.of == 0));
    let to = |sheet, word| (sheet_address(id, sheet), word);
    let gauges = to(Sheet::Gauges, "Set the gauge");
    let kinds = to(Sheet::Kinds, "What to measure");
    let findings = to(Sheet::Findings, "See the findings");
    live(move || {
        let (address, word) = match (unset.get(), none_asked.get(), all_read.get()) {
            (true, ..) => &gauges,
            (_, true, _) => &kinds,
            (.., true) => &findings,
            _ => return nothing(),
        };
        link("button way", address, *word).done()
    })
}

/// The drawing, once it is there; its place is kept.
fn drawing(entry: Entry) -> El {
    let later = entry.state.later;
    let drawing = live(move || match later.get() {
        Later::Here => later::part(Part::Drawing(&entry)).unwrap_or_else(nothing),
        _ => nothing(),
    });
    el("div", "drawing").id("drawing").with(drawing)
}

/// What was read last, and below it a refusal, a question, what the number is
/// for or the gauge to take up.
fn said(entry: Entry) -> El {
    let view = entry.view;
    let part = move |part: fn(&RouteView) -> String| text(move || view.with(part));
    let hidden = move |hidden: fn(&RouteView) -> bool| flag(move || view.with(hidden));
    let turn = act(move || entry.step(|fender: &mut Fender, _, _| fender.turn()));
    let role = part(|v| if v.is_refused { "alert" } else { "note" }.to_owned());
    let told = para("told", part(|v| v.said.clone()))
        .id("said")
        .follow("role", role)
        .when("hidden", hidden(|v| v.said.is_empty()));
    let slip = para("slip", part(|v| v.asked.clone()))
        .id("slip")
        .when("hidden", hidden(|v| v.asked.is_empty()));
    let purpose = el("div", "purpose")
        .when("hidden", hidden(|v| v.is_told() || v.purpose.is_empty()))
        .with(para("", part(|v| v.purpose.clone())).id("purpose"))
        .with(
            press(part(|v| v.turn.to_owned()), turn).when("hidden", hidden(|v| v.turn.is_empty())),
        );
    let gauge = para("gauge-to-take", part(|v| v.gauge.clone()))
        .id("gauge-to-take")
        .when("hidden", hidden(|v| v.is_told() || v.gauge.is_empty()));
    el("div", "said")
        .with(last_read(entry))
        .with(told)
        .with(slip)
        .with(purpose)
        .with(gauge)
}

/// The answers to the question whether a number is a slip.
pub fn answers(entry: Entry) -> El {
    let hidden = flag(move || entry.view.with(|v| v.asked.is_empty()));
    el("div", "answers")
        .set("role", "group")
        .set("aria-label", "Is it a slip?")
        .when("hidden", hidden)
        .with(press("Read again", again(entry, false)))
        .with(press("Type it right", again(entry, true)))
        .with(press("Keep it", act(move || entry.keep())))
}

/// Reads again, in full where the right number is to be typed.
fn again(entry: Entry, whole: bool) -> Callback<()> {
    act(move || entry.step(move |fender, session, _| fender.read_again(session, whole)))
}

/// What was read last.
fn last_read(entry: Entry) -> Live {
    let view = entry.view;
    let last = entry.state.read(|session, _| present::last_read(session));
    let same = text(move || view.with(|v| v.is_on_same.to_string()));
    // While something is asked about what was read last, it is not told twice.
    let told = flag(move || view.with(|v| v.asks_hour || !v.asked.is_empty()));
    live(move || {
        let Some(last) = last.get() else {
            return nothing();
        };
        let (reads, word, by) = last.parts();
        let read = el("p", "read")
            .with(el("b", "").with(last.value.clone()))
            .with(" ");
        let (place, of) = last.place_of();
        let at = el("p", "read-at")
            .follow("data-same", same)
            .with(saved_word())
            .with(el("span", "of").with(last.feature.clone() + ", "))
            .with(place.to_owned())
            .with(el("span", "of").with(of.to_owned()));
        let verdict = el("p", "verdict")
            .with(mark_sign(last.mark))
            .with(el("span", "reads").with(reads.to_owned()))
            .with(word.to_owned());
        let by = para("by", by.to_owned());
        el("div", "last")
            .id("last")
            .when("hidden", told)
            .with(
                el("div", "recent")
                    .with(read)
                    .with(verdict)
                    .with(by)
                    .with(at),
            )
            .done()
    })
}
