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
//! | `s PART LEVEL X Y …` | what is no diameter: its mark, then arrows (`d X Y` points down and ends there; `u`, `l`, `r`) and a path |
//!
//! Lengths are whole units of the drawing, but in paths.

use crate::session::{Direction, Kind, Part, Station};

use super::{HEAD, INSET, TENTHS};

/// The lines of all kinds.
const PLATES: &str = include_str!("plates.txt");

/// What a kind looks like.
pub struct Plate {
    kind: Kind,
    /// Each line with the letter it begins with.
    pub lines: Vec<(&'static str, &'static str)>,
    /// Of what is round, the axis in the view along it.
    pub axis: Option<Axis>,
    /// Of what is round, middle and radius of the end, in tenths.
    pub end: [i32; 3],
    /// From where it is seen.
    pub views: &'static str,
}

/// An axis; lengths in tenths.
#[derive(Clone, Copy)]
pub struct Axis {
    /// True if it is upright.
    pub upright: bool,
    /// Where it lies.
    pub at: i32,
    /// Half the diameter.
    pub half: i32,
}

impl Axis {
    /// The point so far along it and across.
    pub const fn point(self, along: i32, across: i32) -> [i32; 2] {
        if self.upright {
            [across, along]
        } else {
            [along, across]
        }
    }
}

impl Plate {
    pub fn new(kind: Kind) -> Self {
        let mut plate = Self {
            kind,
            lines: Vec::new(),
            axis: None,
            end: [0; 3],
            views: "",
        };
        let (mut text, mut mine) = (PLATES, false);
        while !text.is_empty() {
            let mut rest = cut(&mut text, b'\n');
            let code = word(&mut rest);
            if code == "=" {
                mine = false;
                while !rest.is_empty() {
                    mine |= word(&mut rest) == kind.key();
                }
            } else if mine {
                plate.take(code, rest);
            }
        }
        plate
    }

    fn take(&mut self, code: &'static str, mut rest: &'static str) {
        self.lines.push((code, rest));
        match code {
            "v" => self.views = rest,
            "V" | "H" => {
                self.axis = Some(Axis {
                    upright: code == "V",
                    at: tenths(&mut rest),
                    half: tenths(&mut rest),
                });
            }
            "E" => self.end = [(); 3].map(|()| tenths(&mut rest)),
            _ => {}
        }
    }

    /// True if the gauge touches from inside.
    pub const fn is_hole(&self) -> bool {
        self.kind.is_hole()
    }

    /// What stands behind the words that name a station: where its level lies
    /// along the axis, or what is drawn of it if it is no diameter.
    pub fn at(&self, station: Station) -> &'static str {
        let part = match station.part {
            Part::Upper => "upper",
            Part::Lower => "lower",
            Part::Whole | Part::Skirt => "whole",
        };
        for (code, mut rest) in self.lines.iter().copied() {
            let named = match code {
                "L" => true,
                "s" => word(&mut rest) == part,
                _ => false,
            };
            if named && word(&mut rest) == station.level.key() {
                return rest;
            }
        }
        ""
    }

    /// Where a station's mark is: in the view along the axis, its directions
    /// side by side as on a wall that is rolled out.
    pub fn mark(&self, station: Station) -> [i32; 2] {
        let mut at = self.at(station);
        let first = tenths(&mut at);
        let Some(axis) = self.axis else {
            return [first, tenths(&mut at)];
        };
        let inset = if self.is_hole() {
            INSET + HEAD / 2
        } else {
            INSET
        };
        let right_angle = 90 - i32::from(station.direction.degrees());
        let across = axis.at - (axis.half - inset) * right_angle / 90;
        axis.point(first, across)
    }

    /// Where its mark is in the view onto the end.
    pub fn end_mark(&self, station: Station) -> Option<[i32; 2]> {
        self.axis?;
        let [x, y, r] = self.end;
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

/// Takes what stands before the next of these bytes, and the byte.
#[inline(never)]
fn cut(text: &mut &'static str, at: u8) -> &'static str {
    let end = text.bytes().position(|byte| byte == at);
    let (before, behind) = end.map_or((*text, ""), |end| {
        let behind = text.get(end + 1..).unwrap_or_default();
        (text.get(..end).unwrap_or_default(), behind)
    });
    *text = behind;
    before
}

/// Takes the next word.
pub fn word(text: &mut &'static str) -> &'static str {
    cut(text, b' ')
}

/// Takes the next number, in tenths.
pub fn tenths(text: &mut &'static str) -> i32 {
    let digit = |number: i32, digit: u8| number * 10 + i32::from(digit & 0xf);
    word(text).bytes().fold(0, digit) * TENTHS
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
