//! The drawing of a micrometer, in whole numbers of a tenth of a pixel.
//!
//! Sleeve and thimble are drawn as the eye meets them, a turn of the thimble
//! being a turn: its lines crowd towards the edges. The vernier is drawn
//! rolled out and larger, held with the thimble down, as one turns it to read
//! it.

use super::Micrometer;
use super::scale::{LINE, STEP};

/// The reading line.
const AXIS: i64 = 1_000;
/// Where the sleeve's zero stands while the thimble's edge is in the window.
const ZERO: i64 = 340;
/// How far the edge goes before the sleeve moves under it.
const WINDOW: i64 = 1_700;
/// Radii of the sleeve, of the thimble's edge and of its body, and how far the
/// one widens to the other.
const SLEEVE: i64 = 560;
const EDGE: i64 = 620;
const BODY: i64 = 860;
const BEVEL: i64 = 850;
/// Where the thimble's numbers stand from its edge.
const NUMBERS: i64 = 590;
/// Where the knurl and the ratchet start from its edge.
const KNURL: i64 = 1_000;
const RATCHET: i64 = 2_650;
/// The right end of the drawing.
const END: i64 = 3_440;

/// Of the rolled-out vernier: its zero, a line of the thimble, the edge
/// between the two.
const VERNIER_ZERO: i64 = 230;
const SPACE: i64 = 300;
const SEAM: i64 = 560;

/// Markup being written.
#[derive(Default)]
struct Pen {
    path: String,
    text: String,
    done: String,
}

impl Pen {
    fn points(&mut self, points: &[(i64, i64)]) {
        let mut letter = 'M';
        for (x, y) in points {
            self.path.push(letter);
            self.path.push_str(&x.to_string());
            self.path.push(' ');
            self.path.push_str(&y.to_string());
            letter = 'L';
        }
    }

    fn label(&mut self, x: i64, y: i64, number: i64) {
        let at = [x, y, number].map(|n| n.to_string());
        let [x, y, number] = &at;
        for piece in ["<text x=\"", x, "\" y=\"", y, "\">", number, "</text>"] {
            self.text.push_str(piece);
        }
    }

    /// Puts down what was drawn, as one path of a class, and its numbers.
    fn put(&mut self, class: &str) {
        if !self.path.is_empty() {
            let path = core::mem::take(&mut self.path);
            for piece in ["<path class=\"", class, "\" d=\"", &path, "\"/>"] {
                self.done.push_str(piece);
            }
        }
        self.done.push_str(&core::mem::take(&mut self.text));
    }

    /// What was put down, as a drawing so high; without words it only repeats
    /// what another one tells.
    fn finish(self, high: &str, words: &str) -> String {
        let mut svg = String::from("<svg viewBox=\"0 0 3440 ");
        let told = ["\" role=\"img\" aria-label=\"", words, "\">"];
        let silent = ["\" aria-hidden=\"true\">", "", ""];
        svg.push_str(high);
        svg.push_str(&if words.is_empty() { silent } else { told }.concat());
        svg.push_str(&self.done);
        svg.push_str("</svg>");
        svg
    }
}

impl Micrometer {
    /// The drawing: sleeve and thimble, and the vernier where it has one. With
    /// `marked` the lines that count are marked.
    #[must_use]
    pub fn drawing(self, marked: bool) -> String {
        let mut svg = self.sleeve_and_thimble(marked);
        if self.has_vernier() {
            svg.push_str(&self.vernier(marked));
        }
        svg
    }

    /// How far along the sleeve a count lies.
    const fn along(self, count: i64) -> i64 {
        // 12 px and 10 px a turn.
        let turn = if self.number() == STEP { 120 } else { 100 };
        count * turn / self.turn()
    }

    /// How high a line of the thimble stands over the reading line, so many
    /// counts around a cylinder from it; `None` on its far side. (The sine by
    /// Bhaskara's quotient, right to a five-hundredth.)
    fn around(self, counts: i64, radius: i64) -> Option<i64> {
        let half = self.turn() / 2;
        let by = counts.abs();
        let product = by * (half - by);
        let high = radius * 16 * product / (5 * half * half - 4 * product);
        (2 * by <= half).then_some(high * counts.signum())
    }

    fn sleeve_and_thimble(self, marked: bool) -> String {
        let at = self.at();
        let slid = (self.along(at) - WINDOW).max(0);
        let x = |count: i64| ZERO + self.along(count) - slid;
        let edge = x(at);
        let mut pen = Pen::default();

        let frame = x(0) - 140;
        if 0 < frame {
            let (top, foot) = (AXIS - EDGE - 40, AXIS + EDGE + 40);
            pen.points(&[(0, top), (frame, top), (frame, foot), (0, foot)]);
        }
        for side in [AXIS - SLEEVE, AXIS + SLEEVE] {
            pen.points(&[(frame.max(0), side), (edge, side)]);
        }
        pen.points(&[((x(0) - 80).max(0), AXIS), (edge, AXIS)]);
        pen.put("");

        // Those that are out, on the part of the sleeve that is in sight.
        let turns = at / self.turn();
        let shape = |line: i64| {
            let count = line * self.turn();
            let (number, below) = (count % self.number() == 0, count % STEP != 0);
            let metric = self.number() != STEP;
            let long = if number { 270 } else { 180 };
            let tip = if metric && below { AXIS + long } else { AXIS - long };
            (x(count), tip, number)
        };
        for line in 0..=turns {
            let (x, tip, number) = shape(line);
            if 0 < x {
                pen.points(&[(x, AXIS), (x, tip)]);
            }
            if number && 60 < x {
                pen.label(x, tip - 110, line * self.turn() / STEP);
            }
        }
        pen.put("line");
        if marked {
            let (x, tip, _) = shape(turns);
            pen.points(&[(x, AXIS), (x, tip)]);
            pen.put("on");
        }
        self.thimble_drawn(&mut pen, edge, marked);
        let words = self.seen();
        pen.finish("2000", &words)
    }

    fn thimble_drawn(self, pen: &mut Pen, edge: i64, marked: bool) {
        let (neck, end) = (edge + BEVEL, edge + RATCHET);
        pen.points(&[
            (neck, AXIS - BODY),
            (edge, AXIS - EDGE),
            (edge, AXIS + EDGE),
            (neck, AXIS + BODY),
            (end, AXIS + BODY),
            (end, AXIS - BODY),
            (neck, AXIS - BODY),
            (neck, AXIS + BODY),
        ]);
        if end < END {
            pen.points(&[(end, AXIS - 400), (END, AXIS - 400), (END, AXIS + 400), (end, AXIS + 400)]);
        }
        pen.put("solid");
        for line in -8..=8 {
            if let Some(high) = self.around(line * self.turn() / 34, BODY) {
                pen.points(&[(edge + KNURL, AXIS - high), ((end - 150).min(END), AXIS - high)]);
            }
        }
        pen.put("faint");
        let one = |pen: &mut Pen, by: i64| {
            let counts = by * LINE - self.tenth();
            let number = (self.thimble() + by).rem_euclid(self.lines());
            let long = if number % 5 == 0 { 440 } else { 300 };
            let spot = |far: i64| {
                let high = self.around(counts, EDGE + (BODY - EDGE) * far / BEVEL)?;
                Some((edge + far, AXIS - high))
            };
            if let (Some(from), Some(to)) = (spot(0), spot(long)) {
                pen.points(&[from, to]);
            }
            // Numbers near the far side would be seen from the edge.
            if let Some((x, y)) = spot(NUMBERS)
                && number % 5 == 0
                && 5 * counts.abs() < self.turn()
            {
                pen.label(x, y, number);
            }
        };
        for by in -self.lines() / 4..=self.lines() / 4 + 1 {
            one(pen, by);
        }
        pen.put("line");
        if marked {
            one(pen, 0);
            pen.text.clear();
            pen.put("on");
        }
    }

    /// The vernier rolled out above the thimble's edge.
    fn vernier(self, marked: bool) -> String {
        let mut pen = Pen::default();
        pen.points(&[(0, SEAM), (END, SEAM), (END, 1_010), (0, 1_010)]);
        pen.put("solid");
        pen.points(&[(0, SEAM), (END, SEAM)]);
        pen.put("");
        let of_vernier = |line: i64| VERNIER_ZERO + line * SPACE * 9 / 10;
        let of_thimble = |by: i64| VERNIER_ZERO + by * SPACE - self.tenth() * SPACE / 10;
        for line in 0..=10 {
            let x = of_vernier(line);
            pen.points(&[(x, 260), (x, SEAM)]);
            pen.label(x, 140, line % 10);
        }
        for by in -1..=11 {
            let x = of_thimble(by);
            let number = (self.thimble() + by).rem_euclid(self.lines());
            if 40 < x && x < END - 40 {
                let five = number % 5 == 0;
                pen.points(&[(x, SEAM), (x, if five { 800 } else { 730 })]);
                if five && 120 < x && x < END - 120 {
                    pen.label(x, 910, number);
                }
            }
        }
        pen.put("line");
        if marked {
            let x = of_vernier(self.tenth());
            pen.points(&[(x, 260), (x, 730)]);
            pen.put("on");
        }
        pen.finish("1010", "")
    }
}
