//! Engines of the slip study: what their parts truly measure, and what a
//! hand reads of them. Lengths are in tenths of a thou.

use fenderbench::quantity::{Entered, EnteredDeviation, Unit};
use fenderbench::session::{
    Direction, Extra, Feature, Gauge, GaugeKind, Indication, Kind, Level, Reading, Sense, Session,
    SetTo, Station,
};

use super::parameters as p;
pub use super::set_up::Sizes;
use super::set_up::{self as set_up, NearBy};
use crate::study::chance::Chance;

/// An engine on the bench, with the session of the person before it.
pub struct Engine {
    /// Set-up, limits and gauges; nothing read yet.
    pub session: Session,
    parts: Vec<(Feature, Part)>,
    mics: Hand,
    bores: Hand,
    seed: u64,
    chance: Chance,
}

/// What one feature truly measures.
enum Part {
    /// Made to a size, and grown at the top in two directions, lower down by
    /// a part of that.
    Bore {
        made: f64,
        across: f64,
        along: f64,
        middle: f64,
        bottom: f64,
    },
    Piston(f64),
    /// A mean, an oval with the direction it is longest in, and what differs
    /// along it.
    Journal {
        mean: f64,
        oval: f64,
        longest: f64,
        taper: f64,
        barrel: f64,
    },
}

/// How a person reads one gauge: standard deviation of a reading, and the
/// error of the setting.
struct Hand {
    sd: f64,
    off: f64,
}

impl Engine {
    pub fn draw(seed: u64, sizes: Sizes) -> Result<Self, String> {
        let mut chance = Chance::new(seed);
        let begun = set_up::begin(&mut chance, seed, sizes)?;
        let parts = parts(&mut chance, &begun);
        let dial = begun.session.gauge_for(Kind::Bore);
        let dial = dial.is_some_and(|(_, gauge, _)| gauge.kind == GaugeKind::DialBoreGauge);
        let sd = if dial {
            chance.within_band(p::HAND_DIAL)
        } else if chance.in_a_hundred(p::FIRST_WEEKEND) {
            p::HAND_FIRST_WEEKEND
        } else {
            chance.within_band(p::HAND_TELESCOPING)
        };
        let bores = Hand {
            sd,
            off: chance.normal(p::SETTING),
        };
        let mics = Hand {
            sd: chance.within_band(p::HAND_MICROMETER),
            off: chance.normal(p::SETTING),
        };
        Ok(Self {
            session: begun.session,
            parts,
            mics,
            bores,
            seed,
            chance,
        })
    }

    /// What the hand reads at a station, honestly.
    pub fn read(&mut self, station: Station) -> Result<Reading, String> {
        let of = Feature::of(station);
        let part = self.parts.iter().find(|(feature, _)| *feature == of);
        let (_, part) = part.ok_or_else(|| format!("{of} is not on this engine."))?;
        let hand = match station.kind {
            Kind::Bore => &self.bores,
            _ => &self.mics,
        };
        let lost = self.chance.in_a_hundred(p::FEEL_LOST);
        let sd = hand.sd * if lost { p::FEEL_LOST_FACTOR } else { 1.0 };
        let true_size = part.at(station) + self.shape(station);
        let size = true_size + hand.off + self.chance.normal(sd);
        let gauge = self.session.gauge_for(station.kind);
        let (id, gauge, setting) = gauge.ok_or("The session has no gauge.")?;
        let set = self.session.settings.get(&setting);
        let set = set.and_then(|setting| setting.value.set.as_ref());
        Ok(Reading {
            station,
            entered: indication(size, gauge, set)?,
            gauge: id,
            setting,
            taken: String::new(),
            kept: false,
            strikes: 0,
            extra: Extra::new(),
        })
    }

    /// How far a place of a bore lies off what wear makes of it: the same
    /// however often it is read.
    fn shape(&self, station: Station) -> f64 {
        if station.kind != Kind::Bore {
            return 0.0;
        }
        let name = station.to_string();
        let place = name.bytes().fold(self.seed, |seed, byte| {
            (seed ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)
        });
        Chance::new(place).normal(p::BORE_SHAPE)
    }
}

impl Part {
    fn at(&self, station: Station) -> f64 {
        match *self {
            Self::Bore {
                made,
                across,
                along,
                middle,
                bottom,
            } => {
                let part = match station.level {
                    Level::Top => 1.0,
                    Level::Middle => middle,
                    Level::Bottom => bottom,
                    _ => 0.0,
                };
                let mean = f64::midpoint(across, along);
                let swing = (across - along) / 2.0 * twice(station.direction, 0.0);
                made + part * (mean + swing)
            }
            Self::Piston(size) => size,
            Self::Journal {
                mean,
                oval,
                longest,
                taper,
                barrel,
            } => {
                let along = match station.level {
                    Level::First => taper / 2.0,
                    Level::Last => -taper / 2.0,
                    _ => barrel,
                };
                mean + along + oval / 2.0 * twice(station.direction, longest)
            }
        }
    }
}

/// The cosine of twice the angle between two directions.
fn twice(direction: Direction, from: f64) -> f64 {
    let degrees = f64::from(direction.degrees());
    libm::cos(2.0 * (degrees.to_radians() - from))
}

/// The kinds of which one may be the odd one.
const MEASURED: [Kind; 4] = [
    Kind::Bore,
    Kind::Piston,
    Kind::MainJournal,
    Kind::RodJournal,
];

fn parts(chance: &mut Chance, begun: &set_up::Begun) -> Vec<(Feature, Part)> {
    let (session, made, unit) = (&begun.session, &begun.made, begun.unit);
    let odd = chance.in_a_hundred(p::ODD_ONE);
    let odd = if odd { chance.one_of(&MEASURED) } else { None };
    let mut parts = Vec::new();
    let engine_wear = chance.exponential(p::BORE_WEAR_MEAN);
    let dust = chance.in_a_hundred(p::DUST);
    for feature in session.features_of(Kind::Bore) {
        let other = odd == Some(Kind::Bore) && feature.position == 1;
        let off = if other { oversize(chance, unit) } else { 0.0 };
        let made = made.bore + off + chance.within_band(p::BORE_BAND);
        parts.push((feature, bore(chance, made, engine_wear, dust)));
    }
    for feature in session.features_of(Kind::Piston) {
        let off = odd == Some(Kind::Bore) && feature.position == 1;
        let off = if off {
            first_made(&parts) - made.bore
        } else {
            0.0
        };
        let made = made.bore + off - begun.wall + chance.normal(p::PISTON_SPREAD);
        let gone = if chance.in_a_hundred(p::SKIRT_COLLAPSED) {
            chance.within_band(p::SKIRT_COLLAPSED_BY)
        } else {
            chance.exponential(p::SKIRT_WEAR_MEAN)
        };
        parts.push((feature, Part::Piston(made - gone)));
    }
    for (kind, made, oval) in [
        (Kind::MainJournal, made.main, p::MAIN_OVAL_MEAN),
        (Kind::RodJournal, made.rod, p::ROD_OVAL_MEAN),
    ] {
        let ground = made + chance.within_band(p::GRIND_PLACE);
        let wear = p::JOURNAL_WEAR_MEAN * chance.factor(p::JOURNAL_FACTOR);
        let all: Vec<_> = session.features_of(kind).collect();
        let ruined = chance.in_a_hundred(p::JOURNAL_RUINED);
        let ruined = if ruined { chance.one_of(&all) } else { None };
        for feature in all {
            let other = odd == Some(kind) && feature.position == 1;
            let off = if other { undersize(chance, unit) } else { 0.0 };
            let ground = ground - off + chance.within_band(p::GRIND_BAND);
            let part = journal(chance, ground, wear, oval, ruined == Some(feature));
            parts.push((feature, part));
        }
    }
    parts
}

/// To what the first bore was made, for its piston.
fn first_made(parts: &[(Feature, Part)]) -> f64 {
    match parts.first() {
        Some((_, Part::Bore { made, .. })) => *made,
        _ => 0.0,
    }
}

fn oversize(chance: &mut Chance, unit: Unit) -> f64 {
    set_up::step(chance, unit, NearBy::Above)
}

fn undersize(chance: &mut Chance, unit: Unit) -> f64 {
    set_up::step(chance, unit, NearBy::Below)
}

fn bore(chance: &mut Chance, made: f64, engine_wear: f64, dust: bool) -> Part {
    let mut across = engine_wear * chance.factor(p::CYLINDER_FACTOR);
    if chance.in_a_hundred(p::CYLINDER_BAD) {
        across *= p::CYLINDER_BAD_FACTOR;
    }
    let across = across.min(p::BORE_WEAR_MOST);
    let along = if chance.in_a_hundred(p::ALONG_ODD) {
        p::ALONG_ODD_PART
    } else {
        p::ALONG
    };
    let (middle, bottom) = if dust {
        (p::DUST_MIDDLE, p::DUST_BOTTOM)
    } else {
        (p::MIDDLE, p::BOTTOM)
    };
    Part::Bore {
        made,
        across,
        along: across * chance.within_band(along),
        middle: chance.within_band(middle),
        bottom: chance.within_band(bottom),
    }
}

fn journal(chance: &mut Chance, ground: f64, wear: f64, oval: f64, ruined: bool) -> Part {
    let (more, times) = if ruined {
        (
            chance.within_band(p::JOURNAL_RUINED_BY),
            p::JOURNAL_RUINED_OVAL,
        )
    } else {
        (0.0, 1.0)
    };
    Part::Journal {
        mean: ground - chance.exponential(wear) - more,
        oval: times * chance.exponential(oval),
        longest: chance.within_band((0.0, core::f64::consts::PI)),
        taper: chance.normal(p::JOURNAL_TAPER),
        barrel: chance.normal(p::JOURNAL_BARREL),
    }
}

/// What a gauge shows of a size, to its graduation.
fn indication(size: f64, gauge: &Gauge, set: Option<&SetTo>) -> Result<Indication, String> {
    let (unit, decimals) = (gauge.unit(), usize::from(gauge.decimals()));
    let step = set_up::tenths(gauge.graduation.size());
    let backward = set.is_some_and(|set| set.sense == Sense::PlusSmaller);
    let from = match set {
        Some(set) => set_up::tenths(set.size.size()),
        None => 0.0,
    };
    let shown = ((size - from) / step).round() * step;
    let shown = if backward { -shown } else { shown };
    let in_unit = match unit {
        Unit::Inch => shown / 10_000.0,
        Unit::Millimetre => shown * set_up::MM_IN_A_TENTH,
    };
    let text = format!("{in_unit:.decimals$}");
    if gauge.kind.reads_deviations() {
        let read = EnteredDeviation::parse(&text, unit).map_err(|why| why.to_string())?;
        return Ok(Indication::Deviation(read));
    }
    let read = Entered::parse(&text, unit).map_err(|why| why.to_string())?;
    Ok(Indication::Size(read))
}
