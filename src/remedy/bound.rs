//! Every figure that stands in for one the person has not given, with its
//! source.

use crate::quantity::{Exact, Unit};

/// How much a light hone may take off a bore, on diameter: 0.001 in (common
/// practice).
pub const LIGHT_HONE: Exact = ten_thousandths_of_an_inch(10);

/// How much the walls of two half shells in one housing may differ: 0.0005 in
/// (trade press; other shops do not mix halves at all).
pub const HALVES_APART: Exact = ten_thousandths_of_an_inch(5);

/// By how much the clearances of neighbouring mains should differ at most:
/// 0.0005 in (common practice).
pub const NEIGHBOURS_APART: Exact = ten_thousandths_of_an_inch(5);

const fn ten_thousandths_of_an_inch(number: i64) -> Exact {
    Exact::whole(number * Unit::Inch.quanta() / 10_000)
}
