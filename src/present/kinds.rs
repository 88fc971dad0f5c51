//! What to measure: the kinds of features as the trade goes through them, and
//! why each is worth it.

use super::wording;
use crate::session::{Kind, Session};

/// Kinds that are measured together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KindGroup {
    /// When, or at what.
    pub title: &'static str,
    /// The kinds.
    pub rows: Vec<KindRow>,
}

/// One kind.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KindRow {
    /// The kind.
    pub kind: Kind,
    /// Its name.
    pub title: &'static str,
    /// Why it is measured, in one sentence.
    pub why: &'static str,
    /// How many readings stand: they stay, whether it is asked for or not.
    pub read: usize,
}

/// The groups, in the order of the work.
const GROUPS: [(&str, &[Kind]); 8] = [
    ("Before it comes apart", &[Kind::EndPlay, Kind::RodSide]),
    ("Bores and pistons", &[Kind::Bore, Kind::Piston]),
    (
        "Crankshaft",
        &[Kind::MainJournal, Kind::RodJournal, Kind::RunOut],
    ),
    (
        "Bearings",
        &[
            Kind::MainHousing,
            Kind::MainShell,
            Kind::MainFitted,
            Kind::MainStrip,
            Kind::BigEnd,
            Kind::RodShell,
            Kind::RodFitted,
            Kind::RodStrip,
        ],
    ),
    ("Pins", &[Kind::Pin, Kind::PinBore, Kind::SmallEnd]),
    (
        "Rings",
        &[
            Kind::TopRingGap,
            Kind::SecondRingGap,
            Kind::TopRingSide,
            Kind::SecondRingSide,
        ],
    ),
    ("Flat faces", &[Kind::Deck, Kind::Head]),
    (
        "Scores and pits",
        &[Kind::BoreScore, Kind::MainScore, Kind::RodScore],
    ),
];

/// What can be measured.
#[must_use]
pub fn kinds(session: &Session) -> Vec<KindGroup> {
    let row = |kind: &Kind| KindRow {
        kind: *kind,
        title: wording::kind_plural(*kind),
        why: why(*kind),
        read: session
            .standing()
            .filter(|(_, reading)| reading.station.kind == *kind)
            .count(),
    };
    let group = |(title, kinds): (&'static str, &[Kind])| KindGroup {
        title,
        rows: kinds.iter().map(row).collect(),
    };
    GROUPS.map(group).into()
}

/// So many are named one by one.
const NAMED: usize = 6;

/// What is asked for, by name unless that is much.
#[must_use]
pub fn asked(session: &Session) -> String {
    let asked = Kind::ALL.into_iter().filter(|kind| session.is_asked(*kind));
    let names: Vec<_> = asked.map(wording::kind_plural).collect();
    match names.len() {
        0 => "Nothing is asked for.".to_owned(),
        1..=NAMED => format!("{}.", names.join(", ")),
        many => format!("{many} of {} kinds.", Kind::ALL.len()),
    }
}

const fn why(kind: Kind) -> &'static str {
    match kind {
        Kind::EndPlay => "Wear of the thrust faces. It is lost with the first cap.",
        Kind::RodSide => "Wear beside the rods. It is lost when they come off.",
        Kind::Bore => "Whether they can be used again, or bored, and to what.",
        Kind::Piston => "Whether they can be used again, and in which bore.",
        Kind::MainJournal => "Whether the crank can be used again, or ground, and to what.",
        Kind::RodJournal => "The same of the journals on the throws.",
        Kind::RunOut => "Whether the crank is bent, and which way.",
        Kind::MainHousing => "Whether a cap has stretched, or was changed about or turned.",
        Kind::MainShell => "With housing and journal they give the oil clearance.",
        Kind::MainFitted => "The surest way to the oil clearance.",
        Kind::MainStrip => "The oil clearance without a bore gauge; two ways should agree.",
        Kind::BigEnd => "Whether a rod has stretched or was pinched.",
        Kind::RodShell => "With big end and journal they give the oil clearance.",
        Kind::RodFitted => "The surest way to the oil clearance of the rods.",
        Kind::RodStrip => "The oil clearance of the rods without a bore gauge.",
        Kind::Pin => "Wear where rod and piston swing on it.",
        Kind::PinBore => "The play of the pin in the piston.",
        Kind::SmallEnd => "The play of the pin in the rod, or how tight it is pressed.",
        Kind::TopRingGap => "Whether the ends can meet when it is hot.",
        Kind::SecondRingGap => "The same of the second ring.",
        Kind::TopRingSide => "How far the groove has worn: with a new ring.",
        Kind::SecondRingSide => "The same of the second groove.",
        Kind::Deck => "Whether a gasket will seal on the block.",
        Kind::Head => "Whether a gasket will seal on the head.",
        Kind::BoreScore => "A deep score decides the next size more than wear does.",
        Kind::MainScore => "A groove that a nail catches decides the undersize.",
        Kind::RodScore => "The same of the journals on the throws.",
    }
}
