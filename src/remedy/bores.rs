//! What is known of the cylinders, and which oversizes clean them up.

use super::clean_up::{Need, sizes};
use super::{Proof, Prover, Reason, Sizes, Trouble, WornBore};
use crate::quantity::Exact;
use crate::uncertainty::Measured;
use crate::verdict::Decision;

/// A cylinder, measured.
#[derive(Clone, Debug, PartialEq)]
pub struct Cylinder {
    /// What wear did to it.
    pub worn: WornBore,
    /// What is proved of its size, out-of-round and taper against their
    /// limits for use; `None` where nothing was measured or no limit is given.
    pub form: Option<Decision>,
    /// The diameter that a piston meets; `None` where it was not read.
    pub bore: Option<Measured>,
    /// The clearance of its own piston.
    pub clearance: Option<Measured>,
}

/// An oversize and the piston there is for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stock {
    /// Over the standard size.
    pub over: Exact,
    /// The diameter of its piston, by its maker or as measured by the shop;
    /// `None` where only the oversize is known.
    pub piston: Option<Exact>,
}

/// What there is to bore to, and how.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Boring<'a> {
    /// The standard bore. It stands for the unworn diameter where nobody read
    /// that.
    pub standard: Exact,
    /// What is stocked, in any order.
    pub stock: &'a [Stock],
    /// What the bar leaves for honing, on diameter.
    pub honing: Exact,
    /// The clearance wanted.
    pub clearance: Exact,
    /// The greatest oversize the wall allows, where that is known.
    pub greatest: Option<Exact>,
}

impl Boring<'_> {
    /// The finished bore of an oversize: its piston and the clearance, or by
    /// its name alone where the piston is not known.
    #[must_use]
    pub fn finish(&self, stock: &Stock) -> Exact {
        match stock.piston {
            Some(piston) => piston + self.clearance,
            None => self.standard + stock.over,
        }
    }

    /// What the bar bores to: the finish less what is left for honing.
    #[must_use]
    pub fn bored(&self, stock: &Stock) -> Exact {
        self.finish(stock) - self.honing
    }

    /// What speaks against an oversize, whatever the bores.
    pub(super) fn against(&self, stock: &Stock) -> Proof {
        let too_much = self.greatest.is_some_and(|most| most < stock.over);
        let (decision, reason) = if too_much {
            (Decision::Out, Reason::TooMuch)
        } else if stock.over <= self.clearance {
            (Decision::Open, Reason::Mistyped)
        } else {
            return Proof::PROVED;
        };
        Proof {
            decision,
            reason,
            rests_on: None,
        }
    }

    pub(super) fn need(
        &self,
        part: usize,
        worn: &WornBore,
        several: usize,
        prover: &Prover,
    ) -> Need {
        let bracket = worn.bracket(self.standard);
        Need::new(part, 1, &bracket, worn.reference.is_some(), several, prover)
    }
}

/// Cylinders that are not sleeved, with their index.
fn standing<'a>(
    cylinders: &'a [Cylinder],
    sleeved: &'a [usize],
) -> impl Iterator<Item = (usize, &'a Cylinder)> {
    let all = cylinders.iter().enumerate();
    all.filter(|(part, _)| !sleeved.contains(part))
}

/// Which oversizes clean up every cylinder but those that get a sleeve, which
/// is bored to whatever is wanted. All get the same.
#[must_use]
pub fn oversizes(
    cylinders: &[Cylinder],
    sleeved: &[usize],
    boring: &Boring,
    prover: &Prover,
) -> Sizes {
    let several = standing(cylinders, sleeved).count();
    let needs = standing(cylinders, sleeved)
        .map(|(part, cylinder)| boring.need(part, &cylinder.worn, several, prover));
    let offers = boring.stock.iter();
    let offers = offers.map(|stock| (stock.over, boring.bored(stock), boring.against(stock)));
    let mut sizes = sizes(1, needs, &offers.collect::<Vec<_>>());
    if boring.stock.iter().any(|stock| stock.piston.is_none()) {
        sizes.trouble = sizes.trouble.or(Some(Trouble::NoPistons));
    }
    sizes
}
