//! The lines of a drawing as SVG, and how the gauge touches.

use crate::session::Station;

use super::plate::{Plate, tenths, turned, word};
use super::{HEAD, SIDE};

/// How long an arrow is that touches from outside, in tenths.
const ARROW: i32 = 110;

/// How wide its head is to either side.
const WIDE: i32 = 30;

/// A drawing that is being made.
pub struct Ink {
    text: String,
    shafts: String,
    heads: String,
}

impl Ink {
    pub fn new(name: &str) -> Self {
        let mut ink = Self {
            text: String::new(),
            shafts: String::new(),
            heads: String::new(),
        };
        let side = SIDE.to_string();
        ink.put(&["<svg viewBox=\"0 0 ", &side, " ", &side]);
        ink.put(&["\" role=\"img\" aria-label=\"", name, "\">"]);
        ink
    }

    #[inline(never)]
    fn put(&mut self, parts: &[&str]) {
        for part in parts {
            self.text.push_str(part);
        }
    }

    #[inline(never)]
    fn path(&mut self, class: &str, path: &str) {
        self.put(&["<path class=\"", class, "\" d=\"", path, "\"/>"]);
    }

    /// Everything that is there before anything is measured.
    pub fn lines(&mut self, plate: &Plate) {
        for (code, mut rest) in plate.lines.iter().copied() {
            let class = match code {
                "p" => "part",
                "t" => "thin",
                "a" => "axis",
                "c" => "cut",
                "f" => "full",
                "w" => {
                    let (x, y) = (word(&mut rest), word(&mut rest));
                    self.put(&["<text x=\"", x, "\" y=\"", y, "\">", rest, "</text>"]);
                    continue;
                }
                _ => continue,
            };
            self.path(class, rest);
        }
    }

    /// The level of a station across the part, and its direction if one is
    /// at that level.
    pub fn level(&mut self, plate: &Plate, station: Station, here: bool) {
        let Some(axis) = plate.axis else {
            return;
        };
        let along = tenths(&mut plate.at(station));
        let mut path = String::new();
        line(&mut path, axis.point(along, axis.at - axis.half), true);
        line(&mut path, axis.point(along, axis.at + axis.half), false);
        self.path(if here { "level now" } else { "level" }, &path);
        if here {
            let [x, y, r] = plate.end;
            let [across, down] = plate.onto_end(station.direction);
            let (across, down) = (r * across / 1000, r * down / 1000);
            path.clear();
            line(&mut path, [x - across, y - down], true);
            line(&mut path, [x + across, y + down], false);
            self.path("level", &path);
        }
    }

    /// How the gauge touches at a station.
    pub fn gauge(&mut self, plate: &Plate, station: Station) {
        let mut at = plate.at(station);
        if let Some(axis) = plate.axis {
            let middle = axis.point(tenths(&mut at), axis.at);
            let [cos, _] = turned(station.direction);
            if cos == 0 {
                // It lies along the line of sight.
                ring(&mut self.heads, middle, 20);
            } else {
                self.diameter(plate, middle, axis.point(0, 1000), axis.half, cos.abs());
            }
            let [x, y, r] = plate.end;
            self.diameter(plate, [x, y], plate.onto_end(station.direction), r, 1000);
        } else {
            let _mark = (word(&mut at), word(&mut at));
            self.spot(at);
        }
        let (shafts, heads) = (self.shafts.clone(), self.heads.clone());
        self.path("gauge", &shafts);
        self.path("head", &heads);
    }

    /// The gauge on a diameter that is seen shortened to so many thousandths.
    fn diameter(&mut self, plate: &Plate, middle: [i32; 2], way: [i32; 2], half: i32, seen: i32) {
        let ([x, y], [across, down]) = (middle, way);
        let reach = half * seen / 1000;
        for side in [-1, 1] {
            let (across, down) = (side * across, side * down);
            let end = [x + reach * across / 1000, y + reach * down / 1000];
            if plate.is_hole() {
                self.arrow(end, [across, down], reach, seen);
            } else {
                self.arrow(end, [-across, -down], ARROW * seen / 1000, seen);
            }
        }
    }

    /// An arrow by its point, where it points, and its length.
    #[inline(never)]
    fn arrow(&mut self, point: [i32; 2], way: [i32; 2], length: i32, seen: i32) {
        let ([x, y], [across, down]) = (point, way);
        let back = |by: i32, aside: i32| {
            [
                x - (by * across + aside * down) / 1000,
                y - (by * down - aside * across) / 1000,
            ]
        };
        let head = HEAD * seen / 1000;
        line(&mut self.shafts, back(length, 0), true);
        line(&mut self.shafts, back(head, 0), false);
        line(&mut self.heads, point, true);
        line(&mut self.heads, back(head, WIDE), false);
        line(&mut self.heads, back(head, -WIDE), false);
    }

    /// What is no diameter: arrows, and a path.
    fn spot(&mut self, mut spot: &'static str) {
        while !spot.is_empty() {
            let path = spot;
            let way = match word(&mut spot) {
                "u" => [0, -1000],
                "d" => [0, 1000],
                "l" => [-1000, 0],
                "r" => [1000, 0],
                _ => return self.shafts.push_str(path),
            };
            let point = [tenths(&mut spot), tenths(&mut spot)];
            self.arrow(point, way, ARROW, 1000);
        }
    }

    /// The mark of a station.
    pub fn mark(&mut self, state: &str, now: bool, at: [i32; 2]) {
        let radius = match (state, now) {
            ("unasked", _) => 8,
            (_, false) => 30,
            (_, true) => 42,
        };
        let mut path = String::new();
        ring(&mut path, at, radius);
        let now = if now { " now" } else { "" };
        self.put(&["<path class=\"mark ", state, now, "\" d=\"", &path, "\"/>"]);
        if state == "partly" {
            path.clear();
            ring(&mut path, at, 14);
            self.path("dot", &path);
        }
    }

    pub fn done(mut self) -> String {
        self.text.push_str("</svg>");
        self.text
    }
}

/// A line to a point, or where it begins.
fn line(path: &mut String, point: [i32; 2], begins: bool) {
    path.push(if begins { 'M' } else { 'L' });
    pair(path, point);
}

fn ring(path: &mut String, at: [i32; 2], radius: i32) {
    let [x, y] = at;
    line(path, [x - radius, y], true);
    for across in [2 * radius, -2 * radius] {
        path.push('a');
        pair(path, [radius, radius]);
        path.push_str(" 0 1 0 ");
        pair(path, [across, 0]);
    }
}

/// Two lengths in tenths, as units.
#[inline(never)]
fn pair(path: &mut String, lengths: [i32; 2]) {
    for tenths in lengths {
        path.push_str(if tenths < 0 { " -" } else { " " });
        let tenths = tenths.unsigned_abs();
        path.push_str(&(tenths / 10).to_string());
        path.push('.');
        path.push_str(&(tenths % 10).to_string());
    }
}
