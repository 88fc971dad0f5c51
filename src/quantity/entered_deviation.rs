//! A difference as a person read it on a dial.

use core::fmt;

use super::{Deviation, Entered, ParseLengthError, Unit};

/// A signed difference as typed, kept to the letter but for a plus, with its
/// unit and its exact size.
///
/// ```
/// use fenderbench::quantity::{EnteredDeviation, Unit};
/// let below = EnteredDeviation::parse("−0.0012", Unit::Inch)?;
/// assert_eq!((below.text(), below.deviation().quanta()), ("-0.0012", -304_800));
/// assert_eq!(EnteredDeviation::parse("+0.0012", Unit::Inch)?.text(), "0.0012");
/// # Ok::<(), fenderbench::quantity::ParseLengthError>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct EnteredDeviation {
    text: String,
    unit: Unit,
    deviation: Deviation,
}

impl EnteredDeviation {
    /// Reads a length with or without a sign. Nothing has no sign.
    ///
    /// # Errors
    /// [`ParseLengthError`] says what is wrong with the text.
    pub fn parse(text: &str, unit: Unit) -> Result<Self, ParseLengthError> {
        let text = text.trim();
        let below = text.strip_prefix(['-', '−']);
        let rest = below.or_else(|| text.strip_prefix('+')).unwrap_or(text);
        let entered = Entered::parse(rest, unit)?;
        let size = Deviation::from_quanta(entered.size().quanta());
        let negative = below.is_some() && size.quanta() != 0;
        Ok(Self {
            text: if negative {
                format!("-{}", entered.text())
            } else {
                entered.text().to_owned()
            },
            unit,
            deviation: if negative { -size } else { size },
        })
    }

    /// The text: digits and a point, after a hyphen where it is below zero.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The unit it was typed in.
    #[must_use]
    pub const fn unit(&self) -> Unit {
        self.unit
    }

    /// The exact difference.
    #[must_use]
    pub const fn deviation(&self) -> Deviation {
        self.deviation
    }
}

/// With its sign, a true minus, and its unit.
impl fmt::Display for EnteredDeviation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (sign, digits) = match self.text.strip_prefix('-') {
            Some(digits) => ("−", digits),
            None if self.deviation.quanta() == 0 => ("", self.text.as_str()),
            None => ("+", self.text.as_str()),
        };
        write!(f, "{sign}{digits} {}", self.unit.sign())
    }
}
