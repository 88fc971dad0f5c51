//! Where the gauge goes, drawn: a feature in lines, with what is read and
//! where one is now.
//!
//! The lines of each kind stand in `plates.txt`. In a square of [`SIDE`] units
//! there are, for what is round, two linked views: along the axis, with the
//! levels, and onto its end, with the directions of the level one is at. Both
//! are projected: where a diameter ends in one view, it ends in the other.

mod contact;
mod plate;

use self::contact::Ink;
use self::plate::Plate;
use super::route::{Stop, other_places};
use super::wording;
use crate::session::{Feature, Session, Station};

/// The length of a side of a drawing, in its units.
pub const SIDE: i32 = 120;

/// Tenths of a unit in a unit: what the places of marks are counted in.
const TENTHS: i32 = 10;

/// How far a mark lies in from the surface that the gauge touches, in tenths.
const INSET: i32 = 50;

/// How long the head of an arrow is, in tenths.
const HEAD: i32 = 65;

/// A drawing.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Drawing {
    /// The drawing as SVG, with its name in words. Its colours come from the
    /// classes of `style/drawing.css`.
    pub markup: String,
    /// What it says, in words.
    pub name: String,
    /// Where stations are drawn, in tenths of a unit from the left and the
    /// top; some in both views.
    pub marks: Vec<(Station, [i32; 2])>,
}

/// How much is read at a station.
#[derive(Clone, Copy, PartialEq, Eq)]
enum State {
    /// Nothing, and nothing is asked for.
    Unasked,
    /// Nothing yet.
    Open,
    /// Something, and more is asked for.
    Partly,
    /// All that is asked for.
    Read,
}

impl State {
    const fn class(self) -> &'static str {
        match self {
            Self::Unasked => "unasked",
            Self::Open => "open",
            Self::Partly => "partly",
            Self::Read => "read",
        }
    }
}

/// The drawing of the feature that a station is on.
#[must_use]
pub fn drawing(session: &Session, stops: &[Stop], now: Station) -> Drawing {
    let feature = Feature::of(now);
    let plate = Plate::new(now.kind);
    let states = states(stops, now);
    let name = name(session, &plate, &states, now);
    let mut ink = Ink::new(&name);
    ink.lines(&plate);
    let here = |station: &Station| station.level == now.level && station.part == now.part;
    for (station, state) in &states {
        if *state != State::Unasked {
            ink.level(&plate, *station, here(station));
        }
    }
    ink.gauge(&plate, now);
    let others = other_places(feature, stops).into_iter();
    let others = others.filter(|place| *place != now);
    let mut marks = Vec::new();
    let all = others.map(|place| (place, State::Unasked)).chain(states);
    for (station, state) in all {
        let Some([x, y]) = plate.mark(station) else {
            continue;
        };
        ink.mark(state.class(), station == now, [x, y]);
        if state == State::Unasked {
            continue;
        }
        marks.push((station, [x, y]));
        let end = plate.end_mark(station).filter(|_| here(&station));
        if let Some(at) = end {
            marks.push((station, at));
            if station != now {
                ink.mark(state.class(), false, at);
            }
        }
    }
    Drawing {
        markup: ink.done(),
        name,
        marks,
    }
}

impl Drawing {
    /// The station whose mark is nearest to a point of a box of this width and
    /// height, in which the drawing lies in the middle, as large as it can be.
    #[must_use]
    pub fn nearest(&self, point: [i32; 2], size: [i32; 2]) -> Option<Station> {
        let [width, height] = size;
        let side = width.min(height).max(1);
        let to_drawing = |at: i32, length: i32| (at - (length - side) / 2) * SIDE * TENTHS / side;
        let [x, y] = point;
        let (x, y) = (to_drawing(x, width), to_drawing(y, height));
        let away = |at: &[i32; 2]| {
            let [to_x, to_y] = *at;
            let (across, down) = (i64::from(to_x - x), i64::from(to_y - y));
            across * across + down * down
        };
        let nearest = self.marks.iter().min_by_key(|(_, at)| away(at));
        nearest.map(|(station, _)| *station)
    }
}

/// The stations of the feature that are on the route, and how much is read at
/// each; the station one is at as well, if it is not.
fn states(stops: &[Stop], now: Station) -> Vec<(Station, State)> {
    let mut states: Vec<(Station, State)> = Vec::new();
    let here = Feature::of(now);
    for stop in stops.iter().filter(|s| Feature::of(s.station) == here) {
        let state = match (stop.is_read(), stop.values.is_empty()) {
            (true, _) => State::Read,
            (false, true) => State::Open,
            (false, false) => State::Partly,
        };
        // A repeat is a stop of its own at the same station.
        match states.iter_mut().find(|(s, _)| *s == stop.station) {
            Some((_, known)) if state != State::Read => *known = state,
            Some(_) => {}
            None => states.push((stop.station, state)),
        }
    }
    if !states.iter().any(|(station, _)| *station == now) {
        states.push((now, State::Open));
    }
    states
}

/// What a drawing says, in words.
fn name(session: &Session, plate: &Plate, states: &[(Station, State)], now: Station) -> String {
    let read = states.iter().filter(|(_, s)| *s == State::Read).count();
    let mut name = wording::feature_here(session, Feature::of(now));
    for part in [
        " ",
        plate.views(),
        ": ",
        &wording::place(now),
        " now; ",
        &read.to_string(),
        " of ",
        &states.len().to_string(),
        " places read",
    ] {
        name.push_str(part);
    }
    name
}
