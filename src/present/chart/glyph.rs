//! The shapes that stand for a value.

use super::picture::{FINE, Ink, Picture, Shape};
use crate::present::Mark;

/// What stands for a value.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Glyph {
    /// What its verdict is, as beside the words of it.
    Verdict(Mark),
    /// A reading in one of the directions of its kind, from the first on.
    Direction(usize),
}

/// Cosines of 0°, 5° … 90°, in parts of 65 536, rounded; computed from the
/// definition.
const COSINES: [i32; 19] = [
    65_536, 65_287, 64_540, 63_303, 61_584, 59_396, 56_756, 53_684, 50_203, 46_341, 42_126, 37_590,
    32_768, 27_697, 22_415, 16_962, 11_380, 5_712, 0,
];

/// So many steps of 5° go round.
pub(super) const STEPS: usize = 72;

/// One, as [`cosine`] counts it.
pub(super) const ONE: i32 = 65_536;

/// The cosine of so many steps of 5°, in parts of [`ONE`].
pub(super) fn cosine(step: usize) -> i32 {
    let quarter = STEPS / 4;
    let half = STEPS / 2;
    let step = step % STEPS;
    // The same on the way back.
    let step = step.min(STEPS - step);
    let (place, sign) = if step <= quarter {
        (step, 1)
    } else {
        (half - step, -1)
    };
    sign * COSINES.get(place).copied().unwrap_or_default()
}

/// The point at so many steps of 5° clockwise from the right.
pub(super) fn around(centre: (i32, i32), radius: i32, step: usize) -> (i32, i32) {
    let part = |cosine: i32| {
        let part = i64::from(radius) * i64::from(cosine) / i64::from(ONE);
        i32::try_from(part).unwrap_or_default()
    };
    let sine = cosine(step + STEPS * 3 / 4);
    (centre.0 + part(cosine(step)), centre.1 + part(sine))
}

/// A circle as a closed line.
pub(super) fn circle(centre: (i32, i32), radius: i32) -> Vec<(i32, i32)> {
    let steps = (0..=STEPS).step_by(3);
    steps.map(|step| around(centre, radius, step)).collect()
}

/// Half the height of a glyph.
const RADIUS: i32 = 6 * FINE;

impl Glyph {
    /// Puts it at a place.
    pub(super) fn draw(self, picture: &mut Picture, at: (i32, i32)) {
        let corners = |corners: &[(i32, i32)]| {
            let corner = |(x, y): &(i32, i32)| (at.0 + x * RADIUS / 8, at.1 + y * RADIUS / 8);
            corners.iter().map(corner).collect::<Vec<_>>()
        };
        let (ink, filled, outline) = match self {
            Self::Verdict(Mark::New) => (Ink::Blue, Some(circle(at, RADIUS)), None),
            Self::Verdict(Mark::Service) => {
                let right = (54..=90).step_by(3);
                let half = right.map(|step| around(at, RADIUS, step)).collect();
                (Ink::Blue, Some(half), Some(circle(at, RADIUS)))
            }
            Self::Verdict(Mark::Small) => {
                let points = [(-9, -7), (9, -7), (0, 9)];
                (Ink::Orange, Some(corners(&points)), None)
            }
            Self::Verdict(Mark::Large) => {
                let points = [(-9, 7), (9, 7), (0, -9)];
                (Ink::Orange, Some(corners(&points)), None)
            }
            Self::Verdict(Mark::Shape) => (Ink::Orange, Some(corners(&DIAMOND)), None),
            Self::Verdict(Mark::Open) => {
                let points = [(-9, -8), (9, 8), (9, -8), (-9, 8)];
                (Ink::Soft, Some(corners(&points)), None)
            }
            Self::Verdict(_) => (Ink::Soft, None, Some(circle(at, RADIUS))),
            Self::Direction(0) => (Ink::Ink, Some(circle(at, RADIUS)), None),
            Self::Direction(1) => (Ink::Ink, None, Some(circle(at, RADIUS))),
            Self::Direction(2) => (Ink::Ink, Some(corners(&DIAMOND)), None),
            Self::Direction(_) => (Ink::Ink, None, Some(corners(&DIAMOND))),
        };
        if let Some(points) = filled {
            picture.shapes.push(Shape::Fill(ink, points));
        }
        if let Some(points) = outline {
            picture.line(ink, 2 * FINE, &points, 0);
        }
    }
}

/// Closed, so that it can be a line.
const DIAMOND: [(i32, i32); 5] = [(0, -10), (10, 0), (0, 10), (-10, 0), (0, -10)];

/// How a direction is marked, as a character.
pub(super) const fn character(direction: usize) -> char {
    match direction {
        0 => '●',
        1 => '○',
        2 => '◆',
        _ => '◇',
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cosines_are_those_of_their_angles() {
        assert_eq!([0, 12, 18, 36].map(cosine), [ONE, ONE / 2, 0, -ONE]);
        let one = i64::from(ONE);
        let near = |product: i64, part: i64| (product - part * one).abs() <= 2 * one;
        let pair = |step| [cosine(step), cosine(step + STEPS * 3 / 4)].map(i64::from);
        for step in 0..STEPS {
            let [cosine_here, sine_here] = pair(step);
            let length = cosine_here * cosine_here + sine_here * sine_here;
            assert!(near(length, one), "{step}");
            // One step on: the sum of two angles.
            let ([cosine_one, sine_one], [cosine_next, _]) = (pair(1), pair(step + 1));
            let sum = cosine_here * cosine_one - sine_here * sine_one;
            assert!(near(sum, cosine_next), "{step}");
        }
    }
}
