//! What does a ring's gap say about the bore around it?

use crate::quantity::{Exact, Weights};

/// π as a quotient, 5.8 × 10⁻¹⁶ below it (a convergent of its continued
/// fraction): good to 15 digits.
pub(super) const PI: (i128, i128) = (80_143_857, 25_510_582);

/// By how much the end gap of a ring changes where the bore around it is
/// larger by `bore_change`: π times as much, a circumference for a diameter.
///
/// So one ring pushed square into a bore at two levels shows its taper with
/// nothing but feelers, as a check on the gauge.
///
/// ```
/// use fenderbench::form::ring_gap_change;
/// use fenderbench::quantity::{Exact, Unit, show};
/// // 0.0010 in of bore.
/// let gap = ring_gap_change(Exact::new(254_000, 1));
/// assert_eq!(show(gap, Unit::Inch, 5).text, "0.00314");
/// ```
#[must_use]
pub fn ring_gap_change(bore_change: Exact) -> Exact {
    Exact::new(
        bore_change.numerator() * PI.0,
        bore_change.denominator() * PI.1,
    )
}

/// The taper of a bore by the end gaps of one ring at its top and its
/// bottom: their difference over π. `None` only for weights that do not fit.
///
/// ```
/// use fenderbench::form::taper_by_gaps;
/// use fenderbench::quantity::{Size, Unit, Weights, show};
/// // A gap that is 0.006 in wider at the top.
/// let gaps = [5_080_000, 3_556_000].map(Size::from_quanta);
/// let taper = taper_by_gaps(&Weights::mean_of([0]), &Weights::mean_of([1])).unwrap();
/// let taper = taper.value(&gaps).unwrap();
/// assert_eq!(show(taper, Unit::Inch, 4).text, "0.0019");
/// ```
#[must_use]
pub fn taper_by_gaps(top: &Weights, bottom: &Weights) -> Option<Weights> {
    let change = top - bottom;
    Weights::of_sums(&[(PI.1, &change)], PI.0 * i128::from(change.denominator()))
}
