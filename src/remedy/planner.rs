//! How a plan is put together from the best of every view.

use super::facts::PlaceFacts;
use super::judged::judged;
use super::search::{Cost, Found, Groups, View};
use super::way::told;
use super::{
    About, Basis, Bearings, BoreWork, Effect, HousingWork, Item, JournalWork, Mixing, Next, Part,
    PistonWork, Plan, Prover, Question, Row, ShellWork, Sizes, Trouble, Way, Word, Work, oversizes,
    undersizes,
};
use crate::quantity::Exact;
use crate::verdict::Decision;

/// Works that give up for good what less saves, with what they are paid for:
/// no second choice to less.
const FOR_GOOD: [(Item, Work); 5] = [
    (Item::Sleeve, Work::Bores(BoreWork::Sleeves)),
    (Item::Block, Work::Bores(BoreWork::NewBlock)),
    (Item::Block, Work::Housings(Row::Mains, HousingWork::New)),
    (
        Item::Crank,
        Work::Journals(Row::Mains, JournalWork::NewCrank),
    ),
    (
        Item::Crank,
        Work::Journals(Row::Rods, JournalWork::NewCrank),
    ),
];

pub(super) struct Planner<'a> {
    pub prover: &'a Prover<'a>,
    /// Only what is proved is enough.
    pub sure: View<'a>,
    /// What is open is, too.
    pub hopeful: View<'a>,
    pub sure_groups: Groups,
    pub hopeful_groups: Groups,
}

impl Planner<'_> {
    pub(super) fn plan(&self, basis: Basis) -> Plan {
        let job = self.sure.job;
        let best = self.sure.combine(&self.sure_groups);
        let hoped = self.hopeful.combine(&self.hopeful_groups);
        let way = told(&self.sure, self.prover, best);
        let is_better = cost(hoped) < cost(best);
        let hope = is_better.then(|| told(&self.hopeful, self.prover, hoped));
        let runner_up = self.runner_up(best, &way);
        let mut blanks: Vec<Item> = Vec::new();
        for (item, _) in [Some(&way), hope.as_ref(), runner_up.as_ref()]
            .into_iter()
            .flatten()
            .flat_map(|way| &way.items)
        {
            if !job.prices.contains_key(item) && !blanks.contains(item) {
                blanks.push(*item);
            }
        }
        let parts = judged(&self.sure, &way, hope.as_ref());
        let unseen = parts
            .iter()
            .filter(|judged| judged.word != Word::Replace && job.looks(judged.part).harm.is_none());
        let oversizes = oversizes(&job.cylinders, &[], &job.boring(), self.prover);
        let undersizes = [Row::Mains, Row::Rods].map(|row| {
            let row = job.row(row);
            undersizes(&row.journals, &row.grinding(), self.prover)
        });
        Plan {
            unseen: unseen.map(|judged| judged.part).collect(),
            parts,
            effects: self.effects(best, &way),
            next: self.next(best, hoped),
            troubles: self.troubles(&oversizes, &undersizes),
            oversizes,
            undersizes,
            way,
            hope,
            runner_up,
            basis,
            blanks,
        }
    }

    fn runner_up(&self, first: Option<Found>, first_way: &Way) -> Option<Way> {
        let is_paid = |item: &Item| first_way.items.iter().any(|(of, _)| of == item);
        let all_sleeved = first_way.has(Work::Bores(BoreWork::Sleeves));
        let spared = FOR_GOOD.into_iter().filter(|(item, _)| match item {
            Item::Sleeve => !all_sleeved,
            item => !is_paid(item),
        });
        let never: Vec<_> = spared.map(|(_, work)| work).collect();
        let mut best: Option<(View, Found)> = None;
        for (item, _) in &first_way.items {
            let view = View {
                without: Some(*item),
                never: &never,
                ..self.sure
            };
            let found = view.best();
            let is_an_answer = |found: &Found| found.cost.unanswered <= cost(first).unanswered;
            if let Some(found) = found.filter(is_an_answer)
                && best.is_none_or(|(_, best)| found.cost < best.cost)
            {
                best = Some((view, found));
            }
        }
        best.map(|(view, found)| told(&view, self.prover, Some(found)))
    }

    /// The groups where a choice or an answer about this part counts, anew.
    fn anew(view: &View, groups: &Groups, [top, mains, rods]: [bool; 3]) -> Groups {
        let mut groups = groups.clone();
        if top {
            groups.top = view.tops();
        }
        if mains {
            groups.mains = view.bottoms(Row::Mains);
        }
        if rods {
            groups.rods = view.bottoms(Row::Rods);
        }
        groups
    }

    fn effects(&self, best: Option<Found>, way: &Way) -> Vec<Effect> {
        let job = self.sure.job;
        let mut works = Vec::new();
        if !job.cylinders.is_empty() {
            let stock = || 0..job.stock.len();
            let bores = [BoreWork::UseAgain, BoreWork::Deglaze, BoreWork::Hone];
            // A standard bore is nothing to bore to.
            let larger =
                |index: &usize| job.stock.get(*index).is_some_and(|s| Exact::ZERO < s.over);
            let bores = bores.into_iter();
            let bores = bores.chain(stock().filter(larger).map(BoreWork::Oversize));
            let bores = bores.chain([BoreWork::Sleeves, BoreWork::NewBlock]);
            works.extend(bores.map(Work::Bores));
            let pistons = core::iter::once(PistonWork::Keep).chain(stock().map(PistonWork::New));
            works.extend(pistons.map(Work::Pistons));
        }
        for row in [Row::Mains, Row::Rods] {
            let bearings = job.row(row);
            if bearings.places.is_empty() && bearings.journals.is_empty() {
                continue;
            }
            works.extend(of_row(row, bearings));
        }
        let new = works.into_iter().filter(|work| !way.has(*work));
        new.map(|work| {
            let view = View {
                pin: Some(work),
                ..self.sure
            };
            let where_it_counts = match work {
                Work::Bores(_) | Work::Pistons(_) => [true, false, false],
                Work::Journals(Row::Mains, _)
                | Work::Housings(Row::Mains, _)
                | Work::Shells(Row::Mains, _) => [false, true, false],
                _ => [false, false, true],
            };
            let groups = Self::anew(&view, &self.sure_groups, where_it_counts);
            let found = view.combine(&groups);
            let found = found.filter(|found| found.cost.unanswered <= cost(best).unanswered);
            Effect {
                work,
                is_enough: found.is_some(),
                sleeve: found.and_then(|found| found.top?.sleeve),
                total: found.and_then(|found| job.total(&view.items(&found))),
            }
        })
        .collect()
    }

    /// Answers every open question both ways: well where only what is proved
    /// counts, badly where everything open still may.
    fn next(&self, best: Option<Found>, hoped: Option<Found>) -> Option<Next> {
        let mut most: Option<(Swing, Question)> = None;
        let answered = |question: &Question, view: View<'_>, groups, answer| {
            let where_it_counts = match question.part {
                Part::Cylinder(_) | Part::Piston(_) => [true, false, false],
                Part::Block => [true, true, false],
                Part::Crank => [false, true, true],
                Part::Journal(row, _) | Part::Housing(row, _) | Part::Shells(row, _) => {
                    [false, row == Row::Mains, row == Row::Rods]
                }
            };
            let answer = Some((*question, answer));
            let groups_now = Self::anew(&View { answer, ..view }, groups, where_it_counts);
            (groups_now != *groups).then(|| View { answer, ..view }.combine(&groups_now))
        };
        let facts = self.sure.facts;
        for question in &facts.open {
            let well = answered(question, self.sure, &self.sure_groups, Decision::In);
            let badly = answered(question, self.hopeful, &self.hopeful_groups, Decision::Out);
            let gain = well.map_or(Swing::default(), |well| Swing::of(cost(well), cost(best)));
            let risk = badly.map_or(Swing::default(), |badly| {
                Swing::of(cost(hoped), cost(badly))
            });
            let swing = gain.max(risk);
            let least = most.map_or(Swing::default(), |(swing, _)| swing);
            if least < swing {
                most = Some((swing, *question));
            }
        }
        let (_, question) = most?;
        let way = |view: View, answer| {
            let answer = Some((question, answer));
            let view = View { answer, ..view };
            told(&view, self.prover, view.best())
        };
        Some(Next {
            question,
            if_well: way(self.sure, Decision::In),
            if_badly: way(self.hopeful, Decision::Out),
        })
    }

    fn troubles(&self, bores: &Sizes, journals: &[Sizes; 2]) -> Vec<(About, Trouble)> {
        let job = self.sure.job;
        let some =
            |trouble: Option<Trouble>| trouble.filter(|trouble| *trouble != Trouble::NoParts);
        let mut troubles = Vec::new();
        troubles.extend(some(bores.trouble).map(|trouble| (About::Bores, trouble)));
        for (row, sizes) in [Row::Mains, Row::Rods].into_iter().zip(journals) {
            let journals = some(sizes.trouble).map(|trouble| (About::Journals(row), trouble));
            troubles.extend(journals);
            let bearings = job.row(row);
            let facts = self.sure.facts.row(row);
            let reaches = |size: usize| {
                let pair = |place: &PlaceFacts| place.new.get(size).copied();
                let mut places = facts.places.iter().map(pair);
                places.all(|pair| pair.is_some_and(|pair| pair != [Decision::Out; 2]))
            };
            let chosen = facts
                .places
                .iter()
                .all(|place| place.chosen != [Decision::Out; 2]);
            let trouble = if bearings.places.is_empty() {
                None
            } else if bearings.shells.is_empty() {
                Some(Trouble::NoSizes)
            } else if chosen && bearings.mixing != Mixing::Set
                || (0..bearings.shells.len()).any(reaches)
            {
                None
            } else {
                Some(Trouble::OutOfReach)
            };
            troubles.extend(trouble.map(|trouble| (About::Shells(row), trouble)));
        }
        troubles
    }
}

fn of_row(row: Row, bearings: &Bearings) -> Vec<Work> {
    let grinds = (0..bearings.undersizes.len()).map(JournalWork::Grind);
    let journals = [JournalWork::Keep, JournalWork::Polish].into_iter();
    let journals = journals.chain(grinds).chain([JournalWork::NewCrank]);
    let housings = [HousingWork::Keep, HousingWork::Machine, HousingWork::New];
    let sizes = (0..bearings.shells.len()).map(ShellWork::One);
    let shells = core::iter::once(ShellWork::Keep).chain(sizes);
    let shells = shells.chain([ShellWork::Places, ShellWork::ToFit]);
    journals
        .map(|work| Work::Journals(row, work))
        .chain(housings.map(|work| Work::Housings(row, work)))
        .chain(shells.map(|work| Work::Shells(row, work)))
        .collect()
}

/// No combination at all leaves every group unanswered.
fn cost(found: Option<Found>) -> Cost {
    let none = Cost {
        unanswered: u64::MAX,
        ..Cost::default()
    };
    found.map_or(none, |found| found.cost)
}

/// By how much one cost is less than another, in the same order as costs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
struct Swing(u64, u64, u64, usize);

impl Swing {
    fn of(less: Cost, more: Cost) -> Self {
        if more <= less {
            return Self::default();
        }
        Self(
            more.unanswered.saturating_sub(less.unanswered),
            more.price.saturating_sub(less.price),
            more.weight.saturating_sub(less.weight),
            more.steps.saturating_sub(less.steps),
        )
    }
}
