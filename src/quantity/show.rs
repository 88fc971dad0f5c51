//! An exact length as text.

use super::{Exact, Unit, round_half_even};

/// How far beyond the usual decimals a length is shown so that a small
/// amount over a limit does not read as nothing.
const EXTRA_DECIMALS: u8 = 3;

/// A length as text, and whether the text is the whole truth.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shown {
    /// Decimal text with a point and a hyphen for minus, without the unit.
    pub text: String,
    /// False where the text is rounded.
    pub exact: bool,
}

/// Shows `value` in `unit` with at least `decimals` decimals.
///
/// Up to three more are used where they make the text exact, and as many as
/// it takes where fewer would round something to nothing. Rounding is half
/// to even.
///
/// ```
/// use fenderbench::quantity::{show, Exact, Unit};
/// let half_a_micrometre = Exact::new(5_000, 1);
/// assert_eq!(show(half_a_micrometre, Unit::Millimetre, 3).text, "0.0005");
/// assert_eq!(show(Exact::new(254, 1), Unit::Inch, 4).text, "0.000001");
/// ```
#[must_use]
pub fn show(value: Exact, unit: Unit, decimals: u8) -> Shown {
    let mut shown = show_at(value, unit, decimals);
    for more in 1..=EXTRA_DECIMALS {
        if shown.exact {
            return shown;
        }
        let finer = show_at(value, unit, decimals + more);
        let vanished = value != Exact::ZERO && is_nothing(&shown.text);
        if finer.exact || vanished {
            shown = finer;
        }
    }
    let mut decimals = decimals + EXTRA_DECIMALS;
    while value != Exact::ZERO && is_nothing(&shown.text) {
        decimals += 1;
        shown = show_at(value, unit, decimals);
    }
    shown
}

/// As [`show`], with a sign before anything that is not zero.
#[must_use]
pub fn show_signed(value: Exact, unit: Unit, decimals: u8) -> Shown {
    let mut shown = show(value, unit, decimals);
    if !value.is_negative() && !is_nothing(&shown.text) {
        shown.text.insert(0, '+');
    }
    shown
}

fn is_nothing(text: &str) -> bool {
    text.chars().all(|c| matches!(c, '0' | '.'))
}

fn show_at(value: Exact, unit: Unit, decimals: u8) -> Shown {
    let scale = 10_i128.pow(decimals.into());
    let numerator = value.abs().numerator() * scale;
    let denominator = value.denominator() * i128::from(unit.quanta());
    let count = round_half_even(numerator, denominator);
    let sign = if value.is_negative() && count != 0 {
        "-"
    } else {
        ""
    };
    // Far inside 64 bits, see `SIZE_MAX`.
    let digit = |n: i128| i64::try_from(n).unwrap_or(i64::MAX);
    let (whole, rest) = (digit(count / scale), digit(count % scale));
    let text = if decimals == 0 {
        format!("{sign}{whole}")
    } else {
        format!("{sign}{whole}.{rest:0width$}", width = decimals.into())
    };
    Shown {
        text,
        exact: numerator % denominator == 0,
    }
}
