//! The plan by trying every combination of works, without regard to speed:
//! every sleeve, every rod by itself, every price added up anew.

use fenderbench::remedy::{
    Ask, BoreWork, Finish, Harm, HousingWork, Item, JournalWork, Part, PistonWork, Row, ShellWork,
};
use fenderbench::verdict::Decision::{self, In, Open, Out};

use crate::plan_make::{Raw, RawCylinder, RawJournal, RawPlace, RawRow, Seen};
use crate::remedy_make::{Sum, TENTH};

const MILE: i64 = 1_000_000 * TENTH;

/// How many of each item.
pub type Bill = [u32; Item::ALL.len()];

/// A way through one group: what it is paid for, and whether it needs
/// another crankshaft and another block.
#[derive(Clone, Debug)]
struct Through {
    bill: Bill,
    crank: bool,
    block: bool,
    /// How many smaller sizes there are.
    steps: usize,
}

pub struct Naive<'a> {
    pub raw: &'a Raw,
    /// Whether what is open is enough.
    pub open_is_enough: bool,
    pub answer: Option<(Part, Ask, Decision)>,
    /// Something that must not be on the bill.
    pub without: Option<Item>,
}

/// What is left without an answer, what it costs, how heavy it is, the
/// heaviest kind of work first, and how large the sizes are.
pub type Cost = (u32, i64, Vec<u32>, usize);

fn bill(items: &[(Item, usize)]) -> Bill {
    let mut bill = Bill::default();
    for (item, count) in items {
        bill[*item as usize] += u32::try_from(*count).unwrap();
    }
    bill
}

/// What is paid once, whoever needs it.
fn is_shared(item: Item) -> bool {
    use Item::{Block, CrackTest, Crank, GrindSetUp, Polish, Wash};
    [Wash, Polish, CrackTest, GrindSetUp, Crank, Block].contains(&item)
}

fn joined(bills: &[&Bill]) -> Bill {
    let mut sum = Bill::default();
    for item in Item::ALL {
        let counts = bills.iter().map(|bill| bill[item as usize]);
        sum[item as usize] = if is_shared(item) {
            counts.max().unwrap_or(0)
        } else {
            counts.sum()
        };
    }
    sum
}

/// The heaviest first; what goes along with other work is not in here.
const WEIGHTS: [&[Item]; 9] = [
    &[Item::Block],
    &[Item::Crank],
    &[Item::Rod, Item::Sleeve],
    &[Item::GrindMains, Item::GrindRodJournals],
    &[Item::Bore],
    &[Item::ResizeRod, Item::AlignHone],
    &[Item::Piston],
    &[Item::Hone, Item::MainShells, Item::RodShells],
    &[Item::Deglaze, Item::Polish],
];

pub fn weight(bill: &Bill) -> Vec<u32> {
    let of = |items: &&[Item]| items.iter().map(|item| bill[*item as usize]).sum();
    WEIGHTS.iter().map(of).collect()
}

/// How many sizes stand before one that is taken.
fn steps(sizes: &[i64], taken: usize) -> usize {
    let own = (sizes[taken], taken);
    let all = sizes.iter().copied().zip(0..);
    all.filter(|other| *other < own).count()
}

fn flags(bits: usize, many: usize) -> impl Iterator<Item = usize> {
    (0..many).map(move |at| bits / 3_usize.pow(u32::try_from(at).unwrap()) % 3)
}

impl Raw {
    pub fn steps_over(&self, pistons: PistonWork) -> usize {
        let sizes: Vec<i64> = self.stock.iter().map(|(over, _)| *over).collect();
        match pistons {
            PistonWork::Keep => 0,
            PistonWork::New(size) => steps(&sizes, size),
        }
    }
}

impl RawRow {
    pub fn steps_under(&self, journals: JournalWork) -> usize {
        match journals {
            JournalWork::Grind(size) => steps(&self.undersizes, size),
            _ => 0,
        }
    }
}

impl Naive<'_> {
    fn ok(&self, part: Part, ask: Ask, seen: &Seen, decision: Option<Decision>) -> bool {
        let mut decision = decision.unwrap_or(Open);
        if seen.contradictory && ![Ask::Soundness, Ask::Surface].contains(&ask) {
            decision = Open;
        }
        if decision == Open
            && let Some((of, asked, answer)) = self.answer
            && (of, asked) == (part, ask)
        {
            decision = answer;
        }
        decision == In || decision == Open && self.open_is_enough
    }

    fn sound(&self, part: Part, seen: &Seen) -> bool {
        let decision = match seen.harm {
            None | Some(Harm::None | Harm::Spun) => In,
            Some(Harm::MayBeCracked | Harm::Welded) => Open,
            Some(_) => Out,
        };
        self.ok(part, Ask::Soundness, seen, Some(decision))
    }

    fn between(&self, sum: &Sum, [low, high]: [i64; 2], several: usize) -> Decision {
        self.raw.doubts.decide(sum, low, high, several)
    }

    // Bores and pistons.

    fn bore_cleans(&self, cylinder: &RawCylinder, over: i64, piston: Option<i64>) -> Decision {
        let raw = self.raw;
        let doubts = &raw.doubts;
        if over <= 0 || raw.greatest.is_some_and(|most| most < over) {
            return Out;
        }
        let cut = piston.map_or(raw.standard + over, |piston| piston + raw.target) - raw.honing;
        let mut even = Sum::default().and(1, cylinder.worst);
        if let Some(score) = cylinder.score.filter(|score| 0 <= score.value) {
            even = even.and(2, score);
        }
        let unworn = cylinder.unworn.map_or(raw.standard, |unworn| unworn.value);
        let mut worst = even.clone();
        if unworn <= cylinder.worst.value {
            worst = worst.and(1, cylinder.worst);
            worst = match cylinder.unworn {
                Some(unworn) => worst.and(-1, unworn),
                None => worst.less(raw.standard),
            };
        }
        let several = raw.cylinders.len();
        let at_least = |sum: &Sum| sum.value() + doubts.guard(sum, 0.95);
        let surely = at_least(&even) <= cut && at_least(&worst) <= cut;
        if cut < even.value() - doubts.guard(&even, to_convict(several)) {
            return Out;
        }
        let is_hidden = cylinder.score.is_none() && cylinder.seen.surface == Some(Finish::Scored);
        let is_doubtful = cylinder.unworn.is_none() || is_hidden || over <= raw.target;
        if surely && !is_doubtful { In } else { Open }
    }

    fn cylinder_ok(
        &self,
        index: usize,
        cylinder: &RawCylinder,
        bores: BoreWork,
        pistons: PistonWork,
    ) -> bool {
        let raw = self.raw;
        let part = Part::Cylinder(index);
        let several = raw.cylinders.len();
        let seen = &cylinder.seen;
        let score = cylinder.score.filter(|score| 0 <= score.value);
        let fits = |most: i64| {
            let (sum, [low, high]) = match pistons {
                PistonWork::Keep => (cylinder.own(), raw.allowed),
                PistonWork::New(size) => {
                    let Some(piston) = raw.stock[size].1 else {
                        return false;
                    };
                    let bore = cylinder.bore;
                    let sum = bore.map(|bore| Sum::default().and(1, bore).less(piston));
                    (sum, raw.wanted)
                }
            };
            let decided = sum.map(|sum| {
                if most == 0 {
                    return self.between(&sum, [low, high], several);
                }
                let scored = match score {
                    Some(score) => sum.clone().and(2, score),
                    None => sum.clone(),
                };
                let honed = sum.less(-most);
                let not_loose = self.between(&scored, [-MILE, high], several);
                not_loose.and(self.between(&honed, [low, MILE], several))
            });
            self.ok(part, Ask::Clearance, seen, decided)
        };
        let surface = |worst: Finish, most: i64| {
            let looks = seen.surface.unwrap_or(Finish::Good);
            let decided = match score {
                _ if worst < looks => Some(Out),
                Some(score) => {
                    let sum = Sum::default().and(2, score);
                    Some(self.between(&sum, [-MILE, most], several))
                }
                // A negative depth is none.
                None if looks == Finish::Scored => None,
                None => Some(In),
            };
            self.ok(part, Ask::Surface, seen, decided)
        };
        let form = if seen.harm == Some(Harm::Spun) {
            Some(Out)
        } else {
            cylinder.form
        };
        let form = || self.ok(part, Ask::Form, seen, form);
        let sound = || self.sound(part, seen);
        match bores {
            BoreWork::UseAgain => sound() && form() && surface(Finish::Good, 0) && fits(0),
            BoreWork::Deglaze => sound() && form() && surface(Finish::Dull, 0) && fits(0),
            BoreWork::Hone => {
                let most = raw.light_hone;
                sound() && form() && surface(Finish::Scored, most) && fits(most)
            }
            BoreWork::Oversize(size) => {
                let (over, piston) = raw.stock[size];
                let cleans = self.bore_cleans(cylinder, over, piston);
                sound() && self.ok(part, Ask::CleanUp, seen, Some(cleans))
            }
            BoreWork::Sleeves | BoreWork::NewBlock => true,
        }
    }

    fn tops(&self) -> Vec<Through> {
        let raw = self.raw;
        let many = raw.cylinders.len();
        let sizes = raw.stock.len();
        let mut bores = vec![BoreWork::UseAgain, BoreWork::Deglaze, BoreWork::Hone];
        bores.extend((0..sizes).map(BoreWork::Oversize));
        bores.extend([BoreWork::Sleeves, BoreWork::NewBlock]);
        let mut pistons = vec![PistonWork::Keep];
        pistons.extend((0..sizes).map(PistonWork::New));
        let mut sleeves = vec![None];
        sleeves.extend((0..many).map(Some));
        let mut all = Vec::new();
        for &bores in &bores {
            for &pistons in &pistons {
                for &sleeve in &sleeves {
                    if matches!(bores, BoreWork::Oversize(size) if pistons != PistonWork::New(size))
                    {
                        continue;
                    }
                    let whole = [BoreWork::Sleeves, BoreWork::NewBlock].contains(&bores);
                    if whole && sleeve.is_some() {
                        continue;
                    }
                    if bores != BoreWork::NewBlock && !self.sound(Part::Block, &raw.block) {
                        continue;
                    }
                    let cylinders = raw.cylinders.iter().enumerate();
                    let each = |(index, cylinder): (usize, &RawCylinder)| {
                        let piston = Part::Piston(index);
                        let seen = &cylinder.piston_seen;
                        let spoilt =
                            seen.surface == Some(Finish::Scored) || seen.harm == Some(Harm::Spun);
                        let form = if spoilt {
                            Some(Out)
                        } else {
                            cylinder.piston_form
                        };
                        let piston_ok = pistons != PistonWork::Keep
                            || self.sound(piston, seen) && self.ok(piston, Ask::Form, seen, form);
                        let done = sleeve == Some(index)
                            || self.cylinder_ok(index, cylinder, bores, pistons);
                        piston_ok && done
                    };
                    if !cylinders.into_iter().all(each) {
                        continue;
                    }
                    let mut items = vec![(Item::Rings, many)];
                    if pistons != PistonWork::Keep {
                        items.push((Item::Piston, many));
                    }
                    match bores {
                        BoreWork::UseAgain => {}
                        BoreWork::Deglaze => items.extend([(Item::Deglaze, many), (Item::Wash, 1)]),
                        BoreWork::Hone => items.extend([(Item::Hone, many), (Item::Wash, 1)]),
                        BoreWork::Oversize(_) => items.extend([
                            (Item::Bore, many),
                            (Item::BoreSetUp, 1),
                            (Item::Wash, 1),
                        ]),
                        BoreWork::Sleeves => items.extend([
                            (Item::Sleeve, many),
                            (Item::BoreSetUp, 1),
                            (Item::Wash, 1),
                        ]),
                        BoreWork::NewBlock => items.extend([(Item::Block, 1), (Item::Wash, 1)]),
                    }
                    let mut bill = bill(&items);
                    if sleeve.is_some() {
                        bill[Item::Sleeve as usize] += 1;
                        bill[Item::BoreSetUp as usize] = 1;
                        bill[Item::Wash as usize] = 1;
                    }
                    all.push(Through {
                        bill,
                        crank: false,
                        block: bores == BoreWork::NewBlock,
                        steps: raw.steps_over(pistons),
                    });
                }
            }
        }
        all
    }

    // Bearings.

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
        if even.value() + doubts.guard(&even, to_convict(several)) < cut {
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

    fn bottoms(&self, row: Row) -> Vec<Through> {
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

    // The set.

    fn price(&self, bill: &Bill) -> Option<i64> {
        let mut sum = 0;
        for item in Item::ALL {
            let count = bill[item as usize];
            if 0 < count {
                let price = self.raw.prices.iter().find(|(of, _)| *of == item);
                sum += i64::from(count) * price?.1;
            }
        }
        Some(sum)
    }

    /// The best by price, or by weight alone, and what it is paid for.
    pub fn best(&self, by_price: bool) -> Option<(Cost, Bill)> {
        let with_none = |all: Vec<Through>| -> Vec<Option<Through>> {
            all.into_iter().map(Some).chain([None]).collect()
        };
        let tops = with_none(self.tops());
        let mains = with_none(self.bottoms(Row::Mains));
        let rods = with_none(self.bottoms(Row::Rods));
        let none = Bill::default();
        let mut best: Option<(Cost, Bill)> = None;
        for top in &tops {
            for main in &mains {
                let block = |through: &Option<Through>| through.as_ref().map(|one| one.block);
                if let (Some(a), Some(b)) = (block(top), block(main))
                    && a != b
                {
                    continue;
                }
                for rod in &rods {
                    let crank = |through: &Option<Through>| through.as_ref().map(|one| one.crank);
                    if let (Some(a), Some(b)) = (crank(main), crank(rod))
                        && a != b
                    {
                        continue;
                    }
                    let all = [top, main, rod];
                    let unanswered = all.iter().filter(|through| through.is_none()).count();
                    let bills = all.map(|one| one.as_ref().map_or(&none, |one| &one.bill));
                    let bill = joined(&bills);
                    if self.without.is_some_and(|item| 0 < bill[item as usize]) {
                        continue;
                    }
                    let price = if by_price { self.price(&bill) } else { Some(0) };
                    let Some(price) = price else {
                        continue;
                    };
                    let head = (u32::try_from(unanswered).unwrap(), price);
                    if best.as_ref().is_some_and(|((a, b, ..), _)| (*a, *b) < head) {
                        continue;
                    }
                    let steps = all.iter().filter_map(|one| Some(one.as_ref()?.steps));
                    let cost = (head.0, head.1, weight(&bill), steps.sum());
                    if best.as_ref().is_none_or(|(least, _)| cost < *least) {
                        best = Some((cost, bill));
                    }
                }
            }
        }
        best
    }
}

/// How sure one of several must be to convict all: the permitted error, in
/// millionths, is shared out.
fn to_convict(several: usize) -> f64 {
    let shared = 50_000 / several.max(1);
    1.0 - f64::from(u32::try_from(shared).unwrap()) / 1e6
}
