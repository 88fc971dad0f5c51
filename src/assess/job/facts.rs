//! What the readings say of the facts that decide about causes.

use super::decision;
use crate::assess::{Assessment, Finding};
use crate::remedy::{Fact, Known, Number, Spot, Subject};
use crate::session::{Kind, Quantity, Session};
use crate::verdict::{Decision, Verdict};

/// Which side of its limits a fact is about.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Side {
    Above,
    Below,
    Either,
}

use Side::{Above, Below, Either};

/// Each fact with the finding that tells it.
const FACTS: [(Fact, Kind, Quantity, Side, Subject); 26] = [
    (
        Fact::BoreOutOfRound,
        Kind::Bore,
        Quantity::OutOfRound,
        Either,
        Subject::Bore,
    ),
    (
        Fact::BoreTapered,
        Kind::Bore,
        Quantity::Taper,
        Either,
        Subject::Bore,
    ),
    (
        Fact::RingGapLarge,
        Kind::TopRingGap,
        Quantity::Size,
        Above,
        Subject::Piston,
    ),
    (
        Fact::RingGapSmall,
        Kind::TopRingGap,
        Quantity::Size,
        Below,
        Subject::Piston,
    ),
    (
        Fact::RingGapLarge,
        Kind::SecondRingGap,
        Quantity::Size,
        Above,
        Subject::Piston,
    ),
    (
        Fact::RingGapSmall,
        Kind::SecondRingGap,
        Quantity::Size,
        Below,
        Subject::Piston,
    ),
    (
        Fact::GrooveWorn,
        Kind::TopRingSide,
        Quantity::Size,
        Above,
        Subject::Piston,
    ),
    (
        Fact::GrooveWorn,
        Kind::SecondRingSide,
        Quantity::Size,
        Above,
        Subject::Piston,
    ),
    (
        Fact::WallClearanceLarge,
        Kind::Piston,
        Quantity::Clearance,
        Above,
        Subject::Piston,
    ),
    (
        Fact::WallClearanceSmall,
        Kind::Piston,
        Quantity::Clearance,
        Below,
        Subject::Piston,
    ),
    (
        Fact::PistonCollapsed,
        Kind::Piston,
        Quantity::Size,
        Below,
        Subject::Piston,
    ),
    (
        Fact::PinClearanceLarge,
        Kind::PinBore,
        Quantity::Clearance,
        Above,
        Subject::Piston,
    ),
    (
        Fact::PinClearanceSmall,
        Kind::PinBore,
        Quantity::Clearance,
        Below,
        Subject::Piston,
    ),
    (
        Fact::OilClearanceLarge,
        Kind::MainShell,
        Quantity::Clearance,
        Above,
        Subject::MainShell,
    ),
    (
        Fact::OilClearanceSmall,
        Kind::MainShell,
        Quantity::Clearance,
        Below,
        Subject::MainShell,
    ),
    (
        Fact::OilClearanceLarge,
        Kind::RodShell,
        Quantity::Clearance,
        Above,
        Subject::RodShell,
    ),
    (
        Fact::OilClearanceSmall,
        Kind::RodShell,
        Quantity::Clearance,
        Below,
        Subject::RodShell,
    ),
    (
        Fact::JournalTapered,
        Kind::MainJournal,
        Quantity::Taper,
        Either,
        Subject::MainJournal,
    ),
    (
        Fact::JournalTapered,
        Kind::RodJournal,
        Quantity::Taper,
        Either,
        Subject::RodJournal,
    ),
    (
        Fact::HousingTooLarge,
        Kind::MainHousing,
        Quantity::Size,
        Above,
        Subject::MainShell,
    ),
    (
        Fact::HousingTooSmall,
        Kind::MainHousing,
        Quantity::Size,
        Below,
        Subject::MainShell,
    ),
    (
        Fact::HousingOutOfRound,
        Kind::MainHousing,
        Quantity::OutOfRound,
        Either,
        Subject::MainShell,
    ),
    (
        Fact::HousingTooLarge,
        Kind::BigEnd,
        Quantity::Size,
        Above,
        Subject::RodShell,
    ),
    (
        Fact::HousingOutOfRound,
        Kind::BigEnd,
        Quantity::OutOfRound,
        Either,
        Subject::RodShell,
    ),
    (
        Fact::EndPlayLarge,
        Kind::EndPlay,
        Quantity::Size,
        Above,
        Subject::Block,
    ),
    (
        Fact::CrankBent,
        Kind::RunOut,
        Quantity::Size,
        Above,
        Subject::MainJournal,
    ),
];

/// What is known of every fact at every place there is.
pub(super) fn numbers(session: &Session, assessment: &Assessment) -> Vec<Number> {
    let mut numbers = Vec::new();
    for (fact, kind, quantity, side, subject) in FACTS {
        for feature in session.features_of(kind) {
            let of_it = |finding: &&Finding| {
                finding.key.quantity == quantity && finding.key.which.decides()
            };
            let findings = assessment.of(feature).filter(of_it);
            let known = findings.map(|finding| known(finding, side));
            let spot = Spot {
                subject,
                position: if subject == Subject::Block {
                    1
                } else {
                    feature.position
                },
            };
            numbers.push(Number {
                spot,
                fact,
                known: known
                    .max_by_key(|known| rank(*known))
                    .unwrap_or(Known::Unknown),
            });
        }
    }
    numbers
}

/// Proved goes before what is not known, and that before excluded.
const fn rank(known: Known) -> u8 {
    match known {
        Known::Proved => 2,
        Known::Unknown => 1,
        Known::Excluded => 0,
    }
}

fn known(finding: &Finding, side: Side) -> Known {
    let Some(verdict) = finding.decided() else {
        return Known::Unknown;
    };
    let middle = super::middle(&finding.limits.limits.service_or_new());
    let is_above = finding.value().is_some_and(|value| middle < value);
    let on_side = match side {
        Either => true,
        Above => is_above,
        Below => !is_above,
    };
    match decision(verdict) {
        _ if verdict == Verdict::NotSeen => Known::Unknown,
        Some(Decision::In) => Known::Excluded,
        Some(Decision::Out) if on_side => Known::Proved,
        Some(Decision::Out) => Known::Excluded,
        Some(Decision::Open) | None => Known::Unknown,
    }
}
