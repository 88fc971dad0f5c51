//! The shape of the bores that hold shells, cap torqued, without shells.

use super::shape;
use super::view::View;
use super::{Finding, FindingKey, Settle, Which};
use crate::quantity::Weights;
use crate::session::{Direction, Feature, Quantity, Station};
use crate::verdict::Verdict;

/// The directions near the joint, on either side.
const NEAR: [Direction; 2] = [Direction::D60, Direction::D120];

/// Adds the out-of-round of a housing: at each level the diameter square to
/// the joint less each of the two near it, so that a stretched one is above
/// zero, and the worst; and its taper square to the joint, where the shells
/// are loaded.
pub(super) fn assess(
    view: &View<'_>,
    feature: Feature,
    worn: &[(Station, Weights)],
    asked: &[Station],
    missing: &[Station],
    findings: &mut Vec<Finding>,
) {
    let read = |station: Station| worn.iter().find(|(at, _)| *at == station);
    let mut each = Vec::new();
    let mut pairs = Vec::new();
    // Places without which an oval can hide between those that were read.
    let mut unseen = Vec::new();
    for level in feature.kind.levels() {
        let square = feature.station(*level, Direction::D0);
        let mut seen = 0;
        let mut unread = Vec::new();
        for direction in NEAR {
            let near = square.facing(direction);
            let key = FindingKey::new(feature, Quantity::OutOfRound, Which::At(*level, direction));
            match (read(square), read(near)) {
                (Some((_, long)), Some((_, short))) => {
                    let weights = long - short;
                    each.push(view.finding(key, Some(&weights), Vec::new()));
                    pairs.push(weights);
                    seen += 1;
                }
                _ if asked.contains(&near) => {
                    let mut lacking = vec![square, near];
                    lacking.retain(|station| read(*station).is_none());
                    each.push(view.finding(key, None, lacking));
                    unread.push(near);
                }
                _ => unread.push(near),
            }
        }
        if 0 < seen {
            unseen.append(&mut unread);
        }
    }
    shape::conclude(view, feature, Quantity::OutOfRound, each, &pairs, findings);
    let largest = findings.last_mut().and_then(|last| last.sure.as_mut());
    if let Some(sure) = largest
        && !unseen.is_empty()
        && matches!(
            sure.verdict,
            Verdict::WithinNew | Verdict::WithinService | Verdict::TooClose
        )
    {
        sure.verdict = Verdict::NotSeen;
        sure.conformity = None;
        let once = unseen.into_iter().map(|station| (station, 1));
        sure.settle = Some(Settle::Read(once.collect(), false));
    }
    let square = worn
        .iter()
        .filter(|(station, _)| station.direction == Direction::D0);
    let square = square.map(|(station, weights)| View::spot(*station, weights.clone()));
    let square: Vec<_> = square.collect();
    shape::taper(view, feature, &square, missing, findings);
}
