//! What is taken where nobody has measured it: repeatability of gauges,
//! permissible errors, and what a gauge loses in carrying a size.
//!
//! All of it is common practice unless a source is named. It stands only
//! until own repeats are there.

use super::{Source, Spread, dof_from_reliability, quanta};
use crate::quantity::{Exact, SIZE_MAX, Size};

/// What is read with, as far as repeatability goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Instrument {
    /// Outside micrometer with a vernier.
    OutsideMicrometer,
    /// Inside micrometer, tubular or with rods.
    InsideMicrometer,
    /// Telescoping gauge and micrometer in hands that have learnt it.
    TelescopingGauge,
    /// The same on the first weekend.
    TelescopingGaugeAtFirst,
    /// Small-hole gauge and micrometer.
    SmallHoleGauge,
    /// Dial bore gauge for a size, its setting included.
    DialBoreGauge,
    /// Dial bore gauge for differences within one setting.
    DialBoreGaugeDifference,
    /// Caliper.
    Caliper,
    /// Depth micrometer.
    DepthGauge,
    /// Feeler blades.
    Feeler,
    /// Dial indicator.
    DialIndicator,
    /// Plastic strip that is pressed flat.
    PlasticStrip,
}

/// In quanta: 0.0001 in, a millimetre, a micrometre.
const TENTH: f64 = 25_400.0;
const MILLIMETRE: i64 = 10_000_000;
const MICROMETRE: i64 = 10_000;

/// What a common-practice figure may be off by, in per cent: our own choice.
const FIGURE_OFF_BY: f64 = 25.0;

/// Own repeats count from here on: five of one spot. Our own choice; fewer
/// say less than the figure does.
const DOF_ENOUGH: f64 = 4.0;

impl Instrument {
    /// All of them.
    pub const ALL: [Self; 12] = [
        Self::OutsideMicrometer,
        Self::InsideMicrometer,
        Self::TelescopingGauge,
        Self::TelescopingGaugeAtFirst,
        Self::SmallHoleGauge,
        Self::DialBoreGauge,
        Self::DialBoreGaugeDifference,
        Self::Caliper,
        Self::DepthGauge,
        Self::Feeler,
        Self::DialIndicator,
        Self::PlasticStrip,
    ];

    /// Repeatability as a half-width of 95 %, in 0.0001 in: common practice
    /// for somebody who does this now and then, the larger where the trade
    /// names two. The depth micrometer is our own choice, as the inside one:
    /// both must be held square by hand.
    const fn tenths(self) -> f64 {
        match self {
            Self::OutsideMicrometer => 3.0,
            Self::InsideMicrometer | Self::TelescopingGauge | Self::DepthGauge | Self::Feeler => {
                10.0
            }
            Self::TelescopingGaugeAtFirst => 15.0,
            Self::SmallHoleGauge | Self::DialIndicator | Self::PlasticStrip => 5.0,
            Self::DialBoreGauge => 4.0,
            Self::DialBoreGaugeDifference => 2.0,
            Self::Caliper => 20.0,
        }
    }
}

/// The repeatability of one reading: from own repeats where there are enough
/// of them, else what common practice says of the instrument.
#[must_use]
pub fn repeatability(own: Option<Spread>, instrument: Instrument) -> Source {
    match own {
        Some(spread) if DOF_ENOUGH <= spread.dof => Source::estimated(spread),
        _ => Source::from_interval(instrument.tenths() * TENTH, 0.95)
            .with_dof(dof_from_reliability(FIGURE_OFF_BY)),
    }
}

/// What a micrometer may be off by anywhere in its range, and so at a size:
/// rectangular; 4 µm up to 50 mm and 1 µm more for each 50 mm begun (DIN 863,
/// error limits up to 225 mm; beyond them continued by the same step, which
/// is our own choice). One draw for each setting.
#[must_use]
pub fn permissible_error(size: Size) -> Source {
    let size = size.quanta().clamp(1, SIZE_MAX.quanta());
    let micrometres = 4 + (size - 1) / (50 * MILLIMETRE);
    Source::rectangular(quanta(Exact::new((micrometres * MICROMETRE).into(), 1)))
}

/// What pressing shells into their housing does to a clearance computed from
/// the parts: the crush thins the walls and stretches the housing.
/// Rectangular, up to 0.0004 in either way. Common practice says that such a
/// clearance is good to 0.0003 to 0.0005 in, of which practised hands and
/// their gauges have 0.0003; the root of what the squares leave is 0.0004.
#[must_use]
pub fn crush() -> Source {
    Source::rectangular(CRUSH_TENTHS * TENTH).with_dof(dof_from_reliability(FIGURE_OFF_BY))
}

const CRUSH_TENTHS: f64 = 4.0;

/// How far the hour may be off at which somebody saw an indicator stand
/// highest, in radians: half an hour of the clock either way, as it is told
/// in whole ones.
#[must_use]
pub fn high_spot() -> Source {
    Source::rectangular(core::f64::consts::PI / 12.0)
}

/// How far off the axis, as part of the diameter, and how much aslant a
/// telescoping or small-hole gauge may have been locked: 0.020 in on 4 in, and
/// half a degree. Our own choice for somebody who swings it through the axis
/// once, as is common practice.
const OFF_AXIS: f64 = 0.005;
const ASLANT: f64 = 0.008_727;

/// What a telescoping or small-hole gauge loses in carrying a size: it reads
/// long where it is aslant and short on a chord. Rectangular, as wide as the
/// larger of the two. Repeats in one manner do not make it smaller: one draw
/// for a place, however often it is read.
#[must_use]
pub fn transfer(size: Size) -> Source {
    let long = tilt_error(size, ASLANT);
    let short = -chord_error(size, OFF_AXIS * quanta(size.into()));
    Source::rectangular(if long < short { short } else { long })
}

/// How much longer than the diameter, in quanta, a gauge reads that leans
/// along the axis by so much per unit of its length: D (√(1 + slope²) − 1).
#[must_use]
pub fn tilt_error(size: Size, slope: f64) -> f64 {
    let square = slope * slope;
    quanta(size.into()) * square / (1.0 + (1.0 + square).sqrt())
}

/// How much a chord is longer than the diameter, in quanta, so never above
/// zero: √(D² − 4 x²) − D, for a chord x quanta off the axis. Beyond the
/// edge there is no chord: −D.
#[must_use]
pub fn chord_error(size: Size, off_axis: f64) -> f64 {
    let d = quanta(size.into());
    let square = d * d - 4.0 * off_axis * off_axis;
    if 0.0 < square { square.sqrt() - d } else { -d }
}
