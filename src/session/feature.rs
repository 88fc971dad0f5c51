//! Features, and which of their stations a route asks for.

use core::fmt;

use super::{Direction, Kind, Level, RouteChoice, Station};

/// One thing with a size: bore 3, main journal 2.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Feature {
    /// What it is.
    pub kind: Kind,
    /// Position, from 1 at the end of the engine that is called first.
    pub position: u8,
}

impl Feature {
    /// The feature a station is on.
    #[must_use]
    pub const fn of(station: Station) -> Self {
        Self {
            kind: station.kind,
            position: station.position,
        }
    }

    /// Reads the text of a feature, such as `piston/3`; `None` unless it is
    /// written exactly as [`fmt::Display`] writes it.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let (kind, position) = text.split_once('/')?;
        let position = position.parse().ok().filter(|p| 1 <= *p)?;
        let feature = Self {
            kind: Kind::from_key(kind)?,
            position,
        };
        (feature.to_string() == text).then_some(feature)
    }

    /// A station on this feature.
    #[must_use]
    pub const fn station(self, level: Level, direction: Direction) -> Station {
        Station::new(self.kind, self.position, level, direction)
    }

    /// The stations every feature of this kind is measured at, in the order
    /// the gauge goes.
    ///
    /// The standard route turns the second end of a journal by 45°, so that
    /// an oval in any direction shows, and the fuller one the centre; the
    /// plain route does not.
    #[must_use]
    pub fn stations(self, route: RouteChoice) -> Vec<Station> {
        use Direction::{D0, D45, D60, D90, D120, D135};
        let places: &[(Level, Direction)] = match (self.kind, route) {
            (Kind::Bore, RouteChoice::Fuller) => &[
                (Level::Top, D0),
                (Level::Top, D90),
                (Level::Top, D45),
                (Level::Top, D135),
                (Level::Middle, D0),
                (Level::Middle, D90),
                (Level::Bottom, D0),
                (Level::Bottom, D90),
                (Level::Reference, D0),
                (Level::Reference, D90),
            ],
            (Kind::MainJournal | Kind::RodJournal, RouteChoice::Fuller) => &[
                (Level::First, D0),
                (Level::First, D90),
                (Level::Centre, D45),
                (Level::Centre, D135),
                (Level::Last, D0),
                (Level::Last, D90),
            ],
            (Kind::Bore, _) => &[
                (Level::Top, D0),
                (Level::Top, D90),
                (Level::Bottom, D0),
                (Level::Bottom, D90),
            ],
            (Kind::Piston, _) => &[(Level::GaugePoint, D0)],
            (Kind::MainJournal | Kind::RodJournal, RouteChoice::Standard) => &[
                (Level::First, D0),
                (Level::First, D90),
                (Level::Last, D45),
                (Level::Last, D135),
            ],
            (Kind::MainJournal | Kind::RodJournal, RouteChoice::Plain) => &[
                (Level::First, D0),
                (Level::First, D90),
                (Level::Last, D0),
                (Level::Last, D90),
            ],
            (Kind::MainHousing | Kind::BigEnd, RouteChoice::Fuller) => &[
                (Level::First, D0),
                (Level::First, D60),
                (Level::First, D120),
                (Level::Last, D0),
                (Level::Last, D60),
                (Level::Last, D120),
            ],
            (Kind::MainHousing | Kind::BigEnd, _) => &[
                (Level::First, D0),
                (Level::First, D60),
                (Level::First, D120),
                (Level::Last, D0),
            ],
            (Kind::MainShell | Kind::RodShell | Kind::MainFitted | Kind::RodFitted, route) => {
                match route {
                    RouteChoice::Fuller => &[(Level::First, D0), (Level::Last, D0)],
                    _ => &[(Level::First, D0)],
                }
            }
            (Kind::Pin, RouteChoice::Fuller) => &[
                (Level::First, D0),
                (Level::First, D90),
                (Level::Centre, D0),
                (Level::Centre, D90),
                (Level::Last, D0),
                (Level::Last, D90),
            ],
            (Kind::Pin, _) => &[(Level::First, D0), (Level::Centre, D0), (Level::Last, D0)],
            (Kind::PinBore | Kind::SmallEnd, _) => &[
                (Level::First, D0),
                (Level::First, D90),
                (Level::Last, D0),
                (Level::Last, D90),
            ],
            // A worn bore is narrowest at the bottom, so the gap is as well.
            (Kind::TopRingGap | Kind::SecondRingGap, RouteChoice::Fuller) => {
                &[(Level::Top, D0), (Level::Bottom, D0)]
            }
            (Kind::TopRingGap | Kind::SecondRingGap, _) => &[(Level::Bottom, D0)],
            (Kind::Deck | Kind::Head, _) => &[
                (Level::InletEdge, D0),
                (Level::ExhaustEdge, D0),
                (Level::FirstEdge, D0),
                (Level::LastEdge, D0),
                (Level::Diagonal, D0),
                (Level::OtherDiagonal, D0),
            ],
            (
                Kind::EndPlay
                | Kind::RodSide
                | Kind::MainStrip
                | Kind::RodStrip
                | Kind::RunOut
                | Kind::TopRingSide
                | Kind::SecondRingSide
                | Kind::BoreScore
                | Kind::MainScore
                | Kind::RodScore,
                _,
            ) => &[(Level::Centre, D0)],
        };
        let parts = self.kind.parts().iter();
        let on = |part| {
            let station = move |&(level, direction)| self.station(level, direction).on(part);
            places.iter().map(station)
        };
        parts.flat_map(|part| on(*part)).collect()
    }

    /// A level taken in the two square directions.
    #[must_use]
    pub const fn square_pair(self, level: Level) -> [Station; 2] {
        self.pair(level, false)
    }

    /// A level taken in two directions square to each other, those at 45° to
    /// the usual ones where they are turned.
    #[must_use]
    pub const fn pair(self, level: Level, turned: bool) -> [Station; 2] {
        let [first, second] = if turned {
            [Direction::D45, Direction::D135]
        } else {
            [Direction::D0, Direction::D90]
        };
        [self.station(level, first), self.station(level, second)]
    }
}

impl fmt::Display for Feature {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}/{}", self.kind.key(), self.position)
    }
}
