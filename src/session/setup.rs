//! Set-up: one register for each field, the latest stamp wins.

use super::{Dimension, Kind, LimitKey, Space, Stamp, Volume};
use crate::quantity::{Entered, EnteredDeviation, Unit};
use crate::remedy::{Look, Spot};
use crate::uncertainty::{Climate, Material};

/// How the cylinders stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Arrangement {
    /// One row.
    InLine,
    /// Two banks at an angle, usually two rods on a throw.
    Vee,
    /// Two banks facing away from each other.
    Flat,
    /// One cylinder.
    Single,
}

/// Which stations are asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum RouteChoice {
    /// Journals in staggered directions; middle and reference of the worst.
    Standard,
    /// Three levels, 45° pairs, the unworn reference of every bore.
    Fuller,
    /// Two places, the same two directions. It cannot see a 45° oval.
    Plain,
}

/// What the machine is used for; common rules ask for more or less by it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Use {
    /// On the road.
    Street,
    /// Pulling loads, or long at full load.
    Towing,
    /// On a track, naturally aspirated.
    Track,
    /// With a supercharger or turbocharger.
    Boosted,
}

/// Which end of the crankshaft position 1 is at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FirstEnd {
    /// The end that drives the camshaft.
    Timing,
    /// The end of flywheel or coupling.
    Flywheel,
}

/// How the cylinders of two banks are counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Counting {
    /// From one bank to the other: odd on the first, even on the second.
    Across,
    /// All of the first bank, then all of the second.
    AlongBanks,
}

/// A set-up field with its value.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Field {
    /// What the person calls the session.
    Name(String),
    /// Number of cylinders, 1 to 16.
    Cylinders(u8),
    /// How they stand.
    Arrangement(Arrangement),
    /// Number of main journals.
    Mains(u8),
    /// Rods on each throw, 1 or 2.
    RodsPerThrow(u8),
    /// Unit in which findings are shown.
    DisplayUnit(Unit),
    /// Which stations are asked for.
    Route(RouteChoice),
    /// What the machine is used for.
    Use(Use),
    /// Which end position 1 is at.
    FirstEnd(FirstEnd),
    /// How two banks are counted.
    Counting(Counting),
    /// How warm it is where the gauges are.
    Climate(Climate),
    /// The size a kind was made to, as the manual or a stamped oversize says;
    /// `None` where nobody said.
    Nominal(Kind, Option<Entered>),
    /// The gauge a kind is measured with; `None` for the usual one.
    GaugeOf(Kind, Option<Stamp>),
    /// What a kind is made of.
    Material(Kind, Material),
    /// Whether one spot of a kind is to be read five times, the gauge taken
    /// away and set down anew each time, so that its repeatability is known.
    Study(Kind, bool),
    /// Whether features of a kind are asked for.
    Measure(Kind, bool),
    /// Where in a turn the indicator showed most on this main journal, in
    /// hours of a clock, 1 to 12; `None` where nobody noted it.
    HighSpot(u8, Option<u8>),
    /// A length besides those of features; `None` where nobody gave it.
    Length(Dimension, Option<Entered>),
    /// A volume; `None` where nobody gave it.
    Volume(Space, Option<Volume>),
    /// How far the crown stops below the deck.
    DeckClearance(Option<EnteredDeviation>),
    /// The steps from standard in which pistons or shells can be had; `None`
    /// where nobody listed them.
    Stock(Kind, Option<Vec<Entered>>),
    /// What was looked for at a spot and seen or not seen; `None` where the
    /// answer was taken back.
    Look(Spot, Look, Option<bool>),
    /// A limit of the manual, in its own unit; `None` where it is silent.
    Limit(LimitKey, Option<Entered>),
    /// Where the limits of a kind come from.
    LimitSource(Kind, String),
}

/// The name of a set-up field.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FieldKey {
    /// See [`Field::Name`].
    Name,
    /// See [`Field::Cylinders`].
    Cylinders,
    /// See [`Field::Arrangement`].
    Arrangement,
    /// See [`Field::Mains`].
    Mains,
    /// See [`Field::RodsPerThrow`].
    RodsPerThrow,
    /// See [`Field::DisplayUnit`].
    DisplayUnit,
    /// See [`Field::Route`].
    Route,
    /// See [`Field::Use`].
    Use,
    /// See [`Field::FirstEnd`].
    FirstEnd,
    /// See [`Field::Counting`].
    Counting,
    /// See [`Field::Climate`].
    Climate,
    /// See [`Field::Nominal`].
    Nominal(Kind),
    /// See [`Field::GaugeOf`].
    GaugeOf(Kind),
    /// See [`Field::Material`].
    Material(Kind),
    /// See [`Field::Study`].
    Study(Kind),
    /// See [`Field::Measure`].
    Measure(Kind),
    /// See [`Field::HighSpot`].
    HighSpot(u8),
    /// See [`Field::Length`].
    Length(Dimension),
    /// See [`Field::Volume`].
    Volume(Space),
    /// See [`Field::DeckClearance`].
    DeckClearance,
    /// See [`Field::Stock`].
    Stock(Kind),
    /// See [`Field::Look`].
    Look(Spot, Look),
    /// See [`Field::Limit`].
    Limit(LimitKey),
    /// See [`Field::LimitSource`].
    LimitSource(Kind),
}

impl Field {
    /// The name of this field.
    #[must_use]
    pub const fn key(&self) -> FieldKey {
        match self {
            Self::Name(_) => FieldKey::Name,
            Self::Cylinders(_) => FieldKey::Cylinders,
            Self::Arrangement(_) => FieldKey::Arrangement,
            Self::Mains(_) => FieldKey::Mains,
            Self::RodsPerThrow(_) => FieldKey::RodsPerThrow,
            Self::DisplayUnit(_) => FieldKey::DisplayUnit,
            Self::Route(_) => FieldKey::Route,
            Self::Use(_) => FieldKey::Use,
            Self::FirstEnd(_) => FieldKey::FirstEnd,
            Self::Counting(_) => FieldKey::Counting,
            Self::Climate(_) => FieldKey::Climate,
            Self::Nominal(kind, _) => FieldKey::Nominal(*kind),
            Self::GaugeOf(kind, _) => FieldKey::GaugeOf(*kind),
            Self::Material(kind, _) => FieldKey::Material(*kind),
            Self::Study(kind, _) => FieldKey::Study(*kind),
            Self::Measure(kind, _) => FieldKey::Measure(*kind),
            Self::HighSpot(main, _) => FieldKey::HighSpot(*main),
            Self::Length(name, _) => FieldKey::Length(*name),
            Self::Volume(name, _) => FieldKey::Volume(*name),
            Self::DeckClearance(_) => FieldKey::DeckClearance,
            Self::Stock(kind, _) => FieldKey::Stock(*kind),
            Self::Look(spot, look, _) => FieldKey::Look(*spot, *look),
            Self::Limit(key, _) => FieldKey::Limit(*key),
            Self::LimitSource(kind, _) => FieldKey::LimitSource(*kind),
        }
    }
}

impl FieldKey {
    /// The value a field has while nobody has set it.
    #[must_use]
    pub const fn default(self) -> Field {
        match self {
            Self::Name => Field::Name(String::new()),
            Self::Cylinders => Field::Cylinders(4),
            Self::Arrangement => Field::Arrangement(Arrangement::InLine),
            Self::Mains => Field::Mains(5),
            Self::RodsPerThrow => Field::RodsPerThrow(1),
            Self::DisplayUnit => Field::DisplayUnit(Unit::Millimetre),
            Self::Route => Field::Route(RouteChoice::Standard),
            Self::Use => Field::Use(Use::Street),
            Self::FirstEnd => Field::FirstEnd(FirstEnd::Timing),
            Self::Counting => Field::Counting(Counting::Across),
            Self::Climate => Field::Climate(Climate::Mild),
            Self::Nominal(kind) => Field::Nominal(kind, None),
            Self::GaugeOf(kind) => Field::GaugeOf(kind, None),
            Self::Material(kind) => Field::Material(kind, kind.usual_material()),
            Self::Study(kind) => Field::Study(kind, false),
            Self::Measure(kind) => Field::Measure(kind, kind.is_usual()),
            Self::HighSpot(main) => Field::HighSpot(main, None),
            Self::Length(name) => Field::Length(name, None),
            Self::Volume(name) => Field::Volume(name, None),
            Self::DeckClearance => Field::DeckClearance(None),
            Self::Stock(kind) => Field::Stock(kind, None),
            Self::Look(spot, look) => Field::Look(spot, look, None),
            Self::Limit(key) => Field::Limit(key, None),
            Self::LimitSource(kind) => Field::LimitSource(kind, String::new()),
        }
    }
}

impl Arrangement {
    /// All arrangements.
    pub const ALL: [Self; 4] = [Self::InLine, Self::Vee, Self::Flat, Self::Single];

    /// The word in files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::InLine => "in_line",
            Self::Vee => "v",
            Self::Flat => "flat",
            Self::Single => "single",
        }
    }

    /// The arrangement of this word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|a| a.key() == key)
    }

    /// The usual rods on a throw (common practice).
    #[must_use]
    pub const fn usual_rods_per_throw(self) -> u8 {
        match self {
            Self::Vee => 2,
            Self::InLine | Self::Flat | Self::Single => 1,
        }
    }

    /// The usual number of main journals: one on each side of every throw in
    /// a row, one on each side of every facing pair (common practice).
    #[must_use]
    pub const fn usual_mains(self, cylinders: u8) -> u8 {
        match self {
            Self::InLine | Self::Single => cylinders.saturating_add(1),
            Self::Vee | Self::Flat => cylinders.div_ceil(2) + 1,
        }
    }
}

impl RouteChoice {
    /// All choices.
    pub const ALL: [Self; 3] = [Self::Standard, Self::Fuller, Self::Plain];

    /// The word in files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Standard => "standard",
            Self::Fuller => "fuller",
            Self::Plain => "plain",
        }
    }

    /// The choice of this word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|r| r.key() == key)
    }
}

impl Use {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Street, Self::Towing, Self::Track, Self::Boosted];

    /// The word in files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Street => "street",
            Self::Towing => "towing",
            Self::Track => "track",
            Self::Boosted => "boosted",
        }
    }

    /// The use of this word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|one| one.key() == key)
    }
}

impl FirstEnd {
    /// All of them.
    pub const ALL: [Self; 2] = [Self::Timing, Self::Flywheel];

    /// The word in files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Timing => "timing",
            Self::Flywheel => "flywheel",
        }
    }

    /// The end of this word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|one| one.key() == key)
    }
}

impl Counting {
    /// All of them.
    pub const ALL: [Self; 2] = [Self::Across, Self::AlongBanks];

    /// The word in files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Across => "across",
            Self::AlongBanks => "along_banks",
        }
    }

    /// The counting of this word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|one| one.key() == key)
    }
}
