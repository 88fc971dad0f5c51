//! The V-twin of a quarry loader, in inches, hard used and with a spun
//! bearing, complete on the fuller route but for its repeats.
//!
//! Engine, limits, prices and readings are invented; the readings scatter
//! like those of a careful amateur. What they tell: the shells of rod 2
//! turned, opened its big end and blued it. Both rods run on one throw, whose
//! journal is oval and scored, and the metal went round with the oil. Bore 1
//! has a score that catches a nail. The mains came through.

mod given;

use fenderbench::quantity::{EnteredDeviation, Unit};
use fenderbench::remedy::{Price, Spot};
use fenderbench::session::{
    Against, Arrangement, Edit, Field, FirstEnd, GaugeKind, Indication, Kind, RouteChoice, Sense,
    SetTo, Stamp, Use,
};

use given::{LIMITS, LOOKS, PRICES, STOCK};

use super::hand::{self, Hand, Morning, Values, gauge, length, on_standard, rows};

const NAME: &str = "Sample: quarry V-twin (invented)";
const UNIT: Unit = Unit::Inch;
const ID: u64 = 0x5a3b_1e00_0000_000b;
const REPLICA: u64 = 0x5a3b_1e03;

/// A gauge is rocked or closed once, and the number written down.
const MORNING: Morning = Morning {
    day: "2026-09-12",
    first_hour: 8,
    seconds_each: 55,
};

/// What is measured besides bores, pistons and journals.
const BESIDES: [Kind; 12] = [
    Kind::EndPlay,
    Kind::RodSide,
    Kind::BoreScore,
    Kind::RunOut,
    Kind::RodScore,
    Kind::MainHousing,
    Kind::MainShell,
    Kind::MainStrip,
    Kind::BigEnd,
    Kind::RodShell,
    Kind::TopRingGap,
    Kind::SecondRingGap,
];

const END_PLAY: [&[&str]; 1] = [&["0.0060"]];
const ROD_SIDE: [&[&str]; 1] = [&["0.012"]];
/// What the dial showed in each bore, from 3.5000 in: at the top in four
/// directions, in the middle, at the bottom and above ring travel in two.
const BORES: [&[&str]; 2] = [
    &[
        "0.0042", "0.0034", "0.0039", "0.0036", "0.0028", "0.0023", "0.0014", "0.0011", "0.0006",
        "0.0005",
    ],
    &[
        "0.0034", "0.0027", "0.0031", "0.0030", "0.0022", "0.0019", "0.0012", "0.0010", "0.0005",
        "0.0006",
    ],
];
const BORE_SCORES: [&[&str]; 2] = [&["0.0025"], &["0.0000"]];
const PISTONS: [&[&str]; 2] = [&["3.4958"], &["3.4961"]];
/// As shown by a micrometer that shows 0.0001 in too much.
const MAIN_JOURNALS: [&[&str]; 2] = [
    &["1.9996", "1.9996", "1.9995", "1.9996", "1.9995", "1.9996"],
    &["1.9995", "1.9994", "1.9995", "1.9994", "1.9995", "1.9995"],
];
const RUN_OUT: [&[&str]; 2] = [&["0.0005"], &["0.0008"]];
const HIGH_SPOTS: [(u8, u8); 2] = [(1, 10), (2, 4)];
/// By the same micrometer.
const ROD_JOURNAL: [&[&str]; 1] = [&["1.7453", "1.7473", "1.7460", "1.7465", "1.7450", "1.7471"]];
const ROD_SCORE: [&[&str]; 1] = [&["0.0010"]];
/// What the dial showed, from 2.1870 in.
const MAIN_HOUSINGS: [&[&str]; 2] = [
    &["0.0001", "0.0000", "0.0001", "0.0000", "0.0000", "0.0000"],
    &["0.0002", "0.0001", "0.0000", "0.0001", "0.0001", "0.0001"],
];
/// Upper and lower, each at both ends.
const MAIN_SHELLS: [&[&str]; 2] = [
    &["0.0926", "0.0926", "0.0925", "0.0925"],
    &["0.0926", "0.0926", "0.0925", "0.0924"],
];
const MAIN_STRIPS: [&[&str]; 2] = [&["0.0025"], &["0.0025"]];
/// What the dial showed, from 1.8750 in.
const BIG_ENDS: [&[&str]; 2] = [
    &["0.0001", "0.0000", "0.0001", "0.0001", "0.0000", "0.0000"],
    &["0.0031", "0.0012", "0.0010", "0.0028", "0.0011", "0.0012"],
];
const ROD_SHELLS: [&[&str]; 2] = [
    &["0.0616", "0.0616", "0.0612", "0.0612"],
    &["0.0598", "0.0596", "0.0589", "0.0587"],
];
/// At the top and at the bottom of ring travel.
const TOP_RING_GAPS: [&[&str]; 2] = [&["0.0255", "0.0170"], &["0.0235", "0.0165"]];
const SECOND_RING_GAPS: [&[&str]; 2] = [&["0.0270", "0.0185"], &["0.0240", "0.0170"]];

/// The sample.
pub fn sample() -> Result<Hand, String> {
    let set_up = vec![
        Field::Name(NAME.to_owned()),
        Field::Cylinders(2),
        Field::Arrangement(Arrangement::Vee),
        Field::Mains(2),
        Field::RodsPerThrow(2),
        Field::DisplayUnit(UNIT),
        Field::Route(RouteChoice::Fuller),
        Field::Use(Use::Towing),
        Field::FirstEnd(FirstEnd::Timing),
        Field::Nominal(Kind::Bore, Some(length("3.5000", UNIT)?)),
    ];
    let mut hand = Hand::new(ID, REPLICA, set_up, MORNING);
    hand.apply(&hand::limits(&LIMITS, UNIT)?)?;
    hand.apply(&hand::stock(&STOCK, UNIT)?)?;
    hand.apply(&what_was_given()?)?;
    let small_dial = gauges(&mut hand)?;

    hand.follow(of(
        &hand,
        &[
            (Kind::EndPlay, &END_PLAY),
            (Kind::RodSide, &ROD_SIDE),
            (Kind::Bore, &BORES),
            (Kind::BoreScore, &BORE_SCORES),
            (Kind::Piston, &PISTONS),
            (Kind::MainJournal, &MAIN_JOURNALS),
            (Kind::RunOut, &RUN_OUT),
            (Kind::RodJournal, &ROD_JOURNAL),
            (Kind::RodScore, &ROD_SCORE),
            (Kind::MainHousing, &MAIN_HOUSINGS),
            (Kind::MainShell, &MAIN_SHELLS),
            (Kind::MainStrip, &MAIN_STRIPS),
        ],
    ))?;
    let set = dial_at("1.8750")?;
    hand.set(small_dial, "1-2 in micrometer locked at 1.8750 in", set)?;
    hand.follow(of(
        &hand,
        &[
            (Kind::BigEnd, &BIG_ENDS),
            (Kind::RodShell, &ROD_SHELLS),
            (Kind::TopRingGap, &TOP_RING_GAPS),
            (Kind::SecondRingGap, &SECOND_RING_GAPS),
        ],
    ))?;
    Ok(hand)
}

/// Values of several kinds.
fn of(hand: &Hand, kinds: &[(Kind, &[&[&'static str]])]) -> Values {
    let each = kinds.iter();
    each.flat_map(|(kind, of_kind)| rows(&hand.session, *kind, of_kind))
        .collect()
}

/// What things cost, what was seen, and where the run-out stood highest.
fn what_was_given() -> Result<Edit, String> {
    let mut fields = Vec::new();
    for (item, price) in PRICES {
        let price = Price::parse(price).map_err(|why| why.to_string())?;
        fields.push(Field::Price(item, Some(price)));
    }
    for (subject, position, look, seen) in LOOKS {
        let spot = Spot { subject, position };
        fields.push(Field::Look(spot, look, Some(seen)));
    }
    fields.extend(HIGH_SPOTS.map(|(main, hour)| Field::HighSpot(main, Some(hour))));
    Ok(Edit::Batch(fields.into_iter().map(Edit::Set).collect()))
}

/// Micrometers and dials, each set before use; gives the small dial bore
/// gauge, which is set anew for the big ends.
fn gauges(hand: &mut Hand) -> Result<Stamp, String> {
    use GaugeKind::{DialBoreGauge, DialIndicator, OutsideMicrometer};
    let large = hand.first(OutsideMicrometer)?;
    let described = gauge(OutsideMicrometer, "0.0001", ("3", "4"), UNIT)?;
    hand.apply(&Edit::Gauge(large, described))?;
    let middle = gauge(OutsideMicrometer, "0.0001", ("1", "2"), UNIT)?;
    let middle = hand.take(middle, &[Kind::MainJournal, Kind::RodJournal])?;
    let ball = gauge(OutsideMicrometer, "0.0001", ("0", "1"), UNIT)?;
    let ball = hand.take(ball, &[Kind::MainShell, Kind::RodShell])?;
    for (id, note, size, shows) in [
        (large, "its own setting standard", "3.0000", "3.0000"),
        (middle, "its own setting standard", "1.0000", "1.0001"),
        (ball, "ball anvil, on a blade", "0.0500", "0.0500"),
    ] {
        hand.set(id, note, on_standard(size, shows, UNIT)?)?;
    }
    let dial = gauge(DialBoreGauge, "0.0001", ("2", "6"), UNIT)?;
    let dial = hand.take(dial, &[Kind::Bore])?;
    let set = dial_at("3.5000")?;
    hand.set(dial, "3-4 in micrometer locked at 3.5000 in", set)?;
    let small = gauge(DialBoreGauge, "0.0001", ("1.4", "2.4"), UNIT)?;
    let small = hand.take(small, &[Kind::MainHousing, Kind::BigEnd])?;
    let set = dial_at("2.1870")?;
    hand.set(small, "2-3 in micrometer locked at 2.1870 in", set)?;
    let indicator = gauge(DialIndicator, "0.0001", ("0", "0.2"), UNIT)?;
    let kinds = [Kind::EndPlay, Kind::RunOut, Kind::BoreScore, Kind::RodScore];
    hand.take(indicator, &kinds)?;
    for kind in BESIDES {
        hand.apply(&hand.session.ask_for(kind, true))?;
    }
    Ok(small)
}

/// The dial turned to zero in a micrometer.
fn dial_at(size: &str) -> Result<SetTo, String> {
    let zero = EnteredDeviation::parse("0.0000", UNIT).map_err(|why| why.to_string())?;
    Ok(SetTo {
        against: Against::Micrometer,
        size: length(size, UNIT)?,
        shows: Indication::Deviation(zero),
        again: None,
        sense: Sense::PlusLarger,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sample::tests::{beyond, is, told};
    use fenderbench::assess::{Advice, Which, advise, assess, facts};
    use fenderbench::present::{Why, route};
    use fenderbench::remedy::{
        Ask, Basis, BoreWork, Cause, HousingWork, JournalWork, Part, PistonWork, Region, Row,
        ShellWork, Standing, causes, debris,
    };
    use fenderbench::session::{Quantity, Session};

    fn session() -> Session {
        sample().unwrap().session
    }

    fn advice(session: &Session) -> Advice {
        advise(session, &assess(session))
    }

    #[test]
    fn everything_is_read_once() {
        let session = session();
        let stops = route(&session, &assess(&session));
        let open = stops.iter().filter(|stop| !stop.is_read());
        assert!(open.clone().all(|stop| stop.why != Why::First));
        let struck = session.readings.values().filter(|r| r.is_struck());
        assert_eq!(struck.count(), 0);
    }

    #[test]
    fn one_throw_its_rods_and_the_pistons_read_beyond_their_limits() {
        let session = session();
        assert_eq!(
            beyond(&session),
            [
                (Kind::Piston, 1),
                (Kind::Piston, 2),
                (Kind::RodJournal, 1),
                (Kind::BigEnd, 2),
                (Kind::RodShell, 1),
                (Kind::RodShell, 2),
            ]
        );
        let told = |feature, quantity, which| told(&session, feature, quantity, which);
        // 1.7450 less 0.0001.
        let smallest = told((Kind::RodJournal, 1), Quantity::Size, Which::Smallest);
        assert_eq!(smallest, is("1.7449", "beyond_limit"));
        // 1.8781 less 1.8760, near the joint.
        let shape = told((Kind::BigEnd, 2), Quantity::OutOfRound, Which::Largest);
        assert_eq!(shape, is("0.0021", "beyond_limit"));
        // 1.87795 less the walls of 0.0597 and 0.0588 less 1.7461.
        let oil = told((Kind::RodShell, 2), Quantity::Clearance, Which::Surest);
        assert_eq!(oil, is("0.01335", "beyond_limit"));
        // The strip says so; the arithmetic says 0.0027.
        let oil = told((Kind::MainShell, 2), Quantity::Clearance, Which::Surest);
        assert_eq!(oil, is("0.0025", "inside_new_limits"));
    }

    #[test]
    fn the_plan_goes_by_price_and_rests_on_nothing() {
        let Advice { plan, .. } = advice(&session());
        let way = &plan.way;
        assert_eq!(plan.basis, Basis::Price);
        assert_eq!(way.rests_on, []);
        // To 0.020 in, the second of the stock besides standard: 0.010 in
        // does not take out the score.
        let top = way.top.unwrap();
        assert_eq!(top.bores, BoreWork::Oversize(2));
        assert_eq!(top.pistons, PistonWork::New(2));
        let (mains, rods) = (way.mains.as_ref().unwrap(), way.rods.as_ref().unwrap());
        assert_eq!(mains.journals, JournalWork::Polish);
        assert_eq!(mains.housings, [HousingWork::Keep; 2]);
        assert_eq!(mains.shells, ShellWork::One(0));
        assert_eq!(rods.journals, JournalWork::Grind(1));
        assert_eq!(rods.housings, [HousingWork::Keep, HousingWork::New]);
        assert_eq!(rods.shells, ShellWork::ToFit);
        // 60 + 45 + 40 + 55 + 2·35 + 40 + 2·28 + 2·24 + 2·85 + 2·70 + 90 + 140.
        assert_eq!(way.total, Some(95_400));
        // If the blue rod has no crack, and the throw wore evenly.
        let hope = plan.hope.unwrap();
        let asked: Vec<_> = hope.rests_on.iter().map(|q| (q.part, q.ask)).collect();
        let rod = (Part::Housing(Row::Rods, 1), Ask::Soundness);
        assert_eq!(asked, [(Part::Journal(Row::Rods, 0), Ask::CleanUp), rod]);
        let next = plan.next.unwrap().question;
        assert_eq!((next.part, next.ask), rod);
    }

    #[test]
    fn the_spun_shell_is_behind_it_and_metal_went_round() {
        let session = session();
        let sights: Vec<_> = session.sights().collect();
        let found = causes(&sights, &facts(&session, &assess(&session)));
        let measured = found.iter().filter(|f| f.standing == Standing::Measured);
        let measured: Vec<_> = measured.map(|f| (f.cause, f.place)).collect();
        assert_eq!(
            measured,
            [
                (Cause::LooseRodBearing, Region::Cylinder(1)),
                (Cause::LooseRodBearing, Region::Cylinder(2)),
                (Cause::LooseShells, Region::Cylinder(2)),
            ]
        );
        let mains = found.iter().find(|f| f.cause == Cause::LooseMainBearing);
        assert_eq!(mains.unwrap().standing, Standing::Reopened);
        assert_eq!(debris(&sights).count(), 4);
    }
}
