//! What readings say, against an example worked by hand.

use fenderbench::assess::{Assessment, Finding, Which, assess, compare_reading};
use fenderbench::present;
use fenderbench::quantity::{Exact, Unit};
use fenderbench::report::which_key;
use fenderbench::session::{Feature, Field, Kind, Quantity, RouteChoice, Session};
use fenderbench::verdict::Comparison;

use crate::golden::golden;
use crate::make::{exact, feature, limit, measured, value};

pub fn worked_example() -> Session {
    let mut fields = vec![Field::Cylinders(2), Field::Mains(4)];
    for row in golden!("worked_limits.csv") {
        let text = format!("{} {}", row.get("value"), row.get("unit"));
        fields.push(limit(row.get("limit"), &text));
    }
    let readings = golden!("worked_readings.csv");
    let readings: Vec<_> = readings
        .iter()
        .map(|row| {
            let text = format!("{} {}", row.get("value"), row.get("unit"));
            (row.get("station").to_owned(), text)
        })
        .collect();
    let readings: Vec<_> = readings
        .iter()
        .map(|(a, b)| (a.as_str(), b.as_str()))
        .collect();
    measured(fields, &readings)
}

#[test]
fn findings_are_as_worked_by_hand() {
    let session = worked_example();
    let assessment = assess(&session);
    let view = present::findings(&session, &assessment);
    // The screen has the worst first, the table the order of measuring.
    let shown = |feature: Feature| {
        let mut features = view.kinds.iter().flat_map(|kind| &kind.features);
        let title = present::feature(feature);
        features
            .find(|view| view.title == title)
            .expect("a feature")
    };
    let rows = session.features().flat_map(|feature| &shown(feature).rows);
    let found: Vec<[String; 5]> = assessment
        .findings
        .iter()
        .zip(rows)
        .map(|(finding, row)| {
            let key = finding.key;
            [
                key.feature.to_string(),
                key.quantity.key().to_owned(),
                which_key(key),
                row.value.clone(),
                // What it reads, without regard to how sure that is.
                finding
                    .comparison()
                    .map_or_else(|| row.words.clone(), |_| reads(finding)),
            ]
        })
        .collect();
    let worked = golden!("worked_findings.csv");
    for (row, found) in worked.iter().zip(&found) {
        let columns = ["feature", "quantity", "which", "value", "words"];
        let expected = columns.map(|column| row.get(column).to_owned());
        assert_eq!(&expected, found, "{}", row.place());
    }
    assert_eq!(worked.len(), found.len());
    assert_eq!(assessment.findings.len(), found.len());
}

fn reads(finding: &Finding) -> String {
    present::comparison_words(finding.key.quantity, finding.comparison(), Unit::Millimetre)
}

fn missing(assessment: &Assessment, at: Feature, quantity: Quantity) -> Vec<String> {
    let found = assessment.of(at).filter(|f| f.key.quantity == quantity);
    let last = found.last().expect("a finding");
    last.missing.iter().map(ToString::to_string).collect()
}

#[test]
fn what_was_not_read_is_named() {
    let assessment = assess(&worked_example());
    let of = |kind, position, quantity| missing(&assessment, feature(kind, position), quantity);
    assert_eq!(of(Kind::Bore, 1, Quantity::Size), [""; 0]);
    assert_eq!(of(Kind::Bore, 1, Quantity::Wear), [""; 0]);
    let bottom = ["bore/2/whole/bottom/0", "bore/2/whole/bottom/90"];
    assert_eq!(of(Kind::Bore, 2, Quantity::Size), bottom);
    assert_eq!(of(Kind::Bore, 2, Quantity::OutOfRound), bottom);
    assert_eq!(of(Kind::Bore, 2, Quantity::Taper), bottom);
    assert_eq!(
        of(Kind::Bore, 2, Quantity::Wear),
        [
            &bottom[..],
            &["bore/2/whole/reference/0", "bore/2/whole/reference/90"]
        ]
        .concat()
    );
    assert_eq!(of(Kind::Piston, 1, Quantity::Clearance), [""; 0]);
    assert_eq!(
        of(Kind::Piston, 2, Quantity::Clearance),
        ["bore/2/whole/bottom/0"]
    );
    let rest = ["first/90", "last/45", "last/135"].map(|at| format!("main_journal/2/whole/{at}"));
    assert_eq!(of(Kind::MainJournal, 2, Quantity::Size), rest);
    assert_eq!(of(Kind::MainJournal, 2, Quantity::OutOfRound), rest);
}

#[test]
fn every_finding_names_its_readings() {
    let session = worked_example();
    for finding in assess(&session).findings {
        let of_feature = |id| Feature::of(session.readings[id].station).position;
        let position = finding.key.feature.position;
        assert!(finding.readings.iter().all(|id| of_feature(id) == position));
        assert_eq!(finding.readings.is_empty(), finding.value().is_none());
    }
}

#[test]
fn struck_readings_do_not_count() {
    let mut session = worked_example();
    let before = assess(&session);
    let repeat = *session.readings.keys().nth(4).unwrap();
    session.readings.get_mut(&repeat).unwrap().strikes = 1;
    let smallest = |assessment: &Assessment| {
        let bore = feature(Kind::Bore, 1);
        value(assessment, bore, Quantity::Size, Which::Smallest).unwrap()
    };
    assert_eq!(smallest(&before), exact("82.013 mm"));
    assert_eq!(smallest(&assess(&session)), exact("82.012 mm"));
    session.readings.get_mut(&repeat).unwrap().strikes = 2;
    assert_eq!(smallest(&assess(&session)), exact("82.013 mm"));
}

#[test]
fn three_repeats_are_a_mean_that_does_not_end() {
    let at = "piston/1/skirt/gauge_point/0";
    let session = measured(
        vec![],
        &[(at, "81.950 mm"), (at, "81.950 mm"), (at, "81.951 mm")],
    );
    let mean = value(
        &assess(&session),
        feature(Kind::Piston, 1),
        Quantity::Size,
        Which::Mean,
    );
    let third = Exact::new(10_000, 3);
    assert_eq!(mean, Some(exact("81.950 mm") + third));
}

#[test]
fn an_oval_at_45_degrees_is_seen_by_the_standard_route_only() {
    // Size 50 mm, oval 0.020 mm at 45°: 0° and 90° read the same.
    let journal = |far: [&str; 2]| {
        let at = |place: &str| format!("main_journal/1/whole/{place}");
        let readings = [
            (at("first/0"), "50.000 mm"),
            (at("first/90"), "50.000 mm"),
            (
                at(far[0]),
                if far[0].ends_with("45") {
                    "50.010 mm"
                } else {
                    "50.000 mm"
                },
            ),
            (
                at(far[1]),
                if far[1].ends_with("135") {
                    "49.990 mm"
                } else {
                    "50.000 mm"
                },
            ),
        ];
        let readings: Vec<_> = readings.iter().map(|(a, b)| (a.as_str(), *b)).collect();
        let fields = vec![limit("main_journal/out_of_round/service", "0.013 mm")];
        let assessment = assess(&measured(fields, &readings));
        let journal = feature(Kind::MainJournal, 1);
        let of = |quantity| value(&assessment, journal, quantity, Which::Largest).unwrap();
        (of(Quantity::OutOfRound), of(Quantity::Taper))
    };
    assert_eq!(
        journal(["last/45", "last/135"]),
        (exact("0.020 mm"), Exact::ZERO)
    );
    assert_eq!(journal(["last/0", "last/90"]), (Exact::ZERO, Exact::ZERO));
}

#[test]
fn a_bore_beyond_the_service_limit_never_reads_new() {
    // The manual's form may be filled in part: any of the new limits may be
    // left out.
    let low = || limit("bore/size/new_low", "82.000 mm");
    let high = || limit("bore/size/new_high", "82.020 mm");
    for mut fields in [vec![], vec![low()], vec![high()], vec![low(), high()]] {
        fields.push(limit("bore/size/service", "82.100 mm"));
        let session = measured(fields, &[("bore/1/whole/top/0", "82.500 mm")]);
        let reading = session.readings.values().next().unwrap();
        let beyond = Comparison::BeyondLimit(exact("0.400 mm"));
        assert_eq!(compare_reading(&session, reading), beyond);
    }
}

#[test]
fn a_journal_beyond_the_service_limit_never_reads_new() {
    let low = || limit("main_journal/size/new_low", "49.982 mm");
    let high = || limit("main_journal/size/new_high", "50.000 mm");
    for mut fields in [vec![], vec![low()], vec![high()], vec![low(), high()]] {
        fields.push(limit("main_journal/size/service", "49.960 mm"));
        let session = measured(fields, &[("main_journal/1/whole/first/0", "49.900 mm")]);
        let reading = session.readings.values().next().unwrap();
        let beyond = Comparison::BeyondLimit(exact("-0.060 mm"));
        assert_eq!(compare_reading(&session, reading), beyond);
    }
}

#[test]
fn a_piston_larger_than_its_bore_never_reads_inside() {
    let service = limit("piston/clearance/service", "0.150 mm");
    let readings = [
        ("bore/1/whole/top/0", "82.010 mm"),
        ("piston/1/skirt/gauge_point/0", "82.020 mm"),
    ];
    let assessment = assess(&measured(vec![service], &readings));
    let mut clearances = assessment.of(feature(Kind::Piston, 1));
    let clearance = clearances
        .find(|f| f.key.quantity == Quantity::Clearance)
        .unwrap();
    assert_eq!(clearance.value(), Some(exact("-0.010 mm")));
    let too_small = Comparison::BeyondLimit(exact("-0.010 mm"));
    assert_eq!(clearance.comparison(), Some(too_small));
}

#[test]
fn the_pin_direction_of_a_bore_is_no_clearance() {
    let readings = [
        ("bore/1/whole/top/0", "82.010 mm"),
        ("bore/1/whole/top/90", "82.090 mm"),
        ("bore/1/whole/reference/0", "81.990 mm"),
        ("piston/1/skirt/gauge_point/0", "81.950 mm"),
    ];
    let assessment = assess(&measured(vec![Field::Route(RouteChoice::Plain)], &readings));
    let of = |which| {
        value(
            &assessment,
            feature(Kind::Piston, 1),
            Quantity::Clearance,
            which,
        )
    };
    assert_eq!(of(Which::Smallest), Some(exact("0.060 mm")));
    assert_eq!(of(Which::Largest), Some(exact("0.060 mm")));
}

#[test]
fn a_mean_over_very_uneven_repeats_is_exact() {
    // Sixteen stations with a prime number of repeats each: denominators
    // that share no factor are the worst there is.
    const REPEATS: [usize; 16] = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53];
    let mut readings = Vec::new();
    for (n, repeats) in REPEATS.into_iter().enumerate() {
        let level = ["top", "middle", "bottom", "reference"][n / 4];
        let at = format!("bore/1/whole/{level}/{}", [0, 45, 90, 135][n % 4]);
        readings.extend(std::iter::repeat_n((at, "82.010 mm"), repeats));
    }
    let readings: Vec<_> = readings.iter().map(|(a, b)| (a.as_str(), *b)).collect();
    let fields = vec![limit("bore/size/service", "82.010 mm")];
    let assessment = assess(&measured(fields, &readings));
    let mean = value(
        &assessment,
        feature(Kind::Bore, 1),
        Quantity::Size,
        Which::Mean,
    );
    assert_eq!(mean, Some(exact("82.010 mm")));
}
