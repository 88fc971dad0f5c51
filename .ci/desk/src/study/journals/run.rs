//! How many bad journals are passed, good ones rejected, and none of both
//! settled: at the first pass, and when the advice is followed.

use std::thread;

use fenderbench::verdict::{Decision, Ovals, Repeats, Round};

use super::super::chance::Chance;
use super::generator::{Along, FAR_BEYOND, GRADUATION, LIMIT, SAME, TENTH};
use super::journal::{Design, Journal, Sheet, repeat_study};

/// One row of the study.
#[derive(Clone, Copy, Debug)]
pub struct Case {
    pub design: Design,
    pub along: Along,
    /// One standard deviation, in tenths.
    pub repeatability: f64,
    /// Whether that is known, or estimated from repeats.
    pub known: bool,
}

/// What became of the journals after so many rounds.
#[derive(Clone, Copy, Debug, Default)]
pub struct Stage {
    good: u32,
    bad: u32,
    far: u32,
    good_rejected: u32,
    bad_passed: u32,
    bad_rejected: u32,
    far_passed: u32,
    open: u32,
    readings: u32,
}

/// The first pass, and after each of the two rounds of advice.
pub type Stages = [Stage; 3];

impl Stage {
    fn count(&mut self, worst: f64, decision: Decision, readings: usize) {
        let (is_bad, is_far) = (LIMIT < worst, FAR_BEYOND < worst);
        let one = |is: bool| u32::from(is);
        self.bad += one(is_bad);
        self.good += one(!is_bad);
        self.far += one(is_far);
        self.open += one(decision == Decision::Open);
        let (passed, rejected) = (decision == Decision::In, decision == Decision::Out);
        self.bad_passed += one(is_bad && passed);
        self.far_passed += one(is_far && passed);
        self.bad_rejected += one(is_bad && rejected);
        self.good_rejected += one(!is_bad && rejected);
        self.readings += u32::try_from(readings).unwrap_or(u32::MAX);
    }

    fn add(&mut self, other: &Self) {
        self.good += other.good;
        self.bad += other.bad;
        self.far += other.far;
        self.good_rejected += other.good_rejected;
        self.bad_passed += other.bad_passed;
        self.bad_rejected += other.bad_rejected;
        self.far_passed += other.far_passed;
        self.open += other.open;
        self.readings += other.readings;
    }

    /// Of the bad ones, in percent.
    pub fn bad_passed(&self) -> f64 {
        percent(self.bad_passed, self.bad)
    }

    /// Of those far beyond the limit, in a thousand.
    pub fn far_passed(&self) -> f64 {
        10.0 * percent(self.far_passed, self.far)
    }

    /// Good ones among those rejected, in percent.
    pub fn good_among_rejected(&self) -> f64 {
        percent(self.good_rejected, self.good_rejected + self.bad_rejected)
    }

    /// Of all, in percent.
    pub fn open(&self) -> f64 {
        percent(self.open, self.good + self.bad)
    }

    /// Readings for each one of `first`.
    pub fn times(&self, first: &Self) -> f64 {
        percent(self.readings, first.readings) / 100.0
    }
}

fn percent(part: u32, of: u32) -> f64 {
    100.0 * f64::from(part) / f64::from(of.max(1))
}

/// Journals that are drawn with one seed.
const BATCH: usize = 1_000;

/// Draws, reads and judges so many journals, on all processors.
pub fn run(case: Case, seed: u64, journals: usize) -> Result<Stages, String> {
    let threads = thread::available_parallelism().map_or(1, usize::from);
    let batches = journals / BATCH;
    thread::scope(|scope| {
        let work = |first: usize| {
            move || {
                let mut stages = Stages::default();
                for batch in (first..batches).step_by(threads) {
                    let part = u64::try_from(batch).unwrap_or(u64::MAX);
                    let mut chance = Chance::part(seed, part);
                    for _ in 0..BATCH {
                        one(case, &mut chance, &mut stages);
                    }
                }
                stages
            }
        };
        let running: Vec<_> = (0..threads).map(|t| scope.spawn(work(t))).collect();
        let mut sum = Stages::default();
        for thread in running {
            let stages = thread.join();
            let stages = stages.map_err(|_| "A thread of the study broke.".to_owned())?;
            for (sum, stage) in sum.iter_mut().zip(&stages) {
                sum.add(stage);
            }
        }
        Ok(sum)
    })
}

/// Bad ones, in percent, that are passed where the largest difference of two
/// square diameters is held against the limit as it reads.
pub fn plainly(design: Design, seed: u64, journals: usize) -> f64 {
    let (mut bad, mut passed) = (0, 0);
    let mut chance = Chance::part(seed, u64::MAX);
    for _ in 0..journals {
        let journal = Journal::by_chance(&mut chance, design, SAME);
        let mut sheet = Sheet::new(&journal, 1.0);
        for (level, part) in design.first {
            sheet.look(&mut chance, *level, *part);
        }
        let levels = sheet.ovals(0.0);
        let parts = levels.iter().flat_map(|level| level.parts);
        let reads = parts.map(|part| part.value.abs()).fold(0.0, f64::max);
        if LIMIT < journal.worst {
            bad += 1;
            passed += u32::from(reads <= LIMIT * tenth());
        }
    }
    percent(passed, bad)
}

fn one(case: Case, chance: &mut Chance, stages: &mut Stages) {
    let journal = Journal::by_chance(chance, case.design, case.along);
    let study = repeat_study(chance, case.repeatability);
    let mut sheet = Sheet::new(&journal, case.repeatability);
    for (level, part) in case.design.first {
        sheet.look(chance, *level, *part);
    }
    let first = u16::try_from(case.design.first.len()).unwrap_or(u16::MAX);
    let mut decision = Decision::Open;
    for (stage, done) in stages.iter_mut().zip(0_u8..) {
        if decision == Decision::Open {
            let (once, factor) = noise(case, study, &sheet);
            let levels = sheet.ovals(once);
            let ovals = Ovals {
                levels: &levels,
                limit: LIMIT * tenth(),
                factor,
            };
            decision = ovals.decide();
            stage.count(journal.worst, decision, sheet.count());
            if decision == Decision::Open
                && let Some(round) = Round::after(done, first)
            {
                let repeats = Repeats { once, fixed: 0.0 };
                for look in ovals.ask(repeats, round).looks {
                    let level = u8::try_from(look / 2).unwrap_or(u8::MAX);
                    sheet.look(chance, level, u16::from(look % 2 == 1));
                }
            }
        } else {
            stage.count(journal.worst, decision, sheet.count());
        }
    }
}

/// The variance of one look, in quanta², and the factor of the rule.
fn noise(case: Case, study: (f64, f64), sheet: &Sheet) -> (f64, f64) {
    let resolution = GRADUATION * GRADUATION / 12.0;
    let square = tenth() * tenth();
    if case.known {
        let one = case.repeatability * case.repeatability + resolution;
        return (2.0 * one * square, student(f64::INFINITY));
    }
    let (more, dof) = sheet.repeats();
    let (ss, dof) = (study.0 + more, study.1 + dof);
    (2.0 * (ss / dof + resolution) * square, student(dof))
}

/// Student's t for 95 % on one side (Abramowitz and Stegun 26.7.5; from 4
/// degrees of freedom up good to 0.002).
fn student(dof: f64) -> f64 {
    let z = 1.644_853_626_951_472_7_f64;
    let z2 = z * z;
    let g1 = (z2 + 1.0) * z / 4.0;
    let g2 = ((5.0 * z2 + 16.0) * z2 + 3.0) * z / 96.0;
    let g3 = (((3.0 * z2 + 19.0) * z2 + 17.0) * z2 - 15.0) * z / 384.0;
    let by = 1.0 / dof;
    z + by * (g1 + by * (g2 + by * g3))
}

#[expect(clippy::cast_precision_loss, reason = "25 400")]
const fn tenth() -> f64 {
    TENTH as f64
}
