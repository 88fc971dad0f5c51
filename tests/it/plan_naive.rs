//! The plan by trying every combination of works, without regard to speed:
//! every sleeve, every rod by itself, every price added up anew.

use fenderbench::remedy::{Ask, BoreWork, Finish, Harm, Item, JournalWork, Part, PistonWork, Row};
use fenderbench::verdict::Decision::{self, In, Open, Out};

use crate::plan_make::{Raw, RawCylinder, RawRow, Seen};
use crate::remedy_make::{Sum, TENTH};

pub const MILE: i64 = 1_000_000 * TENTH;

/// How many of each item.
pub type Bill = [u32; Item::ALL.len()];

/// A way through one group: what it is paid for, and whether it needs
/// another crankshaft and another block.
#[derive(Clone, Debug)]
pub struct Through {
    pub bill: Bill,
    pub crank: bool,
    pub block: bool,
    /// How many smaller sizes there are.
    pub steps: usize,
}

pub struct Naive<'a> {
    pub raw: &'a Raw,
    /// Whether what is open is enough.
    pub open_is_enough: bool,
    pub answer: Option<(Part, Ask, Decision)>,
    /// What must not be on the bill.
    pub without: Vec<Item>,
    pub may_sleeve_all: bool,
}

/// What is left without an answer, what it costs, how heavy it is, the
/// heaviest kind of work first, and how large the sizes are.
pub type Cost = (u32, i64, Vec<u32>, usize);

pub fn bill(items: &[(Item, usize)]) -> Bill {
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
    pub fn ok(&self, part: Part, ask: Ask, seen: &Seen, decision: Option<Decision>) -> bool {
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

    pub fn sound(&self, part: Part, seen: &Seen) -> bool {
        let decision = match seen.harm {
            None | Some(Harm::None | Harm::Spun) => In,
            Some(Harm::MayBeCracked | Harm::Welded) => Open,
            Some(_) => Out,
        };
        self.ok(part, Ask::Soundness, seen, Some(decision))
    }

    pub fn between(&self, sum: &Sum, [low, high]: [i64; 2], several: usize) -> Decision {
        self.raw.doubts.decide(sum, low, high, several)
    }

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
        if cut < even.value() - doubts.guard_out(&even, several) {
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
        bores.retain(|bores| self.may_sleeve_all || *bores != BoreWork::Sleeves);
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
                    if self.without.iter().any(|item| 0 < bill[*item as usize]) {
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
