//! What a kind can measure at all, and what is plausible at a place.

use crate::quantity::Size;
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

/// Sizes this near to each other share the leading digits that are completed:
/// half of what the last three span on the finest scale, in quanta.
const AGREE: i64 = 5_000_000;

/// What is plausible at a station in a setting: the latest reading of the
/// same feature, else of the same kind, of a piston else of a bore. `None`
/// until another reading, or a size that was given, agrees with it, since a
/// wrong leading digit would be completed ever after; and of an amount. Never
/// a given size by itself: half a millimetre of oversize, and three digits are
/// completed to a millimetre less.
#[must_use]
pub fn plausible(session: &Session, station: Station, setting: Stamp) -> Option<Size> {
    let kind = station.kind;
    if kind.is_amount() {
        return None;
    }
    let all = |of: Kind| {
        let standing = session.standing().rev();
        standing.filter(move |(_, reading)| reading.station.kind == of)
    };
    let size = |(_, reading): (Stamp, &Reading)| session.size_of(reading);
    let here = || all(kind).filter(|(_, reading)| reading.setting == setting);
    let of_feature =
        here().filter(|(_, reading)| Feature::of(reading.station) == Feature::of(station));
    let bounds = [Bound::NewLow, Bound::NewHigh, Bound::Service];
    let bounds = bounds.map(|bound| session.limit(kind, Quantity::Size, bound));
    let given = bounds.iter().flatten().map(|given| given.size());
    let given = session.nominal(kind).into_iter().chain(given);
    let bores = all(Kind::Bore).filter(|_| kind == Kind::Piston);
    let read: Vec<Size> = here().chain(bores).filter_map(size).collect();
    let near = of_feature.filter_map(size).next();
    let near = near.or_else(|| read.first().copied())?;
    let agree = |other: &Size| (*other - near).abs().quanta() < AGREE;
    let agreeing = read.iter().copied().chain(given).filter(agree);
    (2 <= agreeing.count()).then_some(near)
}
