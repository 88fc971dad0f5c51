//! The two units of the trade.

/// A unit in which gauges read and manuals print.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Unit {
    /// Inch, exactly 25.4 mm (24 FR 5348, 1959; NIST SP 811 B.8).
    Inch,
    /// Millimetre.
    Millimetre,
}

impl Unit {
    /// Both units.
    pub const ALL: [Self; 2] = [Self::Millimetre, Self::Inch];

    /// Quanta (tenths of a nanometre) in one of this unit.
    ///
    /// ```
    /// use fenderbench::quantity::Unit;
    /// assert_eq!(Unit::Inch.quanta() * 10, Unit::Millimetre.quanta() * 254);
    /// ```
    #[must_use]
    pub const fn quanta(self) -> i64 {
        match self {
            Self::Inch => 254_000_000,
            Self::Millimetre => 10_000_000,
        }
    }

    /// The sign of the unit as printed: `in` or `mm`.
    #[must_use]
    pub const fn sign(self) -> &'static str {
        match self {
            Self::Inch => "in",
            Self::Millimetre => "mm",
        }
    }

    /// The unit whose sign this is.
    #[must_use]
    pub fn from_sign(sign: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|unit| unit.sign() == sign)
    }

    /// The decimals in which a computed length is shown when nothing finer is
    /// needed: a tenth of a thou, a micrometre.
    #[must_use]
    pub const fn decimals(self) -> u8 {
        match self {
            Self::Inch => 4,
            Self::Millimetre => 3,
        }
    }
}
