//! A value with what its errors hang on.

use core::ops::{Add, Neg, Sub};

use litemap::LiteMap;

use super::SourceId;
use super::float::{ratio, sensitivity};
use crate::quantity::{Exact, Weights};

/// One error out of a source.
///
/// Readings that hold the same draw share the error, as all do that were
/// taken in one setting. Different draws of one source are independent errors
/// of the same size, as the repeatability of one gauge has a new one at every
/// reading; that size is then known no better than from the one estimate.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Draw {
    /// Which of the source's errors. First, so that readings with their own
    /// numbers stay in order while they are gathered.
    pub number: usize,
    /// Where it comes from.
    pub source: SourceId,
}

/// How strongly a value hangs on an error: quanta per unit of its source.
pub type Sensitivity = f64;

/// A value and its sensitivity to every draw it holds: a linear combination
/// (JCGM 100 5.1 and 5.2).
///
/// It has no order on purpose: whether one is larger than another, or than a
/// limit, is a decision under a rule.
///
/// ```
/// use fenderbench::quantity::Exact;
/// use fenderbench::uncertainty::{Draw, Measured, Source, SourceId};
/// let (setting, own) = (SourceId(0), SourceId(1));
/// let sources = [Source::normal(20_000.0), Source::normal(10_000.0)];
/// let reading = |number, quanta| {
///     let shared = Draw { number: 0, source: setting };
///     let own = Draw { number, source: own };
///     Measured::new(Exact::new(quanta, 1), &[(shared, 1.0), (own, 1.0)])
/// };
/// let difference = &reading(1, 500) - &reading(2, 480);
/// assert_eq!(difference.value(), Exact::new(20, 1));
/// // The error of the setting is gone.
/// assert!((difference.combined(&sources).u() - 2e8_f64.sqrt()).abs() < 1e-9);
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Measured {
    value: Exact,
    terms: Vec<(Draw, Sensitivity)>,
}

impl Measured {
    /// A value with the sensitivities to its draws: by how many quanta it
    /// changes when the error of the draw grows by one of the source's unit.
    #[must_use]
    pub fn new(value: Exact, terms: &[(Draw, Sensitivity)]) -> Self {
        let mut gathered = Gathered::default();
        for &(draw, c) in terms {
            gathered.add(draw, sensitivity(c));
        }
        gathered.into_measured(value, 1.0)
    }

    /// The sum of values, each times a whole number, over one denominator;
    /// one of zero counts as one.
    #[must_use]
    pub fn sum(parts: &[(i64, &Self)], denominator: i64) -> Self {
        let denominator = if denominator == 0 { 1 } else { denominator };
        let mut value = Exact::ZERO;
        let mut gathered = Gathered::default();
        for &(weight, part) in parts {
            let (n, d) = (part.value.numerator(), part.value.denominator());
            value = value + Exact::new(n * i128::from(weight), d);
            gathered.add_all(ratio(weight.into(), 1), part);
        }
        let by = i128::from(denominator);
        let value = Exact::new(value.numerator(), value.denominator() * by);
        gathered.into_measured(value, ratio(by, 1))
    }

    /// What weights over readings give; `None` if a reading is not in the
    /// list.
    #[must_use]
    pub fn weighted(weights: &Weights, readings: &[Self]) -> Option<Self> {
        let parts: Option<Vec<_>> = weights
            .terms()
            .iter()
            .map(|&(index, weight)| Some((weight, readings.get(index)?)))
            .collect();
        Some(Self::sum(&parts?, weights.denominator()))
    }

    /// A value that is no plain sum, with its slopes by the parts it was
    /// computed from at the place where it was (JCGM 100 5.1.3).
    #[must_use]
    pub fn linearised(value: Exact, slopes: &[(f64, &Self)]) -> Self {
        let mut gathered = Gathered::default();
        for &(slope, part) in slopes {
            gathered.add_all(sensitivity(slope), part);
        }
        gathered.into_measured(value, 1.0)
    }

    /// The value times a fraction; a denominator of zero counts as one.
    #[must_use]
    pub fn scaled(&self, numerator: i64, denominator: i64) -> Self {
        Self::sum(&[(numerator, self)], denominator)
    }

    /// The value.
    #[must_use]
    pub const fn value(&self) -> Exact {
        self.value
    }

    /// The draws it depends on, in order, and its sensitivity to each, none
    /// zero.
    #[must_use]
    pub fn terms(&self) -> &[(Draw, f64)] {
        &self.terms
    }
}

impl Add for &Measured {
    type Output = Measured;
    fn add(self, other: Self) -> Measured {
        Measured::sum(&[(1, self), (1, other)], 1)
    }
}

impl Sub for &Measured {
    type Output = Measured;
    fn sub(self, other: Self) -> Measured {
        Measured::sum(&[(1, self), (-1, other)], 1)
    }
}

impl Neg for &Measured {
    type Output = Measured;
    fn neg(self) -> Measured {
        self.scaled(-1, 1)
    }
}

/// Sensitivities while they are added up. Divided at the end only, so that
/// what cancels in whole numbers cancels to the last bit.
#[derive(Default)]
struct Gathered(LiteMap<Draw, f64>);

impl Gathered {
    fn add(&mut self, draw: Draw, c: f64) {
        *self.0.entry(draw).or_default() += c;
    }

    fn add_all(&mut self, weight: f64, part: &Measured) {
        for &(draw, c) in part.terms() {
            self.add(draw, weight * c);
        }
    }

    fn into_measured(self, value: Exact, denominator: f64) -> Measured {
        let all = self.0.into_iter();
        let terms = all.map(|(draw, c)| (draw, sensitivity(c / denominator)));
        Measured {
            value,
            terms: terms.filter(|&(_, c)| c != 0.0).collect(),
        }
    }
}
