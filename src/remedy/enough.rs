//! Which works are enough for the parts as they are.
//!
//! Every work that is enough for a part is enough for the same part less worn.

use super::bill::housing_item;
use super::facts::{CylinderFacts, JournalFacts, PlaceFacts, of};
use super::search::{Bottom, Top, View};
use super::{
    Ask, BoreWork, HousingWork, JournalWork, Part, PistonWork, Question, Row, ShellWork, Work,
};
use crate::verdict::Decision;

impl View<'_> {
    fn meets(&self, part: Part, ask: Ask, decision: Decision) -> bool {
        let decision = match self.answer {
            Some((of, answer)) if of.decides((part, ask), decision, self.job) => answer,
            _ if self.doubts(part, ask, decision) => Decision::Out,
            _ => decision,
        };
        decision == Decision::In || decision == Decision::Open && self.least == Decision::Open
    }

    fn doubts(&self, part: Part, ask: Ask, decision: Decision) -> bool {
        let decides = |of: Question| of.decides((part, ask), decision, self.job);
        self.doubted.is_some_and(decides)
    }

    fn block_is_sound(&self) -> bool {
        self.meets(Part::Block, Ask::Soundness, self.facts.block)
    }

    fn cylinder_is_done(&self, index: usize, facts: &CylinderFacts, top: &Top) -> bool {
        let part = Part::Cylinder(index);
        let meets = |ask, decision| self.meets(part, ask, decision);
        let [good, dull, light] = facts.surface;
        let as_it_is = |surface, honed| {
            let clearance = match top.pistons {
                PistonWork::Keep => Some(&facts.own),
                PistonWork::New(size) => facts.new.get(size),
            };
            let clearance = clearance.map_or(Decision::Out, |pair| of(*pair, honed));
            meets(Ask::Form, facts.form)
                && meets(Ask::Surface, surface)
                && meets(Ask::Clearance, clearance)
        };
        let cleans = |size: usize| facts.cleans.get(size).copied().unwrap_or(Decision::Out);
        let is_sound = || meets(Ask::Soundness, facts.sound);
        match top.bores {
            _ if top.sleeve == Some(index) => true,
            BoreWork::UseAgain => is_sound() && as_it_is(good, false),
            BoreWork::Deglaze => is_sound() && as_it_is(dull, false),
            BoreWork::Hone => is_sound() && as_it_is(light, true),
            BoreWork::Oversize(size) => is_sound() && meets(Ask::CleanUp, cleans(size)),
            BoreWork::Sleeves | BoreWork::NewBlock => true,
        }
    }

    /// Whether bores and pistons are done with, but for cylinders: those
    /// that are not are given.
    pub(super) fn top_is_done(&self, top: &Top) -> Option<Vec<usize>> {
        let piston = |(index, facts): (usize, &CylinderFacts)| {
            let part = Part::Piston(index);
            self.meets(part, Ask::Soundness, facts.piston_sound)
                && self.meets(part, Ask::Form, facts.piston_form)
        };
        let all = || self.facts.cylinders.iter().enumerate();
        let pistons = top.pistons != PistonWork::Keep || all().all(piston);
        let block = top.bores == BoreWork::NewBlock || self.block_is_sound();
        (pistons && block).then(|| {
            let undone = all().filter(|(index, facts)| !self.cylinder_is_done(*index, facts, top));
            undone.map(|(index, _)| index).take(2).collect()
        })
    }

    pub(super) fn top_holds(&self, top: &Top) -> bool {
        self.top_is_done(top)
            .is_some_and(|undone| undone.is_empty())
    }

    pub(super) fn journals_are_done(&self, row: Row, work: JournalWork) -> bool {
        let facts = self.facts;
        let whole = |ask, decision| self.meets(Part::Crank, ask, decision);
        let each = |done: &dyn Fn(Part, &JournalFacts) -> bool| {
            let mut journals = facts.row(row).journals.iter().enumerate();
            journals.all(|(index, journal)| {
                let part = Part::Journal(row, index);
                self.meets(part, Ask::Soundness, journal.sound) && done(part, journal)
            })
        };
        let as_they_are = |is_polished| {
            whole(Ask::Form, facts.straightness)
                && each(&|part, journal| {
                    self.meets(part, Ask::Form, journal.form)
                        && self.meets(part, Ask::Surface, of(journal.surface, is_polished))
                })
        };
        let is_done = match work {
            JournalWork::Keep => as_they_are(false),
            JournalWork::Polish => as_they_are(true),
            JournalWork::Grind(size) => each(&|part, journal| {
                let cleans = journal.cleans.get(size).copied();
                self.meets(part, Ask::CleanUp, cleans.unwrap_or(Decision::Out))
            }),
            JournalWork::NewCrank => return true,
        };
        is_done && whole(Ask::Soundness, facts.crank)
    }

    fn place_is_done(
        &self,
        row: Row,
        index: usize,
        facts: &PlaceFacts,
        shells: ShellWork,
        work: HousingWork,
    ) -> bool {
        let part = Part::Housing(row, index);
        let is_made = work != HousingWork::Keep;
        let housing = match work {
            HousingWork::Keep => self.meets(part, Ask::Form, facts.form),
            HousingWork::Machine => self.job.row(row).can_be_machined,
            HousingWork::New => true,
        };
        let is_sound = || work == HousingWork::New || self.meets(part, Ask::Soundness, facts.sound);
        let clearance = || match shells {
            ShellWork::Keep if is_made => Decision::Out,
            ShellWork::Keep => facts.own,
            ShellWork::One(size) => {
                let pair = facts.new.get(size);
                pair.map_or(Decision::Out, |pair| of(*pair, is_made))
            }
            ShellWork::Places => of(facts.chosen, is_made),
            ShellWork::ToFit => Decision::In,
        };
        let shells_are_good = || {
            shells != ShellWork::Keep
                || self.meets(Part::Shells(row, index), Ask::Form, facts.shells_form)
        };
        housing && is_sound() && shells_are_good() && self.meets(part, Ask::Clearance, clearance())
    }

    /// What is done to a housing: the given work, or the least that is enough.
    pub(super) fn housing(&self, row: Row, index: usize, bottom: &Bottom) -> Option<HousingWork> {
        let facts = self.facts.row(row).places.get(index)?;
        let is_done =
            |work: &HousingWork| self.place_is_done(row, index, facts, bottom.shells, *work);
        if let Some(work) = bottom.housings {
            return Some(work).filter(is_done);
        }
        let works = [HousingWork::Keep, HousingWork::Machine, HousingWork::New];
        let works = works
            .into_iter()
            .filter(|work| self.allows(Work::Housings(row, *work)) && is_done(work));
        let mut best = None;
        for work in works {
            let item = housing_item(work).map(|item| (item, 1));
            if let Some(cost) = self.cost(item.as_slice())
                && best.is_none_or(|(least, _)| cost < least)
            {
                best = Some((cost, work));
            }
        }
        best.map(|(_, work)| work)
    }

    /// The housings of a row, where all can be done.
    pub(super) fn housings(&self, row: Row, bottom: &Bottom) -> Option<Vec<HousingWork>> {
        let places = 0..self.facts.row(row).places.len();
        places
            .map(|index| self.housing(row, index, bottom))
            .collect()
    }

    pub(super) fn row_as_a_whole(&self, row: Row, bottom: &Bottom) -> bool {
        let facts = self.facts.row(row);
        let is_made = bottom
            .housings
            .is_some_and(|work| work != HousingWork::Keep);
        let is_apart = match bottom.shells {
            ShellWork::Keep | ShellWork::ToFit => Decision::In,
            ShellWork::One(_) => of(facts.apart, is_made),
            ShellWork::Places => of(facts.chosen_apart, is_made),
        };
        let in_line = match (row, bottom.housings) {
            (Row::Rods, _) | (_, Some(HousingWork::New)) => true,
            (_, Some(HousingWork::Machine)) => self.block_is_sound(),
            _ => self.block_is_sound() && self.meets(Part::Block, Ask::Form, self.facts.alignment),
        };
        in_line && is_apart != Decision::Out
    }

    /// Whether this is enough, with these housings and no others.
    pub(super) fn bottom_holds(&self, row: Row, bottom: &Bottom, housings: &[HousingWork]) -> bool {
        let places = self.facts.row(row).places.iter().zip(housings);
        let mut places = places.enumerate();
        self.journals_are_done(row, bottom.journals)
            && self.row_as_a_whole(row, bottom)
            && places.all(|(index, (facts, work))| {
                self.place_is_done(row, index, facts, bottom.shells, *work)
            })
    }
}
