//! Every combination of works on a row of bearings.

use fenderbench::remedy::{
    Ask, Finish, Harm, HousingWork, Item, JournalWork, Part, Row, ShellWork,
};
use fenderbench::verdict::Decision::{self, In, Open, Out};

use crate::plan_make::{RawJournal, RawPlace, RawRow};
use crate::plan_naive::{MILE, Naive, Through, bill};
use crate::remedy_make::Sum;

fn flags(bits: usize, many: usize) -> impl Iterator<Item = usize> {
    (0..many).map(move |at| bits / 3_usize.pow(u32::try_from(at).unwrap()) % 3)
}

impl Naive<'_> {
    fn journal_ok(&self, row: Row, index: usize, journal: &RawJournal, work: JournalWork) -> bool {
        let bearings = &self.raw.rows[usize::from(row == Row::Rods)];
        let part = Part::Journal(row, index);
        let several = bearings.journals.len();
        let seen = &journal.seen;
        let score = journal.score.filter(|score| 0 <= score.value);
        let looks = seen.surface.unwrap_or(Finish::Good);
        let stays = |worst: Finish| {
            let decided = match score {
                _ if worst < looks => Out,
                Some(score) => {
                    let sum = Sum::default().and(2, score);
                    self.between(&sum, [-MILE, 0], several)
                }
                None => In,
            };
            let form = if seen.harm == Some(Harm::Spun) {
                Some(Out)
            } else {
                journal.form
            };
            self.ok(part, Ask::Surface, seen, Some(decided)) && self.ok(part, Ask::Form, seen, form)
        };
        let done = match work {
            JournalWork::NewCrank => return true,
            JournalWork::Keep => stays(Finish::Good),
            JournalWork::Polish => stays(Finish::Dull),
            JournalWork::Grind(size) => {
                let cleans = self.journal_cleans(bearings, journal, bearings.undersizes[size]);
                self.ok(part, Ask::CleanUp, seen, Some(cleans))
            }
        };
        done && self.sound(part, seen)
    }

    fn journal_cleans(&self, row: &RawRow, journal: &RawJournal, under: i64) -> Decision {
        let doubts = &self.raw.doubts;
        if row.greatest.is_some_and(|most| most < under) {
            return Out;
        }
        let cut = row.standard - under;
        let score = journal.score.filter(|score| 0 <= score.value);
        let mut even = Sum::default().and(1, journal.smallest);
        if let Some(score) = score {
            even = even.and(-2, score);
        }
        let mut worst = even.clone();
        if !row.recentred {
            if journal.smallest.value <= row.as_made {
                worst = worst.and(1, journal.smallest).less(row.as_made);
            }
            if let Some(runout) = journal.runout.filter(|runout| 0 <= runout.value) {
                worst = worst.and(-1, runout);
            }
        }
        let several = row.journals.len();
        if even.value() + doubts.guard_out(&even, several) < cut {
            return Out;
        }
        let at_most = |sum: &Sum| sum.value() - doubts.guard(sum, 0.95);
        let is_hidden = journal.score.is_none() && journal.seen.surface == Some(Finish::Scored);
        let surely = cut <= at_most(&even) && cut <= at_most(&worst);
        if surely && !is_hidden { In } else { Open }
    }

    fn gap(&self, row: &RawRow, place: &RawPlace, work: HousingWork) -> Option<Sum> {
        if work == HousingWork::Keep {
            return Some(Sum::default().and(1, place.housing?).and(-1, place.size));
        }
        Some(Sum::default().and(-1, place.size).less(-row.made))
    }

    fn place_ok(&self, row: Row, index: usize, shells: ShellWork, works: &[HousingWork]) -> bool {
        let bearings = &self.raw.rows[usize::from(row == Row::Rods)];
        let place = &bearings.places[index];
        let work = works[index];
        let part = Part::Housing(row, index);
        let several = bearings.places.len();
        let seen = &place.seen;
        let form = if [
            seen.harm == Some(Harm::Spun),
            seen.surface == Some(Finish::Scored),
        ]
        .contains(&true)
        {
            Some(Out)
        } else {
            place.form
        };
        let housing = match work {
            HousingWork::Keep => self.sound(part, seen) && self.ok(part, Ask::Form, seen, form),
            HousingWork::Machine => self.sound(part, seen) && bearings.can_be_machined,
            HousingWork::New => true,
        };
        let with = |wall: i64| {
            let decided = self
                .gap(bearings, place, work)
                .map(|gap| self.between(&gap.less(2 * wall), bearings.wanted, several));
            self.ok(part, Ask::Clearance, seen, decided)
        };
        let clear = match shells {
            ShellWork::Keep => {
                let ran = &place.shells_seen;
                let spoilt = ran.surface == Some(Finish::Scored) || ran.harm == Some(Harm::Spun);
                let form = if spoilt { Out } else { In };
                let decided = place.clearance.map(|clearance| {
                    let sum = Sum::default().and(1, clearance);
                    self.between(&sum, bearings.allowed, several)
                });
                let is_unseen = place.clearance.is_none() && !bearings.walls.is_empty();
                !is_unseen
                    && work == HousingWork::Keep
                    && self.ok(Part::Shells(row, index), Ask::Form, ran, Some(form))
                    && self.ok(part, Ask::Clearance, seen, decided)
            }
            ShellWork::One(size) => with(bearings.walls[size]),
            ShellWork::Places => {
                let all_known = works
                    .iter()
                    .zip(&bearings.places)
                    .all(|(_, place)| work != HousingWork::Keep || place.housing.is_some());
                bearings.places_may_differ
                    && all_known
                    && bearings.walls.iter().any(|wall| with(*wall))
            }
            ShellWork::ToFit => true,
        };
        housing && clear
    }

    /// Whether no two neighbours are told apart, with one size of shell.
    fn alike(&self, row: Row, works: &[HousingWork]) -> bool {
        let bearings = &self.raw.rows[usize::from(row == Row::Rods)];
        let Some(limit) = bearings.neighbours else {
            return true;
        };
        // Of rods, machined or not is not told apart.
        let work = |index: usize| match row {
            Row::Mains => works[index],
            Row::Rods => HousingWork::Keep,
        };
        let places = &bearings.places;
        (1..places.len()).all(|index| {
            let [before, after] =
                [index - 1, index].map(|index| self.gap(bearings, &places[index], work(index)));
            let (Some(before), Some(after)) = (before, after) else {
                return true;
            };
            let apart = before.minus(after);
            self.between(&apart, [-limit, limit], places.len() - 1) != Out
        })
    }

    pub fn bottoms(&self, row: Row) -> Vec<Through> {
        let raw = self.raw;
        let bearings = &raw.rows[usize::from(row == Row::Rods)];
        let many = bearings.places.len();
        let mut journals = vec![JournalWork::Keep, JournalWork::Polish];
        journals.extend((0..bearings.undersizes.len()).map(JournalWork::Grind));
        journals.push(JournalWork::NewCrank);
        let mut shells = vec![ShellWork::Keep, ShellWork::Places, ShellWork::ToFit];
        shells.extend((0..bearings.walls.len()).map(ShellWork::One));
        let three = [HousingWork::Keep, HousingWork::Machine, HousingWork::New];
        // An empty line of mains may still lie in another block.
        let housings: Vec<(HousingWork, Vec<HousingWork>)> = match row {
            Row::Mains => three.map(|work| (work, vec![work; many])).to_vec(),
            Row::Rods => {
                let all = 0..3_usize.pow(u32::try_from(many).unwrap());
                let each = all.map(|bits| flags(bits, many).map(|at| three[at]).collect());
                each.map(|works| (HousingWork::Keep, works)).collect()
            }
        };
        let block_is_sound = self.sound(Part::Block, &raw.block);
        let in_line = raw.alignment.unwrap_or(In);
        let in_line = self.ok(Part::Block, Ask::Form, &raw.block, Some(in_line));
        let straight = raw.straightness.unwrap_or(In);
        let straight = self.ok(Part::Crank, Ask::Form, &raw.crank, Some(straight));
        let crank_is_sound = self.sound(Part::Crank, &raw.crank);
        let mut all = Vec::new();
        for &journal in &journals {
            let stays = matches!(journal, JournalWork::Keep | JournalWork::Polish);
            let is_new = journal == JournalWork::NewCrank;
            let crank_ok = is_new || crank_is_sound && (straight || !stays);
            let each =
                |(index, raw): (usize, &RawJournal)| self.journal_ok(row, index, raw, journal);
            if !crank_ok || !bearings.journals.iter().enumerate().all(each) {
                continue;
            }
            for &shells in &shells {
                if (shells == ShellWork::ToFit) == stays {
                    continue;
                }
                for (line, works) in &housings {
                    let block_ok = row == Row::Rods
                        || match line {
                            HousingWork::Keep => block_is_sound && in_line,
                            HousingWork::Machine => block_is_sound,
                            HousingWork::New => true,
                        };
                    let alike = !matches!(shells, ShellWork::One(_)) || self.alike(row, works);
                    let places = 0..many;
                    let done = |index: usize| self.place_ok(row, index, shells, works);
                    if !block_ok || !alike || !places.into_iter().all(done) {
                        continue;
                    }
                    let [pair, grind] = match row {
                        Row::Mains => [Item::MainShells, Item::GrindMains],
                        Row::Rods => [Item::RodShells, Item::GrindRodJournals],
                    };
                    let mut items = Vec::new();
                    if shells != ShellWork::Keep {
                        items.push((pair, many));
                    }
                    match journal {
                        JournalWork::Keep => {}
                        JournalWork::Polish => items.extend([(Item::Polish, 1), (Item::Wash, 1)]),
                        JournalWork::Grind(_) => items.extend([
                            (grind, 1),
                            (Item::GrindSetUp, 1),
                            (Item::CrackTest, 1),
                            (Item::Wash, 1),
                        ]),
                        JournalWork::NewCrank => items.extend([(Item::Crank, 1), (Item::Wash, 1)]),
                    }
                    let count = |wanted| works.iter().filter(|work| **work == wanted).count();
                    if row == Row::Rods {
                        items.push((Item::ResizeRod, count(HousingWork::Machine)));
                        items.push((Item::Rod, count(HousingWork::New)));
                    }
                    let mut bill = bill(&items);
                    let by_line = match (row, line) {
                        (Row::Rods, _) | (_, HousingWork::Keep) => None,
                        (_, HousingWork::Machine) => Some(Item::AlignHone),
                        (_, HousingWork::New) => Some(Item::Block),
                    };
                    if let Some(item) = by_line {
                        bill[item as usize] = 1;
                        bill[Item::Wash as usize] = 1;
                    }
                    all.push(Through {
                        bill,
                        crank: is_new,
                        block: row == Row::Mains && *line == HousingWork::New,
                        steps: bearings.steps_under(journal),
                    });
                }
            }
        }
        all
    }
}
