//! Oil clearances by arithmetic, directly and by strip.

use fenderbench::assess::{
    Cause, Detail, Finding, FindingKey, Settle, TwoWays, Way, Which, assess,
};
use fenderbench::present;
use fenderbench::quantity::Exact;
use fenderbench::report;
use fenderbench::session::{
    Against, Counting, Edit, Feature, Field, Gauge, GaugeKind, Indication, Kind, Quantity, Sense,
    Session, SetTo, Setting,
};
use fenderbench::verdict::Verdict;

use crate::golden::golden;
use crate::make::{INCH, document, exact, feature, length, limit, read, reading, station};

const MAIN: Feature = Feature {
    kind: Kind::MainShell,
    position: 1,
};
const ROD: Feature = Feature {
    kind: Kind::RodShell,
    position: 1,
};

/// A session in which every kind has its gauge, with these readings.
pub fn measured(fields: Vec<Field>, readings: &[(&str, &str)]) -> Session {
    let mut document = document(fields);
    for (at, _) in readings {
        let kind = station(at).kind;
        if document.session().gauge_for(kind).is_none() {
            let edit = document.session().ask_for(kind, true);
            document.dispatch(&edit).unwrap();
        }
    }
    read(&mut document, readings);
    document.session().clone()
}

fn finding(session: &Session, of: Feature, which: Which) -> Option<Finding> {
    let key = FindingKey::new(of, Quantity::Clearance, which);
    assess(session).get(key).cloned()
}

fn by(session: &Session, of: Feature, way: Way) -> Option<Exact> {
    finding(session, of, Which::By(way))?.value()
}

/// A main bearing with these sizes.
fn parts<'a>(
    housing: &'a str,
    upper: &'a str,
    lower: &'a str,
    journal: &'a str,
) -> Vec<(&'a str, &'a str)> {
    vec![
        ("main_housing/1/whole/first/0", housing),
        ("main_shell/1/upper/first/0", upper),
        ("main_shell/1/lower/first/0", lower),
        ("main_journal/1/whole/first/0", journal),
    ]
}

fn usual() -> Vec<(&'static str, &'static str)> {
    parts("2.6910 in", "0.0945 in", "0.0945 in", "2.4995 in")
}

fn inches() -> Vec<Field> {
    vec![
        Field::Cylinders(2),
        Field::Mains(2),
        Field::DisplayUnit(INCH),
    ]
}

#[test]
fn arithmetic_is_that_of_the_table() {
    for row in golden!("shell_clearances.csv") {
        let columns = ["housing", "upper", "lower", "journal", "clearance"];
        let [housing, upper, lower, journal, clearance] =
            columns.map(|column| format!("{} in", row.get(column)));
        let session = measured(inches(), &parts(&housing, &upper, &lower, &journal));
        let expected = Some(exact(&clearance));
        assert_eq!(by(&session, MAIN, Way::Parts), expected, "{}", row.place());
        let surest = finding(&session, MAIN, Which::Surest).unwrap();
        assert_eq!(surest.value(), expected, "{}", row.place());
    }
}

#[test]
fn only_what_is_square_to_the_joint_counts_and_the_mean_of_the_journal() {
    let mut readings = usual();
    readings.extend([
        ("main_housing/1/whole/first/60", "2.6950 in"),
        ("main_housing/1/whole/last/0", "2.6912 in"),
        ("main_shell/1/upper/last/0", "0.0947 in"),
        ("main_journal/1/whole/first/90", "2.4991 in"),
    ]);
    let session = measured(inches(), &readings);
    // 2.6911 - 0.0946 - 0.0945 - 2.4993
    assert_eq!(by(&session, MAIN, Way::Parts), Some(exact("0.0027 in")));
}

#[test]
fn each_way_is_told_that_was_taken_and_the_surest_decides() {
    let mut readings = usual();
    readings.push(("main_fitted/1/whole/first/0", "2.5021 in"));
    readings.push(("main_fitted/1/whole/first/60", "2.5060 in"));
    readings.push(("main_strip/1/whole/centre/0", "0.0020 in"));
    let mut fields = inches();
    fields.push(limit("main_shell/clearance/service", "0.0060 in"));
    let session = measured(fields, &readings);
    let ways = [Way::Parts, Way::Fitted, Way::Strip].map(|way| by(&session, MAIN, way));
    let expected = ["0.0025 in", "0.0026 in", "0.0020 in"].map(|text| Some(exact(text)));
    assert_eq!(ways, expected);
    // Gauges that nobody checked are in the first two, not in the strip.
    let surest = finding(&session, MAIN, Which::Surest).unwrap();
    assert_eq!(surest.value(), expected[2]);
    assert_eq!(surest.decided(), Some(Verdict::WithinService));
    let parts = finding(&session, MAIN, Which::By(Way::Parts)).unwrap();
    assert_eq!(parts.decided(), None);
    let guard = |finding: &Finding| finding.sure.as_ref().unwrap().guard;
    assert!(guard(&surest) < guard(&parts));
    let fitted = finding(&session, MAIN, Which::By(Way::Fitted)).unwrap();
    assert!(
        guard(&fitted) < guard(&parts),
        "three parts fewer and no crush"
    );
    // The other bearing has none, and nobody asked for its walls.
    let second = finding(&session, feature(Kind::MainShell, 2), Which::Surest).unwrap();
    assert_eq!(second.value(), None);
    assert!(
        second
            .missing
            .contains(&station("main_housing/2/whole/first/0"))
    );
    assert!(
        !second
            .missing
            .contains(&station("main_housing/2/whole/first/60"))
    );
}

#[test]
fn a_strip_alone_tells_a_clearance() {
    let session = measured(inches(), &[("rod_strip/2/whole/centre/0", "0.0020 in")]);
    let second = feature(Kind::RodShell, 2);
    assert_eq!(by(&session, second, Way::Strip), Some(exact("0.0020 in")));
    assert_eq!(finding(&session, ROD, Which::Surest), None);
    let view = present::findings(&session, &assess(&session));
    assert!(view.kinds.iter().any(|kind| kind.kind == Kind::RodShell));
}

#[test]
fn what_the_readings_share_cancels_and_the_crush_is_in_the_arithmetic_alone() {
    let mut readings = usual();
    readings.push(("main_fitted/1/whole/first/0", "2.5021 in"));
    readings.push(("main_strip/1/whole/centre/0", "0.0025 in"));
    let session = measured(inches(), &readings);
    let assessment = assess(&session);
    let causes = |way| {
        let key = FindingKey::new(MAIN, Quantity::Clearance, Which::By(way));
        let sure = assessment.get(key).unwrap().sure.clone().unwrap();
        let causes = sure.measured.terms().iter();
        let cause = |(draw, _): &(fenderbench::uncertainty::Draw, f64)| {
            assessment.doubts.cause(draw.source).unwrap()
        };
        causes.map(cause).collect::<Vec<_>>()
    };
    let crush = Cause::Crush(Kind::MainShell);
    assert!(causes(Way::Parts).contains(&crush));
    assert!(!causes(Way::Fitted).contains(&crush));
    // Of a strip nothing but hand and scale.
    let strip = causes(Way::Strip);
    assert!(matches!(
        strip[..],
        [Cause::Repeatability(..), Cause::Resolution(_)]
            | [Cause::Resolution(_), Cause::Repeatability(..)]
    ));
    let bore = Cause::PartGrowth(Kind::MainHousing);
    assert!(
        causes(Way::Fitted).contains(&bore),
        "it grows as its housing"
    );
}

#[test]
fn two_rods_on_a_throw_share_its_journal() {
    let clearance = |counting, second: &str| {
        let mut fields = inches();
        fields.extend([
            Field::Cylinders(4),
            Field::RodsPerThrow(2),
            Field::Counting(counting),
        ]);
        let readings = [
            ("rod_journal/1/whole/first/0", "2.0000 in"),
            ("rod_journal/2/whole/first/0", "1.9900 in"),
            ("rod_fitted/1/whole/first/0", "2.0020 in"),
            (second, "2.0023 in"),
        ];
        let session = measured(fields, &readings);
        let second = feature(Kind::RodShell, Feature::of(station(second)).position);
        [ROD, second].map(|rod| by(&session, rod, Way::Fitted))
    };
    let expected = ["0.0020 in", "0.0023 in"].map(|text| Some(exact(text)));
    let found = clearance(Counting::Across, "rod_fitted/2/whole/first/0");
    assert_eq!(found, expected);
    let found = clearance(Counting::AlongBanks, "rod_fitted/3/whole/first/0");
    assert_eq!(found, expected);
}

#[test]
fn a_gauge_set_on_the_journal_reads_the_clearance_itself() {
    let mut document = document(inches());
    let journal = feature(Kind::MainJournal, 1);
    read(
        &mut document,
        &[("main_journal/1/whole/first/0", "2.4995 in")],
    );
    let gauge = Gauge::usual(GaugeKind::DialBoreGauge, INCH).unwrap();
    document.dispatch(&Edit::AddGauge(gauge)).unwrap();
    let mut gauges = document.session().gauges.iter();
    let is_dial = |kind| kind == GaugeKind::DialBoreGauge;
    let dial = gauges.find(|(_, gauge)| is_dial(gauge.value.kind));
    let dial = *dial.unwrap().0;
    let zero = || {
        Indication::Deviation(fenderbench::quantity::EnteredDeviation::parse("0", INCH).unwrap())
    };
    let set = SetTo {
        against: Against::Feature(journal),
        size: length("2.5000 in"),
        shows: zero(),
        again: None,
        sense: Sense::PlusLarger,
    };
    let setting = Setting {
        set: Some(set),
        ..Setting::as_found(dial)
    };
    document.dispatch(&Edit::AddSetting(setting)).unwrap();
    let setting = document.session().setting_of(dial).unwrap();
    let by = fenderbench::quantity::EnteredDeviation::parse("0.0022", INCH).unwrap();
    let at = station("main_fitted/1/whole/first/0");
    let mut fitted = reading(document.session(), at, Indication::Deviation(by));
    (fitted.gauge, fitted.setting) = (dial, setting);
    document.dispatch(&Edit::Add(fitted)).unwrap();
    let session = document.session();
    let direct = finding(session, MAIN, Which::By(Way::Fitted)).unwrap();
    // Not 2.5022 less the 2.4995 that another micrometer read.
    assert_eq!(direct.value(), Some(exact("0.0022 in")));
    let assessment = assess(session);
    let terms = direct.sure.unwrap().measured;
    let causes = terms.terms().iter();
    let mut causes = causes.map(|(draw, _)| assessment.doubts.cause(draw.source).unwrap());
    assert!(causes.all(|cause| !matches!(cause, Cause::Setting(_) | Cause::AsFound(_))));
}

fn two_ways(session: &Session) -> TwoWays {
    match finding(session, MAIN, Which::Surest).unwrap().detail {
        Some(Detail::TwoWays(two)) => two,
        other => panic!("{other:?}"),
    }
}

#[test]
fn ways_that_differ_by_more_than_their_doubts_prove_nothing() {
    let with_strip = |strip: &'static str, again: bool| {
        let mut readings = usual();
        readings.push(("main_strip/1/whole/centre/0", strip));
        let mut fields = inches();
        fields.push(limit("main_shell/clearance/service", "0.0080 in"));
        if again {
            readings.extend(readings.clone());
        }
        measured(fields, &readings)
    };
    let near = with_strip("0.0020 in", false);
    assert!(two_ways(&near).agree());
    assert_eq!(two_ways(&near).apart, exact("0.0005 in"));
    let decided = |session: &Session| finding(session, MAIN, Which::Surest).unwrap().decided();
    assert_eq!(decided(&near), Some(Verdict::WithinService));
    let far = with_strip("0.0060 in", false);
    let two = two_ways(&far);
    assert!(!two.agree());
    assert!(two.allowed < exact("0.0035 in"), "{two:?}");
    assert_eq!(decided(&far), Some(Verdict::DoNotAssemble));
    let settle = |session: &Session| {
        let sure = finding(session, MAIN, Which::Surest).unwrap().sure.unwrap();
        sure.settle
    };
    let Some(Settle::Read(stations, false)) = settle(&far) else {
        panic!("{:?}", settle(&far))
    };
    assert_eq!(stations.len(), 5, "all five places once more");
    assert_eq!(settle(&with_strip("0.0060 in", true)), Some(Settle::Shop));
    let json = report::json(&far, &assess(&far)).unwrap();
    assert!(json.contains("\"which\": \"by/strip\""));
    assert!(json.contains("\"which\": \"surest\""));
    assert!(json.contains("\"agree\": false"));
}

#[test]
fn an_impossible_clearance_leads_to_its_causes_in_order() {
    let of = |journal: &'static str| {
        let session = measured(
            inches(),
            &parts("2.6910 in", "0.0945 in", "0.0945 in", journal),
        );
        finding(&session, MAIN, Which::Surest).unwrap().detail
    };
    // One turn of the thimble either way; an undersize journal in shells of
    // the standard size.
    assert_eq!(of("2.5245 in"), Some(Detail::Impossible));
    assert_eq!(of("2.4745 in"), Some(Detail::Impossible));
    assert_eq!(of("2.4895 in"), Some(Detail::Impossible));
    assert_eq!(of("2.4950 in"), None);
    let session = measured(
        inches(),
        &parts("2.6910 in", "0.0945 in", "0.0945 in", "2.5245 in"),
    );
    let view = present::findings(&session, &assess(&session));
    let shells = view.kinds.iter().find(|kind| kind.kind == Kind::MainShell);
    let notes = shells.unwrap().features[0].rows.iter();
    let note = notes.filter_map(|row| row.note.clone()).next().unwrap();
    let places = fenderbench::remedy::IMPOSSIBLE_CLEARANCE.map(|cause| note.find(cause).unwrap());
    assert!(places.is_sorted());
    let json = report::json(&session, &assess(&session)).unwrap();
    assert!(json.contains("one turn of the thimble"));
}
