//! Exact lengths: units, typed text, rounding, bounds, and weights over readings.
//!
//! Every length is a whole number of *quanta* of a tenth of a nanometre, so
//! that 1 µm (10 000), 0.0001 in (25 400) and 1 µin (254) are all whole and
//! an inch entry and a millimetre entry of one size are the same number.
//! There is no float in this room.

mod bound;
mod entered;
mod entered_deviation;
mod exact;
mod length;
mod show;
mod unit;
mod weights;

pub use bound::{DECIMALS_MAX, SIZE_MAX, TEXT_MAX};
pub use entered::{Entered, ParseLengthError};
pub use entered_deviation::EnteredDeviation;
pub use exact::{Exact, round_half_even};
pub use length::{Deviation, Size};
pub use show::{Shown, show, show_signed};
pub use unit::Unit;
pub use weights::Weights;
