//! From sources and sensitivities to one uncertainty, and who has which part
//! in it.

use super::{Draw, Measured, Source, SourceId, float};
use crate::quantity::Exact;

/// The combined standard uncertainty of a value and how well it is known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Combined {
    u: f64,
    nu: f64,
}

/// What one source does to a value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    /// The source.
    pub source: SourceId,
    /// Its standard uncertainty, in its own unit.
    pub u: f64,
    /// How strongly the value hangs on it, without sign: quanta per unit of
    /// the source. Of independent draws the root of the sum of squares.
    pub sensitivity: f64,
    /// Sensitivity times u: quanta of 0.1 nm in the result.
    pub contribution: f64,
    /// The part of the combined variance, from 0 to 1.
    pub share: f64,
    /// Its degrees of freedom.
    pub dof: f64,
}

impl Row {
    /// The share in whole per cents.
    #[must_use]
    pub fn per_cent(&self) -> u8 {
        float::whole_number(100.0 * self.share)
    }

    /// The degrees of freedom in whole numbers; `None` where u is known, or
    /// as good as known.
    #[must_use]
    pub fn whole_dof(&self) -> Option<u8> {
        (self.dof < 200.0).then(|| float::whole_number(self.dof))
    }
}

/// An uncertainty with a row for each source that has a part in it, the
/// largest first (JCGM 100 H.1, Table H.1).
#[derive(Clone, Debug, PartialEq)]
pub struct Budget {
    /// All of them together.
    pub combined: Combined,
    /// The rows.
    pub rows: Vec<Row>,
}

impl Combined {
    /// A standard uncertainty in quanta of 0.1 nm, with its degrees of
    /// freedom. What makes no sense counts as knowing nothing.
    #[must_use]
    pub fn new(u: f64, nu: f64) -> Self {
        let has_meaning = (0.0..f64::INFINITY).contains(&u);
        let u = if has_meaning { u } else { float::U_MAX };
        let nu = float::dof(nu);
        Self { u, nu }
    }

    /// The combined standard uncertainty, in quanta of 0.1 nm.
    #[must_use]
    pub const fn u(&self) -> f64 {
        self.u
    }

    /// Whether a value is less than twice its standard uncertainty, so that
    /// only how much it is at most can be told.
    #[must_use]
    pub fn hides(&self, value: Exact) -> bool {
        float::quanta(value.abs()) < 2.0 * self.u
    }

    /// Its square.
    #[must_use]
    pub fn variance(&self) -> f64 {
        self.u * self.u
    }

    /// The effective degrees of freedom, not rounded, at least
    /// [`DOF_MIN`](super::DOF_MIN); infinite where every part is known.
    #[must_use]
    pub const fn nu(&self) -> f64 {
        self.nu
    }
}

impl Measured {
    /// The combined standard uncertainty under these sources (JCGM 100 5.1.2)
    /// and its effective degrees of freedom by the formula of Welch and
    /// Satterthwaite (G.4.1), from u as it is and not as it is printed.
    ///
    /// Draws of one source rest on one estimate and count as one term in it.
    /// A source that is not in the list counts as
    /// [`Source::UNKNOWN`].
    #[must_use]
    pub fn combined(&self, sources: &[Source]) -> Combined {
        combined(&rows(self, sources))
    }
}

impl Measured {
    /// The variance of the draws by the group each belongs to, and of those
    /// that belong to none, in quanta squared.
    #[must_use]
    pub fn variances(
        &self,
        sources: &[Source],
        groups: usize,
        group: impl Fn(Draw) -> Option<usize>,
    ) -> (Vec<f64>, f64) {
        let mut each = vec![0.0; groups];
        let mut rest = 0.0;
        for &(draw, c) in self.terms() {
            let source = sources.get(draw.source.0).unwrap_or(&Source::UNKNOWN);
            let contribution = c * source.u();
            let place = group(draw).and_then(|place| each.get_mut(place));
            *place.unwrap_or(&mut rest) += contribution * contribution;
        }
        (each, rest)
    }
}

impl Budget {
    /// The budget of a value under these sources.
    #[must_use]
    pub fn of(measured: &Measured, sources: &[Source]) -> Self {
        let unsorted = rows(measured, sources);
        let variance = variance(&unsorted);
        let mut rows: Vec<Row> = Vec::new();
        for row in &unsorted {
            let share = share(row, variance);
            let is_larger = |other: &Row| row.contribution <= other.contribution;
            let place = rows.partition_point(is_larger);
            rows.insert(place, Row { share, ..*row });
        }
        Self {
            combined: combined(&unsorted),
            rows,
        }
    }
}

/// A row for each source the value hangs on, the shares still open.
fn rows(measured: &Measured, sources: &[Source]) -> Vec<Row> {
    let mut squares = vec![0.0; sources.len()];
    let mut unknown = Vec::new();
    for &(draw, c) in measured.terms() {
        match squares.get_mut(draw.source.0) {
            Some(square) => *square += c * c,
            None => unknown.push(row(draw.source, &Source::UNKNOWN, c * c)),
        }
    }
    let known = (0..).map(SourceId).zip(sources).zip(squares);
    known
        .filter(|&(_, square)| 0.0 < square)
        .map(|((id, source), square)| row(id, source, square))
        .chain(unknown)
        .collect()
}

fn row(id: SourceId, source: &Source, square: f64) -> Row {
    let sensitivity = square.sqrt();
    Row {
        source: id,
        u: source.u(),
        sensitivity,
        contribution: sensitivity * source.u(),
        share: 0.0,
        dof: source.dof(),
    }
}

fn combined(rows: &[Row]) -> Combined {
    let variance = variance(rows);
    let by_dof = rows.iter().fold(0.0, |sum, row| {
        let share = share(row, variance);
        sum + share * share / row.dof
    });
    Combined::new(variance.sqrt(), 1.0 / by_dof)
}

fn variance(rows: &[Row]) -> f64 {
    // Not `sum`, which gives minus zero of nothing.
    let add = |sum, row: &Row| sum + row.contribution * row.contribution;
    rows.iter().fold(0.0, add)
}

/// Nothing of nothing.
fn share(row: &Row, variance: f64) -> f64 {
    if 0.0 < variance {
        row.contribution * row.contribution / variance
    } else {
        0.0
    }
}
