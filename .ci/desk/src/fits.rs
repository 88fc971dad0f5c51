//! Fitted ovals by the hundred, for an independent library to check.

use std::fmt::Write;

use fenderbench::form::{Oval, Place, Spot, oval};
use fenderbench::quantity::{Exact, Size, Weights};

/// How many features with a fit are told.
const FITS: usize = 200;

/// Every so many features one is read very often.
const OFTEN: usize = 10;

/// One line of JSON a feature: `places` as [rank along the axis, degrees] and
/// `readings` in quanta of 0.1 nm, one for each reading, and `fit`: null where
/// there is none, else `means` as [rank, numerator, denominator], `cosine`
/// and `sine` as [numerator, denominator], `freedom`, `size` in quanta,
/// whether that is `exact`, and `axis` in ten-thousandths of a degree.
/// Features without a fit come as they turn up.
pub fn text() -> Result<String, String> {
    let mut chance = Chance(0x0b0e_d0f1);
    let mut text = String::new();
    let mut fits = 0;
    while fits < FITS {
        let (places, readings) = feature(&mut chance, fits % OFTEN == OFTEN - 1);
        let fit = match oval(&spots(&places)) {
            Some(fit) => {
                fits += 1;
                told(&fit, &readings).ok_or("a fit has no value.")?
            }
            None => "null".to_owned(),
        };
        let places: Vec<_> = places.iter().map(|p| [p.along.into(), p.angle]).collect();
        let readings: Vec<_> = readings.iter().map(|size| size.quanta()).collect();
        // Writing to a string cannot fail.
        let _ = writeln!(
            text,
            "{{\"places\":{places:?},\"readings\":{readings:?},\"fit\":{fit}}}"
        );
    }
    Ok(text)
}

/// Some places on one to four levels, read in any order, and what an oval
/// with scatter reads there on a gauge of 1 µm or 0.0001 in.
fn feature(chance: &mut Chance, often: bool) -> (Vec<Place>, Vec<Size>) {
    let levels = 1 + chance.below(4);
    let means: Vec<i64> = {
        let size = 200_000_000 + chance.below(1_300_000_000);
        (0..levels)
            .map(|_| size + chance.below(1_000_000))
            .collect()
    };
    let (a, b) = (chance.around(500_000), chance.around(500_000));
    let graduation = [10_000, 25_400].get(usize::from(chance.below(2) == 1));
    let graduation = graduation.copied().unwrap_or(1);
    let mut drawn = Vec::new();
    for along in 0..levels {
        for (angle, oval) in [(0, a), (45, b), (90, -a), (135, -b)] {
            let mean = usize::try_from(along).ok().and_then(|at| means.get(at));
            if let (Ok(along), Some(mean), true) = (u8::try_from(along), mean, chance.below(4) < 3)
            {
                drawn.push((Place { along, angle }, mean + oval));
            }
        }
    }
    let count = if often { 3_000 } else { 24 };
    let count = if drawn.is_empty() {
        0
    } else {
        1 + chance.below(count)
    };
    let mut places = Vec::new();
    let mut readings = Vec::new();
    for _ in 0..count {
        let at = chance.below(i64::try_from(drawn.len()).unwrap_or(1));
        if let Some((place, size)) = usize::try_from(at).ok().and_then(|at| drawn.get(at)) {
            let size = size + chance.around(50_000);
            places.push(*place);
            readings.push(Size::from_quanta(size / graduation * graduation));
        }
    }
    (places, readings)
}

/// The readings by place.
fn spots(places: &[Place]) -> Vec<Spot> {
    let mut all = places.to_vec();
    all.sort_unstable();
    all.dedup();
    let spot = |place: Place| {
        let here = (0..).zip(places).filter(|(_, other)| **other == place);
        let weights = Weights::mean_of(here.map(|(index, _)| index));
        Spot { place, weights }
    };
    all.into_iter().map(spot).collect()
}

fn told(fit: &Oval, readings: &[Size]) -> Option<String> {
    let quotient = |value: Exact| format!("\"{}\",\"{}\"", value.numerator(), value.denominator());
    let value = |weights: &Weights| weights.value(readings).map(quotient);
    let mean = |(along, mean): &(u8, Weights)| Some(format!("[{along},{}]", value(mean)?));
    let means: Option<Vec<_>> = fit.means.iter().map(mean).collect();
    let shape = fit.shape(readings)?;
    let axis = shape.axis_ten_thousandths;
    Some(format!(
        "{{\"means\":[{}],\"cosine\":[{}],\"sine\":[{}],\"freedom\":{},\"size\":{},\"exact\":{},\"axis\":{}}}",
        means?.join(","),
        value(&fit.cosine)?,
        value(&fit.sine)?,
        fit.freedom,
        shape.size.quanta(),
        shape.exact,
        axis.map_or("null".to_owned(), |axis| axis.to_string()),
    ))
}

/// Numbers without a pattern, the same at every run (the splitmix64
/// generator; constants by its authors, from memory).
struct Chance(u64);

impl Chance {
    /// At least 0 and less than `end`.
    fn below(&mut self, end: i64) -> i64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut bits = self.0;
        bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        bits ^= bits >> 31;
        i64::try_from(bits >> 1).unwrap_or(0) % end.max(1)
    }

    /// From `-most` to `most`.
    fn around(&mut self, most: i64) -> i64 {
        self.below(2 * most + 1) - most
    }
}
