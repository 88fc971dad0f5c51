//! Plans of input that makes no sense, or is not there: partial, and named.

use fenderbench::remedy::{
    About, BoreWork, Cylinder, Gate, JournalWork, Looks, Part, Price, PriceRefused, Reason, Row,
    ShellWork, Trouble, Word, Work,
};
use fenderbench::verdict::Decision;

use crate::plan_scenes::{empty, good, judged, planned, thou};
use crate::remedy_make::tenths;

#[test]
fn nothing_known_is_still_a_plan() {
    let plan = planned(&empty());
    assert!(plan.way.items.is_empty() && plan.effects.is_empty() && plan.next.is_none());
    let mut job = good();
    for cylinder in &mut job.cylinders {
        *cylinder = Cylinder {
            form: None,
            bore: None,
            clearance: None,
            ..cylinder.clone()
        };
    }
    let plan = planned(&job);
    let hope = plan.hope.unwrap();
    assert_eq!(hope.top.unwrap().bores, BoreWork::UseAgain);
    assert!(
        hope.rests_on
            .iter()
            .all(|question| question.reason == Reason::Unknown)
    );
}

#[test]
fn nothing_to_bore_to_is_said_and_the_rest_is_planned() {
    let mut job = good();
    job.stock.clear();
    job.cylinders[0].form = Some(Decision::Out);
    job.pistons[0] = Some(Decision::Out);
    let plan = planned(&job);
    assert_eq!(plan.way.top, None);
    assert!(plan.way.mains.is_some() && plan.way.rods.is_some());
    assert!(plan.troubles.contains(&(About::Bores, Trouble::NoSizes)));
    // With pistons that may run again a block can still be found for them.
    job.pistons[0] = Some(Decision::In);
    assert!(planned(&job).way.top.is_some());
}

#[test]
fn a_clearance_larger_than_the_oversize_is_named() {
    let mut job = good();
    job.target = thou(12);
    job.cylinders[0].form = Some(Decision::Out);
    let plan = planned(&job);
    let candidate = plan.oversizes.candidates[0].proof;
    assert_eq!(candidate.decision, Decision::Open);
    assert_eq!(candidate.reason, Reason::Mistyped);
}

#[test]
fn shells_that_do_not_reach_or_are_not_there_are_named() {
    let mut job = good();
    job.mains.shells[0].wall = tenths(950);
    job.rods.shells.clear();
    let plan = planned(&job);
    let mains = (About::Shells(Row::Mains), Trouble::OutOfReach);
    let rods = (About::Shells(Row::Rods), Trouble::NoSizes);
    assert_eq!(plan.troubles, [mains, rods]);
    // Both are ground, to shells that go with that.
    assert_eq!(plan.way.mains.unwrap().journals, JournalWork::Grind(1));
    assert_eq!(plan.way.rods.unwrap().journals, JournalWork::Grind(1));
}

#[test]
fn a_negative_price_is_refused_with_a_sentence() {
    assert_eq!(Price::new(-1), Err(PriceRefused::Negative));
    assert_eq!(Price::new(Price::MAX + 1), Err(PriceRefused::TooMuch));
    assert_eq!(Price::new(i64::MIN), Err(PriceRefused::Negative));
    assert!(PriceRefused::Negative.to_string().ends_with('.'));
}

#[test]
fn what_is_fixed_and_cannot_be_leaves_only_its_own_part_open() {
    let mut job = good();
    job.pins = vec![
        Work::Bores(BoreWork::Oversize(99)),
        Work::Shells(Row::Mains, ShellWork::One(7)),
        Work::Journals(Row::Mains, JournalWork::NewCrank),
    ];
    job.mains.places[0].journal = 77;
    let plan = planned(&job);
    assert_eq!((plan.way.top, &plan.way.mains), (None, &None));
    assert!(plan.way.rods.is_some());
}

#[test]
fn contradictory_readings_prove_nothing() {
    let mut job = good();
    let looks = Looks {
        contradictory: true,
        ..Looks::default()
    };
    job.looks.insert(Part::Journal(Row::Mains, 1), looks);
    let plan = planned(&job);
    let mains = plan.way.mains.as_ref().unwrap().journals;
    assert_eq!(mains, JournalWork::NewCrank);
    let word = judged(&plan, Part::Journal(Row::Mains, 1));
    assert_eq!(word, (Some(Gate::Sense), Word::MeasureAgain));
    assert_eq!(
        plan.next.unwrap().question.part,
        Part::Journal(Row::Mains, 1)
    );
}
