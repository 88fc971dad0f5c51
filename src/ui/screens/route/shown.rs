//! What the fender screen shows above the keypad.

use leptos::prelude::*;

use super::entry::Entry;
use crate::device::page::Later;
use crate::present::{self, Fender, RouteView};
use crate::ui::parts::bar::saved_word;
use crate::ui::parts::el::{El, el};
use crate::ui::parts::live::{Live, act, flag, live, nothing, text};
use crate::ui::parts::mark::mark_sign;
use crate::ui::parts::press::{link, para, press};
use crate::ui::screens::later::{self, Part};

/// Place, number, and what was said last.
pub fn shown(entry: Entry, gauges: &str) -> El {
    let view = entry.view;
    let part = move |part: fn(&RouteView) -> String| text(move || view.with(part));
    let feature = part(|v| v.feature.clone());
    let place = el("div", "place")
        .with(para("feature", feature).id("feature"))
        .with(para("station", part(|v| v.place.clone())).id("place"))
        .with(para("where", part(|v| v.where_exactly.to_owned())));
    let number = el("output", "")
        .id("value")
        .with(el("span", "lead").with(part(|v| v.face.lead.clone())))
        .with(el("span", "typed").with(part(|v| v.face.typed.clone())))
        .with(el("span", "open").with(part(|v| "▢".repeat(v.face.open))));
    let value = el("div", "value")
        .set("role", "group")
        .follow("aria-label", part(RouteView::label))
        .when("hidden", flag(move || view.with(|v| v.asks_hour)))
        .with(number)
        .with(el("span", "unit").with(part(|v| v.face.unit.to_owned())))
        .with(
            el("span", "dial")
                .id("dial")
                .when("hidden", flag(move || view.with(|v| v.face.dial.is_none())))
                .with(part(|v| v.face.dial.clone().unwrap_or_default())),
        );
    // Without a keypad the gauge has to be set first.
    let unset = flag(move || view.with(|v| !v.face.unit.is_empty()));
    let set_it = link("button", gauges, "Set the gauge").when("hidden", unset);
    el("div", "reading")
        .with(el("div", "at").with(place).with(drawing(entry)))
        .with(value)
        .with(said(entry))
        .with(set_it)
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

/// A refusal, else what the number is for, else what was read last: one of
/// them stands there at a time.
fn said(entry: Entry) -> El {
    let view = entry.view;
    let part = move |part: fn(&RouteView) -> String| text(move || view.with(part));
    let hidden = move |hidden: fn(&RouteView) -> bool| flag(move || view.with(hidden));
    let turn = act(move || entry.step(|fender: &mut Fender, _, _| fender.turn()));
    let refused = part(|v| if v.is_refused { "yes" } else { "no" }.to_owned());
    let told = para("told", part(|v| v.said.clone()))
        .id("said")
        .follow("data-refused", refused)
        .when("hidden", hidden(|v| v.said.is_empty()));
    let slip = el("div", "slip")
        .id("slip")
        .when("hidden", hidden(|v| v.asked.is_empty()))
        .with(para("", part(|v| v.asked.clone())))
        .with(press("Read again", again(entry, false)))
        .with(press("Type it right", again(entry, true)))
        .with(press("Keep it", act(move || entry.keep())));
    let purpose = el("div", "purpose")
        .when(
            "hidden",
            hidden(|v| !v.said.is_empty() || !v.asked.is_empty() || v.purpose.is_empty()),
        )
        .with(para("", part(|v| v.purpose.clone())).id("purpose"))
        .with(
            press(part(|v| v.turn.to_owned()), turn).when("hidden", hidden(|v| v.turn.is_empty())),
        );
    let last = el("div", "")
        .when(
            "hidden",
            hidden(|v| !(v.said.is_empty() && v.asked.is_empty() && v.purpose.is_empty())),
        )
        .with(last_read(entry));
    el("div", "said")
        .set("aria-live", "polite")
        .with(told)
        .with(slip)
        .with(purpose)
        .with(last)
}

/// Reads again, in full where the right number is to be typed.
fn again(entry: Entry, whole: bool) -> Callback<()> {
    act(move || entry.step(move |fender, session, _| fender.read_again(session, whole)))
}

/// What was read last, and the gauge to take up, as long as there is one.
fn last_read(entry: Entry) -> Live {
    let view = entry.view;
    let last = entry.state.read(|session, _| present::last_read(session));
    let gauge = text(move || view.with(|v| v.gauge.clone()));
    let told = flag(move || view.with(|v| v.gauge.is_empty()));
    let gauge = move |tag| {
        el(tag, "gauge-to-take")
            .id("gauge-to-take")
            .when("hidden", told)
            .with(gauge)
    };
    live(move || {
        let Some(last) = last.get() else {
            return gauge("p").done();
        };
        let words = el("span", "")
            .with(el("b", "").with(last.value))
            .with(" ")
            .with(last.words);
        el("p", "last")
            .id("last")
            .with(mark_sign(last.mark))
            .with(words)
            .with(el("small", "").with(last.station))
            .with(gauge("small"))
            .with(saved_word())
            .done()
    })
}
