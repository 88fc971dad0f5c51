//! Which features an engine has and which stations a route asks for.

use core::fmt;

use super::{
    Arrangement, Counting, Direction, Field, FieldKey, FirstEnd, Kind, Level, RouteChoice, Session,
    Station, Use,
};
use crate::quantity::Size;
use crate::uncertainty::{Climate, Material};

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
        use Direction::{D0, D45, D90, D135};
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
        };
        let station = |&(level, direction)| self.station(level, direction);
        places.iter().map(station).collect()
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

    /// What the machine is used for.
    #[must_use]
    pub fn machine_use(&self) -> Use {
        match self.field(FieldKey::Use) {
            Field::Use(machine_use) => machine_use,
            _ => Use::Street,
        }
    }

    /// Which end position 1 is at.
    #[must_use]
    pub fn first_end(&self) -> FirstEnd {
        match self.field(FieldKey::FirstEnd) {
            Field::FirstEnd(end) => end,
            _ => FirstEnd::Timing,
        }
    }

    /// How two banks are counted.
    #[must_use]
    pub fn counting(&self) -> Counting {
        match self.field(FieldKey::Counting) {
            Field::Counting(counting) => counting,
            _ => Counting::Across,
        }
    }

    /// How warm it is where the gauges are.
    #[must_use]
    pub fn climate(&self) -> Climate {
        match self.field(FieldKey::Climate) {
            Field::Climate(climate) => climate,
            _ => Climate::Mild,
        }
    }

    /// What a kind is made of.
    #[must_use]
    pub fn material(&self, kind: Kind) -> Material {
        match self.field(FieldKey::Material(kind)) {
            Field::Material(_, material) => material,
            _ => kind.usual_material(),
        }
    }

    /// Whether one spot of a kind is to be read five times.
    #[must_use]
    pub fn study(&self, kind: Kind) -> bool {
        matches!(self.field(FieldKey::Study(kind)), Field::Study(_, true))
    }

    /// The size a kind was made to, where somebody said it.
    #[must_use]
    pub fn nominal(&self, kind: Kind) -> Option<Size> {
        match self.field(FieldKey::Nominal(kind)) {
            Field::Nominal(_, size) => size.map(|size| size.size()),
            _ => None,
        }
    }

    /// The bank a cylinder stands in, 1 or 2, where there are two.
    #[must_use]
    pub fn bank(&self, cylinder: u8) -> Option<u8> {
        let one = matches!(
            self.arrangement(),
            Arrangement::InLine | Arrangement::Single
        );
        let second = match self.counting() {
            Counting::Across => cylinder.is_multiple_of(2),
            Counting::AlongBanks => self.cylinders().div_ceil(2) < cylinder,
        };
        (!one).then_some(1 + u8::from(second))
    }

    /// The cylinders whose rods run on a throw.
    #[must_use]
    pub fn cylinders_on(&self, throw: u8) -> Vec<u8> {
        let cylinders = self.cylinders();
        let on_it = match (self.rods_per_throw(), self.counting()) {
            (1, _) => vec![throw],
            (_, Counting::Across) => vec![2 * throw - 1, 2 * throw],
            (_, Counting::AlongBanks) => vec![throw, throw + cylinders.div_ceil(2)],
        };
        on_it.into_iter().filter(|c| *c <= cylinders).collect()
    }

    /// The features of a kind in the order that saves walking: down one bank
    /// and back up the other.
    #[must_use]
    pub fn walk(&self, kind: Kind) -> Vec<Feature> {
        let banked = matches!(kind, Kind::Bore | Kind::Piston);
        let second = |f: &Feature| banked && self.bank(f.position) == Some(2);
        let down = self.features_of(kind).filter(|f| !second(f));
        let mut walk: Vec<_> = down.collect();
        let mut back: Vec<_> = self.features_of(kind).filter(second).collect();
        back.reverse();
        walk.extend(back);
        walk
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
