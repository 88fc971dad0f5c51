//! Looks and what is behind them: the tables, and what they make of clues.

use fenderbench::remedy::{
    Cause, Condition, Fact, Found, IMPOSSIBLE_CLEARANCE, Known, Look, Meaning, Number, RULES,
    Region, Says, Scope, Sight, Sign, Spot, Standing, Subject, Surface, Unsound, causes, clashes,
    condition, debris,
};

use crate::golden::golden;

const fn spot(subject: Subject, position: u8) -> Spot {
    Spot { subject, position }
}

const fn sight(subject: Subject, position: u8, look: Look, seen: bool) -> Sight {
    let spot = spot(subject, position);
    Sight { spot, look, seen }
}

const fn seen(subject: Subject, position: u8, look: Look) -> Sight {
    sight(subject, position, look, true)
}

const fn number(subject: Subject, position: u8, fact: Fact, known: Known) -> Number {
    let spot = spot(subject, position);
    Number { spot, fact, known }
}

fn of(found: &[Found], cause: Cause) -> Vec<(Region, Standing)> {
    let of = found.iter().filter(|found| found.cause == cause);
    of.map(|found| (found.place, found.standing)).collect()
}

/// A name as the tables write it.
fn snake(name: &str) -> String {
    let mut text = String::new();
    for c in name.chars() {
        if c.is_uppercase() && !text.is_empty() {
            text.push('_');
        }
        text.extend(c.to_lowercase());
    }
    text
}

#[test]
fn the_rules_are_those_of_the_table() {
    let rows = golden!("evidence.csv");
    assert_eq!(RULES.len(), rows.len());
    for (rule, row) in RULES.iter().zip(&rows) {
        let sign = match rule.sign {
            Sign::Seen(look) => format!("seen/{}", look.key()),
            Sign::NotSeen(look) => format!("not_seen/{}", look.key()),
            Sign::Number(fact) => format!("number/{}", snake(&format!("{fact:?}"))),
        };
        assert_eq!(sign, row.get("sign"), "{}", row.place());
        assert_eq!(snake(&format!("{:?}", rule.says)), row.get("says"));
        assert_eq!(rule.cause.key(), row.get("cause"), "{}", row.place());
        assert_eq!(rule.source.text(), row.get("source"), "{}", row.place());
    }
}

#[test]
fn every_cause_says_what_to_check_and_who_says_so() {
    let rows = golden!("evidence_checks.csv");
    assert_eq!(Cause::all().count(), rows.len());
    for (cause, row) in Cause::all().zip(&rows) {
        let (check, source) = cause.check();
        assert_eq!(cause.key(), row.get("cause"));
        assert_eq!(snake(&format!("{:?}", cause.scope())), row.get("scope"));
        assert_eq!(check, row.get("check"), "{}", row.place());
        assert_eq!(source.text(), row.get("source"));
        assert!(!check.is_empty(), "{cause:?}");
        let points = |says| {
            move |rule: &&fenderbench::remedy::Rule| rule.cause == cause && rule.says == says
        };
        assert!(
            RULES.iter().any(|rule| points(Says::PointsTo)(&rule)),
            "{cause:?}"
        );
    }
    assert!(IMPOSSIBLE_CLEARANCE[0].contains("turn of the thimble"));
}

#[test]
fn every_look_says_something_and_every_key_comes_back() {
    let all: Vec<_> = Look::all().collect();
    for (n, look) in all.iter().enumerate() {
        assert_eq!(Look::from_key(look.key()), Some(*look));
        assert_eq!(*look as usize, n);
        assert!(!look.subjects().is_empty(), "{look:?}");
        let used = RULES.iter().any(|rule| rule.sign == Sign::Seen(*look));
        assert!(
            used || look.meaning() != Meaning::Trace,
            "{look:?} says nothing"
        );
    }
    assert_eq!(Look::from_key("nothing_known"), None);
    for subject in Subject::ALL {
        assert_eq!(Subject::from_key(subject.key()), Some(subject));
        assert!(subject.looks().next().is_some(), "{subject:?}");
    }
    let before = Subject::ALL.iter().position(|s| !s.is_before()).unwrap();
    assert!(Subject::ALL[before..].iter().all(|s| !s.is_before()));
}

#[test]
fn a_rule_can_hold_where_its_cause_is_asked_for() {
    for rule in RULES {
        if let Sign::Seen(look) | Sign::NotSeen(look) = rule.sign {
            let apart = |place| match rule.cause.scope() {
                Scope::Cylinder => matches!(place, Region::Main(_)),
                Scope::Main => matches!(place, Region::Cylinder(_)),
                Scope::Engine | Scope::Bearing => false,
            };
            let mut subjects = look.subjects().iter();
            let reaches = subjects.any(|subject| !apart(spot(*subject, 1).place()));
            assert!(reaches, "{rule:?}");
        }
        assert!(
            !matches!(rule.sign, Sign::NotSeen(_)) || rule.says != Says::PointsTo,
            "what is missing points to nothing: {rule:?}"
        );
        let is_number = matches!(rule.sign, Sign::Number(_));
        assert!(rule.says != Says::Decides || is_number, "{rule:?}");
        assert!(!is_number || ![Says::PointsTo, Says::AgreesWith].contains(&rule.says));
    }
}

#[test]
fn one_clue_is_a_hint_two_parts_that_agree_more_and_a_number_decides() {
    let rap = seen(Subject::Engine, 1, Look::KnockRap);
    let found = causes(&[rap], &[]);
    let loose = Cause::LooseRodBearing;
    assert_eq!(of(&found, loose), [(Region::Engine, Standing::Hint)]);
    let needs = &found.iter().find(|f| f.cause == loose).unwrap().needs;
    assert_eq!(needs[..], [Fact::OilClearanceLarge]);

    // The same kind of part twice is still one clue.
    let thrice = [rap, seen(Subject::Engine, 1, Look::LowOilPressure)];
    assert_eq!(
        of(&causes(&thrice, &[]), loose),
        [(Region::Engine, Standing::Hint)]
    );

    let spun = seen(Subject::RodShell, 3, Look::Spun);
    let third = Region::Cylinder(3);
    assert_eq!(
        of(&causes(&[rap, spun], &[]), loose),
        [(third, Standing::Likely)]
    );

    let large = |known| [number(Subject::RodShell, 3, Fact::OilClearanceLarge, known)];
    let with = |known| causes(&[rap, spun], &large(known));
    assert_eq!(
        of(&with(Known::Proved), loose),
        [(third, Standing::Measured)]
    );
    assert_eq!(
        of(&with(Known::Unknown), loose),
        [(third, Standing::Likely)]
    );
    // A number that says no opens the question again.
    let reopened = with(Known::Excluded);
    assert_eq!(of(&reopened, loose), [(third, Standing::Reopened)]);
    let told = reopened.iter().find(|f| f.cause == loose).unwrap();
    assert_eq!(
        told.contradicts[0].sign,
        Sign::Number(Fact::OilClearanceLarge)
    );
    assert!(told.needs.is_empty());

    // With a rod that was not measured the knock may still be there.
    let mut partly = large(Known::Excluded).to_vec();
    partly.push(number(
        Subject::RodShell,
        4,
        Fact::OilClearanceLarge,
        Known::Unknown,
    ));
    assert_eq!(
        of(&causes(&[rap, spun], &partly), loose),
        [
            (Region::Engine, Standing::Hint),
            (third, Standing::Reopened)
        ]
    );

    // A number finds the place that nobody looked at.
    partly[1].known = Known::Proved;
    let fourth = Region::Cylinder(4);
    assert_eq!(
        of(&causes(&[rap], &partly), loose)[0],
        (fourth, Standing::Measured)
    );
}

#[test]
fn a_number_alone_is_no_cause_of_anything_seen() {
    let all = Fact::ALL.map(|fact| number(Subject::MainShell, 1, fact, Known::Proved));
    assert_eq!(causes(&[], &all), []);
    // Nor is what was looked for in vain.
    let vain: Vec<_> = Subject::ALL
        .into_iter()
        .flat_map(|subject| {
            subject
                .looks()
                .map(move |look| sight(subject, 1, look, false))
        })
        .collect();
    assert_eq!(causes(&vain, &all), []);
}

#[test]
fn a_main_bearing_does_not_make_a_rod_bearing_loose() {
    let rap = seen(Subject::Engine, 1, Look::KnockRap);
    let main = [number(
        Subject::MainShell,
        2,
        Fact::OilClearanceLarge,
        Known::Proved,
    )];
    let found = causes(&[rap], &main);
    assert_eq!(
        of(&found, Cause::LooseRodBearing),
        [(Region::Engine, Standing::Hint)]
    );
    let pressure = seen(Subject::Engine, 1, Look::LowOilPressure);
    let found = causes(&[pressure], &main);
    let loose = of(&found, Cause::LooseMainBearing);
    assert_eq!(loose, [(Region::Main(2), Standing::Measured)]);
    assert_eq!(
        of(&found, Cause::LooseRodBearing),
        [(Region::Engine, Standing::Hint)]
    );
}

#[test]
fn smoke_is_told_apart_by_what_else_was_seen() {
    // Guides: smoke at the start, no pressure below, oil at the port.
    let guides = [
        seen(Subject::Engine, 1, Look::SmokeAtStart),
        sight(Subject::Engine, 1, Look::CrankcasePressure, false),
        seen(Subject::Head, 1, Look::OilyPort),
    ];
    let found = causes(&guides, &[]);
    assert_eq!(
        of(&found, Cause::Guides),
        [(Region::Engine, Standing::Likely)]
    );
    assert_eq!(of(&found, Cause::RingsOrBore), []);
    // Pressure below speaks against them.
    let mut rings = guides;
    rings[1].seen = true;
    let found = causes(&rings, &[]);
    assert_eq!(
        of(&found, Cause::Guides),
        [(Region::Engine, Standing::Hint)]
    );
    assert_eq!(
        of(&found, Cause::RingsOrBore),
        [(Region::Engine, Standing::Hint)]
    );
    // Both ends of taper are one number: the bore decides.
    let bore = [number(Subject::Bore, 2, Fact::BoreTapered, Known::Proved)];
    let found = causes(&rings, &bore);
    let measured = (Region::Cylinder(2), Standing::Measured);
    assert_eq!(of(&found, Cause::RingsOrBore), [measured]);
    assert_eq!(
        found[0].cause,
        Cause::RingsOrBore,
        "the best made out stands first"
    );
}

#[test]
fn a_glazed_bore_that_tapers_is_asked_about_again() {
    let glazed = seen(Subject::Bore, 1, Look::Glazed);
    let use_ = seen(Subject::Engine, 1, Look::OilUse);
    let taper = |known| [number(Subject::Bore, 1, Fact::BoreTapered, known)];
    let standing = |known| of(&causes(&[glazed, use_], &taper(known)), Cause::GlazedBore)[0].1;
    assert_eq!(standing(Known::Excluded), Standing::Likely);
    assert_eq!(standing(Known::Proved), Standing::Reopened);
}

#[test]
fn an_even_band_speaks_against_an_edge_and_both_are_told() {
    let shell = |look| seen(Subject::RodShell, 2, look);
    let sights = [
        shell(Look::OneEdge),
        seen(Subject::Block, 1, Look::SameEdge),
        shell(Look::GreyBand),
    ];
    let found = causes(&sights, &[]);
    let tapered = (Region::Cylinder(2), Standing::Hint);
    assert_eq!(of(&found, Cause::Tapered), [tapered]);
    let pair = (spot(Subject::RodShell, 2), Look::GreyBand, Look::OneEdge);
    assert_eq!(clashes(&sights), [pair]);
    assert_eq!(
        of(&causes(&sights[..2], &[]), Cause::Tapered)[0].1,
        Standing::Likely
    );
    // On another shell it says nothing.
    let other = [
        sights[0],
        sights[1],
        seen(Subject::RodShell, 1, Look::GreyBand),
    ];
    assert_eq!(clashes(&other), []);
    assert_eq!(
        of(&causes(&other, &[]), Cause::Tapered)[0].1,
        Standing::Likely
    );
}

#[test]
fn seen_and_not_seen_at_one_spot_is_told() {
    let twice = [
        sight(Subject::Piston, 1, Look::OneSkirt, true),
        sight(Subject::Piston, 1, Look::OneSkirt, false),
        sight(Subject::Piston, 1, Look::OneSkirt, true),
        seen(Subject::Piston, 1, Look::BothSkirts),
    ];
    let at = spot(Subject::Piston, 1);
    let itself = (at, Look::OneSkirt, Look::OneSkirt);
    let other = (at, Look::BothSkirts, Look::OneSkirt);
    assert_eq!(clashes(&twice), [itself, other]);
}

#[test]
fn the_condition_of_a_part_is_its_worst_look() {
    let journal = |look, seen| sight(Subject::RodJournal, 1, look, seen);
    let at = spot(Subject::RodJournal, 1);
    assert_eq!(condition(&[], at), Condition::default());
    let mut sights = vec![
        journal(Look::Polished, true),
        journal(Look::JournalScore, false),
        journal(Look::JournalCrack, false),
    ];
    let clean = Condition {
        unsound: None,
        surface: Some(Surface::Clean),
        no_crack: true,
    };
    assert_eq!(condition(&sights, at), clean);
    assert_eq!(
        condition(&sights, spot(Subject::RodJournal, 2)),
        Condition::default()
    );
    sights.push(journal(Look::JournalNail, true));
    sights.push(journal(Look::HeatBlue, true));
    let told = condition(&sights, at);
    assert_eq!(told.surface, Some(Surface::NailCatching));
    assert_eq!(told.unsound, Some(Unsound::Replace));
    // A crack that one copy saw and another did not is a crack.
    sights.push(journal(Look::JournalCrack, true));
    assert!(!condition(&sights, at).no_crack);
    let rod = [
        seen(Subject::Rod, 1, Look::Nick),
        seen(Subject::Rod, 1, Look::BentRod),
    ];
    let told = condition(&rod, spot(Subject::Rod, 1)).unsound;
    assert_eq!(told, Some(Unsound::Specialist));
}

#[test]
fn metal_that_went_round_is_told_by_what_shed_it() {
    let sights = [
        seen(Subject::Oil, 1, Look::DebrisSoft),
        sight(Subject::Oil, 1, Look::DebrisCopper, false),
        seen(Subject::RodShell, 2, Look::Spun),
        seen(Subject::MainShell, 2, Look::GreyBand),
        seen(Subject::Engine, 1, Look::LowOilPressure),
    ];
    let told: Vec<_> = debris(&sights).copied().collect();
    assert_eq!(told, [sights[0], sights[2]]);
}
