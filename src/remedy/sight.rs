//! Answers about what is seen, and what they say together before any cause
//! is asked for.

use super::cause::Source;
use super::look::{Look, Meaning, Subject, Surface, Unsound};

/// Where something is looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Spot {
    /// What is looked at.
    pub subject: Subject,
    /// Which of them, from 1 at the end called first.
    pub position: u8,
}

/// An answer: a look at a spot.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Sight {
    /// Where.
    pub spot: Spot,
    /// What was looked for.
    pub look: Look,
    /// Whether it was seen; else it was looked for and not seen.
    pub seen: bool,
}

/// What was seen of a part that numbers do not tell.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Condition {
    /// The gravest reason not to use it as it is.
    pub unsound: Option<Unsound>,
    /// The worst condition of its surface; `None` if nobody looked.
    pub surface: Option<Surface>,
    /// Whether it was tested for cracks and none was found.
    pub no_crack: bool,
}

/// What was seen of a part.
#[must_use]
pub fn condition(sights: &[Sight], spot: Spot) -> Condition {
    let mut told = Condition::default();
    let mut crack = false;
    for sight in sights.iter().filter(|sight| sight.spot == spot) {
        match (sight.seen, sight.look.meaning()) {
            (true, Meaning::Unsound(why)) => told.unsound = told.unsound.max(Some(why)),
            (true, Meaning::Surface(how)) => told.surface = told.surface.max(Some(how)),
            _ => {}
        }
        if sight.look.is_crack() {
            crack |= sight.seen;
            told.no_crack |= !sight.seen;
        }
    }
    told.no_crack &= !crack;
    told
}

/// Looks of which at most one can be at one part.
const EXCLUSIVE: [&[Look]; 6] = [
    &[
        Look::GreyBand,
        Look::OneEdge,
        Look::OppositeEdges,
        Look::BothEdges,
        Look::CentreBand,
    ],
    &[Look::GreyBand, Look::Wiped],
    &[Look::BothSkirts, Look::OneSkirt],
    &[Look::Hatch, Look::Glazed],
    &[Look::Polished, Look::JournalNail],
    &[Look::Polished, Look::JournalScore],
];

/// Two answers about one part that cannot both be, each pair once; a look
/// seen and not seen is a pair of itself.
#[must_use]
pub fn clashes(sights: &[Sight]) -> Vec<(Spot, Look, Look)> {
    let mut told = Vec::new();
    for (n, one) in sights.iter().enumerate() {
        let later = sights.iter().skip(n + 1).filter(|s| s.spot == one.spot);
        for other in later {
            let both = |set: &&[Look]| set.contains(&one.look) && set.contains(&other.look);
            let clash = if one.look == other.look {
                one.seen != other.seen
            } else {
                one.seen && other.seen && EXCLUSIVE.iter().any(both)
            };
            let pair = (one.spot, one.look.min(other.look), one.look.max(other.look));
            if clash && !told.contains(&pair) {
                told.push(pair);
            }
        }
    }
    told
}

/// What has to be cleaned or replaced once metal went round with the oil.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Aftermath {
    /// The oil cooler: replaced, as it cannot be cleaned reliably.
    Cooler,
    /// Lines and hoses: replaced.
    Lines,
    /// The filter and its adaptor: replaced.
    Filter,
    /// The pump: replaced, or its body at least looked at for scores.
    Pump,
    /// The screen of the pickup: replaced.
    Pickup,
    /// The galleries: all plugs out, brushed.
    Galleries,
    /// The crank's drillings: plugs out, brushed, blown through.
    CrankDrillings,
    /// Jets, a turbo's feed, lifters, cam bearings, relief valve.
    SmallWays,
}

impl Aftermath {
    /// All, in this order.
    pub const ALL: [Self; 8] = [
        Self::Cooler,
        Self::Lines,
        Self::Filter,
        Self::Pump,
        Self::Pickup,
        Self::Galleries,
        Self::CrankDrillings,
        Self::SmallWays,
    ];

    /// Who says so.
    #[must_use]
    pub const fn source(self) -> &'static str {
        match self {
            Self::CrankDrillings => {
                "common practice; US Navy Engineman (NAVEDTRA 14076), chapter 3: washed and blown dry"
            }
            _ => Source::Practice.text(),
        }
    }
}

/// What was seen that put metal into the oil: with any of it, all of
/// [`Aftermath`] follows.
pub fn debris(sights: &[Sight]) -> impl Iterator<Item = &Sight> {
    let sheds = |sight: &&Sight| {
        use Look::{
            BrokenLands, Craters, DebrisAluminium, DebrisCopper, DebrisGlitter, DebrisMagnetic,
            DebrisSoft, GrooveStep, Melted, Spun, Wiped,
        };
        let debris = matches!(
            sight.look,
            DebrisMagnetic
                | DebrisSoft
                | DebrisCopper
                | DebrisAluminium
                | DebrisGlitter
                | Craters
                | Spun
                | Wiped
                | BrokenLands
                | GrooveStep
                | Melted
        );
        debris && sight.seen
    };
    sights.iter().filter(sheds)
}
