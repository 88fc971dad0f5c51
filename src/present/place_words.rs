//! Words of kinds, stations and where a gauge goes.

use super::wording::feature;
use crate::session::{Direction, Feature, Kind, Level, Part, Station};

/// A kind, one of it.
#[must_use]
pub const fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Bore => "Bore",
        Kind::Piston => "Piston",
        Kind::MainJournal => "Main journal",
        Kind::RodJournal => "Rod journal",
        Kind::EndPlay => "Crank end play",
        Kind::RodSide => "Rod side clearance",
        Kind::MainHousing => "Main housing bore",
        Kind::MainShell => "Main shells",
        Kind::MainFitted => "Fitted main shells",
        Kind::MainStrip => "Main strip",
        Kind::BigEnd => "Big-end bore",
        Kind::RodShell => "Rod shells",
        Kind::RodFitted => "Fitted rod shells",
        Kind::RodStrip => "Rod strip",
        Kind::RunOut => "Run-out, main",
        Kind::Pin => "Piston pin",
        Kind::PinBore => "Pin bore, piston",
        Kind::SmallEnd => "Small end",
        Kind::TopRingGap => "Top ring gap",
        Kind::SecondRingGap => "Second ring gap",
        Kind::TopRingSide => "Top ring side clearance",
        Kind::SecondRingSide => "Second ring side clearance",
        Kind::Deck => "Deck",
        Kind::Head => "Head face",
        Kind::BoreScore => "Score in bore",
        Kind::MainScore => "Score on main",
        Kind::RodScore => "Score on rod journal",
    }
}

/// A kind, all of it.
#[must_use]
pub const fn kind_plural(kind: Kind) -> &'static str {
    match kind {
        Kind::Bore => "Bores",
        Kind::Piston => "Pistons",
        Kind::MainJournal => "Main journals",
        Kind::RodJournal => "Rod journals",
        Kind::EndPlay => "Crank end play",
        Kind::RodSide => "Rod side clearances",
        Kind::MainHousing => "Main housing bores",
        Kind::MainShell => "Main shells",
        Kind::MainFitted => "Fitted main shells",
        Kind::MainStrip => "Main bearings by plastic strip",
        Kind::BigEnd => "Big-end bores",
        Kind::RodShell => "Rod shells",
        Kind::RodFitted => "Fitted rod shells",
        Kind::RodStrip => "Rod bearings by plastic strip",
        Kind::RunOut => "Crank run-out",
        Kind::Pin => "Piston pins",
        Kind::PinBore => "Pin bores",
        Kind::SmallEnd => "Small ends",
        Kind::TopRingGap => "Top ring gaps",
        Kind::SecondRingGap => "Second ring gaps",
        Kind::TopRingSide => "Top ring side clearances",
        Kind::SecondRingSide => "Second ring side clearances",
        Kind::Deck => "Deck flatness",
        Kind::Head => "Head flatness",
        Kind::BoreScore => "Scores in bores",
        Kind::MainScore => "Scores on main journals",
        Kind::RodScore => "Scores on rod journals",
    }
}

/// What is measured of a kind, one of it.
pub(super) const fn measured(kind: Kind) -> &'static str {
    match kind {
        Kind::MainShell | Kind::RodShell => "Wall of a shell",
        Kind::MainFitted | Kind::RodFitted => "Bore of fitted shells",
        Kind::PinBore => "Pin bore",
        Kind::MainStrip | Kind::RodStrip => "Oil clearance",
        Kind::RunOut => "Run-out",
        Kind::Deck | Kind::Head => "Gap under a straight edge",
        Kind::BoreScore | Kind::MainScore | Kind::RodScore => "Depth of a score",
        _ => self::kind(kind),
    }
}

/// A level, short.
#[must_use]
pub const fn level(level: Level) -> &'static str {
    match level {
        Level::Top => "top",
        Level::Middle => "middle",
        Level::Bottom => "bottom",
        Level::Reference => "unworn reference",
        Level::First => "first end",
        Level::Centre => "centre",
        Level::Last => "last end",
        Level::GaugePoint => "skirt",
        Level::InletEdge => "long edge, inlet side",
        Level::ExhaustEdge => "long edge, exhaust side",
        Level::FirstEdge => "across, first end",
        Level::LastEdge => "across, last end",
        Level::Diagonal => "diagonal from the inlet side at the first end",
        Level::OtherDiagonal => "the other diagonal",
    }
}

/// A direction on a kind, short. Clockwise is seen from the end called
/// first.
#[must_use]
pub const fn direction(kind: Kind, direction: Direction) -> &'static str {
    match (kind, direction) {
        (Kind::Bore, Direction::D0) => "thrust",
        (Kind::Bore, Direction::D90) => "along the crank",
        (Kind::Bore, Direction::D45) => "45° clockwise of thrust",
        (Kind::Bore, Direction::D135) => "45° anticlockwise of thrust",
        (Kind::Piston, Direction::D0) => "square to the pin",
        (Kind::Piston, Direction::D90) => "along the pin",
        (Kind::Piston, _) => "45° to the pin",
        (Kind::MainJournal, Direction::D0) => "in line with throw 1",
        (Kind::MainJournal, Direction::D90) => "across throw 1",
        (Kind::MainJournal, Direction::D45) => "45° clockwise of throw 1",
        (Kind::MainJournal, Direction::D135) => "45° anticlockwise of throw 1",
        (Kind::RodJournal, Direction::D0) => "in line with the throw",
        (Kind::RodJournal, Direction::D90) => "across the throw",
        (Kind::RodJournal, Direction::D45) => "45° clockwise of the throw",
        (Kind::RodJournal, Direction::D135) => "45° anticlockwise of the throw",
        (Kind::Pin | Kind::PinBore | Kind::SmallEnd, Direction::D90) => "across the rod",
        (Kind::Pin | Kind::PinBore | Kind::SmallEnd, _) => "in line with the rod",
        (_, Direction::D60) => "near the joint, clockwise",
        (_, Direction::D120) => "near the joint, anticlockwise",
        _ => "square to the joint",
    }
}

/// A station on its feature: part, level and direction, as far as they say
/// something.
#[must_use]
pub fn place(station: Station) -> String {
    let half = match station.part {
        Part::Upper => "upper, ",
        Part::Lower => "lower, ",
        Part::Whole | Part::Skirt => "",
    };
    let level = match (station.kind, station.level) {
        (Kind::MainShell | Kind::RodShell, Level::First) => "crown",
        (Kind::MainShell | Kind::RodShell, _) => "crown, last end",
        (_, level) => self::level(level),
    };
    if station.kind.is_amount() || !half.is_empty() {
        return match station.kind.levels() {
            [_] => where_to(station.kind).to_owned(),
            _ => format!("{half}{level}"),
        };
    }
    let direction = direction(station.kind, station.direction);
    format!("{level}, {direction}")
}

/// Where on a kind that is read at one place.
const fn where_to(kind: Kind) -> &'static str {
    match kind {
        Kind::EndPlay => "to and fro",
        Kind::RodSide => "beside the rod",
        Kind::RunOut => "full swing in one turn",
        Kind::MainStrip | Kind::RodStrip => "widest of the strip",
        Kind::TopRingSide | Kind::SecondRingSide => "in the groove",
        _ => "deepest",
    }
}

/// A station in full.
#[must_use]
pub fn station(station: Station) -> String {
    format!("{}, {}", feature(Feature::of(station)), place(station))
}

/// Where exactly the gauge goes at a level, as a sentence.
pub(super) const fn where_exactly(station: Station) -> &'static str {
    match station.kind {
        Kind::EndPlay => {
            "Caps torqued, before anything is taken off: lever the crank to and fro, read the \
             whole movement."
        }
        Kind::RodSide => {
            "Before the rods come off: feelers between cheek and rod; two rods on a throw \
             together."
        }
        Kind::MainHousing | Kind::BigEnd => {
            "No shells, cap the right way round, bolts oiled and torqued."
        }
        Kind::MainShell | Kind::RodShell => {
            "Wall at the crown, 90° from the joint, with a ball on the anvil."
        }
        Kind::MainFitted | Kind::RodFitted => {
            "Shells in, cap torqued; square to the joint, never near it."
        }
        Kind::MainStrip | Kind::RodStrip => {
            "Strip along the journal at the crown, cap torqued, nothing turned: read the widest."
        }
        Kind::RunOut => {
            "End mains on V-blocks, indicator on this journal, one slow turn; note the hour of \
             the high spot."
        }
        Kind::Pin | Kind::PinBore | Kind::SmallEnd => "Clear of the edge and of any oil hole.",
        Kind::TopRingGap | Kind::SecondRingGap => match station.level {
            Level::Top => "Ring pushed square with a piston, just below the ridge.",
            _ => "Ring pushed square with a piston, at the lowest point of ring travel.",
        },
        Kind::TopRingSide | Kind::SecondRingSide => {
            "A new ring, feeler between it and the lower land, all round: the widest."
        }
        Kind::Deck | Kind::Head => {
            "Scrubbed clean, straight edge along this line: the thickest feeler that enters."
        }
        Kind::BoreScore | Kind::MainScore | Kind::RodScore => {
            "The deepest score or pit that a nail catches, below the worn surface."
        }
        Kind::Bore | Kind::Piston | Kind::MainJournal | Kind::RodJournal => of_round(station.level),
    }
}

const fn of_round(level: Level) -> &'static str {
    match level {
        Level::Top => "Just below the highest point the top ring reaches, not on the ridge.",
        Level::Middle => "Midway between the top and the bottom of ring travel.",
        Level::Bottom => "Just above the lowest point of ring travel.",
        Level::Reference => "Below ring travel or above the ridge, where nothing has worn.",
        Level::First => "About 6 mm (1/4 in) from the fillet on the first end's side.",
        Level::Centre => "In the middle of the journal, clear of the oil hole.",
        Level::Last => "About 6 mm (1/4 in) from the fillet on the last end's side.",
        _ => {
            "At the height on the skirt the piston's maker states; otherwise its largest diameter."
        }
    }
}
