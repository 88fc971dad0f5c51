//! Laws of evidence, on looks and numbers by chance.

use fenderbench::remedy::{
    Cause, Fact, Found, Known, Look, Number, RULES, Region, Says, Sight, Sign, Spot, Standing,
    Subject, causes,
};
use proptest::prelude::*;
use proptest::sample::select;

fn a_sight() -> impl Strategy<Value = Sight> {
    let looks: Vec<Look> = Look::all().collect();
    let of = |look: Look| select(look.subjects()).prop_map(move |subject| (look, subject));
    (select(looks).prop_flat_map(of), 1..4_u8, any::<bool>()).prop_map(
        |((look, subject), position, seen)| Sight {
            spot: Spot { subject, position },
            look,
            seen,
        },
    )
}

/// Sights of few causes, so that they meet.
fn sights() -> impl Strategy<Value = Vec<Sight>> {
    prop::collection::vec(a_sight(), 0..40)
}

fn numbers() -> impl Strategy<Value = Vec<Number>> {
    const PLACES: [Subject; 5] = [
        Subject::Engine,
        Subject::MainShell,
        Subject::RodShell,
        Subject::Bore,
        Subject::Piston,
    ];
    const KNOWN: [Known; 3] = [Known::Proved, Known::Excluded, Known::Unknown];
    let one = (
        select(&PLACES[..]),
        1..4_u8,
        select(&Fact::ALL[..]),
        select(&KNOWN[..]),
    );
    let one = one.prop_map(|(subject, position, fact, known)| Number {
        spot: Spot { subject, position },
        fact,
        known,
    });
    prop::collection::vec(one, 0..30)
}

fn best(found: &[Found], cause: Cause) -> Option<Standing> {
    let of = found.iter().filter(|found| found.cause == cause);
    of.map(|found| found.standing).max()
}

/// What the rules say of a sight.
fn says(sight: Sight, cause: Cause) -> Vec<Says> {
    let sign = if sight.seen {
        Sign::Seen(sight.look)
    } else {
        Sign::NotSeen(sight.look)
    };
    let rules = RULES.iter().filter(|r| r.cause == cause && r.sign == sign);
    rules.map(|rule| rule.says).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    #[test]
    fn a_supporting_look_never_lowers_a_cause(
        mut sights in sights(), numbers in numbers(), more in a_sight()
    ) {
        let before = causes(&sights, &numbers);
        sights.push(more);
        let after = causes(&sights, &numbers);
        for cause in Cause::all() {
            if !says(more, cause).contains(&Says::Against) {
                prop_assert!(best(&before, cause) <= best(&after, cause), "{cause:?}");
            }
        }
    }

    #[test]
    fn a_look_against_never_raises_a_cause(
        mut sights in sights(), numbers in numbers(), more in a_sight()
    ) {
        let before = causes(&sights, &numbers);
        sights.push(more);
        let after = causes(&sights, &numbers);
        for cause in Cause::all() {
            if says(more, cause).iter().all(|says| *says == Says::Against) {
                prop_assert!(best(&after, cause) <= best(&before, cause), "{cause:?}");
            }
        }
    }

    #[test]
    fn the_deciding_number_wins(sights in sights(), numbers in numbers()) {
        let here = |found: &Found, number: &Number| {
            found.place == Region::Engine
                || [Region::Engine, found.place].contains(&number.spot.place())
        };
        for found in causes(&sights, &numbers) {
            let decides = |number: &&Number| here(&found, number) && RULES.iter().any(|rule| {
                rule.cause == found.cause
                    && rule.says == Says::Decides
                    && rule.sign == Sign::Number(number.fact)
            });
            let known: Vec<Known> = numbers.iter().filter(decides).map(|n| n.known).collect();
            if found.standing == Standing::Measured {
                prop_assert!(known.contains(&Known::Proved), "{found:?}");
            }
            if found.place != Region::Engine && known.contains(&Known::Proved) {
                prop_assert_eq!(found.standing, Standing::Measured, "{:?}", found);
            }
            prop_assert!(!found.supports.is_empty());
            let settled = [Standing::Measured, Standing::Reopened].contains(&found.standing);
            let has = RULES.iter().any(|r| r.cause == found.cause && r.says == Says::Decides);
            prop_assert!(settled || !has || !found.needs.is_empty(), "{found:?}");
        }
    }

    #[test]
    fn the_order_of_answers_changes_nothing_but_the_order_of_clues(
        sights in sights(), numbers in numbers()
    ) {
        let forwards = causes(&sights, &numbers);
        let mut backwards = (sights, numbers);
        backwards.0.reverse();
        backwards.1.reverse();
        let mut backwards = causes(&backwards.0, &backwards.1);
        let sorted = |mut found: Vec<Found>| {
            for one in &mut found {
                one.supports.sort_unstable();
                one.contradicts.sort_unstable();
            }
            found
        };
        backwards = sorted(backwards);
        prop_assert_eq!(sorted(forwards), backwards);
    }
}
