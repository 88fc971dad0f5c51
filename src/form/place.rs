//! Places on a feature, and what was read there.

use crate::quantity::Weights;

/// Where a diameter was taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Place {
    /// Rank along the axis, counted from a fixed end.
    pub along: u8,
    /// Direction in degrees from the feature's own reference, 0 ≤ angle < 180.
    pub angle: u16,
}

/// A place with the weights of what was read there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Spot {
    /// Where.
    pub place: Place,
    /// The value there: the plain mean of the repeats, so that its
    /// denominator is how many readings it rests on.
    pub weights: Weights,
}

/// The spot at a place.
pub(super) fn at(spots: &[Spot], place: Place) -> Option<&Spot> {
    spots.iter().find(|spot| spot.place == place)
}
