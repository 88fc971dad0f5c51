//! The geometric questions, one a file: mean size, out-of-round, taper,
//! barrel, oval, the ring gap as a check on a bore, run-out, and what the
//! pistons sweep.
//!
//! The answers that are linear in the readings are sets of [`Weights`] over
//! them. This room knows places on a feature (how far along, at which angle)
//! and nothing of limits, uncertainty or engines.
//!
//! All rests on two-point diameters. A difference of diameters is twice what
//! the radial roundness of a standard would be, and odd lobes are invisible:
//! see [`oval()`].
//!
//! [`Weights`]: crate::quantity::Weights

mod barrel;
mod bound;
mod displacement;
mod level_mean;
mod mean_size;
mod out_of_round;
mod oval;
mod oval_shape;
mod place;
mod ring_gap;
mod run_out;
mod taper;

pub use barrel::{Barrel, barrel};
pub use bound::{LEVELS_MAX, READINGS_MAX};
pub use displacement::{Volume, compression_ratio};
pub use level_mean::level_mean;
pub use mean_size::mean_size;
pub use out_of_round::{OutOfRound, out_of_round};
pub use oval::{Oval, oval};
pub use oval_shape::OvalShape;
pub use place::{Place, Spot};
pub use ring_gap::{ring_gap_change, taper_by_gaps};
pub use run_out::{Apart, axes_apart, bend};
pub use taper::{Taper, taper};
