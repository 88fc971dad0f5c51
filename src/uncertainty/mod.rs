//! How sure a value is: sources of error, what they do to a value, and what
//! may be said of it then.
//!
//! The names and the rules are those of the *Guide to the expression of
//! uncertainty in measurement* (JCGM 100:2008, "GUM"). An error comes from a
//! [`Source`]; a reading holds [`Draw`]s from sources; a [`Measured`] value
//! keeps, for each draw, how strongly it acts, so that an error which two
//! readings share cancels in their difference and doubles in their sum by
//! itself. From the draws and the list of sources come the [`Combined`]
//! uncertainty and, where somebody wants to see it, the [`Budget`].
//!
//! This is the only room with floats, and none of them is a length: they are
//! uncertainties, of which two digits count. Values stay
//! [`Exact`](crate::quantity::Exact). Lengths of
//! floats are in quanta of 0.1 nm, as everywhere. No result is ever "not a
//! number": what makes no sense counts as knowing nothing, which can never
//! make a value look surer than it is.
#![allow(
    clippy::float_arithmetic,
    reason = "an uncertainty is an estimate; only + - * / and sqrt, or libm, so that every \
              device gets the same one"
)]

mod budget;
mod coverage;
mod defaults;
mod float;
mod measured;
mod sample;
mod source;
mod student;
mod temperature;

pub use budget::{Budget, Combined, Row};
pub use coverage::{Factors, Probability};
pub use defaults::{
    Instrument, chord_error, crush, high_spot, permissible_error, repeatability, tilt_error,
    transfer,
};
pub use float::{DOF_MIN, SENSITIVITY_MAX, U_MAX, quanta, rounded};
pub use measured::{Draw, Measured, Sensitivity};
pub use sample::{Sample, Spread, pooled};
pub use source::{Distribution, Source, SourceId, dof_from_reliability};
pub use student::{normal_cdf, normal_quantile, t_cdf, t_quantile};
pub use temperature::{Climate, Expansion, Material, correction, thermal_sources, thermal_terms};
