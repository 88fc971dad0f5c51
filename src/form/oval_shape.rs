//! How large is an oval, and which way does it lie?

use crate::quantity::{Deviation, Exact, round_half_even};

/// An oval D = mean + A cos 2t + B sin 2t as a person sees it.
///
/// The sensitivities of the size 2 √(A² + B²) at the estimate are 4 A / size
/// to A and 4 B / size to B; at no oval it has none, being a corner there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OvalShape {
    /// Longest minus shortest diameter, to the nearest quantum. Twice the
    /// difference that a radial roundness would show.
    pub size: Deviation,
    /// Whether that is the whole truth, not rounded.
    pub exact: bool,
    /// Direction of the longest diameter in ten-thousandths of a degree,
    /// 0 ≤ axis < 1 800 000, on the feature's own scale of directions. `None`
    /// where there is no oval.
    pub axis_ten_thousandths: Option<u32>,
}

/// A and B over their denominator stay below this, so that sixteen times the
/// sum of their squares fits 128 bits.
const PART_BITS: u32 = 61;

/// A quantum in parts where A and B have too large a common denominator:
/// with sizes up to [`crate::quantity::SIZE_MAX`] they then fit.
const FINE: i128 = 1 << 20;

/// How finely the axis is found: far beyond its last digit.
const AXIS_BITS: u32 = 56;

/// Half a turn in ten-thousandths of a degree.
const HALF_TURN: i128 = 1_800_000;

impl OvalShape {
    /// The shape of an oval of the parts A and B. `None` for numbers that
    /// no readings of sizes in bounds can give.
    ///
    /// ```
    /// use fenderbench::form::OvalShape;
    /// use fenderbench::quantity::{Deviation, Exact};
    /// let shape = OvalShape::of(Exact::new(3, 1), Exact::new(-4, 1)).unwrap();
    /// assert_eq!((shape.size, shape.exact), (Deviation::from_quanta(10), true));
    /// // cos 2t = 3/5 and sin 2t = -4/5.
    /// assert_eq!(shape.axis_ten_thousandths, Some(1_534_349));
    /// ```
    #[must_use]
    pub fn of(cosine: Exact, sine: Exact) -> Option<Self> {
        let fine = |part: Exact| {
            let scaled = part.numerator().checked_mul(FINE)?;
            let exact = scaled % part.denominator() == 0;
            Some((round_half_even(scaled, part.denominator()), exact))
        };
        let (a, b, denominator, whole) = match common(cosine, sine) {
            Some((a, b, denominator)) => (a, b, denominator, true),
            None => {
                let ((a, a_whole), (b, b_whole)) = (fine(cosine)?, fine(sine)?);
                (fits(a)?, fits(b)?, FINE, a_whole && b_whole)
            }
        };
        // Four times the amplitude, in whole numbers: the size is half of it.
        let square = 16 * (a * a + b * b);
        let root = square.isqrt();
        let (size, exact) = if root * root == square {
            let exact = root % (2 * denominator) == 0;
            (round_half_even(root, 2 * denominator), exact)
        } else {
            // Between two whole roots: any number between them rounds alike.
            (round_half_even(2 * root + 1, 4 * denominator), false)
        };
        Some(Self {
            size: Deviation::from_quanta(i64::try_from(size).ok()?),
            exact: exact && whole,
            axis_ten_thousandths: axis(a, b),
        })
    }
}

/// Both numerators over one denominator, where that is small enough.
fn common(cosine: Exact, sine: Exact) -> Option<(i128, i128, i128)> {
    let a = cosine.numerator().checked_mul(sine.denominator())?;
    let b = sine.numerator().checked_mul(cosine.denominator())?;
    let denominator = fits(cosine.denominator().checked_mul(sine.denominator())?)?;
    Some((fits(a)?, fits(b)?, denominator))
}

fn fits(part: i128) -> Option<i128> {
    (part.unsigned_abs() < 1 << PART_BITS).then_some(part)
}

/// Half the direction of the vector (a, b), by doubling: squaring a complex
/// number doubles its angle, so the half of the plane it then lies in is one
/// more binary digit of the angle as a part of a turn.
fn axis(mut a: i128, mut b: i128) -> Option<u32> {
    if a == 0 && b == 0 {
        return None;
    }
    let mut part = 0_i128;
    for _ in 0..AXIS_BITS {
        let lower_half = b < 0 || b == 0 && a < 0;
        part = 2 * part + i128::from(lower_half);
        (a, b) = (a * a - b * b, 2 * a * b);
        // Only the direction counts, and an error in it now is worth as
        // little as the digit it would change.
        let bits = i128::BITS - (a.abs() | b.abs()).leading_zeros();
        let excess = bits.saturating_sub(PART_BITS);
        (a, b) = (a >> excess, b >> excess);
    }
    let axis = round_half_even(part * HALF_TURN, 1 << AXIS_BITS);
    u32::try_from(axis % HALF_TURN).ok()
}
