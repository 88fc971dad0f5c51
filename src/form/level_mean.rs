//! How large is it at one level, whatever the direction of an oval?

use super::mean_size::mean;
use super::place::at;
use super::{Place, Spot};
use crate::quantity::Weights;

/// The mean at one level of all diameters that have another one square to
/// them there, every place counting once. `None` without such a pair.
///
/// A plain oval of any size and direction leaves the mean of two square
/// diameters unchanged, as cos 2t + cos 2(t + 90°) = 0. So level means
/// compare with each other even where the directions are staggered; a
/// diameter without its partner is left out, or it would bring the oval in.
#[must_use]
pub fn level_mean(spots: &[Spot], along: u8) -> Option<Weights> {
    mean(spots.iter().filter(|spot| {
        let Place { along: rank, angle } = spot.place;
        let angle = if angle < 90 { angle + 90 } else { angle - 90 };
        rank == along && at(spots, Place { along, angle }).is_some()
    }))
}
