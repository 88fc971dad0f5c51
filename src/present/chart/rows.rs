//! Rows on one scale.

use super::glyph::Glyph;
use super::picture::{Anchor, FINE, Ink, Picture};
use super::round_step;
use crate::quantity::{Exact, Unit, show};

/// Values in rows, all on one scale from left to right, with what is allowed
/// of them. Lengths are in quanta.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Rows {
    /// What new ones are made to, and in words.
    pub(super) new: Option<(Ends, String)>,
    /// How far wear may go, and in words.
    pub(super) service: Option<(i64, String)>,
    /// The rows, from the top.
    pub(super) rows: Vec<Row>,
    /// Lines from row to row.
    pub(super) joints: Vec<Joint>,
    /// The unit of what tells the scale.
    pub(super) unit: Unit,
}

/// The ends of a band; a missing one is open.
pub(super) type Ends = [Option<i64>; 2];

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Row {
    /// What the row is called.
    pub(super) label: String,
    /// What stands at its end.
    pub(super) text: String,
    /// A thick line, from the smallest to the largest.
    pub(super) span: Option<[i64; 2]>,
    /// A thin one with ends, as far as the doubt reaches.
    pub(super) doubt: Option<[i64; 2]>,
    /// Values.
    pub(super) points: Vec<(i64, Glyph)>,
}

/// A line through values of rows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Joint {
    /// The length of its dashes in pixels; none where it is whole.
    pub(super) dash: i32,
    /// Rows, counted from the top, and values.
    pub(super) points: Vec<(usize, i64)>,
}

/// Which way the scale goes.
const LARGER: &str = "larger →";

/// Room beside the outermost values, for what stands for them.
const BESIDE: i32 = 10;

impl Rows {
    /// The smallest and the largest of all that is drawn.
    fn ends(&self) -> Option<(i64, i64)> {
        let mut ends: Option<(i64, i64)> = None;
        let mut see = |at: i64| {
            let (low, high) = ends.unwrap_or((at, at));
            ends = Some((low.min(at), high.max(at)));
        };
        if let Some((new, _)) = &self.new {
            new.iter().flatten().for_each(|at| see(*at));
        }
        if let Some((at, _)) = &self.service {
            see(*at);
        }
        for row in &self.rows {
            for [low, high] in [row.span, row.doubt].into_iter().flatten() {
                see(low);
                see(high);
            }
            row.points.iter().for_each(|(at, _)| see(*at));
        }
        ends
    }

    /// True if there is a scale: two values that differ.
    pub(super) fn has_scale(&self) -> bool {
        self.ends().is_some_and(|(low, high)| low < high)
    }

    pub(super) fn lay_out(&self, picture: &mut Picture) {
        let Some((low, high)) = self.ends().filter(|(low, high)| low < high) else {
            return;
        };
        let widest = |text: fn(&Row) -> &str| {
            let widths = self.rows.iter().map(|row| picture.width_of(text(row)));
            widths.max().filter(|width| 0 < *width)
        };
        let gap = picture.em(4);
        let label = widest(|row| &row.label).map_or(0, |width| width + gap);
        let text = widest(|row| &row.text).map_or(0, |width| width + gap);
        // On a narrow screen words stand above what they are about.
        let above = picture.width * 6 / 10 < label + text;
        let [left, right] = if above { [0, 0] } else { [label, text] };
        let track = Track {
            left: left + BESIDE,
            width: (picture.width - left - right - 2 * BESIDE).max(1),
            low,
            high,
        };
        let top = self.head(picture, &track);
        let [height, middle] =
            if above { [28, 20] } else { [18, 9] }.map(|tenths| picture.em(tenths));
        let centre = |row: usize| {
            let row = i32::try_from(row).unwrap_or_default();
            (top + row * height + middle) * FINE
        };
        let bottom = top + height * i32::try_from(self.rows.len()).unwrap_or_default();
        self.limits(picture, &track, bottom);
        for (number, row) in self.rows.iter().enumerate() {
            let y = centre(number);
            let line = if above {
                y / FINE - middle + picture.em(12)
            } else {
                y / FINE + picture.em(35) / 10
            };
            picture.write((0, line), Anchor::Start, &row.label, true);
            picture.write((picture.width, line), Anchor::End, &row.text, false);
            let ends = track.outer();
            upright(picture, Ink::Tint, [ends, [y - FINE / 2, y + FINE / 2]]);
        }
        for joint in &self.joints {
            let place = |&(row, value): &(usize, i64)| (track.at(value), centre(row));
            let points: Vec<_> = joint.points.iter().map(place).collect();
            picture.line(Ink::Ink, 2 * FINE, &points, joint.dash * FINE);
        }
        for (number, row) in self.rows.iter().enumerate() {
            row.draw(picture, &track, centre(number));
        }
        self.foot(picture, &track, bottom);
    }

    /// Names what is allowed; returns where the rows begin.
    fn head(&self, picture: &mut Picture, track: &Track) -> i32 {
        let mut top = 0;
        if let Some(([low, high], words)) = &self.new {
            let at = low.or(*high).map_or(0, |end| track.at(end) / FINE);
            picture.write((at, picture.em(11)), Anchor::Start, words, false);
            top += picture.em(14);
        }
        if let Some((at, words)) = &self.service {
            let at = (track.at(*at) / FINE, top + picture.em(11));
            picture.write(at, Anchor::Middle, words, false);
            top += picture.em(15);
        }
        top
    }

    /// Draws what is allowed, each from under its words.
    fn limits(&self, picture: &mut Picture, track: &Track, bottom: i32) {
        let bottom = bottom * FINE;
        let mut top = 0;
        if let Some((ends, _)) = &self.new {
            top = picture.em(14) * FINE;
            let [left, right] = track.outer();
            let [low, high] = ends.map(|end| end.map(|end| track.at(end)));
            let band = [low.unwrap_or(left), high.unwrap_or(right)];
            upright(picture, Ink::Tint, [band, [top, bottom]]);
            for at in [low, high].into_iter().flatten() {
                upright(
                    picture,
                    Ink::Soft,
                    [[at - FINE / 2, at + FINE / 2], [top, bottom]],
                );
            }
        }
        if let Some((at, _)) = &self.service {
            let at = track.at(*at);
            let top = top + picture.em(14) * FINE;
            let sides = [at - FINE * 5 / 4, at + FINE * 5 / 4];
            upright(picture, Ink::Orange, [sides, [top, bottom]]);
        }
    }

    /// Tells the scale.
    fn foot(&self, picture: &mut Picture, track: &Track, bottom: i32) {
        let least = self.unit.quanta() / 1_000_000;
        let length = round_step(least, (track.high - track.low) / 3);
        let [from, to] = [track.low, track.low + length].map(|at| track.at(at));
        let (line, half) = (bottom + picture.em(9), picture.em(3));
        let y = line * FINE;
        upright(
            picture,
            Ink::Soft,
            [[from, to], [y - FINE / 2, y + FINE / 2]],
        );
        for at in [from, to] {
            let sides = [at - FINE / 2, at + FINE / 2];
            upright(
                picture,
                Ink::Soft,
                [sides, [y - half * FINE, y + half * FINE]],
            );
        }
        let told = show(Exact::whole(length), self.unit, 0).text;
        let told = told + " " + self.unit.sign();
        let line = line + half;
        picture.write((to / FINE + half, line), Anchor::Start, &told, false);
        let room = picture.width - to / FINE - 2 * half - picture.width_of(&told);
        if picture.width_of(LARGER) < room {
            picture.write((picture.width, line), Anchor::End, LARGER, false);
        }
        picture.height = bottom + picture.em(16);
    }
}

/// An upright area between two x and two y.
fn upright(picture: &mut Picture, ink: Ink, [x, y]: [[i32; 2]; 2]) {
    picture.area(ink, (x[0], y[0]), (x[1], y[1]));
}

/// Where values lie.
struct Track {
    left: i32,
    width: i32,
    low: i64,
    high: i64,
}

impl Track {
    /// The place of a value, in sixteenths of a pixel.
    fn at(&self, value: i64) -> i32 {
        let along = i128::from(value - self.low) * i128::from(self.width * FINE);
        let along = along / i128::from(self.high - self.low);
        self.left * FINE + i32::try_from(along).unwrap_or_default()
    }

    /// Both ends with the room beside them.
    const fn outer(&self) -> [i32; 2] {
        let left = self.left - BESIDE;
        [left * FINE, (left + self.width + 2 * BESIDE) * FINE]
    }
}

impl Row {
    fn draw(&self, picture: &mut Picture, track: &Track, y: i32) {
        if let Some(ends) = self.doubt {
            let ends = ends.map(|end| track.at(end));
            upright(
                picture,
                Ink::Ink,
                [ends, [y - FINE * 3 / 4, y + FINE * 3 / 4]],
            );
            for at in ends {
                let sides = [at - FINE * 3 / 4, at + FINE * 3 / 4];
                upright(picture, Ink::Ink, [sides, [y - 6 * FINE, y + 6 * FINE]]);
            }
        }
        if let Some(ends) = self.span {
            let ends = ends.map(|end| track.at(end));
            upright(picture, Ink::Ink, [ends, [y - 3 * FINE, y + 3 * FINE]]);
        }
        for (value, glyph) in &self.points {
            glyph.draw(picture, (track.at(*value), y));
        }
    }
}
