//! Clearances of round things in holes: a bore minus its piston, both across
//! the crank; a pin in its piston and in its rod.

use litemap::LiteMap;

use super::view::View;
use super::{Detail, Finding, FindingKey, Which};
use crate::quantity::{Exact, Unit, Weights};
use crate::session::{Direction, Feature, Kind, Level, Quantity, Station, ordered};

/// Adds the least and the greatest clearance told at a feature: at a piston
/// in its bore, at the bores for a pin.
///
/// The skirt is gauged square to the pin, so the bore counts in that
/// direction only, and within ring travel. A pin turns, so its mean counts,
/// at every place of its bore. Where a hole was read with the gauge set on
/// its partner, the deviation is the clearance: the error of the micrometer
/// cancels, so these readings are taken before any other.
pub(super) fn assess(view: &View<'_>, feature: Feature, findings: &mut Vec<Finding>) {
    let Some((hole, inside)) = partners(feature) else {
        return;
    };
    let is_read = view.stations_of(inside).next().is_some();
    if inside.kind == Kind::Pin && !is_read && !view.session.is_asked(Kind::Pin) {
        return;
    }
    let asked = hole.stations(view.session.route());
    let mut missing: Vec<Station> = asked.into_iter().filter(counts).collect();
    if !missing
        .iter()
        .any(|place| view.direct(*place, inside).is_some())
    {
        missing.extend(inside.stations(view.session.route()));
    }
    missing.retain(|station| view.at(*station).is_none());

    let clearances = all(view, feature);
    let among: Vec<_> = clearances.iter().map(|(_, each)| each.clone()).collect();
    for (which, clearance) in [
        (Which::Smallest, clearances.first()),
        (Which::Largest, clearances.last()),
    ] {
        let key = FindingKey::new(feature, Quantity::Clearance, which);
        let weights: Option<&Weights> = clearance.map(|(_, weights)| weights);
        let mut finding = view.finding_among(key, weights, &among, missing.clone());
        let value = finding.value();
        let impossible = value.is_some_and(|value| is_impossible(feature.kind, value));
        finding.detail = impossible.then_some(Detail::Impossible);
        findings.push(finding);
    }
}

/// The hole and what runs in it, of a feature at which a clearance is told.
fn partners(feature: Feature) -> Option<(Feature, Feature)> {
    let of_kind = |kind| Feature { kind, ..feature };
    match feature.kind {
        Kind::Piston => Some((of_kind(Kind::Bore), feature)),
        Kind::PinBore | Kind::SmallEnd => Some((feature, of_kind(Kind::Pin))),
        _ => None,
    }
}

/// Whether a place of a hole counts for a clearance.
fn counts(station: &Station) -> bool {
    station.kind != Kind::Bore
        || station.direction == Direction::D0 && station.level != Level::Reference
}

/// The clearances told at a feature, one for each place of the hole, the
/// least first.
pub(super) fn all(view: &View<'_>, feature: Feature) -> LiteMap<Exact, Weights> {
    let Some((hole, inside)) = partners(feature) else {
        return LiteMap::new();
    };
    let partner = view.mean_of(inside, |station| {
        inside.kind != Kind::Piston || station.direction == Direction::D0
    });
    let holes = view.stations_of(hole);
    let holes = holes.filter(|(station, _)| counts(station));
    ordered(holes.filter_map(|(station, hole)| {
        let direct = view.direct(station, inside);
        let clearance = direct.or_else(|| Some(&hole - partner.as_ref()?))?;
        Some((view.value(&clearance)?, clearance))
    }))
}

/// Whether a clearance told at a kind is none that a running engine has, and
/// none that wear makes. A pin may be pressed into its rod.
pub(super) fn is_impossible(kind: Kind, clearance: Exact) -> bool {
    let steps = match kind {
        Kind::Piston => HUGE_IN_BORE,
        _ => HUGE_IN_BEARING,
    };
    let huge = Exact::new(i128::from(Unit::Inch.quanta()) * steps, 1_000);
    kind != Kind::SmallEnd && clearance.is_negative() || huge <= clearance
}

/// In thousandths of an inch, our own choice: the smallest usual undersize of
/// shells, and a usual oversize of pistons, which a wrong partner adds.
const HUGE_IN_BEARING: i128 = 10;
const HUGE_IN_BORE: i128 = 20;
