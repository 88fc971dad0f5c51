//! A geometric quantity as weights over readings.

use litemap::LiteMap;

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
    /// The plain mean of the readings named.
    #[must_use]
    pub fn mean_of(readings: impl IntoIterator<Item = usize>) -> Self {
        let terms: Vec<_> = readings.into_iter().map(|index| (index, 1)).collect();
        let count = i64::try_from(terms.len()).unwrap_or(i64::MAX);
        Self::gathered(terms, count)
    }

    /// The mean of several weighted sums, each counting once.
    #[must_use]
    pub fn mean(of: &[&Self]) -> Self {
        let common = of.iter().fold(1, |acc, w| lcm(acc, w.denominator));
        let terms = of.iter().flat_map(|w| w.scaled(common));
        let count = i64::try_from(of.len()).unwrap_or(i64::MAX);
        Self::gathered(terms, common.saturating_mul(count))
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

    fn scaled(&self, common: i64) -> impl Iterator<Item = (usize, i64)> {
        let factor = common / self.denominator;
        self.terms
            .iter()
            .map(move |&(index, weight)| (index, weight * factor))
    }

    fn gathered(terms: impl IntoIterator<Item = (usize, i64)>, denominator: i64) -> Self {
        let mut gathered = LiteMap::<usize, i64>::new();
        for (index, weight) in terms {
            *gathered.entry(index).or_default() += weight;
        }
        Self {
            terms: gathered.into_iter().filter(|&(_, w)| w != 0).collect(),
            denominator: denominator.max(1),
        }
    }
}

impl core::ops::Sub for &Weights {
    type Output = Weights;
    fn sub(self, other: Self) -> Weights {
        let common = lcm(self.denominator, other.denominator);
        let less = other.scaled(common).map(|(index, w)| (index, -w));
        Weights::gathered(self.scaled(common).chain(less), common)
    }
}

fn lcm(a: i64, b: i64) -> i64 {
    let (mut x, mut y) = (a, b);
    while y != 0 {
        (x, y) = (y, x % y);
    }
    (a / x.max(1)).saturating_mul(b)
}
