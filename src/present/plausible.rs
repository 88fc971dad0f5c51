//! What a kind can measure at all, and what is plausible at a place.

use crate::quantity::{Size, Unit};
use crate::session::{Bound, Feature, Gauge, Kind, Quantity, Session, Station};

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

/// How far a completed size is believed, of what its digits span: half a
/// millimetre of oversize would be completed to as much less, three quarters of
/// undersize to a quarter more. Bores wear by more than journals.
const fn reach(kind: Kind, span: i64) -> i64 {
    match kind {
        Kind::Bore | Kind::Piston => span / 4,
        _ => span / 8,
    }
}

/// How far apart sizes lie that end in the same last digits, in quanta.
fn span(gauge: &Gauge) -> i64 {
    gauge.unit().quanta() * 10_i64.pow(3) / 10_i64.pow(gauge.decimals().into())
}

/// What is read of a kind, the latest first, and of pistons' bores.
fn read(session: &Session, kind: Kind) -> impl Iterator<Item = (Station, Size)> {
    let of = move |kind| {
        let readings = session.standing().rev().map(|(_, reading)| reading);
        readings.filter(move |reading| reading.station.kind == kind)
    };
    let bores = of(Kind::Bore).filter(move |_| kind == Kind::Piston);
    let all = of(kind).chain(bores);
    all.filter_map(|reading| Some((reading.station, session.size_of(reading)?)))
}

/// What a kind was given as: made to, and its limits.
fn given(session: &Session, kind: Kind) -> impl Iterator<Item = Size> {
    let bounds = [Bound::NewLow, Bound::NewHigh, Bound::Service];
    let limits = bounds.into_iter();
    let limits = limits.filter_map(move |bound| session.limit(kind, Quantity::Size, bound));
    let made = session.nominal(kind).into_iter();
    made.chain(limits.map(|limit| limit.size()))
}

/// About what a station measures: the latest reading of the same feature, else
/// of the same kind, of a piston else of a bore, else a size that was given.
#[must_use]
pub fn about(session: &Session, station: Station) -> Option<Size> {
    let kind = station.kind;
    let of_feature = |(at, _): &(Station, Size)| Feature::of(*at) == Feature::of(station);
    let own = read(session, kind).find(of_feature);
    let latest = own.or_else(|| read(session, kind).next());
    let size = latest.map(|(_, size)| size);
    size.or_else(|| given(session, kind).next())
}

/// To what leading digits are completed at a station: what it is [`about`].
/// `None` until another reading or given size agrees with that, since a wrong
/// leading digit would be completed ever after; and of an amount.
#[must_use]
pub fn plausible(session: &Session, station: Station) -> Option<Size> {
    let kind = station.kind;
    let near = about(session, station).filter(|_| !kind.is_amount())?;
    let (_, gauge, _) = session.gauge_for(kind)?;
    if read(session, kind).next().is_none() && span(gauge) <= machined_most(kind) {
        return None;
    }
    let all = read(session, kind).map(|(_, size)| size);
    let agree = |other: &Size| (*other - near).abs().quanta() < AGREE;
    let agreeing = all.chain(given(session, kind)).filter(agree);
    (2 <= agreeing.take(2).count()).then_some(near)
}

/// True if a size completed at a station is so far from all that is known of
/// its kind that its leading digits may be others.
pub(super) fn is_doubtful(session: &Session, station: Station, size: Size) -> bool {
    let kind = station.kind;
    let Some((_, gauge, _)) = session.gauge_for(kind) else {
        return false;
    };
    let reach = reach(kind, span(gauge));
    let all = read(session, kind).map(|(_, size)| size);
    let mut all = all.chain(given(session, kind));
    !all.any(|other| (size - other).abs().quanta() <= reach)
}
