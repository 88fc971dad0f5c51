//! Run-out, rings, flat faces and plays: what is read as an amount.

use fenderbench::assess::{Cause, Detail, Finding, FindingKey, GuideWord, TwoWays, Which, assess};
use fenderbench::quantity::Exact;
use fenderbench::session::{Direction, Field, Kind, Level, Quantity, Session};
use fenderbench::verdict::Verdict;

use crate::features::{found, inches, value};
use crate::golden::golden;
use crate::make::{exact, feature, limit, station};
use crate::oil::measured;

/// Two mains that swing so far, with their high spots at these hours.
fn swinging(first: &str, second: &str, spots: [Option<u8>; 2], more: Vec<Field>) -> Session {
    let mut fields = inches();
    for (main, spot) in (1..).zip(spots) {
        fields.push(Field::HighSpot(main, spot));
    }
    fields.extend(more);
    let readings = [
        ("run_out/1/whole/centre/0", first),
        ("run_out/2/whole/centre/0", second),
    ];
    measured(fields, &readings)
}

#[test]
fn neighbours_are_off_each_other_by_their_vectors() {
    let second = feature(Kind::RunOut, 2);
    let apart =
        |session: &Session| found(session, second, Quantity::Alignment, Which::Largest).unwrap();
    for row in golden!("run_outs.csv") {
        let inches = |column| format!("{} in", row.get(column));
        let hours = u8::try_from(row.whole("hours")).unwrap();
        let spots = [Some(12), Some(if hours == 0 { 12 } else { hours })];
        let session = swinging(&inches("first"), &inches("second"), spots, vec![]);
        let off = apart(&session).value().unwrap() - exact(&inches("apart"));
        assert!(off.abs() <= exact("0.000005 in"), "{}", row.place());
    }
    // Without an hour nobody knows which way.
    let session = swinging("0.0020 in", "0.0020 in", [Some(12), None], vec![]);
    assert_eq!(apart(&session).value(), None);
    let bend = value(&session, second, Quantity::Bend, Which::Largest);
    assert_eq!(bend, Some(exact("0.0010 in")), "half of what swings");
    let still = swinging("0.0000 in", "0.0020 in", [None, None], vec![]);
    assert_eq!(apart(&still).value(), Some(exact("0.0010 in")));
    let first = feature(Kind::RunOut, 1);
    let none = found(&session, first, Quantity::Alignment, Which::Largest);
    assert!(none.is_none(), "nothing is before the first");
}

#[test]
fn the_hour_is_in_the_doubt_of_an_alignment_and_its_limit_decides() {
    let second = feature(Kind::RunOut, 2);
    let decided = |allowed: &str, swing: &str| {
        let more = vec![limit("run_out/alignment/service", allowed)];
        let session = swinging(swing, swing, [Some(12), Some(3)], more);
        found(&session, second, Quantity::Alignment, Which::Largest).unwrap()
    };
    let within = decided("0.0050 in", "0.0020 in");
    assert_eq!(within.decided(), Some(Verdict::WithinService));
    assert_eq!(
        decided("0.0015 in", "0.0020 in").decided(),
        Some(Verdict::TooClose)
    );
    let beyond = decided("0.0010 in", "0.0060 in");
    assert_eq!(beyond.decided(), Some(Verdict::BeyondLimit));
    assert_eq!(within.detail, Some(Detail::Root(false)));
    // Two halves of 0.0005 in at 95 %, and of an hour half the swing by 15°.
    let session = swinging("0.0060 in", "0.0060 in", [Some(12), Some(3)], vec![]);
    let assessment = assess(&session);
    let key = FindingKey::new(second, Quantity::Alignment, Which::Largest);
    let sure = assessment.get(key).unwrap().sure.clone().unwrap();
    let cause = |draw: fenderbench::uncertainty::Draw| assessment.doubts.cause(draw.source);
    let causes: Vec<_> = sure
        .measured
        .terms()
        .iter()
        .map(|(draw, _)| cause(*draw))
        .collect();
    assert!(causes.contains(&Some(Cause::HighSpot)));
    assert!(within.sure.unwrap().combined.u() < sure.combined.u());
}

#[test]
fn two_gaps_of_a_ring_check_the_taper_of_its_bore() {
    let taper = |bore: &'static str| {
        let readings = [
            ("top_ring_gap/1/whole/top/0", "0.0220 in"),
            ("top_ring_gap/1/whole/bottom/0", "0.0160 in"),
            ("bore/1/whole/top/0", bore),
            ("bore/1/whole/bottom/0", "4.0010 in"),
        ];
        let session = measured(inches(), &readings);
        let ring = feature(Kind::TopRingGap, 1);
        found(&session, ring, Quantity::Taper, Which::Along(None)).unwrap()
    };
    let finding = taper("4.0029 in");
    // 0.006 in of gap are 0.0019 in of taper.
    let off = finding.value().unwrap() - exact("0.0019 in");
    assert!(off.abs() < exact("0.00005 in"));
    let two = |finding: &Finding| match finding.detail {
        Some(Detail::TwoWays(two)) => two,
        other => panic!("{other:?}"),
    };
    assert!(two(&finding).agree());
    let far: TwoWays = two(&taper("4.0129 in"));
    assert!(!far.agree(), "{far:?}");
}

#[test]
fn a_gap_is_held_against_its_bore_by_use() {
    let word = |machine_use, gap: &str| {
        let mut fields = inches();
        fields.push(Field::Use(machine_use));
        let bore = crate::make::length("4.0000 in");
        fields.push(Field::Nominal(Kind::Bore, Some(bore)));
        let session = measured(fields, &[("top_ring_gap/1/whole/bottom/0", gap)]);
        let ring = feature(Kind::TopRingGap, 1);
        let smallest = found(&session, ring, Quantity::Size, Which::Smallest).unwrap();
        assert_eq!(smallest.value(), Some(exact(gap)), "as it was read");
        smallest.guide.unwrap().word
    };
    use fenderbench::session::Use::{Boosted, Street};
    assert_eq!(word(Street, "0.0160 in"), GuideWord::InsideStrictest);
    assert_eq!(word(Street, "0.0159 in"), GuideWord::RulesDisagree);
    assert_eq!(word(Street, "0.0119 in"), GuideWord::OutsideLoosest);
    assert_eq!(word(Street, "0.0321 in"), GuideWord::OutsideLoosest);
    assert_eq!(word(Boosted, "0.0160 in"), GuideWord::RulesDisagree);
    assert_eq!(word(Boosted, "0.0220 in"), GuideWord::InsideStrictest);
}

#[test]
fn a_face_is_as_flat_as_its_worst_line_and_twisted_by_its_diagonals() {
    let readings = [
        ("deck/1/whole/inlet_edge/0", "0.002 in"),
        ("deck/1/whole/exhaust_edge/0", "0.000 in"),
        ("deck/1/whole/diagonal/0", "0.004 in"),
        ("deck/1/whole/other_diagonal/0", "0.001 in"),
    ];
    let session = measured(inches(), &readings);
    let deck = feature(Kind::Deck, 1);
    let worst = found(&session, deck, Quantity::Size, Which::Largest).unwrap();
    assert_eq!(worst.value(), Some(exact("0.004 in")));
    let ends = ["first_edge", "last_edge"].map(|end| station(&format!("deck/1/whole/{end}/0")));
    assert_eq!(worst.missing, ends);
    let twist = value(&session, deck, Quantity::Twist, Which::Largest);
    assert_eq!(twist, Some(exact("0.003 in")));
    let line = Which::At(Level::ExhaustEdge, Direction::D0);
    assert_eq!(
        value(&session, deck, Quantity::Size, line),
        Some(Exact::ZERO)
    );
    assert_eq!(value(&session, deck, Quantity::Size, Which::Mean), None);
}

#[test]
fn rod_side_clearance_goes_by_the_rods_on_a_throw() {
    let word = |rods| {
        let mut fields = inches();
        fields.push(Field::RodsPerThrow(rods));
        let session = measured(fields, &[("rod_side/1/whole/centre/0", "0.018 in")]);
        let side = feature(Kind::RodSide, 1);
        let mean = found(&session, side, Quantity::Size, Which::Mean).unwrap();
        mean.guide.unwrap().word
    };
    assert_eq!(word(1), GuideWord::OutsideLoosest);
    assert_eq!(word(2), GuideWord::InsideStrictest);
}

#[test]
fn an_oil_clearance_goes_by_the_diameter_of_its_journal() {
    use fenderbench::session::Use::{Street, Track};
    let rules = |machine_use| {
        let mut fields = inches();
        fields.push(Field::Use(machine_use));
        let readings = [
            ("main_strip/1/whole/centre/0", "0.0020 in"),
            ("main_journal/1/whole/first/0", "2.0000 in"),
        ];
        let session = measured(fields, &readings);
        let shell = feature(Kind::MainShell, 1);
        let found = found(&session, shell, Quantity::Clearance, Which::Surest).unwrap();
        let rule = found.guide.unwrap().rules.remove(0);
        (rule.low, rule.high)
    };
    assert_eq!(rules(Street), (exact("0.0015 in"), exact("0.0025 in")));
    assert_eq!(rules(Track), (exact("0.0020 in"), exact("0.0030 in")));
}

#[test]
fn an_amount_has_no_error_of_a_micrometer_and_does_not_grow() {
    let readings = [
        ("end_play/1/whole/centre/0", "0.006 in"),
        ("end_play/1/whole/centre/0", "0.006 in"),
        ("end_play/1/whole/centre/0", "0.006 in"),
        ("end_play/1/whole/centre/0", "0.006 in"),
        ("end_play/1/whole/centre/0", "0.006 in"),
    ];
    let mut fields = inches();
    fields.push(Field::Climate(fenderbench::uncertainty::Climate::Hot));
    let session = measured(fields, &readings);
    let assessment = assess(&session);
    let key = FindingKey::new(feature(Kind::EndPlay, 1), Quantity::Size, Which::Mean);
    let sure = assessment.get(key).unwrap().sure.clone().unwrap();
    assert_eq!(sure.measured.value(), exact("0.006 in"));
    for (draw, _) in sure.measured.terms() {
        let cause = assessment.doubts.cause(draw.source).unwrap();
        let by_hand = matches!(cause, Cause::Repeatability(..) | Cause::Resolution(_));
        assert!(by_hand, "{cause:?}");
    }
    // Five equal repeats do not take the place of what is usual.
    assert!(exact("0.0001 in") < sure.guard);
}
