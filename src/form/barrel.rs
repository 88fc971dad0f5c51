//! Is the middle larger than the ends?

use super::mean_size::mean;
use super::place::at;
use super::{Place, Spot, level_mean};
use crate::quantity::Weights;

/// A barrel (positive) or an hour-glass (negative).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Barrel {
    /// True where the three level means are those of square pairs: no plain
    /// oval takes part, even one that changes along the axis. False where
    /// only the directions are the same at all three levels: an oval that is
    /// the same all along takes no part, one that changes does.
    pub square: bool,
    /// Centre minus the mean of the two ends.
    pub weights: Weights,
}

/// How far the centre is above the mean of the ends: centre − (first + last)
/// / 2, a straight taper taking no part. `None` unless all three levels were
/// read so that an oval does not pass for a barrel: with a square pair at
/// each, or with at least one direction that all three have. Two levels
/// alone cannot show it.
///
/// Square pairs go first, here unlike in [`super::taper()`], where a person
/// follows each direction along the part: a barrel is one number, and that
/// way it stays the same whatever the ovals.
#[must_use]
pub fn barrel(spots: &[Spot], first: u8, centre: u8, last: u8) -> Option<Barrel> {
    let levels = [first, centre, last];
    let shared = |spot: &&Spot| {
        let angle = spot.place.angle;
        let mut places = levels.iter().map(|&along| Place { along, angle });
        places.all(|place| at(spots, place).is_some())
    };
    let of_shared = |level: u8| {
        let here = spots.iter().filter(|spot| spot.place.along == level);
        mean(here.filter(shared))
    };
    let bulge = |square: bool, means: [Option<Weights>; 3]| {
        let [first, centre, last] = means;
        let ends = Weights::mean(&[&first?, &last?]);
        let weights = &centre? - &ends;
        Some(Barrel { square, weights })
    };
    bulge(true, levels.map(|level| level_mean(spots, level)))
        .or_else(|| bulge(false, levels.map(of_shared)))
}
