//! Piston-to-wall: a bore minus its piston, both across the crank.

use litemap::LiteMap;

use super::view::View;
use super::{Finding, FindingKey, Which};
use crate::quantity::{Exact, Weights};
use crate::session::{Direction, Feature, Kind, Level, Quantity, Station, ordered};

const fn across(station: Station) -> bool {
    matches!(station.direction, Direction::D0) && !matches!(station.level, Level::Reference)
}

/// The clearances of a piston at each place of its bore, the least first.
pub(super) fn piston_to_wall(view: &View<'_>, piston: Feature) -> LiteMap<Exact, Weights> {
    let bore = Feature {
        kind: Kind::Bore,
        ..piston
    };
    let bores = view.stations_of(bore);
    let bores = bores.filter(|(station, _)| across(*station));
    let skirt = view.at(piston.station(Level::GaugePoint, Direction::D0));
    ordered(bores.filter_map(|(station, bore)| {
        let direct = view.direct(station, piston);
        let clearance = direct.or_else(|| Some(&bore - skirt.as_ref()?))?;
        Some((view.value(&clearance)?, clearance))
    }))
}

/// Adds the least and the greatest piston-to-wall of a piston in its bore.
///
/// The skirt is gauged square to the pin, so the bore counts in that
/// direction only, and within ring travel. Where a bore was read with the
/// gauge set on this piston, the deviation is the clearance: the error of
/// the micrometer cancels, so these readings are taken before any other.
pub(super) fn assess(view: &View<'_>, feature: Feature, findings: &mut Vec<Finding>) {
    if feature.kind != Kind::Piston {
        return;
    }
    let bore = Feature {
        kind: Kind::Bore,
        ..feature
    };
    let skirt = feature.station(Level::GaugePoint, Direction::D0);
    let asked = bore.stations(view.session.route());
    let mut missing: Vec<Station> = asked.into_iter().filter(|s| across(*s)).collect();
    if !missing
        .iter()
        .any(|bore| view.direct(*bore, feature).is_some())
    {
        missing.push(skirt);
    }
    missing.retain(|station| view.at(*station).is_none());

    let clearances = piston_to_wall(view, feature);
    let among: Vec<_> = clearances.iter().map(|(_, each)| each.clone()).collect();
    for (which, clearance) in [
        (Which::Smallest, clearances.first()),
        (Which::Largest, clearances.last()),
    ] {
        let key = FindingKey {
            feature,
            quantity: Quantity::Clearance,
            which,
        };
        let weights = clearance.map(|(_, weights)| weights);
        findings.push(view.finding_among(key, weights, &among, missing.clone()));
    }
}
