//! What to do with the cylinders: use them again, hone, new pistons in them
//! as they are, the smallest oversize, sleeves.

use super::clean_up::{Need, sizes};
use super::{Proof, Prover, Reason, Sizes, WornBore};
use crate::quantity::Exact;
use crate::uncertainty::Measured;
use crate::verdict::{Band, Decision};

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

    fn against(&self, stock: &Stock) -> Proof {
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

    fn need(&self, part: usize, worn: &WornBore, several: usize, prover: &Prover) -> Need {
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
    sizes(1, needs, &offers.collect::<Vec<_>>())
}

/// The cylinders that no stocked oversize surely cleans up: those a sleeve
/// would save.
#[must_use]
pub fn stuck(cylinders: &[Cylinder], boring: &Boring, prover: &Prover) -> Vec<usize> {
    let all = cylinders.iter().enumerate();
    let needs = all.map(|(part, cylinder)| boring.need(part, &cylinder.worn, 1, prover));
    let is_stuck = |need: &Need| {
        !boring.stock.iter().any(|stock| {
            let proof = need.proof(boring.bored(stock));
            proof.and(boring.against(stock)).decision == Decision::In
        })
    };
    needs.filter(is_stuck).map(|need| need.part).collect()
}

/// Whether the cylinders may be used again with their own pistons, deglazed:
/// form proved, no score that a nail catches, clearance proved in its band.
#[must_use]
pub fn use_again(cylinders: &[Cylinder], sleeved: &[usize], band: &Band, prover: &Prover) -> Proof {
    hone(cylinders, sleeved, band, Exact::ZERO, prover)
}

/// Whether a light hone will do: form proved, no score that takes more than
/// `most` off the diameter, and the clearance proved in its band after what
/// honing the score out adds to it.
#[must_use]
pub fn hone(
    cylinders: &[Cylinder],
    sleeved: &[usize],
    band: &Band,
    most: Exact,
    prover: &Prover,
) -> Proof {
    let clearance = |cylinder: &Cylinder| cylinder.clearance.clone();
    good(cylinders, sleeved, &clearance, band, most, prover)
}

/// Whether new pistons of this diameter, standard or a little larger, will do
/// in the bores as they are, honed by up to `most` where they have scores.
#[must_use]
pub fn new_pistons(
    cylinders: &[Cylinder],
    sleeved: &[usize],
    piston: Exact,
    band: &Band,
    most: Exact,
    prover: &Prover,
) -> Proof {
    let piston = Measured::new(piston, &[]);
    let clearance = |cylinder: &Cylinder| Some(cylinder.bore.as_ref()? - &piston);
    good(cylinders, sleeved, &clearance, band, most, prover)
}

fn good(
    cylinders: &[Cylinder],
    sleeved: &[usize],
    clearance: &dyn Fn(&Cylinder) -> Option<Measured>,
    band: &Band,
    most: Exact,
    prover: &Prover,
) -> Proof {
    let several = standing(cylinders, sleeved).count();
    let mut proof = Proof::PROVED;
    for (part, cylinder) in standing(cylinders, sleeved) {
        let stock = cylinder.worn.score.as_ref().map(|score| score.scaled(2, 1));
        let stock = stock.filter(|stock| !stock.value().is_negative());
        let light = stock.as_ref().map_or(Some(Decision::In), |stock| {
            Some(prover.at_most(stock, most, several))
        });
        let after = clearance(cylinder).map(|clearance| match &stock {
            Some(stock) => &clearance + stock,
            None => clearance,
        });
        let clear = after.and_then(|after| prover.decide(&after, band, several));
        proof = proof
            .and(Proof::of(cylinder.form, Reason::Form, part))
            .and(Proof::of(light, Reason::Score, part))
            .and(Proof::of(clear, Reason::Clearance, part));
    }
    proof
}
