//! Is one end larger than the other?

use super::place::at;
use super::{Place, Spot, level_mean};
use crate::quantity::Weights;

/// A taper: one end minus the other.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Taper {
    /// The direction compared; `None` where the level means are.
    pub angle: Option<u16>,
    /// First end minus last end.
    pub weights: Weights,
}

/// Taper between the first and the last rank at which anything was taken.
///
/// Direction by direction where both ends have it. Where they share none but
/// each end has a square pair (staggered directions), the [`level_mean`]s
/// are compared.
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
    match (level_mean(spots, first), level_mean(spots, last)) {
        (Some(near), Some(far)) => vec![Taper {
            angle: None,
            weights: &near - &far,
        }],
        _ => Vec::new(),
    }
}
