//! Where the gauge goes, drawn: a feature in lines, with what is read and
//! where one is now.
//!
//! The lines of each kind stand in `plates.txt`. In a square of [`SIDE`] units
//! there are, for what is round, two linked views: along the axis, with the
//! levels, and onto its end, with the directions of the level one is at.

mod contact;
mod plate;

use self::contact::Ink;
use self::plate::Plate;
use super::route::{Stop, other_places};
use super::wording;
use crate::session::{Feature, Session, Station};

/// The length of a side of a drawing, in its units.
const SIDE: i32 = 120;

/// Tenths of a unit in a unit: what places are counted in.
const TENTHS: i32 = 10;

/// How far a mark lies in from the surface that the gauge touches, in tenths.
const INSET: i32 = 40;

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
    /// The stations that are drawn, in the order of the route.
    pub spots: Vec<Spot>,
}

/// A station in a drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Spot {
    /// The station.
    pub station: Station,
    /// How much is read there.
    pub state: State,
    /// Where its mark is, in tenths of a unit from the left and the top.
    pub at: [i32; 2],
    /// Where it is in the view onto the end, if it shows there.
    pub on_end: Option<[i32; 2]>,
}

/// How much is read at a station.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum State {
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
            Self::Open => "open",
            Self::Partly => "partly",
            Self::Read => "read",
        }
    }
}

/// The drawing of the feature that a station is on.
#[must_use]
pub fn drawing(session: &Session, stops: &[Stop], now: Station) -> Drawing {
    let plate = Plate::new(now.kind);
    let spots = spots(&plate, stops, now);
    let name = name(session, plate.views, &spots, now);
    let mut ink = Ink::new(&name);
    ink.lines(&plate);
    for spot in &spots {
        ink.level(&plate, spot.station, spot.on_end.is_some());
    }
    for place in other_places(Feature::of(now), stops) {
        if place != now {
            ink.mark("unasked", false, plate.mark(place));
        }
    }
    for spot in &spots {
        let is_now = spot.station == now;
        ink.mark(spot.state.class(), is_now, spot.at);
        if let Some(at) = spot.on_end.filter(|_| !is_now) {
            ink.mark(spot.state.class(), false, at);
        }
    }
    ink.gauge(&plate, now);
    Drawing {
        markup: ink.done(),
        name,
        spots,
    }
}

impl Drawing {
    /// The station whose mark is nearest to a point of a box of this width and
    /// height, in which the drawing lies in the middle, as large as it can be.
    #[must_use]
    pub fn nearest(&self, point: [i32; 2], size: [i32; 2]) -> Option<Station> {
        let ([x, y], [width, height]) = (point, size);
        let side = width.min(height).max(1);
        let to_drawing = |at: i32, length: i32| (at - (length - side) / 2) * SIDE * TENTHS / side;
        let (x, y) = (to_drawing(x, width), to_drawing(y, height));
        let mut nearest = None;
        let mut least = i32::MAX;
        for spot in &self.spots {
            for [to_x, to_y] in [Some(spot.at), spot.on_end].into_iter().flatten() {
                let away = (to_x - x).pow(2) + (to_y - y).pow(2);
                if away < least {
                    (nearest, least) = (Some(spot.station), away);
                }
            }
        }
        nearest
    }
}

/// The stations of the feature that are on the route, and the one one is at if
/// it is not.
fn spots(plate: &Plate, stops: &[Stop], now: Station) -> Vec<Spot> {
    let mut spots: Vec<Spot> = Vec::new();
    let mut put = |station: Station, state: State| {
        // A repeat is a stop of its own at the same station.
        match spots.iter_mut().find(|spot| spot.station == station) {
            Some(known) if state != State::Read => known.state = state,
            Some(_) => {}
            None => {
                let here = station.level == now.level && station.part == now.part;
                spots.push(Spot {
                    station,
                    state,
                    at: plate.mark(station),
                    on_end: plate.end_mark(station).filter(|_| here),
                });
            }
        }
    };
    let mut known = false;
    for stop in stops {
        if Feature::of(stop.station) == Feature::of(now) {
            known |= stop.station == now;
            let state = match (stop.is_read(), stop.values.is_empty()) {
                (true, _) => State::Read,
                (false, true) => State::Open,
                (false, false) => State::Partly,
            };
            put(stop.station, state);
        }
    }
    if !known {
        put(now, State::Open);
    }
    spots
}

/// What a drawing says, in words.
fn name(session: &Session, views: &str, spots: &[Spot], now: Station) -> String {
    let read = spots.iter().filter(|spot| spot.state == State::Read);
    let mut name = wording::feature_here(session, Feature::of(now));
    for part in [
        " ",
        views,
        ": ",
        &wording::place(now),
        " now; ",
        &read.count().to_string(),
        " of ",
        &spots.len().to_string(),
        " places read",
    ] {
        name.push_str(part);
    }
    name
}
