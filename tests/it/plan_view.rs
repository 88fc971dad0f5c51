//! What stands beside the plan: sizes that clean up, volumes, a cross-check of
//! journals, mixing of shells, sorting of pistons, what is outside all rules.

use expect_test::expect;
use fenderbench::present::{PlanView, fix};
use fenderbench::quantity::EnteredDeviation;
use fenderbench::session::{
    Arrangement, Dimension, Edit, Field, Kind, Pin, Session, Space, Volume,
};

use crate::make::{INCH, edited, length, limit, measured, sample, session, unread};
use crate::what_to_do::view;

fn pinned(session: Session, pin: Pin, word: &str) -> Session {
    edited(session, vec![fix(pin, Some(word.to_owned()))])
}

/// Eight cylinders bored from 4.000 in to 0.030 in over, so far as given.
fn bored(more: Vec<Field>) -> PlanView {
    let mut fields = vec![
        Field::Cylinders(8),
        Field::Arrangement(Arrangement::Vee),
        Field::DisplayUnit(INCH),
        Field::Nominal(Kind::Bore, Some(length("4.000 in"))),
        Field::Stock(Kind::Piston, Some(vec![length("0.030 in")])),
        Field::Pin(Pin::Bores, Some("oversize 0.030 in".to_owned())),
    ];
    fields.extend(more);
    view(&session(fields))
}

fn given() -> Vec<Field> {
    let of = |name, text| Field::Length(name, Some(length(text)));
    let volume = |name, text| Field::Volume(name, Some(Volume::parse(text).unwrap()));
    let deck = EnteredDeviation::parse("0.020", INCH).unwrap();
    vec![
        of(Dimension::Stroke, "3.500 in"),
        of(Dimension::GasketBore, "4.100 in"),
        of(Dimension::GasketThickness, "0.040 in"),
        Field::DeckClearance(Some(deck)),
        volume(Space::Chamber, "64"),
        volume(Space::PistonTop, "5"),
    ]
}

#[test]
fn displacement_and_compression_stand_before_and_after() {
    // The first rows of displacements.csv and compression.csv.
    expect![[r#"
        Displacement, all cylinders: 351.86 in³ (5765.9 cm³) before, 357.16 in³ (5852.7 cm³) after.
        Compression: 9.81 : 1 before, 9.94 : 1 after, with crowns of the same shape and height."#]]
    .assert_eq(&bored(given()).volumes.join("\n"));
    let mut small = given();
    small.push(Field::Length(
        Dimension::GasketBore,
        Some(length("4.029 in")),
    ));
    let told = bored(small).volumes;
    assert_eq!(
        told.last().unwrap(),
        "The bore of the head gasket is smaller than the finished bore."
    );
}

#[test]
fn what_is_missing_for_the_compression_is_named() {
    let mut some = given();
    some.truncate(2);
    expect![[r#"
        Displacement, all cylinders: 351.86 in³ (5765.9 cm³) before, 357.16 in³ (5852.7 cm³) after.
        For compression give under Set-up: chamber in the head, dish of the piston, head gasket, thickness, crown below the deck."#]]
    .assert_eq(&bored(some.clone()).volumes.join("\n"));
    some.remove(0);
    assert_eq!(bored(some).volumes, [""; 0], "nothing without a stroke");
}

/// Which size cleans up what, as shown.
fn sizes(view: &PlanView) -> String {
    let mut told = Vec::new();
    for one in &view.sizes {
        told.push(one.title.to_owned());
        told.extend(one.worst.clone());
        told.extend(one.rows.iter().map(|row| row.join(": ")));
        told.extend(one.taken.iter().map(|taken| format!("taken {taken}")));
    }
    told.join("\n")
}

#[test]
fn the_sizes_of_what_is_machined_say_which_of_them_clean_up() {
    let twin = sample("quarry-v-twin");
    // 3.5042 and twice 0.0025; and 0.00365 of wear on the other side and
    // twice 0.0005 besides. 1.7449 less twice 0.0010; and 0.0051 besides.
    expect![[r#"
        Bores
        Bore 1 decides: it cleans up at 3.5092 in if evenly worn, at 3.51385 in if worn on one side.
        0.010 in over, bar to 3.5078 in: no: Bore 1
        0.020 in over, bar to 3.5178 in: cleans up all
        0.030 in over, bar to 3.5278 in: cleans up all
        0.040 in over, bar to 3.5378 in: cleans up all
        taken 0.0005 in for a bar off the axis: our own choice
        taken 0.0030 in left for the hone: a trade guide for machine shops
        Rod journals
        Rod journal 1 decides: it cleans up at 1.7429 in if evenly worn, at 1.7378 in if worn on one side.
        0.010 in under, ground to 1.7400 in: only if evenly worn: have Rod journal 1 swept first
        0.020 in under, ground to 1.7300 in: cleans up all
        0.030 in under, ground to 1.7200 in: cleans up all"#]].assert_eq(&sizes(&view(&twin)));
    let unread = edited(
        twin.clone(),
        vec![unread(&twin, "bore_score/1/whole/centre/0")],
    );
    let told = sizes(&view(&unread));
    assert!(
        told.contains("not known: measure how deep Bore 1 is scored"),
        "{told}"
    );
    let given = [
        (Dimension::BarOffset, "0 in"),
        (Dimension::HoningAllowance, "0.0025 in"),
    ];
    let given = given.map(|(name, text)| Edit::Set(Field::Length(name, Some(length(text)))));
    let told = sizes(&view(&edited(twin, given.to_vec())));
    assert!(!told.contains("taken"), "{told}");
}

#[test]
fn the_order_has_the_journal_by_own_readings_beside_it() {
    // 1.8751 less two walls of 0.0717 and 0.00225; the other rod is replaced.
    let told = view(&sample("quarry-v-twin")).shop;
    let check = told.iter().filter(|line| line.starts_with("By your own"));
    expect!["By your own readings that would be a journal of 1.72945 in ± 0.0004 in: a cross-check, not an order."].assert_eq(&check.cloned().collect::<Vec<_>>().join("\n"));
}

#[test]
fn halves_are_mixed_only_where_somebody_says_so() {
    let twin = sample("quarry-v-twin");
    let chosen = |session: &Session| {
        let mixing = view(session).mixing.unwrap();
        let choice = |one: &fenderbench::present::MixingChoice| {
            let on = one.options.iter().filter(|(.., on)| *on);
            let on: Vec<_> = on.map(|(label, ..)| label.clone()).collect();
            format!("{}: {}", one.title, on.join(", "))
        };
        mixing.choices.iter().map(choice).collect::<Vec<_>>()
    };
    assert_eq!(
        chosen(&twin),
        ["How far sizes may differ: another size from place to place"]
    );
    let halves = pinned(pinned(twin, Pin::Mixing, "halves"), Pin::ThrustMain, "2");
    assert_eq!(
        chosen(&halves),
        [
            "How far sizes may differ: halves of two sizes as well",
            "The main that takes the thrust: 2"
        ]
    );
    assert_eq!(view(&session(vec![Field::Cylinders(1)])).mixing, None);
}

/// Two cylinders that are in order, with their pistons across.
fn crossed(large: &str) -> Session {
    let fields = vec![
        Field::Cylinders(2),
        Field::Arrangement(Arrangement::InLine),
        Field::DisplayUnit(INCH),
        limit("bore/size/new_low", "3.4900 in"),
        limit("bore/size/new_high", "3.5120 in"),
        limit("bore/out_of_round/service", "0.0050 in"),
        limit("bore/taper/service", "0.0050 in"),
        limit("piston/size/new_low", "3.4900 in"),
        limit("piston/size/new_high", "3.5020 in"),
        limit("piston/clearance/new_low", "0.0001 in"),
        limit("piston/clearance/new_high", "0.0190 in"),
    ];
    let mut readings = Vec::new();
    for (bore, size) in [(1, large), (2, "3.5030 in")] {
        for level in ["top", "middle", "bottom"] {
            for direction in ["0", "90"] {
                readings.push((format!("bore/{bore}/whole/{level}/{direction}"), size));
            }
        }
    }
    readings.push(("piston/1/skirt/gauge_point/0".to_owned(), "3.4930 in"));
    readings.push(("piston/2/skirt/gauge_point/0".to_owned(), "3.5005 in"));
    let readings: Vec<_> = readings
        .iter()
        .map(|(at, size)| (at.as_str(), *size))
        .collect();
    measured(fields, &readings)
}

#[test]
fn what_sorting_would_gain_is_told_where_it_is_proved() {
    let pistons = |session: &Session| {
        let view = view(session);
        let line = view.lines.iter().find(|line| line.about == "Pistons");
        let line = line.unwrap();
        assert_eq!(line.what, "use again, each in its own bore");
        line.why.clone()
    };
    // 0.0160 and 0.0025 as they are, 0.0085 and 0.0100 the other way round.
    assert_eq!(
        pistons(&crossed("3.5090 in")).unwrap(),
        "sorted by size their clearances would differ by 0.0015 in instead of 0.0135 in. Used \
         pistons stay at home all the same: each has worn to its bore"
    );
    // The larger piston runs in the larger bore already.
    assert_eq!(pistons(&crossed("3.5000 in")), None);
}

#[test]
fn what_is_outside_all_common_rules_is_not_taken_to_be_good() {
    let oval = |across: &str| {
        let readings = [
            ("rod_journal/1/whole/first/0", "2.0000 in"),
            ("rod_journal/1/whole/first/90", across),
            ("rod_journal/1/whole/last/0", "2.0000 in"),
            ("rod_journal/1/whole/last/90", across),
        ];
        view(&measured(vec![Field::Cylinders(1)], &readings))
    };
    let outside = "Rod journal 1: outside all common rules: look up the limits of the manual, or \
                   read again"
        .to_owned();
    let good = oval("1.9999 in");
    assert!(!good.rests_on.contains(&outside));
    let bad = oval("1.9950 in");
    let line = bad.lines.iter().find(|line| line.about == "Rod journals");
    assert_ne!(line.unwrap().what, "use again");
    assert!(bad.maybe.unwrap().if_well.contains(&outside));
}
