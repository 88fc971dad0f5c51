//! What temperature does to a size.
//!
//! A size is meant at 20 °C (ISO 1). A part of size G read with a gauge that
//! is right at 20 °C has the size G (1 + α_gauge θ − α_part (θ + δ)), with θ
//! the gauge's departure from 20 °C and δ how much warmer the part is than
//! the gauge (after JCGM 100 H.1.1).

use core::fmt;

use super::float::ratio;
use super::{Draw, Source};
use crate::quantity::{Deviation, Size, round_half_even};

/// How a material grows with temperature.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Expansion {
    /// Coefficient of linear expansion, in 1e-9 per °C.
    pub nano_per_degree: i64,
    /// How far it may be off either way, in the same unit; rectangular.
    pub half_width: i64,
}

/// What parts and gauges are made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Material {
    /// Steel: crankshafts, rods, and the frames and rods of gauges.
    Steel,
    /// Grey cast iron: most iron blocks.
    GreyIron,
    /// Ductile (nodular) iron: cast crankshafts.
    DuctileIron,
    /// Aluminium alloy of pistons, cast or forged.
    PistonAlloy,
    /// Aluminium alloy of blocks and heads.
    CastAluminium,
}

impl Material {
    /// All of them.
    pub const ALL: [Self; 5] = [
        Self::Steel,
        Self::GreyIron,
        Self::DuctileIron,
        Self::PistonAlloy,
        Self::CastAluminium,
    ];

    /// The word in files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Steel => "steel",
            Self::GreyIron => "grey_iron",
            Self::DuctileIron => "ductile_iron",
            Self::PistonAlloy => "piston_alloy",
            Self::CastAluminium => "cast_aluminium",
        }
    }

    /// The material of this word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|one| one.key() == key)
    }

    /// How it grows near 20 °C. The middle and the half-width are our own
    /// choice, so that they hold the published values of the alloys a part
    /// may be of:
    ///
    /// | Material | Published, in 1e-6 per °C |
    /// | --- | --- |
    /// | steel | 11.3 to 12.3 (1040, 1020, 4140, 4340: Callister, table B.6); gauge steel 11.5 (JCGM 100 H.1.3.3) |
    /// | grey iron | 11.4 (Callister, table B.6); 11 (materials data base); 10.5 (from memory) |
    /// | ductile iron | 10.6 and 11.2 (80-55-06 and 60-40-18: Callister, table B.6) |
    /// | piston alloy | 19.5 to 20.5 for the eutectic one (piston alloy data sheet); 22 for 2618 (materials data base); 18.0 for a hypereutectic one (from memory) |
    /// | cast aluminium | 21.5 (356.0: Callister, table B.6); 20 to 22 (A390, A357, 328: materials data base) |
    #[must_use]
    pub const fn expansion(self) -> Expansion {
        let (nano_per_degree, half_width) = match self {
            Self::Steel => (11_800, 1_000),
            Self::GreyIron => (11_000, 600),
            Self::DuctileIron => (10_900, 500),
            Self::PistonAlloy => (20_500, 2_500),
            Self::CastAluminium => (21_500, 1_500),
        };
        Expansion {
            nano_per_degree,
            half_width,
        }
    }
}

/// How warm it is where the gauges are.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Climate {
    /// A cold shop: 8 °C, give or take 6.
    Cold,
    /// A mild one: 20 °C, give or take 6. What is taken where nothing is told.
    #[default]
    Mild,
    /// A hot one: 32 °C, give or take 6.
    Hot,
    /// Read from a thermometer beside the parts: thousandths of a °C, give or
    /// take 1 °C.
    Degrees(i32),
}

/// The departure of the words from 20 °C and their half-width, in
/// thousandths of a °C. Our own choice: three bands that touch and hold the
/// shops in which anybody measures.
const WORD_APART: i64 = 12_000;
const WORD_HALF_WIDTH: i64 = 6_000;

/// Of a thermometer: the correction to 20 °C is worth making where the
/// temperature was recorded this well (common practice).
const DEGREES_HALF_WIDTH: i64 = 1_000;

/// How much warmer or colder than the gauge a part may be. Our own choice for
/// parts that stood together with the gauges but were handled; half of it
/// where somebody minds a thermometer.
const DIFFERENCE_HALF_WIDTH: i64 = 2_000;

/// Thousandths of a °C in one.
const PER_DEGREE: i128 = 1_000;
/// Parts of 1e-9 in one.
const NANO: i128 = 1_000_000_000;

/// What a climate stands for, in thousandths of a °C.
struct Numbers {
    /// Departure from 20 °C.
    departure: i64,
    /// How far that may be off either way.
    within: i64,
    /// How far part and gauge may be apart either way.
    apart: i64,
}

impl Climate {
    /// Reads a climate as files have it: `cold`, `mild`, `hot`, or degrees
    /// such as `-3.5`; `None` unless it is written exactly as
    /// [`fmt::Display`] writes it.
    ///
    /// ```
    /// use fenderbench::uncertainty::Climate;
    /// assert_eq!(Climate::parse("-3.5"), Some(Climate::Degrees(-3_500)));
    /// assert_eq!(Climate::parse("-3.50"), None);
    /// ```
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let climate = match text {
            "cold" => Self::Cold,
            "mild" => Self::Mild,
            "hot" => Self::Hot,
            _ => {
                let (whole, decimals) = text.split_once('.').unwrap_or((text, ""));
                Self::Degrees(format!("{whole}{decimals:0<3}").parse().ok()?)
            }
        };
        (climate.to_string() == text).then_some(climate)
    }

    fn numbers(self) -> Numbers {
        let word = |departure| Numbers {
            departure,
            within: WORD_HALF_WIDTH,
            apart: DIFFERENCE_HALF_WIDTH,
        };
        match self {
            Self::Cold => word(-WORD_APART),
            Self::Mild => word(0),
            Self::Hot => word(WORD_APART),
            Self::Degrees(thousandths) => Numbers {
                departure: i64::from(thousandths) - 20_000,
                within: DEGREES_HALF_WIDTH,
                apart: DIFFERENCE_HALF_WIDTH / 2,
            },
        }
    }
}

/// The word in files, or degrees with a point and no more decimals than needed.
impl fmt::Display for Climate {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Cold => f.write_str("cold"),
            Self::Mild => f.write_str("mild"),
            Self::Hot => f.write_str("hot"),
            Self::Degrees(thousandths) => {
                let sign = if *thousandths < 0 { "-" } else { "" };
                let amount = thousandths.unsigned_abs();
                let text = format!("{sign}{}.{:03}", amount / 1_000, amount % 1_000);
                f.write_str(text.trim_end_matches('0').trim_end_matches('.'))
            }
        }
    }
}

/// What is to be added to a size read at this temperature so that it is the
/// size at 20 °C, to the nearest quantum; part and gauge equally warm.
///
/// ```
/// use fenderbench::quantity::Size;
/// use fenderbench::uncertainty::{Climate, Material, correction};
/// let bore = Size::from_quanta(1_016_000_000);
/// let iron = Material::GreyIron.expansion();
/// let mild = correction(bore, iron, Material::Steel.expansion(), Climate::Mild);
/// assert_eq!(mild.quanta(), 0);
/// ```
#[must_use]
pub fn correction(size: Size, part: Expansion, gauge: Expansion, climate: Climate) -> Deviation {
    let more = i128::from(gauge.nano_per_degree) - i128::from(part.nano_per_degree);
    let departure = climate.numbers().departure;
    // Three factors of at most 64 bits could pass 128; none real comes near.
    let growth = i128::from(size.quanta()).saturating_mul(more.saturating_mul(departure.into()));
    let quanta = round_half_even(growth, NANO * PER_DEGREE);
    let quanta = quanta.clamp(i64::MIN.into(), i64::MAX.into());
    Deviation::from_quanta(i64::try_from(quanta).unwrap_or_default())
}

/// The four sources of temperature, in the order of [`thermal_terms`]: the
/// departure of the gauge from 20 °C and the difference between part and
/// gauge, in °C; the expansion of the part and of the gauge, per °C.
#[must_use]
pub fn thermal_sources(part: Expansion, gauge: Expansion, climate: Climate) -> [Source; 4] {
    let Numbers { within, apart, .. } = climate.numbers();
    [
        Source::rectangular(degrees(within)),
        Source::rectangular(degrees(apart)),
        Source::rectangular(coefficient(part.half_width)),
        Source::rectangular(coefficient(gauge.half_width)),
    ]
}

/// How a size hangs on the four, each under the draw that the caller gives
/// it: the departure is one for all that is read in one shop, the difference
/// one for parts that lie together, an expansion one for parts of one make.
///
/// An expansion acts through a temperature that is itself in doubt. That doubt
/// is counted with it, as the terms of second order are in JCGM 100 H.1.7.
#[must_use]
pub fn thermal_terms(
    size: Size,
    part: Expansion,
    gauge: Expansion,
    climate: Climate,
    draws: [Draw; 4],
) -> [(Draw, f64); 4] {
    let size = ratio(size.quanta().into(), 1);
    let sources = thermal_sources(part, gauge, climate);
    let (part, gauge) = (
        coefficient(part.nano_per_degree),
        coefficient(gauge.nano_per_degree),
    );
    let [within, apart, ..] = sources.map(|source| source.u() * source.u());
    let departure = degrees(climate.numbers().departure);
    let acting = |doubt: f64| (departure * departure + doubt).sqrt().copysign(departure);
    let [d0, d1, d2, d3] = draws;
    [
        (d0, size * (gauge - part)),
        (d1, -size * part),
        (d2, -size * acting(within + apart)),
        (d3, size * acting(within)),
    ]
}

fn degrees(thousandths: i64) -> f64 {
    ratio(thousandths.into(), PER_DEGREE)
}

fn coefficient(nano: i64) -> f64 {
    ratio(nano.into(), NANO)
}
