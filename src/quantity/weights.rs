//! A geometric quantity as weights over readings.

use litemap::LiteMap;

use super::exact::gcd;
use super::{Exact, Size};

/// Whole-number weights over readings, over one denominator: the value is
/// the weighted sum of the readings divided by it.
///
/// The same weights give the value exactly and, later, its uncertainty
/// budget. Readings are named by their place in a list the caller keeps.
///
/// ```
/// use fenderbench::quantity::{Exact, Size, Weights};
/// let readings = [Size::from_quanta(10), Size::from_quanta(13)];
/// let mean = Weights::mean_of([0, 1]);
/// assert_eq!(mean.value(&readings), Some(Exact::new(23, 2)));
/// let spread = &Weights::mean_of([1]) - &Weights::mean_of([0]);
/// assert_eq!(spread.value(&readings), Some(Exact::new(3, 1)));
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Weights {
    terms: Vec<(usize, i64)>,
    denominator: i64,
}

impl Weights {
    /// The plain mean of the readings named. The denominator is their count.
    #[must_use]
    pub fn mean_of(readings: impl IntoIterator<Item = usize>) -> Self {
        let mut terms = LiteMap::<usize, i64>::new();
        let mut count = 0;
        for index in readings {
            *terms.entry(index).or_default() += 1;
            count += 1;
        }
        Self {
            terms: terms.into_iter().collect(),
            denominator: count.max(1),
        }
    }

    /// The mean of several weighted sums, each counting once.
    #[must_use]
    pub fn mean(of: &[&Self]) -> Self {
        let count = i128::try_from(of.len()).unwrap_or(i128::MAX);
        Self::over_common(&of.iter().map(|w| (1, *w)).collect::<Vec<_>>(), count)
    }

    /// Sums of readings, each with a whole factor, over one denominator
    /// above zero. A part counts by its weights without its own denominator:
    /// a mean by the sum of its readings.
    ///
    /// In lowest terms as far as the factors are; `None` if a weight or the
    /// denominator does not fit 64 bits.
    ///
    /// ```
    /// use fenderbench::quantity::Weights;
    /// let (pair, one) = (Weights::mean_of([0, 1]), Weights::mean_of([2]));
    /// let sums = Weights::of_sums(&[(2, &pair), (-4, &one)], 6).unwrap();
    /// assert_eq!(sums.terms(), [(0, 1), (1, 1), (2, -2)]);
    /// assert_eq!(sums.denominator(), 3);
    /// ```
    #[must_use]
    pub fn of_sums(parts: &[(i128, &Self)], denominator: i128) -> Option<Self> {
        let divisor = parts
            .iter()
            .fold(denominator.max(1), |d, (f, _)| gcd(d, *f));
        let left = parts.iter().map(|(f, w)| (f / divisor, w.terms.as_slice()));
        let mut left: Vec<_> = left.collect();
        let mut terms = Vec::new();
        // All terms are in order of the readings, so this is one walk through.
        let first = |(_, terms): &(i128, &[(usize, i64)])| terms.first().map(|term| term.0);
        while let Some(next) = left.iter().filter_map(first).min() {
            let mut sum = 0_i128;
            for (factor, terms) in &mut left {
                if let Some((&(index, weight), rest)) = terms.split_first()
                    && index == next
                {
                    sum = sum.checked_add(factor.checked_mul(weight.into())?)?;
                    *terms = rest;
                }
            }
            if sum != 0 {
                terms.push((next, i64::try_from(sum).ok()?));
            }
        }
        let denominator = i64::try_from(denominator.max(1) / divisor).ok()?;
        Some(Self { terms, denominator })
    }

    /// `(reading, weight)` pairs in order of the readings, no weight zero.
    #[must_use]
    pub fn terms(&self) -> &[(usize, i64)] {
        &self.terms
    }

    /// What the weighted sum is divided by, at least one.
    #[must_use]
    pub const fn denominator(&self) -> i64 {
        self.denominator
    }

    /// The exact value; `None` if a reading is not in the list.
    #[must_use]
    pub fn value(&self, readings: &[Size]) -> Option<Exact> {
        let mut sum = 0_i128;
        for &(index, weight) in &self.terms {
            sum += i128::from(readings.get(index)?.quanta()) * i128::from(weight);
        }
        Some(Exact::new(sum, self.denominator.into()))
    }

    /// The weighted sums times their factors, all of it divided by `divisor`.
    ///
    /// Weights beyond 64 bits, which no bench comes near, become weights over
    /// a reading that is in no list: no value rather than a wrong one.
    fn over_common(of: &[(i128, &Self)], divisor: i128) -> Self {
        let common = of.iter().try_fold(1_i128, |common, (_, w)| {
            let denominator = i128::from(w.denominator);
            common.checked_mul(denominator / gcd(common, denominator))
        });
        let sums = common.and_then(|common| {
            let scaled = of
                .iter()
                .map(|(f, w)| (f * (common / i128::from(w.denominator)), *w));
            Self::of_sums(&scaled.collect::<Vec<_>>(), common.checked_mul(divisor)?)
        });
        sums.unwrap_or_else(|| Self::mean_of([usize::MAX]))
    }
}

impl core::ops::Sub for &Weights {
    type Output = Weights;
    fn sub(self, other: Self) -> Weights {
        Weights::over_common(&[(1, self), (-1, other)], 1)
    }
}
