//! The scales of a micrometer as whole numbers.
//!
//! Lengths here are counts of a tenth of a thimble line: 0.0001 in or
//! 0.001 mm. The sleeve has a line for every turn of the thimble; ten lines of
//! the vernier are as wide as nine of the thimble.

use crate::quantity::{Exact, Size, Unit, show};
use crate::session::{Gauge, GaugeKind};

/// Counts in a line of the thimble.
pub(super) const LINE: i64 = 10;

/// Counts in what the sleeve is first read by: 0.1 in or 1 mm.
pub(super) const STEP: i64 = 1_000;

/// The largest micrometers start at so many ranges: as far as parts go.
const LAST_RANGE: i64 = 23;

/// The place of the range among the [`Micrometer::rows`].
const RANGE: usize = 3;

/// What all micrometers of a unit have in common, in counts.
pub(super) struct Scale {
    /// Quanta of 0.1 nm in a count.
    pub quanta: i64,
    /// A turn of the thimble, which is a line of the sleeve.
    pub turn: i64,
    /// From one printed number of the sleeve to the next.
    pub number: i64,
    /// The range of one micrometer.
    pub span: i64,
    /// What is counted on the sleeve: steps, and the lines after them.
    pub sleeve: [&'static str; 2],
    /// What steps of the sleeve are miscounted by, and what that is.
    pub miscounts: [(i64, &'static str); 4],
}

/// 40 turns make an inch, each tenth of it is numbered.
static INCH: Scale = Scale {
    quanta: 25_400,
    turn: 250,
    number: STEP,
    span: 10 * STEP,
    sleeve: ["Sleeve numbers", "Sleeve lines"],
    miscounts: [
        (STEP, "One number of the sleeve"),
        (500, "Two lines of the sleeve"),
        (750, "Three lines of the sleeve"),
        (10 * STEP, "One range"),
    ],
};

/// Half a millimetre a turn, each fifth millimetre is numbered.
static MILLIMETRE: Scale = Scale {
    quanta: 10_000,
    turn: 500,
    number: 5 * STEP,
    span: 25 * STEP,
    sleeve: ["Sleeve whole mm", "Sleeve half mm"],
    miscounts: [
        (STEP, "One millimetre"),
        (5 * STEP, "One number of the sleeve"),
        (1_500, "Three lines of the sleeve"),
        (25 * STEP, "One range"),
    ],
};

/// A micrometer that is set to something.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Micrometer {
    unit: Unit,
    /// What it is read to: a vernier line (1), half a thimble line by eye (5),
    /// or a thimble line (10).
    grain: i64,
    /// Where its range starts.
    start: i64,
    /// How far it is open beyond that.
    at: i64,
}

impl Default for Micrometer {
    fn default() -> Self {
        Self::closed(Unit::Millimetre, 1)
    }
}

impl Micrometer {
    /// The one that a gauge is read with, closed, with the range in which
    /// something `near` lies, else the first it has; `None` for gauges without
    /// sleeve and thimble, and for a depth micrometer, which counts the other
    /// way.
    #[must_use]
    pub fn of_gauge(gauge: &Gauge, near: Option<Size>) -> Option<Self> {
        let read_so = matches!(
            gauge.kind,
            GaugeKind::OutsideMicrometer
                | GaugeKind::InsideMicrometer
                | GaugeKind::TelescopingGauge
        );
        let mut closed = Self::closed(gauge.unit(), LINE);
        closed.grain = match closed.counts(gauge.graduation.size()) {
            ..=4 => 1,
            5 => 5,
            _ => LINE,
        };
        let near = near.filter(|near| gauge.reaches(*near));
        let least = gauge.range.as_ref().map(|(least, _)| least.size());
        let span = closed.scale().span;
        let ranges = near.or(least).map_or(0, |size| closed.counts(size) / span);
        closed.start = ranges.min(LAST_RANGE) * span;
        read_so.then_some(closed)
    }

    const fn closed(unit: Unit, grain: i64) -> Self {
        Self {
            unit,
            grain,
            start: 0,
            at: 0,
        }
    }

    /// This one and those that are mostly met, closed, to choose from: in both
    /// units, with vernier and without.
    #[must_use]
    pub fn others(self) -> Vec<Self> {
        let mut others = vec![self.set_at(0)];
        for unit in Unit::ALL {
            for grain in [1, LINE] {
                let start = if unit == self.unit { self.start } else { 0 };
                let other = Self {
                    start,
                    ..Self::closed(unit, grain)
                };
                if !other.is_like(self) {
                    others.push(other);
                }
            }
        }
        others
    }

    /// The same micrometer set elsewhere in its range.
    #[must_use]
    pub const fn set_at(self, at: i64) -> Self {
        Self { at, ..self }
    }

    pub(super) const fn scale(self) -> &'static Scale {
        match self.unit {
            Unit::Inch => &INCH,
            Unit::Millimetre => &MILLIMETRE,
        }
    }

    /// True if both have the same scales.
    #[must_use]
    pub fn is_like(self, other: Self) -> bool {
        self.unit == other.unit && self.grain == other.grain
    }

    /// Its unit.
    #[must_use]
    pub const fn unit(self) -> Unit {
        self.unit
    }

    /// How far it is open beyond the start of its range, in counts.
    #[must_use]
    pub const fn at(self) -> i64 {
        self.at
    }

    /// What it reads, in counts.
    #[must_use]
    pub const fn reading(self) -> i64 {
        self.start + self.at
    }

    /// The smallest step it is read to, in counts.
    #[must_use]
    pub const fn grain(self) -> i64 {
        self.grain
    }

    /// True if it has a vernier.
    #[must_use]
    pub const fn has_vernier(self) -> bool {
        self.grain == 1
    }

    /// Lines around its thimble.
    #[must_use]
    pub const fn lines(self) -> i64 {
        self.scale().turn / LINE
    }

    /// The thimble line at the reading line, or the one just below it.
    #[must_use]
    pub const fn thimble(self) -> i64 {
        self.at % self.scale().turn / LINE
    }

    /// Tenths of a thimble line beyond that: the vernier line that coincides.
    #[must_use]
    pub const fn tenth(self) -> i64 {
        self.at % LINE
    }

    /// The decimals it is read to.
    #[must_use]
    pub fn decimals(self) -> u8 {
        self.unit.decimals() - u8::from(self.grain == LINE)
    }

    /// A size as a count, cut to whole ones.
    pub(super) const fn counts(self, size: Size) -> i64 {
        size.quanta() / self.scale().quanta
    }

    /// What it reads, without the unit.
    #[must_use]
    pub fn text(self) -> String {
        self.count_text(self.reading())
    }

    /// A count as text in all decimals.
    pub(super) fn count_text(self, count: i64) -> String {
        self.shown(count, self.decimals())
    }

    /// A count as text in as few decimals as it takes.
    pub(super) fn short_text(self, count: i64) -> String {
        self.shown(count, 0)
    }

    fn shown(self, count: i64, decimals: u8) -> String {
        show(
            Exact::whole(count * self.scale().quanta),
            self.unit,
            decimals,
        )
        .text
    }

    /// A name that tells it from the others.
    #[must_use]
    pub fn name(self) -> String {
        let vernier = if self.has_vernier() { ", vernier" } else { "" };
        [
            &*self.short_text(self.grain),
            " ",
            self.unit.sign(),
            vernier,
        ]
        .concat()
    }

    /// What is set by keys: a scale, a big step and a small one, in counts; 0
    /// where there is none.
    #[must_use]
    pub fn rows(self) -> [(&'static str, i64, i64); 4] {
        let scale = self.scale();
        let fine = match self.grain {
            LINE => ("", 0, 0),
            1 => ("Vernier", 0, 1),
            half => ("Between", 0, half),
        };
        [
            ("Sleeve", scale.number, scale.turn),
            ("Thimble", 5 * LINE, LINE),
            fine,
            ("Range", 0, scale.span),
        ]
    }

    /// What a scale shows, by its place among the rows.
    #[must_use]
    pub fn row_text(self, row: usize) -> String {
        match row {
            0 => self.short_text(self.at - self.at % self.scale().turn),
            1 => self.short_text(self.thimble() * LINE),
            RANGE => {
                let end = self.short_text(self.start + self.scale().span);
                [&*self.short_text(self.start), "–", &end].concat()
            }
            _ => self.short_text(self.tenth()),
        }
    }

    /// Set by a key of a row; `None` where it goes no further. The thimble
    /// takes the sleeve along.
    #[must_use]
    pub fn turned(mut self, row: usize, by: i64) -> Option<Self> {
        if row == RANGE {
            self.start += by;
        } else {
            self.at += by;
        }
        let span = self.scale().span;
        let within = 0 <= self.at && self.at <= span;
        let made = 0 <= self.start && self.start <= LAST_RANGE * span;
        (within && made).then_some(self)
    }

    /// What is written on a key.
    #[must_use]
    pub fn sign(self, by: i64) -> String {
        let sign = if by < 0 { "−" } else { "+" };
        let text = self.short_text(by.abs());
        // The trade leaves the nought of an inch out.
        let nought = if self.unit == Unit::Inch { "0." } else { "" };
        match text.strip_prefix(nought) {
            Some(rest) if !nought.is_empty() => [sign, ".", rest].concat(),
            _ => [sign, &*text].concat(),
        }
    }

    /// The reading taken apart: what is counted, how many there are, and how
    /// much each is, in counts; 0 where there is nothing to count.
    #[must_use]
    pub fn parts(self) -> [(&'static str, i64, i64); 5] {
        let scale = self.scale();
        let [steps, lines] = scale.sleeve;
        let (fine, each) = match self.grain {
            LINE => ("", 0),
            1 => ("Vernier line", 1),
            half => ("Half a line more", half),
        };
        [
            ("Range starts at", 1, self.start),
            (steps, self.at / STEP, STEP),
            (lines, self.at % STEP / scale.turn, scale.turn),
            ("Thimble line", self.thimble(), LINE),
            (fine, self.tenth() / self.grain, each),
        ]
    }

    /// The reading written as a sum: what, the counting, what it comes to.
    #[must_use]
    pub fn sum(self) -> Vec<[String; 3]> {
        let mut sum = Vec::new();
        for (what, count, each) in self.parts() {
            if each != 0 {
                let mut times = [&*count.to_string(), " × ", &self.short_text(each)].concat();
                if each == self.start {
                    times.clear();
                }
                sum.push([what.to_owned(), times, self.count_text(count * each)]);
            }
        }
        let what = ["It reads, ", self.unit.sign()].concat();
        sum.push([what, String::new(), self.text()]);
        sum
    }

    /// What is seen on the scales, for those who do not see the drawing.
    pub(super) fn seen(self) -> String {
        let mut seen = self.row_text(RANGE);
        for (what, count, each) in self.parts().into_iter().skip(1) {
            if each != 0 {
                for piece in [". ", what, ": ", &*count.to_string()] {
                    seen.push_str(piece);
                }
            }
        }
        seen
    }
}
