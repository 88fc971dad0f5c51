//! The route: in which order the stations come, and what the fender screen
//! shows at each.

use litemap::LiteMap;

use super::Fender;
use super::keypad::Face;
use super::wording;
use crate::assess::{Assessment, FindingKey, Which, compare_reading};
use crate::quantity::Exact;
use crate::session::{Feature, Kind, Level, Quantity, RouteChoice, Session, Stamp, Station};

/// A station on the route with what stands there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stop {
    /// The station.
    pub station: Station,
    /// The readings that stand there, as typed.
    pub values: Vec<String>,
}

impl Stop {
    /// True if something was read here.
    #[must_use]
    pub const fn is_read(&self) -> bool {
        !self.values.is_empty()
    }
}

/// How far the route has come.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Progress {
    /// Stations read.
    pub read: usize,
    /// Stations on the route.
    pub of: usize,
}

/// What a number typed at a station is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Purpose {
    /// One more reading here; what stands stays.
    Add,
    /// In place of what stands here, which is struck.
    Replace,
}

impl Purpose {
    pub(super) const fn key(self) -> &'static str {
        match self {
            Self::Add => "add",
            Self::Replace => "replace",
        }
    }

    pub(super) fn from_key(key: &str) -> Option<Self> {
        [Self::Add, Self::Replace]
            .into_iter()
            .find(|purpose| purpose.key() == key)
    }
}

/// The stations in the order they are measured: every feature of a kind,
/// then what only the worst of the kind get; stations read besides come at
/// the end of their kind.
#[must_use]
pub fn route(session: &Session, assessment: &Assessment) -> Vec<Stop> {
    let mut values = LiteMap::<Station, Vec<String>>::new();
    for (_, reading) in session.standing() {
        let here = values.entry(reading.station).or_default();
        here.push(reading.entered.to_string());
    }
    let mut stations = Vec::new();
    for kind in Kind::ALL {
        let start = stations.len();
        for feature in session.features_of(kind) {
            stations.extend(feature.stations(session.route()));
        }
        if session.route() == RouteChoice::Standard {
            stations.extend(of_the_worst(session, assessment, kind));
        }
        let listed: Vec<Station> = stations.iter().skip(start).copied().collect();
        let besides = values.keys().filter(|station| station.kind == kind);
        let besides = besides.filter(|station| session.has(Feature::of(**station)));
        stations.extend(besides.filter(|station| !listed.contains(station)));
    }
    let stop = |station| Stop {
        station,
        values: values.get(&station).cloned().unwrap_or_default(),
    };
    stations.into_iter().map(stop).collect()
}

/// The stations that only the worst of a kind get, once all of the kind are
/// read: bores the middle on the worst and the unworn reference on the two
/// worst, journals the centre on the worst. Worst is the largest bore, the
/// smallest journal.
fn of_the_worst(session: &Session, assessment: &Assessment, kind: Kind) -> Vec<Station> {
    let which = match kind {
        Kind::Bore => Which::Largest,
        Kind::MainJournal | Kind::RodJournal => Which::Smallest,
        Kind::Piston => return Vec::new(),
    };
    // Worst first; a map in the order of what has worn away.
    let mut worst = LiteMap::<(Exact, Feature), ()>::new();
    for feature in session.features_of(kind) {
        let key = FindingKey {
            feature,
            quantity: Quantity::Size,
            which,
        };
        let finding = assessment.get(key);
        match finding.and_then(|f| f.value().filter(|_| f.missing.is_empty())) {
            Some(value) if kind == Kind::Bore => worst.insert((-value, feature), ()),
            Some(value) => worst.insert((value, feature), ()),
            None => return Vec::new(),
        };
    }
    let worst = |n: usize| worst.keys().take(n).map(|key| key.1);
    if kind == Kind::Bore {
        let middle = worst(1).flat_map(|f| f.square_pair(Level::Middle));
        let reference = worst(2).flat_map(|f| f.square_pair(Level::Reference));
        middle.chain(reference).collect()
    } else {
        worst(1)
            .flat_map(|f| f.square_pair(Level::Centre))
            .collect()
    }
}

/// How far the route has come.
#[must_use]
pub fn progress(stops: &[Stop]) -> Progress {
    Progress {
        read: stops.iter().filter(|stop| stop.is_read()).count(),
        of: stops.len(),
    }
}

/// The next station after `from` where nothing was read, from the start
/// again after the end; `None` once everything is read.
#[must_use]
pub fn next_open(stops: &[Stop], from: Option<Station>) -> Option<Station> {
    let at = from.and_then(|from| stops.iter().position(|stop| stop.station == from));
    let start = at.map_or(0, |at| at + 1);
    let after = stops.iter().skip(start);
    let before = stops.iter().take(start);
    after
        .chain(before)
        .find(|stop| !stop.is_read())
        .map(|stop| stop.station)
}

/// What the fender screen shows besides the keypad.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct RouteView {
    /// The feature.
    pub feature: String,
    /// Level and direction.
    pub place: String,
    /// Where exactly the gauge goes.
    pub where_exactly: &'static str,
    /// The gauge.
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
    /// How far the route has come.
    pub progress: Progress,
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
        return RouteView::default();
    };
    let stop = stops.iter().find(|stop| stop.station == station);
    let standing = stop.map_or_else(Vec::new, |stop| stop.values.clone());
    let (purpose, turn) = match (standing.is_empty(), fender.purpose()) {
        (true, _) => (String::new(), ""),
        (false, Purpose::Add) => (format!("Repeat of {}", standing.join(", ")), "replace it"),
        (false, Purpose::Replace) => (format!("In place of {}", standing.join(", ")), "keep both"),
    };
    let gauge = session.gauge_for(station.kind);
    RouteView {
        feature: wording::feature(Feature::of(station)),
        place: wording::place(station),
        where_exactly: wording::where_exactly(station.level),
        gauge: gauge.map_or_else(String::new, |(_, gauge, _)| wording::gauge(gauge)),
        standing,
        purpose,
        turn,
        face: fender.face().unwrap_or_default(),
        is_refused: fender.is_refused(),
        said: fender.said().unwrap_or_default().to_owned(),
        progress: progress(stops),
        next: next_open(stops, Some(station))
            .filter(|next| *next != station)
            .map(wording::station),
    }
}

/// What a reading just entered reads: its place, value, mark and sentence.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LastRead {
    /// Its station in words.
    pub station: String,
    /// The value as typed, with its unit.
    pub value: String,
    /// The shape of its comparison.
    pub mark: wording::Mark,
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
        value: reading.entered.to_string(),
        mark: wording::mark(Quantity::Size, comparison),
        words: wording::comparison_words(Quantity::Size, comparison, session.display_unit()),
    })
}
