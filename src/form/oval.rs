//! Is it oval, by how much and which way, by all that was read?

use super::bound::{LEVELS_MAX, READINGS_MAX};
use super::{OvalShape, Spot};
use crate::quantity::{Size, Weights};

/// A fitted oval: D = mean of the level + A cos 2t + B sin 2t, where D is
/// the diameter in direction t. One oval for the whole length, one mean for
/// each level.
///
/// Its size is not linear in the readings: see [`Oval::shape`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Oval {
    /// A: half of what the diameter at 0° has over the one at 90°.
    pub cosine: Weights,
    /// B: half of what the diameter at 45° has over the one at 135°.
    pub sine: Weights,
    /// The mean diameter of each level that was read, by rank. A barrel or a
    /// taper between these rests on one oval being the same all along.
    pub means: Vec<(u8, Weights)>,
    /// Readings less fitted numbers: what is left to judge the fit by. At
    /// zero every reading is met exactly, whatever it is.
    pub freedom: usize,
}

/// What the readings of a level sum up to, each counting as one.
#[derive(Default)]
struct Level {
    along: u8,
    readings: i128,
    /// Those at 0° and 90°, which see A; the others see B.
    facing: i128,
    /// Sum of cos 2t.
    cosine: i128,
    /// Sum of sin 2t.
    sine: i128,
}

/// The least-squares fit of an oval to every reading: repeats weigh as often
/// as they were read. Exact, and the same in any order.
///
/// `None` where the readings do not tell A and B apart from the means (two
/// square diameters, in the same directions at each level, never do: an oval
/// at 45° to them leaves no trace); where a direction is none of 0°, 45°,
/// 90°, 135°; beyond [`LEVELS_MAX`] or [`READINGS_MAX`]; and where a weight
/// does not fit 64 bits, which takes four levels and more than 4 590
/// readings unevenly spread.
///
/// # What two-point diameters cannot see
/// A radius R + a cos nt gives the diameter 2R + a (1 + (−1)ⁿ) cos nt. With
/// three, five, seven lobes that is 2R in every direction: a Reuleaux
/// triangle of width w measures w all round while its radius varies by
/// 0.155 w. With directions 45° apart four lobes are in the residuals alone,
/// and six count as an oval. Roundness needs a turn on an axis.
#[must_use]
pub fn oval(spots: &[Spot]) -> Option<Oval> {
    let levels = levels(spots)?;
    let readings: i128 = levels.iter().map(|level| level.readings).sum();
    if LEVELS_MAX < levels.len() || i128::from(READINGS_MAX) < readings {
        return None;
    }
    // The normal equations with the means taken out, times the product of
    // the readings of the levels, so that all is whole. That product is at
    // most 2 500⁴, and the largest number here stays below 2^116.
    let product: i128 = levels.iter().map(|level| level.readings).product();
    let (mut cc, mut ss, mut cs) = (0, 0, 0);
    for level in &levels {
        let share = product / level.readings;
        let across = level.readings - level.facing;
        cc += share * (level.readings * level.facing - level.cosine * level.cosine);
        ss += share * (level.readings * across - level.sine * level.sine);
        cs -= share * level.cosine * level.sine;
    }
    // The determinant of all the normal equations: the division leaves no
    // rest, nor do those below, as Cramer's rule has whole numerators.
    let determinant = (cc * ss - cs * cs) / product;
    if determinant == 0 {
        return None;
    }
    let mut cosine = Vec::new();
    let mut sine = Vec::new();
    for spot in spots {
        let level = levels.iter().find(|l| l.along == spot.place.along)?;
        let share = product / level.readings;
        let (c, s) = second_harmonic(spot.place.angle)?;
        let (c, s) = (
            c * product - share * level.cosine,
            s * product - share * level.sine,
        );
        cosine.push((ss * c - cs * s) / product);
        sine.push((cc * s - cs * c) / product);
    }
    let weights = |factors: &[i128]| {
        let parts = factors
            .iter()
            .copied()
            .zip(spots.iter().map(|s| &s.weights));
        Weights::of_sums(&parts.collect::<Vec<_>>(), determinant)
    };
    let mean = |level: &Level| {
        let mut factors = Vec::new();
        for (spot, (a, b)) in spots.iter().zip(cosine.iter().zip(&sine)) {
            let own = i128::from(spot.place.along == level.along) * determinant;
            factors.push((own - a * level.cosine - b * level.sine) / level.readings);
        }
        Some((level.along, weights(&factors)?))
    };
    let freedom = usize::try_from(readings)
        .ok()?
        .checked_sub(levels.len() + 2)?;
    Some(Oval {
        cosine: weights(&cosine)?,
        sine: weights(&sine)?,
        means: levels.iter().map(mean).collect::<Option<_>>()?,
        freedom,
    })
}

impl Oval {
    /// Size and direction of the oval; `None` if a reading is not in the
    /// list.
    #[must_use]
    pub fn shape(&self, readings: &[Size]) -> Option<OvalShape> {
        OvalShape::of(self.cosine.value(readings)?, self.sine.value(readings)?)
    }
}

/// The levels by rank; `None` for a direction without whole harmonics.
fn levels(spots: &[Spot]) -> Option<Vec<Level>> {
    let mut levels: Vec<Level> = Vec::new();
    for spot in spots {
        let along = spot.place.along;
        let (cosine, sine) = second_harmonic(spot.place.angle)?;
        let readings = i128::from(spot.weights.denominator());
        let rank = levels.partition_point(|level| level.along < along);
        if levels.get(rank).is_none_or(|level| level.along != along) {
            let fresh = Level {
                along,
                ..Level::default()
            };
            levels.insert(rank, fresh);
        }
        let level = levels.get_mut(rank)?;
        level.readings += readings;
        level.facing += readings * cosine * cosine;
        level.cosine += readings * cosine;
        level.sine += readings * sine;
    }
    Some(levels)
}

/// cos 2t and sin 2t.
const fn second_harmonic(angle: u16) -> Option<(i128, i128)> {
    match angle {
        0 => Some((1, 0)),
        45 => Some((0, 1)),
        90 => Some((-1, 0)),
        135 => Some((0, -1)),
        _ => None,
    }
}
