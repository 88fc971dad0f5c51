//! The common rules: guide words where the manual is silent.

use expect_test::expect;
use fenderbench::assess::{Finding, Guide, GuideWord, Only, Per, Which, assess, common_rules};
use fenderbench::present::{bench_row, findings};
use fenderbench::quantity::Exact;
use fenderbench::session::{Direction, Field, Kind, Level, Quantity, Session, Use};

use crate::golden::{Row, golden};
use crate::make::{INCH, exact, feature, length, limit, measured, station};

const PER_BORE: &str = "in per in of bore";

const QUANTITIES: [Quantity; 6] = [
    Quantity::Size,
    Quantity::Wear,
    Quantity::OutOfRound,
    Quantity::Taper,
    Quantity::Barrel,
    Quantity::Clearance,
];

/// The rows of the table for a quantity of a kind in a use, in its order.
fn rows(kind: Kind, quantity: Quantity, machine_use: Use) -> Vec<Row> {
    let mut rows = golden!("common_rules.csv");
    let lists = |row: &Row, column: &str, word: &str| row.get(column).split(' ').any(|w| w == word);
    rows.retain(|row| {
        lists(row, "kinds", kind.key())
            && row.get("quantity") == quantity.key()
            && lists(row, "uses", machine_use.key())
    });
    rows
}

#[test]
fn the_rules_are_those_of_the_table() {
    let mut used = 0;
    for kind in Kind::ALL {
        for quantity in QUANTITIES {
            for machine_use in Use::ALL {
                let rules = common_rules(kind, quantity, machine_use);
                let rows = rows(kind, quantity, machine_use);
                assert_eq!(rules.len(), rows.len(), "{kind:?} {quantity:?}");
                used += rows.len();
                for (rule, row) in rules.iter().zip(&rows) {
                    let steps = |n: u16| Exact::new(i128::from(n) * 254, 1);
                    let inches = |column| exact(&format!("{} in", row.get(column)));
                    assert_eq!(steps(rule.low), inches("low"), "{}", row.place());
                    assert_eq!(steps(rule.high), inches("high"), "{}", row.place());
                    assert_eq!(steps(rule.plus), inches("plus"), "{}", row.place());
                    let per = match rule.per {
                        Per::Inch => "in",
                        Per::Bore => PER_BORE,
                        Per::Journal => "in per in of journal",
                    };
                    assert_eq!(per, row.get("per"), "{}", row.place());
                    let only = match rule.only {
                        Only::Always => "always",
                        Only::Plus => "plus",
                        Only::Minus => "minus",
                        Only::OneRod => "one_rod",
                        Only::TwoRods => "two_rods",
                    };
                    assert_eq!(only, row.get("only"), "{}", row.place());
                    assert_eq!(rule.text, row.get("text"));
                    assert_eq!(rule.source, row.get("source"));
                }
            }
        }
    }
    let lists = |row: &Row| {
        let length = |column| row.get(column).split(' ').count();
        length("kinds") * length("uses")
    };
    let all: usize = golden!("common_rules.csv").iter().map(lists).sum();
    assert_eq!(used, all, "a row of the table is nowhere in the rules");
}

const BASE: i64 = 4_000_000;

/// A length of whole microinches as typed.
fn inches(microinches: i64) -> String {
    format!(
        "{}.{:06} in",
        microinches / 1_000_000,
        microinches % 1_000_000
    )
}

/// Readings by which a quantity of the first of a kind is one such length,
/// each a station and how often that length is in it beside [`BASE`]; of an
/// amount there is no base. Bores and journals that count are as large.
fn places(kind: Kind, quantity: Quantity) -> &'static [(&'static str, i64)] {
    match (kind, quantity) {
        (Kind::Bore, Quantity::OutOfRound) => {
            &[("bore/1/whole/top/0", 1), ("bore/1/whole/top/90", 0)]
        }
        (Kind::Bore, _) => &[("bore/1/whole/top/0", 1), ("bore/1/whole/bottom/0", 0)],
        (Kind::Piston, _) => &[
            ("piston/1/skirt/gauge_point/0", -1),
            ("bore/1/whole/top/0", 0),
        ],
        (Kind::MainShell, _) => &[
            ("main_strip/1/whole/centre/0", 1),
            ("main_journal/1/whole/first/0", 0),
        ],
        (Kind::RodShell, _) => &[
            ("rod_strip/1/whole/centre/0", 1),
            ("rod_journal/1/whole/first/0", 0),
        ],
        (Kind::PinBore, _) => &[("pin_bore/1/whole/first/0", 1), ("pin/1/whole/first/0", 0)],
        (Kind::SmallEnd, _) => &[("small_end/1/whole/first/0", 1), ("pin/1/whole/first/0", 0)],
        (Kind::TopRingGap, _) => &[
            ("top_ring_gap/1/whole/bottom/0", 1),
            ("bore/1/whole/top/0", 0),
        ],
        (Kind::SecondRingGap, _) => &[
            ("second_ring_gap/1/whole/bottom/0", 1),
            ("bore/1/whole/top/0", 0),
        ],
        (Kind::MainHousing, Quantity::OutOfRound) => &[
            ("main_housing/1/whole/first/0", 1),
            ("main_housing/1/whole/first/60", 0),
        ],
        (Kind::BigEnd, Quantity::OutOfRound) => &[
            ("big_end/1/whole/first/0", 1),
            ("big_end/1/whole/first/60", 0),
        ],
        (Kind::MainHousing, _) => &[
            ("main_housing/1/whole/first/0", 1),
            ("main_housing/1/whole/last/0", 0),
        ],
        (Kind::BigEnd, _) => &[
            ("big_end/1/whole/first/0", 1),
            ("big_end/1/whole/last/0", 0),
        ],
        (Kind::MainJournal, Quantity::OutOfRound) => &[
            ("main_journal/1/whole/first/0", 1),
            ("main_journal/1/whole/first/90", 0),
        ],
        (Kind::RodJournal, Quantity::OutOfRound) => &[
            ("rod_journal/1/whole/first/0", 1),
            ("rod_journal/1/whole/first/90", 0),
        ],
        (Kind::MainJournal, _) => &[
            ("main_journal/1/whole/first/0", 1),
            ("main_journal/1/whole/last/0", 0),
        ],
        (Kind::RodJournal, _) => &[
            ("rod_journal/1/whole/first/0", 1),
            ("rod_journal/1/whole/last/0", 0),
        ],
        (Kind::TopRingSide, _) => &[("top_ring_side/1/whole/centre/0", 1)],
        (Kind::SecondRingSide, _) => &[("second_ring_side/1/whole/centre/0", 1)],
        (Kind::RunOut, _) => &[("run_out/1/whole/centre/0", 1)],
        (Kind::EndPlay, _) => &[("end_play/1/whole/centre/0", 1)],
        (Kind::RodSide, _) => &[("rod_side/1/whole/centre/0", 1)],
        (Kind::Deck, _) => &[("deck/1/whole/diagonal/0", 1)],
        (Kind::Head, _) => &[("head/1/whole/diagonal/0", 1)],
        other => panic!("no places for {other:?}"),
    }
}

/// A session in which a quantity of the first of a kind has this value;
/// `None` where no gauge can show it.
fn with_value(
    kind: Kind,
    quantity: Quantity,
    mut fields: Vec<Field>,
    microinches: i64,
) -> Option<Session> {
    let reading = |(at, of): &(&'static str, i64)| {
        let base = if station(at).kind.is_amount() {
            0
        } else {
            BASE
        };
        let microinches = base + of * microinches;
        (0 <= microinches).then(|| (*at, inches(microinches)))
    };
    let readings = places(kind, quantity).iter().map(reading);
    let readings: Vec<_> = readings.collect::<Option<_>>()?;
    let readings: Vec<_> = readings.iter().map(|(a, b)| (*a, b.as_str())).collect();
    fields.push(Field::DisplayUnit(INCH));
    Some(measured(fields, &readings))
}

/// The first that has a value of those that decide: the largest of a shape.
fn deciding(session: &Session, kind: Kind, quantity: Quantity) -> Finding {
    let assessment = assess(session);
    let mut found = assessment.of(feature(kind, 1));
    let decides =
        |f: &&Finding| f.key.quantity == quantity && f.value().is_some() && f.key.which.decides();
    found.find(decides).expect("a finding").clone()
}

fn largest(session: &Session, kind: Kind, quantity: Quantity) -> Finding {
    let assessment = assess(session);
    let mut found = assessment.of(feature(kind, 1));
    let largest = |f: &&Finding| f.key.quantity == quantity && f.key.which == Which::Largest;
    found.find(largest).expect("a finding").clone()
}

#[test]
fn every_edge_of_every_rule_tells_the_word() {
    let microinches = |row: &Row, column: &str| {
        let inches = |column| length(&format!("{} in", row.get(column))).size().quanta() / 254;
        let of = if row.get("per") == "in" { 1 } else { 4 };
        of * inches(column) + inches("plus")
    };
    let measurable = |quantity: &Quantity| *quantity != Quantity::Barrel;
    for kind in Kind::ALL {
        for quantity in QUANTITIES.into_iter().filter(measurable) {
            for (machine_use, rods) in Use::ALL.into_iter().flat_map(|u| [(u, 1), (u, 2)]) {
                let rows = rows(kind, quantity, machine_use);
                let bands: Vec<_> = rows
                    .iter()
                    .map(|row| (microinches(row, "low"), microinches(row, "high")))
                    .collect();
                let edges = bands.iter().flat_map(|&(low, high)| [low, high]);
                for value in edges.flat_map(|edge| [edge - 1, edge, edge + 1, -edge]) {
                    let fields = vec![Field::Use(machine_use), Field::RodsPerThrow(rods)];
                    let Some(session) = with_value(kind, quantity, fields, value) else {
                        continue;
                    };
                    let guide = deciding(&session, kind, quantity).guide.expect("a guide");
                    let holds = |row: &Row| match row.get("only") {
                        "plus" => 0 <= value,
                        "minus" => value < 0,
                        "one_rod" => rods == 1,
                        "two_rods" => rods == 2,
                        _ => true,
                    };
                    let bands = rows.iter().zip(&bands).filter(|(row, _)| holds(row));
                    let bands: Vec<_> = bands.map(|(_, band)| *band).collect();
                    let shape = [Quantity::OutOfRound, Quantity::Taper].contains(&quantity);
                    let amount = if shape { value.abs() } else { value };
                    let inside = |band: &&(i64, i64)| (band.0..=band.1).contains(&amount);
                    let expected = match bands.iter().filter(inside).count() {
                        0 => GuideWord::OutsideLoosest,
                        n if n == bands.len() => GuideWord::InsideStrictest,
                        _ => GuideWord::RulesDisagree,
                    };
                    let said = format!("{kind:?} {quantity:?} {machine_use:?} {rods} {value}");
                    assert_eq!(guide.word, expected, "{said}");
                    assert_eq!(guide.rules.len(), bands.len(), "{said}");
                }
            }
        }
    }
}

#[test]
fn a_limit_of_the_manual_silences_the_rules() {
    let readings = [
        ("bore/1/whole/top/0", "82.130 mm"),
        ("bore/1/whole/top/90", "82.000 mm"),
    ];
    let guide = |fields| {
        let session = measured(fields, &readings);
        largest(&session, Kind::Bore, Quantity::OutOfRound).guide
    };
    let word = |guide: Option<Guide>| guide.map(|guide| guide.word);
    assert_eq!(word(guide(vec![])), Some(GuideWord::OutsideLoosest));
    let taper = limit("bore/taper/service", "0.040 mm");
    assert_eq!(word(guide(vec![taper])), Some(GuideWord::OutsideLoosest));
    assert_eq!(
        guide(vec![limit("bore/out_of_round/service", "0.200 mm")]),
        None
    );
}

#[test]
fn nothing_is_said_of_what_was_not_measured_or_has_no_common_rule() {
    let session = measured(vec![], &[("bore/1/whole/top/0", "82.100 mm")]);
    let assessment = assess(&session);
    assert!(
        assessment
            .findings
            .iter()
            .all(|finding| finding.guide.is_none())
    );
}

#[test]
fn a_part_by_the_bore_goes_by_what_the_bore_was_made_to() {
    let readings = [
        ("bore/1/whole/top/0", "100.100 mm"),
        ("bore/1/whole/reference/0", "99.000 mm"),
        ("piston/1/skirt/gauge_point/0", "100.000 mm"),
    ];
    let of_bore = |fields| {
        let session = measured(fields, &readings);
        let guide = largest(&session, Kind::Piston, Quantity::Clearance)
            .guide
            .unwrap();
        let rule = guide
            .rules
            .into_iter()
            .find(|rule| rule.common.per == Per::Bore);
        rule.map(|rule| (rule.low, rule.high)).unwrap()
    };
    let worn = (exact("0.05005 mm"), exact("0.1001 mm"));
    assert_eq!(of_bore(vec![]), worn, "the mean of the worn places");
    let nominal = Field::Nominal(Kind::Bore, Some(length("100.000 mm")));
    assert_eq!(
        of_bore(vec![nominal]),
        (exact("0.050 mm"), exact("0.100 mm"))
    );
}

#[test]
fn guides_stand_on_the_screen_and_count_nowhere() {
    let readings = [
        ("bore/1/whole/top/0", "82.100 mm"),
        ("bore/1/whole/top/90", "82.000 mm"),
        ("piston/1/skirt/gauge_point/0", "82.060 mm"),
    ];
    let session = measured(vec![Field::Cylinders(1)], &readings);
    let view = findings(&session, &assess(&session));
    let mut lines = Vec::new();
    for kind in &view.kinds[..2] {
        for rule in &kind.rules {
            lines.push(format!("{}: {}", rule.quantity, rule.text));
        }
        for row in &kind.features[0].rows {
            let guide = row.guide.unwrap_or("-");
            lines.push(format!(
                "{} {}: {} | {guide}",
                row.label, row.value, row.words
            ));
        }
        lines.push(kind.features[0].words.clone());
    }
    lines.push(bench_row(&session, None).worst);
    expect![[r#"
        Out-of-round: up to 0.0508 mm, used again on the street (strict) — common practice
        Out-of-round: up to 0.0762 mm, used again on the street — common practice
        Out-of-round: up to 0.127 mm, used again at the most — old-engine and trade rebuild notes
        Size, mean 82.050 mm: no limit given | -
        Size, smallest 82.000 mm: no limit given | -
        Size, largest 82.100 mm: no limit given | -
        Wear —: needs an unworn reference | -
        Out-of-round, top +0.100 mm: no limit given | common rules disagree, ask the shop
        Out-of-round, bottom —: not measured | -
        Out-of-round, largest +0.100 mm: no limit given | common rules disagree, ask the shop
        Taper, largest —: not measured | -
        Size no limit given; not all of it measured
        Piston-to-wall: 0.0254 to 0.0508 mm, cast pistons in general — common practice
        Piston-to-wall: 0.0508 to 0.1016 mm, forged pistons in general; more with boost or racing heat — common practice
        Piston-to-wall: 0.0005 to 0.0010 of the bore, plain cast pistons of older design — common practice; 0.001 per inch also in trade questions and answers
        Size 82.060 mm: no limit given | -
        Piston-to-wall, least 0.040 mm: no limit given | common rules disagree, ask the shop
        Piston-to-wall, greatest 0.040 mm: no limit given | common rules disagree, ask the shop
        Size no limit given
        Bore 1: Size no limit given"#]].assert_eq(&lines.join("\n"));
    let fields = vec![Field::Cylinders(1), Field::DisplayUnit(INCH)];
    let view = measured(fields, &readings);
    let view = findings(&view, &assess(&view));
    let rules = view.kinds[1].rules.iter().map(|rule| rule.text.as_str());
    expect![[r#"
        0.0010 to 0.0020 in, cast pistons in general — common practice
        0.0020 to 0.0040 in, forged pistons in general; more with boost or racing heat — common practice
        0.0005 to 0.0010 of the bore, plain cast pistons of older design — common practice; 0.001 per inch also in trade questions and answers"#]].assert_eq(&rules.collect::<Vec<_>>().join("\n"));
}

#[test]
fn each_value_of_a_quantity_has_its_own_word() {
    let readings = [
        ("bore/1/whole/top/0", "82.130 mm"),
        ("bore/1/whole/top/90", "82.000 mm"),
        ("bore/1/whole/bottom/0", "82.010 mm"),
        ("bore/1/whole/bottom/90", "82.000 mm"),
    ];
    let assessment = assess(&measured(vec![], &readings));
    let word = |level| {
        let which = Which::At(level, Direction::D0);
        let mut found = assessment.of(feature(Kind::Bore, 1));
        let found = found.find(|f| f.key.which == which).unwrap();
        found.guide.as_ref().unwrap().word
    };
    assert_eq!(word(Level::Top), GuideWord::OutsideLoosest);
    assert_eq!(word(Level::Bottom), GuideWord::InsideStrictest);
}
