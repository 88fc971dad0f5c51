//! When bores and journals may be used as they are, or with hand work.

use fenderbench::quantity::Exact;
use fenderbench::remedy::{
    Boring, Cylinder, Grinding, Journal, LIGHT_HONE, Proof, Reason, Stock, WornBore, WornJournal,
    hone, keep, new_pistons, oversizes, polish, stuck, undersizes, use_again,
};
use fenderbench::uncertainty::Measured;
use fenderbench::verdict::{Band, Decision};

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

fn band() -> Band {
    Band::new(Some(tenths(10)), Some(tenths(40)))
}

fn told(proof: Proof) -> (Decision, Reason, Option<usize>) {
    (proof.decision, proof.reason, proof.rests_on)
}

const PROVED: (Decision, Reason, Option<usize>) = (Decision::In, Reason::Proved, None);

fn out(reason: Reason, part: usize) -> (Decision, Reason, Option<usize>) {
    (Decision::Out, reason, Some(part))
}

fn open(reason: Reason, part: usize) -> (Decision, Reason, Option<usize>) {
    (Decision::Open, reason, Some(part))
}

#[test]
fn used_again_only_without_a_score_and_with_a_proved_clearance() {
    let doubts = Doubts::new(0, 0);
    let again = |cylinders: &[Cylinder]| told(use_again(cylinders, &[], &band(), &doubts.prover()));
    let good = cylinder(5, 0, 30);
    assert_eq!(again(&[good.clone(), cylinder(10, 0, 40)]), PROVED);
    assert_eq!(
        again(&[good.clone(), cylinder(10, 0, 41)]),
        out(Reason::Clearance, 1)
    );
    assert_eq!(
        again(&[good.clone(), cylinder(10, 3, 30)]),
        out(Reason::Score, 1)
    );
    let unread = Cylinder {
        clearance: None,
        ..good.clone()
    };
    assert_eq!(again(&[good.clone(), unread]), open(Reason::Unknown, 1));
    for (form, expected) in [
        (Some(Decision::Out), out(Reason::Form, 1)),
        (Some(Decision::Open), open(Reason::Form, 1)),
        (None, open(Reason::Unknown, 1)),
    ] {
        assert_eq!(
            again(&[
                good.clone(),
                Cylinder {
                    form,
                    ..good.clone()
                }
            ]),
            expected
        );
    }
    // One that is ruled out goes before one that is open.
    let open = Cylinder { form: None, ..good };
    assert_eq!(
        again(&[open, cylinder(10, 0, 41)]),
        out(Reason::Clearance, 1)
    );
}

#[test]
fn honing_takes_a_light_score_and_adds_twice_its_depth() {
    let doubts = Doubts::new(0, 0);
    let honed = |score, clearance| {
        let cylinders = [cylinder(5, 0, 30), cylinder(5, score, clearance)];
        told(hone(&cylinders, &[], &band(), LIGHT_HONE, &doubts.prover()))
    };
    assert_eq!(LIGHT_HONE, tenths(10));
    // 0.0005 in deep is 0.001 in on diameter: the most, and no more.
    assert_eq!(honed(5, 30), PROVED);
    assert_eq!(honed(5, 31), out(Reason::Clearance, 1));
    assert_eq!(honed(6, 20), out(Reason::Score, 1));
}

#[test]
fn new_pistons_where_the_bore_is_good_and_the_clearance_is_not() {
    let doubts = Doubts::new(0, 0);
    let cylinders = [cylinder(10, 0, 60), cylinder(16, 0, 70)];
    let new = |piston: i64| {
        let piston = tenths(piston);
        told(new_pistons(
            &cylinders,
            &[],
            piston,
            &band(),
            LIGHT_HONE,
            &doubts.prover(),
        ))
    };
    assert_eq!(new(39_980), PROVED);
    // The second leaves 0.0041 in with a smaller one, the first 0.0009 in
    // with a larger one.
    assert_eq!(new(39_975), out(Reason::Clearance, 1));
    assert_eq!(new(40_001), out(Reason::Clearance, 0));
    let unread = [Cylinder {
        bore: None,
        ..cylinder(0, 0, 20)
    }];
    let proof = new_pistons(
        &unread,
        &[],
        tenths(39_980),
        &band(),
        LIGHT_HONE,
        &doubts.prover(),
    );
    assert_eq!(told(proof), open(Reason::Unknown, 0));
}

#[test]
fn what_the_readings_do_not_prove_is_open() {
    // 1.645 × 10 000 quanta is 0.65 of a ten-thousandth of an inch.
    let doubts = Doubts::new(0, 10_000);
    let measured = |value: i64| Reading { number: 1, value }.measured();
    let again = |clearance: i64| {
        let clearance = Some(measured(clearance));
        let cylinder = Cylinder {
            clearance,
            ..cylinder(5, 0, 0)
        };
        use_again(&[cylinder], &[], &band(), &doubts.prover()).decision
    };
    let high = 40 * 25_400;
    let at = [high - 16_449, high - 16_448, high + 16_449, high + 16_450].map(again);
    assert_eq!(
        at,
        [Decision::In, Decision::Open, Decision::Open, Decision::Out]
    );
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
    assert_eq!(stuck(&cylinders, &boring, &doubts.prover()), [1]);
    let sizes = oversizes(&cylinders, &[1], &boring, &doubts.prover());
    assert_eq!((sizes.plan, sizes.worst), (Some(0), Some(2)));
    assert_eq!(sizes.candidates[0].step, tenths(100));
    // Or, where the others are good, all stay as they are.
    let good = [cylinder(5, 0, 30), cylinder(20, 140, 60)];
    assert_eq!(
        told(use_again(&good, &[1], &band(), &doubts.prover())),
        PROVED
    );
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
fn journals_are_kept_polished_or_ground_as_a_kind() {
    let doubts = Doubts::new(0, 0);
    let prover = doubts.prover();
    let good = || journal(2, 0, Some(Decision::In));
    let scored = |depth| [good(), journal(2, depth, Some(Decision::In))];
    assert_eq!(told(keep(&[good(), good()], &prover)), PROVED);
    assert_eq!(told(keep(&scored(3), &prover)), out(Reason::Score, 1));
    assert_eq!(told(polish(&scored(3), tenths(3), &prover)), PROVED);
    assert_eq!(
        told(polish(&scored(4), tenths(3), &prover)),
        out(Reason::Score, 1)
    );
    let oval = [journal(2, 0, Some(Decision::Out)), good()];
    assert_eq!(
        told(polish(&oval, tenths(3), &prover)),
        out(Reason::Form, 0)
    );
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
