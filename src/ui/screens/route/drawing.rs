//! The drawing of the feature in hand: small beside the place, large over the
//! reading part, where a tap on a mark goes there.

use leptos::ev::Event;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{HtmlElement, MouseEvent};

use super::entry::Entry;
use crate::device::feel::{Felt, feel};
use crate::present::{self, Drawing};
use crate::session::Station;
use crate::ui::parts::el::el;
use crate::ui::parts::held::Held;
use crate::ui::parts::live::{act, flag, live, text};
use crate::ui::parts::press::{para, press};

/// From this side on, in pixels, a drawing is tapped at its marks; a smaller
/// one is enlarged first.
const LARGE: i32 = 200;

/// The drawing.
pub fn drawing(entry: Entry) -> AnyView {
    let station = text(move || {
        let station = entry.fender.with(|fender| fender.station());
        station.map_or_else(String::new, |station| station.to_string())
    });
    let drawn = text(move || draw(entry, &station.get()).map_or_else(String::new, |d| d.markup));
    // Where it was enlarged, and what was typed then: with the next key, or at
    // the next station, it is small again.
    let now = text(move || station.get() + &entry.view.with(|view| view.face.typed.clone()));
    let enlarged = Held::new(String::new());
    let large = flag(move || enlarged.with(|then| *then == now.get()));
    let tap = move |event: Event| {
        let event: MouseEvent = event.unchecked_into();
        let target = event
            .target()
            .and_then(|t| t.dyn_into::<HtmlElement>().ok());
        let size = target.map_or([0, 0], |target| {
            [target.client_width(), target.client_height()]
        });
        let is_small = size.iter().any(|side| *side < LARGE);
        // A key pressed on the button has no place.
        if event.detail() == 0 || (is_small && !untrack(|| large.get())) {
            enlarged.set(untrack(|| now.get()));
            return;
        }
        let here = untrack(|| station.get());
        let drawing = untrack(|| draw(entry, &here));
        let point = [event.offset_x(), event.offset_y()];
        if let Some(to) = drawing.and_then(|drawing| drawing.nearest(point, size)) {
            enlarged.set(String::new());
            go(entry, to);
        }
    };
    let touch = live(move || {
        if large.get() {
            let words = text(move || entry.view.with(|view| view.place.clone()));
            let close = press("Back", act(move || enlarged.set(String::new())));
            let foot = el("div", "foot").with(para("", words)).with(close);
            let touch = el("div", "touch").on("click", tap);
            vec![touch.done(), foot.done()].into_any()
        } else {
            el("button", "touch")
                .set("type", "button")
                .set("aria-label", "Enlarge the drawing")
                .on("click", tap)
                .done()
        }
    });
    el("div", "plate")
        .follow(
            "data-large",
            text(move || if large.get() { "yes" } else { "no" }.to_owned()),
        )
        .with(el("div", "lines").markup(drawn))
        .with(touch)
        .done()
}

/// The drawing of a station, followed.
fn draw(entry: Entry, station: &str) -> Option<Drawing> {
    let station = Station::parse(station)?;
    let draw = |stops: &Vec<_>| {
        let draw = |session: &_, _: &_| present::drawing(session, stops, station);
        entry.state.now(draw)
    };
    entry.stops.with(draw)
}

fn go(entry: Entry, to: Station) {
    entry.step(|fender, session, stops| fender.jump(session, stops, to));
    let went = entry.fender.peek(|fender| fender.station()) == Some(to);
    feel(if went { Felt::Key } else { Felt::Refusal });
}
