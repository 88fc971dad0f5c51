//! What is read as an amount, not as a size: swings, gaps, flatness.

use super::view::{View, rank};
use super::{Cause, Detail, Finding, FindingKey, Which};
use crate::form;
use crate::quantity::{Exact, Weights};
use crate::session::{Direction, Feature, Kind, Level, Quantity, Station};
use crate::uncertainty::{Measured, quanta};

/// Adds what an amount says beyond itself.
pub(super) fn assess(view: &View<'_>, feature: Feature, findings: &mut Vec<Finding>) {
    match feature.kind {
        Kind::RunOut => run_out(view, feature, findings),
        Kind::TopRingGap | Kind::SecondRingGap => taper(view, feature, findings),
        Kind::Deck | Kind::Head => flatness(view, feature, findings),
        _ => {}
    }
}

/// What was read at a level of an amount.
fn at(view: &View<'_>, feature: Feature, level: Level) -> Option<Weights> {
    view.at(feature.station(level, Direction::D0))
}

/// Those of these levels that were not read.
fn unread(view: &View<'_>, feature: Feature, levels: &[Level]) -> Vec<Station> {
    let stations = levels.iter().map(|l| feature.station(*l, Direction::D0));
    stations
        .filter(|station| view.at(*station).is_none())
        .collect()
}

/// How far a main journal is off the axis it was turned on, and off the one
/// before it.
fn run_out(view: &View<'_>, main: Feature, findings: &mut Vec<Finding>) {
    let swing = at(view, main, Level::Centre);
    let bend = swing.as_ref().and_then(form::bend);
    let missing = unread(view, main, &[Level::Centre]);
    let key = FindingKey::new(main, Quantity::Bend, Which::Largest);
    findings.push(view.finding(key, bend.as_ref(), missing.clone()));
    if 1 < main.position {
        findings.push(alignment(view, main, swing.as_ref(), missing));
    }
}

/// How far the axis of a main journal is off that of the one before it. It
/// takes the hour of both high spots, unless one of them does not swing.
fn alignment(
    view: &View<'_>,
    main: Feature,
    swing: Option<&Weights>,
    mut missing: Vec<Station>,
) -> Finding {
    let before = Feature {
        position: main.position.saturating_sub(1),
        ..main
    };
    missing.extend(unread(view, before, &[Level::Centre]));
    let key = FindingKey::new(main, Quantity::Alignment, Which::Largest);
    let known = || {
        let (one, other) = (at(view, before, Level::Centre)?, swing?);
        let (first, second) = (view.value(&one)?, view.value(other)?);
        let lesser = first.min(second);
        let spot = |of: Feature| view.session.high_spot(of.position);
        let hours = match (spot(before), spot(main)) {
            (Some(from), Some(to)) => from.abs_diff(to),
            _ if lesser == Exact::ZERO => 0,
            _ => return None,
        };
        let apart = form::axes_apart(first, second, hours)?;
        Some((&one - other, apart, lesser))
    };
    let Some((swings, apart, lesser)) = known() else {
        return view.finding(key, None, missing);
    };
    let mut finding = view.finding_of(key, Some(apart.distance), Some(&swings), missing);
    // No swing moves the distance by more than half of itself, and no angle
    // by more than the lesser half swing times it: the slopes are taken so,
    // as they have a corner where the two axes meet.
    let half = |weights| Measured::weighted(weights, &view.measured).map(|m| m.scaled(1, 2));
    let turned = view
        .doubts
        .draw(Cause::HighSpot, usize::from(main.position));
    if let (Some(swings), Some(turned)) = (half(&swings), turned) {
        let lever = Exact::new(lesser.numerator(), 2 * lesser.denominator());
        let angle = Measured::new(Exact::ZERO, &[(turned, quanta(lever))]);
        let measured = Measured::linearised(apart.distance, &[(1.0, &swings), (1.0, &angle)]);
        let sure = view.sure_of(key, measured, &[], &finding.limits);
        finding.sure = sure.map(Box::new);
    }
    finding.detail = Some(Detail::Root(apart.exact));
    finding
}

/// The taper of a bore by the gaps of one ring in it, held against what the
/// bore gauge says.
fn taper(view: &View<'_>, ring: Feature, findings: &mut Vec<Finding>) {
    let levels = [Level::Top, Level::Bottom];
    let [top, bottom] = levels.map(|level| at(view, ring, level));
    let is_asked = ring.stations(view.session.route()).len() == levels.len();
    let by_gaps = top.zip(bottom);
    let by_gaps = by_gaps.and_then(|(top, bottom)| form::taper_by_gaps(&top, &bottom));
    if by_gaps.is_none() && !is_asked {
        return;
    }
    let key = FindingKey::new(ring, Quantity::Taper, Which::Along(None));
    let mut finding = view.finding(key, by_gaps.as_ref(), unread(view, ring, &levels));
    let bore = Feature {
        kind: Kind::Bore,
        ..ring
    };
    let spots = view.stations_of(bore);
    let spots: Vec<_> = spots.map(|(at, weights)| View::spot(at, weights)).collect();
    let along = |level| rank(Kind::Bore, level);
    let tapers = form::taper(&spots, along(Level::Top), along(Level::Bottom));
    let tapers: Vec<_> = tapers.iter().map(|taper| &taper.weights).collect();
    if let (Some(by_gaps), false) = (by_gaps, tapers.is_empty()) {
        // A ring goes all round, so it sees the mean of the directions.
        let two = view.two_ways([&by_gaps, &Weights::mean(&tapers)], 1);
        finding.detail = two.map(Detail::TwoWays);
    }
    findings.push(finding);
}

/// A flat face: each line that was read, the worst, and its twist, by which
/// the two diagonals differ.
fn flatness(view: &View<'_>, face: Feature, findings: &mut Vec<Finding>) {
    let levels = face.kind.levels();
    let mut all = Vec::new();
    for level in levels {
        if let Some(line) = at(view, face, *level) {
            let which = Which::At(*level, Direction::D0);
            let key = FindingKey::new(face, Quantity::Size, which);
            findings.push(view.finding(key, Some(&line), Vec::new()));
            all.push(line);
        }
    }
    // The first of equals, so that the answer does not hang on the order.
    let worst = all.iter().rev().max_by_key(|line| view.value(line));
    let key = |quantity| FindingKey::new(face, quantity, Which::Largest);
    let missing = unread(view, face, levels);
    findings.push(view.finding_among(key(Quantity::Size), worst, &all, missing));
    let diagonals = [Level::Diagonal, Level::OtherDiagonal];
    let [one, other] = diagonals.map(|level| at(view, face, level));
    let twist = one.zip(other).map(|(one, other)| &one - &other);
    let missing = unread(view, face, &diagonals);
    findings.push(view.finding(key(Quantity::Twist), twist.as_ref(), missing));
}
