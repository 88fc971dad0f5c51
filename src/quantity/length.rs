//! A size and a difference of sizes are different things.

use core::ops::{Add, Neg, Sub};

/// A size: a diameter, a width, a depth. Unit: quanta of 0.1 nm.
///
/// Two sizes cannot be added; their difference is a [`Deviation`].
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Size(i64);

/// A signed difference of two sizes. Unit: quanta of 0.1 nm.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Deviation(i64);

impl Size {
    /// A size of so many quanta.
    #[must_use]
    pub const fn from_quanta(quanta: i64) -> Self {
        Self(quanta)
    }

    /// The quanta in this size.
    #[must_use]
    pub const fn quanta(self) -> i64 {
        self.0
    }
}

impl Deviation {
    /// A difference of so many quanta.
    #[must_use]
    pub const fn from_quanta(quanta: i64) -> Self {
        Self(quanta)
    }

    /// The quanta in this difference.
    #[must_use]
    pub const fn quanta(self) -> i64 {
        self.0
    }

    /// The difference without its sign.
    #[must_use]
    pub const fn abs(self) -> Self {
        Self(self.0.saturating_abs())
    }
}

impl Sub for Size {
    type Output = Deviation;
    fn sub(self, other: Self) -> Deviation {
        Deviation(self.0.saturating_sub(other.0))
    }
}

impl Add<Deviation> for Size {
    type Output = Self;
    fn add(self, by: Deviation) -> Self {
        Self(self.0.saturating_add(by.0))
    }
}

impl Neg for Deviation {
    type Output = Self;
    fn neg(self) -> Self {
        Self(self.0.saturating_neg())
    }
}
