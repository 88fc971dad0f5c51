//! Repeats of one reading, exactly.

use super::float::{self, ratio};
use crate::quantity::{Exact, SIZE_MAX, Size};

/// What is known of repeats of one reading: their number, sum and sum of
/// squares, all whole, so that nothing is lost where many large readings
/// differ by little.
///
/// ```
/// use fenderbench::quantity::{Exact, Size};
/// use fenderbench::uncertainty::Sample;
/// let sample: Sample = [1, 2, 4].map(Size::from_quanta).into_iter().collect();
/// assert_eq!(sample.mean(), Some(Exact::new(7, 3)));
/// assert_eq!(sample.variance(), Some(Exact::new(7, 3)));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Sample {
    n: i128,
    sum: i128,
    squares: i128,
}

/// A standard deviation, in quanta of 0.1 nm, and its degrees of freedom.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    /// Standard deviation of one reading.
    pub s: f64,
    /// How many readings beyond the means it rests on.
    pub dof: f64,
}

impl FromIterator<Size> for Sample {
    /// Sizes beyond 10 m either way, which cannot be entered, count as 10 m.
    fn from_iter<T: IntoIterator<Item = Size>>(readings: T) -> Self {
        let mut sample = Self::default();
        for reading in readings {
            let most = SIZE_MAX.quanta();
            let x = i128::from(reading.quanta().clamp(-most, most));
            sample.n += 1;
            sample.sum += x;
            sample.squares += x * x;
        }
        sample
    }
}

impl Sample {
    /// The exact mean; `None` of nothing.
    #[must_use]
    pub fn mean(&self) -> Option<Exact> {
        (0 < self.n).then(|| Exact::new(self.sum, self.n))
    }

    /// The exact variance of one reading, in quanta squared, with one reading
    /// less than there are as divisor (JCGM 100 4.2.2); `None` below two.
    #[must_use]
    pub fn variance(&self) -> Option<Exact> {
        let about_the_mean = self.n * self.squares - self.sum * self.sum;
        (1 < self.n).then(|| Exact::new(about_the_mean, self.n * (self.n - 1)))
    }

    /// The standard deviation of one reading and its degrees of freedom;
    /// `None` below two readings.
    ///
    /// Zero for identical repeats, which does not make them sure: what the
    /// scale cannot show is a [`Source`](super::Source) of its own.
    #[must_use]
    pub fn spread(&self) -> Option<Spread> {
        let s = float::quanta(self.variance()?).sqrt();
        let dof = ratio(self.n - 1, 1);
        Some(Spread { s, dof })
    }

    /// The standard deviation of the mean, in quanta (JCGM 100 4.2.3).
    #[must_use]
    pub fn s_of_mean(&self) -> Option<f64> {
        let spread = self.spread()?;
        Some(spread.s / ratio(self.n, 1).sqrt())
    }
}

/// More repeats than anybody takes; beyond, products overflow.
const DOF_MOST: f64 = 1e12;

/// One standard deviation out of several that estimate the same, each
/// counting by its degrees of freedom (JCGM 100 H.3.6); `None` where there is
/// nothing to pool. A spread without a meaning is left out.
///
/// ```
/// use fenderbench::uncertainty::{Spread, pooled};
/// let of = [Spread { s: 3.0, dof: 1.0 }, Spread { s: 5.0, dof: 1.0 }];
/// assert_eq!(pooled(of), Some(Spread { s: 17.0_f64.sqrt(), dof: 2.0 }));
/// assert_eq!(pooled([]), None);
/// ```
#[must_use]
pub fn pooled(spreads: impl IntoIterator<Item = Spread>) -> Option<Spread> {
    let (mut squares, mut dof) = (0.0, 0.0);
    for spread in spreads {
        let has_dof = 0.0 < spread.dof && spread.dof <= DOF_MOST;
        if has_dof && (0.0..=float::U_MAX).contains(&spread.s) {
            squares += spread.dof * spread.s * spread.s;
            dof += spread.dof;
        }
    }
    let s = (squares / dof).sqrt();
    (0.0 < dof).then_some(Spread { s, dof })
}
