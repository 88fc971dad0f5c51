//! What is proved, how sure it is, and what would settle what is open.

use fenderbench::assess::{Finding, FindingKey, Settle, Which, assess};
use fenderbench::present::{Why, findings, next_open, route};
use fenderbench::quantity::Exact;
use fenderbench::report;
use fenderbench::session::{
    Against, Direction, Edit, Field, Gauge, Indication, Kind, Quantity, Reading, RouteChoice,
    Sense, Session, SetTo, Setting,
};
use fenderbench::uncertainty::Climate;
use fenderbench::verdict::{Band, Decision, DecisionRule, Limits, Verdict};
use proptest::prelude::*;

use crate::generators::{act, config};
use crate::make::{document, exact, feature, length, limit, measured, read};

fn finding(session: &Session, kind: Kind, quantity: Quantity, which: Which) -> Finding {
    let key = FindingKey::new(feature(kind, 1), quantity, which);
    assess(session).get(key).expect("a finding").clone()
}

fn verdict(session: &Session, kind: Kind, quantity: Quantity, which: Which) -> Verdict {
    let finding = finding(session, kind, quantity, which);
    finding.decided().expect("a verdict")
}

#[test]
fn the_words_follow_the_two_decisions() {
    use Decision::{In, Open, Out};
    use Verdict::{
        BeyondLimit, DoNotAssemble, NoLimit, OutsideNew, TooClose, WithinNew, WithinService,
    };
    for (new, service, word) in [
        (Some(In), None, WithinNew),
        (Some(In), Some(In), WithinNew),
        (Some(Out), Some(In), WithinService),
        (Some(Open), Some(In), WithinService),
        (None, Some(In), WithinService),
        (Some(Out), Some(Out), BeyondLimit),
        (Some(Open), Some(Out), BeyondLimit),
        (Some(Out), Some(Open), TooClose),
        (Some(Open), Some(Open), TooClose),
        (Some(Out), None, OutsideNew),
        (Some(Open), None, TooClose),
        (None, None, NoLimit),
    ] {
        assert_eq!(
            Verdict::of(new, service, false),
            word,
            "{new:?} {service:?}"
        );
        let critical = if word == TooClose {
            DoNotAssemble
        } else {
            word
        };
        assert_eq!(
            Verdict::of(new, service, true),
            critical,
            "{new:?} {service:?}"
        );
    }
}

#[test]
fn many_looks_at_noise_do_not_convict() {
    let rule = DecisionRule::ONE_SIDED_95;
    assert_eq!(rule.to_convict_by_one_of(1), 950_000);
    assert_eq!(rule.to_convict_by_one_of(5), 990_000);
    assert_eq!(rule.to_convict_by_one_of(0), 950_000);
    let band = Band::new(None, Some(exact("0.010 mm")));
    let decide =
        |value, pass, convict| band.decide_worst(&[(exact(value), exact(pass), exact(convict))]);
    assert_eq!(
        decide("0.014 mm", "0.003 mm", "0.003 mm"),
        Some(Decision::Out)
    );
    assert_eq!(
        decide("0.014 mm", "0.003 mm", "0.005 mm"),
        Some(Decision::Open)
    );
    assert_eq!(
        decide("0.007 mm", "0.003 mm", "0.005 mm"),
        Some(Decision::In)
    );
    assert_eq!(Band::default().decide_worst(&[]), None);
}

fn of_main(readings: &[&str], route: RouteChoice) -> Session {
    let fields = vec![
        Field::Cylinders(1),
        Field::Mains(1),
        Field::Route(route),
        limit("main_journal/out_of_round/service", "0.030 mm"),
        limit("main_journal/size/service", "59.900 mm"),
    ];
    let places = match route {
        RouteChoice::Plain => ["first/0", "first/90", "last/0", "last/90"],
        _ => ["first/0", "first/90", "last/45", "last/135"],
    };
    let at = places.map(|place| format!("main_journal/1/whole/{place}"));
    let all: Vec<_> = at
        .iter()
        .map(String::as_str)
        .zip(readings.iter().copied())
        .collect();
    measured(fields, &all)
}

const ROUND: [&str; 4] = ["59.981 mm", "59.980 mm", "59.980 mm", "59.981 mm"];
const OVAL: [&str; 4] = ["59.990 mm", "59.930 mm", "59.962 mm", "59.960 mm"];

#[test]
fn two_directions_never_prove_a_journal_round_but_may_prove_it_oval() {
    let oval = |readings, route| {
        let session = of_main(readings, route);
        verdict(
            &session,
            Kind::MainJournal,
            Quantity::OutOfRound,
            Which::Largest,
        )
    };
    assert_eq!(oval(&ROUND, RouteChoice::Standard), Verdict::WithinService);
    assert_eq!(oval(&ROUND, RouteChoice::Plain), Verdict::NotSeen);
    assert_eq!(oval(&OVAL, RouteChoice::Standard), Verdict::BeyondLimit);
    assert_eq!(oval(&OVAL, RouteChoice::Plain), Verdict::BeyondLimit);
    // What would show it is the other pair.
    let plain = of_main(&ROUND, RouteChoice::Plain);
    let finding = finding(
        &plain,
        Kind::MainJournal,
        Quantity::OutOfRound,
        Which::Largest,
    );
    let settle = finding.sure.unwrap().settle.unwrap();
    let Settle::Read(stations, _) = settle else {
        panic!("{settle:?}")
    };
    let stations: Vec<_> = stations
        .iter()
        .map(|(station, _)| station.to_string())
        .collect();
    assert_eq!(
        stations,
        [
            "main_journal/1/whole/first/45",
            "main_journal/1/whole/first/135"
        ]
    );
}

#[test]
fn following_the_advice_comes_to_an_end() {
    let mut document = document(vec![
        Field::Cylinders(1),
        Field::Mains(1),
        Field::Route(RouteChoice::Plain),
        limit("main_journal/size/service", "59.979 mm"),
        limit("main_journal/out_of_round/service", "0.004 mm"),
        limit("main_journal/taper/service", "0.003 mm"),
    ]);
    let mut read_so_far = 0;
    // Somebody who starts from the top each time, and reads much the same.
    while let Some(at) = next_open(
        &route(document.session(), &assess(document.session())),
        None,
    ) {
        let value = match at.kind {
            Kind::Bore => "82.010 mm",
            Kind::Piston => "81.960 mm",
            Kind::MainJournal => ["59.980 mm", "59.982 mm"][read_so_far % 2],
            _ => "49.980 mm",
        };
        read(&mut document, &[(at.to_string().as_str(), value)]);
        read_so_far += 1;
        assert!(read_so_far < 100, "asked without an end at {at}");
    }
    // The pair that nobody had seen was asked for as well.
    let turned = |(_, reading): &(_, &Reading)| reading.station.direction == Direction::D45;
    assert!(document.session().standing().any(|one| turned(&one)));
}

#[test]
fn too_little_clearance_in_doubt_is_not_to_be_assembled() {
    let clearance = |piston| {
        let fields = vec![
            Field::Cylinders(1),
            limit("piston/clearance/new_low", "0.030 mm"),
            limit("piston/clearance/new_high", "0.100 mm"),
            limit("piston/clearance/service", "0.300 mm"),
        ];
        let readings = [
            ("bore/1/whole/top/0", "82.000 mm"),
            ("piston/1/skirt/gauge_point/0", piston),
        ];
        let session = measured(fields, &readings);
        verdict(&session, Kind::Piston, Quantity::Clearance, Which::Smallest)
    };
    assert_eq!(clearance("81.960 mm"), Verdict::DoNotAssemble);
    assert_eq!(clearance("81.850 mm"), Verdict::WithinService);
    // Near the other limit it is only too close.
    assert_eq!(clearance("81.705 mm"), Verdict::TooClose);
    assert_eq!(clearance("82.100 mm"), Verdict::BeyondLimit);
}

fn near(readings: &[&str]) -> Session {
    let fields = vec![
        Field::Cylinders(1),
        limit("piston/size/service", "81.950 mm"),
    ];
    let all: Vec<_> = readings
        .iter()
        .map(|r| ("piston/1/skirt/gauge_point/0", *r))
        .collect();
    let mut document = document(fields);
    // A gauge that was checked, so that repeats can settle something.
    let session = document.session();
    let (gauge, ..) = session.gauge_for(Kind::Piston).unwrap();
    let standard = Indication::Size(length("75.000 mm"));
    let set = SetTo {
        against: Against::Standard,
        size: length("75.000 mm"),
        shows: standard,
        again: None,
        sense: Sense::PlusLarger,
    };
    let setting = Setting {
        set: Some(set),
        ..Setting::as_found(gauge)
    };
    document.dispatch(&Edit::AddSetting(setting)).unwrap();
    read(&mut document, &all);
    document.session().clone()
}

#[test]
fn repeats_are_asked_for_while_they_can_settle_and_then_the_shop() {
    let settle = |readings: &[&str]| {
        let session = near(readings);
        let finding = finding(&session, Kind::Piston, Quantity::Size, Which::Mean);
        finding.sure.unwrap().settle
    };
    let Some(Settle::Read(stations, _)) = settle(&["81.961 mm"]) else {
        panic!("{:?}", settle(&["81.961 mm"]))
    };
    assert!(
        stations
            .iter()
            .all(|(station, _)| station.kind == Kind::Piston)
    );
    assert_eq!(settle(&["82.000 mm"]), None, "nothing is open");
    assert_eq!(
        settle(&["81.960 mm"; 4]),
        Some(Settle::Shop),
        "two rounds more"
    );
    let finer = settle(&["81.951 mm"]);
    assert_eq!(finer, Some(Settle::FinerGauge(exact("0.001 mm"))));
}

#[test]
fn once_one_is_proved_beyond_only_the_most_worn_is_asked_about() {
    let fields = vec![
        Field::Cylinders(3),
        Field::Mains(3),
        Field::Route(RouteChoice::Plain),
        limit("main_journal/size/service", "59.950 mm"),
    ];
    let session = |third: &str| {
        let mut readings = Vec::new();
        for (position, size) in [(1, "59.953 mm"), (2, "59.948 mm"), (3, third)] {
            for place in ["first/0", "first/90", "last/0", "last/90"] {
                readings.push((
                    format!("main_journal/{position}/whole/{place}"),
                    size.to_owned(),
                ));
            }
        }
        let readings: Vec<_> = readings
            .iter()
            .map(|(a, b)| (a.as_str(), b.as_str()))
            .collect();
        measured(fields.clone(), &readings)
    };
    // The rest of the route comes first.
    let settling = |session: &Session| {
        let stops = route(session, &assess(session));
        stops.iter().any(|stop| matches!(stop.why, Why::Settle(..)))
    };
    assert!(!settling(&session("59.980 mm")));
    let worst = |session: &Session, position| {
        let key = FindingKey::new(
            feature(Kind::MainJournal, position),
            Quantity::Size,
            Which::Smallest,
        );
        assess(session).get(key).unwrap().decided()
    };
    assert_eq!(worst(&session("59.800 mm"), 3), Some(Verdict::BeyondLimit));
    assert_eq!(worst(&session("59.800 mm"), 2), Some(Verdict::TooClose));
}

#[test]
fn warmth_moves_the_value_and_a_check_makes_it_surer() {
    let sure = |fields: Vec<Field>| {
        let session = measured(fields, &[("piston/1/skirt/gauge_point/0", "81.960 mm")]);
        *finding(&session, Kind::Piston, Quantity::Size, Which::Mean)
            .sure
            .unwrap()
    };
    let mild = sure(vec![Field::Cylinders(1)]);
    assert_eq!(mild.measured.value(), exact("81.960 mm"));
    // 81.960 mm × (11.8 − 20.5) 1e-6 × 15, which is what the micrometer grew
    // less than the piston.
    let warm = sure(vec![
        Field::Cylinders(1),
        Field::Climate(Climate::Degrees(35_000)),
    ]);
    let moved = warm.measured.value() - mild.measured.value();
    assert_eq!(moved, Exact::new(-106_958, 1));
    let checked = near(&["81.960 mm"]);
    let checked = finding(&checked, Kind::Piston, Quantity::Size, Which::Mean);
    assert!(checked.sure.unwrap().combined.u() < mild.combined.u());
}

#[test]
fn five_equal_repeats_are_not_without_doubt() {
    let session = near(&["81.960 mm"; 5]);
    let sure = finding(&session, Kind::Piston, Quantity::Size, Which::Mean)
        .sure
        .unwrap();
    let least = Limits {
        service: Band::new(Some(exact("81.960 mm")), None),
        ..Limits::default()
    };
    assert!(Exact::ZERO < sure.guard);
    let at_the_limit = least.verdict(exact("81.960 mm"), sure.guard, false);
    assert_eq!(at_the_limit, Verdict::TooClose);
}

#[test]
fn a_scale_without_steps_proves_nothing() {
    let mut document = document(vec![
        Field::Cylinders(1),
        limit("piston/size/service", "81.000 mm"),
    ]);
    read(
        &mut document,
        &[("piston/1/skirt/gauge_point/0", "81.960 mm")],
    );
    let (id, gauge, _) = document.session().gauge_for(Kind::Piston).unwrap();
    let gauge = Gauge {
        graduation: length("0 mm"),
        ..gauge.clone()
    };
    // Refused at the door; a merged copy that has one all the same is only in
    // doubt.
    let refused = document.dispatch(&Edit::Gauge(id, gauge.clone()));
    let mut session = document.session().clone();
    if refused.is_err() {
        let register = session.gauges.get_mut(&id).unwrap();
        register.value = gauge;
    }
    let size = verdict(&session, Kind::Piston, Quantity::Size, Which::Mean);
    assert_eq!(size, Verdict::TooClose);
}

proptest! {
    #![proptest_config(config(64))]

    #[test]
    fn no_session_shows_what_is_no_number(acts in prop::collection::vec(act(), 0..40)) {
        let mut document = document(vec![]);
        for act in &acts {
            let _ = act.on(&mut document);
        }
        let session = document.session();
        let assessment = assess(session);
        for finding in &assessment.findings {
            let Some(sure) = &finding.sure else { continue };
            prop_assert!(sure.combined.u().is_finite() && !sure.combined.nu().is_nan());
            if let Some(conformity) = sure.conformity {
                prop_assert!((0.0..=1.0).contains(&conformity.value()));
            }
        }
        let shown = format!("{:?}", findings(session, &assessment));
        let told = report::json(session, &assessment).unwrap();
        for text in [shown, told] {
            prop_assert!(!text.contains("NaN") && !text.contains("inf "), "{text}");
        }
    }
}
