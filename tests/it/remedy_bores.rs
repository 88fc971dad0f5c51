//! Which sizes clean up bores and journals, and what speaks against a size.

use fenderbench::quantity::Exact;
use fenderbench::remedy::{
    Boring, Cylinder, Grinding, Journal, Reason, Stock, WornBore, WornJournal, oversizes,
    undersizes,
};
use fenderbench::uncertainty::Measured;
use fenderbench::verdict::Decision;

use crate::remedy_make::{Doubts, Reading, known, tenths};

/// A cylinder of 4.0000 in with its own piston, worn and scored by so many
/// ten-thousandths of an inch.
fn cylinder(wear: i64, score: i64, clearance: i64) -> Cylinder {
    let bore = tenths(40_000 + wear);
    Cylinder {
        worn: WornBore {
            largest: known(bore),
            reference: Some(known(tenths(40_000))),
            score: (score != 0).then(|| known(tenths(score))),
            offset: None,
        },
        form: Some(Decision::In),
        bore: Some(known(bore)),
        clearance: Some(known(tenths(clearance))),
    }
}

fn stock(thous: &[i64]) -> Vec<Stock> {
    let stock = thous.iter().map(|thou| Stock {
        over: tenths(10 * thou),
        piston: None,
    });
    stock.collect()
}

fn boring(stock: &[Stock]) -> Boring<'_> {
    Boring {
        standard: tenths(40_000),
        stock,
        honing: tenths(30),
        clearance: tenths(20),
        greatest: None,
    }
}

#[test]
fn one_sleeve_saves_the_others_from_a_large_oversize() {
    let doubts = Doubts::new(0, 0);
    let stock = stock(&[30, 10, 20]);
    let boring = boring(&stock);
    // 0.014 in deep cannot be cleaned by 0.030 in.
    let cylinders = [
        cylinder(20, 0, 60),
        cylinder(20, 140, 60),
        cylinder(30, 0, 60),
    ];
    let sizes = oversizes(&cylinders, &[], &boring, &doubts.prover());
    assert_eq!((sizes.plan, sizes.worst), (None, Some(1)));
    let sizes = oversizes(&cylinders, &[1], &boring, &doubts.prover());
    assert_eq!((sizes.plan, sizes.worst), (Some(0), Some(2)));
    assert_eq!(sizes.candidates[0].step, tenths(100));
}

#[test]
fn an_oversize_is_held_against_wall_entry_and_reference() {
    let doubts = Doubts::new(0, 0);
    let stock = stock(&[10, 20, 30]);
    let told = |cylinder: Cylinder, boring: &Boring| {
        let sizes = oversizes(&[cylinder], &[], boring, &doubts.prover());
        let reasons: Vec<_> = sizes
            .candidates
            .iter()
            .map(|size| size.proof.reason)
            .collect();
        (reasons, sizes.plan, sizes.sweep)
    };
    use Reason::{Mistyped, NoReference, Proved, TooMuch, Wear};
    let greatest = Some(tenths(200));
    let thin = Boring {
        greatest,
        ..boring(&stock)
    };
    assert_eq!(
        told(cylinder(80, 0, 0), &thin),
        (vec![Wear, Proved, TooMuch], Some(1), None)
    );
    let wide = Boring {
        clearance: tenths(150),
        ..boring(&stock)
    };
    assert_eq!(
        told(cylinder(10, 0, 0), &wide),
        (vec![Mistyped, Proved, Proved], Some(1), Some(0))
    );
    let mut unread = cylinder(80, 0, 0);
    unread.worn.reference = None;
    assert_eq!(
        told(unread, &boring(&stock)),
        (vec![Wear, NoReference, NoReference], None, Some(1))
    );
    // A piston 0.0015 in under its name leaves a bore as much smaller: the
    // 0.0010 in to spare at 0.020 in is gone.
    let pistons: Vec<_> = stock
        .iter()
        .map(|size| Stock {
            piston: Some(tenths(40_000) + size.over - tenths(20 + 15)),
            ..*size
        })
        .collect();
    let measured = boring(&pistons);
    assert_eq!(measured.finish(&pistons[1]), tenths(40_185));
    assert_eq!(measured.bored(&pistons[1]), tenths(40_155));
    assert_eq!(
        told(cylinder(80, 0, 0), &measured),
        (vec![Wear, Reason::Axis, Proved], Some(2), Some(1))
    );
}

fn journal(worn: i64, score: i64, form: Option<Decision>) -> Journal {
    Journal {
        worn: WornJournal {
            smallest: known(tenths(25_000 - worn)),
            score: (score != 0).then(|| known(tenths(score))),
            runout: None,
        },
        form,
    }
}

#[test]
fn journals_are_ground_as_a_kind() {
    let doubts = Doubts::new(0, 0);
    let prover = doubts.prover();
    let good = || journal(2, 0, Some(Decision::In));
    let grinding = Grinding {
        standard: tenths(25_000),
        as_made: tenths(25_000),
        undersizes: &[tenths(200), tenths(100)],
        recentred: false,
        greatest: Some(tenths(100)),
    };
    let sizes = undersizes(&[good(), journal(60, 0, None)], &grinding, &prover);
    let reasons: Vec<_> = sizes
        .candidates
        .iter()
        .map(|size| size.proof.reason)
        .collect();
    assert_eq!(reasons, [Reason::Axis, Reason::TooMuch]);
    assert_eq!((sizes.worst, sizes.sweep), (Some(1), Some(0)));
    assert_eq!(sizes.candidates[0].cut, tenths(24_900));
}

#[test]
fn an_error_of_the_setting_cancels_where_it_can() {
    // Two readings of one setting that is 0.0004 in in doubt: what the bore
    // grew by is as good as sure, where it cleans up is not.
    let doubts = Doubts::new(100_000, 0);
    let at = |number: usize, tenth: i64| {
        Reading {
            number,
            value: 25_400 * tenth,
        }
        .measured()
    };
    let worn = WornBore {
        largest: at(1, 40_080),
        reference: Some(at(2, 40_000)),
        score: None,
        offset: None,
    };
    let grown: Measured = &worn.largest - worn.reference.as_ref().unwrap();
    assert_eq!(doubts.prover().guard(&grown), Exact::ZERO);
    let bracket = worn.bracket(tenths(40_000));
    let guards = [&bracket.even, &bracket.one_sided].map(|m| doubts.prover().guard(m));
    assert_eq!(guards, [Exact::new(164_486, 1); 2]);
}
