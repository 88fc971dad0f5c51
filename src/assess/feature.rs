//! What the readings of one feature say: its sizes, its wear, its shape.

use super::view::View;
use super::{Finding, FindingKey, Which};
use super::{amount, housing, shape};
use crate::quantity::{Exact, Weights};
use crate::session::{Direction, Feature, Kind, Level, Quantity, Station};

/// Adds the findings of a feature that rest on its own readings.
pub(super) fn assess(view: &View<'_>, feature: Feature, findings: &mut Vec<Finding>) {
    let (reference, worn): (Vec<_>, Vec<_>) = view
        .stations_of(feature)
        .partition(|(station, _)| station.level == Level::Reference);
    let asked = feature.stations(view.session.route());
    let unread = |station: &Station| view.at(*station).is_none();
    let worn_ones = asked.iter().filter(|s| s.level != Level::Reference);
    let missing: Vec<Station> = worn_ones.copied().filter(unread).collect();

    let kind = feature.kind;
    let largest = extreme(view, &worn, |a, b| b < a);
    sizes(view, feature, &worn, &missing, findings);
    if kind == Kind::Bore {
        // An unworn place of the bore itself is better than what it was made
        // to, which is known to the tolerance of new bores only.
        let read: Vec<_> = reference.iter().map(|(_, weights)| weights).collect();
        let unworn = if read.is_empty() {
            view.nominal(feature.kind)
        } else {
            Some(Weights::mean(&read))
        };
        let mut unread_here = missing.clone();
        if unworn.is_none() {
            unread_here.extend(feature.square_pair(Level::Reference));
        }
        let wear_of = |worn: &Weights| Some(worn - unworn.as_ref()?);
        let wear = largest.as_ref().and_then(wear_of);
        let among: Vec<_> = worn.iter().filter_map(|(_, worn)| wear_of(worn)).collect();
        let key = FindingKey::new(feature, Quantity::Wear, Which::Largest);
        findings.push(view.finding_among(key, wear.as_ref(), &among, unread_here));
    }
    match kind {
        Kind::Bore
        | Kind::MainJournal
        | Kind::RodJournal
        | Kind::Pin
        | Kind::PinBore
        | Kind::SmallEnd => shape::assess(view, feature, &worn, &asked, &missing, findings),
        Kind::MainHousing | Kind::BigEnd => {
            housing::assess(view, feature, &worn, &asked, &missing, findings);
        }
        _ => amount::assess(view, feature, findings),
    }
}

/// Mean, smallest and largest size, as far as they say something of a kind: a
/// ring has no mean gap, and fitted shells are wider near the joint by
/// design. Of a flat face each line is told by itself.
fn sizes(
    view: &View<'_>,
    feature: Feature,
    worn: &[(Station, Weights)],
    missing: &[Station],
    findings: &mut Vec<Finding>,
) {
    let kind = feature.kind;
    let all: Vec<_> = worn.iter().map(|(_, weights)| weights.clone()).collect();
    let fitted = matches!(kind, Kind::MainFitted | Kind::RodFitted);
    let counts = |(station, _): &&(Station, Weights)| !fitted || station.direction == Direction::D0;
    let each: Vec<_> = worn.iter().filter(counts).map(|(_, w)| w).collect();
    let mean = (!each.is_empty()).then(|| Weights::mean(&each));
    let mut add = |which, weights: Option<Weights>, among: &[Weights]| {
        let key = FindingKey::new(feature, Quantity::Size, which);
        findings.push(view.finding_among(key, weights.as_ref(), among, missing.to_vec()));
    };
    let several = 1 < kind.levels().len();
    match kind {
        Kind::Deck | Kind::Head => return,
        _ if several && kind.is_amount() => {}
        _ => add(Which::Mean, mean, &[]),
    }
    if several && !fitted {
        add(Which::Smallest, extreme(view, worn, |a, b| a < b), &all);
        add(Which::Largest, extreme(view, worn, |a, b| b < a), &all);
    }
}

/// The station value that no other precedes.
pub(super) fn extreme(
    view: &View<'_>,
    stations: &[(Station, Weights)],
    precedes: fn(Exact, Exact) -> bool,
) -> Option<Weights> {
    let mut best: Option<(Exact, &Weights)> = None;
    for (_, weights) in stations {
        let value = view.value(weights)?;
        if best.is_none_or(|(best, _)| precedes(value, best)) {
            best = Some((value, weights));
        }
    }
    best.map(|(_, weights)| weights.clone())
}
