//! Instruments and their settings.

use super::Stamp;
use crate::quantity::{Entered, Unit};

/// A kind of gauge.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum GaugeKind {
    /// Outside micrometer.
    OutsideMicrometer,
    /// Telescoping gauge, read with an outside micrometer.
    TelescopingGauge,
}

/// A gauge with its own unit and graduation.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Gauge {
    /// What it is.
    pub kind: GaugeKind,
    /// The smallest step it is read to, in its own unit.
    pub graduation: Entered,
}

/// One zeroing of a gauge. The first is "as found": nobody checked it.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Setting {
    /// The gauge that was set.
    pub gauge: Stamp,
    /// What it was set against, as told; empty for "as found".
    pub note: String,
}

impl GaugeKind {
    /// All kinds.
    pub const ALL: [Self; 2] = [Self::OutsideMicrometer, Self::TelescopingGauge];

    /// The word in files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::OutsideMicrometer => "outside_micrometer",
            Self::TelescopingGauge => "telescoping_gauge",
        }
    }

    /// The kind of this word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.key() == key)
    }
}

impl Gauge {
    /// The unit it reads in.
    #[must_use]
    pub const fn unit(&self) -> Unit {
        self.graduation.unit()
    }

    /// The decimals it is read to.
    #[must_use]
    pub fn decimals(&self) -> u8 {
        self.graduation.decimals()
    }

    /// Every graduation offered, of both units.
    #[must_use]
    pub fn all_graduations() -> Vec<Entered> {
        let of_unit = |unit| Self::graduations(unit).map(|text| Entered::parse(text, unit));
        Unit::ALL.into_iter().flat_map(of_unit).flatten().collect()
    }

    /// The graduations offered, finest first: a ten-thousandth with and a
    /// thousandth without vernier; a micrometre with, a hundredth without.
    #[must_use]
    pub const fn graduations(unit: Unit) -> [&'static str; 2] {
        match unit {
            Unit::Inch => ["0.0001", "0.001"],
            Unit::Millimetre => ["0.001", "0.01"],
        }
    }
}
