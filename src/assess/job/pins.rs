//! Choices of a plan as words, so that what a person fixed is found again
//! though the lists of sizes have changed.

use super::stocked;
use crate::quantity::{Entered, Exact};
use crate::remedy::{
    BoreWork, HousingWork, Job, JournalWork, Part, PistonWork, Row, ShellWork, Work,
};
use crate::session::{Feature, Kind, Pin, Session};

const KEEP: &str = "keep";
const DEGLAZE: &str = "deglaze";
const HONE: &str = "hone";
const OVERSIZE: &str = "oversize";
const SLEEVES: &str = "sleeves";
const POLISH: &str = "polish";
const GRIND: &str = "grind";
const MACHINE: &str = "machine";
const REPLACE: &str = "replace";
const NEW: &str = "new";
const SIZE: &str = "size";
const PLACES: &str = "places";
const TO_FIT: &str = "to_fit";
const STANDARD: &str = "standard";

/// About what a choice is, and its word.
#[must_use]
pub fn word(session: &Session, job: &Job, work: Work) -> (Pin, String) {
    let pistons = |index: usize| step(session, Kind::Piston, job.stock.get(index).map(|s| s.over));
    let under = |row, index: usize| {
        step(
            session,
            shells_of(row),
            job.row(row).undersizes.get(index).copied(),
        )
    };
    let (pin, word, size) = match work {
        Work::Bores(work) => match work {
            BoreWork::UseAgain => (Pin::Bores, KEEP, None),
            BoreWork::Deglaze => (Pin::Bores, DEGLAZE, None),
            BoreWork::Hone => (Pin::Bores, HONE, None),
            BoreWork::Oversize(index) => (Pin::Bores, OVERSIZE, Some(pistons(index))),
            BoreWork::Sleeves => (Pin::Bores, SLEEVES, None),
            BoreWork::NewBlock => (Pin::Bores, REPLACE, None),
        },
        Work::Pistons(PistonWork::Keep) => (Pin::Pistons, KEEP, None),
        Work::Pistons(PistonWork::New(index)) => (Pin::Pistons, NEW, Some(pistons(index))),
        Work::Journals(row, work) => {
            let pin = of_row(row, [Pin::MainJournals, Pin::RodJournals]);
            match work {
                JournalWork::Keep => (pin, KEEP, None),
                JournalWork::Polish => (pin, POLISH, None),
                JournalWork::Grind(index) => (pin, GRIND, Some(under(row, index))),
                JournalWork::NewCrank => (pin, REPLACE, None),
            }
        }
        Work::Housings(row, work) => {
            let pin = of_row(row, [Pin::MainHousings, Pin::RodHousings]);
            match work {
                HousingWork::Keep => (pin, KEEP, None),
                HousingWork::Machine => (pin, MACHINE, None),
                HousingWork::New => (pin, REPLACE, None),
            }
        }
        Work::Shells(row, work) => {
            let pin = of_row(row, [Pin::MainShells, Pin::RodShells]);
            match work {
                ShellWork::Keep => (pin, KEEP, None),
                ShellWork::One(index) => (pin, SIZE, Some(thin(session, row, index))),
                ShellWork::Places => (pin, PLACES, None),
                ShellWork::ToFit => (pin, TO_FIT, None),
            }
        }
    };
    let word = match size {
        Some(size) => format!("{word} {size}"),
        None => word.to_owned(),
    };
    (pin, word)
}

/// The choice of a word; `None` where it is none there is.
#[must_use]
pub fn choice(session: &Session, job: &Job, pin: Pin, word: &str) -> Option<Work> {
    choices(job).into_iter().find(|work| {
        let (about, of_work) = self::word(session, job, *work);
        (about, of_work.as_str()) == (pin, word)
    })
}

/// The choices the person has fixed, as far as they are among those there are.
pub(super) fn pins(session: &Session, job: &Job) -> Vec<Work> {
    let fixed = Pin::ALL.into_iter();
    let fixed = fixed.filter_map(|pin| choice(session, job, pin, &session.pin(pin)?));
    fixed.collect()
}

/// Every choice there is.
fn choices(job: &Job) -> Vec<Work> {
    let bores = [
        BoreWork::UseAgain,
        BoreWork::Deglaze,
        BoreWork::Hone,
        BoreWork::Sleeves,
        BoreWork::NewBlock,
    ];
    let stock = || 0..job.stock.len();
    let bores = bores.into_iter().chain(stock().map(BoreWork::Oversize));
    let pistons = core::iter::once(PistonWork::Keep).chain(stock().map(PistonWork::New));
    let mut all: Vec<Work> = bores.map(Work::Bores).collect();
    all.extend(pistons.map(Work::Pistons));
    for row in [Row::Mains, Row::Rods] {
        let bearings = job.row(row);
        let grind = (0..bearings.undersizes.len()).map(JournalWork::Grind);
        let journals = [
            JournalWork::Keep,
            JournalWork::Polish,
            JournalWork::NewCrank,
        ];
        let journals = journals.into_iter().chain(grind);
        all.extend(journals.map(|work| Work::Journals(row, work)));
        let housings = [HousingWork::Keep, HousingWork::Machine, HousingWork::New];
        all.extend(housings.map(|work| Work::Housings(row, work)));
        let one = (0..bearings.shells.len()).map(ShellWork::One);
        let shells = [ShellWork::Keep, ShellWork::Places, ShellWork::ToFit];
        let shells = shells.into_iter().chain(one);
        all.extend(shells.map(|work| Work::Shells(row, work)));
    }
    all
}

const fn of_row(row: Row, [mains, rods]: [Pin; 2]) -> Pin {
    match row {
        Row::Mains => mains,
        Row::Rods => rods,
    }
}

/// The shells of a row.
pub(super) const fn shells_of(row: Row) -> Kind {
    match row {
        Row::Mains => Kind::MainShell,
        Row::Rods => Kind::RodShell,
    }
}

/// The feature of a part; the block and the crankshaft are none.
#[must_use]
pub fn feature_of(part: Part) -> Option<Feature> {
    let (kind, index) = match part {
        Part::Block | Part::Crank => return None,
        Part::Cylinder(index) => (Kind::Bore, index),
        Part::Piston(index) => (Kind::Piston, index),
        Part::Journal(Row::Mains, index) => (Kind::MainJournal, index),
        Part::Journal(Row::Rods, index) => (Kind::RodJournal, index),
        Part::Housing(Row::Mains, index) => (Kind::MainHousing, index),
        Part::Housing(Row::Rods, index) => (Kind::BigEnd, index),
        Part::Shells(row, index) => (shells_of(row), index),
    };
    let position = u8::try_from(index + 1).ok()?;
    Some(Feature { kind, position })
}

/// A step as it is listed.
fn step(session: &Session, kind: Kind, of: Option<Exact>) -> String {
    let listed = stocked(session, kind).into_iter();
    let mut is_it = listed.filter(|step| Some(Exact::from(step.size())) == of);
    is_it
        .next()
        .map_or_else(|| STANDARD.to_owned(), |step| step.to_string())
}

/// The undersize of shells for journals as they are, by index.
fn thin(session: &Session, row: Row, index: usize) -> String {
    let steps = thin_steps(session, row);
    let step = index
        .checked_sub(1)
        .and_then(|index| steps.get(index).cloned());
    step.map_or_else(|| STANDARD.to_owned(), |step| step.to_string())
}

/// The steps of shells that go with journals that are not ground: up to
/// 0.005 in, between those for slight wear and those for grinding.
pub(super) fn thin_steps(session: &Session, row: Row) -> Vec<Entered> {
    let steps = stocked(session, shells_of(row)).into_iter();
    steps.filter(is_thin).collect()
}

pub(super) fn is_thin(step: &Entered) -> bool {
    step.size().quanta() <= super::tenths(50).numerator().try_into().unwrap_or(0)
}
