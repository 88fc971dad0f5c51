//! The drawing of a micrometer, in whole numbers of a tenth of a pixel.
//!
//! Sleeve and thimble are drawn as the eye meets them: a turn of the thimble
//! is a turn, its lines crowd towards the edges. The vernier is drawn rolled
//! out and larger, held with the thimble down, as one turns it to read it.

use super::Micrometer;
use super::scale::{LINE, STEP};

/// The reading line, from the top.
const AXIS: i64 = 890;
/// Where the sleeve's zero stands while the thimble's edge is in the window.
const ZERO: i64 = 340;
/// How far the edge goes before the sleeve moves under it.
const WINDOW: i64 = 1_700;
/// How far a turn of the thimble moves it.
const TURN: i64 = 110;
/// Radii of the sleeve, of the thimble's edge and of its body.
const SLEEVE: i64 = 560;
const EDGE: i64 = 620;
const BODY: i64 = 860;
/// From the thimble's edge: its numbers, its body, the knurl, its end.
const NUMBERS: i64 = 590;
const BEVEL: i64 = 850;
const KNURL: i64 = 1_000;
const THIMBLE: i64 = 2_650;
/// The right end of the drawing.
const END: i64 = 3_440;

/// Of the rolled-out vernier: its zero, a line of the thimble, the edge
/// between the two, and the foot.
const VERNIER: i64 = 230;
const SPACE: i64 = 300;
const SEAM: i64 = 500;
const FOOT: i64 = 930;

/// Markup being written.
#[derive(Default)]
struct Pen {
    path: String,
    text: String,
    done: String,
}

impl Pen {
    #[inline(never)]
    fn line(&mut self, points: &[(i64, i64)]) {
        let mut letter = "M";
        for (x, y) in points {
            for piece in [letter, &*x.to_string(), " ", &*y.to_string()] {
                self.path.push_str(piece);
            }
            letter = "L";
        }
    }

    #[inline(never)]
    fn label(&mut self, x: i64, y: i64, number: i64) {
        let [x, y, number] = [x, y, number].map(|n| n.to_string());
        for piece in [
            "<text x=\"",
            &*x,
            "\" y=\"",
            &*y,
            "\">",
            &*number,
            "</text>",
        ] {
            self.text.push_str(piece);
        }
    }

    /// Puts down what was drawn, as one path of a class, and its numbers.
    #[inline(never)]
    fn put(&mut self, class: &str) {
        for piece in [
            "<path class=\"",
            class,
            "\" d=\"",
            &*self.path,
            "\"/>",
            &*self.text,
        ] {
            self.done.push_str(piece);
        }
        self.path.clear();
        self.text.clear();
    }
}

impl Micrometer {
    /// The drawing: sleeve and thimble, and the vernier where it has one. With
    /// `marked` the lines that count are marked.
    #[must_use]
    pub fn drawing(self, marked: bool) -> String {
        let mut pen = Pen::default();
        let seen = self.seen();
        let head = "<svg viewBox=\"0 0 3440 1780\" role=\"img\" aria-label=\"";
        for piece in [head, &*seen, "\">"] {
            pen.done.push_str(piece);
        }
        let edge = self.sleeve(&mut pen, marked);
        self.body(&mut pen, edge);
        for by in -self.lines() / 4..=self.lines() / 4 + 1 {
            self.thimble_line(&mut pen, edge, by);
        }
        pen.put("line");
        if marked {
            self.thimble_line(&mut pen, edge, 0);
            pen.text.clear();
            pen.put("on");
        }
        pen.done.push_str("</svg>");
        if self.has_vernier() {
            self.vernier(&mut pen, marked);
        }
        pen.done
    }

    /// The sleeve as far as it is out, and where the thimble's edge stands.
    fn sleeve(self, pen: &mut Pen, marked: bool) -> i64 {
        let (at, scale) = (self.at(), self.scale());
        let slid = (at * TURN / scale.turn - WINDOW).max(0);
        let x = |count: i64| ZERO + count * TURN / scale.turn - slid;
        let (frame, edge) = (x(0) - 140, x(at));
        for (from, to, high) in [(0, frame, EDGE + 40), (frame.max(0), edge, SLEEVE)] {
            let (top, foot) = (AXIS - high, AXIS + high);
            pen.line(&[(from, top), (to, top), (to, foot), (from, foot)]);
        }
        pen.line(&[(frame + 60, AXIS), (edge, AXIS)]);
        pen.put("");
        let turns = at / scale.turn;
        let line = |pen: &mut Pen, line: i64| {
            let count = line * scale.turn;
            let numbered = count % scale.number == 0;
            let long = if numbered { 270 } else { 180 };
            // Half millimetres stand below.
            let up = if scale.number != STEP && count % STEP != 0 {
                -1
            } else {
                1
            };
            let (x, tip) = (x(count), AXIS - up * long);
            if 0 < x {
                pen.line(&[(x, AXIS), (x, tip)]);
            }
            if numbered && 60 < x {
                pen.label(x, tip - 110, count / STEP);
            }
        };
        for turn in 0..=turns {
            line(pen, turn);
        }
        pen.put("line");
        if marked {
            line(pen, turns);
            pen.text.clear();
            pen.put("on");
        }
        edge
    }

    /// The thimble without its lines, over what it covers of the sleeve.
    fn body(self, pen: &mut Pen, edge: i64) {
        let (neck, end) = (edge + BEVEL, edge + THIMBLE);
        let (top, foot) = (AXIS - BODY, AXIS + BODY);
        pen.line(&[
            (neck, top),
            (edge, AXIS - EDGE),
            (edge, AXIS + EDGE),
            (neck, foot),
            (end, foot),
            (end, top),
            (neck, top),
            (neck, foot),
        ]);
        pen.line(&[
            (END, AXIS - 400),
            (end, AXIS - 400),
            (end, AXIS + 400),
            (END, AXIS + 400),
        ]);
        pen.put("solid");
        for knurl in -8..=8 {
            let high = self.around(knurl * self.scale().turn / 34, BODY);
            pen.line(&[(edge + KNURL, AXIS - high), (end - 150, AXIS - high)]);
        }
        pen.put("faint");
    }

    /// How high a line of the thimble stands over the reading line, so many
    /// counts around a cylinder from it. (The sine by Bhaskara's quotient,
    /// right to a five-hundredth.)
    const fn around(self, counts: i64, radius: i64) -> i64 {
        let half = self.scale().turn / 2;
        let product = counts * (half - counts.abs());
        radius * 16 * product / (5 * half * half - 4 * product.abs())
    }

    /// The thimble line that comes so many after the one that counts.
    fn thimble_line(self, pen: &mut Pen, edge: i64, by: i64) {
        let counts = by * LINE - self.tenth();
        let number = (self.thimble() + by).rem_euclid(self.lines());
        let numbered = number % 5 == 0;
        let spot = |far: i64| {
            let radius = EDGE + (BODY - EDGE) * far / BEVEL;
            (edge + far, AXIS - self.around(counts, radius))
        };
        // Beyond, it is on the far side.
        if 4 * counts.abs() <= self.scale().turn {
            pen.line(&[spot(0), spot(if numbered { 440 } else { 300 })]);
        }
        // Numbers further round would be seen from the edge.
        if numbered && 6 * counts.abs() < self.scale().turn {
            let (x, y) = spot(NUMBERS);
            pen.label(x, y, number);
        }
    }

    /// The vernier rolled out above the thimble's edge.
    fn vernier(self, pen: &mut Pen, marked: bool) {
        pen.done
            .push_str("<svg viewBox=\"0 0 3440 930\" aria-hidden=\"true\">");
        pen.line(&[(0, SEAM), (END, SEAM), (END, FOOT), (0, FOOT)]);
        pen.put("ground");
        pen.line(&[(0, SEAM), (END, SEAM)]);
        for line in 0..=10 {
            let x = VERNIER + line * SPACE * 9 / 10;
            pen.line(&[(x, 210), (x, SEAM)]);
            pen.label(x, 100, line % 10);
        }
        for by in -1..=11 {
            let x = VERNIER + by * SPACE - self.tenth() * SPACE / 10;
            let number = (self.thimble() + by).rem_euclid(self.lines());
            let numbered = number % 5 == 0;
            if 0 < x {
                pen.line(&[(x, SEAM), (x, if numbered { 730 } else { 660 })]);
            }
            if numbered && 120 < x && x < END - 120 {
                pen.label(x, 840, number);
            }
        }
        pen.put("line");
        if marked {
            let x = VERNIER + self.tenth() * SPACE * 9 / 10;
            pen.line(&[(x, 210), (x, 660)]);
            pen.put("on");
        }
        pen.done.push_str("</svg>");
    }
}
