//! What the fender screen shows.

use super::Fender;
use super::keypad::Face;
use super::mark::{self, mark};
use super::pace::time_left;
use super::route::{Progress, Purpose, Stop, Why, grows, next_after, progress, size_text};
use super::wording;
use crate::assess::compare_reading;
use crate::session::{Feature, Gauge, Indication, Kind, Quantity, Reading, Session, Station};

/// What the fender screen shows besides the keypad.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct RouteView {
    /// The feature.
    pub feature: String,
    /// Level and direction.
    pub place: String,
    /// Where exactly the gauge goes.
    pub where_exactly: &'static str,
    /// True while that is shown.
    pub is_explained: bool,
    /// The gauge to take up now, where the latest reading was of another
    /// kind, or the one to take up next; else empty.
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
    /// True where the latest reading was taken on this very feature.
    pub is_on_same: bool,
    /// What a screen reader says: what was entered, and what comes.
    pub announced: String,
}

impl RouteView {
    /// The number under way, by its place and what it is for.
    #[must_use]
    pub fn label(&self) -> String {
        format!("{}, {} {}", self.feature, self.place, self.purpose)
    }

    /// The place in two, what it is and of what: the second can be spared on
    /// a small screen.
    #[must_use]
    pub fn place_of(&self) -> (&str, &str) {
        halves(&self.place)
    }

    /// True while something was refused, said or is asked.
    #[must_use]
    pub const fn is_told(&self) -> bool {
        !self.said.is_empty() || !self.asked.is_empty()
    }

    /// True once everything on the route is read and nothing is asked.
    #[must_use]
    pub fn is_all_read(&self) -> bool {
        self.progress.read == self.progress.of && self.asked.is_empty() && !self.asks_hour
    }

    /// The slots of the number that are still open, drawn.
    #[must_use]
    pub fn open_slots(&self) -> String {
        let face = &self.face;
        let nothing = face.lead.is_empty() && face.typed.is_empty() && !face.unit.is_empty();
        "▢".repeat(if nothing { face.open.max(1) } else { face.open })
    }
}

fn halves(place: &str) -> (&str, &str) {
    let at = place.find(" of ").unwrap_or(place.len());
    place.split_at_checked(at).unwrap_or_default()
}

/// The view of the fender screen.
#[must_use]
pub fn view(session: &Session, stops: &[Stop], fender: &Fender) -> RouteView {
    let Some(station) = fender.station() else {
        return RouteView::default();
    };
    let stop = stops.iter().find(|stop| stop.station == station);
    let standing = stop.map_or_else(Vec::new, |stop| stop.values.clone());
    let (purpose, turn) = match (standing.is_empty(), fender.purpose()) {
        (true, _) => (settling(stops, station).unwrap_or_default(), ""),
        // Not with the value that stands: who sees it, reads it again.
        (false, Purpose::Add) if open_here(stops, station).is_some() => {
            (repeat(stops, station), "")
        }
        (false, Purpose::Add) => (repeat(stops, station), "replace it"),
        (false, Purpose::Replace) => (format!("In place of {}", standing.join(", ")), "keep both"),
        (false, Purpose::Hour) => (format!("{}: {HOUR}", standing.join(", ")), ""),
    };
    let mut view = RouteView {
        feature: wording::feature_here(session, Feature::of(station)),
        place: wording::place(station),
        where_exactly: wording::where_exactly(station),
        is_explained: fender.is_explained(),
        gauge: gauge_to_take(session, stops, station),
        asks_hour: fender.asks_hour(),
        standing,
        purpose,
        turn,
        face: fender.face().unwrap_or_default(),
        is_refused: fender.is_refused() && fender.said().is_some(),
        said: fender.said().unwrap_or_default().to_owned(),
        asked: fender.asked().unwrap_or_default().to_owned(),
        progress: progress(stops),
        time_left: time_left(session, stops),
        next: next_after(stops, station)
            .filter(|next| *next != station)
            .map(wording::station),
        is_on_same: latest(session)
            .is_some_and(|last| Feature::of(last.station) == Feature::of(station)),
        announced: String::new(),
    };
    view.announced = announced(session, fender, &view);
    view
}

/// What a screen reader says, when all that is shown has changed.
fn announced(session: &Session, fender: &Fender, view: &RouteView) -> String {
    if !view.asked.is_empty() {
        return view.asked.clone();
    }
    let mut told = String::new();
    if let Some(last) = last_read(session).filter(|_| fender.has_entered()) {
        for part in [
            &last.feature,
            ", ",
            &last.place,
            ": ",
            &last.value,
            ", ",
            &last.words,
            ". Next: ",
        ] {
            told.push_str(part);
        }
    }
    let said = if view.is_refused { "" } else { &view.said };
    for part in [
        &view.feature,
        ", ",
        &view.place,
        ". ",
        &view.gauge,
        " ",
        &view.purpose,
        " ",
        said,
    ] {
        told.push_str(part);
    }
    told
}

/// What is asked of a run-out.
const HOUR: &str = "at what hour was the most? 12 is in line with throw 1, seen from the \
                    first end.";

/// The gauge and its range, as the route comes to another kind, and at the
/// last station before.
fn gauge_to_take(session: &Session, stops: &[Stop], station: Station) -> String {
    let before = latest(session).map(|reading| reading.station.kind);
    let here = station.kind;
    let now = taken_up(session, before, here).map(|gauge| ("Now: ", gauge));
    let next = || {
        let next = next_after(stops, station).filter(|_| !grows(session, stops, here))?;
        Some(("Next: ", taken_up(session, Some(here), next.kind)?))
    };
    now.or_else(next).map_or_else(String::new, |(when, gauge)| {
        let range = gauge.range.as_ref();
        let range = range.map(|(least, greatest)| format!("{} to {greatest} ", least.text()));
        let kind = wording::gauge_kind(gauge.kind).to_ascii_lowercase();
        format!("{when}{}{kind}", range.unwrap_or_default())
    })
}

/// The gauge of a kind, if it is another than the one before. One without a
/// range may stand for several, as micrometers come in sets.
fn taken_up(session: &Session, before: Option<Kind>, kind: Kind) -> Option<&Gauge> {
    let (id, gauge, _) = session.gauge_for(kind)?;
    let last = before.and_then(|before| session.gauge_for(before));
    let same = last.is_some_and(|(last, ..)| last == id) && gauge.range.is_some();
    (before != Some(kind) && !same).then_some(gauge)
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
    let mut told = "To settle the ".to_owned() + &what;
    if feature != Feature::of(station) {
        told.push_str(" of ");
        told.push_str(&wording::feature(feature).to_ascii_lowercase());
    }
    Some(told)
}

fn open_here(stops: &[Stop], station: Station) -> Option<&Stop> {
    stops
        .iter()
        .find(|stop| stop.station == station && !stop.is_read())
}

fn latest(session: &Session) -> Option<&Reading> {
    session.standing().next_back().map(|(_, reading)| reading)
}

/// What a reading just entered reads: its place, value, mark and sentence.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LastRead {
    /// Its feature.
    pub feature: String,
    /// Its place on it.
    pub place: String,
    /// The value as typed, with its unit.
    pub value: String,
    /// The shape of its comparison.
    pub mark: mark::Mark,
    /// The sentence of its comparison.
    pub words: String,
}

impl LastRead {
    /// The place in two, what it is and of what.
    #[must_use]
    pub fn place_of(&self) -> (&str, &str) {
        halves(&self.place)
    }

    /// The sentence in three: that it reads so, the word that matters, and by
    /// how much.
    #[must_use]
    pub fn parts(&self) -> (&str, &str, &str) {
        let word = self.words.strip_prefix("reads ");
        let (reads, word) = word.map_or(("", self.words.as_str()), |word| ("reads ", word));
        let at = word.find(" by ").unwrap_or(word.len());
        let (word, by) = word.split_at_checked(at).unwrap_or_default();
        (reads, word, by)
    }
}

/// The latest standing reading and what it reads.
#[must_use]
pub fn last_read(session: &Session) -> Option<LastRead> {
    let reading = latest(session)?;
    let comparison = Some(compare_reading(session, reading));
    Some(LastRead {
        feature: wording::feature(Feature::of(reading.station)),
        place: wording::place(reading.station),
        value: match &reading.entered {
            Indication::Size(size) => size.to_string(),
            Indication::Deviation(by) => format!("{by} makes {}", size_text(session, reading)),
        },
        mark: mark(Quantity::Size, comparison),
        words: mark::comparison_words(Quantity::Size, comparison, session.display_unit()),
    })
}
