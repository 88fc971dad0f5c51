//! The plan of small invented sets, worked by hand.

use fenderbench::quantity::Exact;
use fenderbench::remedy::{
    About, Ask, Basis, Bearings, BoreWork, Cylinder, Finish, Gate, Harm, HousingWork, Item, Job,
    Journal, JournalWork, Looks, Mixing, NEIGHBOURS_APART, Part, PistonWork, Place, Plan, Price,
    Prices, Prover, Reason, Recheck, Row, Shell, ShellWork, Stock, Trouble, Word, Work, WornBore,
    WornJournal, plan,
};
use fenderbench::uncertainty::Measured;
use fenderbench::verdict::{Band, Decision};

use crate::remedy_make::{Doubts, Reading, TENTH, known, tenths};

/// A thousandth of an inch.
pub fn thou(number: i64) -> Exact {
    tenths(10 * number)
}

/// Nothing at all.
pub fn empty() -> Job {
    Job {
        cylinders: Vec::new(),
        pistons: Vec::new(),
        looks: litemap::LiteMap::new(),
        alignment: None,
        straightness: None,
        measured_later: false,
        standard: Exact::ZERO,
        stock: Vec::new(),
        honing: Exact::ZERO,
        light_hone: thou(1),
        greatest: None,
        allowed: Band::default(),
        wanted: Band::default(),
        target: Exact::ZERO,
        mains: Bearings::default(),
        rods: Bearings::default(),
        pins: Vec::new(),
        prices: Prices::new(),
    }
}

pub fn planned(job: &Job) -> Plan {
    let doubts = Doubts::new(0, TENTH / 4);
    let prover: Prover = doubts.prover();
    plan(job, &prover)
}

fn reading(number: usize, value: Exact) -> Measured {
    let value = i64::try_from(value.numerator()).unwrap();
    Reading { number, value }.measured()
}

fn band(low: i64, high: i64) -> Band {
    Band::new(Some(tenths(low)), Some(tenths(high)))
}

/// A cylinder that is good all round: 0.0005 in worn, 0.0023 in clearance.
fn cylinder(index: usize) -> Cylinder {
    let at = tenths(40_005);
    Cylinder {
        worn: WornBore {
            largest: reading(10 * index, at),
            reference: Some(reading(10 * index + 1, tenths(40_000))),
            score: None,
            offset: None,
        },
        form: Some(Decision::In),
        bore: Some(reading(10 * index + 2, tenths(40_003))),
        clearance: Some(reading(10 * index + 3, tenths(23))),
    }
}

/// A row that is good: 0.0001 in worn, 0.0020 in with standard shells.
fn row(from: usize, many: usize) -> Bearings {
    let wall = tenths(900);
    let gap = |index| reading(from + 10 * index, tenths(1_820));
    let journal = |index| Journal {
        worn: WornJournal {
            smallest: reading(from + 10 * index + 1, tenths(24_999)),
            score: None,
            runout: None,
        },
        form: Some(Decision::In),
    };
    let place = |index| Place {
        journal: index,
        form: Some(Decision::In),
        gap: Some(gap(index)),
        gap_made: Some(gap(index)),
        clearance: None,
        thrust: false,
    };
    Bearings {
        journals: (0..many).map(journal).collect(),
        places: (0..many).map(place).collect(),
        standard: tenths(25_000),
        as_made: tenths(25_000),
        undersizes: vec![tenths(200), tenths(100)],
        shells: vec![Shell { wall, used: false }],
        mixing: Mixing::Set,
        allowed: band(10, 35),
        wanted: band(10, 30),
        target: tenths(20),
        neighbours: Some(NEIGHBOURS_APART),
        ..Bearings::default()
    }
}

/// Four good cylinders on five mains.
pub fn good() -> Job {
    let piston = |over: i64| Stock {
        over: tenths(over),
        piston: Some(tenths(40_000 + over - 20)),
    };
    Job {
        cylinders: (0..4).map(cylinder).collect(),
        pistons: vec![Some(Decision::In); 4],
        standard: tenths(40_000),
        stock: vec![piston(200), piston(0), piston(100)],
        honing: thou(3),
        allowed: band(10, 45),
        wanted: band(10, 32),
        target: tenths(20),
        mains: row(100, 5),
        rods: row(200, 4),
        ..empty()
    }
}

fn price(job: &mut Job, item: Item, coins: i64) {
    job.prices.insert(item, Price::new(coins).unwrap());
}

fn seen(job: &mut Job, part: Part, harm: Harm) {
    let looks = Looks {
        harm: Some(harm),
        ..Looks::default()
    };
    job.looks.insert(part, looks);
}

pub fn judged(plan: &Plan, part: Part) -> (Option<Gate>, Word) {
    let judged = plan.parts.iter().find(|judged| judged.part == part);
    let judged = judged.unwrap();
    (judged.gate, judged.word)
}

#[test]
fn a_good_set_is_used_again_with_new_shells() {
    let plan = planned(&good());
    let top = plan.way.top.unwrap();
    assert_eq!(top.bores, BoreWork::UseAgain);
    assert_eq!(top.pistons, PistonWork::Keep);
    for row in [Row::Mains, Row::Rods] {
        let way = plan.way.row(row).unwrap();
        assert_eq!(way.journals, JournalWork::Keep);
        assert_eq!(way.shells, ShellWork::One(0));
        assert!(way.housings.iter().all(|work| *work == HousingWork::Keep));
    }
    let items = [
        (Item::Rings, 4),
        (Item::MainShells, 5),
        (Item::RodShells, 4),
    ];
    assert_eq!(plan.way.items, items);
    assert_eq!(plan.basis, Basis::Weight);
    assert_eq!(plan.blanks, items.map(|(item, _)| item));
    assert_eq!(plan.hope, None);
    assert!(plan.troubles.is_empty() && plan.way.recheck.is_empty());
    // Every clearance is told and proved, and nobody has looked for cracks.
    assert_eq!(plan.way.clearances.len(), 4 + 5 + 4);
    assert!(plan.way.clearances.iter().all(|told| told.guard.is_some()));
    assert!(plan.unseen.contains(&Part::Crank));
    assert_eq!(judged(&plan, Part::Cylinder(0)), (None, Word::UseAgain));
}

#[test]
fn one_bad_journal_grinds_all_of_its_kind_and_no_other() {
    let mut job = good();
    job.mains.journals[2].form = Some(Decision::Out);
    let plan = planned(&job);
    // The smallest undersize stands second in the list.
    let mains = plan.way.mains.as_ref().unwrap();
    assert_eq!(mains.journals, JournalWork::Grind(1));
    assert_eq!(mains.shells, ShellWork::ToFit);
    assert_eq!(plan.way.rods.as_ref().unwrap().journals, JournalWork::Keep);
    let shop = |gate| (Some(gate), Word::Shop);
    assert_eq!(
        judged(&plan, Part::Journal(Row::Mains, 2)),
        shop(Gate::Form)
    );
    assert_eq!(judged(&plan, Part::Journal(Row::Mains, 0)), shop(Gate::Set));
    assert_eq!(judged(&plan, Part::Journal(Row::Rods, 0)).1, Word::UseAgain);
    assert!(plan.way.recheck.contains(&Recheck::Fillet));
    assert!(plan.way.recheck.contains(&Recheck::Galleries));
    assert!(!plan.way.recheck.contains(&Recheck::Wall));
}

#[test]
fn a_blue_journal_means_another_crankshaft_for_both_rows() {
    let mut job = good();
    seen(&mut job, Part::Journal(Row::Rods, 1), Harm::HeatBlue);
    let plan = planned(&job);
    for row in [Row::Mains, Row::Rods] {
        assert_eq!(plan.way.row(row).unwrap().journals, JournalWork::NewCrank);
    }
    assert!(plan.way.items.contains(&(Item::Crank, 1)));
    let blue = judged(&plan, Part::Journal(Row::Rods, 1));
    assert_eq!(blue, (Some(Gate::Soundness), Word::Replace));
}

#[test]
fn one_bent_rod_is_replaced_alone() {
    let mut job = good();
    seen(&mut job, Part::Housing(Row::Rods, 3), Harm::Bent);
    let rods = planned(&job).way.rods.unwrap();
    let keep = HousingWork::Keep;
    assert_eq!(rods.housings, [keep, keep, keep, HousingWork::New]);
}

#[test]
fn a_sleeve_saves_the_one_cylinder_that_nothing_cleans_up() {
    let mut job = good();
    job.cylinders[1].form = Some(Decision::Out);
    job.cylinders[1].worn.largest = reading(11, tenths(40_400));
    let plan = planned(&job);
    let top = plan.way.top.unwrap();
    assert_eq!((top.bores, top.sleeve), (BoreWork::UseAgain, Some(1)));
    assert_eq!(top.pistons, PistonWork::Keep);
    assert_eq!(plan.troubles, [(About::Bores, Trouble::OutOfReach)]);
    // By price a sleeve is weighed against boring them all.
    job.cylinders[1].worn.largest = reading(11, tenths(40_050));
    for item in Item::ALL {
        price(&mut job, item, 100);
    }
    price(&mut job, Item::Block, 9_000);
    let plan = planned(&job);
    assert_eq!(plan.basis, Basis::Price);
    assert_eq!(plan.way.top.unwrap().sleeve, Some(1));
    price(&mut job, Item::Sleeve, 900);
    let plan = planned(&job);
    // Worn on one side it takes 0.0100 in, and 0.010 in over, less the clearance
    // and what is honed, bores 0.0070 in: so 0.020 in, the first of the list.
    assert_eq!(plan.way.top.unwrap().bores, BoreWork::Oversize(0));
    let hope = plan.hope.as_ref().unwrap();
    assert_eq!(hope.top.unwrap().bores, BoreWork::Oversize(2));
    let runner_up = plan.runner_up.unwrap();
    assert_eq!(runner_up.top.unwrap().sleeve, Some(1));
    // Four bored and four pistons at 100 each, and one sleeve.
    let more = runner_up.total.unwrap() - plan.way.total.unwrap();
    assert_eq!(more, 900 - 800);
}

#[test]
fn new_pistons_do_where_only_the_old_ones_are_worn() {
    let mut job = good();
    for cylinder in &mut job.cylinders {
        cylinder.clearance = Some(reading(7, tenths(60)));
    }
    let top = planned(&job).way.top.unwrap();
    assert_eq!(top.bores, BoreWork::UseAgain);
    assert_eq!(top.pistons, PistonWork::New(1));
}

#[test]
fn what_is_fixed_stays_and_every_other_choice_is_told() {
    let mut job = good();
    for item in Item::ALL {
        price(&mut job, item, 100);
    }
    job.pins = vec![Work::Journals(Row::Rods, JournalWork::Grind(0))];
    let plan = planned(&job);
    assert_eq!(
        plan.way.rods.as_ref().unwrap().journals,
        JournalWork::Grind(0)
    );
    let effect = |work| {
        let mut effects = plan.effects.iter();
        let effect = effects.find(|effect| effect.work == work);
        effect.map(|effect| (effect.is_enough, effect.total))
    };
    // Grinding, its set-up, crack test and wash are not needed.
    let less = plan.way.total.map(|total| total - 400);
    let keep = Work::Journals(Row::Rods, JournalWork::Keep);
    assert_eq!(effect(keep), Some((true, less)));
    let nothing = Work::Shells(Row::Rods, ShellWork::Keep);
    assert_eq!(effect(nothing), Some((false, None)));
    assert_eq!(effect(job.pins[0]), None);
}

#[test]
fn a_journal_too_close_to_call_is_what_to_read_next() {
    let mut job = good();
    job.mains.journals[3].form = Some(Decision::Open);
    let plan = planned(&job);
    let mains = |way: &fenderbench::remedy::Way| way.mains.as_ref().unwrap().journals;
    assert_eq!(mains(&plan.way), JournalWork::Grind(1));
    let hope = plan.hope.as_ref().unwrap();
    assert_eq!(mains(hope), JournalWork::Keep);
    let [question] = &hope.rests_on[..] else {
        panic!("{:?}", hope.rests_on);
    };
    assert_eq!(question.part, Part::Journal(Row::Mains, 3));
    assert_eq!((question.ask, question.reason), (Ask::Form, Reason::Form));
    let next = plan.next.as_ref().unwrap();
    assert_eq!(next.question, *question);
    assert_eq!(mains(&next.if_well), JournalWork::Keep);
    assert_eq!(mains(&next.if_badly), JournalWork::Grind(1));
    let word = judged(&plan, question.part);
    assert_eq!(word, (Some(Gate::Form), Word::MeasureAgain));
}

#[test]
fn looks_decide_how_much_work_a_surface_takes() {
    for (surface, bores) in [
        (Finish::Good, BoreWork::UseAgain),
        (Finish::Dull, BoreWork::Deglaze),
        (Finish::Scored, BoreWork::Hone),
    ] {
        let mut job = good();
        let looks = Looks {
            harm: Some(Harm::None),
            surface: Some(surface),
            contradictory: false,
        };
        job.looks.insert(Part::Cylinder(0), looks);
        if surface == Finish::Scored {
            job.cylinders[0].worn.score = Some(known(tenths(3)));
        }
        let plan = planned(&job);
        assert_eq!(plan.way.top.unwrap().bores, bores);
        let [first, ..] = &plan.way.clearances[..] else {
            panic!("no clearance");
        };
        // Honing a score out adds twice its depth.
        let more = if bores == BoreWork::Hone { 6 } else { 0 };
        assert_eq!(first.clearance, tenths(23 + more));
    }
}
