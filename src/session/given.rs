//! Lengths, volumes and sizes to be had that somebody gives besides those of
//! features.

use super::Kind;
use crate::quantity::Unit;

/// A length besides those of features.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Dimension {
    /// Stroke of the crankshaft.
    Stroke,
    /// Bore of the head gasket.
    GasketBore,
    /// Thickness of the head gasket, as it is when torqued.
    GasketThickness,
    /// What the bar leaves for the hone, on diameter.
    HoningAllowance,
    /// How far the boring bar may stand off the axis of the bore.
    BarOffset,
    /// The greatest bore that the wall or the gasket allows.
    GreatestBore,
}

/// A volume around a piston at the top.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Space {
    /// The chamber in the head.
    Chamber,
    /// The dish of the piston; a dome is less than nothing.
    PistonTop,
}

/// About what a choice can be fixed. The choice itself is a word, and after a
/// space the step it is made in: `keep`, `oversize 0.50 mm`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Pin {
    /// What is done to the bores.
    Bores,
    /// Which pistons.
    Pistons,
    /// What is done to the main journals.
    MainJournals,
    /// What is done to the rod journals.
    RodJournals,
    /// What is done to the main housings.
    MainHousings,
    /// What is done to the rods.
    RodHousings,
    /// Which main shells.
    MainShells,
    /// Which rod shells.
    RodShells,
    /// How far sizes of shells may be mixed: `set`, `places` or `halves`.
    Mixing,
    /// The main that takes the thrust, by its number.
    ThrustMain,
}

impl Pin {
    /// All of them.
    pub const ALL: [Self; 10] = [
        Self::Bores,
        Self::Pistons,
        Self::MainJournals,
        Self::RodJournals,
        Self::MainHousings,
        Self::RodHousings,
        Self::MainShells,
        Self::RodShells,
        Self::Mixing,
        Self::ThrustMain,
    ];

    /// The word in files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Bores => "bores",
            Self::Pistons => "pistons",
            Self::MainJournals => "main_journals",
            Self::RodJournals => "rod_journals",
            Self::MainHousings => "main_housings",
            Self::RodHousings => "rod_housings",
            Self::MainShells => "main_shells",
            Self::RodShells => "rod_shells",
            Self::Mixing => "mixing",
            Self::ThrustMain => "thrust_main",
        }
    }

    /// The one of this word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|pin| pin.key() == key)
    }
}

/// A volume in cubic millimetres: thousandths of a cubic centimetre.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Volume(i32);

/// The largest volume that is taken, either way: 2 litres.
pub const VOLUME_MAX: Volume = Volume(2_000_000);

impl Volume {
    /// A volume of so many cubic millimetres, if it is one a chamber can have.
    #[must_use]
    pub fn cubic_millimetres(volume: i32) -> Option<Self> {
        (volume.unsigned_abs() <= VOLUME_MAX.0.unsigned_abs()).then_some(Self(volume))
    }

    /// In cubic millimetres.
    #[must_use]
    pub const fn get(self) -> i32 {
        self.0
    }

    /// Reads cubic centimetres with at most three decimals, after a point or
    /// a comma; `None` where it is no such volume.
    ///
    /// ```
    /// use fenderbench::session::Volume;
    /// assert_eq!(Volume::parse("-5.25").map(Volume::get), Some(-5_250));
    /// assert_eq!(Volume::parse("5.2500"), None);
    /// ```
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let (minus, amount) = match text.strip_prefix(['-', '\u{2212}']) {
            Some(amount) => (true, amount),
            None => (false, text),
        };
        let (whole, decimals) = amount.split_once(['.', ',']).unwrap_or((amount, ""));
        let digits = |part: &str| part.bytes().all(|b| b.is_ascii_digit());
        if whole.is_empty() || 3 < decimals.len() || !digits(whole) || !digits(decimals) {
            return None;
        }
        let amount: i32 = format!("{whole}{decimals:0<3}").parse().ok()?;
        Self::cubic_millimetres(if minus { -amount } else { amount })
    }
}

impl core::fmt::Display for Volume {
    /// Cubic centimetres, as files have them.
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let amount = self.0.unsigned_abs();
        let sign = if self.0 < 0 { "-" } else { "" };
        let text = format!("{}.{:03}", amount / 1_000, amount % 1_000);
        let text = text.trim_end_matches('0').trim_end_matches('.');
        write!(f, "{sign}{text}")
    }
}

/// The steps from standard in which parts for a kind can mostly be had, in a
/// unit (common practice): of pistons oversizes, else undersizes of shells.
#[must_use]
pub const fn usual_steps(kind: Kind, unit: Unit) -> &'static [&'static str] {
    match (kind, unit) {
        (Kind::Piston, Unit::Inch) => &["0.010", "0.020", "0.030", "0.040", "0.060"],
        (Kind::Piston, Unit::Millimetre) => &["0.25", "0.50", "0.75", "1.00"],
        (_, Unit::Inch) => &["0.010", "0.020", "0.030"],
        (_, Unit::Millimetre) => &["0.25", "0.50", "0.75"],
    }
}

impl Dimension {
    /// All of them.
    pub const ALL: [Self; 6] = [
        Self::Stroke,
        Self::GasketBore,
        Self::GasketThickness,
        Self::HoningAllowance,
        Self::BarOffset,
        Self::GreatestBore,
    ];

    /// The word in files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Stroke => "stroke",
            Self::GasketBore => "gasket_bore",
            Self::GasketThickness => "gasket_thickness",
            Self::HoningAllowance => "honing_allowance",
            Self::BarOffset => "bar_offset",
            Self::GreatestBore => "greatest_bore",
        }
    }

    /// True if it may be zero: nothing left for the hone, a bar that stands
    /// true.
    #[must_use]
    pub const fn may_be_nothing(self) -> bool {
        matches!(self, Self::HoningAllowance | Self::BarOffset)
    }

    /// The length of this word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|name| name.key() == key)
    }
}

impl Space {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Chamber, Self::PistonTop];

    /// The word in files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Chamber => "chamber",
            Self::PistonTop => "piston_top",
        }
    }

    /// The volume of this word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|name| name.key() == key)
    }
}
