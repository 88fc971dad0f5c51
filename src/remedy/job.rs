//! What a plan for the whole set is made from.

use litemap::LiteMap;

use super::{Boring, Cylinder, Grinding, Journal, Mixing, Prices, Shell, Stock, Work};
use crate::quantity::Exact;
use crate::uncertainty::Measured;
use crate::verdict::{Band, Decision};

/// Which bearings.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Row {
    /// The mains, whose housings are bored in the block.
    Mains,
    /// The big ends, whose housings are the rods.
    Rods,
}

/// A part, by its index in the [`Job`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Part {
    /// The block as a whole; of its size and shape how its main housings lie
    /// in line.
    Block,
    /// The crankshaft as a whole; of its size and shape how straight it is.
    Crank,
    /// A cylinder.
    Cylinder(usize),
    /// The piston that ran in a cylinder.
    Piston(usize),
    /// A journal.
    Journal(Row, usize),
    /// The housing at a place of a row: of rods the rod itself.
    Housing(Row, usize),
    /// The shells that ran at a place of a row.
    Shells(Row, usize),
}

/// What was seen on a part that no measure makes good.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Harm {
    /// It was looked over, and nothing found.
    None,
    /// A sign of a crack: to be crack-tested first.
    MayBeCracked,
    /// It was welded before: somebody has to tell whether it holds.
    Welded,
    /// A crack.
    Cracked,
    /// Colours of heat: the hardness is lost.
    HeatBlue,
    /// Broken, or a bolt drawn to a neck.
    Broken,
    /// Bent: of a crankshaft its run-out tells instead.
    Bent,
    /// A shell turned in this housing.
    Spun,
}

/// How a surface that runs looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Finish {
    /// Of a bore: the hatch can be seen. Of others: smooth.
    Good,
    /// Glazed, a light ridge, light lines: no nail catches.
    Dull,
    /// A nail catches.
    Scored,
}

/// What was seen on a part; what nobody looked at is `None`.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Looks {
    /// Harm.
    pub harm: Option<Harm>,
    /// Its surface.
    pub surface: Option<Finish>,
    /// Whether its readings contradict each other, so that they prove
    /// nothing.
    pub contradictory: bool,
}

/// A place on a row of bearings: a housing with its shells and the journal
/// that runs there. Everything is square to the joint.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Place {
    /// Which journal; two rods may share one.
    pub journal: usize,
    /// What is proved of the housing's own limits; `None` where it was not
    /// measured or no limit is given.
    pub form: Option<Decision>,
    /// The housing without shells less the journal, with the errors of two
    /// walls.
    pub gap: Option<Measured>,
    /// The same where the housing is finished by the shop to its size as
    /// made.
    pub gap_made: Option<Measured>,
    /// The clearance with the shells that ran here; without one they run again
    /// only where there are no new ones.
    pub clearance: Option<Measured>,
    /// Whether the thrust is taken here.
    pub thrust: bool,
}

/// A row of bearings, and what there is to put it right.
#[derive(Clone, Debug, PartialEq)]
pub struct Bearings {
    /// Its journals.
    pub journals: Vec<Journal>,
    /// Its places, along the line.
    pub places: Vec<Place>,
    /// The standard diameter of the journals.
    pub standard: Exact,
    /// The largest they were when made, or ground the last time.
    pub as_made: Exact,
    /// The undersizes there are shells for, in any order.
    pub undersizes: Vec<Exact>,
    /// The greatest undersize that the hard layer allows, where known.
    pub greatest: Option<Exact>,
    /// Whether the grinder may centre on the worn journal, see
    /// [`Grinding::recentred`].
    pub recentred: bool,
    /// The shells there are for journals as they are, in any order.
    pub shells: Vec<Shell>,
    /// How far their sizes may be mixed.
    pub mixing: Mixing,
    /// Within which shells that ran may run again.
    pub allowed: Band,
    /// The clearances wanted with new shells.
    pub wanted: Band,
    /// The best of those.
    pub target: Exact,
    /// By how much the clearances of neighbours may differ.
    pub neighbours: Option<Exact>,
    /// Whether the housings can be machined: not where the joint is broken
    /// instead of cut.
    pub can_be_machined: bool,
}

impl Default for Bearings {
    fn default() -> Self {
        Self {
            journals: Vec::new(),
            places: Vec::new(),
            standard: Exact::ZERO,
            as_made: Exact::ZERO,
            undersizes: Vec::new(),
            greatest: None,
            recentred: false,
            shells: Vec::new(),
            mixing: Mixing::Set,
            allowed: Band::default(),
            wanted: Band::default(),
            target: Exact::ZERO,
            neighbours: None,
            can_be_machined: true,
        }
    }
}

/// Everything known of a set, what there is for it, and what the person has
/// fixed.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    /// The cylinders.
    pub cylinders: Vec<Cylinder>,
    /// What is proved of the own limits of the piston of each cylinder;
    /// `None` where it was not measured or no limit is given.
    pub pistons: Vec<Option<Decision>>,
    /// What was seen, by part.
    pub looks: LiteMap<Part, Looks>,
    /// Whether the main housings lie in line; `None` where that was not
    /// tried, which holds up nothing.
    pub alignment: Option<Decision>,
    /// Whether the crankshaft is straight; `None` where that was not tried,
    /// which holds up nothing.
    pub straightness: Option<Decision>,
    /// The standard bore.
    pub standard: Exact,
    /// The pistons there are, by their step over the standard size: of none
    /// for standard ones, in any order.
    pub stock: Vec<Stock>,
    /// What the bar leaves for honing, on diameter.
    pub honing: Exact,
    /// How much a light hone may take off, on diameter.
    pub light_hone: Exact,
    /// The greatest oversize the wall allows, where known.
    pub greatest: Option<Exact>,
    /// Within which a piston that ran may run again in its bore.
    pub allowed: Band,
    /// The piston-to-wall clearances wanted with new pistons.
    pub wanted: Band,
    /// The best of those.
    pub target: Exact,
    /// The mains.
    pub mains: Bearings,
    /// The big ends.
    pub rods: Bearings,
    /// Whether what nobody measured yet is taken to be good: the plan then
    /// rests on it, and says so. A score that was seen is never taken to be
    /// shallow.
    pub measured_later: bool,
    /// What the person has fixed.
    pub pins: Vec<Work>,
    /// The person's prices.
    pub prices: Prices,
}

impl Job {
    /// A row.
    #[must_use]
    pub const fn row(&self, row: Row) -> &Bearings {
        match row {
            Row::Mains => &self.mains,
            Row::Rods => &self.rods,
        }
    }

    /// What was seen on a part.
    #[must_use]
    pub fn looks(&self, part: Part) -> Looks {
        self.looks.get(&part).copied().unwrap_or_default()
    }

    /// What there is to bore to.
    #[must_use]
    pub fn boring(&self) -> Boring<'_> {
        Boring {
            standard: self.standard,
            stock: &self.stock,
            honing: self.honing,
            clearance: self.target,
            greatest: self.greatest,
        }
    }
}

impl Bearings {
    /// What there is to grind to.
    #[must_use]
    pub fn grinding(&self) -> Grinding<'_> {
        Grinding {
            standard: self.standard,
            as_made: self.as_made,
            undersizes: &self.undersizes,
            recentred: self.recentred,
            greatest: self.greatest,
        }
    }
}
