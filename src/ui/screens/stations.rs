//! Every station of the route, to go to.

use leptos::prelude::*;

use crate::present::{self, Draft, Purpose, Stop};
use crate::session::{Feature, SessionId, Station};
use crate::ui::parts::bar::bar;
use crate::ui::parts::el::{El, el};
use crate::ui::parts::live::act;
use crate::ui::parts::press::{heading, press};
use crate::ui::state::State;
use crate::ui::way::{Sheet, go, sheet_address};

/// The list of stations by feature.
pub fn stations(id: &SessionId) -> AnyView {
    let state = State::get();
    let stops = state.peek(present::route).unwrap_or_default();
    let here = state.draft(id).map(|draft| draft.station);
    let address = sheet_address(id, Sheet::Route);
    let of = id.clone();
    let visit = Callback::new(move |(station, is_read): (Station, bool)| {
        let draft = Draft {
            station,
            purpose: if is_read {
                Purpose::Replace
            } else {
                Purpose::Add
            },
            whole: false,
            typed: String::new(),
        };
        state.keep_draft(&of, &draft);
        go(&address);
    });
    let mut sheet = el("div", "sheet").with(el("h1", "").with("Go to"));
    for stops in stops.chunk_by(|a, b| Feature::of(a.station) == Feature::of(b.station)) {
        sheet = sheet.with(of_feature(stops, here, visit));
    }
    el("div", "")
        .with(bar(id, Sheet::Stations))
        .with(sheet)
        .done()
}

fn of_feature(stops: &[Stop], here: Option<Station>, visit: Callback<(Station, bool)>) -> El {
    let title = stops
        .first()
        .map(|stop| present::feature(Feature::of(stop.station)));
    let mut list = el("ul", "");
    for stop in stops {
        let (station, is_read) = (stop.station, stop.is_read());
        let values = if is_read {
            stop.values.join(", ")
        } else {
            "open".to_owned()
        };
        let go = act(move || visit.run((station, is_read)));
        let mut key = press(el("span", "").with(present::place(station)), go)
            .with(el("b", "").with(values))
            .set("data-read", if is_read { "yes" } else { "no" });
        if here == Some(station) {
            key = key.set("aria-current", "step");
        }
        list = list.with(el("li", "").with(key));
    }
    el("section", "stops").with(heading(title)).with(list)
}
