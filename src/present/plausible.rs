//! What a kind can measure at all, and what is plausible at a place.

use crate::quantity::{Entered, Size, Unit};
use crate::session::{Bound, Feature, Kind, Quantity, Reading, Session, Stamp, Station};

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

/// How far apart lie sizes that end in the same last digits, in quanta.
pub(super) fn span(unit: Unit, decimals: u8) -> i64 {
    unit.quanta() * 10_i64.pow(3) / 10_i64.pow(decimals.into())
}

/// How far from what is plausible a completed size is believed, of such a span:
/// half a millimetre of oversize would be completed to as much less, three
/// quarters of undersize to a quarter more. Bores wear by more than journals.
pub(super) const fn reach(kind: Kind, span: i64) -> i64 {
    match kind {
        Kind::Bore | Kind::Piston => span / 4,
        _ => span / 8,
    }
}

/// Sizes this near to each other share the leading digits that are completed:
/// half of what the last three span on the finest scale, in quanta.
const AGREE: i64 = 5_000_000;

/// The largest usual oversize is 0.060 in, the largest undersize 0.030 in
/// (common practice). A size that was given completes nothing by itself where
/// parts machined by so much end in the same digits.
const fn machined_most(kind: Kind) -> i64 {
    match kind {
        Kind::Bore | Kind::Piston => 15_240_000,
        _ => 7_620_000,
    }
}

/// What is plausible at a station in a setting: the latest reading of the
/// same feature, else of the same kind, of a piston else of a bore, else a size
/// that was given. `None` until two of all these agree, since a wrong leading
/// digit would be completed ever after; and of an amount.
#[must_use]
pub fn plausible(session: &Session, station: Station, setting: Stamp) -> Option<Size> {
    let kind = station.kind;
    let (_, gauge, _) = session.gauge_for(kind)?;
    if kind.is_amount() {
        return None;
    }
    let readings = || session.standing().rev().map(|(_, reading)| reading);
    let here = |reading: &&Reading| reading.station.kind == kind && reading.setting == setting;
    let of_feature = |r: &&Reading| here(r) && Feature::of(r.station) == Feature::of(station);
    let bores = |r: &&Reading| kind == Kind::Piston && r.station.kind == Kind::Bore;
    let read = readings().filter(here).chain(readings().filter(bores));
    let mut sizes: Vec<Size> = read.filter_map(|r| session.size_of(r)).collect();
    let mut near = readings().find(of_feature).and_then(|r| session.size_of(r));
    near = near.or_else(|| sizes.first().copied());
    let bounds = [Bound::NewLow, Bound::NewHigh, Bound::Service];
    let given = bounds.map(|bound| session.limit(kind, Quantity::Size, bound));
    sizes.extend(session.nominal(kind));
    sizes.extend(given.iter().flatten().map(Entered::size));
    if machined_most(kind) < span(gauge.unit(), gauge.decimals()) {
        near = near.or_else(|| sizes.first().copied());
    }
    let near = near?;
    let agree = |other: &&Size| (**other - near).abs().quanta() < AGREE;
    (2 <= sizes.iter().filter(agree).count()).then_some(near)
}
