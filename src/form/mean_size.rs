//! How large is it, all in all?

use super::Spot;
use crate::quantity::Weights;

/// The mean diameter, every place counting once. `None` without a place.
#[must_use]
pub fn mean_size(spots: &[Spot]) -> Option<Weights> {
    mean(spots.iter())
}

/// The mean of some spots, each counting once.
pub(super) fn mean<'a>(spots: impl Iterator<Item = &'a Spot>) -> Option<Weights> {
    let all: Vec<_> = spots.map(|spot| &spot.weights).collect();
    (!all.is_empty()).then(|| Weights::mean(&all))
}
