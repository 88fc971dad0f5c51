//! Oversizes and undersizes worked by hand.

use fenderbench::quantity::Exact;
use fenderbench::remedy::{
    Boring, Cylinder, Grinding, Journal, Reason, Sizes, Stock, Trouble, WornBore, WornJournal,
    oversizes, undersizes,
};
use fenderbench::uncertainty::Measured;

use crate::golden::{Row, golden};
use crate::make::exact;
use crate::remedy_make::{Doubts, TENTH, known, tenths};

fn inches(row: &Row, column: &str) -> Exact {
    exact(&format!("{} in", row.get(column)))
}

fn step(sizes: &Sizes, index: Option<usize>) -> String {
    index.map_or("none".to_owned(), |index| {
        let thou = sizes.candidates[index].step.numerator() / i128::from(10 * TENTH);
        format!("0.{thou:03}")
    })
}

/// A score of no depth is none.
fn score(depth: Exact) -> Option<Measured> {
    (depth != Exact::ZERO).then(|| known(depth))
}

#[test]
fn bores_that_clean_up_as_worked_by_hand() {
    let standard = tenths(40_000);
    let stock = [100, 200, 300].map(|over| Stock {
        over: tenths(over),
        piston: None,
    });
    let boring = Boring {
        standard,
        stock: &stock,
        honing: tenths(30),
        clearance: tenths(20),
        greatest: None,
    };
    let doubts = Doubts::new(0, 0);
    for row in golden!("clean_up.csv") {
        let worn = WornBore {
            largest: known(standard + inches(&row, "wear")),
            reference: Some(known(standard)),
            score: score(inches(&row, "score")),
            offset: None,
        };
        let bracket = worn.bracket(standard);
        assert_eq!(
            bracket.even.value(),
            inches(&row, "even"),
            "{}",
            row.place()
        );
        let one_sided = inches(&row, "one_sided");
        assert_eq!(bracket.one_sided.value(), one_sided, "{}", row.place());
        let cylinder = Cylinder {
            worn,
            form: None,
            bore: None,
            clearance: None,
        };
        let sizes = oversizes(&[cylinder], &[], &boring, &doubts.prover());
        let columns = ["over_010", "over_020", "over_030"];
        for (size, column) in sizes.candidates.iter().zip(columns) {
            let word = match size.proof.reason {
                Reason::Proved => "surely",
                Reason::Axis => "if even",
                Reason::Wear => "never",
                other => panic!("{}: {other:?}", row.place()),
            };
            assert_eq!(word, row.get(column), "{}", row.place());
        }
        assert_eq!(step(&sizes, sizes.plan), row.get("plan"), "{}", row.place());
        assert_eq!(
            step(&sizes, sizes.sweep),
            row.get("sweep"),
            "{}",
            row.place()
        );
    }
}

#[test]
fn an_offset_of_the_bar_counts_twice() {
    let worn = WornBore {
        largest: known(tenths(40_050)),
        reference: Some(known(tenths(40_010))),
        score: Some(known(tenths(10))),
        offset: Some(known(tenths(5))),
    };
    let bracket = worn.bracket(tenths(40_000));
    assert_eq!(bracket.even.value(), tenths(40_070));
    assert_eq!(bracket.one_sided.value(), tenths(40_010 + 80 + 20 + 10));
}

#[test]
fn journals_that_clean_up_as_worked_by_hand() {
    let standard = tenths(25_000);
    let undersizes_stocked = [100, 200, 300].map(tenths);
    let doubts = Doubts::new(0, 0);
    for row in golden!("journals.csv") {
        let worn = WornJournal {
            smallest: known(standard - inches(&row, "worn")),
            score: score(inches(&row, "score")),
            runout: Some(known(inches(&row, "runout"))),
        };
        let bracket = worn.bracket(standard);
        assert_eq!(
            bracket.even.value(),
            inches(&row, "even"),
            "{}",
            row.place()
        );
        let one_sided = inches(&row, "one_sided");
        assert_eq!(bracket.one_sided.value(), one_sided, "{}", row.place());
        let grinding = Grinding {
            standard,
            as_made: standard,
            undersizes: &undersizes_stocked,
            recentred: row.get("recentred") == "yes",
            greatest: None,
        };
        let journal = Journal { worn, form: None };
        let sizes = undersizes(&[journal], &grinding, &doubts.prover());
        assert_eq!(step(&sizes, sizes.plan), row.get("plan"), "{}", row.place());
        assert_eq!(
            step(&sizes, sizes.sweep),
            row.get("sweep"),
            "{}",
            row.place()
        );
    }
}

#[test]
fn what_cannot_be_answered_is_named() {
    let doubts = Doubts::new(0, 0);
    let boring = Boring {
        standard: tenths(40_000),
        stock: &[],
        honing: tenths(30),
        clearance: tenths(20),
        greatest: None,
    };
    let sizes = oversizes(&[], &[], &boring, &doubts.prover());
    assert_eq!(sizes.trouble, Some(Trouble::NoParts));
    assert_eq!((sizes.plan, sizes.sweep, sizes.worst), (None, None, None));
}
