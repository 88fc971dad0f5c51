//! Do the stated intervals hold the truth as often as they say?

use std::fmt::Write;

use fenderbench::form::{Place, Spot, mean_size, oval, taper};
use fenderbench::quantity::{Exact, Size, Weights};
use fenderbench::uncertainty::{
    Budget, Climate, Distribution, Draw, Material, Measured, Probability, Sample, Source, SourceId,
    correction, quanta, thermal_sources, thermal_terms,
};

mod features;

use super::chance::Chance;
use super::journals::REPEATS;
use crate::Answer;
use features::{
    BORE, FEATURES, GRADUATIONS, JOURNAL, KNOWN, REPEATABILITY, SEED, SEED_FOR_BUILDING, SETTING,
    SHAPE, TEMPERATURE, THERMOMETER,
};

/// Quanta in a millimetre.
const MILLIMETRE: f64 = 1e7;

/// The stated intervals hold the truth this often, in percent.
const STATED: f64 = 95.0;
/// At least, always.
const LEAST: f64 = 93.0;
/// At most, where no rectangular source holds more than half the variance:
/// one that does is narrower than the normal interval.
const MOST: f64 = 97.0;

/// A shop on one day: what is believed of it, and how it is.
struct Shop {
    climate: Climate,
    /// In °C from 20.
    departure: f64,
    sources: Vec<Source>,
    /// The error of the departure, shared by all.
    off: f64,
}

/// A gauge in one setting on one part.
struct Gauge {
    graduation: i64,
    repeatability: f64,
    setting: f64,
    part: Material,
    /// The part's size over that on the gauge, less one.
    growth: f64,
    /// Setting, repeatability, resolution.
    own: [SourceId; 3],
    thermal: [SourceId; 4],
}

/// A uniform error of a source, which is rectangular.
fn rectangular(chance: &mut Chance, source: &Source) -> f64 {
    let half = source.u() * 3.0_f64.sqrt();
    chance.within(-half, half)
}

#[expect(clippy::cast_possible_truncation, reason = "thousandths of a degree")]
fn shop(chance: &mut Chance) -> Shop {
    let [low, high] = TEMPERATURE;
    let thousandths = chance.within(low, high) as i32;
    let (climate, departure) = if chance.unit() < THERMOMETER {
        let shown = f64::from(thousandths) / 1_000.0;
        (Climate::Degrees(thousandths), shown - 20.0)
    } else {
        (Climate::Mild, 0.0)
    };
    let steel = Material::Steel.expansion();
    let [source, ..] = thermal_sources(steel, steel, climate);
    let off = rectangular(chance, &source);
    Shop {
        climate,
        departure,
        sources: vec![source],
        off,
    }
}

impl Shop {
    #[expect(clippy::cast_precision_loss, reason = "small numbers")]
    fn gauge(&mut self, chance: &mut Chance, part: Material) -> Gauge {
        let pick = (chance.unit() * GRADUATIONS.len() as f64).floor();
        let mut graduations = GRADUATIONS.iter().zip(1_u8..);
        let graduation = graduations.find(|(_, n)| pick < f64::from(*n));
        let graduation = graduation.map_or(MILLIMETRE as i64, |(graduation, _)| *graduation);
        let within = |chance: &mut Chance, [low, high]: [f64; 2]| {
            graduation as f64 * chance.within(low, high)
        };
        let repeatability = within(chance, REPEATABILITY);
        let setting = within(chance, SETTING);
        let of_repeats = if chance.unit() < KNOWN {
            Source::normal(repeatability)
        } else {
            let spot = chance.within(0.0, 1e6);
            let repeat = |_| read(chance, spot, repeatability, graduation);
            let repeats: Sample = (0..REPEATS).map(repeat).collect();
            repeats.spread().map_or(Source::UNKNOWN, Source::estimated)
        };
        let resolution = Source::resolution(Size::from_quanta(graduation));
        let own = [Source::normal(setting), of_repeats, resolution];
        let own = own.map(|source| self.add(source));
        let (of_part, of_gauge) = (part.expansion(), Material::Steel.expansion());
        let [_, apart, a, b] = thermal_sources(of_part, of_gauge, self.climate);
        let off = [apart, a, b].map(|source| rectangular(chance, &source));
        let [apart, a, b] = [apart, a, b].map(|source| self.add(source));
        let [by, off_part, off_gauge] = off;
        let warm = self.departure + self.off;
        let expansion = |nano: i64, off: f64| nano as f64 / 1e9 + off;
        let growth = expansion(of_gauge.nano_per_degree, off_gauge) * warm
            - expansion(of_part.nano_per_degree, off_part) * (warm + by);
        Gauge {
            graduation,
            repeatability,
            setting: chance.normal(setting),
            part,
            growth,
            own,
            thermal: [SourceId(0), apart, a, b],
        }
    }

    fn add(&mut self, source: Source) -> SourceId {
        self.sources.push(source);
        SourceId(self.sources.len() - 1)
    }

    /// A reading of a true size in quanta, as the app takes it.
    fn reading(&self, chance: &mut Chance, gauge: &Gauge, size: f64, number: usize) -> Measured {
        let shown = size / (1.0 + gauge.growth) + gauge.setting;
        let read = read(chance, shown, gauge.repeatability, gauge.graduation);
        let (part, steel) = (gauge.part.expansion(), Material::Steel.expansion());
        let added = Exact::from(correction(read, part, steel, self.climate));
        let shared = gauge.thermal.map(|source| Draw { number: 0, source });
        let [setting, repeatability, resolution] = gauge.own;
        let draw = |source, number| (Draw { number, source }, 1.0);
        let own = [
            draw(setting, 0),
            draw(repeatability, number),
            draw(resolution, number),
        ];
        let thermal = thermal_terms(read, part, steel, self.climate, shared);
        Measured::new(Exact::from(read) + added, &[&own[..], &thermal].concat())
    }
}

/// To the nearest line.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_precision_loss,
    reason = "sizes in quanta"
)]
fn read(chance: &mut Chance, size: f64, repeatability: f64, graduation: i64) -> Size {
    let lines = libm::round((size + chance.normal(repeatability)) / graduation as f64);
    Size::from_quanta(lines as i64 * graduation)
}

/// How often the truth lay within, of all and of those in which no
/// rectangular source holds more than half of the variance.
#[derive(Default)]
struct Held {
    all: [u32; 2],
    normal: [u32; 2],
}

impl Held {
    fn count(&mut self, value: &Measured, truth: f64, sources: &[Source]) {
        let budget = Budget::of(value, sources);
        let expanded = budget.combined.expanded(Probability::new(STATED / 100.0));
        let holds = u32::from((quanta(value.value()) - truth).abs() <= expanded);
        let is_rectangular = |id: SourceId| {
            let source = sources.get(id.0);
            source.is_some_and(|source| source.distribution() == Distribution::Rectangular)
        };
        let mut rows = budget.rows.iter();
        let is_normal = rows.all(|row| row.share <= 0.5 || !is_rectangular(row.source));
        let add = |[of, held]: &mut [u32; 2]| (*of, *held) = (*of + 1, *held + holds);
        add(&mut self.all);
        if is_normal {
            add(&mut self.normal);
        }
    }
}

fn percent([of, held]: [u32; 2]) -> f64 {
    100.0 * f64::from(held) / f64::from(of.max(1))
}

const NAMES: [&str; 5] = ["size", "taper", "oval 2A", "oval 2B", "clearance"];

/// One journal read at four places, and one piston in its bore.
fn one(chance: &mut Chance, held: &mut [Held; 5]) -> Option<()> {
    let [size, taper_held, cosine, sine, clearance] = held;
    let mut shop = shop(chance);
    let gauge = shop.gauge(chance, Material::Steel);
    let [low, high] = JOURNAL;
    let mean = chance.within(low, high) * MILLIMETRE;
    let mut shape = || chance.within(-SHAPE, SHAPE) * MILLIMETRE;
    let (by, a, b) = (shape(), shape(), shape());
    let places = [(0, 0, a), (0, 90, -a), (1, 45, b), (1, 135, -b)];
    let mut readings = Vec::new();
    let mut spots = Vec::new();
    for (number, (along, angle, differs)) in places.into_iter().enumerate() {
        let end = if along == 0 { by } else { -by };
        let true_size = mean + (end + differs) / 2.0;
        readings.push(shop.reading(chance, &gauge, true_size, number));
        spots.push(Spot {
            place: Place { along, angle },
            weights: Weights::mean_of([number]),
        });
    }
    let sources = &shop.sources;
    let value = |weights: &Weights| Measured::weighted(weights, &readings);
    size.count(&value(&mean_size(&spots)?)?, mean, sources);
    let tapers = taper(&spots, 0, 1);
    taper_held.count(&value(&tapers.first()?.weights)?, by, sources);
    let oval = oval(&spots)?;
    cosine.count(&value(&oval.cosine)?.scaled(2, 1), a, sources);
    sine.count(&value(&oval.sine)?.scaled(2, 1), b, sources);

    let of_bore = shop.gauge(chance, Material::GreyIron);
    let of_piston = shop.gauge(chance, Material::PistonAlloy);
    let [low, high] = BORE;
    let bore = chance.within(low, high) * MILLIMETRE;
    let gap = chance.within(0.0, 2.0 * SHAPE) * MILLIMETRE;
    let readings = [
        shop.reading(chance, &of_bore, bore, 0),
        shop.reading(chance, &of_bore, bore, 1),
        shop.reading(chance, &of_piston, bore - gap, 0),
    ];
    let [first, second, piston] = &readings;
    let mean = Measured::sum(&[(1, first), (1, second)], 2);
    clearance.count(&(&mean - piston), gap, &shop.sources);
    Some(())
}

/// How often the stated intervals hold the truth, and whether that is enough.
pub fn command(building: bool) -> Result<Answer, String> {
    let seed = if building { SEED_FOR_BUILDING } else { SEED };
    let mut held: [Held; 5] = Default::default();
    let mut chance = Chance::part(seed, 0);
    for _ in 0..FEATURES {
        one(&mut chance, &mut held).ok_or("A feature cannot be computed.")?;
    }
    let mut text = format!(
        "Intervals of {STATED} % that hold the truth, in percent of all, and of those in which no\n\
         rectangular source has more than half of the variance (how many).\n\n"
    );
    let mut missed = Vec::new();
    for (name, held) in NAMES.iter().zip(&held) {
        let (all, normal) = (percent(held.all), percent(held.normal));
        let [of, _] = held.normal;
        let _ = writeln!(text, "{name:<10} {all:6.2} | {normal:6.2} ({of})");
        if all < LEAST || normal < LEAST {
            missed.push(format!(
                "{name}: covered {all:.2} and {normal:.2}, at least {LEAST}"
            ));
        }
        if MOST < normal {
            missed.push(format!("{name}: covered {normal:.2}, at most {MOST}"));
        }
    }
    for why in &missed {
        let _ = writeln!(text, "MISSED: {why}");
    }
    text.push('\n');
    let holds = missed.is_empty();
    Ok(Answer { text, holds })
}
