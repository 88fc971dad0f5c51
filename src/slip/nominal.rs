//! What a kind was made to, and whether it has been machined since.

use super::bound;
use super::expect::Neighbours;
use crate::quantity::{Deviation, Entered, Exact, Size, Unit, show};
use crate::session::{Bound, Field, FieldKey, GaugeKind, Kind, Quantity, Session};

/// Bores and pistons are bought larger, journals ground smaller, by these
/// (common practice). Quanta.
const OVERSIZES_INCH: &[i64] = &[2_540_000, 5_080_000, 7_620_000, 10_160_000, 15_240_000];
const OVERSIZES_MILLIMETRE: &[i64] = &[2_500_000, 5_000_000, 7_500_000, 10_000_000, 15_000_000];
const UNDERSIZES: usize = 3;

/// A size that all of a kind seem to have been machined to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NewNominal {
    /// Which.
    pub kind: Kind,
    /// The size, in the unit in which the size made to is given.
    pub size: Entered,
    /// True if a caliper, which has no thimble to be one turn off, reads the
    /// same. Only then may it be offered as the size made to: half a
    /// millimetre is an oversize and a turn. Otherwise a mark on a crown or
    /// shell must be looked for.
    pub witnessed: bool,
}

/// The size a kind was made to: what was said, else the unworn end of the
/// limits as made.
pub(super) fn made(session: &Session, kind: Kind) -> Option<Entered> {
    if let Field::Nominal(_, Some(size)) = session.field(FieldKey::Nominal(kind)) {
        return Some(size);
    }
    let unworn = if kind.is_hole() {
        Bound::NewLow
    } else {
        Bound::NewHigh
    };
    session.limit(kind, Quantity::Size, unworn)
}

/// The sizes a kind may have been machined to from there.
pub(super) fn machined_to(kind: Kind, made: &Entered) -> Vec<Entered> {
    let unit = made.unit();
    let steps = match unit {
        Unit::Inch => OVERSIZES_INCH,
        Unit::Millimetre => OVERSIZES_MILLIMETRE,
    };
    let (sign, count) = match kind {
        Kind::Bore | Kind::Piston => (1, steps.len()),
        Kind::MainJournal | Kind::RodJournal => (-1, UNDERSIZES),
        _ => (1, 0),
    };
    let at = |step: &i64| {
        let size = made.size() + Deviation::from_quanta(sign * step);
        let text = show(Exact::from(size), unit, made.decimals()).text;
        Entered::parse(&text, unit).ok()
    };
    steps.iter().take(count).filter_map(at).collect()
}

/// The size that every feature of a kind read so far seems to have been
/// machined to; `None` unless that is one of the usual steps from the size
/// made to, and two of the kind are read.
#[must_use]
pub fn new_nominal(session: &Session, kind: Kind) -> Option<NewNominal> {
    let made = made(session, kind)?;
    let neighbours = Neighbours::of(session, None);
    let unworn: Vec<Size> = session
        .features_of(kind)
        .filter_map(|feature| neighbours.unworn(feature))
        .collect();
    let fits = |size: &Size, to: Size| bound::could_be(kind, *size, to);
    let to = machined_to(kind, &made)
        .into_iter()
        .find(|step| unworn.iter().all(|size| fits(size, step.size())));
    let size = to.filter(|_| 2 <= unworn.len())?;
    let caliper = |id| {
        session
            .gauges
            .get(&id)
            .is_some_and(|g| g.value.kind == GaugeKind::Caliper)
    };
    let mut witnesses = session
        .standing()
        .filter(|(_, r)| r.station.kind == kind && caliper(r.gauge));
    let witnessed = witnesses.any(|(_, r)| {
        session
            .size_of(r)
            .is_some_and(|read| fits(&read, size.size()))
    });
    Some(NewNominal {
        kind,
        size,
        witnessed,
    })
}
