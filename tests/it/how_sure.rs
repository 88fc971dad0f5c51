//! How sure a value is, as it is told.

use expect_test::{Expect, expect};
use fenderbench::assess::assess;
use fenderbench::present::findings;
use fenderbench::session::{
    Against, Edit, Field, Indication, Kind, Sense, Session, SetTo, Setting,
};

use crate::make::{document, length, limit, measured, read};

fn check(session: &Session, kind: Kind, expect: &Expect) {
    let view = findings(session, &assess(session));
    let kinds = view.kinds.iter().filter(|of| of.kind == kind);
    let mut text = String::new();
    for sure in kinds.flat_map(|kind| &kind.features).flat_map(|f| &f.sure) {
        text += &format!("{}: {}\n", sure.title, sure.told.join(" "));
        for row in &sure.rows {
            text += &format!(
                "  {} | {} | {} | {}\n",
                row.source, row.share, row.doubt, row.dof
            );
        }
    }
    expect.assert_eq(&text.replace('\u{a0}', " "));
}

#[test]
fn an_oval_in_doubt_says_what_noise_alone_would_show_and_what_would_settle_it() {
    let fields = vec![
        Field::Cylinders(1),
        Field::Mains(1),
        limit("main_journal/out_of_round/service", "0.010 mm"),
    ];
    let readings = [
        ("main_journal/1/whole/first/0", "59.981 mm"),
        ("main_journal/1/whole/first/90", "59.978 mm"),
        ("main_journal/1/whole/last/45", "59.982 mm"),
        ("main_journal/1/whole/last/135", "59.976 mm"),
    ];
    check(
        &measured(fields, &readings),
        Kind::MainJournal,
        &expect![[r#"
            Out-of-round, fitted: Out-of-round ≈ 0.007 mm; your noise alone would show up to 0.011 mm: too close to call. Your readings show no more than this: at most 0.017 mm. Of 100 such readings 71 would come from a part inside. Most of the doubt: readings of one spot differ, by hand and gauge. To settle it, read: first end, 45° clockwise of throw 1; first end, 45° anticlockwise of throw 1; last end, in line with throw 1; last end, across throw 1. It may still stay open.
              readings of one spot differ, by hand and gauge | 99 % | 0.0055 mm | 8
              the scale shows no finer steps | 1 % | 0.0004 mm | known
        "#]],
    );
}

#[test]
fn a_gauge_that_went_off_puts_its_readings_in_doubt() {
    let told = |again: &str| {
        let mut document = document(vec![Field::Cylinders(1)]);
        let (gauge, ..) = document.session().gauge_for(Kind::Piston).unwrap();
        let set = SetTo {
            against: Against::Standard,
            size: length("75.000 mm"),
            shows: Indication::Size(length("75.002 mm")),
            again: Some(Indication::Size(length(again))),
            sense: Sense::PlusLarger,
        };
        let setting = Setting {
            set: Some(set),
            ..Setting::as_found(gauge)
        };
        document.dispatch(&Edit::AddSetting(setting)).unwrap();
        read(
            &mut document,
            &[("piston/1/skirt/gauge_point/0", "81.958 mm")],
        );
        findings(document.session(), &assess(document.session())).slips
    };
    assert!(told("75.007 mm").is_empty(), "5 µm are held");
    assert_eq!(
        told("75.008 mm"),
        [
            "Outside micrometer: it had gone off when it was checked again; readings taken in \
          that setting: 1."
        ]
    );
}

#[test]
fn a_size_says_how_much_may_be_beside_it() {
    let fields = vec![
        Field::Cylinders(1),
        limit("piston/size/new_low", "81.950 mm"),
        limit("piston/size/service", "81.920 mm"),
    ];
    let readings = [("piston/1/skirt/gauge_point/0", "81.958 mm")];
    check(
        &measured(fields, &readings),
        Kind::Piston,
        &expect![[r#"
        Size: Size 81.958 mm, and up to 0.015 mm beside it: within service limit. Of 100 such readings 99 would come from a part inside. Most of the doubt: nobody checked the gauge on a standard.
          nobody checked the gauge on a standard | 68 % | 0.0073 mm | known
          readings of one spot differ, by hand and gauge | 19 % | 0.0039 mm | 8
          how warm the shop was | 8 % | 0.0025 mm | known
          part and gauge not equally warm | 5 % | 0.0019 mm | known
    "#]],
    );
}
