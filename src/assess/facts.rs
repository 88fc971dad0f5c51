//! What the readings say of the facts by which causes stand or fall.

use super::{Assessment, Finding, FindingKey, Outcome, Which};
use crate::quantity::Exact;
use crate::remedy::{Fact, Known, Number, Spot, Subject};
use crate::session::{Kind, Quantity, Session};
use crate::verdict::{Band, Comparison, Decision, Verdict};

/// Which way a value is off.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Side {
    Above,
    Below,
    Either,
}

/// The facts a quantity of a kind can prove, and of what they are told.
const fn told_by(kind: Kind, quantity: Quantity) -> (Subject, &'static [(Fact, Side)]) {
    use Kind::{
        BigEnd, Bore, EndPlay, MainHousing, MainJournal, MainShell, PinBore, Piston, RodJournal,
        RodShell, RunOut, SecondRingGap, SecondRingSide, SmallEnd, TopRingGap, TopRingSide,
    };
    use Side::{Above, Below, Either};
    const SHAPE: &[(Fact, Side)] = &[(Fact::JournalTapered, Either)];
    const BARREL: &[(Fact, Side)] = &[
        (Fact::JournalBarrel, Above),
        (Fact::JournalHourGlass, Below),
    ];
    const HOUSING: &[(Fact, Side)] = &[
        (Fact::HousingTooLarge, Above),
        (Fact::HousingTooSmall, Below),
    ];
    const OIL: &[(Fact, Side)] = &[
        (Fact::OilClearanceLarge, Above),
        (Fact::OilClearanceSmall, Below),
    ];
    const WALL: &[(Fact, Side)] = &[
        (Fact::WallClearanceLarge, Above),
        (Fact::WallClearanceSmall, Below),
    ];
    const PIN: &[(Fact, Side)] = &[
        (Fact::PinClearanceLarge, Above),
        (Fact::PinClearanceSmall, Below),
    ];
    const GAP: &[(Fact, Side)] = &[(Fact::RingGapLarge, Above), (Fact::RingGapSmall, Below)];
    match (kind, quantity) {
        (Bore, Quantity::OutOfRound) => (Subject::Bore, &[(Fact::BoreOutOfRound, Either)]),
        (Bore, Quantity::Taper) => (Subject::Bore, &[(Fact::BoreTapered, Either)]),
        (Piston, Quantity::Size) => (Subject::Piston, &[(Fact::PistonCollapsed, Below)]),
        (Piston, Quantity::Clearance) => (Subject::Piston, WALL),
        (PinBore | SmallEnd, Quantity::Clearance) => (Subject::Piston, PIN),
        (TopRingGap | SecondRingGap, Quantity::Size) => (Subject::Piston, GAP),
        (TopRingSide | SecondRingSide, Quantity::Size) => {
            (Subject::Piston, &[(Fact::GrooveWorn, Above)])
        }
        (MainJournal, Quantity::Taper) => (Subject::MainJournal, SHAPE),
        (RodJournal, Quantity::Taper) => (Subject::RodJournal, SHAPE),
        (MainJournal, Quantity::Barrel) => (Subject::MainJournal, BARREL),
        (RodJournal, Quantity::Barrel) => (Subject::RodJournal, BARREL),
        (MainHousing, Quantity::Size) => (Subject::MainShell, HOUSING),
        (BigEnd, Quantity::Size) => (Subject::RodShell, HOUSING),
        (MainHousing, Quantity::OutOfRound) => {
            (Subject::MainShell, &[(Fact::HousingOutOfRound, Either)])
        }
        (BigEnd, Quantity::OutOfRound) => (Subject::RodShell, &[(Fact::HousingOutOfRound, Either)]),
        (MainHousing, Quantity::Taper) => (Subject::MainShell, &[(Fact::HousingTapered, Either)]),
        (BigEnd, Quantity::Taper) => (Subject::RodShell, &[(Fact::HousingTapered, Either)]),
        (MainShell, Quantity::Clearance) => (Subject::MainShell, OIL),
        (RodShell, Quantity::Clearance) => (Subject::RodShell, OIL),
        (EndPlay, Quantity::Size) => (Subject::Engine, &[(Fact::EndPlayLarge, Above)]),
        (RunOut, Quantity::Size) => (Subject::MainJournal, &[(Fact::CrankBent, Above)]),
        _ => (Subject::Engine, &[]),
    }
}

/// Every fact that the findings bear on, with what they prove of it. A rod
/// journal tells of each cylinder whose rod runs on it.
#[must_use]
pub fn facts(session: &Session, assessment: &Assessment) -> Vec<Number> {
    let mut numbers = Vec::new();
    for finding in assessment.findings.iter().filter(|f| f.key.which.decides()) {
        let FindingKey {
            feature, quantity, ..
        } = finding.key;
        let (subject, facts) = told_by(feature.kind, quantity);
        // The oval fitted to all directions says more than the largest pair.
        if facts.is_empty() || is_outdone(assessment, finding) {
            continue;
        }
        let proof = proof(assessment, finding);
        let positions = match subject {
            Subject::RodJournal => session.cylinders_on(feature.position),
            _ => vec![feature.position],
        };
        for position in positions {
            let spot = Spot { subject, position };
            for (fact, side) in facts {
                let number = Number {
                    spot,
                    fact: *fact,
                    known: known(proof, *side),
                };
                // Several values of one feature may say the same.
                if !numbers.contains(&number) {
                    numbers.push(number);
                }
            }
        }
    }
    numbers
}

fn is_outdone(assessment: &Assessment, finding: &Finding) -> bool {
    let fitted = FindingKey {
        which: Which::Fitted,
        ..finding.key
    };
    let fitted = assessment.get(fitted);
    finding.key.which == Which::Largest && fitted.is_some_and(|f| f.decided().is_some())
}

/// What is proved: in, or out and by how much; `None` while that is open.
fn proof(assessment: &Assessment, finding: &Finding) -> Option<Result<(), Exact>> {
    if finding.key.quantity == Quantity::Barrel {
        return barrel(assessment, finding);
    }
    let Outcome::Value { comparison, .. } = &finding.outcome else {
        return None;
    };
    match (finding.decided()?, comparison) {
        (Verdict::WithinNew | Verdict::WithinService, _) => Some(Ok(())),
        (
            Verdict::BeyondLimit | Verdict::OutsideNew,
            Comparison::BeyondLimit(by) | Comparison::OutsideNew(by),
        ) => Some(Err(*by)),
        _ => None,
    }
}

/// A barrel is judged as taper is, where the manual limits that.
fn barrel(assessment: &Assessment, finding: &Finding) -> Option<Result<(), Exact>> {
    let taper = FindingKey::new(finding.key.feature, Quantity::Taper, Which::Largest);
    let limits = &assessment.get(taper)?.limits.limits;
    let limit = limits.service.high.or(limits.new.high);
    let sure = finding.sure.as_ref()?;
    let value = sure.measured.value();
    match Band::either_way(limit).decide(value, sure.guard)? {
        Decision::In => Some(Ok(())),
        Decision::Out => Some(Err(value)),
        Decision::Open => None,
    }
}

fn known(proof: Option<Result<(), Exact>>, side: Side) -> Known {
    let is_below = |by: Exact| by < Exact::ZERO;
    match (proof, side) {
        (None, _) => Known::Unknown,
        (Some(Err(_)), Side::Either) => Known::Proved,
        (Some(Err(by)), Side::Above) if !is_below(by) => Known::Proved,
        (Some(Err(by)), Side::Below) if is_below(by) => Known::Proved,
        (Some(_), _) => Known::Excluded,
    }
}
