//! Housings, shells and pins.

use fenderbench::assess::{Finding, FindingKey, GuideWord, Settle, Which, assess};
use fenderbench::present::{findings, next_open, route};
use fenderbench::quantity::Exact;
use fenderbench::session::{
    Direction, Feature, Field, Kind, Level, Quantity, RouteChoice, Session,
};
use fenderbench::verdict::Verdict;

use crate::make::{INCH, document, exact, feature, limit, read, station};
use crate::oil::measured;

pub fn found(session: &Session, of: Feature, quantity: Quantity, which: Which) -> Option<Finding> {
    let key = FindingKey::new(of, quantity, which);
    assess(session).get(key).cloned()
}

pub fn value(session: &Session, of: Feature, quantity: Quantity, which: Which) -> Option<Exact> {
    found(session, of, quantity, which)?.value()
}

pub fn inches() -> Vec<Field> {
    vec![
        Field::Cylinders(4),
        Field::Mains(3),
        Field::DisplayUnit(INCH),
    ]
}

const HOUSING: Feature = Feature {
    kind: Kind::MainHousing,
    position: 1,
};

#[test]
fn a_housing_that_is_longer_square_to_the_joint_is_above_zero() {
    let readings = [
        ("main_housing/1/whole/first/0", "2.6914 in"),
        ("main_housing/1/whole/first/60", "2.6910 in"),
        ("main_housing/1/whole/first/120", "2.6911 in"),
        ("main_housing/1/whole/last/0", "2.6911 in"),
    ];
    let session = measured(inches(), &readings);
    let of = |quantity, which| value(&session, HOUSING, quantity, which);
    let at = |direction| of(Quantity::OutOfRound, Which::At(Level::First, direction));
    assert_eq!(at(Direction::D60), Some(exact("0.0004 in")));
    assert_eq!(at(Direction::D120), Some(exact("0.0003 in")));
    let worst = of(Quantity::OutOfRound, Which::Largest);
    assert_eq!(worst, Some(exact("0.0004 in")));
    let taper = of(Quantity::Taper, Which::Largest);
    assert_eq!(taper, Some(exact("0.0003 in")));
    assert_eq!(of(Quantity::Size, Which::Largest), Some(exact("2.6914 in")));
    let view = findings(&session, &assess(&session));
    let housing = view
        .kinds
        .iter()
        .find(|kind| kind.kind == Kind::MainHousing);
    let rows = &housing.unwrap().features[0].rows;
    let sense = rows.iter().filter_map(|row| row.sense.as_deref()).next();
    assert_eq!(sense, Some("longer square to the joint"));
}

#[test]
fn the_larger_amount_is_the_worst_whichever_way_it_goes() {
    let readings = [
        ("big_end/1/whole/first/0", "2.1250 in"),
        ("big_end/1/whole/first/60", "2.1248 in"),
        ("big_end/1/whole/first/120", "2.1258 in"),
        ("big_end/1/whole/last/60", "2.1290 in"),
    ];
    let session = measured(inches(), &readings);
    let rod = feature(Kind::BigEnd, 1);
    let worst = found(&session, rod, Quantity::OutOfRound, Which::Largest).unwrap();
    assert_eq!(worst.value(), Some(exact("-0.0008 in")));
    // Allowed where it is longer near the joint, not where it is stretched.
    let word = |finding: &Finding| finding.guide.as_ref().unwrap().word;
    assert_eq!(word(&worst), GuideWord::RulesDisagree);
    let stretched = measured(
        inches(),
        &[
            ("big_end/1/whole/first/0", "2.1258 in"),
            ("big_end/1/whole/first/60", "2.1250 in"),
        ],
    );
    let worst = found(&stretched, rod, Quantity::OutOfRound, Which::Largest).unwrap();
    assert_eq!(word(&worst), GuideWord::OutsideLoosest);
}

#[test]
fn one_side_of_the_joint_proves_no_housing_round() {
    let housing = |near: &[(&'static str, &'static str)]| {
        let mut readings = vec![("main_housing/1/whole/first/0", "2.6910 in")];
        readings.extend(near);
        let mut fields = inches();
        fields.push(limit("main_housing/out_of_round/service", "0.0100 in"));
        let session = measured(fields, &readings);
        found(&session, HOUSING, Quantity::OutOfRound, Which::Largest).unwrap()
    };
    let one = ("main_housing/1/whole/first/60", "2.6910 in");
    let other = ("main_housing/1/whole/first/120", "2.6910 in");
    let half_seen = housing(&[one]);
    assert_eq!(half_seen.decided(), Some(Verdict::NotSeen));
    let settle = half_seen.sure.unwrap().settle;
    assert_eq!(
        settle,
        Some(Settle::Read(vec![(station(other.0), 1)], false))
    );
    assert_eq!(
        housing(&[one, other]).decided(),
        Some(Verdict::WithinService)
    );
    let stretched = ("main_housing/1/whole/first/120", "2.6600 in");
    assert_eq!(housing(&[stretched]).decided(), Some(Verdict::BeyondLimit));
    assert_eq!(housing(&[]).value(), None);
    assert_eq!(housing(&[]).missing, [station(one.0), station(other.0)]);
}

#[test]
fn a_shell_tells_its_walls() {
    let readings = [
        ("rod_shell/1/upper/first/0", "0.0610 in"),
        ("rod_shell/1/lower/first/0", "0.0606 in"),
    ];
    let session = measured(inches(), &readings);
    let wall = |which| value(&session, feature(Kind::RodShell, 1), Quantity::Size, which);
    assert_eq!(wall(Which::Mean), Some(exact("0.0608 in")));
    assert_eq!(wall(Which::Smallest), Some(exact("0.0606 in")));
}

#[test]
fn fitted_shells_are_told_square_to_the_joint_only() {
    let readings = [
        ("main_fitted/1/whole/first/0", "2.5020 in"),
        ("main_fitted/1/whole/first/60", "2.5050 in"),
    ];
    let session = measured(inches(), &readings);
    let fitted = feature(Kind::MainFitted, 1);
    let of = |which| value(&session, fitted, Quantity::Size, which);
    assert_eq!(of(Which::Mean), Some(exact("2.5020 in")));
    assert_eq!(of(Which::Largest), None);
}

#[test]
fn a_pin_is_held_against_both_its_bores() {
    let readings = [
        ("pin/2/whole/first/0", "0.9272 in"),
        ("pin/2/whole/last/0", "0.9270 in"),
        ("pin_bore/2/whole/first/0", "0.9275 in"),
        ("pin_bore/2/whole/first/90", "0.9276 in"),
        ("pin_bore/2/whole/last/0", "0.9274 in"),
        ("small_end/2/whole/first/0", "0.9260 in"),
    ];
    let session = measured(inches(), &readings);
    let of = |kind, quantity, which| value(&session, feature(kind, 2), quantity, which);
    let in_piston = |which| of(Kind::PinBore, Quantity::Clearance, which);
    assert_eq!(in_piston(Which::Smallest), Some(exact("0.0003 in")));
    assert_eq!(in_piston(Which::Largest), Some(exact("0.0005 in")));
    let round = |kind| of(kind, Quantity::OutOfRound, Which::Largest);
    assert_eq!(round(Kind::PinBore), Some(exact("-0.0001 in")));
    let taper = of(Kind::Pin, Quantity::Taper, Which::Largest);
    assert_eq!(taper, Some(exact("0.0002 in")));
    // A pin may be pressed into its rod, so that is not impossible.
    let rod = found(
        &session,
        feature(Kind::SmallEnd, 2),
        Quantity::Clearance,
        Which::Smallest,
    );
    let rod = rod.unwrap();
    assert_eq!((rod.value(), rod.detail), (Some(exact("-0.0011 in")), None));
    // Of pins two directions are not asked for, so nothing is missed.
    assert_eq!(round(Kind::Pin), None);
    let pin = feature(Kind::Pin, 2);
    let told = assess(&session);
    assert!(told.of(pin).all(|f| f.key.quantity != Quantity::OutOfRound));
}

#[test]
fn bores_for_pins_say_nothing_of_clearance_where_no_pin_is_measured() {
    let session = measured(inches(), &[("pin_bore/1/whole/first/0", "0.9275 in")]);
    let told = assess(&session);
    let mut of_bore = told.of(feature(Kind::PinBore, 1));
    assert!(of_bore.all(|finding| finding.key.quantity != Quantity::Clearance));
}

#[test]
fn a_pin_has_a_barrel_as_a_journal_has() {
    let readings = [
        ("pin/1/whole/first/0", "2.4990 in"),
        ("pin/1/whole/centre/0", "2.4995 in"),
        ("pin/1/whole/last/0", "2.4990 in"),
    ];
    let session = measured(inches(), &readings);
    let barrel = Which::Along(None);
    let pin = feature(Kind::Pin, 1);
    let found = value(&session, pin, Quantity::Barrel, barrel);
    assert_eq!(found, Some(exact("0.0005 in")));
}

#[test]
fn only_kinds_that_are_asked_for_or_were_read_are_told() {
    let session = measured(inches(), &[("deck/1/whole/diagonal/0", "0.001 in")]);
    let usual = [
        Kind::Bore,
        Kind::Piston,
        Kind::MainJournal,
        Kind::RodJournal,
        Kind::Deck,
    ];
    for finding in assess(&session).findings {
        assert!(
            usual.contains(&finding.key.feature.kind),
            "{:?}",
            finding.key
        );
    }
}

#[test]
fn every_kind_that_is_asked_for_is_told_even_unread() {
    for route in [
        RouteChoice::Standard,
        RouteChoice::Fuller,
        RouteChoice::Plain,
    ] {
        let mut fields = inches();
        fields.push(Field::Route(route));
        fields.extend(Kind::ALL.map(|kind| Field::Measure(kind, true)));
        let session = measured(fields, &[]);
        let assessment = assess(&session);
        for feature in session.features() {
            let mut told = assessment.of(feature).peekable();
            assert!(told.peek().is_some(), "{feature}");
            assert!(told.all(|finding| finding.value().is_none()), "{feature}");
        }
        let mut keys: Vec<_> = assessment.findings.iter().map(|f| f.key).collect();
        let all = keys.len();
        keys.sort_unstable();
        keys.dedup();
        assert_eq!(keys.len(), all, "each key once");
    }
}

#[test]
fn following_the_advice_comes_to_an_end_for_every_kind() {
    let limits = [
        ("main_shell/clearance/service", "0.040 mm"),
        ("rod_shell/clearance/service", "0.060 mm"),
        ("main_housing/out_of_round/service", "0.003 mm"),
        ("big_end/size/new_high", "53.996 mm"),
        ("pin_bore/clearance/service", "0.020 mm"),
        ("run_out/size/service", "0.050 mm"),
        ("run_out/alignment/service", "0.030 mm"),
        ("end_play/size/service", "0.050 mm"),
        ("deck/size/service", "0.050 mm"),
        ("top_ring_gap/size/service", "0.051 mm"),
    ];
    let mut fields = vec![Field::Cylinders(1), Field::Mains(2)];
    fields.extend([1, 2].map(|main| Field::HighSpot(main, Some(3 * main))));
    fields.extend(limits.map(|(key, text)| limit(key, text)));
    let mut document = document(fields);
    for kind in Kind::ALL {
        let ask = document.session().ask_for(kind, true);
        document.dispatch(&ask).unwrap();
    }
    let mut so_far = 0;
    let next = |session: &Session| next_open(&route(session, &assess(session)), None);
    while let Some(at) = next(document.session()) {
        let value = match at.kind {
            Kind::Bore => "82.010 mm",
            Kind::Piston => "81.960 mm",
            Kind::MainJournal => ["59.980 mm", "59.982 mm"][so_far % 2],
            Kind::RodJournal => "49.980 mm",
            Kind::MainHousing => ["64.020 mm", "64.022 mm"][so_far % 2],
            Kind::MainFitted => "60.021 mm",
            Kind::BigEnd => "53.995 mm",
            Kind::MainShell | Kind::RodShell => "2.000 mm",
            Kind::RodFitted => "50.040 mm",
            Kind::Pin => "22.000 mm",
            Kind::PinBore | Kind::SmallEnd => "22.019 mm",
            // What two ways read of the mains lies far apart.
            Kind::MainStrip => "0.250 mm",
            _ => "0.050 mm",
        };
        read(&mut document, &[(at.to_string().as_str(), value)]);
        so_far += 1;
        assert!(so_far < 400, "asked without an end at {at}");
    }
    let session = document.session();
    let main = feature(Kind::MainShell, 1);
    let surest = found(session, main, Quantity::Clearance, Which::Surest).unwrap();
    assert_eq!(surest.decided(), Some(Verdict::DoNotAssemble));
    assert_eq!(surest.sure.unwrap().settle, Some(Settle::Shop));
}
