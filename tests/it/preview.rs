//! What taking in a file would do.

use expect_test::{Expect, expect};
use fenderbench::archive::{Incoming, read, write};
use fenderbench::present::{Preview, preview};
use fenderbench::session::{Document, Edit, Field, Session};

use crate::make::{PHONE, TABLET, add, measured, read as enter};

fn incoming(session: &Session) -> Incoming {
    read(&write(session, TABLET)).unwrap()
}

fn check(theirs: &Session, here: Option<&Session>, expect: &Expect) -> Preview {
    let preview = preview(&incoming(theirs), here);
    assert_eq!(preview.warning, None);
    expect.assert_eq(&format!("{}\n{}", preview.name, preview.lines.join("\n")));
    preview
}

fn spare() -> Session {
    let fields = vec![Field::Name("Spare".to_owned()), Field::Cylinders(1)];
    measured(fields, &[("bore/1/whole/top/0", "82.010 mm")])
}

#[test]
fn a_session_that_is_not_here_yet() {
    let new = check(
        &spare(),
        None,
        &expect![[r#"
        Spare
        1 cylinder, 1 standing reading, 0 struck.
        This session is not on this device yet."#]],
    );
    assert!(!new.nothing_new);
    let empty = measured(vec![Field::Name("Empty".to_owned())], &[]);
    check(
        &empty,
        None,
        &expect![[r#"
        Empty
        4 cylinders, 0 standing readings, 0 struck.
        This session is not on this device yet."#]],
    );
}

#[test]
fn a_session_that_is_here_already() {
    let ours = spare();
    let same = check(
        &ours,
        Some(&ours),
        &expect![[r#"
        Spare
        1 cylinder, 1 standing reading, 0 struck.
        All of it is here already: nothing would change."#]],
    );
    assert!(same.nothing_new);

    let mut tablet = Document::open(ours.clone(), TABLET, &[TABLET]);
    let first = *ours.readings.keys().next().unwrap();
    tablet.dispatch(&Edit::Strike(first)).unwrap();
    enter(&mut tablet, &[("bore/1/whole/top/0", "82.012 mm")]);
    tablet.dispatch(&Edit::Set(Field::Mains(2))).unwrap();
    let more = check(
        tablet.session(),
        Some(&ours),
        &expect![[r#"
        Spare
        1 cylinder, 1 standing reading, 1 struck.
        Here already; 1 reading would be added, 1 struck or put back, 1 set-up field or limit changed."#]],
    );
    assert!(!more.nothing_new);
    // An older copy of what is here brings nothing.
    let older = check(
        &ours,
        Some(tablet.session()),
        &expect![[r#"
        Spare
        1 cylinder, 1 standing reading, 0 struck.
        All of it is here already: nothing would change."#]],
    );
    assert!(older.nothing_new);
}

#[test]
fn a_preview_tells_what_merging_does() {
    let ours = spare();
    let mut phone = Document::open(ours.clone(), PHONE, &[PHONE]);
    let edit = add(phone.session(), "bore/1/whole/top/90", "82.015 mm");
    phone.dispatch(&edit).unwrap();
    let mut tablet = Document::open(ours, TABLET, &[TABLET]);
    for n in 0..3 {
        let text = format!("82.{n:03} mm");
        enter(&mut tablet, &[("bore/1/whole/bottom/0", &text)]);
    }
    check(
        tablet.session(),
        Some(phone.session()),
        &expect![[r#"
        Spare
        1 cylinder, 4 standing readings, 0 struck.
        Here already; 3 readings would be added, 0 struck or put back, 0 set-up fields or limits changed."#]],
    );
    let before = phone.session().readings.len();
    phone.merge(tablet.session());
    assert_eq!(phone.session().readings.len(), before + 3);
}

#[test]
fn a_changed_file_is_warned_of() {
    let text = write(&spare(), PHONE).replacen("82.010", "82.011", 1);
    let preview = preview(&read(&text).unwrap(), None);
    expect![["The file was changed after it was written. Compare its readings with your notes before you use them."]]
        .assert_eq(&preview.warning.unwrap());
}

#[test]
fn records_of_a_newer_version_are_counted() {
    let newer = crate::archive::newer_sample();
    let mut one = spare();
    let first = newer.extras.iter().next().unwrap();
    one.extras.insert(first.0.clone(), first.1.clone());
    check(
        &one,
        None,
        &expect![[r#"
        Spare
        1 cylinder, 1 standing reading, 0 struck.
        This session is not on this device yet.
        1 record of a newer version is kept and handed on, but not used."#]],
    );
    check(
        &newer,
        None,
        &expect![[r#"
        Straight four — “spare”
        2 cylinders, 2 standing readings, 1 struck.
        This session is not on this device yet.
        6 records of a newer version are kept and handed on, but not used."#]],
    );
}
