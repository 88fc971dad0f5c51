//! What the coverage of stated intervals is tried on, and why. Written down
//! before it was tried.
//!
//! Each source errs as it is said to: normal where it is normal, anywhere in
//! its band where it is rectangular. What is tried is whether their sum is as
//! wide as stated, once repeatability is estimated, readings are rounded, and
//! errors are shared by readings.

/// Of each kind of quantity. 95 % are then known to ±0.2 %.
pub const FEATURES: usize = 10_000;

/// What micrometers are read to: 0.001 mm, 0.0001 in, 0.01 mm; in quanta.
pub const GRADUATIONS: [i64; 3] = [10_000, 25_400, 100_000];

/// Repeatability in graduations, anything between: from a hand that is
/// steadier than the scale to one that the vernier is wasted on.
pub const REPEATABILITY: [f64; 2] = [0.2, 3.0];

/// Standard uncertainty of a setting in graduations, anything between: from a
/// standard that is never in doubt to one that nobody checked.
pub const SETTING: [f64; 2] = [0.0, 2.0];

/// How many of two: a repeatability is as often known as estimated from five
/// repeats of one spot.
pub const KNOWN: f64 = 0.5;

/// How many of two: a thermometer is as often there as not.
pub const THERMOMETER: f64 = 0.5;

/// What it shows, in thousandths of a °C: shops from winter to summer.
pub const TEMPERATURE: [f64; 2] = [5_000.0, 35_000.0];

/// Sizes of journals and of bores, in mm: passenger cars.
pub const JOURNAL: [f64; 2] = [40.0, 70.0];
/// Sizes of bores.
pub const BORE: [f64; 2] = [70.0, 105.0];

/// Largest taper and oval either way, in mm. How large they are is of no
/// importance, that the readings differ is: they fall differently between
/// the lines.
pub const SHAPE: f64 = 0.05;

/// Any number.
pub const SEED: u64 = 20_260_611;

/// It was tried out with this seed.
pub const SEED_FOR_BUILDING: u64 = 201;
