//! Edits, their inverses, undo and redo.

use expect_test::{Expect, expect};
use fenderbench::assess::{Assessment, assess};
use fenderbench::session::{Document, Edit, Field, FieldKey, Session};
use proptest::prelude::*;

use crate::generators::{Act, act, config, devices};
use crate::make::{DESK, PHONE, TABLET, add, document, limit, measured, read};

/// Every set-up field and limit as it counts, set or not.
fn values(session: &Session) -> Vec<Field> {
    let keys = session.fields.keys();
    keys.map(|key| session.field(*key)).collect()
}

/// The values of `keys` in a session.
fn values_of(session: &Session, keys: &[FieldKey]) -> Vec<Field> {
    keys.iter().map(|key| session.field(*key)).collect()
}

fn acted(acts: &[Act]) -> Document {
    let [mut document, ..] = devices();
    for act in acts {
        let _ = act.on(&mut document);
    }
    document
}

proptest! {
    #![proptest_config(config(256))]

    #[test]
    fn an_edit_and_its_inverse_change_nothing(
        before in prop::collection::vec(act(), 0..15),
        act in act(),
    ) {
        let mut session = acted(&before).session().clone();
        let start = session.clone();
        let edit = act.edit(&session);
        match session.apply(&edit, PHONE) {
            Err(why) => {
                prop_assert_eq!(&session, &start);
                prop_assert!(why.to_string().ends_with('.'));
            }
            Ok(inverse) => {
                let changed = session.clone();
                let again = session.apply(&inverse, PHONE).unwrap();
                prop_assert_eq!(assess(&session), assess(&start));
                let keys: Vec<_> = session.fields.keys().copied().collect();
                prop_assert_eq!(values_of(&session, &keys), values_of(&start, &keys));
                session.apply(&again, PHONE).unwrap();
                prop_assert_eq!(assess(&session), assess(&changed));
                prop_assert_eq!(values(&session), values(&changed));
            }
        }
    }

    #[test]
    fn undo_to_the_start_and_redo_to_the_end(acts in prop::collection::vec(act(), 0..25)) {
        let [mut document, ..] = devices();
        let mut path: Vec<Assessment> = vec![assess(document.session())];
        for act in &acts {
            let before = document.session().clone();
            if act.on(&mut document).is_ok() {
                path.push(assess(document.session()));
            } else {
                prop_assert_eq!(&before, document.session());
            }
        }
        prop_assert!(document.redo().is_none());
        for expected in path.iter().rev().skip(1) {
            prop_assert!(document.can_undo());
            document.undo().unwrap().unwrap();
            prop_assert_eq!(&assess(document.session()), expected);
        }
        prop_assert!(!document.can_undo());
        prop_assert!(document.undo().is_none());
        for expected in path.iter().skip(1) {
            prop_assert!(document.can_redo());
            document.redo().unwrap().unwrap();
            prop_assert_eq!(&assess(document.session()), expected);
        }
        prop_assert!(!document.can_redo());
    }

    #[test]
    fn a_reading_is_never_changed(acts in prop::collection::vec(act(), 0..25)) {
        let [mut document, ..] = devices();
        for act in &acts {
            let before = document.session().readings.clone();
            let _ = act.on(&mut document);
            for (id, reading) in before.iter() {
                let mut now = document.session().readings[id].clone();
                prop_assert!(reading.strikes <= now.strikes);
                now.strikes = reading.strikes;
                prop_assert_eq!(&now, reading);
            }
        }
    }

    #[test]
    fn limits_that_stand_go_on_standing(acts in prop::collection::vec(act(), 0..40)) {
        prop_assert_eq!(acted(&acts).session().check_limits(), Ok(()));
    }
}

#[test]
fn history_is_as_long_as_the_work() {
    let mut document = document(vec![]);
    for n in 0..300 {
        let text = format!("82.{n:03} mm");
        read(&mut document, &[("bore/1/whole/top/0", &text)]);
    }
    let full = assess(document.session());
    for _ in 0..300 {
        document.undo().unwrap().unwrap();
    }
    assert!(!document.can_undo());
    assert_eq!(document.session().standing().count(), 0);
    assert_eq!(document.session().readings.len(), 300);
    for _ in 0..300 {
        document.redo().unwrap().unwrap();
    }
    assert_eq!(assess(document.session()), full);
}

#[test]
fn a_new_edit_ends_the_redo_and_a_refused_one_does_not() {
    let mut document = document(vec![]);
    read(&mut document, &[("bore/1/whole/top/0", "82.01 mm")]);
    document.undo().unwrap().unwrap();
    let refused = document.dispatch(&Edit::Set(Field::Cylinders(17)));
    assert!(refused.is_err() && document.can_redo());
    document.dispatch(&Edit::Set(Field::Cylinders(6))).unwrap();
    assert!(!document.can_redo());
}

#[test]
fn own_readings_can_be_undone_after_a_reload() {
    let mut phone = document(vec![]);
    read(&mut phone, &[("bore/1/whole/top/0", "82.01 mm")]);
    read(&mut phone, &[("bore/1/whole/top/90", "82.02 mm")]);
    phone.undo().unwrap().unwrap();
    read(&mut phone, &[("bore/1/whole/top/90", "82.03 mm")]);
    let mut tablet = Document::open(phone.session().clone(), TABLET, &[TABLET]);
    assert!(!tablet.can_undo());
    read(&mut tablet, &[("bore/2/whole/top/0", "82.04 mm")]);

    let mut again = Document::open(tablet.session().clone(), PHONE, &[PHONE]);
    let standing = |document: &Document| -> Vec<String> {
        let readings = document.session().standing();
        readings
            .map(|(_, reading)| reading.entered.to_string())
            .collect()
    };
    assert_eq!(standing(&again), ["82.01 mm", "82.03 mm", "82.04 mm"]);
    again.undo().unwrap().unwrap();
    assert_eq!(standing(&again), ["82.01 mm", "82.04 mm"]);
    again.undo().unwrap().unwrap();
    assert_eq!(standing(&again), ["82.04 mm"]);
    assert!(again.undo().is_none());
    again.redo().unwrap().unwrap();
    assert_eq!(standing(&again), ["82.01 mm", "82.04 mm"]);
}

#[test]
fn an_undo_only_takes_back() {
    // The phone enters a reading and the tablet strikes it. Taking the entry
    // back on the phone must not put the reading back.
    let mut phone = document(vec![]);
    read(&mut phone, &[("bore/1/whole/top/0", "82.01 mm")]);
    let mut tablet = Document::open(phone.session().clone(), TABLET, &[TABLET]);
    let id = *phone.session().readings.keys().next().unwrap();
    tablet.dispatch(&Edit::Strike(id)).unwrap();
    phone.merge(tablet.session());
    assert!(phone.undo().is_none());
    assert!(phone.session().readings[&id].is_struck());
    // The same where the entry replaced another reading in one step.
    let replace = Edit::Batch(vec![
        Edit::Strike(id),
        add(phone.session(), "bore/1/whole/top/0", "82.02 mm"),
    ]);
    phone.dispatch(&replace).unwrap();
    tablet.merge(phone.session());
    let second = *tablet.session().readings.keys().next_back().unwrap();
    tablet.dispatch(&Edit::Strike(second)).unwrap();
    phone.merge(tablet.session());
    assert!(phone.undo().is_none());
    assert!(phone.session().readings[&second].is_struck());
}

fn refused(edit: &Edit, expect: &Expect) {
    let fields = vec![limit("bore/size/new_low", "82.000 mm")];
    let mut session = measured(fields, &[("bore/1/whole/top/0", "82.01 mm")]);
    let before = session.clone();
    let why = session.apply(edit, DESK).unwrap_err();
    expect.assert_eq(&why.to_string());
    assert_eq!(session, before);
    // The same among edits that could be.
    let name = Edit::Set(Field::Name("other".to_owned()));
    let batch = Edit::Batch(vec![name.clone(), edit.clone(), name]);
    assert_eq!(session.apply(&batch, DESK), Err(why));
    assert_eq!(session, before);
}

#[test]
fn refusals_are_sentences() {
    let set = Edit::Set;
    refused(
        &set(Field::Cylinders(0)),
        &expect![["The number of cylinders must be from 1 to 16."]],
    );
    refused(
        &set(Field::Cylinders(17)),
        &expect![["The number of cylinders must be from 1 to 16."]],
    );
    refused(
        &set(Field::Mains(34)),
        &expect![["The number of main journals must be from 1 to 33."]],
    );
    refused(
        &set(Field::RodsPerThrow(3)),
        &expect![["The number of rods on a throw must be from 1 to 2."]],
    );
    refused(
        &set(Field::Name("x".repeat(201))),
        &expect![["At most 200 characters can be kept here: shorten it."]],
    );
    refused(
        &set(limit("bore/size/new_high", "81.999 mm")),
        &expect![[
            "Limits for bore, size: the low limit is above the high limit: look both up again, and their unit."
        ]],
    );
    refused(
        &set(limit("bore/size/service", "3.2 in")),
        &expect![
            "Limits for bore, size: the service limit lies inside the limits as made, so a new part would be worn out: look them up again."
        ],
    );
    refused(
        &set(limit("main_journal/out_of_round/service", "0.000 mm")),
        &expect![[
            "Limits for main journal, out of round: a limit of zero cannot be: leave blank what the manual does not give."
        ]],
    );
    let session = measured(vec![], &[]);
    let mut zero = add(&session, "bore/1/whole/top/0", "0.000 mm");
    refused(
        &zero,
        &expect![["Zero or less is no size: type one above zero."]],
    );
    if let Edit::Add(reading) = &mut zero {
        reading.entered = crate::make::length("82.0 mm").into();
        reading.gauge.counter = 999;
    }
    refused(
        &zero,
        &expect![["What 999@a1 names is not in this session: load the page again."]],
    );
    let nothing = fenderbench::session::Stamp::parse("77@b2").unwrap();
    refused(
        &Edit::Strike(nothing),
        &expect![["What 77@b2 names is not in this session: load the page again."]],
    );
}

#[test]
fn names_count_characters_not_bytes() {
    let mut session = measured(vec![], &[]);
    let name = Field::Name("é".repeat(200));
    assert!(session.apply(&Edit::Set(name), PHONE).is_ok());
}
