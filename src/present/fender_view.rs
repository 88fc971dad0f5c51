//! What the fender screen shows.

use super::Fender;
use super::help;
use super::keypad::Face;
use super::mark::{self, mark};
use super::pace::time_left;
use super::route::{Progress, Purpose, Stop, Why, next_open, progress, size_text};
use super::wording;
use crate::assess::compare_reading;
use crate::session::{Feature, Indication, Quantity, Session, Stamp, Station};

/// What the fender screen shows besides the keypad.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct RouteView {
    /// The feature.
    pub feature: String,
    /// Level and direction.
    pub place: String,
    /// Where exactly the gauge goes.
    pub where_exactly: &'static str,
    /// The gauge to take up, where the latest reading was of another kind;
    /// else empty.
    pub gauge: String,
    /// What stands here, as typed.
    pub standing: Vec<String>,
    /// What ENTER will do, where that is not plain.
    pub purpose: String,
    /// What the key beside it turns that into.
    pub turn: &'static str,
    /// The number under way.
    pub face: Face,
    /// What was refused or said last.
    pub said: String,
    /// True if that is a refusal.
    pub is_refused: bool,
    /// What the number typed looks like, while the person is asked; else empty.
    pub asked: String,
    /// True while the hour of a high spot is asked for in place of a number.
    pub asks_hour: bool,
    /// How far the route has come.
    pub progress: Progress,
    /// How long the rest will take, in words; empty at the end.
    pub time_left: String,
    /// The station after this one.
    pub next: Option<String>,
}

impl RouteView {
    /// The number under way, by its place and what it is for.
    #[must_use]
    pub fn label(&self) -> String {
        format!("{}, {} {}", self.feature, self.place, self.purpose)
    }
}

/// The view of the fender screen.
#[must_use]
pub fn view(session: &Session, stops: &[Stop], fender: &Fender) -> RouteView {
    let Some(station) = fender.station() else {
        return RouteView {
            said: help::NOTHING_ON_ROUTE.to_owned(),
            ..RouteView::default()
        };
    };
    let stop = stops.iter().find(|stop| stop.station == station);
    let standing = stop.map_or_else(Vec::new, |stop| stop.values.clone());
    let (purpose, turn) = match (standing.is_empty(), fender.purpose()) {
        (true, _) => (settling(stops, station).unwrap_or_default(), ""),
        // Not with the value that stands: who sees it, reads it again.
        (false, Purpose::Add) => (repeat(stops, station), "replace it"),
        (false, Purpose::Replace) => (format!("In place of {}", standing.join(", ")), "keep both"),
        (false, Purpose::Hour) => (format!("{}: {HOUR}", standing.join(", ")), ""),
    };
    RouteView {
        feature: wording::feature_here(session, Feature::of(station)),
        place: wording::place(station),
        where_exactly: wording::where_exactly(station),
        gauge: gauge_to_take(session, station),
        asks_hour: fender.asks_hour(),
        standing,
        purpose,
        turn,
        face: fender.face().unwrap_or_default(),
        is_refused: fender.is_refused(),
        said: fender.said().unwrap_or_default().to_owned(),
        asked: fender.asked().unwrap_or_default().to_owned(),
        progress: progress(stops),
        time_left: time_left(session, stops),
        next: next_open(stops, Some(station))
            .filter(|next| *next != station)
            .map(wording::station),
    }
}

/// What is asked of a run-out.
const HOUR: &str = "at what hour was the most? 12 is in line with throw 1, seen from the \
                    first end.";

/// The gauge and its range, as the route comes to another kind.
fn gauge_to_take(session: &Session, station: Station) -> String {
    let latest = session.standing().next_back();
    let goes_on = latest.is_some_and(|(_, reading)| reading.station.kind == station.kind);
    let gauge = session.gauge_for(station.kind).filter(|_| !goes_on);
    gauge.map_or_else(String::new, |(_, gauge, _)| {
        format!("Now: {}", wording::gauge(gauge))
    })
}

/// What one more reading here is for.
fn repeat(stops: &[Stop], station: Station) -> String {
    let why = match open_here(stops, station).map(|stop| stop.why) {
        Some(Why::First) => "One spot several times: take the gauge apart".to_owned(),
        _ => settling(stops, station).unwrap_or_else(|| "A repeat".to_owned()),
    };
    format!("{why}: read it afresh")
}

/// What a reading here settles.
fn settling(stops: &[Stop], station: Station) -> Option<String> {
    let Why::Settle(feature, quantity) = open_here(stops, station)?.why else {
        return None;
    };
    let what = wording::quantity(feature.kind, quantity).to_ascii_lowercase();
    let of = wording::feature(feature).to_ascii_lowercase();
    Some(format!("To settle the {what} of {of}"))
}

fn open_here(stops: &[Stop], station: Station) -> Option<&Stop> {
    stops
        .iter()
        .find(|stop| stop.station == station && !stop.is_read())
}

/// What a reading just entered reads: its place, value, mark and sentence.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LastRead {
    /// Its station in words.
    pub station: String,
    /// The value as typed, with its unit.
    pub value: String,
    /// The shape of its comparison.
    pub mark: mark::Mark,
    /// The sentence of its comparison.
    pub words: String,
}

/// The latest standing reading and what it reads.
#[must_use]
pub fn last_read(session: &Session) -> Option<LastRead> {
    let (_, reading): (Stamp, _) = session.standing().next_back()?;
    let comparison = Some(compare_reading(session, reading));
    Some(LastRead {
        station: wording::station(reading.station),
        value: match &reading.entered {
            Indication::Size(size) => size.to_string(),
            Indication::Deviation(by) => format!("{by} makes {}", size_text(session, reading)),
        },
        mark: mark(Quantity::Size, comparison),
        words: mark::comparison_words(Quantity::Size, comparison, session.display_unit()),
    })
}
