//! A length as a person typed it.

use core::fmt;

use super::{DECIMALS_MAX, SIZE_MAX, Size, TEXT_MAX, Unit};

/// A length as typed, kept to the letter, with its unit and its exact size.
///
/// ```
/// use fenderbench::quantity::{Entered, Unit};
/// let inch = Entered::parse("2.0000", Unit::Inch)?;
/// let mm = Entered::parse("50,80", Unit::Millimetre)?;
/// assert_eq!(inch.size(), mm.size());
/// assert_eq!(mm.text(), "50.80");
/// # Ok::<(), fenderbench::quantity::ParseLengthError>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Entered {
    text: String,
    unit: Unit,
    size: Size,
}

/// Why a typed text is not a length. The display is a sentence for the person.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ParseLengthError {
    /// Nothing was typed.
    Empty,
    /// Something other than digits and one decimal point.
    NotANumber(String),
    /// More than one comma or point: a thousands mark, or a slip.
    ManyPoints,
    /// More decimals than [`DECIMALS_MAX`].
    TooFine,
    /// Larger than [`SIZE_MAX`] or longer than [`TEXT_MAX`].
    TooLarge,
}

impl fmt::Display for ParseLengthError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => write!(f, "Nothing was typed: type a number, as 49.98."),
            Self::NotANumber(what) => {
                write!(f, "“{what}” is not a number: digits and one point only.")
            }
            Self::ManyPoints => write!(
                f,
                "More than one point or comma: type the number without thousands marks."
            ),
            Self::TooFine => write!(
                f,
                "At most {DECIMALS_MAX} decimals can be kept: leave off the rest."
            ),
            Self::TooLarge => write!(f, "That is larger than 10 m: is the point in its place?"),
        }
    }
}

impl core::error::Error for ParseLengthError {}

impl Entered {
    /// Reads a length of zero or more. A comma counts as the point and is
    /// kept as one; thousands marks, signs and exponents are refused.
    ///
    /// # Errors
    /// [`ParseLengthError`] says what is wrong with the text.
    pub fn parse(text: &str, unit: Unit) -> Result<Self, ParseLengthError> {
        let text = text.trim().replace(',', ".");
        if text.is_empty() {
            return Err(ParseLengthError::Empty);
        }
        if !text.chars().all(|c| c.is_ascii_digit() || c == '.') {
            let start = text.chars().take(TEXT_MAX).collect();
            return Err(ParseLengthError::NotANumber(start));
        }
        let (whole, decimals) = text.split_once('.').unwrap_or((&text, ""));
        if decimals.contains('.') {
            return Err(ParseLengthError::ManyPoints);
        }
        let places = u32::try_from(decimals.len()).unwrap_or(u32::MAX);
        if places > DECIMALS_MAX.into() {
            return Err(ParseLengthError::TooFine);
        }
        if text.len() > TEXT_MAX {
            return Err(ParseLengthError::TooLarge);
        }
        if whole.is_empty() || text.ends_with('.') {
            return Err(ParseLengthError::NotANumber(text));
        }
        let count: i64 = format!("{whole}{decimals}")
            .parse()
            .map_err(|_| ParseLengthError::NotANumber(text.clone()))?;
        // Whole for both units up to six decimals: 254 000 000 and 10 000 000
        // are multiples of a million.
        let quanta = i128::from(count) * i128::from(unit.quanta()) / 10_i128.pow(places);
        let size = i64::try_from(quanta).map_or(Size::from_quanta(i64::MAX), Size::from_quanta);
        if SIZE_MAX < size {
            return Err(ParseLengthError::TooLarge);
        }
        Ok(Self { text, unit, size })
    }

    /// The text as typed, with a point.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The unit it was typed in.
    #[must_use]
    pub const fn unit(&self) -> Unit {
        self.unit
    }

    /// The exact size.
    #[must_use]
    pub const fn size(&self) -> Size {
        self.size
    }

    /// How many decimals were typed.
    #[must_use]
    pub fn decimals(&self) -> u8 {
        self.text
            .split_once('.')
            .map_or(0, |(_, d)| u8::try_from(d.len()).unwrap_or(u8::MAX))
    }
}

impl fmt::Display for Entered {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.text, self.unit.sign())
    }
}
