//! Where an error comes from, and how large it may be.

use super::Spread;
use super::float;
use super::student::normal_quantile;
use crate::quantity::Size;

/// A source by its place in the list the caller keeps. What it stands for is
/// the caller's to say.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SourceId(pub usize);

/// How the errors of a source are spread, for telling where its uncertainty
/// comes from; combining needs only the standard uncertainty.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Distribution {
    /// Normal.
    Normal,
    /// Student's t: a standard deviation estimated from repeats.
    StudentT,
    /// Anything between two bounds, equally likely.
    Rectangular,
    /// Between two bounds, likeliest in the middle.
    Triangular,
    /// Between two bounds, likeliest at them, as of a steady swing.
    Arcsine,
}

/// A source of error: its standard uncertainty, how well that is known, and
/// the shape.
///
/// ```
/// use fenderbench::quantity::Size;
/// use fenderbench::uncertainty::Source;
/// let micrometre = Source::resolution(Size::from_quanta(10_000));
/// assert!((micrometre.u() - 10_000.0 / 12.0_f64.sqrt()).abs() < 1e-9);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Source {
    u: f64,
    dof: f64,
    distribution: Distribution,
}

impl Source {
    /// Nothing is known of the error.
    pub const UNKNOWN: Self = Self {
        u: float::U_MAX,
        dof: float::DOF_MIN,
        distribution: Distribution::Rectangular,
    };

    fn new(u: f64, distribution: Distribution) -> Self {
        Self {
            u: float::uncertainty(u),
            dof: f64::INFINITY,
            distribution,
        }
    }

    /// A normal error of this standard uncertainty, in the unit of the
    /// source: quanta of 0.1 nm for a length. Below zero or not a number
    /// counts as knowing nothing.
    #[must_use]
    pub fn normal(u: f64) -> Self {
        Self::new(u, Distribution::Normal)
    }

    /// A standard deviation from repeats (JCGM 100 4.2).
    #[must_use]
    pub fn estimated(spread: Spread) -> Self {
        Self::new(spread.s, Distribution::StudentT).with_dof(spread.dof)
    }

    /// Somewhere within ± `half_width`: u = half width / √3 (JCGM 100 4.3.7).
    #[must_use]
    pub fn rectangular(half_width: f64) -> Self {
        Self::new(half_width / 3.0_f64.sqrt(), Distribution::Rectangular)
    }

    /// Within ± `half_width`, likeliest in the middle: u = half width / √6
    /// (JCGM 100 4.3.9).
    #[must_use]
    pub fn triangular(half_width: f64) -> Self {
        Self::new(half_width / 6.0_f64.sqrt(), Distribution::Triangular)
    }

    /// A steady swing of ± `half_width`: u = half width / √2 (JCGM 100
    /// H.1.3.4).
    #[must_use]
    pub fn arcsine(half_width: f64) -> Self {
        Self::new(half_width / 2.0_f64.sqrt(), Distribution::Arcsine)
    }

    /// From an expanded uncertainty and the factor it was expanded by (JCGM
    /// 100 4.3.3). A factor that is not above zero tells nothing.
    #[must_use]
    pub fn from_expanded(expanded: f64, factor: f64) -> Self {
        let factor = if 0.0 < factor { factor } else { 0.0 };
        Self::normal(expanded / factor)
    }

    /// A normal error that lies within ± `half` with this probability (JCGM
    /// 100 4.3.4 and 4.3.5).
    #[must_use]
    pub fn from_interval(half: f64, coverage: f64) -> Self {
        Self::from_expanded(half, normal_quantile(0.5 + coverage / 2.0))
    }

    /// What a scale of this graduation cannot show: rectangular, half a
    /// graduation either way (JCGM 100 F.2.2.1). Never nothing: a graduation
    /// that is not above zero counts as knowing nothing.
    #[must_use]
    #[expect(clippy::cast_precision_loss, reason = "to sixteen digits")]
    pub fn resolution(graduation: Size) -> Self {
        match graduation.quanta() {
            ..=0 => Self::UNKNOWN,
            quanta => Self::rectangular(quanta as f64 / 2.0),
        }
    }

    /// The same with these degrees of freedom: how well u is known. Anything
    /// from [`DOF_MIN`](super::DOF_MIN) to infinity, what is none counts as
    /// the least.
    #[must_use]
    pub fn with_dof(self, dof: f64) -> Self {
        let dof = float::dof(dof);
        Self { dof, ..self }
    }

    /// The standard uncertainty, from 0 to [`U_MAX`](super::U_MAX), in the
    /// unit of the source.
    #[must_use]
    pub const fn u(&self) -> f64 {
        self.u
    }

    /// The degrees of freedom; infinite where u is known.
    #[must_use]
    pub const fn dof(&self) -> f64 {
        self.dof
    }

    /// The shape.
    #[must_use]
    pub const fn distribution(&self) -> Distribution {
        self.distribution
    }
}

/// The degrees of freedom of an uncertainty that may be wrong by so many per
/// cent of itself (JCGM 100 G.4.2, formula G.3).
///
/// ```
/// use fenderbench::uncertainty::dof_from_reliability;
/// assert_eq!([25.0, 10.0, 50.0].map(dof_from_reliability), [8.0, 50.0, 2.0]);
/// ```
#[must_use]
pub fn dof_from_reliability(percent: f64) -> f64 {
    float::dof(5_000.0 / (percent * percent))
}
