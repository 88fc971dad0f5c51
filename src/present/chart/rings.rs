//! Outlines over circles, side by side.

use super::glyph::{STEPS, around, circle};
use super::picture::{Anchor, FINE, Ink, Picture, Shape};

/// Outlines of one feature over the same circle.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Rings {
    /// The radius of the circle in quanta.
    pub(super) radius: i64,
    /// How many times larger than it is what lies over the circle is drawn.
    pub(super) times: i64,
    /// From left to right.
    pub(super) rings: Vec<Ring>,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Ring {
    /// What it is called.
    pub(super) label: String,
    /// What stands under it.
    pub(super) texts: Vec<String>,
    /// How far the radius is over the circle, in quanta, at every step of 5°
    /// clockwise from the right.
    pub(super) over: Vec<i64>,
    /// At which of these steps it was read, here and opposite.
    pub(super) read: Vec<usize>,
}

/// No wider than this is one of them, in pixels.
const WIDEST: i32 = 220;

impl Rings {
    pub(super) fn lay_out(&self, picture: &mut Picture) {
        let count = i32::try_from(self.rings.len()).unwrap_or(1).max(1);
        let side = (picture.width / count).min(WIDEST);
        let radius = side * FINE * 5 / 16;
        let lines = self.rings.iter().map(|ring| ring.texts.len()).max();
        let lines = i32::try_from(lines.unwrap_or_default()).unwrap_or_default();
        let [title, line] = [14, 13].map(|tenths| picture.em(tenths));
        for (number, ring) in (0..).zip(&self.rings) {
            let middle = number * side + side / 2;
            picture.write((middle, picture.em(11)), Anchor::Middle, &ring.label, true);
            let centre = (middle * FINE, (title + side / 2) * FINE);
            self.draw(picture, ring, centre, radius);
            let mut base = title + side + picture.em(8);
            for text in &ring.texts {
                picture.write((middle, base), Anchor::Middle, text, false);
                base += line;
            }
        }
        picture.height = title + side + lines * line;
    }

    fn draw(&self, picture: &mut Picture, ring: &Ring, centre: (i32, i32), radius: i32) {
        let at = |step: usize| {
            let over = ring.over.get(step % STEPS).copied().unwrap_or_default();
            let drawn = over * self.times * i64::from(radius) / self.radius.max(1);
            around(
                centre,
                radius + i32::try_from(drawn).unwrap_or_default(),
                step,
            )
        };
        let outline: Vec<_> = (0..=STEPS).map(at).collect();
        // What is over the circle: there and back again.
        let worn = outline.iter().copied();
        let back = (0..=STEPS).rev().map(|step| around(centre, radius, step));
        let worn = worn.chain(back).collect();
        picture.shapes.push(Shape::Fill(Ink::Tint, worn));
        let dashes = circle(centre, radius);
        for dash in dashes.chunks(2) {
            picture.line(Ink::Soft, FINE, dash, 0);
        }
        picture.line(Ink::Ink, FINE * 5 / 2, &outline, 0);
        if let Some(longest) = ring.longest() {
            let ends = [longest, longest + STEPS / 2].map(at);
            picture.line(Ink::Orange, 2 * FINE, &ends, 0);
        }
        for step in &ring.read {
            for step in [*step, step + STEPS / 2] {
                let dot = circle(at(step), 4 * FINE);
                picture.shapes.push(Shape::Fill(Ink::Ink, dot));
            }
        }
    }
}

impl Ring {
    /// The step at which it is longest; `None` where it is round.
    fn longest(&self) -> Option<usize> {
        let half = self.over.iter().take(STEPS / 2);
        let most = half.clone().max()?;
        let is_oval = half.clone().any(|over| over != most);
        half.enumerate()
            .find(|(_, over)| is_oval && *over == most)
            .map(|(step, _)| step)
    }
}
