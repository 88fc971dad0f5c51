//! The lightest or cheapest combination of works that is enough.
//!
//! Every work that is enough for a part is enough for the same part less
//! worn, and heavier work that is not needed is never kept back: so more wear
//! can only take combinations away, and the plan never gets cheaper by it.
//!
//! A set falls into three groups: bores and pistons, mains, big ends. They
//! meet in the crankshaft, in the block, and in what is paid once. So the best
//! of each group is kept for every way to meet, and only those are combined.

use super::bill::{BLOCK, CRANK, bottom_items, shared_items, top_items};
use super::facts::Facts;
use super::{
    BoreWork, HousingWork, Item, Job, JournalWork, PistonWork, Prices, Question, Row, ShellWork,
    Work,
};
use crate::verdict::Decision;

/// What a combination costs: first what it leaves without any answer, then
/// the price, then the weight, then how large the sizes are, which leave less
/// to machine the next time.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Cost {
    pub unanswered: u64,
    pub price: u64,
    pub weight: u64,
    pub steps: usize,
}

impl Cost {
    const fn and(self, other: Self) -> Self {
        Self {
            unanswered: self.unanswered + other.unanswered,
            price: self.price.saturating_add(other.price),
            weight: self.weight.saturating_add(other.weight),
            steps: self.steps + other.steps,
        }
    }
}

/// What is done to bores and pistons.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Top {
    pub bores: BoreWork,
    pub sleeve: Option<usize>,
    pub pistons: PistonWork,
}

/// What is done to a row; of mains the same to every housing, of rods to
/// each the least that is enough.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Bottom {
    pub journals: JournalWork,
    pub shells: ShellWork,
    pub housings: Option<HousingWork>,
}

/// The best of a group for one meeting.
type Offer<T> = (u8, Cost, T);

/// The three groups with the best of each for every meeting.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Groups {
    pub top: Vec<Offer<Top>>,
    pub mains: Vec<Offer<Bottom>>,
    pub rods: Vec<Offer<Bottom>>,
}

/// A whole combination; a group without any that is enough is left out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Found {
    pub cost: Cost,
    pub meeting: u8,
    pub top: Option<Top>,
    pub mains: Option<Bottom>,
    pub rods: Option<Bottom>,
}

impl Found {
    pub(super) const fn row(&self, row: Row) -> Option<Bottom> {
        match row {
            Row::Mains => self.mains,
            Row::Rods => self.rods,
        }
    }
}

/// How a set is looked at.
#[derive(Clone, Copy)]
pub(super) struct View<'a> {
    pub job: &'a Job,
    pub facts: &'a Facts,
    /// In: only what is proved is enough. Open: what is open is, too.
    pub least: Decision,
    /// What if this question were answered so.
    pub answer: Option<(Question, Decision)>,
    /// This question is taken to have come out badly.
    pub doubted: Option<Question>,
    /// One more choice fixed.
    pub pin: Option<Work>,
    /// Something that is to be done without.
    pub without: Option<Item>,
    /// Works that are no choice.
    pub never: &'a [Work],
    /// By price, or else by weight alone.
    pub prices: Option<&'a Prices>,
}

impl View<'_> {
    pub(super) fn allows(&self, work: Work) -> bool {
        if self.never.contains(&work) {
            return false;
        }
        // What is asked about takes the place of what was fixed.
        match self.pin.filter(|pin| pin.is_about_the_same(work)) {
            Some(pin) => pin == work,
            None => {
                let mut pins = self.job.pins.iter();
                pins.all(|pin| *pin == work || !pin.is_about_the_same(work))
            }
        }
    }

    /// `None` for what is to be done without, or has no price.
    pub(super) fn cost(&self, items: &[(Item, usize)]) -> Option<Cost> {
        let mut cost = Cost::default();
        for &(item, count) in items.iter().filter(|(_, count)| 0 < *count) {
            if self.without == Some(item) {
                return None;
            }
            let count = u64::try_from(count).unwrap_or(u64::MAX);
            let each = match self.prices {
                Some(prices) => prices.get(&item)?.coins(),
                None => 0,
            };
            cost = cost.and(Cost {
                price: each.saturating_mul(count),
                weight: item.weight().saturating_mul(count),
                ..Cost::default()
            });
        }
        Some(cost)
    }

    /// The cost with a size out of a list that is in order.
    fn sized(&self, items: &[(Item, usize)], size: Option<usize>, order: &[usize]) -> Option<Cost> {
        let steps = size.and_then(|size| order.iter().position(|other| *other == size));
        let steps = steps.unwrap_or(0);
        let cost = self.cost(items)?;
        Some(Cost { steps, ..cost })
    }

    /// The best of bores and pistons. A sleeve is offered for the one
    /// cylinder that a work is not enough for.
    pub(super) fn tops(&self) -> Vec<Offer<Top>> {
        let stock = || self.facts.stock.iter().copied();
        let bores = [BoreWork::UseAgain, BoreWork::Deglaze, BoreWork::Hone];
        let bores = bores.into_iter().chain(stock().map(BoreWork::Oversize));
        let bores = bores.chain([BoreWork::Sleeves, BoreWork::NewBlock]);
        let mut offers = Vec::new();
        for bores in bores.filter(|work| self.allows(Work::Bores(*work))) {
            let all = core::iter::once(PistonWork::Keep).chain(stock().map(PistonWork::New));
            let fits = |pistons: &PistonWork| match bores {
                BoreWork::Oversize(size) => *pistons == PistonWork::New(size),
                _ => true,
            };
            let allowed = |pistons: &PistonWork| self.allows(Work::Pistons(*pistons));
            for pistons in all.filter(|pistons| fits(pistons) && allowed(pistons)) {
                let mut top = Top {
                    bores,
                    sleeve: None,
                    pistons,
                };
                let size = match pistons {
                    PistonWork::Keep => None,
                    PistonWork::New(size) => Some(size),
                };
                let bill = |top: &Top| {
                    let (meeting, items) = top_items(top, self.facts.cylinders.len());
                    (meeting, self.sized(&items, size, &self.facts.stock))
                };
                if !is_wanted(&offers, bill(&top)) {
                    continue;
                }
                match self.top_is_done(&top).as_deref() {
                    Some([]) => {}
                    Some([one]) => top.sleeve = Some(*one),
                    _ => continue,
                }
                offer(&mut offers, bill(&top), top);
            }
        }
        offers
    }

    /// The best of a row of bearings.
    pub(super) fn bottoms(&self, row: Row) -> Vec<Offer<Bottom>> {
        let facts = self.facts.row(row);
        let grinds = facts.undersizes.iter().copied().map(JournalWork::Grind);
        let journals = [JournalWork::Keep, JournalWork::Polish].into_iter();
        let journals = journals.chain(grinds).chain([JournalWork::NewCrank]);
        let sizes = facts.sizes.iter().copied().map(ShellWork::One);
        let as_they_are: Vec<ShellWork> = core::iter::once(ShellWork::Keep)
            .chain(sizes)
            .chain([ShellWork::Places])
            .collect();
        let each_its_own = [None];
        let all_alike = [HousingWork::Keep, HousingWork::Machine, HousingWork::New].map(Some);
        let housings: &[Option<HousingWork>] = match row {
            Row::Mains => &all_alike,
            Row::Rods => &each_its_own,
        };
        let untouched = vec![HousingWork::Keep; facts.places.len()];
        let mut offers = Vec::new();
        for journals in journals {
            let is_allowed = self.allows(Work::Journals(row, journals));
            if !is_allowed || !self.journals_are_done(row, journals) {
                continue;
            }
            let shells: &[ShellWork] = match journals {
                JournalWork::Keep | JournalWork::Polish => &as_they_are,
                JournalWork::Grind(_) | JournalWork::NewCrank => &[ShellWork::ToFit],
            };
            for &shells in shells
                .iter()
                .filter(|work| self.allows(Work::Shells(row, **work)))
            {
                for &housings in housings {
                    let bottom = Bottom {
                        journals,
                        shells,
                        housings,
                    };
                    let fits = housings.is_none_or(|work| self.allows(Work::Housings(row, work)));
                    let size = match journals {
                        JournalWork::Grind(size) => Some(size),
                        _ => None,
                    };
                    let bill = |housings: &[HousingWork]| {
                        let (meeting, items) = bottom_items(row, &bottom, housings);
                        (meeting, self.sized(&items, size, &facts.undersizes))
                    };
                    if fits
                        && is_wanted(&offers, bill(&untouched))
                        && self.row_as_a_whole(row, &bottom)
                        && let Some(housings) = self.housings(row, &bottom)
                    {
                        offer(&mut offers, bill(&housings), bottom);
                    }
                }
            }
        }
        offers
    }

    // The set.

    pub(super) fn groups(&self) -> Groups {
        Groups {
            top: self.tops(),
            mains: self.bottoms(Row::Mains),
            rods: self.bottoms(Row::Rods),
        }
    }

    /// The best of all. A group without any offer is left unanswered.
    pub(super) fn combine(&self, groups: &Groups) -> Option<Found> {
        let mut best: Option<Found> = None;
        for top in some_or_none(&groups.top) {
            for mains in some_or_none(&groups.mains) {
                if !agree(top, mains, BLOCK) {
                    continue;
                }
                for rods in some_or_none(&groups.rods) {
                    if !agree(mains, rods, CRANK) {
                        continue;
                    }
                    let met = [head(top), head(mains), head(rods)];
                    let meeting = met.iter().fold(0, |all, (meeting, _)| all | meeting);
                    let own = met
                        .iter()
                        .fold(Cost::default(), |sum, (_, cost)| sum.and(*cost));
                    if best.is_some_and(|best| best.cost <= own) {
                        continue;
                    }
                    let Some(shared) = self.cost(&shared_items(meeting)) else {
                        continue;
                    };
                    let cost = own.and(shared);
                    if best.is_none_or(|best| cost < best.cost) {
                        best = Some(Found {
                            cost,
                            meeting,
                            top: top.map(|(.., top)| *top),
                            mains: mains.map(|(.., mains)| *mains),
                            rods: rods.map(|(.., rods)| *rods),
                        });
                    }
                }
            }
        }
        best
    }

    pub(super) fn best(&self) -> Option<Found> {
        self.combine(&self.groups())
    }
}

/// Whether something that costs at least this may still be the best of its
/// meeting. To ask first saves asking every part.
fn is_wanted<T>(offers: &[Offer<T>], (meeting, least): (u8, Option<Cost>)) -> bool {
    let best = offers.iter().find(|(other, ..)| *other == meeting);
    least.is_some_and(|least| best.is_none_or(|(_, best, _)| least < *best))
}

/// Keeps the best of each meeting.
fn offer<T>(offers: &mut Vec<Offer<T>>, (meeting, cost): (u8, Option<Cost>), one: T) {
    if let Some(cost) = cost.filter(|_| is_wanted(offers, (meeting, cost))) {
        offers.retain(|(other, ..)| *other != meeting);
        offers.push((meeting, cost, one));
    }
}

/// Every offer, and none: no answer for this group.
fn some_or_none<T>(offers: &[Offer<T>]) -> impl Iterator<Item = Option<&Offer<T>>> {
    offers.iter().map(Some).chain([None])
}

fn head<T>(offer: Option<&Offer<T>>) -> (u8, Cost) {
    let unanswered = Cost {
        unanswered: 1,
        ..Cost::default()
    };
    offer.map_or((0, unanswered), |(meeting, cost, _)| (*meeting, *cost))
}

/// Whether two groups agree about what both hang on.
fn agree<A, B>(a: Option<&Offer<A>>, b: Option<&Offer<B>>, bit: u8) -> bool {
    a.zip(b).is_none_or(|((a, ..), (b, ..))| (a ^ b) & bit == 0)
}
