//! Which features an engine has and which stations a route asks for.

use super::{Arrangement, Direction, Field, FieldKey, Kind, Level, RouteChoice, Session, Station};

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

    /// A station on this feature.
    #[must_use]
    pub const fn station(self, level: Level, direction: Direction) -> Station {
        Station::new(self.kind, self.position, level, direction)
    }

    /// The stations every feature of this kind is measured at, in the order
    /// the gauge goes.
    ///
    /// The standard route turns the second end of a journal by 45°, so that
    /// an oval in any direction shows; the plain route does not.
    #[must_use]
    pub fn stations(self, route: RouteChoice) -> Vec<Station> {
        use Direction::{D0, D45, D90, D135};
        let places: &[(Level, Direction)] = match (self.kind, route) {
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
        };
        let station = |&(level, direction)| self.station(level, direction);
        places.iter().map(station).collect()
    }

    /// A level taken in the two square directions.
    #[must_use]
    pub const fn square_pair(self, level: Level) -> [Station; 2] {
        [
            self.station(level, Direction::D0),
            self.station(level, Direction::D90),
        ]
    }
}

impl Session {
    /// Number of cylinders.
    #[must_use]
    pub fn cylinders(&self) -> u8 {
        match self.field(FieldKey::Cylinders) {
            Field::Cylinders(n) => n,
            _ => 1,
        }
    }

    /// How the cylinders stand.
    #[must_use]
    pub fn arrangement(&self) -> Arrangement {
        match self.field(FieldKey::Arrangement) {
            Field::Arrangement(arrangement) => arrangement,
            _ => Arrangement::InLine,
        }
    }

    /// Number of main journals.
    #[must_use]
    pub fn mains(&self) -> u8 {
        match self.field(FieldKey::Mains) {
            Field::Mains(n) => n,
            _ => 1,
        }
    }

    /// Rods on each throw.
    #[must_use]
    pub fn rods_per_throw(&self) -> u8 {
        match self.field(FieldKey::RodsPerThrow) {
            Field::RodsPerThrow(n) => n.max(1),
            _ => 1,
        }
    }

    /// Which stations are asked for.
    #[must_use]
    pub fn route(&self) -> RouteChoice {
        match self.field(FieldKey::Route) {
            Field::Route(route) => route,
            _ => RouteChoice::Standard,
        }
    }

    /// What the person calls the session.
    #[must_use]
    pub fn name(&self) -> String {
        match self.field(FieldKey::Name) {
            Field::Name(name) => name,
            _ => String::new(),
        }
    }

    /// How many features of a kind the layout has.
    #[must_use]
    pub fn count(&self, kind: Kind) -> u8 {
        match kind {
            Kind::Bore | Kind::Piston => self.cylinders(),
            Kind::MainJournal => self.mains(),
            Kind::RodJournal => self.cylinders().div_ceil(self.rods_per_throw()),
        }
    }

    /// The features of a kind.
    pub fn features_of(&self, kind: Kind) -> impl Iterator<Item = Feature> + use<> {
        (1..=self.count(kind)).map(move |position| Feature { kind, position })
    }

    /// All features, in the order they are measured.
    pub fn features(&self) -> impl Iterator<Item = Feature> {
        Kind::ALL
            .into_iter()
            .flat_map(|kind| self.features_of(kind))
    }

    /// True if the layout has this feature. Readings of others are kept.
    #[must_use]
    pub fn has(&self, feature: Feature) -> bool {
        feature.position <= self.count(feature.kind)
    }
}
