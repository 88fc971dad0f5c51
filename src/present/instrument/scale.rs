//! The scales of a micrometer as whole numbers.
//!
//! All lengths in this room are counts of a tenth of a thimble line: 0.0001 in
//! or 0.001 mm. The sleeve has a line for every turn of the thimble, 0.025 in
//! or 0.5 mm; ten lines of the vernier are as wide as nine of the thimble.

use crate::quantity::{Exact, Size, Unit, show};
use crate::session::{Gauge, GaugeKind};

/// Counts in a line of the thimble.
pub(super) const LINE: i64 = 10;

/// Counts in what the sleeve is first read by: 0.1 in or 1 mm.
pub(super) const STEP: i64 = 1_000;

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

/// A part of a reading: so many lines of so much each.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// What is counted.
    pub what: &'static str,
    /// How many.
    pub count: i64,
    /// The counting, such as `18 × 0.001`.
    pub times: String,
    /// What it comes to, in all decimals.
    pub amount: String,
}

/// What sets one scale of the micrometer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// The scale.
    pub name: &'static str,
    /// The keys, from the greatest step back to the greatest step on.
    pub turns: Vec<Turn>,
}

/// A key that sets the micrometer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turn {
    /// Opens it by so much.
    By(i64),
    /// Takes one with a range that starts so much later.
    Range(i64),
}

impl Default for Micrometer {
    fn default() -> Self {
        Self::closed(Unit::Millimetre, 1)
    }
}

impl Micrometer {
    /// Those that are mostly met: in both units, with vernier and without.
    const USUAL: [Self; 4] = [
        Self::closed(Unit::Millimetre, 1),
        Self::closed(Unit::Millimetre, LINE),
        Self::closed(Unit::Inch, 1),
        Self::closed(Unit::Inch, LINE),
    ];

    const fn closed(unit: Unit, grain: i64) -> Self {
        Self {
            unit,
            grain,
            start: 0,
            at: 0,
        }
    }

    /// The one that a gauge is read with, closed, with the range in which
    /// something `near` lies; `None` for gauges without sleeve and thimble,
    /// and for a depth micrometer, which counts the other way.
    #[must_use]
    pub fn of_gauge(gauge: &Gauge, near: Option<Size>) -> Option<Self> {
        let read_so = matches!(
            gauge.kind,
            GaugeKind::OutsideMicrometer
                | GaugeKind::InsideMicrometer
                | GaugeKind::TelescopingGauge
        );
        if !read_so {
            return None;
        }
        let unit = gauge.unit();
        let mut closed = Self::closed(unit, LINE);
        let one = closed.quanta();
        let in_counts = |size: Size| size.quanta() / one;
        closed.grain = match in_counts(gauge.graduation.size()) {
            ..=4 => 1,
            5 => 5,
            _ => LINE,
        };
        let near = near.filter(|near| gauge.reaches(*near));
        let least = gauge.range.as_ref().map(|(least, _)| least.size());
        let span = closed.span();
        let start = near.or(least).map_or(0, in_counts) / span * span;
        closed.start = start.min(closed.last_start());
        Some(closed)
    }

    /// The usual ones to choose from, and this one.
    #[must_use]
    pub fn others(self) -> Vec<Self> {
        let mut others = Self::USUAL.to_vec();
        for other in &mut others {
            if other.unit == self.unit {
                other.start = self.start;
            }
        }
        if !others.contains(&self.set_at(0)) {
            others.push(self.set_at(0));
        }
        others
    }

    /// The same micrometer set elsewhere in its range.
    #[must_use]
    pub const fn set_at(self, at: i64) -> Self {
        Self { at, ..self }
    }

    /// Quanta in one count.
    pub(super) const fn quanta(self) -> i64 {
        match self.unit {
            Unit::Inch => 25_400,
            Unit::Millimetre => 10_000,
        }
    }

    /// Counts in a turn of the thimble, which is one line of the sleeve.
    #[must_use]
    pub const fn turn(self) -> i64 {
        match self.unit {
            Unit::Inch => 250,
            Unit::Millimetre => 500,
        }
    }

    /// Counts from one printed number of the sleeve to the next.
    pub(super) const fn number(self) -> i64 {
        match self.unit {
            Unit::Inch => STEP,
            Unit::Millimetre => 5 * STEP,
        }
    }

    /// Counts in its range: 1 in or 25 mm.
    #[must_use]
    pub const fn span(self) -> i64 {
        match self.unit {
            Unit::Inch => 10 * STEP,
            Unit::Millimetre => 25 * STEP,
        }
    }

    /// Where the range of the largest one starts: as far as parts go.
    const fn last_start(self) -> i64 {
        23 * self.span()
    }

    /// Its unit.
    #[must_use]
    pub const fn unit(self) -> Unit {
        self.unit
    }

    /// How far it is open beyond the start of its range.
    #[must_use]
    pub const fn at(self) -> i64 {
        self.at
    }

    /// Where its range starts.
    pub(super) const fn start(self) -> i64 {
        self.start
    }

    /// The smallest step it is read to.
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
        self.turn() / LINE
    }

    /// The thimble line at the reading line, or the one just below it.
    #[must_use]
    pub const fn thimble(self) -> i64 {
        self.at % self.turn() / LINE
    }

    /// Tenths of a thimble line beyond that: the vernier line that coincides.
    #[must_use]
    pub const fn tenth(self) -> i64 {
        self.at % LINE
    }

    /// The decimals it is read to.
    #[must_use]
    pub const fn decimals(self) -> u8 {
        let finest = self.unit.decimals();
        if self.grain == LINE {
            finest - 1
        } else {
            finest
        }
    }

    /// What it reads, without the unit.
    #[must_use]
    pub fn text(self) -> String {
        self.count_text(self.start + self.at)
    }

    /// A count as text in all decimals.
    pub(super) fn count_text(self, count: i64) -> String {
        let quanta = Exact::whole(count * self.quanta());
        show(quanta, self.unit, self.decimals()).text
    }

    /// A count as text in as few decimals as it takes.
    pub(super) fn short_text(self, count: i64) -> String {
        show(Exact::whole(count * self.quanta()), self.unit, 0).text
    }

    /// A name that tells it from the others.
    #[must_use]
    pub fn name(self) -> String {
        let vernier = if self.has_vernier() { ", vernier" } else { "" };
        let grain = self.short_text(self.grain);
        format!("{grain} {}{vernier}", self.unit.sign())
    }

    /// Its range in words.
    #[must_use]
    pub fn range(self) -> String {
        let [from, to] = [self.start, self.start + self.span()].map(|n| self.short_text(n));
        format!("{from} to {to} {}", self.unit.sign())
    }

    /// Set by a key; `None` where it goes no further.
    #[must_use]
    pub fn turned(mut self, turn: Turn) -> Option<Self> {
        match turn {
            Turn::By(by) => self.at += by,
            Turn::Range(by) => self.start += by,
        }
        let within = 0 <= self.at && self.at <= self.span();
        let made = 0 <= self.start && self.start <= self.last_start();
        (within && made).then_some(self)
    }

    /// What is written on a key.
    #[must_use]
    pub fn sign(self, turn: Turn) -> String {
        let (Turn::By(by) | Turn::Range(by)) = turn;
        let sign = if by < 0 { '−' } else { '+' };
        format!("{sign}{}", self.short_text(by.abs()))
    }

    /// What sets it, from the range to the finest scale.
    #[must_use]
    pub fn rows(self) -> Vec<Row> {
        let keys = |steps: &[i64], key: fn(i64) -> Turn| {
            let back = steps.iter().map(|by| key(-by));
            back.chain(steps.iter().rev().map(|by| key(*by))).collect()
        };
        let row = |name, steps: &[i64]| Row {
            name,
            turns: keys(steps, Turn::By),
        };
        let mut rows = vec![
            Row {
                name: "Range",
                turns: keys(&[self.span()], Turn::Range),
            },
            row("Sleeve", &[self.number(), self.turn()]),
            row("Thimble", &[5 * LINE, LINE]),
        ];
        match self.grain {
            1 => rows.push(row("Vernier", &[1])),
            LINE => {}
            half => rows.push(row("Between", &[half])),
        }
        rows
    }

    /// What a scale shows, in the order of [`Self::rows`].
    #[must_use]
    pub fn row_text(self, row: usize) -> String {
        match row {
            0 => self.range(),
            1 => self.short_text(self.at / self.turn() * self.turn()),
            2 => self.short_text(self.thimble() * LINE),
            _ => self.short_text(self.tenth()),
        }
    }

    /// The reading taken apart; the amounts add up to it.
    #[must_use]
    pub fn parts(self) -> Vec<Line> {
        let (number, line) = match self.unit {
            Unit::Inch => ("Number on the sleeve", "Lines after it"),
            Unit::Millimetre => ("Lines above, whole mm", "Line below after it"),
        };
        let turns = self.at % STEP / self.turn();
        let mut parts = vec![
            (number, self.at / STEP, STEP),
            (line, turns, self.turn()),
            ("Thimble line", self.thimble(), LINE),
        ];
        match self.grain {
            1 => parts.push(("Vernier line", self.tenth(), 1)),
            LINE => {}
            half => parts.push(("Half between lines", self.tenth() / half, half)),
        }
        let lines = parts.into_iter().map(|(what, count, each)| Line {
            what,
            count,
            times: format!("{count} × {}", self.short_text(each)),
            amount: self.count_text(count * each),
        });
        let start = (0 < self.start).then(|| Line {
            what: "Range starts at",
            count: self.start / self.span(),
            times: String::new(),
            amount: self.count_text(self.start),
        });
        start.into_iter().chain(lines).collect()
    }

    /// What is seen on the scales, for those who do not see the drawing.
    #[must_use]
    pub fn seen(self) -> String {
        let mut seen = format!("Micrometer {}.", self.range());
        for line in self.parts() {
            if !line.times.is_empty() {
                seen.push_str(&format!(" {}: {}.", line.what, line.count));
            }
        }
        seen
    }
}
