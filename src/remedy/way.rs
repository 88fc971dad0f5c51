//! A combination of works, as it is told.

use litemap::LiteMap;

use super::bill::{bottom_items, shared_items, top_items};
use super::facts::walls;
use super::search::{Bottom, Found, Top, View};
use super::{
    BoreWork, CONSEQUENCES, Cylinder, Done, HousingWork, Item, Job, JournalWork, Part, PistonWork,
    Prover, Question, Recheck, Row, ShellWork, Work,
};
use crate::quantity::Exact;
use crate::uncertainty::Measured;
use crate::verdict::Band;

/// What is done to bores and pistons.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TopWay {
    /// To the bores, but for a sleeved one.
    pub bores: BoreWork,
    /// The cylinder that gets a sleeve.
    pub sleeve: Option<usize>,
    /// About the pistons.
    pub pistons: PistonWork,
}

/// What is done to a row of bearings.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RowWay {
    /// To its journals.
    pub journals: JournalWork,
    /// To the housing at each place.
    pub housings: Vec<HousingWork>,
    /// About the shells.
    pub shells: ShellWork,
    /// Upper and lower half at each place, by their index in the sizes, where
    /// they are chosen.
    pub halves: Vec<[usize; 2]>,
}

/// The clearance that a place or a cylinder will have.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Predicted {
    /// The cylinder, or the housing.
    pub part: Part,
    /// The clearance.
    pub clearance: Exact,
    /// Its guard band where it was computed from what was measured; `None`
    /// where the shop finishes one part to the other.
    pub guard: Option<Exact>,
}

/// A combination of works.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Way {
    /// Bores and pistons; `None` where nothing there is would be enough.
    pub top: Option<TopWay>,
    /// The mains; `None` likewise.
    pub mains: Option<RowWay>,
    /// The big ends; `None` likewise.
    pub rods: Option<RowWay>,
    /// What is paid for, and how many.
    pub items: Vec<(Item, usize)>,
    /// In the smallest coin; `None` where a price is blank.
    pub total: Option<u64>,
    /// The open questions that have to come out well for it to be enough.
    pub rests_on: Vec<Question>,
    /// The clearances it leads to, as far as they can be told.
    pub clearances: Vec<Predicted>,
    /// What is to be looked at again afterwards.
    pub recheck: Vec<Recheck>,
}

impl Way {
    /// A row.
    #[must_use]
    pub const fn row(&self, row: Row) -> Option<&RowWay> {
        match row {
            Row::Mains => self.mains.as_ref(),
            Row::Rods => self.rods.as_ref(),
        }
    }

    /// Whether a choice is made in it; of housings for all of the row.
    #[must_use]
    pub fn has(&self, work: Work) -> bool {
        let of_top = |is: &dyn Fn(&TopWay) -> bool| self.top.as_ref().is_some_and(is);
        let of_row = |row, is: &dyn Fn(&RowWay) -> bool| self.row(row).is_some_and(is);
        match work {
            Work::Bores(work) => of_top(&|top| top.bores == work),
            Work::Pistons(work) => of_top(&|top| top.pistons == work),
            Work::Journals(row, work) => of_row(row, &|row| row.journals == work),
            Work::Shells(row, work) => of_row(row, &|row| row.shells == work),
            Work::Housings(row, work) => {
                of_row(row, &|row| row.housings.iter().all(|each| *each == work))
            }
        }
    }

    fn did(&self, done: Done) -> bool {
        let bored = |work| self.has(Work::Bores(work));
        let is_oversize = self
            .top
            .is_some_and(|top| matches!(top.bores, BoreWork::Oversize(_)));
        let is_sleeved = self.top.is_some_and(|top| top.sleeve.is_some());
        let ground = [&self.mains, &self.rods].into_iter().flatten();
        let is_ground = ground
            .map(|row| row.journals)
            .any(|work| matches!(work, JournalWork::Grind(_)));
        let machined = |row| {
            let row = self.row(row);
            row.is_some_and(|row| row.housings.contains(&HousingWork::Machine))
        };
        match done {
            Done::Oversize => is_oversize,
            Done::Deglaze => bored(BoreWork::Deglaze),
            Done::Grind => is_ground,
            Done::AlignHone => machined(Row::Mains),
            Done::Resize => machined(Row::Rods),
            Done::Machined => {
                is_oversize
                    || is_sleeved
                    || is_ground
                    || bored(BoreWork::Hone)
                    || bored(BoreWork::Sleeves)
                    || machined(Row::Mains)
                    || machined(Row::Rods)
            }
        }
    }
}

impl Job {
    /// What the items cost; `None` where a price is blank.
    pub(super) fn total(&self, items: &[(Item, usize)]) -> Option<u64> {
        items.iter().try_fold(0_u64, |sum, (item, count)| {
            let each = self.prices.get(item)?.coins();
            let count = u64::try_from(*count).ok()?;
            sum.checked_add(each.checked_mul(count)?)
        })
    }
}

impl View<'_> {
    /// Everything a combination is paid for, each item once.
    pub(super) fn items(&self, found: &Found) -> Vec<(Item, usize)> {
        let mut all: LiteMap<Item, usize> = LiteMap::new();
        let mut add = |items: Vec<(Item, usize)>| {
            for (item, count) in items {
                *all.entry(item).or_default() += count;
            }
        };
        if let Some(top) = &found.top {
            add(top_items(top, self.facts.cylinders.len()).1);
        }
        for row in [Row::Mains, Row::Rods] {
            if let Some(bottom) = found.row(row) {
                let housings = self.housings(row, &bottom).unwrap_or_default();
                add(bottom_items(row, &bottom, &housings).1);
            }
        }
        add(shared_items(found.meeting));
        all.into_iter().filter(|(_, count)| 0 < *count).collect()
    }

    /// The open questions that must not come out badly.
    fn rests_on(&self, found: &Found) -> Vec<Question> {
        let rows = [Row::Mains, Row::Rods].map(|row| {
            let bottom = found.row(row)?;
            Some((row, bottom, self.housings(row, &bottom)?))
        });
        let holds = |view: &View| {
            let mut rows = rows.iter().flatten();
            found.top.is_none_or(|top| view.top_holds(&top))
                && rows.all(|(row, bottom, housings)| view.bottom_holds(*row, bottom, housings))
        };
        let open = self.facts.open.iter().filter(|open| {
            let doubted = Some(**open);
            !holds(&View { doubted, ..*self })
        });
        open.copied().collect()
    }

    fn row_way(&self, row: Row, bottom: &Bottom) -> RowWay {
        let housings = self.housings(row, bottom).unwrap_or_default();
        let places = 0..housings.len();
        let halves = match bottom.shells {
            ShellWork::Keep | ShellWork::ToFit => Vec::new(),
            ShellWork::One(size) => places.map(|_| [size; 2]).collect(),
            ShellWork::Places => {
                let [as_is, made] = &self.facts.row(row).chosen;
                let chosen = |(index, work): (usize, &HousingWork)| {
                    let is_made = *work != HousingWork::Keep;
                    let choice = if is_made { made } else { as_is };
                    choice.as_ref()?.at.get(index).copied()
                };
                housings.iter().enumerate().filter_map(chosen).collect()
            }
        };
        RowWay {
            journals: bottom.journals,
            shells: bottom.shells,
            housings,
            halves,
        }
    }
}

/// The clearance of a cylinder; `None` where nothing was measured.
fn in_cylinder(job: &Job, top: &Top, index: usize, cylinder: &Cylinder) -> Option<Measured> {
    let clearance = match top.pistons {
        PistonWork::Keep => cylinder.clearance.clone()?,
        PistonWork::New(size) => {
            let piston = job.stock.get(size)?.piston?;
            cylinder.bore.as_ref()? - &Measured::new(piston, &[])
        }
    };
    let score = cylinder.worn.score.as_ref();
    let score = score.filter(|score| !score.value().is_negative());
    match (top.bores, score) {
        _ if top.sleeve == Some(index) => None,
        (BoreWork::Hone, Some(score)) => Some(&clearance + &score.scaled(2, 1)),
        (BoreWork::UseAgain | BoreWork::Deglaze | BoreWork::Hone, _) => Some(clearance),
        _ => None,
    }
}

/// The clearance of a place; `None` where nothing was measured.
fn in_place(job: &Job, row: Row, index: usize, way: &RowWay) -> Option<Measured> {
    let bearings = job.row(row);
    let place = bearings.places.get(index)?;
    if way.shells == ShellWork::Keep {
        return place.clearance.clone();
    }
    let gap = match way.housings.get(index)? {
        HousingWork::Keep => &place.gap,
        HousingWork::Machine | HousingWork::New => &place.gap_made,
    };
    let walls = walls(bearings, *way.halves.get(index)?)?;
    Some(gap.as_ref()? - &Measured::new(walls, &[]))
}

/// What was found, as it is told.
pub(super) fn told(view: &View, prover: &Prover, found: Option<Found>) -> Way {
    let job = view.job;
    let items = found.as_ref().map(|found| view.items(found));
    let items = items.unwrap_or_default();
    let top = found.and_then(|found| found.top);
    let row = |row| Some(view.row_way(row, &found?.row(row)?));
    let mut way = Way {
        top: top.map(|top| TopWay {
            bores: top.bores,
            sleeve: top.sleeve,
            pistons: top.pistons,
        }),
        mains: row(Row::Mains),
        rods: row(Row::Rods),
        total: job.total(&items),
        items,
        rests_on: found.map(|found| view.rests_on(&found)).unwrap_or_default(),
        clearances: Vec::new(),
        recheck: Vec::new(),
    };
    let mut told = Vec::new();
    let mut tell =
        |part, measured: Option<Measured>, is_made: bool, (wanted, target): (Band, Exact)| {
            let guard = measured.as_ref().map(|measured| prover.guard(measured));
            let clearance = match measured {
                Some(measured) => measured.value(),
                None if is_made && !wanted.is_open() => target,
                None => return,
            };
            told.push(Predicted {
                part,
                clearance,
                guard,
            });
        };
    for (index, cylinder) in job.cylinders.iter().enumerate() {
        if let Some(top) = &top {
            let left = [BoreWork::UseAgain, BoreWork::Deglaze, BoreWork::Hone];
            let is_made = top.sleeve == Some(index) || !left.contains(&top.bores);
            let measured = in_cylinder(job, top, index, cylinder);
            let wanted = (job.wanted, job.target);
            tell(Part::Cylinder(index), measured, is_made, wanted);
        }
    }
    for row in [Row::Mains, Row::Rods] {
        if let Some(done) = way.row(row) {
            let wanted = (job.row(row).wanted, job.row(row).target);
            let is_made = done.shells == ShellWork::ToFit;
            for index in 0..done.housings.len() {
                let measured = in_place(job, row, index, done);
                tell(Part::Housing(row, index), measured, is_made, wanted);
            }
        }
    }
    way.clearances = told;
    for (done, recheck) in CONSEQUENCES {
        let is_done = way.did(done);
        for one in recheck.iter().filter(|_| is_done) {
            if !way.recheck.contains(one) {
                way.recheck.push(*one);
            }
        }
    }
    way
}
