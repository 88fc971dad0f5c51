//! What is drawn of a kind before anything is measured, read from
//! `plates.txt`.
//!
//! The text is lines. `= KIND …` begins a block that belongs to these kinds;
//! a kind may have several. In a block:
//!
//! | Line | Means |
//! | --- | --- |
//! | `p`, `t`, `a`, `c`, `f` | a path: outline, thin line, axis, cut face, filled |
//! | `w X Y TEXT` | a word for a large drawing, its middle at X, on Y |
//! | `v TEXT` | from where it is seen |
//! | `V X R`, `H Y R` | the view along the axis, which is upright at X or level at Y; R is half the diameter |
//! | `E X Y R` | the view onto the end |
//! | `L LEVEL AT` | where a level lies along the axis |
//! | `s PART LEVEL X Y …` | what is no diameter: its mark, then arrows (`X,Yd` points down and ends there; `u`, `l`, `r`) and a path |
//!
//! Lengths are units of the drawing. The markers around the text are for the
//! build, which moves it out of what a start loads.

use crate::session::{Direction, Kind, Level, Part, Station};

use super::{HEAD, INSET, TENTHS};

/// The lines of all kinds.
const PLATES: &str = include_str!("plates.txt");

/// What a kind looks like.
pub struct Plate {
    kind: Kind,
    axis: Option<Axis>,
    end: Option<[i32; 3]>,
    views: &'static str,
}

/// The axis in the view along it, in tenths.
#[derive(Clone, Copy)]
pub struct Axis {
    /// True if it is upright.
    pub upright: bool,
    /// Where it lies.
    pub at: i32,
    /// Half the diameter.
    pub half: i32,
}

impl Plate {
    pub fn new(kind: Kind) -> Self {
        let mut plate = Self {
            kind,
            axis: None,
            end: None,
            views: "",
        };
        for (code, rest) in plate.lines() {
            let mut numbers = rest.split(' ').map(tenths);
            let mut next = || numbers.next().unwrap_or_default();
            match code {
                "v" => plate.views = rest,
                "V" | "H" => {
                    plate.axis = Some(Axis {
                        upright: code == "V",
                        at: next(),
                        half: next(),
                    });
                }
                "E" => plate.end = Some([next(), next(), next()]),
                _ => {}
            }
        }
        plate
    }

    /// The lines of this kind, each with its letter.
    pub fn lines(&self) -> impl Iterator<Item = (&'static str, &'static str)> + use<> {
        let key = self.kind.key();
        let mut mine = false;
        PLATES.lines().filter_map(move |line| {
            let (code, rest) = line.split_once(' ')?;
            if code == "=" {
                mine = rest.split(' ').any(|kind| kind == key);
                return None;
            }
            mine.then_some((code, rest))
        })
    }

    /// From where it is seen.
    pub const fn views(&self) -> &'static str {
        self.views
    }

    /// The axis, of what is round.
    pub const fn axis(&self) -> Option<Axis> {
        self.axis
    }

    /// Middle and radius of the end, of what is round.
    pub const fn end(&self) -> Option<[i32; 3]> {
        self.end
    }

    /// True if the gauge touches from inside.
    pub const fn is_hole(&self) -> bool {
        self.kind.is_hole()
    }

    /// Where a level lies along the axis.
    pub fn level(&self, level: Level) -> Option<i32> {
        let lines = self.lines().filter(|(code, _)| *code == "L");
        let mut levels = lines.filter_map(|(_, rest)| rest.split_once(' '));
        let (_, at) = levels.find(|(word, _)| *word == level.key())?;
        Some(tenths(at))
    }

    /// What is drawn of a station that is no diameter: the words behind its
    /// part and level.
    pub fn spot(&self, station: Station) -> Option<&'static str> {
        let part = match station.part {
            Part::Upper => "upper",
            Part::Lower => "lower",
            Part::Whole | Part::Skirt => "whole",
        };
        let mut spots = self.lines().filter(|(code, _)| *code == "s");
        spots.find_map(|(_, rest)| {
            let rest = rest.strip_prefix(part)?.strip_prefix(' ')?;
            rest.strip_prefix(station.level.key())?.strip_prefix(' ')
        })
    }

    /// Where a station's mark is: in the view along the axis, its directions
    /// side by side as on a wall that is rolled out.
    pub fn mark(&self, station: Station) -> Option<[i32; 2]> {
        let Some(axis) = self.axis else {
            let mut numbers = self.spot(station)?.split(' ').map(tenths);
            return Some([numbers.next()?, numbers.next()?]);
        };
        let along = self.level(station.level)?;
        let inset = if self.is_hole() { INSET + HEAD / 2 } else { INSET };
        let right_angle = 90 - i32::from(station.direction.degrees());
        let across = axis.at - (axis.half - inset) * right_angle / 90;
        Some(if axis.upright {
            [across, along]
        } else {
            [along, across]
        })
    }

    /// Where its mark is in the view onto the end.
    pub fn end_mark(&self, station: Station) -> Option<[i32; 2]> {
        let [x, y, r] = self.end?;
        let out = if self.is_hole() { r + INSET } else { r - INSET };
        let [across, down] = self.onto_end(station.direction);
        Some([x + out * across / 1000, y + out * down / 1000])
    }

    /// The direction in the view onto the end, as its parts across and down in
    /// thousandths. What stands upright is seen from above, its first
    /// direction being across; all else from the first end, its first
    /// direction being up. Directions count clockwise.
    pub fn onto_end(&self, direction: Direction) -> [i32; 2] {
        let [cos, sin] = turned(direction);
        if self.axis.is_some_and(|axis| axis.upright) {
            [-cos, -sin]
        } else {
            [sin, -cos]
        }
    }
}

/// A number of `plates.txt` in tenths.
pub fn tenths(text: &str) -> i32 {
    text.parse::<i32>().unwrap_or_default() * TENTHS
}

/// Cosine and sine of a direction in thousandths.
pub const fn turned(direction: Direction) -> [i32; 2] {
    match direction {
        Direction::D0 => [1000, 0],
        Direction::D45 => [707, 707],
        Direction::D60 => [500, 866],
        Direction::D90 => [0, 1000],
        Direction::D120 => [-500, 866],
        Direction::D135 => [-707, 707],
    }
}
