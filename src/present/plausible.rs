//! What a kind can measure at all, and what is plausible at a place.

use crate::quantity::{Size, Unit};
use crate::session::{Feature, Kind, Reading, Session, Stamp, Station};

/// What a kind can measure: parts 5 mm to 600 mm, walls of shells 0.5 mm to
/// 15 mm, amounts as much or nothing (common sense; it stops a lost or
/// misplaced decimal point, nothing finer).
pub(super) const fn can_be(kind: Kind) -> (Size, Size) {
    let millimetre = 10_000_000;
    let (least, greatest) = match kind {
        Kind::MainShell | Kind::RodShell => (millimetre / 2, 15 * millimetre),
        _ if kind.is_amount() => (0, 15 * millimetre),
        _ => (5 * millimetre, 600 * millimetre),
    };
    (Size::from_quanta(least), Size::from_quanta(greatest))
}

/// That in words; in inches rounded inwards.
pub(super) const fn can_be_words(kind: Kind, unit: Unit) -> &'static str {
    match (kind, unit) {
        (Kind::MainShell | Kind::RodShell, Unit::Millimetre) => "0.5 to 15 mm",
        (Kind::MainShell | Kind::RodShell, Unit::Inch) => "0.02 to 0.59 in",
        (kind, Unit::Millimetre) if kind.is_amount() => "0 to 15 mm",
        (kind, Unit::Inch) if kind.is_amount() => "0 to 0.59 in",
        (_, Unit::Millimetre) => "5 to 600 mm",
        (_, Unit::Inch) => "0.2 to 23.6 in",
    }
}

/// What is plausible at a station in a setting: the latest reading of the
/// same feature, else of the same kind; `None` before the first, and of an
/// amount.
#[must_use]
pub fn plausible(session: &Session, station: Station, setting: Stamp) -> Option<Size> {
    if station.kind.is_amount() {
        return None;
    }
    let same = |(_, reading): &(Stamp, &Reading)| {
        reading.setting == setting && reading.station.kind == station.kind
    };
    let of_kind = || session.standing().rev().filter(same);
    let feature = Feature::of(station);
    of_kind()
        .find(|(_, reading)| Feature::of(reading.station) == feature)
        .or_else(|| of_kind().next())
        .and_then(|(_, reading)| session.size_of(reading))
}
