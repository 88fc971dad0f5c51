//! What does the swing of an indicator say of the axis of a shaft?

use crate::quantity::{Exact, Weights, round_half_even};

/// How far two axes are apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Apart {
    /// The distance; a root is found to a thousandth of a quantum.
    pub distance: Exact,
    /// Whether that is the whole truth, not rounded.
    pub exact: bool,
}

/// √3 as a quotient, 3.3 × 10⁻¹⁶ beside it (a convergent of its continued
/// fraction).
const ROOT_3: (i128, i128) = (50_843_527, 29_354_524);

/// How finely a root is found, in parts of a quantum, so that a rounded one
/// does not look whole in the decimals that are shown.
const FINER: i128 = 1_000;

/// Swings in those parts stay below this, so that their squares times the
/// quotient fit 128 bits.
const SWING_BITS: u32 = 48;

/// How far the axis of a journal is off the one it is turned on: half the
/// full swing (TIR), as an indicator sees it come and go. `None` only for
/// weights that do not fit.
#[must_use]
pub fn bend(swing: &Weights) -> Option<Weights> {
    Weights::of_sums(&[(1, swing)], 2 * i128::from(swing.denominator()))
}

/// How far the axes of two journals are apart whose full swings are these
/// and whose high spots stand so many hours of a clock from each other: half
/// the length of the difference of two vectors, √(a² + b² − 2 a b cos t) / 2.
///
/// The cosines of whole hours are exact but for √3 / 2, for which a quotient
/// stands. `None` for swings that no readings in bounds give.
///
/// ```
/// use fenderbench::form::axes_apart;
/// use fenderbench::quantity::Exact;
/// let swing = Exact::whole(508_000); // 0.0020 in
/// let apart = |hours| axes_apart(swing, swing, hours).unwrap().distance;
/// assert_eq!([0, 2, 6].map(apart), [0, 254_000, 508_000].map(Exact::whole));
/// ```
#[must_use]
pub fn axes_apart(first: Exact, second: Exact, hours: u8) -> Option<Apart> {
    let fine = |swing: Exact| {
        let scaled = swing.numerator().checked_mul(FINER)?;
        let parts = round_half_even(scaled, swing.denominator());
        let is_whole = scaled % swing.denominator() == 0;
        (parts.unsigned_abs() < 1 << SWING_BITS).then_some((parts, is_whole))
    };
    let ((a, a_whole), (b, b_whole)) = (fine(first)?, fine(second)?);
    let product = a * b;
    let by_root = round_half_even(product * ROOT_3.0, ROOT_3.1);
    let hours = hours % 12;
    let (twice_cosine, is_whole) = match hours.min(12 - hours) {
        0 => (2 * product, true),
        1 => (by_root, product == 0),
        2 => (product, true),
        3 => (0, true),
        4 => (-product, true),
        5 => (-by_root, product == 0),
        _ => (-2 * product, true),
    };
    let square = a * a + b * b - twice_cosine;
    let root = square.max(0).isqrt();
    if is_whole && root * root == square {
        return Some(Apart {
            distance: Exact::new(root, 2 * FINER),
            exact: a_whole && b_whole,
        });
    }
    // Between two whole roots: any number between them rounds alike.
    Some(Apart {
        distance: Exact::new(2 * root + 1, 4 * FINER),
        exact: false,
    })
}
