//! What a session's looks and gaps mean for its plan.

use fenderbench::assess::{advise, assess};
use fenderbench::remedy::{
    Ask, Gate, HousingWork, JournalWork, Look, Part, Plan, Row, ShellWork, Spot, Subject, Word,
};
use fenderbench::session::{Edit, Field, Session};

use crate::make::{edited, sample};
use crate::plan_scenes::judged;

fn plan(session: &Session) -> Plan {
    advise(session, &assess(session)).plan
}

fn look(subject: Subject, position: u8, look: Look, seen: Option<bool>) -> Edit {
    let spot = Spot { subject, position };
    Edit::Set(Field::Look(spot, look, seen))
}

const ROD_2: Part = Part::Housing(Row::Rods, 1);

/// The V-twin with these looks besides.
fn twin(looks: Vec<Edit>) -> Plan {
    plan(&edited(sample("quarry-v-twin"), looks))
}

fn rods(plan: &Plan) -> &[HousingWork] {
    &plan.way.rods.as_ref().unwrap().housings
}

#[test]
fn a_spun_shell_does_not_hide_a_crack_in_its_rod() {
    let blue = look(Subject::Rod, 2, Look::BlueBigEnd, Some(false));
    let cracked = twin(vec![
        look(Subject::Rod, 2, Look::RodCrack, Some(true)),
        blue.clone(),
    ]);
    assert_eq!(rods(&cracked), [HousingWork::Keep, HousingWork::New]);
    assert_eq!(
        judged(&cracked, ROD_2),
        (Some(Gate::Soundness), Word::Replace)
    );
    let hope = cracked.hope.as_ref().unwrap();
    assert!(hope.rests_on.iter().all(|question| question.part != ROD_2));
    // Without one it is resized: its bore is spoilt whatever it measures.
    let spun = twin(vec![blue]);
    assert_eq!(rods(&spun), [HousingWork::Keep, HousingWork::Machine]);
    assert_eq!(judged(&spun, ROD_2), (Some(Gate::Form), Word::Shop));
}

#[test]
fn a_test_that_found_no_crack_answers_what_asked_for_it() {
    let asked = twin(Vec::new());
    assert_eq!(
        judged(&asked, ROD_2),
        (Some(Gate::Soundness), Word::AskSpecialist)
    );
    let tested = twin(vec![look(Subject::Rod, 2, Look::RodCrack, Some(false))]);
    assert_eq!(judged(&tested, ROD_2), (Some(Gate::Form), Word::Shop));
}

#[test]
fn shells_with_more_than_the_grey_band_do_not_run_again() {
    let without = |position| look(Subject::MainShell, position, Look::Specks, None);
    let grey = |position| look(Subject::MainShell, position, Look::GreyBand, Some(true));
    let shells = |looks| twin(looks).way.mains.unwrap().shells;
    assert_eq!(shells(Vec::new()), ShellWork::One(0));
    let fine = vec![without(1), without(2), grey(1), grey(2)];
    assert_eq!(shells(fine.clone()), ShellWork::Keep);
    let one = vec![without(1), without(2), grey(1)];
    let etched = look(Subject::MainShell, 2, Look::Etched, Some(true));
    assert_eq!(shells([one, vec![etched]].concat()), ShellWork::One(0));
}

#[test]
fn journals_that_nobody_read_are_asked_for_and_not_ground() {
    let plan = plan(&sample("pump-twin"));
    assert_eq!(plan.way.rods.as_ref().unwrap().journals, JournalWork::Keep);
    let asked = |index| {
        let part = Part::Journal(Row::Rods, index);
        let mut asked = plan.way.rests_on.iter();
        asked.any(|question| (question.part, question.ask) == (part, Ask::Form))
    };
    assert!(asked(0) && asked(1));
}
