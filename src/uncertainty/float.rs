//! The border between exact lengths and floats, and the limits on floats.

use crate::quantity::{Exact, SIZE_MAX};

/// The largest standard uncertainty there is, in quanta of 0.1 nm: the
/// largest size that can be entered. It stands for knowing nothing.
#[expect(clippy::cast_precision_loss, reason = "a power of ten, exact")]
pub const U_MAX: f64 = SIZE_MAX.quanta() as f64;

/// The largest sensitivity either way: so large that nothing can be proved
/// with it, so small that its square stays a number.
pub const SENSITIVITY_MAX: f64 = 1e30;

/// The least degrees of freedom: those of an uncertainty that may be wrong by
/// all of itself (JCGM 100 G.4.2, formula G.3).
pub const DOF_MIN: f64 = 0.5;

/// An exact length as a float, in quanta of 0.1 nm.
#[must_use]
pub fn quanta(exact: Exact) -> f64 {
    ratio(exact.numerator(), exact.denominator())
}

#[expect(clippy::cast_precision_loss, reason = "to sixteen digits")]
pub(super) fn ratio(numerator: i128, denominator: i128) -> f64 {
    numerator as f64 / denominator as f64
}

/// A float in quanta as the nearest whole number of them, for showing it;
/// what is beyond [`U_MAX`] either way counts as that.
#[must_use]
pub fn rounded(quanta: f64) -> Exact {
    whole(libm::rint(quanta))
}

/// A float in quanta as the least whole number of them that is not below it.
pub(super) fn rounded_up(quanta: f64) -> Exact {
    whole(libm::ceil(quanta))
}

#[expect(clippy::cast_possible_truncation, reason = "within U_MAX")]
fn whole(quanta: f64) -> Exact {
    Exact::new(within(quanta, -U_MAX, U_MAX) as i128, 1)
}

/// The nearest whole number from 0 to 255.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "within a byte"
)]
pub(super) fn whole_number(number: f64) -> u8 {
    within(libm::rint(number), 0.0, 255.0) as u8
}

/// A standard uncertainty from 0 to [`U_MAX`]; what is none is the largest.
pub(super) fn uncertainty(u: f64) -> f64 {
    if (0.0..=U_MAX).contains(&u) { u } else { U_MAX }
}

/// Degrees of freedom from [`DOF_MIN`] to infinity; what is none is the least.
pub(super) fn dof(dof: f64) -> f64 {
    if DOF_MIN <= dof { dof } else { DOF_MIN }
}

/// A sensitivity within [`SENSITIVITY_MAX`]; what is no number is the largest.
pub(super) fn sensitivity(c: f64) -> f64 {
    within(c, -SENSITIVITY_MAX, SENSITIVITY_MAX)
}

/// `x` or the end it lies beyond; what is no number is the high one.
pub(super) fn within(x: f64, low: f64, high: f64) -> f64 {
    if x < low {
        low
    } else if x <= high {
        x
    } else {
        high
    }
}
