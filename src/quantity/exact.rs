//! A quotient of quanta: what a mean of readings is before anybody rounds it.

use core::cmp::Ordering;
use core::ops::{Add, Neg, Sub};

use super::{Deviation, Size};

/// An exact length, `numerator / denominator` quanta of 0.1 nm, in lowest
/// terms. Comparing two of them never rounds.
///
/// Numerators stay far inside `i128`: sizes end at 10 m (1e11 quanta) and
/// denominators at the products of repeats at one feature.
///
/// ```
/// use fenderbench::quantity::Exact;
/// let third = Exact::new(1, 3);
/// assert!(third < Exact::new(34, 100));
/// assert_eq!(third + third + third, Exact::new(1, 1));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Exact {
    numerator: i128,
    denominator: i128,
}

impl Exact {
    /// Nothing.
    pub const ZERO: Self = Self {
        numerator: 0,
        denominator: 1,
    };

    /// `numerator / denominator` quanta; a denominator of zero counts as one.
    #[must_use]
    #[inline(never)] // 128-bit arithmetic is long; once in the app is enough.
    pub fn new(numerator: i128, denominator: i128) -> Self {
        let denominator = if denominator == 0 { 1 } else { denominator };
        if denominator == 1 {
            // Most lengths are whole, and dividing is long, too.
            return Self {
                numerator,
                denominator,
            };
        }
        let divisor = gcd(numerator, denominator) * denominator.signum();
        Self {
            numerator: numerator / divisor,
            denominator: denominator / divisor,
        }
    }

    /// So many whole quanta.
    #[must_use]
    pub const fn whole(quanta: i64) -> Self {
        Self {
            numerator: quanta as i128,
            denominator: 1,
        }
    }

    /// The numerator, in quanta.
    #[must_use]
    pub const fn numerator(self) -> i128 {
        self.numerator
    }

    /// The denominator, at least one.
    #[must_use]
    pub const fn denominator(self) -> i128 {
        self.denominator
    }

    /// The length without its sign.
    #[must_use]
    pub const fn abs(self) -> Self {
        Self {
            numerator: self.numerator.abs(),
            denominator: self.denominator,
        }
    }

    /// True below zero.
    #[must_use]
    pub const fn is_negative(self) -> bool {
        self.numerator < 0
    }
}

impl From<Size> for Exact {
    fn from(size: Size) -> Self {
        Self::new(size.quanta().into(), 1)
    }
}

impl From<Deviation> for Exact {
    fn from(deviation: Deviation) -> Self {
        Self::new(deviation.quanta().into(), 1)
    }
}

impl Add for Exact {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(
            self.numerator * other.denominator + other.numerator * self.denominator,
            self.denominator * other.denominator,
        )
    }
}

impl Neg for Exact {
    type Output = Self;
    fn neg(self) -> Self {
        Self {
            numerator: -self.numerator,
            denominator: self.denominator,
        }
    }
}

impl Sub for Exact {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        self + -other
    }
}

impl PartialOrd for Exact {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Exact {
    #[inline(never)]
    fn cmp(&self, other: &Self) -> Ordering {
        (self.numerator * other.denominator).cmp(&(other.numerator * self.denominator))
    }
}

/// Greatest common divisor, at least one.
pub(super) fn gcd(a: i128, b: i128) -> i128 {
    let (mut a, mut b) = (a.abs(), b.abs());
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a.max(1)
}

/// `numerator / denominator` to the nearest whole number, ties to the even
/// one (NIST SP 811 B.7.1). The only rounding in the project. A denominator
/// below one counts as one.
///
/// ```
/// use fenderbench::quantity::round_half_even;
/// assert_eq!([5, 15, -5].map(|n| round_half_even(n, 10)), [0, 2, 0]);
/// ```
#[must_use]
pub fn round_half_even(numerator: i128, denominator: i128) -> i128 {
    let denominator = denominator.max(1);
    let floor = numerator.div_euclid(denominator);
    let twice_the_rest = 2 * numerator.rem_euclid(denominator);
    let up = match twice_the_rest.cmp(&denominator) {
        Ordering::Less => false,
        Ordering::Equal => floor % 2 != 0,
        Ordering::Greater => true,
    };
    floor + i128::from(up)
}
