//! Which limits a manual can give, and their names.

use core::fmt;

use super::Kind;
use crate::verdict::Wear;

/// What is compared with a limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Quantity {
    /// Diameter.
    Size,
    /// Growth of a bore over its unworn reference.
    Wear,
    /// Difference of two diameters square to each other at one level.
    OutOfRound,
    /// Difference of diameters along the axis.
    Taper,
    /// The middle above the mean of the ends: a barrel, or below: an
    /// hour-glass. No manual limits it by a name of its own.
    Barrel,
    /// Bore minus piston, on diameter (piston-to-wall); of shells the oil
    /// clearance; of the bores for a pin, the play of the pin.
    Clearance,
    /// Half the swing of an indicator: how far an axis is off.
    Bend,
    /// How far the axes of neighbouring main journals are off each other.
    Alignment,
    /// How far the two diagonals of a face differ.
    Twist,
}

/// Which end of a band a limit is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Bound {
    /// Least as made.
    NewLow,
    /// Greatest as made.
    NewHigh,
    /// As far as wear may go.
    Service,
}

/// The name of a limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct LimitKey {
    /// Kind of feature.
    pub kind: Kind,
    /// What is compared.
    pub quantity: Quantity,
    /// Which end.
    pub bound: Bound,
}

const BAND: &[Bound] = &[Bound::NewLow, Bound::NewHigh, Bound::Service];
const GREATEST: &[Bound] = &[Bound::NewHigh, Bound::Service];
const SERVICE: &[Bound] = &[Bound::Service];

/// The quantities of a kind that a manual limits, each with the ends it has.
#[must_use]
pub const fn limit_keys(kind: Kind) -> &'static [(Quantity, &'static [Bound])] {
    match kind {
        Kind::Bore => &[
            (Quantity::Size, BAND),
            (Quantity::Wear, SERVICE),
            (Quantity::OutOfRound, GREATEST),
            (Quantity::Taper, GREATEST),
        ],
        Kind::Piston | Kind::PinBore | Kind::SmallEnd | Kind::MainShell | Kind::RodShell => {
            &[(Quantity::Size, BAND), (Quantity::Clearance, BAND)]
        }
        Kind::MainJournal | Kind::RodJournal | Kind::MainHousing | Kind::BigEnd => &[
            (Quantity::Size, BAND),
            (Quantity::OutOfRound, GREATEST),
            (Quantity::Taper, GREATEST),
        ],
        Kind::RunOut => &[(Quantity::Size, GREATEST), (Quantity::Alignment, GREATEST)],
        Kind::Pin
        | Kind::EndPlay
        | Kind::RodSide
        | Kind::TopRingGap
        | Kind::SecondRingGap
        | Kind::TopRingSide
        | Kind::SecondRingSide => &[(Quantity::Size, BAND)],
        Kind::Deck | Kind::Head => &[(Quantity::Size, GREATEST)],
        // Fitted shells and strips are other ways to the oil clearance, whose
        // limits stand at the shells; a score is looked at, not limited.
        Kind::MainFitted
        | Kind::RodFitted
        | Kind::MainStrip
        | Kind::RodStrip
        | Kind::BoreScore
        | Kind::MainScore
        | Kind::RodScore => &[],
    }
}

/// On which side a quantity of a kind wears.
#[must_use]
pub const fn wears(kind: Kind, quantity: Quantity) -> Wear {
    match (kind, quantity) {
        (
            Kind::Piston
            | Kind::MainJournal
            | Kind::RodJournal
            | Kind::Pin
            | Kind::MainShell
            | Kind::RodShell,
            Quantity::Size,
        ) => Wear::Smaller,
        _ => Wear::Larger,
    }
}

impl Quantity {
    const ALL: [Self; 9] = [
        Self::Size,
        Self::Wear,
        Self::OutOfRound,
        Self::Taper,
        Self::Barrel,
        Self::Clearance,
        Self::Bend,
        Self::Alignment,
        Self::Twist,
    ];

    /// The word in files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Size => "size",
            Self::Wear => "wear",
            Self::OutOfRound => "out_of_round",
            Self::Taper => "taper",
            Self::Barrel => "barrel",
            Self::Clearance => "clearance",
            Self::Bend => "bend",
            Self::Alignment => "alignment",
            Self::Twist => "twist",
        }
    }
}

impl Bound {
    /// The word in files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::NewLow => "new_low",
            Self::NewHigh => "new_high",
            Self::Service => "service",
        }
    }
}

impl LimitKey {
    /// Reads the text of a name, such as `bore/size/new_low`; `None` if no
    /// manual gives such a limit.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let mut words = text.split('/');
        let kind = Kind::from_key(words.next()?)?;
        let quantity = words.next()?;
        let quantity = Quantity::ALL.into_iter().find(|q| q.key() == quantity)?;
        let bound = words.next()?;
        let bound = *BAND.iter().find(|b| b.key() == bound)?;
        let known = limit_keys(kind)
            .iter()
            .any(|(q, bounds)| *q == quantity && bounds.contains(&bound));
        (known && words.next().is_none()).then_some(Self {
            kind,
            quantity,
            bound,
        })
    }
}

impl fmt::Display for LimitKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (kind, quantity) = (self.kind.key(), self.quantity.key());
        write!(f, "{kind}/{quantity}/{}", self.bound.key())
    }
}
