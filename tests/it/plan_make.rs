//! Sets by chance for the plan, in plain whole numbers, and the job each of
//! them is.

use fenderbench::quantity::Exact;
use fenderbench::remedy::{
    Bearings, Cylinder, Finish, Harm, Item, Job, Journal, Looks, Mixing, Part, Place, Price, Row,
    Shell, Stock, WornBore, WornJournal,
};
use fenderbench::uncertainty::Measured;
use fenderbench::verdict::{Band, Decision};

use crate::remedy_make::{Doubts, Reading, Sum};

#[derive(Clone, Debug, Default)]
pub struct Seen {
    pub harm: Option<Harm>,
    pub surface: Option<Finish>,
    pub contradictory: bool,
}

/// Lengths are in quanta, readings have a number of their own.
#[derive(Clone, Debug)]
pub struct RawCylinder {
    pub seen: Seen,
    pub worst: Reading,
    pub unworn: Option<Reading>,
    pub score: Option<Reading>,
    pub bore: Option<Reading>,
    pub piston: Option<Reading>,
    pub form: Option<Decision>,
    pub piston_form: Option<Decision>,
    pub piston_seen: Seen,
}

impl RawCylinder {
    /// The bore less its own piston.
    pub fn own(&self) -> Option<Sum> {
        Some(Sum::default().and(1, self.bore?).and(-1, self.piston?))
    }
}

#[derive(Clone, Debug)]
pub struct RawJournal {
    pub seen: Seen,
    pub smallest: Reading,
    pub score: Option<Reading>,
    pub runout: Option<Reading>,
    pub form: Option<Decision>,
}

#[derive(Clone, Debug)]
pub struct RawPlace {
    pub seen: Seen,
    pub shells_seen: Seen,
    pub journal: usize,
    pub form: Option<Decision>,
    pub housing: Option<Reading>,
    /// The journal square to the joint.
    pub size: Reading,
    pub clearance: Option<Reading>,
}

#[derive(Clone, Debug)]
pub struct RawRow {
    pub journals: Vec<RawJournal>,
    pub places: Vec<RawPlace>,
    pub standard: i64,
    pub as_made: i64,
    pub undersizes: Vec<i64>,
    pub greatest: Option<i64>,
    pub recentred: bool,
    pub walls: Vec<i64>,
    pub places_may_differ: bool,
    pub allowed: [i64; 2],
    pub wanted: [i64; 2],
    pub target: i64,
    pub neighbours: Option<i64>,
    pub can_be_machined: bool,
    /// A housing as made.
    pub made: i64,
}

#[derive(Debug)]
pub struct Raw {
    pub doubts: Doubts,
    pub cylinders: Vec<RawCylinder>,
    pub standard: i64,
    pub stock: Vec<(i64, Option<i64>)>,
    pub honing: i64,
    pub light_hone: i64,
    pub greatest: Option<i64>,
    pub allowed: [i64; 2],
    pub wanted: [i64; 2],
    pub target: i64,
    pub rows: [RawRow; 2],
    pub block: Seen,
    pub crank: Seen,
    pub alignment: Option<Decision>,
    pub straightness: Option<Decision>,
    pub prices: Vec<(Item, i64)>,
}

pub fn exact(quanta: i64) -> Exact {
    Exact::new(quanta.into(), 1)
}

fn band([low, high]: [i64; 2]) -> Band {
    Band::new(Some(exact(low)), Some(exact(high)))
}

fn measured(reading: Option<Reading>) -> Option<Measured> {
    reading.map(Reading::measured)
}

impl RawRow {
    fn bearings(&self) -> Bearings {
        let journal = |raw: &RawJournal| Journal {
            worn: WornJournal {
                smallest: raw.smallest.measured(),
                score: measured(raw.score),
                runout: measured(raw.runout),
            },
            form: raw.form,
        };
        let place = |raw: &RawPlace| {
            let size = raw.size.measured();
            Place {
                journal: raw.journal,
                form: raw.form,
                gap: measured(raw.housing).map(|housing| &housing - &size),
                gap_made: Some(&Measured::new(exact(self.made), &[]) - &size),
                clearance: measured(raw.clearance),
                thrust: false,
            }
        };
        let shell = |wall: &i64| Shell {
            wall: exact(*wall),
            used: false,
        };
        Bearings {
            journals: self.journals.iter().map(journal).collect(),
            places: self.places.iter().map(place).collect(),
            standard: exact(self.standard),
            as_made: exact(self.as_made),
            undersizes: self.undersizes.iter().copied().map(exact).collect(),
            greatest: self.greatest.map(exact),
            recentred: self.recentred,
            shells: self.walls.iter().map(shell).collect(),
            mixing: if self.places_may_differ {
                Mixing::Places
            } else {
                Mixing::Set
            },
            allowed: band(self.allowed),
            wanted: band(self.wanted),
            target: exact(self.target),
            neighbours: self.neighbours.map(exact),
            can_be_machined: self.can_be_machined,
        }
    }
}

impl Raw {
    pub fn job(&self) -> Job {
        let cylinder = |raw: &RawCylinder| Cylinder {
            worn: WornBore {
                largest: raw.worst.measured(),
                reference: measured(raw.unworn),
                score: measured(raw.score),
                offset: None,
            },
            form: raw.form,
            bore: measured(raw.bore),
            clearance: measured(raw.bore)
                .zip(measured(raw.piston))
                .map(|(bore, piston)| &bore - &piston),
        };
        let stock = |(over, piston): &(i64, Option<i64>)| Stock {
            over: exact(*over),
            piston: piston.map(exact),
        };
        let [mains, rods] = &self.rows;
        let mut looks = vec![(Part::Block, &self.block), (Part::Crank, &self.crank)];
        for (index, cylinder) in self.cylinders.iter().enumerate() {
            looks.push((Part::Cylinder(index), &cylinder.seen));
            looks.push((Part::Piston(index), &cylinder.piston_seen));
        }
        for (row, raw) in [Row::Mains, Row::Rods].into_iter().zip(&self.rows) {
            for (index, journal) in raw.journals.iter().enumerate() {
                looks.push((Part::Journal(row, index), &journal.seen));
            }
            for (index, place) in raw.places.iter().enumerate() {
                looks.push((Part::Housing(row, index), &place.seen));
                looks.push((Part::Shells(row, index), &place.shells_seen));
            }
        }
        let looks = looks.into_iter().map(|(part, seen)| {
            let looks = Looks {
                harm: seen.harm,
                surface: seen.surface,
                contradictory: seen.contradictory,
            };
            (part, looks)
        });
        let prices = self.prices.iter();
        Job {
            cylinders: self.cylinders.iter().map(cylinder).collect(),
            pistons: self.cylinders.iter().map(|raw| raw.piston_form).collect(),
            looks: looks.collect(),
            alignment: self.alignment,
            straightness: self.straightness,
            measured_later: false,
            standard: exact(self.standard),
            stock: self.stock.iter().map(stock).collect(),
            honing: exact(self.honing),
            light_hone: exact(self.light_hone),
            greatest: self.greatest.map(exact),
            allowed: band(self.allowed),
            wanted: band(self.wanted),
            target: exact(self.target),
            mains: mains.bearings(),
            rods: rods.bearings(),
            pins: Vec::new(),
            prices: prices
                .map(|(item, coins)| (*item, Price::new(*coins).unwrap()))
                .collect(),
        }
    }
}
