//! A new session, its defaults, its name on the bench and its file.

use expect_test::{Expect, expect};
use fenderbench::present::{NewSession, bench_row, file_name};
use fenderbench::session::{Arrangement, Edit, Field};

use crate::make::{PHONE, limit, measured, session};

#[test]
fn defaults_are_a_straight_four_in_millimetres() {
    expect![[r#"
        NewSession {
            name: "",
            cylinders: 4,
            arrangement: InLine,
            mains: 5,
            rods_per_throw: 1,
            unit: Millimetre,
            route: Standard,
            machine_use: Street,
            first_end: Timing,
            counting: Across,
            bore: "",
            climate: Mild,
            degrees: "",
            block: GreyIron,
            pistons: PistonAlloy,
            crank: Steel,
        }
    "#]]
    .assert_debug_eq(&NewSession::default());
    // A session without set-up counts as the same.
    assert_eq!(NewSession::of(&session(vec![])), NewSession::default());
    assert_eq!(NewSession::default().check(), Ok(()));
}

/// Cylinders, arrangement → main journals, rods on a throw, usual name.
fn check(cylinders: u8, arrangement: Arrangement, expect: &Expect) {
    let mut one = NewSession::default();
    one.set_cylinders(cylinders);
    one.set_arrangement(arrangement);
    let mut other = NewSession::default();
    other.set_arrangement(arrangement);
    other.set_cylinders(cylinders);
    let said = |new: &NewSession| {
        let (mains, rods) = (new.mains, new.rods_per_throw);
        format!("{}: {mains} mains, {rods} on a throw", new.usual_name())
    };
    let (one, other) = (said(&one), said(&other));
    if one == other {
        expect.assert_eq(&one);
    } else {
        expect.assert_eq(&format!("{one} | {other}"));
    }
}

#[test]
fn the_usual_crank_follows_the_engine() {
    use Arrangement::{Flat, InLine, Single, Vee};
    check(6, InLine, &expect![["In-line 6: 7 mains, 1 on a throw"]]);
    check(2, InLine, &expect![["In-line 2: 3 mains, 1 on a throw"]]);
    check(8, Vee, &expect![["V 8: 5 mains, 2 on a throw"]]);
    check(6, Vee, &expect![["V 6: 4 mains, 2 on a throw"]]);
    check(5, Vee, &expect![["V 5: 4 mains, 2 on a throw"]]);
    check(16, Vee, &expect![["V 16: 9 mains, 2 on a throw"]]);
    check(4, Flat, &expect![["Flat 4: 3 mains, 1 on a throw"]]);
    check(
        1,
        Single,
        &expect![["Single cylinder: 2 mains, 1 on a throw"]],
    );
    // One cylinder is single and several are not, whichever was said last.
    check(
        1,
        Vee,
        &expect![["V 2: 2 mains, 2 on a throw | Single cylinder: 2 mains, 1 on a throw"]],
    );
    check(
        4,
        Single,
        &expect![["Single cylinder: 2 mains, 1 on a throw | In-line 4: 5 mains, 1 on a throw"]],
    );
}

#[test]
fn any_number_can_be_typed_and_only_real_ones_pass() {
    for arrangement in Arrangement::ALL {
        for cylinders in 0..=u8::MAX {
            let mut new = NewSession::default();
            new.set_arrangement(arrangement);
            new.set_cylinders(cylinders);
            let real = (1..=16).contains(&new.cylinders);
            assert_eq!(new.check().is_ok(), real, "{new:?}");
        }
    }
}

#[test]
fn what_cannot_be_is_told() {
    let said = |new: &NewSession| new.check().unwrap_err();
    let new = NewSession::default();
    let cylinders = NewSession {
        cylinders: 0,
        ..new.clone()
    };
    assert_eq!(
        said(&cylinders),
        "The number of cylinders must be from 1 to 16."
    );
    let mains = NewSession {
        mains: 34,
        ..new.clone()
    };
    assert_eq!(
        said(&mains),
        "The number of main journals must be from 1 to 33."
    );
    let rods = NewSession {
        rods_per_throw: 0,
        ..new.clone()
    };
    assert_eq!(
        said(&rods),
        "The number of rods on a throw must be from 1 to 2."
    );
    let name = NewSession {
        name: "n".repeat(201),
        ..new
    };
    assert_eq!(
        said(&name),
        "At most 200 characters can be kept here: shorten it."
    );
}

#[test]
fn set_up_changes_only_what_differs() {
    let mut new = NewSession {
        name: " Spare ".to_owned(),
        ..NewSession::default()
    };
    let mut session = session(new.fields().unwrap());
    assert_eq!(session.name(), "Spare");
    assert_eq!(
        NewSession::of(&session).edit(&session),
        Ok(Edit::Batch(vec![]))
    );
    new.mains = 3;
    assert_eq!(
        new.edit(&session),
        Ok(Edit::Batch(vec![Edit::Set(Field::Mains(3))]))
    );
    session.apply(&new.edit(&session).unwrap(), PHONE).unwrap();
    assert_eq!(session.mains(), 3);
    new.name = "  ".to_owned();
    session.apply(&new.edit(&session).unwrap(), PHONE).unwrap();
    assert_eq!(session.name(), "In-line 4");
}

#[test]
fn files_are_called_after_their_session() {
    let check = |name: &str, expected: &str| {
        let session = session(vec![Field::Name(name.to_owned())]);
        assert_eq!(file_name(&session), expected, "{name}");
    };
    check("In-line 4", "in-line-4.json");
    check("Spare engine, No. 2", "spare-engine-no-2.json");
    check("../../etc/passwd", "etc-passwd.json");
    check("a\\b:c*d?e\"f<g>h|i\n", "a-b-c-d-e-f-g-h-i.json");
    check("Zylinderköpfe", "zylinderk-pfe.json");
    check("", "session-000000000000f00d.json");
    check("двигатель", "session-000000000000f00d.json");
    check(&"x".repeat(200), &format!("{}.json", "x".repeat(60)));
}

#[test]
fn the_bench_tells_progress_and_the_worst() {
    let check = |readings: &[(&str, &str)], expect: &Expect| {
        let fields = vec![
            Field::Name("Spare".to_owned()),
            limit("bore/size/new_high", "82.020 mm"),
            limit("bore/size/service", "82.100 mm"),
            limit("bore/out_of_round/service", "0.010 mm"),
        ];
        let row = bench_row(&measured(fields, readings), None);
        expect.assert_eq(&format!("{} · {} · {}", row.name, row.progress, row.worst));
    };
    check(
        &[],
        &expect![["Spare · 0 of 62 stations read · nothing measured yet"]],
    );
    check(
        &[("piston/1/skirt/gauge_point/0", "81.950 mm")],
        &expect!["Spare · 1 of 62 stations read · Piston 1: Size no limit given"],
    );
    check(
        &[
            ("bore/1/whole/top/0", "82.010 mm"),
            ("bore/2/whole/top/0", "82.105 mm"),
        ],
        &expect!["Spare · 2 of 62 stations read · Bore 2: Size too close to call"],
    );
    check(
        &[
            ("bore/1/whole/top/0", "82.010 mm"),
            ("bore/1/whole/top/90", "82.090 mm"),
        ],
        &expect!["Spare · 2 of 62 stations read · Bore 1: Out-of-round beyond limit by 0.070 mm"],
    );
}
