//! Piston-to-wall: a bore minus its piston, both across the crank.

use super::view::View;
use super::{Finding, FindingKey, Which};
use crate::session::{Direction, Feature, Kind, Level, Quantity, Station, ordered};

/// Adds the least and the greatest piston-to-wall of a piston in its bore.
///
/// The skirt is gauged square to the pin, so the bore counts in that
/// direction only, and within ring travel.
pub(super) fn assess(view: &View<'_>, feature: Feature, findings: &mut Vec<Finding>) {
    if feature.kind != Kind::Piston {
        return;
    }
    let bore = Feature {
        kind: Kind::Bore,
        ..feature
    };
    let across =
        |station: Station| station.direction == Direction::D0 && station.level != Level::Reference;
    let skirt = feature.station(Level::GaugePoint, Direction::D0);
    let asked = bore.stations(view.session.route());
    let mut missing: Vec<Station> = asked.into_iter().filter(|s| across(*s)).collect();
    missing.push(skirt);
    missing.retain(|station| view.at(*station).is_none());

    let bores = view
        .stations_of(bore)
        .filter(|(station, _)| across(*station));
    let clearances = ordered(bores.filter_map(|(_, bore)| {
        let clearance = &bore - &view.at(skirt)?;
        Some((view.value(&clearance)?, clearance))
    }));
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
        findings.push(view.finding(key, weights, missing.clone()));
    }
}
