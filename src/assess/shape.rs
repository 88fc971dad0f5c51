//! Out-of-round, oval, taper and barrel of one feature.

use super::ovals::Seen;
use super::view::{View, rank};
use super::{Detail, Finding, FindingKey, Which};
use crate::form::{self, OvalShape, Spot};
use crate::quantity::{Exact, Weights, round_half_even};
use crate::session::{Direction, Feature, Kind, Level, Quantity, Station};

/// Adds what the worn stations of a bore, a journal or a pin say of its
/// shape.
pub(super) fn assess(
    view: &View<'_>,
    feature: Feature,
    worn: &[(Station, Weights)],
    asked: &[Station],
    missing: &[Station],
    findings: &mut Vec<Finding>,
) {
    let spots: Vec<Spot> = worn
        .iter()
        .map(|(station, weights)| View::spot(*station, weights.clone()))
        .collect();
    out_of_round(view, feature, &spots, asked, findings);
    taper(view, feature, &spots, missing, findings);
    findings.extend(barrel(view, feature, &spots, asked, missing));
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
    if found.is_empty() && asked.iter().all(|s| s.direction == Direction::D0) {
        return;
    }
    let seen = Seen::of(view, feature, &found);
    let mut each = Vec::new();
    for (rank, level) in (0_u8..).zip(feature.kind.levels()) {
        let here = found.iter().filter(|o| o.along == rank);
        let mut any = false;
        for one in here {
            any = true;
            let direction = Direction::from_degrees(one.angle).unwrap_or(Direction::D0);
            let key = FindingKey::new(feature, Quantity::OutOfRound, Which::At(*level, direction));
            each.push(view.finding(key, Some(&one.weights), Vec::new()));
        }
        let of_level: Vec<_> = asked.iter().filter(|s| s.level == *level).collect();
        if let (false, Some(first)) = (any, of_level.first()) {
            let unread = of_level.iter().filter(|s| view.at(***s).is_none());
            let missing = unread.map(|s| **s).collect();
            let which = Which::At(*level, first.direction);
            each.push(view.finding(
                FindingKey::new(feature, Quantity::OutOfRound, which),
                None,
                missing,
            ));
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
    let largest = findings
        .last_mut()
        .and_then(|largest| largest.sure.as_mut());
    if let Some(sure) = largest {
        seen.judge(feature, sure);
    }
    findings.extend(oval(view, feature, spots, &seen));
}

/// The oval fitted to all directions, where both square pairs are known.
///
/// A journal is taken to be one oval all along, as its staggered directions
/// need; a bore wears oval at the top, so there each level has its own, and
/// the largest is told.
fn oval(view: &View<'_>, feature: Feature, spots: &[Spot], seen: &Seen<'_>) -> Option<Finding> {
    let levels = feature.kind.levels().iter();
    let fits: Vec<(Option<Level>, Vec<Spot>)> = if feature.kind == Kind::Bore {
        let here = |level| {
            let along = rank(feature.kind, level);
            let here = spots.iter().filter(|spot| spot.place.along == along);
            here.cloned().collect()
        };
        levels.map(|level| (Some(*level), here(*level))).collect()
    } else {
        vec![(None, spots.to_vec())]
    };
    let fits = fits.into_iter().filter_map(|(level, spots)| {
        let pairs = form::out_of_round(&spots);
        let has = |angle| pairs.iter().any(|pair| pair.angle == angle);
        let oval = form::oval(&spots).filter(|_| has(0) && has(45))?;
        let finer = |part: Exact| Exact::new(part.numerator() * FINER, part.denominator());
        let parts = (view.value(&oval.cosine)?, view.value(&oval.sine)?);
        let shape = OvalShape::of(finer(parts.0), finer(parts.1))?;
        Some((shape, level, spots))
    });
    let larger = |a: Fit, b: Fit| if a.0.size < b.0.size { b } else { a };
    let (shape, level, spots) = fits.reduce(larger)?;
    let axis = shape.axis_ten_thousandths.map(|axis| {
        let degrees = round_half_even(axis.into(), 10_000) % 180;
        u16::try_from(degrees).unwrap_or_default()
    });
    let key = FindingKey::new(feature, Quantity::OutOfRound, Which::Fitted);
    let all = form::mean_size(&spots);
    let size = Exact::new(shape.size.quanta().into(), FINER);
    let mut finding = view.finding_of(key, Some(size), all.as_ref(), Vec::new());
    // The budget of an oval is that of the square pair that reads most.
    let pairs = form::out_of_round(&spots);
    let pair = pairs
        .iter()
        .max_by_key(|pair| view.value(&pair.weights).map(Exact::abs));
    let sure = pair.and_then(|pair| view.sure(key, &pair.weights, &[], &finding.limits));
    finding.sure = sure.map(|sure| Box::new(seen.fitted(feature, sure, size)));
    finding.detail = Some(Detail::Oval {
        axis,
        exact: shape.exact,
        level,
    });
    Some(finding)
}

/// The root in the size of an oval is found to so small a part of a quantum
/// that a rounded one does not look whole in the decimals that are shown.
const FINER: i128 = 1_000;

/// A fitted oval, the level it lies at, and what it was fitted to.
type Fit = (OvalShape, Option<Level>, Vec<Spot>);

/// Taper by direction or between the means of the ends, then the largest.
pub(super) fn taper(
    view: &View<'_>,
    feature: Feature,
    spots: &[Spot],
    missing: &[Station],
    findings: &mut Vec<Finding>,
) {
    let [first, .., last] = ends(feature.kind);
    let found = form::taper(spots, first, last);
    let each = found
        .iter()
        .map(|one| {
            let direction = one.angle.and_then(Direction::from_degrees);
            let key = FindingKey::new(feature, Quantity::Taper, Which::Along(direction));
            view.finding(key, Some(&one.weights), Vec::new())
        })
        .collect();
    let weights: Vec<_> = found.into_iter().map(|t| t.weights).collect();
    conclude(view, feature, Quantity::Taper, each, &weights, findings);
    if let Some(largest) = findings.last_mut() {
        if weights.is_empty() {
            largest.missing = missing.to_vec();
        } else if feature.kind == Kind::Bore {
            // A ring goes all round, so it sees the mean of the directions.
            let mean = Weights::mean(&weights.iter().collect::<Vec<_>>());
            let change = view.value(&mean).map(form::ring_gap_change);
            largest.detail = change.map(Detail::RingGap);
        }
    }
}

/// The barrel of a journal, where its centre is asked for or was read.
fn barrel(
    view: &View<'_>,
    feature: Feature,
    spots: &[Spot],
    asked: &[Station],
    missing: &[Station],
) -> Option<Finding> {
    let [first, centre, last] = ends(feature.kind);
    let is_asked = asked.iter().any(|station| station.level == Level::Centre);
    let is_read = spots.iter().any(|spot| spot.place.along == centre);
    if feature.kind == Kind::Bore || !is_asked && !is_read {
        return None;
    }
    let weights = form::barrel(spots, first, centre, last).map(|barrel| barrel.weights);
    let mut unread = missing.to_vec();
    if unread.is_empty() {
        let pair = feature.square_pair(Level::Centre).into_iter();
        unread.extend(pair.filter(|station| view.at(*station).is_none()));
    }
    unread.retain(|_| weights.is_none());
    let key = FindingKey::new(feature, Quantity::Barrel, Which::Along(None));
    Some(view.finding(key, weights.as_ref(), unread))
}

/// The ranks of the first, the middle and the last level that wears.
fn ends(kind: Kind) -> [u8; 3] {
    let levels = match kind {
        Kind::Bore => [Level::Top, Level::Middle, Level::Bottom],
        _ => [Level::First, Level::Centre, Level::Last],
    };
    levels.map(|level| rank(kind, level))
}

/// Adds the findings of a shape one by one and the largest of them.
pub(super) fn conclude(
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
    let key = FindingKey::new(feature, quantity, Which::Largest);
    let largest = view.finding_among(key, largest, weights, missing);
    findings.extend(each);
    findings.push(largest);
}
