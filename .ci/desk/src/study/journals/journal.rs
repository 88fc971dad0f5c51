//! A worn journal, and somebody who reads it.

use fenderbench::form::{Place, Spot, out_of_round};
use fenderbench::quantity::{Size, Weights};
use fenderbench::verdict::{OvalLevel, Part};

use super::super::chance::Chance;
use super::generator::{
    Along, GRADUATION, OUT_OF_ROUND_MEAN, REPEATS, SIZE_LEAST, SIZE_SPREAD, TAPER, TENTH,
};

/// Where a journal is read first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Design {
    /// For people.
    pub name: &'static str,
    /// At how many levels, from end to end.
    pub levels: u8,
    /// Level and part (0: at 0° and 90°, 1: at 45° and 135°).
    pub first: &'static [(u8, u16)],
}

/// Two places in the same two directions: the usual way.
pub const PLAIN: Design = Design {
    name: "plain 2 x 2",
    levels: 2,
    first: &[(0, 0), (1, 0)],
};
/// The same four readings, staggered.
pub const STAGGERED: Design = Design {
    name: "staggered 2 x 2",
    levels: 2,
    first: &[(0, 0), (1, 1)],
};
/// With the middle.
pub const STAGGERED_3: Design = Design {
    name: "staggered 3 x 2",
    levels: 3,
    first: &[(0, 0), (1, 1), (2, 0)],
};
/// All four directions at both ends.
pub const FOUR: Design = Design {
    name: "two levels x four",
    levels: 2,
    first: &[(0, 0), (0, 1), (1, 0), (1, 1)],
};

/// A journal as it is, in tenths.
pub struct Journal {
    /// The out-of-round of its worst level.
    pub worst: f64,
    /// Of each level the mean diameter, 2A and 2B.
    levels: Vec<(f64, [f64; 2])>,
}

impl Journal {
    pub fn by_chance(chance: &mut Chance, design: Design, along: Along) -> Self {
        let worst = chance.exponential(OUT_OF_ROUND_MEAN);
        // Half a turn of the axis is a whole one of the point (2A, 2B).
        let turn = chance.within(0.0, core::f64::consts::TAU);
        let size = SIZE_LEAST + chance.within(0.0, SIZE_SPREAD);
        let taper = chance.normal(TAPER);
        let is_first_greater = chance.unit() < 0.5;
        let last = f64::from(design.levels.saturating_sub(1).max(1));
        let level = |level: u8| {
            let at = f64::from(level) / last;
            let from_greater = if is_first_greater { at } else { 1.0 - at };
            let oval = worst * (1.0 - (1.0 - along.lesser) * from_greater);
            let parts = [oval * libm::cos(turn), oval * libm::sin(turn)];
            (size + taper * (at - 0.5), parts)
        };
        let levels = (0..design.levels).map(level).collect();
        Self { worst, levels }
    }

    /// The diameter at a level, 45° times `eighth`.
    fn diameter(&self, level: u8, eighth: u16) -> f64 {
        let Some((mean, [a, b])) = self.levels.get(usize::from(level)) else {
            return f64::NAN;
        };
        mean + match eighth {
            0 => a / 2.0,
            1 => b / 2.0,
            2 => -a / 2.0,
            _ => -b / 2.0,
        }
    }
}

/// A reading to the nearest line, in tenths.
fn read(chance: &mut Chance, diameter: f64, repeatability: f64) -> f64 {
    libm::round((diameter + chance.normal(repeatability)) / GRADUATION) * GRADUATION
}

/// Everything that was read of one journal.
pub struct Sheet<'a> {
    journal: &'a Journal,
    repeatability: f64,
    readings: Vec<Size>,
    /// Level, 45° times this, and the readings there.
    spots: Vec<(u8, u16, Vec<usize>)>,
}

impl<'a> Sheet<'a> {
    pub fn new(journal: &'a Journal, repeatability: f64) -> Self {
        Self {
            journal,
            repeatability,
            readings: Vec::new(),
            spots: Vec::new(),
        }
    }

    /// Reads two diameters square to each other.
    #[expect(clippy::cast_possible_truncation, reason = "a few inches in tenths")]
    pub fn look(&mut self, chance: &mut Chance, level: u8, part: u16) {
        for eighth in [part, part + 2] {
            let diameter = self.journal.diameter(level, eighth);
            let tenths = read(chance, diameter, self.repeatability);
            let index = self.readings.len();
            self.readings.push(Size::from_quanta(tenths as i64 * TENTH));
            let here = |spot: &&mut (u8, u16, Vec<usize>)| (spot.0, spot.1) == (level, eighth);
            match self.spots.iter_mut().find(here) {
                Some(spot) => spot.2.push(index),
                None => self.spots.push((level, eighth, vec![index])),
            }
        }
    }

    pub fn count(&self) -> usize {
        self.readings.len()
    }

    /// The oval level by level, as the app has it: differences of the means
    /// of square diameters, `once` being the variance of one such difference.
    #[expect(clippy::cast_precision_loss, reason = "small numbers")]
    pub fn ovals(&self, once: f64) -> Vec<OvalLevel> {
        let last = (self.journal.levels.len() as f64 - 1.0).max(1.0);
        let mut levels = vec![OvalLevel::default(); self.journal.levels.len()];
        for (level, at) in levels.iter_mut().zip(0_u16..) {
            level.at = 2.0 * f64::from(at) / last - 1.0;
        }
        let spots = self.spots.iter().map(|(level, eighth, indices)| Spot {
            place: Place {
                along: *level,
                angle: 45 * eighth,
            },
            weights: Weights::mean_of(indices.iter().copied()),
        });
        for found in out_of_round(&spots.collect::<Vec<_>>()) {
            let level = levels.get_mut(usize::from(found.along));
            let part = level.and_then(|level| level.parts.get_mut(usize::from(found.angle / 45)));
            let value = found.weights.value(&self.readings);
            if let (Some(part), Some(value)) = (part, value) {
                let looks = found.weights.terms().len() / 2;
                *part = Part {
                    value: value.numerator() as f64 / value.denominator() as f64,
                    variance: once / looks as f64,
                    looks: u16::try_from(looks).unwrap_or(u16::MAX),
                };
            }
        }
        levels
    }

    /// Sum of squares about the means of what was read more than once, in
    /// tenths squared, and its degrees of freedom.
    pub fn repeats(&self) -> (f64, f64) {
        let spots = self.spots.iter().map(|(_, _, indices)| {
            let readings = indices.iter().filter_map(|index| self.readings.get(*index));
            about_the_mean(readings.map(|size| tenths(*size)))
        });
        spots.fold((0.0, 0.0), |(ss, dof), (more, one)| (ss + more, dof + one))
    }
}

#[expect(clippy::cast_precision_loss, reason = "a few inches")]
fn tenths(size: Size) -> f64 {
    size.quanta() as f64 / TENTH as f64
}

/// Five readings of one spot: sum of squares about the mean, in tenths
/// squared, and degrees of freedom.
pub fn repeat_study(chance: &mut Chance, repeatability: f64) -> (f64, f64) {
    let spot = SIZE_LEAST + chance.within(0.0, SIZE_SPREAD);
    about_the_mean((0..REPEATS).map(|_| read(chance, spot, repeatability)))
}

fn about_the_mean(values: impl Iterator<Item = f64>) -> (f64, f64) {
    let (mut n, mut mean, mut ss) = (0.0, 0.0, 0.0);
    for value in values {
        n += 1.0;
        let off = value - mean;
        mean += off / n;
        ss += off * (value - mean);
    }
    (ss, (n - 1.0_f64).max(0.0))
}
