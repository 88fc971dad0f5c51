//! Places on features where a gauge goes.

use core::fmt;

use super::Kind;

/// The part of a feature a station is on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Part {
    /// The feature is one surface.
    Whole,
    /// The skirt of a piston.
    Skirt,
    /// The shell in the block or the rod.
    Upper,
    /// The shell in the cap.
    Lower,
}

/// The level of a station along its feature's axis.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Level {
    /// Bore: just below the highest point the top ring reaches.
    Top,
    /// Bore: midway between top and bottom.
    Middle,
    /// Bore: just above the lowest point of ring travel.
    Bottom,
    /// Bore: outside ring travel, unworn: nearly the original size.
    Reference,
    /// Journal: about 6 mm (1/4 in) from the fillet on the first end's side.
    First,
    /// Journal: centre.
    Centre,
    /// Journal: about 6 mm (1/4 in) from the fillet on the last end's side.
    Last,
    /// Piston: the height on the skirt its maker states.
    GaugePoint,
    /// Flat face: along the long edge, on the inlet's side.
    InletEdge,
    /// Flat face: along the other long edge.
    ExhaustEdge,
    /// Flat face: across, at the end called first.
    FirstEdge,
    /// Flat face: across, at the other end.
    LastEdge,
    /// Flat face: from the inlet's side at the first end to the other corner.
    Diagonal,
    /// Flat face: the other diagonal.
    OtherDiagonal,
}

/// The direction of a diameter, in degrees from the feature's reference:
/// bores and pistons from across the crank, rod journals from in line with
/// the throw, main journals from in line with the first throw, bores of
/// bearings from square to the joint of the cap, pins and their bores from
/// in line with the rod.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Direction {
    /// The reference direction.
    D0,
    /// 45° on.
    D45,
    /// 60° on: of a bearing's bore, near the joint of the cap.
    D60,
    /// Square to the reference.
    D90,
    /// 120° on: of a bearing's bore, near the joint on the other side.
    D120,
    /// 135° on.
    D135,
}

/// A place on a feature: the address of a reading, kept for ever. Labels
/// are derived from it; changing the layout does not change it.
///
/// ```
/// use fenderbench::session::{Direction, Kind, Level, Part, Station};
/// let station = Station {
///     kind: Kind::Bore, position: 3, part: Part::Whole,
///     level: Level::Top, direction: Direction::D0,
/// };
/// assert_eq!(station.to_string(), "bore/3/whole/top/0");
/// assert_eq!(Station::parse("bore/3/whole/top/0"), Some(station));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Station {
    /// Kind of feature.
    pub kind: Kind,
    /// Position, from 1 at the end of the engine that is called first.
    pub position: u8,
    /// Part of the feature.
    pub part: Part,
    /// Level along the axis.
    pub level: Level,
    /// Direction of the diameter.
    pub direction: Direction,
}

impl Part {
    const ALL: [Self; 4] = [Self::Whole, Self::Skirt, Self::Upper, Self::Lower];

    const fn key(self) -> &'static str {
        match self {
            Self::Whole => "whole",
            Self::Skirt => "skirt",
            Self::Upper => "upper",
            Self::Lower => "lower",
        }
    }
}

impl Level {
    const ALL: [Self; 14] = [
        Self::Top,
        Self::Middle,
        Self::Bottom,
        Self::Reference,
        Self::First,
        Self::Centre,
        Self::Last,
        Self::GaugePoint,
        Self::InletEdge,
        Self::ExhaustEdge,
        Self::FirstEdge,
        Self::LastEdge,
        Self::Diagonal,
        Self::OtherDiagonal,
    ];

    /// The word in files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Top => "top",
            Self::Middle => "middle",
            Self::Bottom => "bottom",
            Self::Reference => "reference",
            Self::First => "first",
            Self::Centre => "centre",
            Self::Last => "last",
            Self::GaugePoint => "gauge_point",
            Self::InletEdge => "inlet_edge",
            Self::ExhaustEdge => "exhaust_edge",
            Self::FirstEdge => "first_edge",
            Self::LastEdge => "last_edge",
            Self::Diagonal => "diagonal",
            Self::OtherDiagonal => "other_diagonal",
        }
    }
}

impl Direction {
    /// All directions by angle.
    pub const ALL: [Self; 6] = [
        Self::D0,
        Self::D45,
        Self::D60,
        Self::D90,
        Self::D120,
        Self::D135,
    ];

    /// The angle in degrees.
    #[must_use]
    pub const fn degrees(self) -> u16 {
        match self {
            Self::D0 => 0,
            Self::D45 => 45,
            Self::D60 => 60,
            Self::D90 => 90,
            Self::D120 => 120,
            Self::D135 => 135,
        }
    }

    /// The direction of this angle in degrees.
    #[must_use]
    pub fn from_degrees(degrees: u16) -> Option<Self> {
        Self::ALL.into_iter().find(|d| d.degrees() == degrees)
    }
}

impl Station {
    /// The station of a kind at a level and direction, on its first part.
    #[must_use]
    pub const fn new(kind: Kind, position: u8, level: Level, direction: Direction) -> Self {
        Self {
            kind,
            position,
            part: kind.part(),
            level,
            direction,
        }
    }

    /// Reads the text of a station; `None` unless it is a place that exists
    /// on its kind and is written exactly as [`fmt::Display`] writes it.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let mut words = text.split('/');
        let kind = Kind::from_key(words.next()?)?;
        let position = words.next()?.parse().ok().filter(|p| 1 <= *p)?;
        let part = words.next()?;
        let part = Part::ALL.into_iter().find(|p| p.key() == part)?;
        let level = words.next()?;
        let level = Level::ALL.into_iter().find(|l| l.key() == level)?;
        let direction = Direction::from_degrees(words.next()?.parse().ok()?)?;
        let station = Self {
            kind,
            position,
            part,
            level,
            direction,
        };
        let exists = kind.parts().contains(&part)
            && kind.levels().contains(&level)
            && kind.directions().contains(&direction);
        (exists && station.to_string() == text).then_some(station)
    }

    /// The same station on another part.
    #[must_use]
    pub const fn on(self, part: Part) -> Self {
        Self { part, ..self }
    }

    /// The same station with another direction.
    #[must_use]
    pub const fn facing(self, direction: Direction) -> Self {
        Self { direction, ..self }
    }
}

impl fmt::Display for Station {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{}/{}/{}/{}/{}",
            self.kind.key(),
            self.position,
            self.part.key(),
            self.level.key(),
            self.direction.degrees()
        )
    }
}
