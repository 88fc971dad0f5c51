//! Gauges: what they are set to, what they then say, and the forms for both.

use expect_test::{Expect, expect};
use fenderbench::assess::{Which, assess};
use fenderbench::present::{
    Fender, GaugeRow, Key, SetForm, SetOn, add_gauge, describe_gauge, gauges, route, use_gauge,
    view,
};
use fenderbench::quantity::{EnteredDeviation, show};
use fenderbench::session::{
    Against, Document, Edit, Feature, Field, GaugeKind, Indication, Kind, Quantity, Sense, SetTo,
    Setting, Stamp,
};

use crate::make::{INCH, MM, add, document, exact, feature, length, reading, size, station, value};

/// Takes a gauge of a kind into use for a kind of feature.
pub fn take(document: &mut Document, gauge: GaugeKind, kind: Kind) -> GaugeRow {
    let edit = add_gauge(document.session(), gauge).unwrap();
    document.dispatch(&edit).unwrap();
    let row = rows(document).pop().unwrap();
    document.dispatch(&use_gauge(kind, row.id)).unwrap();
    row
}

pub fn set(document: &mut Document, row: &GaugeRow, form: &SetForm) {
    let edit = form.edit(row).unwrap();
    document.dispatch(&edit).unwrap();
}

/// A dial bore gauge set in a micrometer at 82 mm.
pub fn dialled(sense: Sense) -> (Document, GaugeRow) {
    let mut document = document(vec![]);
    let row = take(&mut document, GaugeKind::DialBoreGauge, Kind::Bore);
    let form = SetForm {
        on: SetOn::Micrometer,
        size: "82.000".to_owned(),
        sense: Some(sense),
        ..SetForm::of(&row.gauge)
    };
    set(&mut document, &row, &form);
    (document, row)
}

fn by(document: &mut Document, at: &str, text: &str) {
    let by = EnteredDeviation::parse(text, MM).unwrap();
    let session = document.session();
    let reading = reading(session, station(at), Indication::Deviation(by));
    document.dispatch(&Edit::Add(reading)).unwrap();
}

fn sizes(document: &Document) -> Vec<Option<String>> {
    let session = document.session();
    let text = |size| show(fenderbench::quantity::Exact::from(size), MM, 3).text;
    let readings = session.standing();
    readings
        .map(|(_, r)| session.size_of(r).map(text))
        .collect()
}

fn rows(document: &Document) -> Vec<GaugeRow> {
    gauges(document.session(), &assess(document.session())).gauges
}

#[test]
fn a_deviation_counts_from_the_setting_the_way_the_dial_goes() {
    for (sense, expected) in [
        (Sense::PlusLarger, ["82.012", "81.997", "82.000"]),
        (Sense::PlusSmaller, ["81.988", "82.003", "82.000"]),
    ] {
        let (mut document, _) = dialled(sense);
        for text in ["+0.012", "-0.003", "0"] {
            by(&mut document, "bore/1/whole/top/0", text);
        }
        assert_eq!(sizes(&document), expected.map(|t| Some(t.to_owned())));
    }
}

#[test]
fn the_zero_error_on_a_standard_is_taken_off() {
    let mut document = document(vec![]);
    let row = rows(&document).remove(0);
    assert_eq!(row.gauge.kind, GaugeKind::OutsideMicrometer);
    let at = "main_journal/1/whole/first/0";
    let edit = add(document.session(), at, "59.990 mm");
    document.dispatch(&edit).unwrap();
    let form = SetForm {
        size: "50.000".to_owned(),
        shows: "50.002".to_owned(),
        ..SetForm::of(&row.gauge)
    };
    set(&mut document, &row, &form);
    let edit = add(document.session(), at, "59.990 mm");
    document.dispatch(&edit).unwrap();
    // What was read before the check stays as it was read.
    let expected = ["59.990", "59.988"].map(|t| Some(t.to_owned()));
    assert_eq!(sizes(&document), expected);
    // Undone, the gauge is as it was found for what comes next.
    document.undo().unwrap().unwrap();
    document.undo().unwrap().unwrap();
    let (_, _, setting) = document.session().gauge_for(Kind::MainJournal).unwrap();
    assert_eq!(document.session().settings[&setting].value.set, None);
}

#[test]
fn set_on_the_piston_the_deviation_is_the_clearance() {
    let (mut document, row) = dialled(Sense::PlusLarger);
    let piston = feature(Kind::Piston, 2);
    let form = SetForm {
        on: SetOn::Feature,
        feature: piston,
        size: "81.955".to_owned(),
        sense: Some(Sense::PlusLarger),
        ..SetForm::of(&row.gauge)
    };
    set(&mut document, &row, &form);
    by(&mut document, "bore/2/whole/top/0", "+0.061");
    by(&mut document, "bore/2/whole/bottom/0", "+0.049");
    // Another bore in the same setting has its size, but no clearance.
    by(&mut document, "bore/1/whole/top/0", "+0.055");
    let clearance = |document: &Document, position, which| {
        let assessment = assess(document.session());
        let piston = feature(Kind::Piston, position);
        value(&assessment, piston, Quantity::Clearance, which)
    };
    let largest = Some(exact("0.061 mm"));
    assert_eq!(clearance(&document, 2, Which::Largest), largest);
    let smallest = Some(exact("0.049 mm"));
    assert_eq!(clearance(&document, 2, Which::Smallest), smallest);
    assert_eq!(clearance(&document, 1, Which::Largest), None);
    // The piston read with an error of 4 µm: the difference of two absolute
    // sizes has it, the direct clearance does not.
    for at in [
        "piston/2/skirt/gauge_point/0",
        "piston/1/skirt/gauge_point/0",
    ] {
        let edit = add(document.session(), at, "81.951 mm");
        document.dispatch(&edit).unwrap();
    }
    assert_eq!(clearance(&document, 2, Which::Largest), largest);
    let other = Some(exact("0.059 mm"));
    assert_eq!(clearance(&document, 1, Which::Largest), other);
}

#[test]
fn the_bore_as_made_stands_in_for_an_unworn_reference() {
    let nominal = Field::Nominal(Kind::Bore, Some(length("82.000 mm")));
    let mut document = document(vec![nominal]);
    let wear = |document: &Document| {
        let assessment = assess(document.session());
        value(
            &assessment,
            feature(Kind::Bore, 1),
            Quantity::Wear,
            Which::Largest,
        )
    };
    assert_eq!(wear(&document), None);
    crate::make::read(&mut document, &[("bore/1/whole/top/0", "82.064 mm")]);
    assert_eq!(wear(&document), Some(exact("0.064 mm")));
    crate::make::read(&mut document, &[("bore/1/whole/reference/0", "82.011 mm")]);
    assert_eq!(wear(&document), Some(exact("0.053 mm")));
}

#[test]
fn a_gauge_that_is_not_set_says_so_and_nothing_is_typed() {
    let mut document = document(vec![]);
    take(&mut document, GaugeKind::DialBoreGauge, Kind::Bore);
    let session = document.session();
    let stops = route(session, &assess(session));
    let mut fender = Fender::start(session, &stops, None);
    assert!(!fender.press(session, Key::Digit(1)));
    assert_eq!(fender.enter(session, ""), None);
    let view = view(session, &stops, &fender);
    assert!(view.is_refused);
    assert_eq!(
        view.said,
        "A gauge that shows deviations has to be set first: in Set-up, Gauges."
    );
}

#[test]
fn the_keypad_counts_graduations() {
    let (document, _) = dialled(Sense::PlusSmaller);
    let session = document.session();
    let stops = route(session, &assess(session));
    let typed = |keys: &[Key]| {
        let mut fender = Fender::start(session, &stops, None);
        let refused: Vec<_> = keys
            .iter()
            .filter(|key| !fender.press(session, **key))
            .collect();
        let face = fender.face().unwrap();
        let entered = match fender.enter(session, "") {
            Some(Edit::Add(reading)) => reading.entered.to_string(),
            other => format!("{other:?}, {}", fender.said().unwrap_or_default()),
        };
        let dial = face.dial.unwrap();
        let (lead, digits) = (face.lead, face.typed);
        format!(
            "{lead}{digits} {} | {dial} | {entered} | {}",
            face.unit,
            refused.len()
        )
    };
    let check = |keys: &[Key], expect: &Expect| expect.assert_eq(&typed(keys));
    let [one, two] = [1, 2].map(Key::Digit);
    check(
        &[one, two],
        &expect!["+12 graduations | +0.012 mm makes 81.988 mm | +0.012 mm | 0"],
    );
    check(
        &[one, Key::Sign, two],
        &expect!["−12 graduations | −0.012 mm makes 82.012 mm | −0.012 mm | 0"],
    );
    check(
        &[Key::Sign, Key::Sign, one, Key::Point, Key::Back, two],
        &expect!["+2 graduations | +0.002 mm makes 81.998 mm | +0.002 mm | 1"],
    );
    check(
        &[Key::Sign],
        &expect![
            "− graduations | from 82.000 mm | None, Type the graduations from zero; 0 where it stands there. | 0"
        ],
    );
    check(
        &[Key::Sign, Key::Digit(0)],
        &expect!["−0 graduations | 0.000 mm makes 82.000 mm | 0.000 mm | 0"],
    );
    check(
        &[two; 5],
        &expect!["+2222 graduations | +2.222 mm makes 79.778 mm | +2.222 mm | 1"],
    );
}

#[test]
fn half_a_count_survives_a_reload() {
    let (document, _) = dialled(Sense::PlusLarger);
    let session = document.session();
    let stops = route(session, &assess(session));
    let mut fender = Fender::start(session, &stops, None);
    for key in [Key::Digit(7), Key::Sign, Key::Digit(1)] {
        assert!(fender.press(session, key));
    }
    let draft = fender.draft().unwrap();
    let kept = fenderbench::present::Draft::from_text(&draft.to_text()).unwrap();
    let again = Fender::start(session, &stops, Some(&kept));
    assert_eq!(again, fender);
}

#[test]
fn a_reading_outside_the_range_of_its_gauge_is_refused() {
    let mut document = document(vec![]);
    let row = rows(&document).remove(0);
    let describe = |least, greatest| describe_gauge(&row, length("0.01 mm"), least, greatest);
    document.dispatch(&describe("50", "75").unwrap()).unwrap();
    let enter = |document: &mut Document, text| {
        let edit = add(document.session(), "main_journal/1/whole/first/0", text);
        document.dispatch(&edit).map_err(|why| why.to_string())
    };
    let refused = "This gauge reads from 50 mm to 75 mm: take another, or read again.";
    assert_eq!(enter(&mut document, "49.99 mm"), Err(refused.to_owned()));
    assert_eq!(enter(&mut document, "75.01 mm"), Err(refused.to_owned()));
    assert!(enter(&mut document, "50.00 mm").is_ok());
    assert!(enter(&mut document, "75.00 mm").is_ok());
    let backward = describe("75", "50").unwrap();
    assert!(document.dispatch(&backward).is_err());
    assert_eq!(describe("75", "").unwrap_err(), "Range: Nothing was typed.");
}

#[test]
fn settings_that_cannot_be_are_refused_with_a_sentence() {
    let (document, row) = dialled(Sense::PlusLarger);
    let fresh = || SetForm {
        size: "82.000".to_owned(),
        sense: Some(Sense::PlusLarger),
        ..SetForm::of(&row.gauge)
    };
    let said = |form: SetForm| form.edit(&row).unwrap_err();
    let size = SetForm {
        size: " ".to_owned(),
        ..fresh()
    };
    assert_eq!(said(size), "Type the size it is set to.");
    let sense = SetForm {
        sense: None,
        ..fresh()
    };
    assert_eq!(said(sense), "Say which way the dial goes.");
    let shows = SetForm {
        shows: "x".to_owned(),
        ..fresh()
    };
    assert_eq!(
        said(shows),
        "“x” is not a number: digits and one point only."
    );
    let refused = |setting: Setting| {
        let mut session = document.session().clone();
        let done = session.apply(&Edit::AddSetting(setting), crate::make::PHONE);
        done.unwrap_err().to_string()
    };
    let set_to = |size: &str, shows: Indication| Setting {
        set: Some(SetTo {
            against: Against::Standard,
            size: length(size),
            shows,
            again: None,
            sense: Sense::PlusLarger,
        }),
        ..Setting::as_found(row.id)
    };
    let zero = Indication::Deviation(EnteredDeviation::parse("0", MM).unwrap());
    assert_eq!(
        refused(set_to("0.000 mm", zero)),
        "Zero or less is no size."
    );
    let of_sizes = Indication::Size(length("82.000 mm"));
    assert!(refused(set_to("82.000 mm", of_sizes)).starts_with("A gauge that shows deviations"));
    let nobody = Stamp::parse("99@b2").unwrap();
    let unknown = Setting::as_found(nobody);
    assert_eq!(
        refused(unknown),
        "Nothing in this session has the id 99@b2."
    );
}

#[test]
fn the_screen_tells_what_each_gauge_is_set_to() {
    let (mut document, row) = dialled(Sense::PlusSmaller);
    let lines = |document: &Document| {
        let rows = rows(document).into_iter();
        let lines: Vec<_> = rows
            .map(|r| format!("{}: {} {}", r.title, r.setting, r.unset))
            .collect();
        lines.join("\n")
    };
    take(&mut document, GaugeKind::DialIndicator, Kind::Bore);
    take(&mut document, GaugeKind::OutsideMicrometer, Kind::Piston);
    expect![[r#"
        Outside micrometer: As found: nobody checked it on a standard. false
        Telescoping gauge and micrometer: As found: nobody checked it on a standard. false
        Dial bore gauge: Set on a micrometer locked at 82.000 mm, where it shows 0 mm; plus means smaller. false
        Dial indicator: As found: nobody checked it on a standard. false
        Outside micrometer 2: As found: nobody checked it on a standard. false"#]]
    .assert_eq(&lines(&document));
    let uses = gauges(document.session(), &assess(document.session())).uses;
    let used: Vec<_> = uses
        .iter()
        .map(|u| u.options.get(u.chosen).map_or("", |(_, name)| name))
        .collect();
    // A dial indicator measures no bore, so the bore gauge stays in use.
    let mic = "Outside micrometer";
    assert_eq!(
        used,
        [
            "Telescoping gauge and micrometer",
            "Outside micrometer 2",
            mic,
            mic
        ]
    );
    // Put away, it is not offered, and what was read with it stays.
    document.dispatch(&use_gauge(Kind::Bore, row.id)).unwrap();
    by(&mut document, "bore/1/whole/top/0", "+0.010");
    let gauge = fenderbench::session::Gauge {
        away: true,
        ..row.gauge.clone()
    };
    document.dispatch(&Edit::Gauge(row.id, gauge)).unwrap();
    assert!(!lines(&document).contains("Dial bore gauge"));
    assert_eq!(sizes(&document), [Some("81.990".to_owned())]);
    let kind = document.session().gauge_for(Kind::Bore).unwrap().1.kind;
    assert_eq!(kind, GaugeKind::TelescopingGauge);
}

#[test]
fn the_form_offers_what_the_locked_micrometer_read() {
    let mut document = document(vec![]);
    let at = "piston/3/skirt/gauge_point/0";
    crate::make::read(&mut document, &[(at, "81.950 mm"), (at, "81.952 mm")]);
    let row = rows(&document).remove(1);
    let form = SetForm {
        feature: Feature {
            kind: Kind::Piston,
            position: 3,
        },
        ..SetForm::of(&row.gauge)
    };
    assert_eq!(form.size_read(document.session(), MM), "81.952");
    assert_eq!(form.size_read(document.session(), INCH), "");
    assert_eq!(
        size("81.952 mm"),
        document
            .session()
            .size_of(document.session().standing().next_back().unwrap().1)
            .unwrap()
    );
}
