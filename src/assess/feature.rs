//! Size, wear, out-of-round and taper of one feature.

use super::view::View;
use super::{Finding, FindingKey, Which};
use crate::form::{self, Spot};
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

    let largest = extreme(view, &worn, |a, b| b < a);
    sizes(view, feature, &worn, &missing, findings);
    if feature.kind == Kind::Bore {
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
        let wear = largest.zip(unworn).map(|(worn, unworn)| &worn - &unworn);
        let key = key(feature, Quantity::Wear, Which::Largest);
        findings.push(view.finding(key, wear.as_ref(), unread_here));
    }
    if feature.kind != Kind::Piston {
        let spots: Vec<Spot> = worn
            .iter()
            .map(|(station, weights)| View::spot(*station, weights.clone()))
            .collect();
        out_of_round(view, feature, &spots, &asked, findings);
        taper(view, feature, &spots, &missing, findings);
    }
}

/// Mean, smallest and largest size; the pistons' one station gives the mean.
fn sizes(
    view: &View<'_>,
    feature: Feature,
    worn: &[(Station, Weights)],
    missing: &[Station],
    findings: &mut Vec<Finding>,
) {
    let all: Vec<_> = worn.iter().map(|(_, weights)| weights).collect();
    let mean = (!all.is_empty()).then(|| Weights::mean(&all));
    let mut add = |which, weights: Option<Weights>| {
        let key = key(feature, Quantity::Size, which);
        findings.push(view.finding(key, weights.as_ref(), missing.to_vec()));
    };
    add(Which::Mean, mean);
    if feature.kind != Kind::Piston {
        add(Which::Smallest, extreme(view, worn, |a, b| a < b));
        add(Which::Largest, extreme(view, worn, |a, b| b < a));
    }
}

/// Out-of-round at each level that is asked for or was read, then the
/// largest either way.
fn out_of_round(
    view: &View<'_>,
    feature: Feature,
    spots: &[Spot],
    asked: &[Station],
    findings: &mut Vec<Finding>,
) {
    let found = form::out_of_round(spots);
    let mut each = Vec::new();
    for (rank, level) in (0_u8..).zip(feature.kind.levels()) {
        let here = found.iter().filter(|o| o.along == rank);
        let mut any = false;
        for one in here {
            any = true;
            let direction = Direction::from_degrees(one.angle).unwrap_or(Direction::D0);
            let key = key(feature, Quantity::OutOfRound, Which::At(*level, direction));
            each.push(view.finding(key, Some(&one.weights), Vec::new()));
        }
        let of_level: Vec<_> = asked.iter().filter(|s| s.level == *level).collect();
        if let (false, Some(first)) = (any, of_level.first()) {
            let unread = of_level.iter().filter(|s| view.at(***s).is_none());
            let missing = unread.map(|s| **s).collect();
            let which = Which::At(*level, first.direction);
            each.push(view.finding(key(feature, Quantity::OutOfRound, which), None, missing));
        }
    }
    let weights: Vec<_> = found.into_iter().map(|o| o.weights).collect();
    conclude(
        view,
        feature,
        Quantity::OutOfRound,
        each,
        &weights,
        findings,
    );
}

/// Taper by direction or between the means of the ends, then the largest.
fn taper(
    view: &View<'_>,
    feature: Feature,
    spots: &[Spot],
    missing: &[Station],
    findings: &mut Vec<Finding>,
) {
    let (first, last) = match feature.kind {
        Kind::Bore => (Level::Top, Level::Bottom),
        _ => (Level::First, Level::Last),
    };
    let rank = |level| {
        let levels = feature.kind.levels().iter();
        (0_u8..).zip(levels).find(|(_, l)| **l == level)
    };
    let ranks = rank(first).zip(rank(last));
    let found = ranks.map_or_else(Vec::new, |((near, _), (far, _))| {
        form::taper(spots, near, far)
    });
    let each = found
        .iter()
        .map(|one| {
            let direction = one.angle.and_then(Direction::from_degrees);
            let key = key(feature, Quantity::Taper, Which::Along(direction));
            view.finding(key, Some(&one.weights), Vec::new())
        })
        .collect();
    let weights: Vec<_> = found.into_iter().map(|t| t.weights).collect();
    let start = findings.len();
    conclude(view, feature, Quantity::Taper, each, &weights, findings);
    if let (true, Some(largest)) = (weights.is_empty(), findings.get_mut(start)) {
        largest.missing = missing.to_vec();
    }
}

/// Adds the findings of a shape one by one and the largest of them.
fn conclude(
    view: &View<'_>,
    feature: Feature,
    quantity: Quantity,
    each: Vec<Finding>,
    weights: &[Weights],
    findings: &mut Vec<Finding>,
) {
    let missing = each.iter().flat_map(|f| f.missing.clone()).collect();
    let size = |w: &&Weights| view.value(w).map(Exact::abs);
    // The first of equals, so that the answer does not hang on the order.
    let largest = weights.iter().rev().max_by_key(size);
    let key = key(feature, quantity, Which::Largest);
    let largest = view.finding(key, largest, missing);
    findings.extend(each);
    findings.push(largest);
}

/// The station value that no other precedes.
fn extreme(
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

const fn key(feature: Feature, quantity: Quantity, which: Which) -> FindingKey {
    FindingKey {
        feature,
        quantity,
        which,
    }
}
