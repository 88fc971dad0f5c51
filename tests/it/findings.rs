//! The findings screen.

use expect_test::{Expect, expect};
use fenderbench::assess::assess;
use fenderbench::present::{FindingsView, feature as feature_name, findings};
use fenderbench::session::{Document, Edit, Field, Kind, RouteChoice, Session};

use crate::assess::worked_example;
use crate::make::{INCH, TABLET, document, exact, feature, limit, measured};

fn view(session: &Session) -> FindingsView {
    findings(session, &assess(session))
}

fn check_features(session: &Session, expect: &Expect) {
    let view = view(session);
    let lines = view
        .kinds
        .iter()
        .flat_map(|kind| &kind.features)
        .map(|feature| {
            let missing = feature.missing.join(" | ");
            format!(
                "{} [{}] {} — {missing}",
                feature.title,
                feature.mark.key(),
                feature.words
            )
        });
    expect.assert_eq(&lines.collect::<Vec<_>>().join("\n"));
}

fn check_rows(session: &Session, kind: Kind, position: u8, expect: &Expect) {
    let view = view(session);
    let title = feature_name(feature(kind, position));
    let mut features = view.kinds.iter().flat_map(|kind| &kind.features);
    let shown = features.find(|view| view.title == title).unwrap();
    let rows = shown.rows.iter().map(|row| {
        let sense = row
            .sense
            .as_ref()
            .map(|sense| format!(" ({sense})"))
            .unwrap_or_default();
        format!(
            "{}: {}{sense} [{}] {}",
            row.label,
            row.value,
            row.mark.key(),
            row.words
        )
    });
    expect.assert_eq(&rows.collect::<Vec<_>>().join("\n"));
}

#[test]
fn a_feature_is_named_after_its_worst() {
    check_features(
        &worked_example(),
        &expect![[r#"
            Piston 2 [large] Piston-to-wall beyond limit by 0.065 mm (too large) — Bore 2, bottom, thrust
            Piston 1 [open] Piston-to-wall too close to call: do not assemble, have it measured — 
            Bore 2 [open] Size too close to call; not all of it measured — Bore 2, bottom, thrust | Bore 2, bottom, along the crank | Bore 2, unworn reference, thrust | Bore 2, unworn reference, along the crank
            Bore 1 [open] Taper too close to call — 
            Main journal 1 [open] Out-of-round too close to call — 
            Main journal 2 [open] Size too close to call; not all of it measured — Main journal 2, first end, across throw 1 | Main journal 2, last end, 45° clockwise of throw 1 | Main journal 2, last end, 45° anticlockwise of throw 1
            Main journal 4 [open] Out-of-round too close to call — 
            Main journal 3 [unread] not measured — Main journal 3, first end, in line with throw 1 | Main journal 3, first end, across throw 1 | Main journal 3, last end, 45° clockwise of throw 1 | Main journal 3, last end, 45° anticlockwise of throw 1
            Rod journal 1 [no-limit] Size no limit given — 
            Rod journal 2 [no-limit] Size no limit given; not all of it measured — Rod journal 2, first end, across the throw | Rod journal 2, last end, 45° clockwise of the throw | Rod journal 2, last end, 45° anticlockwise of the throw"#]],
    );
}

#[test]
fn rows_say_what_their_signs_mean() {
    check_rows(
        &worked_example(),
        Kind::Bore,
        1,
        &expect![[r#"
            Size, mean: 82.031 mm [service] within service limit
            Size, smallest: 82.013 mm [service] within service limit
            Size, largest: 82.062 mm [service] within service limit
            Wear: 0.057 mm [open] too close to call
            Out-of-round, top: +0.031 mm (longer across the crank) [service] reads inside service limit
            Out-of-round, bottom: +0.005 mm (longer across the crank) [new] reads inside new limits
            Out-of-round, largest: +0.031 mm [open] not seen all round: other directions were not read
            Taper, thrust: +0.044 mm (larger at the top) [shape] reads beyond limit by 0.004 mm
            Taper, along the crank: +0.018 mm (larger at the top) [service] reads inside service limit
            Taper, largest: +0.044 mm [open] too close to call"#]],
    );
    check_rows(
        &worked_example(),
        Kind::RodJournal,
        2,
        &expect![[r#"
        Size, mean: 45.0015 mm [no-limit] no limit given
        Size, smallest: 45.000 mm [no-limit] no limit given
        Size, largest: 45.003 mm [no-limit] no limit given
        Out-of-round, first end: — [unread] not measured
        Out-of-round, last end (45° pair): — [unread] not measured
        Out-of-round, largest: — [unread] not measured
        Taper, in line with the throw: −0.003 mm (larger at the last end) [no-limit] no limit given
        Taper, largest: −0.003 mm [no-limit] no limit given"#]],
    );
    check_rows(
        &worked_example(),
        Kind::Piston,
        2,
        &expect![[r#"
            Size: 81.890 mm [open] too close to call
            Piston-to-wall, least: 0.215 mm [large] beyond limit by 0.065 mm (too large)
            Piston-to-wall, greatest: 0.215 mm [large] beyond limit by 0.065 mm (too large)"#]],
    );
}

#[test]
fn inches_are_told_as_rounded_where_they_are() {
    let mut fields = vec![Field::DisplayUnit(INCH), Field::Cylinders(1)];
    fields.push(limit("piston/size/service", "81.900 mm"));
    let session = measured(fields, &[("piston/1/skirt/gauge_point/0", "81.890 mm")]);
    check_rows(
        &session,
        Kind::Piston,
        1,
        &expect![[r#"
            Size: ≈ 3.2240 in [open] too close to call
            Piston-to-wall, least: — [unread] not measured
            Piston-to-wall, greatest: — [unread] not measured"#]],
    );
}

#[test]
fn limits_stand_as_the_manual_prints_them() {
    let mut fields = vec![
        limit("main_journal/size/new_low", "1.9680 in"),
        limit("main_journal/size/service", "49.96 mm"),
        limit("main_journal/taper/new_high", "0.010 mm"),
    ];
    fields.push(Field::LimitSource(Kind::MainJournal, "page 4".to_owned()));
    let view = view(&measured(fields, &[]));
    let mains = &view.kinds[2];
    let limits = mains
        .limits
        .iter()
        .map(|row| format!("{}: {}", row.quantity, row.text));
    let text = format!(
        "{} ({})\n{}",
        mains.title,
        mains.source,
        limits.collect::<Vec<_>>().join("\n")
    );
    expect![[r#"
        Main journals (page 4)
        Size: new, low 1.9680 in · service limit 49.96 mm
        Taper: new, at most 0.010 mm"#]]
    .assert_eq(&text);
}

#[test]
fn what_cannot_be_seen_is_said_once_where_it_matters() {
    let check = |route, expect: Expect| {
        let view = view(&measured(vec![Field::Route(route)], &[]));
        let kinds = view.kinds.iter();
        let said = kinds.flat_map(|kind| kind.blind.iter().map(move |told| (kind.title, told)));
        let said = said.map(|(title, told)| format!("{title}: {told}"));
        expect.assert_eq(&said.collect::<Vec<_>>().join("\n"));
    };
    check(
        RouteChoice::Standard,
        expect![[r#"
            Bores: Out-of-round is a difference of diameters: gauges that touch at two points do not see three lobes, or any odd number.
            Bores: Out-of-round: two directions do not show an oval of a bore that lies at 45° to them. The fuller route does."#]],
    );
    check(
        RouteChoice::Fuller,
        expect![
            "Bores: Out-of-round is a difference of diameters: gauges that touch at two points do not see three lobes, or any odd number."
        ],
    );
    check(
        RouteChoice::Plain,
        expect![[r#"
        Bores: Out-of-round is a difference of diameters: gauges that touch at two points do not see three lobes, or any odd number.
        Main journals: Two places in the same two directions cannot see an oval that lies at 45° to them."#]],
    );
}

#[test]
fn repeats_say_how_far_they_lie_apart() {
    let at = "bore/1/whole/top/0";
    let readings = [
        (at, "82.011 mm"),
        (at, "82.014 mm"),
        (at, "82.012 mm"),
        ("bore/1/whole/top/90", "82.010 mm"),
        ("bore/1/whole/reference/0", "82.000 mm"),
        ("bore/1/whole/reference/0", "82.000 mm"),
        ("bore/9/whole/top/0", "82.010 mm"),
        ("bore/9/whole/top/0", "82.020 mm"),
    ];
    let session = measured(vec![Field::Cylinders(2)], &readings);
    let view = view(&session);
    let bores = &view.kinds[0].features;
    let told = [
        "top, thrust: 0.003 mm in 3 readings",
        "unworn reference, thrust: 0.000 mm in 2 readings",
    ];
    assert_eq!(
        bores[0].repeats, told,
        "a layout without bore 9 says nothing of it"
    );
    assert_eq!(bores[1].repeats, [""; 0]);

    let mut struck = session;
    let second = *struck.readings.keys().nth(1).unwrap();
    struck.readings.get_mut(&second).unwrap().strikes = 1;
    let repeats = assess(&struck).repeats;
    assert_eq!(
        (repeats[0].count, repeats[0].spread),
        (2, exact("0.001 mm"))
    );
}

#[test]
fn readings_outside_the_layout_are_listed() {
    let readings = [
        ("bore/6/whole/top/0", "82.010 mm"),
        ("bore/1/whole/top/0", "82.010 mm"),
    ];
    let view = view(&measured(vec![Field::Cylinders(4)], &readings));
    assert_eq!(view.outside_layout, ["Bore 6, top, thrust: 82.010 mm"]);
}

#[test]
fn contradicting_limits_are_told() {
    let mut phone = document(vec![limit("bore/size/new_low", "82.000 mm")]);
    let mut tablet = Document::open(phone.session().clone(), TABLET, &[TABLET]);
    assert_eq!(view(phone.session()).contradiction, None);
    let set = |text| Edit::Set(limit("bore/size/new_low", text));
    phone.dispatch(&set("82.050 mm")).unwrap();
    let high = Edit::Set(limit("bore/size/new_high", "82.020 mm"));
    tablet.dispatch(&high).unwrap();
    phone.merge(tablet.session());
    expect![["Limits for bore, size: the low limit is above the high limit."]]
        .assert_eq(&view(phone.session()).contradiction.unwrap());
}

#[test]
fn a_feature_measured_in_part_says_so() {
    let fields = || vec![Field::Cylinders(1), limit("bore/size/service", "82.100 mm")];
    let words = |readings: &[(&str, &str)]| {
        let view = view(&measured(fields(), readings));
        view.kinds[0].features[0].words.clone()
    };
    assert_eq!(words(&[]), "not measured");
    let all = ["top/0", "top/90", "bottom/0", "bottom/90"].map(|at| format!("bore/1/whole/{at}"));
    let readings: Vec<_> = all.iter().map(|at| (at.as_str(), "82.010 mm")).collect();
    for n in 1..4 {
        let part = "Size within service limit; not all of it measured";
        assert_eq!(words(&readings[..n]), part);
    }
    assert_eq!(words(&readings), "Size within service limit");
}

#[test]
fn the_worst_of_a_kind_stand_first() {
    let fields = vec![
        Field::Cylinders(6),
        limit("bore/size/new_high", "82.020 mm"),
        limit("bore/size/service", "82.100 mm"),
    ];
    let sizes = [
        (1, "82.010 mm"),
        (2, "82.050 mm"),
        (3, "82.110 mm"),
        (4, "82.130 mm"),
        (6, "82.110 mm"),
    ];
    let readings = sizes.map(|(bore, size)| (format!("bore/{bore}/whole/top/0"), size));
    let readings: Vec<_> = readings.iter().map(|(a, b)| (a.as_str(), *b)).collect();
    let view = view(&measured(fields, &readings));
    let order = view.kinds[0].features.iter().map(|f| f.title.as_str());
    let order: Vec<_> = order.collect();
    let expected = ["Bore 4", "Bore 3", "Bore 6", "Bore 2", "Bore 1", "Bore 5"];
    assert_eq!(order, expected, "equals by position, the unread last");
}

#[test]
fn among_parts_that_read_alike_the_nearest_to_its_limit_stands_first() {
    let fields = vec![
        Field::Cylinders(3),
        limit("bore/size/service", "83.000 mm"),
        limit("bore/taper/service", "0.200 mm"),
    ];
    // Bore 2 is larger, but nearer to its limit is the taper of bore 3.
    let readings = [
        ("bore/1/whole/top/0", "82.020 mm"),
        ("bore/2/whole/top/0", "82.060 mm"),
        ("bore/3/whole/top/0", "82.050 mm"),
        ("bore/3/whole/bottom/0", "82.015 mm"),
    ];
    let view = view(&measured(fields, &readings));
    let order = view.kinds[0].features.iter().map(|f| f.title.as_str());
    assert_eq!(order.collect::<Vec<_>>(), ["Bore 3", "Bore 2", "Bore 1"]);
}
