//! The form for the limits of a kind.

use expect_test::{Expect, expect};
use fenderbench::present::LimitsForm;
use fenderbench::session::{Bound, Edit, Field, Kind, Quantity, Session};

use crate::make::{INCH, MM, PHONE, limit, session};

fn rows(session: &Session, kind: Kind) -> String {
    let form = LimitsForm::of(session, kind);
    let rows = form.rows.iter();
    let rows = rows.map(|row| format!("{}, {}: {}", row.quantity, row.bound, row.text));
    let rows: Vec<_> = rows.collect();
    format!(
        "{} [{}]\n{}",
        form.unit.sign(),
        form.source,
        rows.join("\n")
    )
}

#[test]
fn the_form_asks_what_manuals_give() {
    let bore = vec![
        limit("bore/size/new_low", "82.000 mm"),
        limit("bore/taper/service", "0.05 mm"),
        Field::LimitSource(Kind::Bore, "page 4".to_owned()),
    ];
    expect![[r#"
        mm [page 4]
        Size, new, low: 82.000
        Size, new, high: 
        Size, service limit: 
        Wear, service limit: 
        Out-of-round, new, at most: 
        Out-of-round, service limit: 
        Taper, new, at most: 
        Taper, service limit: 0.05"#]]
    .assert_eq(&rows(&session(bore), Kind::Bore));
    expect![[r#"
        mm []
        Size, new, low: 
        Size, new, high: 
        Size, service limit: 
        Piston-to-wall, new, low: 
        Piston-to-wall, new, high: 
        Piston-to-wall, service limit: "#]]
    .assert_eq(&rows(&session(vec![]), Kind::Piston));
    expect![[r#"
        in []
        Size, new, low: 1.9680
        Size, new, high: 
        Size, service limit: 
        Out-of-round, new, at most: 
        Out-of-round, service limit: 
        Taper, new, at most: 
        Taper, service limit: "#]]
    .assert_eq(&rows(
        &session(vec![limit("rod_journal/size/new_low", "1.9680 in")]),
        Kind::RodJournal,
    ));
}

/// Types texts into rows of a form of main journals, in order.
fn typed(session: &Session, texts: &[&str]) -> LimitsForm {
    let mut form = LimitsForm::of(session, Kind::MainJournal);
    for (row, text) in form.rows.iter_mut().zip(texts) {
        row.text = (*text).to_owned();
    }
    form
}

#[test]
fn an_untouched_form_changes_nothing() {
    for fields in [vec![], vec![limit("bore/size/service", "3.2315 in")]] {
        let session = session(fields);
        for kind in Kind::ALL {
            let form = LimitsForm::of(&session, kind);
            assert_eq!(form.edit(&session), Ok(Edit::Batch(vec![])));
        }
    }
}

#[test]
fn what_is_typed_becomes_limits() {
    let mut session = session(vec![]);
    let mut form = typed(&session, &["49,982", " 50.000 ", "49.96"]);
    form.source = " the manual ".to_owned();
    session.apply(&form.edit(&session).unwrap(), PHONE).unwrap();
    let limit = |bound| {
        let limit = session.limit(Kind::MainJournal, Quantity::Size, bound);
        limit.unwrap().to_string()
    };
    let limits = [Bound::NewLow, Bound::NewHigh, Bound::Service].map(limit);
    assert_eq!(limits, ["49.982 mm", "50.000 mm", "49.96 mm"]);
    assert_eq!(
        LimitsForm::of(&session, Kind::MainJournal).source,
        "the manual"
    );
    // Emptied rows are given up.
    let emptied = typed(&session, &["", "", ""]);
    let mut bare = session.clone();
    bare.apply(&emptied.edit(&bare).unwrap(), PHONE).unwrap();
    assert_eq!(
        bare.limit(Kind::MainJournal, Quantity::Size, Bound::NewLow),
        None
    );
    // The same digits in the other unit are other limits.
    let mut inches = LimitsForm::of(&session, Kind::MainJournal);
    inches.unit = INCH;
    assert_ne!(inches.edit(&session), Ok(Edit::Batch(vec![])));
}

/// Limits in two units, as a merge of two copies can leave them, are not
/// turned into others by opening the form and closing it.
#[test]
fn limits_in_two_units_are_left_as_they_are() {
    let session = session(vec![
        limit("main_journal/size/new_low", "49.982 mm"),
        limit("main_journal/size/service", "1.9670 in"),
    ]);
    let form = LimitsForm::of(&session, Kind::MainJournal);
    assert_eq!(form.edit(&session), Ok(Edit::Batch(vec![])));
}

fn check(texts: &[&str], expect: &Expect) {
    let mut session = session(vec![]);
    let before = session.clone();
    let form = typed(&session, texts);
    assert_eq!(form.unit, MM);
    let said = match form.edit(&session) {
        Err(why) => why,
        Ok(edit) => session.apply(&edit, PHONE).unwrap_err().to_string(),
    };
    expect.assert_eq(&said);
    assert_eq!(session, before);
}

#[test]
fn what_cannot_be_is_told_with_its_row() {
    check(
        &["49.9x"],
        &expect![["Size, new, low: “49.9x” is not a number: digits and one point only."]],
    );
    check(
        &["", "1.2.3"],
        &expect![[
            "Size, new, high: More than one point or comma: type the number without thousands marks."
        ]],
    );
    check(
        &["", "", "0"],
        &expect![[
            "Limits for main journal, size: a limit of zero cannot be: leave blank what the manual does not give."
        ]],
    );
    check(
        &["50.1", "50.0"],
        &expect![[
            "Limits for main journal, size: the low limit is above the high limit: look both up again, and their unit."
        ]],
    );
    check(
        &["49.9", "50.0", "49.95"],
        &expect![
            "Limits for main journal, size: the service limit lies inside the limits as made, so a new part would be worn out: look them up again."
        ],
    );
    check(
        &["", "", "", "", "-0.01"],
        &expect![[
            "Out-of-round, service limit: “-0.01” is not a number: digits and one point only."
        ]],
    );
}

#[test]
fn other_kinds_have_the_limits_that_manuals_give_of_them() {
    let labels = |kind| {
        let form = LimitsForm::of(&session(vec![]), kind);
        let rows = form.rows.iter();
        let rows = rows.map(|row| format!("{}, {}", row.quantity, row.bound));
        rows.collect::<Vec<_>>().join("\n")
    };
    expect![[r#"
        Run-out, full swing, new, at most
        Run-out, full swing, service limit
        Off its neighbour, new, at most
        Off its neighbour, service limit"#]]
    .assert_eq(&labels(Kind::RunOut));
    expect![[r#"
        Wall at the crown, new, low
        Wall at the crown, new, high
        Wall at the crown, service limit
        Oil clearance, new, low
        Oil clearance, new, high
        Oil clearance, service limit"#]]
    .assert_eq(&labels(Kind::RodShell));
    expect![[r#"
        End play, new, low
        End play, new, high
        End play, service limit"#]]
    .assert_eq(&labels(Kind::EndPlay));
    // What another kind's limits are for has no form of its own.
    assert_eq!(labels(Kind::MainStrip), "");
}
