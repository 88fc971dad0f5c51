//! The route: in which order the stations come.

use litemap::LiteMap;

use super::wording;
use crate::assess::{Assessment, Finding, FindingKey, Settle, Which};
use crate::quantity::{Exact, Size, show};
use crate::session::{
    Direction, Feature, Indication, Kind, Level, Quantity, Reading, RouteChoice, Session, Station,
    ordered,
};
use crate::verdict::Verdict;

/// One reading in so many is taken again at the end (common practice: a
/// tenth, the worst bore and journals among them).
const REPEAT_ONE_IN: usize = 10;

/// A station on the route with what stands there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stop {
    /// The station.
    pub station: Station,
    /// The sizes that were read there.
    pub values: Vec<String>,
    /// How many are asked for.
    pub asked: usize,
    /// What for.
    pub why: Why,
}

/// Why a station is on the route.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Why {
    /// To be measured.
    First,
    /// To see how well readings repeat.
    Again,
    /// To settle this quantity, which is too close to call.
    Settle(Feature, Quantity),
}

impl Stop {
    /// A station at which nothing was read.
    #[must_use]
    pub const fn open(station: Station) -> Self {
        Self {
            station,
            values: Vec::new(),
            asked: 1,
            why: Why::First,
        }
    }

    /// True if nothing more is asked for here.
    #[must_use]
    pub const fn is_read(&self) -> bool {
        self.asked <= self.values.len()
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
    /// None: the hour of the high spot of the run-out just read is asked for.
    Hour,
}

impl Purpose {
    pub(super) const fn key(self) -> &'static str {
        match self {
            Self::Add => "add",
            Self::Replace => "replace",
            Self::Hour => "hour",
        }
    }

    pub(super) fn from_key(key: &str) -> Option<Self> {
        [Self::Add, Self::Replace, Self::Hour]
            .into_iter()
            .find(|purpose| purpose.key() == key)
    }
}

/// The stations in the order they are measured: every feature of a kind,
/// then what only the worst of the kind get; stations read besides come at
/// the end of their kind, and what is to be read again at the end of all.
#[must_use]
pub fn route(session: &Session, assessment: &Assessment) -> Vec<Stop> {
    let mut values = LiteMap::<Station, Vec<String>>::new();
    for (_, reading) in session.standing() {
        let here = values.entry(reading.station).or_default();
        here.push(value_text(session, reading));
    }
    let mut stations = Vec::new();
    for kind in session.kinds() {
        let start = stations.len();
        for feature in session.walk(kind) {
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
    let again = to_repeat(session, &stations);
    let stop = |station, asked, why| Stop {
        station,
        values: values.get(&station).cloned().unwrap_or_default(),
        asked,
        why,
    };
    let mut studied: Option<Kind> = None;
    let mut stops = Vec::with_capacity(stations.len());
    for station in stations {
        let is_first = studied != Some(station.kind);
        studied = Some(station.kind);
        let asked = if is_first && session.study(station.kind) {
            STUDY
        } else {
            1
        };
        stops.push(stop(station, asked, Why::First));
    }
    stops.extend(
        again
            .into_iter()
            .map(|station| stop(station, 2, Why::Again)),
    );
    if stops.iter().all(Stop::is_read)
        && let Some((why, stations)) = to_settle(session, assessment)
    {
        for (station, times) in stations {
            let read = values.get(&station).map_or(0, Vec::len);
            stops.push(stop(station, read + times, why));
        }
    }
    stops
}

/// How often one spot is read to see how well readings repeat: common
/// practice.
const STUDY: usize = 5;

/// What to read next so that something too close to call is settled: of all
/// that is open what takes the fewest readings. Once one of a kind is proved
/// beyond the limit of its size all are machined, and only the one that has
/// worn most still matters.
fn to_settle(session: &Session, assessment: &Assessment) -> Option<(Why, Vec<(Station, usize)>)> {
    let mut best = None;
    let mut least = (true, usize::MAX);
    for finding in &assessment.findings {
        let feature = finding.key.feature;
        let settle = finding.decided().and(finding.sure.as_ref());
        let Some(Settle::Read(stations, settles)) = settle.and_then(|sure| sure.settle.as_ref())
        else {
            continue;
        };
        // What two directions do not show of a bore is said, not asked for.
        let unseen = settle.is_some_and(|sure| sure.verdict == Verdict::NotSeen);
        let told = unseen && feature.kind == Kind::Bore;
        if told || stations.is_empty() || !matters(session, assessment, feature) {
            continue;
        }
        let times = stations.iter().map(|(_, times)| times).sum();
        if (!settles, times) < least {
            least = (!settles, times);
            best = Some((Why::Settle(feature, finding.key.quantity), stations.clone()));
        }
    }
    best
}

fn matters(session: &Session, assessment: &Assessment, feature: Feature) -> bool {
    let machined_together = matches!(
        feature.kind,
        Kind::Bore | Kind::MainJournal | Kind::RodJournal | Kind::MainHousing
    );
    if !machined_together {
        return true;
    }
    let which = if feature.kind.is_hole() {
        Which::Largest
    } else {
        Which::Smallest
    };
    let size = |feature| assessment.get(FindingKey::new(feature, Quantity::Size, which));
    let all = || session.features_of(feature.kind).filter_map(size);
    let is_beyond = |finding: &Finding| finding.decided() == Some(Verdict::BeyondLimit);
    let own = size(feature).and_then(Finding::value);
    let is_worst = |own: Exact| {
        all().filter_map(Finding::value).all(|other| match which {
            Which::Largest => other <= own,
            _ => own <= other,
        })
    };
    !all().any(is_beyond) || own.is_some_and(is_worst)
}

/// What a reading comes to, of a run-out with the hour of its high spot.
fn value_text(session: &Session, reading: &Reading) -> String {
    let text = size_text(session, reading);
    let station = reading.station;
    let hour = session.high_spot(station.position);
    match hour.filter(|_| station.kind == Kind::RunOut) {
        Some(hour) => format!("{text} at {}", wording::hour(hour)),
        None => text,
    }
}

/// What a reading comes to, as it was typed where it is a size.
pub(super) fn size_text(session: &Session, reading: &Reading) -> String {
    match (&reading.entered, session.size_of(reading)) {
        (Indication::Deviation(by), Some(size)) => {
            let decimals = by.text().split_once('.').map_or(0, |(_, d)| d.len());
            let decimals = u8::try_from(decimals).unwrap_or(u8::MAX);
            let shown = show(size.into(), by.unit(), decimals);
            format!("{} {}", shown.text, by.unit().sign())
        }
        (entered, _) => entered.to_string(),
    }
}

/// What is read again: a tenth of the stations at which sizes are read, evenly
/// spread, and of each kind that is read the place that has worn most by its
/// first readings (by which a repeat changes nothing here). Amounts are coarse
/// beside what is asked of them, and some are gone by then.
fn to_repeat(session: &Session, stations: &[Station]) -> Vec<Station> {
    if session.route() == RouteChoice::Plain {
        return Vec::new();
    }
    let mut first = LiteMap::<Station, Size>::new();
    for (_, reading) in session.standing() {
        if let (Some(size), None) = (session.size_of(reading), first.get(&reading.station)) {
            first.insert(reading.station, size);
        }
    }
    let sizes = stations.iter().filter(|s| !s.kind.is_amount());
    let spread = sizes.skip(REPEAT_ONE_IN / 2).step_by(REPEAT_ONE_IN);
    let mut again: Vec<Station> = spread.copied().collect();
    for kind in [Kind::Bore, Kind::MainJournal, Kind::RodJournal] {
        let asked = stations
            .iter()
            .filter(|station| station.kind == kind && station.level != Level::Reference);
        let sizes: Option<Vec<_>> = asked
            .map(|station| first.get(station).map(|size| (*size, *station)))
            .collect();
        let by_size = ordered(sizes.into_iter().flatten().map(|key| (key, ())));
        let worst = if kind == Kind::Bore {
            by_size.last()
        } else {
            by_size.first()
        };
        again.extend(worst.map(|((_, station), ())| *station));
    }
    let listed = ordered(again.iter().map(|station| (*station, ())));
    let once = stations
        .iter()
        .filter(|station| listed.contains_key(station));
    once.copied().collect()
}

/// The places a feature has besides those on its route, to read more there.
#[must_use]
pub fn other_places(feature: Feature, stops: &[Stop]) -> Vec<Station> {
    let levels = feature.kind.levels().iter();
    let directions = feature.kind.directions();
    let here = |level, part| {
        let at = move |d: &Direction| feature.station(level, *d).on(part);
        directions.iter().map(at)
    };
    let on = |part| levels.clone().flat_map(move |level| here(*level, part));
    let all = feature.kind.parts().iter().flat_map(|part| on(*part));
    let on_route = |station: &Station| stops.iter().any(|stop| stop.station == *station);
    all.filter(|station| !on_route(station)).collect()
}

/// The stations that only the worst of a kind get, once all of the kind are
/// read: bores the middle on the worst and the unworn reference on the two
/// worst, journals the centre on the worst. Worst is the largest bore, the
/// smallest journal.
fn of_the_worst(session: &Session, assessment: &Assessment, kind: Kind) -> Vec<Station> {
    let which = match kind {
        Kind::Bore => Which::Largest,
        Kind::MainJournal | Kind::RodJournal => Which::Smallest,
        _ => return Vec::new(),
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

/// The next station after `from` where something is to be read, from the
/// start again after the end; repeats come after all that was not read yet,
/// then what settles something. `None` once
/// everything is read.
#[must_use]
pub fn next_open(stops: &[Stop], from: Option<Station>) -> Option<Station> {
    next(stops, from, 0)
}

/// The station that comes after one more reading here, if none comes onto the
/// route by it.
pub(super) fn next_after(stops: &[Stop], here: Station) -> Option<Station> {
    next(stops, Some(here), 1)
}

/// The next station, as if so many more had been read where one stands.
fn next(stops: &[Stop], from: Option<Station>, more: usize) -> Option<Station> {
    let is_open = |stop: &Stop| {
        let more = if from == Some(stop.station) { more } else { 0 };
        stop.values.len() + more < stop.asked
    };
    let at = from.and_then(|from| stops.iter().position(|stop| stop.station == from));
    // One spot that is read several times in a row is not left before.
    let stays = |at: &usize| {
        let stop = stops.get(*at);
        stop.is_some_and(|stop| stop.asked == STUDY && is_open(stop))
    };
    let start = at.map_or(0, |at| if stays(&at) { at } else { at + 1 });
    let round = stops.iter().skip(start).chain(stops.iter().take(start));
    let open = round.filter(|stop| is_open(stop));
    let phase = |why| match why {
        Why::First => 0,
        Why::Again => 1,
        Why::Settle(..) => 2,
    };
    // The first of equals.
    let first = open.reduce(|a, b| if phase(b.why) < phase(a.why) { b } else { a });
    first.map(|stop| stop.station)
}

/// Whether further stations of this kind come onto the route once all of it
/// are read, those that only the worst get.
pub(super) fn grows(session: &Session, stops: &[Stop], kind: Kind) -> bool {
    let of_the_worst = |level| matches!(level, Level::Middle | Level::Reference | Level::Centre);
    session.route() == RouteChoice::Standard
        && matches!(kind, Kind::Bore | Kind::MainJournal | Kind::RodJournal)
        && !stops
            .iter()
            .any(|stop| stop.station.kind == kind && of_the_worst(stop.station.level))
}
