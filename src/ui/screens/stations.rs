//! Every station of the route, to go to, and every other place.

use leptos::prelude::*;

use crate::present::{self, Draft, Purpose, Stop, Why};
use crate::session::{Feature, SessionId, Station};
use crate::ui::parts::bar::bar;
use crate::ui::parts::el::{El, el};
use crate::ui::parts::held::Held;
use crate::ui::parts::live::{act, live};
use crate::ui::parts::press::{heading, link, para, press};
use crate::ui::state::State;
use crate::ui::way::{Sheet, go, sheet_address};

/// Goes to a station, for what is done there.
type Visit = Callback<(Station, Purpose)>;

/// The list of stations by feature.
pub fn stations(id: &SessionId) -> AnyView {
    let state = State::get();
    let stops = state.peek(present::route).unwrap_or_default();
    let here = state.draft(id).map(|draft| draft.station);
    let address = sheet_address(id, Sheet::Route);
    let of = id.clone();
    let visit = Callback::new(move |(station, purpose): (Station, Purpose)| {
        state.keep_draft(&of, &Draft::to_read(station, purpose));
        go(&address);
    });
    let kinds = sheet_address(id, Sheet::Kinds);
    let how = sheet_address(id, Sheet::Instrument);
    let mut sheet = el("div", "sheet wide tiles")
        .with(el("h1", "").with("Go to"))
        .with(
            para("actions", link("button", &kinds, "What to measure")).with(link(
                "button",
                &how,
                "How do I read this?",
            )),
        );
    let (once, more): (Vec<Stop>, Vec<Stop>) =
        stops.into_iter().partition(|stop| stop.why == Why::First);
    let (again, settle): (Vec<Stop>, Vec<Stop>) =
        more.into_iter().partition(|stop| stop.why == Why::Again);
    for of_one in once.chunk_by(|a, b| Feature::of(a.station) == Feature::of(b.station)) {
        let Some(first) = of_one.first() else {
            continue;
        };
        let feature = Feature::of(first.station);
        let list = list(of_one, here, visit, present::place);
        let section = el("section", "stops")
            .with(heading(present::feature(feature)))
            .with(list)
            .with(others(feature, &once, visit));
        sheet = sheet.with(section);
    }
    if !again.is_empty() {
        let told = "A tenth of all is read a second time at the end, without a look at the first: \
                    it shows how well the readings repeat.";
        let section = el("section", "stops")
            .id("again")
            .with(heading("To read again"))
            .with(para("", told))
            .with(list(&again, here, visit, present::station));
        sheet = sheet.with(section);
    }
    if !settle.is_empty() {
        let told = "What is too close to call and takes the fewest readings to settle.";
        let section = el("section", "stops")
            .id("settle")
            .with(heading("To settle"))
            .with(para("", told))
            .with(list(&settle, here, visit, present::station));
        sheet = sheet.with(section);
    }
    el("div", "")
        .with(bar(id, Sheet::Stations))
        .with(sheet)
        .done()
}

fn list(stops: &[Stop], here: Option<Station>, visit: Visit, name: fn(Station) -> String) -> El {
    let mut list = el("ul", "");
    for stop in stops {
        let station = stop.station;
        let (purpose, read) = if stop.is_read() {
            (Purpose::Replace, "yes")
        } else {
            (Purpose::Add, "no")
        };
        let values = match (stop.is_read(), stop.asked) {
            // A number does not part from its unit.
            (true, _) => stop
                .values
                .join(";")
                .replace(' ', "\u{a0}")
                .replace(';', ", "),
            (false, 1) => "open".to_owned(),
            (false, 2) => "a second time".to_owned(),
            (false, asked) => format!("{} of {asked}", stop.values.len()),
        };
        let go = act(move || visit.run((station, purpose)));
        let mut key = press(el("span", "").with(name(station)), go)
            .with(el("b", "").with(values))
            .set("data-read", read);
        if here == Some(station) {
            key = key.set("aria-current", "step");
        }
        list = list.with(el("li", "").with(key));
    }
    list
}

/// The places that are not on the route, once somebody asks for them.
fn others(feature: Feature, stops: &[Stop], visit: Visit) -> Option<El> {
    let places = present::other_places(feature, stops);
    if places.is_empty() {
        return None;
    }
    let asked = Held::new(false);
    let more = live(move || {
        if !asked.get() {
            let word = "Another level or direction";
            return press(word, act(move || asked.set(true))).done();
        }
        let stops: Vec<Stop> = places.iter().map(|place| Stop::open(*place)).collect();
        list(&stops, None, visit, present::place).done()
    });
    Some(el("div", "others").with(more))
}
