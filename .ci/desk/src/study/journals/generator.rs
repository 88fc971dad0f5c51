//! What the study draws its journals from, and why. Written down before the
//! rule that is judged by it; changing a number here needs a new reason.
//!
//! Everything is in tenths of a thousandth of an inch ("tenths", 0.0001 in),
//! the last digit of a vernier micrometer.

use fenderbench::quantity::Unit;

/// Quanta of 0.1 nm in a tenth.
pub const TENTH: i64 = Unit::Inch.quanta() / 10_000;

/// Mean of the true out-of-round, the longest less the shortest diameter.
///
/// Exponential, because wear is: most journals of an engine that ran are
/// nearly round, a few are far out, none is less than round. With the limit
/// below, 19 in 100 are bad, which is neither a study of good parts alone nor
/// of scrap. The shape and the mean are assumptions: no published
/// distribution of worn journals was found.
pub const OUT_OF_ROUND_MEAN: f64 = 3.0;

/// The limit of out-of-round: 0.0005 in, common practice for the journals of
/// a passenger car's crankshaft.
pub const LIMIT: f64 = 5.0;

/// By how much a part beyond the limit may never be passed by mistake: as
/// much as the mean out-of-round, on top of the limit.
pub const FAR_BEYOND: f64 = LIMIT + 3.0;

/// A vernier micrometer is read to a tenth, to the nearest line.
pub const GRADUATION: f64 = 1.0;

/// Repeatability, one standard deviation, normal: a practised hand (about
/// ±0.0002 in at 95 %), a usual one and a poor one. Common practice puts an
/// amateur's micrometer between the first and the last.
pub const REPEATABILITIES: [f64; 3] = [1.0, 2.0, 3.0];

/// Where the repeatability is not known it is estimated from so many readings
/// of one spot, which is what a person is asked for.
pub const REPEATS: usize = 5;

/// Sizes lie anywhere between the lines, hence uniformly over many of them.
/// From 2.0000 in up: where is of no importance, between the lines it is.
pub const SIZE_LEAST: f64 = 20_000.0;
/// How many tenths the sizes spread over.
pub const SIZE_SPREAD: f64 = 1_000.0;

/// Standard deviation of the taper from end to end, normal: as large as the
/// out-of-round, so that a fit that mixes the two up is found out.
pub const TAPER: f64 = 3.0;

// The axis of the oval is anywhere, uniformly: journals wear where the load is, and the
// load turns with the rod, the throw and the ignition.

/// How an oval changes from one end of the journal to the other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Along {
    /// For people.
    pub name: &'static str,
    /// The oval at the lesser end level as a part of that at the greater one;
    /// in proportion between them. Which end is the greater is a toss.
    pub lesser: f64,
}

/// As round at one level as at the other: what a fit of one oval assumes.
pub const SAME: Along = Along {
    name: "same along the length",
    lesser: 1.0,
};

/// Shrinks by half from one end face of the journal to the other. The levels
/// are a quarter of the length in from the faces: the fillets and the width
/// of the anvils (6 mm, on a journal of about 25 mm) keep a micrometer off
/// the rest. There the oval is 7/8 and 5/8 of the largest.
pub const BY_HALF: Along = Along {
    name: "half, face to face",
    lesser: 5.0 / 7.0,
};

/// Shrinks by half from one level to the other: harder than the above, as a
/// journal would have it that loses all of it within its length.
pub const BY_HALF_OF_LEVELS: Along = Along {
    name: "half, level to level",
    lesser: 0.5,
};

/// Journals of each row. The share of bad ones passed, 1 % of 38 000, is then
/// known to ±0.05 %, one standard deviation.
pub const JOURNALS: usize = 200_000;

/// Everything was tried out on journals of these seeds only.
pub const SEEDS_FOR_BUILDING: [u64; 3] = [101, 102, 103];

/// The study is made on journals of this seed, which were not looked at
/// before the rule stood.
pub const SEED: u64 = 20_260_509;
