//! The lines of a drawing as SVG, and how the gauge touches.

use crate::session::Station;

use super::{HEAD, SIDE};
use super::plate::{Plate, tenths, turned};

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
            text: String::with_capacity(4096),
            shafts: String::new(),
            heads: String::new(),
        };
        let side = SIDE.to_string();
        ink.put(&["<svg viewBox=\"0 0 ", &side, " ", &side]);
        ink.put(&["\" role=\"img\" aria-label=\"", name, "\">"]);
        ink
    }

    fn put(&mut self, parts: &[&str]) {
        for part in parts {
            self.text.push_str(part);
        }
    }

    fn path(&mut self, class: &str, path: &str) {
        self.put(&["<path class=\"", class, "\" d=\"", path, "\"/>"]);
    }

    /// Everything that is there before anything is measured.
    pub fn lines(&mut self, plate: &Plate) {
        for (code, rest) in plate.lines() {
            let class = match code {
                "p" => "part",
                "t" => "thin",
                "a" => "axis",
                "c" => "cut",
                "f" => "full",
                "w" => {
                    let mut words = rest.splitn(3, ' ');
                    let mut next = || words.next().unwrap_or_default();
                    let (x, y, word) = (next(), next(), next());
                    self.put(&["<text x=\"", x, "\" y=\"", y, "\">", word, "</text>"]);
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
        let (Some(axis), Some(along)) = (plate.axis(), plate.level(station.level)) else {
            return;
        };
        let mut path = String::new();
        let ends = [axis.at - axis.half, axis.at + axis.half];
        let ends = ends.map(|at| if axis.upright { [at, along] } else { [along, at] });
        line(&mut path, ends);
        self.path(if here { "level now" } else { "level" }, &path);
        if let (true, Some([x, y, r])) = (here, plate.end()) {
            let [across, down] = plate.onto_end(station.direction);
            let (across, down) = (r * across / 1000, r * down / 1000);
            let mut path = String::new();
            line(&mut path, [[x - across, y - down], [x + across, y + down]]);
            self.path("level", &path);
        }
    }

    /// How the gauge touches at a station.
    pub fn gauge(&mut self, plate: &Plate, station: Station) {
        if let (Some(axis), Some([x, y, r])) = (plate.axis(), plate.end()) {
            let along = plate.level(station.level).unwrap_or_default();
            let [cos, _] = turned(station.direction);
            let cos = cos.abs();
            let (middle, way) = if axis.upright {
                ([axis.at, along], [1000, 0])
            } else {
                ([along, axis.at], [0, 1000])
            };
            if cos == 0 {
                self.towards_the_eye(middle);
            }
            self.diameter(plate, middle, way, axis.half, cos);
            self.diameter(plate, [x, y], plate.onto_end(station.direction), r, 1000);
        } else if let Some(spot) = plate.spot(station) {
            self.spot(spot);
        }
        for (class, path) in [
            ("gauge", std::mem::take(&mut self.shafts)),
            ("head", std::mem::take(&mut self.heads)),
        ] {
            self.path(class, &path);
        }
    }

    /// The gauge on a diameter that is seen shortened to so many thousandths.
    fn diameter(&mut self, plate: &Plate, middle: [i32; 2], way: [i32; 2], half: i32, seen: i32) {
        if seen == 0 {
            return;
        }
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
    fn arrow(&mut self, point: [i32; 2], way: [i32; 2], length: i32, seen: i32) {
        let ([x, y], [across, down]) = (point, way);
        let back = |by: i32| [x - by * across / 1000, y - by * down / 1000];
        let neck = back(HEAD * seen / 1000);
        line(&mut self.shafts, [back(length), neck]);
        let [x, y] = neck;
        let (aside_x, aside_y) = (WIDE * down / 1000, WIDE * across / 1000);
        line(&mut self.heads, [point, [x - aside_x, y + aside_y]]);
        self.heads.push('L');
        pair(&mut self.heads, [x + aside_x, y - aside_y]);
        self.heads.push('Z');
    }

    /// A diameter that lies along the line of sight.
    fn towards_the_eye(&mut self, at: [i32; 2]) {
        ring(&mut self.shafts, at, 55);
        ring(&mut self.heads, at, 22);
    }

    /// What is no diameter: arrows, and a path.
    fn spot(&mut self, spot: &str) {
        let (arrows, path) = spot.split_once('M').unwrap_or((spot, ""));
        for arrow in arrows.split(' ') {
            let way = match arrow.chars().next_back() {
                Some('u') => [0, -1000],
                Some('d') => [0, 1000],
                Some('l') => [-1000, 0],
                _ => [1000, 0],
            };
            let point = arrow.trim_end_matches(['u', 'd', 'l', 'r']).split_once(',');
            if let Some((x, y)) = point {
                self.arrow([tenths(x), tenths(y)], way, ARROW, 1000);
            }
        }
        if !path.is_empty() {
            self.shafts.push('M');
            self.shafts.push_str(path);
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
            let mut path = String::new();
            ring(&mut path, at, 14);
            self.path("dot", &path);
        }
    }

    pub fn done(mut self) -> String {
        self.text.push_str("</svg>");
        self.text
    }
}

fn line(path: &mut String, ends: [[i32; 2]; 2]) {
    let [from, to] = ends;
    path.push('M');
    pair(path, from);
    path.push('L');
    pair(path, to);
}

fn ring(path: &mut String, at: [i32; 2], radius: i32) {
    let [x, y] = at;
    path.push('M');
    pair(path, [x - radius, y]);
    for across in [2 * radius, -2 * radius] {
        path.push('a');
        pair(path, [radius, radius]);
        path.push_str(" 0 1 0 ");
        pair(path, [across, 0]);
    }
    path.push('Z');
}

/// Two lengths in tenths, as units.
fn pair(path: &mut String, [x, y]: [i32; 2]) {
    for (before, tenths) in [("", x), (" ", y)] {
        path.push_str(before);
        if tenths < 0 {
            path.push('-');
        }
        path.push_str(&(tenths / 10).abs().to_string());
        if tenths % 10 != 0 {
            path.push('.');
            path.push_str(&(tenths % 10).abs().to_string());
        }
    }
}
