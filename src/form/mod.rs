//! The geometric questions: mean size, out-of-round, taper.
//!
//! Each answer is a set of [`Weights`] over readings. This room knows places
//! on a feature (how far along, at which angle) and nothing of limits,
//! uncertainty or engines.

use crate::quantity::Weights;

/// Where a diameter was taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Place {
    /// Rank along the axis, counted from a fixed end.
    pub along: u8,
    /// Direction in degrees from the feature's own reference, 0 ≤ angle < 180.
    pub angle: u16,
}

/// A place with the weights of what was read there (the mean of repeats).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Spot {
    /// Where.
    pub place: Place,
    /// The value there, as weights over readings.
    pub weights: Weights,
}

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

/// A taper: one end minus the other.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Taper {
    /// The direction compared; `None` where the means of square pairs are.
    pub angle: Option<u16>,
    /// First end minus last end.
    pub weights: Weights,
}

/// The mean diameter, every place counting once. `None` without a place.
#[must_use]
pub fn mean_size(spots: &[Spot]) -> Option<Weights> {
    let all: Vec<_> = spots.iter().map(|spot| &spot.weights).collect();
    (!all.is_empty()).then(|| Weights::mean(&all))
}

/// Out-of-round wherever two diameters square to each other were taken at
/// one level. A difference of diameters, not the radial roundness of a
/// standard, and blind to odd lobes, as any two-point measurement is.
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

/// Taper between the first and the last rank at which anything was taken.
///
/// Direction by direction where both ends have it. Where they share none but
/// each end has a square pair (staggered directions), the means of the pairs
/// are compared: a plain oval of any direction leaves the mean of two square
/// diameters unchanged.
#[must_use]
pub fn taper(spots: &[Spot], first: u8, last: u8) -> Vec<Taper> {
    let by_direction: Vec<_> = spots
        .iter()
        .filter(|spot| spot.place.along == first)
        .filter_map(|near| {
            let place = Place {
                along: last,
                ..near.place
            };
            at(spots, place).map(|far| Taper {
                angle: Some(near.place.angle),
                weights: &near.weights - &far.weights,
            })
        })
        .collect();
    if !by_direction.is_empty() {
        return by_direction;
    }
    match (square_pair(spots, first), square_pair(spots, last)) {
        (Some(near), Some(far)) => vec![Taper {
            angle: None,
            weights: &near - &far,
        }],
        _ => Vec::new(),
    }
}

fn at(spots: &[Spot], place: Place) -> Option<&Spot> {
    spots.iter().find(|spot| spot.place == place)
}

/// The mean of two diameters square to each other at one level.
fn square_pair(spots: &[Spot], along: u8) -> Option<Weights> {
    let level: Vec<_> = spots
        .iter()
        .filter(|spot| spot.place.along == along)
        .collect();
    level.iter().find_map(|a| {
        let square = level.iter().find(|b| b.place.angle == a.place.angle + 90)?;
        Some(Weights::mean(&[&a.weights, &square.weights]))
    })
}
