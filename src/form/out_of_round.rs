//! How much do two square diameters differ?

use super::place::at;
use super::{Place, Spot};
use crate::quantity::Weights;

/// An out-of-round: a difference of two diameters square to each other.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OutOfRound {
    /// Rank along the axis.
    pub along: u8,
    /// The direction of the first diameter, 0° or 45°; the second is 90° on.
    pub angle: u16,
    /// First diameter minus second: the sign says which is longer.
    pub weights: Weights,
}

/// Out-of-round wherever two diameters square to each other were taken at
/// one level: the oval's size times cos 2φ, where φ is the angle between its
/// longest diameter and the first of the two, so nothing at φ = 45°.
#[must_use]
pub fn out_of_round(spots: &[Spot]) -> Vec<OutOfRound> {
    let mut found = Vec::new();
    for first in spots.iter().filter(|spot| spot.place.angle < 90) {
        let square = Place {
            angle: first.place.angle + 90,
            ..first.place
        };
        if let Some(second) = at(spots, square) {
            found.push(OutOfRound {
                along: first.place.along,
                angle: first.place.angle,
                weights: &first.weights - &second.weights,
            });
        }
    }
    found
}
