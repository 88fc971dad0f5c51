//! The plan against tables: gates, consequences, and what cleans up.

use fenderbench::quantity::Exact;
use fenderbench::remedy::{
    Ask, BoreWork, CONSEQUENCES, Checks, Cylinder, Finish, Harm, Job, Part, PistonWork, Prover,
    Reason, Row, Stock, Way, Word, WornBore, judge, plan,
};
use fenderbench::uncertainty::Factors;
use fenderbench::verdict::{Decision, DecisionRule};

use crate::golden::golden;
use crate::plan_scenes::{empty, thou};
use crate::remedy_make::known;

fn decision(text: &str) -> Option<Decision> {
    match text {
        "In" => Some(Decision::In),
        "Open" => Some(Decision::Open),
        "Out" => Some(Decision::Out),
        _ => None,
    }
}

#[test]
fn gates_fire_in_their_order() {
    for row in golden!("gates.csv") {
        let (part, is_changed) = match row.get("part") {
            "cylinder" => (Part::Cylinder(2), false),
            "journal" => (Part::Journal(Row::Rods, 1), false),
            // Of these two rows the partner is the reason they are replaced.
            "piston" => (Part::Piston(2), row.get("gate") == "Partner"),
            "shells" => (Part::Shells(Row::Mains, 0), row.get("gate") == "Partner"),
            "housing" => (Part::Housing(Row::Mains, 0), false),
            "crank" => (Part::Crank, false),
            other => panic!("{}: {other}", row.place()),
        };
        let harms = [
            Harm::None,
            Harm::MayBeCracked,
            Harm::Welded,
            Harm::Cracked,
            Harm::HeatBlue,
            Harm::Broken,
            Harm::Bent,
            Harm::Spun,
        ];
        let named = |harm: &Harm| format!("{harm:?}") == row.get("harm");
        let surfaces = [Finish::Good, Finish::Dull, Finish::Scored];
        let looks = |surface: &Finish| format!("{surface:?}") == row.get("surface");
        let words = [Word::UseAgain, Word::HandWork, Word::Shop, Word::Replace];
        let does = |word: &Word| format!("{word:?}") == row.get("planned");
        // Shells that are scored have no shape left to be judged by.
        let form = if row.get("part") == "shells" && row.get("surface") == "Scored" {
            Some(Decision::Out)
        } else {
            decision(row.get("form"))
        };
        let checks = Checks {
            harm: Some(harms.into_iter().find(named).unwrap()),
            contradictory: row.get("contradictory") == "yes",
            form,
            surface: Some(surfaces.into_iter().find(looks).unwrap()),
            clearance: decision(row.get("clearance")),
            planned: words.into_iter().find(does).unwrap(),
            partner_changes: is_changed,
        };
        let judged = judge(part, &checks);
        let gate = judged
            .gate
            .map_or("none".to_owned(), |gate| format!("{gate:?}"));
        assert_eq!(gate, row.get("gate"), "{}", row.place());
        assert_eq!(
            format!("{:?}", judged.word),
            row.get("word"),
            "{}",
            row.place()
        );
    }
}

#[test]
fn every_work_has_its_consequences() {
    let rows = golden!("consequences.csv");
    assert_eq!(rows.len(), CONSEQUENCES.len());
    for (row, (done, recheck)) in rows.iter().zip(CONSEQUENCES) {
        assert_eq!(format!("{done:?}"), row.get("done"), "{}", row.place());
        let recheck: Vec<_> = recheck.iter().map(|one| format!("{one:?}")).collect();
        assert_eq!(recheck.join(" "), row.get("recheck"), "{}", row.place());
    }
}

/// A length in inches with four decimals.
fn inches(text: &str) -> Exact {
    let digits: String = text.chars().filter(char::is_ascii_digit).collect();
    Exact::new(digits.parse::<i128>().unwrap() * 25_400, 1)
}

#[test]
fn a_worn_bore_is_planned_as_the_table_says() {
    let factors = Factors::default();
    let prover = Prover {
        sources: &[],
        factors: &factors,
        rule: DecisionRule::ONE_SIDED_95,
    };
    let standard = inches("4.0000");
    let stock = ["0.0100", "0.0200", "0.0300"];
    for row in golden!("clean_up.csv") {
        let score = inches(row.get("score"));
        let worn = Cylinder {
            worn: WornBore {
                largest: known(standard + inches(row.get("wear"))),
                reference: Some(known(standard)),
                score: (Exact::ZERO < score).then(|| known(score)),
                offset: None,
            },
            form: Some(Decision::Out),
            bore: None,
            clearance: None,
        };
        let job = Job {
            cylinders: vec![worn],
            pistons: vec![Some(Decision::In)],
            standard,
            honing: thou(3),
            target: thou(2),
            stock: stock
                .map(|over| Stock {
                    over: inches(over),
                    piston: Some(standard + inches(over) - thou(2)),
                })
                .to_vec(),
            ..empty()
        };
        let planned = plan(&job, &prover);
        let oversize = |text: &str| {
            let at = stock.iter().position(|over| over.starts_with(text));
            at.map(BoreWork::Oversize)
        };
        let bores = |way: &Way| way.top.unwrap().bores;
        let wanted = oversize(row.get("plan")).unwrap();
        assert_eq!(bores(&planned.way), wanted, "{}", row.place());
        let BoreWork::Oversize(size) = wanted else {
            panic!("{}", row.place());
        };
        let pistons = planned.way.top.unwrap().pistons;
        assert_eq!(pistons, PistonWork::New(size), "{}", row.place());
        let hope = planned.hope.as_ref();
        assert_eq!(
            hope.map(bores),
            oversize(row.get("sweep")),
            "{}",
            row.place()
        );
        for question in hope.iter().flat_map(|way| &way.rests_on) {
            assert_eq!(question.ask, Ask::CleanUp);
            assert_eq!(question.reason, Reason::Axis);
            assert_eq!(planned.next.as_ref().unwrap().question, *question);
        }
        let sweep = planned.oversizes.sweep;
        let sweep = sweep.map(|at| planned.oversizes.candidates[at].step);
        let expected =
            oversize(row.get("sweep")).map(|_| inches(&format!("{}0", row.get("sweep"))));
        assert_eq!(sweep, expected, "{}", row.place());
    }
}
