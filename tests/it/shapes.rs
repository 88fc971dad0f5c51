//! Fitted ovals, barrels and the ring gap, as findings and in words.

use fenderbench::assess::{Detail, Finding, GuideWord, Which, assess};
use fenderbench::present::{FindingRow, feature as name_of, findings};
use fenderbench::quantity::Exact;
use fenderbench::report::json;
use fenderbench::session::{Feature, Field, Kind, Level, Quantity, RouteChoice, Session};
use fenderbench::verdict::Comparison;

use crate::make::{exact, limit, measured};

/// Readings in thousandths of a millimetre from 50 mm, each at a place.
fn session(fields: Vec<Field>, of: &str, readings: &[(&str, i32)]) -> Session {
    let readings: Vec<_> = readings
        .iter()
        .map(|(at, micrometres)| {
            let size = 50_000 + micrometres;
            let text = format!("{}.{:03} mm", size / 1_000, size % 1_000);
            (format!("{of}/whole/{at}"), text)
        })
        .collect();
    let readings: Vec<_> = readings
        .iter()
        .map(|(a, b)| (a.as_str(), b.as_str()))
        .collect();
    measured(fields, &readings)
}

fn finding(session: &Session, of: Feature, quantity: Quantity, which: Which) -> Option<Finding> {
    let assessment = assess(session);
    let mut found = assessment.of(of);
    found
        .find(|f| (f.key.quantity, f.key.which) == (quantity, which))
        .cloned()
}

fn fitted(session: &Session, of: Feature) -> Option<Finding> {
    finding(session, of, Quantity::OutOfRound, Which::Fitted)
}

/// The row of the findings screen with this label.
fn row(session: &Session, of: Feature, label: &str) -> FindingRow {
    let view = findings(session, &assess(session));
    let mut features = view.kinds.into_iter().flat_map(|kind| kind.features);
    let shown = features.find(|view| view.title == name_of(of)).unwrap();
    let mut rows = shown.rows.into_iter();
    rows.find(|row| row.label == label).expect(label)
}

const ROD: Feature = Feature {
    kind: Kind::RodJournal,
    position: 1,
};
const BORE: Feature = Feature {
    kind: Kind::Bore,
    position: 1,
};

/// A staggered journal that differs by so much at 0° and at 45°.
fn journal(at_0: i32, at_45: i32) -> Session {
    let readings = [
        ("first/0", 100 + at_0),
        ("first/90", 100),
        ("last/45", 200 + at_45),
        ("last/135", 200),
    ];
    session(vec![], "rod_journal/1", &readings)
}

#[test]
fn a_fitted_oval_tells_its_size_and_which_way_it_lies() {
    // Pythagorean numbers, so that the root is whole: 3, 4 and 5.
    let oval = fitted(&journal(3, 4), ROD).unwrap();
    assert_eq!(oval.value(), Some(exact("0.005 mm")));
    assert_eq!(oval.readings.len(), 4, "all of them, whatever they weigh");
    let detail = Detail::Oval {
        axis: Some(27),
        exact: true,
        level: None,
    };
    assert_eq!(oval.detail, Some(detail), "half of atan 4/3 is 26.6");

    let lies = |at_0, at_45| row(&journal(at_0, at_45), ROD, "Out-of-round, fitted").sense;
    let check = |at_0, at_45, expected: &str| {
        assert_eq!(
            lies(at_0, at_45).as_deref(),
            Some(expected),
            "{at_0} {at_45}"
        );
    };
    check(3, 4, "longest 27° clockwise of the throw");
    check(3, -4, "longest 27° anticlockwise of the throw");
    check(10, 0, "longest in line with the throw");
    check(-10, 0, "longest across the throw");
    check(0, 10, "longest 45° clockwise of the throw");
    check(0, -10, "longest 45° anticlockwise of the throw");
    // 179.7° is nearer to 180° than to 179°, and 180° is 0°.
    check(100, -1, "longest in line with the throw");
    assert_eq!(lies(0, 0), None, "round");
}

#[test]
fn a_fitted_oval_has_no_sign_and_says_where_it_is_rounded() {
    let shown = |at_0, at_45| row(&journal(at_0, at_45), ROD, "Out-of-round, fitted").value;
    assert_eq!(shown(-3, -4), "0.005 mm");
    // The root of 104 is 10.198...; to a quantum it ends in a nought.
    assert_eq!(shown(10, 2), "≈ 0.010 mm");
    let oval = fitted(&journal(10, 2), ROD).unwrap();
    assert!(matches!(
        oval.detail,
        Some(Detail::Oval { exact: false, .. })
    ));
}

#[test]
fn a_fitted_oval_is_compared_with_the_limits_of_out_of_round() {
    let with_limit = |text| {
        let readings = [
            ("first/0", 3),
            ("first/90", 0),
            ("last/45", 4),
            ("last/135", 0),
        ];
        let fields = vec![limit("rod_journal/out_of_round/service", text)];
        let session = session(fields, "rod_journal/1", &readings);
        fitted(&session, ROD).unwrap().comparison()
    };
    assert_eq!(with_limit("0.005 mm"), Some(Comparison::InsideService));
    let by = exact("0.0005 mm");
    assert_eq!(with_limit("0.0045 mm"), Some(Comparison::BeyondLimit(by)));
}

#[test]
fn an_oval_is_fitted_only_where_both_square_pairs_are_known() {
    let all = [
        ("first/0", 3),
        ("first/90", 0),
        ("last/45", 4),
        ("last/135", 0),
    ];
    for left_out in 0..all.len() {
        let mut some = all.to_vec();
        some.remove(left_out);
        let session = session(vec![], "rod_journal/1", &some);
        assert_eq!(fitted(&session, ROD), None, "{some:?}");
    }
    // Three directions at one level would do for a fit, by nothing to spare.
    let three = [("first/0", 3), ("first/45", 4), ("first/90", 0)];
    assert_eq!(fitted(&session(vec![], "rod_journal/1", &three), ROD), None);
    let plain = [
        ("first/0", 3),
        ("first/90", 0),
        ("last/0", 3),
        ("last/90", 0),
    ];
    assert_eq!(fitted(&session(vec![], "rod_journal/1", &plain), ROD), None);
}

#[test]
fn a_bore_has_the_oval_of_its_most_oval_level() {
    let mut readings = vec![
        ("top/0", 30),
        ("top/90", 0),
        ("top/45", 50),
        ("top/135", 10),
        ("bottom/0", 3),
        ("bottom/90", 0),
    ];
    let oval = |readings: &[(&str, i32)]| {
        let session = session(vec![], "bore/1", readings);
        let sense = row(&session, BORE, "Out-of-round, fitted").sense;
        (fitted(&session, BORE).unwrap(), sense.unwrap())
    };
    // The top alone, though the bottom is read in two directions.
    let (top, sense) = oval(&readings);
    assert_eq!(top.value(), Some(exact("0.050 mm")), "30, 40 and 50");
    assert_eq!(top.readings.len(), 4);
    assert_eq!(sense, "longest 27° clockwise of thrust, at the top");

    readings.extend([
        ("middle/0", 0),
        ("middle/90", 60),
        ("middle/45", 0),
        ("middle/135", 80),
    ]);
    let (middle, sense) = oval(&readings);
    assert_eq!(middle.value(), Some(exact("0.100 mm")), "60, 80 and 100");
    let at_middle = |detail| {
        matches!(
            detail,
            Some(Detail::Oval {
                level: Some(Level::Middle),
                ..
            })
        )
    };
    assert!(at_middle(middle.detail));
    assert_eq!(sense, "longest 63° anticlockwise of thrust, at the middle");
}

#[test]
fn a_barrel_is_told_where_the_centre_was_read() {
    let barrel = |fields: Vec<Field>, centre: &[(&str, i32)]| {
        let mut readings = vec![
            ("first/0", 4),
            ("first/90", 0),
            ("last/45", 7),
            ("last/135", 1),
        ];
        readings.extend(centre);
        let session = session(fields, "rod_journal/1", &readings);
        let found = finding(&session, ROD, Quantity::Barrel, Which::Along(None));
        found.map(|found| (found, session))
    };
    assert!(
        barrel(vec![], &[]).is_none(),
        "the standard route does not ask for it"
    );

    let sense = |centre: [(&str, i32); 2]| {
        let (found, session) = barrel(vec![], &centre).unwrap();
        let row = row(&session, ROD, "Barrel or hour-glass");
        assert_eq!(found.comparison(), Some(Comparison::NoLimit));
        (found.value().unwrap(), row.value, row.sense)
    };
    // The ends have the means 2 and 4, so 3 is straight.
    let (value, shown, told) = sense([("centre/0", 10), ("centre/90", 6)]);
    assert_eq!((value, shown.as_str()), (exact("0.005 mm"), "+0.005 mm"));
    assert_eq!(told.as_deref(), Some("barrel: larger in the middle"));
    let (value, shown, told) = sense([("centre/0", 1), ("centre/90", 1)]);
    assert_eq!((value, shown.as_str()), (exact("-0.002 mm"), "−0.002 mm"));
    assert_eq!(told.as_deref(), Some("hour-glass: smaller in the middle"));
    assert_eq!(
        sense([("centre/0", 4), ("centre/90", 2)]).2,
        None,
        "straight"
    );

    let missing = |fields, centre: &[(&str, i32)]| {
        let (found, _) = barrel(fields, centre).unwrap();
        assert_eq!(found.value(), None);
        found
            .missing
            .iter()
            .map(ToString::to_string)
            .collect::<Vec<_>>()
    };
    let half = missing(vec![], &[("centre/0", 1)]);
    assert_eq!(half, ["rod_journal/1/whole/centre/90"]);
    let asked = missing(vec![Field::Route(RouteChoice::Fuller)], &[]);
    let centre = ["centre/45", "centre/135", "last/0", "last/90"];
    assert_eq!(asked, centre.map(|at| format!("rod_journal/1/whole/{at}")));
}

#[test]
fn a_barrel_is_judged_as_taper() {
    let word = |fields| {
        let readings = [
            ("first/0", 0),
            ("first/90", 0),
            ("centre/0", 10),
            ("centre/90", 10),
            ("last/0", 0),
            ("last/90", 0),
        ];
        let session = session(fields, "rod_journal/1", &readings);
        let found = finding(&session, ROD, Quantity::Barrel, Which::Along(None));
        found
            .unwrap()
            .guide
            .map(|guide| (guide.word, guide.rules[0].high))
    };
    // 0.0005 in, by the trade; the manual's taper goes before.
    let trade = Some((GuideWord::InsideStrictest, exact("0.0127 mm")));
    assert_eq!(word(vec![]), trade);
    let manual = |bound: &str, text| limit(&format!("rod_journal/taper/{bound}"), text);
    let strict = || manual("new_high", "0.005 mm");
    let expected = Some((GuideWord::OutsideLoosest, exact("0.005 mm")));
    assert_eq!(word(vec![strict()]), expected);
    let loose = manual("service", "0.010 mm");
    let expected = Some((GuideWord::InsideStrictest, exact("0.010 mm")));
    assert_eq!(word(vec![strict(), loose]), expected);
}

#[test]
fn a_taper_of_a_bore_tells_what_a_ring_in_it_would() {
    let readings = [
        ("top/0", 44),
        ("top/90", 18),
        ("bottom/0", 0),
        ("bottom/90", 0),
    ];
    let tapered = session(vec![], "bore/1", &readings);
    let note = |label| row(&tapered, BORE, label).note;
    // π times (44 + 18) / 2 is 97.39.
    let told = "A ring's end gap would change by ≈ 0.097 mm between top and bottom (π times the \
                mean taper): a check with feeler gauges.";
    assert_eq!(note("Taper, largest").as_deref(), Some(told));
    assert_eq!(note("Taper, thrust"), None);

    let readings = readings.map(|(at, _)| (at, 0));
    let straight = session(vec![], "bore/1", &readings);
    assert_eq!(row(&straight, BORE, "Taper, largest").note, None);
    let unread = session(vec![], "bore/1", &readings[..2]);
    assert_eq!(row(&unread, BORE, "Taper, largest").note, None);
    assert_eq!(row(&journal(3, 4), ROD, "Taper, largest").note, None);
    let detail = |session| {
        finding(session, BORE, Quantity::Taper, Which::Largest)
            .unwrap()
            .detail
    };
    assert_eq!(detail(&straight), Some(Detail::RingGap(Exact::ZERO)));
    assert_eq!(detail(&unread), None);
}

#[test]
fn the_report_has_keys_of_its_own_for_them() {
    let readings = [
        ("top/0", 30),
        ("top/90", 0),
        ("top/45", 50),
        ("top/135", 10),
        ("bottom/0", 20),
        ("bottom/90", -10),
    ];
    let session = session(vec![], "bore/1", &readings);
    let text = json(&session, &assess(&session)).unwrap();
    let report: serde_json::Value = serde_json::from_str(&text).unwrap();
    let rows = report["findings"].as_array().unwrap();
    let found = |quantity: &str, which: &str| {
        let is = |row: &&serde_json::Value| {
            row["feature"] == "bore/1" && row["quantity"] == quantity && row["which"] == which
        };
        let row = rows.iter().find(is).unwrap();
        ["value", "exact", "axis_degrees", "ring_gap_change"].map(|key| row[key].to_string())
    };
    let oval = found("out_of_round", "fitted");
    assert_eq!(oval, ["\"0.050\"", "true", "27", "null"]);
    let taper = found("taper", "largest");
    assert_eq!(taper, ["\"0.010\"", "true", "null", "\"0.031\""]);
    let pair = found("out_of_round", "at/top/0");
    assert_eq!(pair, ["\"0.030\"", "true", "null", "null"]);
}
