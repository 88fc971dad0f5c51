//! Plans in words of input that makes no sense or is not there: a sentence
//! and a partial plan, never nothing.

use expect_test::{Expect, expect};
use fenderbench::present::{looks, set_price};
use fenderbench::remedy::{Item, Look, Sight, Spot, Subject};
use fenderbench::session::{Edit, Field, Kind, LimitKey, Session};

use crate::make::{edited, limit, sample, session};
use crate::what_to_do::{told, view};

/// Everything that is told, and that it is not nothing.
fn check(session: &Session, expect: &Expect) {
    let view = view(session);
    assert!(!view.lines.is_empty() && !view.parts.is_empty());
    expect.assert_eq(&told(&view));
}

fn twin(edits: Vec<Edit>) -> Session {
    edited(sample("quarry-v-twin"), edits)
}

fn without(key: &str) -> Edit {
    Edit::Set(Field::Limit(LimitKey::parse(key).unwrap(), None))
}

#[test]
fn without_piston_sizes_the_bore_goes_by_the_name_of_the_oversize() {
    let none = ["new_low", "new_high", "service"].map(|end| without(&format!("piston/size/{end}")));
    check(
        &twin(none.to_vec()),
        &expect![[r#"
            Bores: bore and hone all to 0.020 in over (Bores 1 and 2: surface)
            Pistons: buy a set, 0.020 in over (Piston 1: size and shape)
            Main journals: polish, oil holes plugged (Main journal 2: surface)
            Main housings: use again
            Main shells: buy standard ones (Main shells 1 and 2: size and shape)
            Rod journals: grind all to 0.020 in under (Rod journal 1: size and shape)
            Rods: replace the rod (Rod 2: not sound)
            Rod shells: buy the set for the journals as machined (Rod shells 1 and 2: size and shape)
            All together 954.00
            maybe Rod journals: grind all to 0.010 in under
            maybe Rods: resize the big end
            if well Rod journal 1: have the shop sweep or rough-bore it first, then buy parts
            if well Rod 2: test for cracks, or ask a specialist
            or Main journals: grind all to 0.010 in under
            or Main shells: buy the set for the journals as machined
            next Rod 2: test for cracks, or ask a specialist
            then Rods: resize the big end
            else Rod journals: grind all to 0.010 in under
            trouble Oversizes: the size of the pistons is not given, so the bore is reckoned from the name of the oversize. The shop finishes to the piston it measures."#]],
    );
}

#[test]
fn with_nothing_in_stock_what_needs_none_is_left() {
    let none = |kind| Edit::Set(Field::Stock(kind, Some(Vec::new())));
    let kinds = [Kind::Piston, Kind::MainShell, Kind::RodShell];
    check(
        &twin(kinds.map(none).to_vec()),
        &expect![[r#"
            Bores: sleeve all (Bores 1 and 2: surface)
            Pistons: buy a set, standard (Piston 1: size and shape)
            Main journals: another crankshaft (Main journal 2: surface)
            Main housings: use again
            Main shells: buy the set for the journals as machined (Main shells 1 and 2: size and shape)
            Rod journals: another crankshaft (Rod journal 1: size and shape)
            Rods: replace the rod (Rod 2: not sound)
            Rod shells: buy the set for the journals as machined (Rod shells 1 and 2: size and shape)
            All together 1644.00
            maybe Rods: resize the big end
            if well Rod 2: test for cracks, or ask a specialist
            next Rod 2: test for cracks, or ask a specialist
            then Rods: resize the big end
            trouble Oversizes: no sizes are listed. List what can be bought under Set-up.
            trouble Undersizes of the mains: no sizes are listed. List what can be bought under Set-up.
            trouble Undersizes of the rod journals: no sizes are listed. List what can be bought under Set-up."#]],
    );
}

#[test]
fn a_negative_price_is_refused_and_a_missing_one_is_asked_for() {
    for text in ["-3", "\u{2212}0.50"] {
        let refused = set_price(Item::Piston, text).unwrap_err();
        assert_eq!(
            refused,
            "A price cannot be less than nothing; leave it blank if it is not known."
        );
    }
    let blank = set_price(Item::Piston, " ").unwrap();
    let view = view(&twin(vec![blank]));
    assert_eq!(view.total, "One price is missing for the sum.");
    let row = view.bill.iter().find(|row| row.item == Item::Piston);
    assert_eq!(row.unwrap().price, "");
    assert_ne!(view.lines, []);
}

#[test]
fn a_clearance_larger_than_the_step_is_named() {
    let edits = ["low 0.0240 in", "high 0.0300 in"].map(|end| {
        let (end, length) = end.split_once(' ').unwrap();
        Edit::Set(limit(&format!("piston/clearance/new_{end}"), length))
    });
    let mut edits = edits.to_vec();
    edits.push(Edit::Set(limit("piston/clearance/service", "0.0400 in")));
    check(
        &twin(edits),
        &expect![[r#"
            Bores: bore and hone all to 0.030 in over (Bores 1 and 2: surface)
            Pistons: buy a set, 0.030 in over (Piston 1: size and shape)
            Main journals: polish, oil holes plugged (Main journal 2: surface)
            Main housings: use again
            Main shells: buy standard ones (Main shells 1 and 2: size and shape)
            Rod journals: grind all to 0.020 in under (Rod journal 1: size and shape)
            Rods: replace the rod (Rod 2: not sound)
            Rod shells: buy the set for the journals as machined (Rod shells 1 and 2: size and shape)
            All together 954.00
            maybe Bores: bore and hone all to 0.010 in over
            maybe Pistons: buy a set, 0.010 in over
            maybe Rod journals: grind all to 0.010 in under
            maybe Rods: resize the big end
            if well Bores 1 and 2: the clearance is larger than the step: look at both sizes
            if well Rod journal 1: have the shop sweep or rough-bore it first, then buy parts
            if well Rod 2: test for cracks, or ask a specialist
            or Main journals: grind all to 0.010 in under
            or Main shells: buy the set for the journals as machined
            next Rod 2: test for cracks, or ask a specialist
            then Rods: resize the big end
            else Bores: bore and hone all to 0.010 in over
            else Pistons: buy a set, 0.010 in over
            else Rod journals: grind all to 0.010 in under"#]],
    );
}

#[test]
fn looks_that_contradict_each_other_prove_nothing() {
    let spot = Spot {
        subject: Subject::RodJournal,
        position: 1,
    };
    let polished = Edit::Set(Field::Look(spot, Look::Polished, Some(true)));
    let session = twin(vec![polished]);
    let sights: Vec<Sight> = session.sights().collect();
    expect![
        "Rod journal: “Polished, no marks” and “Lines a nail catches” cannot both be. Look again."
    ]
    .assert_eq(&looks(&session, &sights, &[]).clashes.join("\n"));
    check(
        &session,
        &expect![[r#"
            Bores: bore and hone all to 0.020 in over (Bores 1 and 2: surface)
            Pistons: buy a set, 0.020 in over (Piston 1: size and shape)
            Main journals: another crankshaft (Main journal 2: surface)
            Main housings: use again
            Main shells: buy the set for the journals as machined (Main shells 1 and 2: size and shape)
            Rod journals: another crankshaft
            Rods: replace the rod (Rod 2: not sound)
            Rod shells: buy the set for the journals as machined (Rod shells 1 and 2: size and shape)
            All together 1404.00
            maybe Main journals: polish, oil holes plugged
            maybe Main shells: buy standard ones
            maybe Rod journals: grind all to 0.010 in under
            maybe Rods: resize the big end
            if well Rod journal 1: look again: what was seen contradicts itself
            if well Rod 2: test for cracks, or ask a specialist
            next Rod journal 1: look again: what was seen contradicts itself
            then Main journals: polish, oil holes plugged
            then Main shells: buy standard ones
            then Rod journals: grind all to 0.010 in under
            else Rods: resize the big end"#]],
    );
    let view = view(&session);
    let journal = view.parts.iter().find(|row| row.parts == "Rod journal 1");
    let journal = journal.unwrap();
    assert_eq!(
        (journal.word, journal.why),
        ("measure again", "what was seen contradicts itself")
    );
}

#[test]
fn a_session_of_nothing_still_asks() {
    check(
        &session(vec![Field::Cylinders(1), Field::Mains(2)]),
        &expect![[r#"
            Bores: use again, new rings
            Pistons: use again, each in its own bore
            Main journals: use again
            Main housings: use again
            Main shells: use again, each in its place
            Rod journals: use again
            Rods: use again
            Rod shells: use again, each in its place
            One price is missing for the sum.
            rests on Bore 1: measure the clearance, and give its limits
            rests on Bore 1: measure size and shape, and give limits
            rests on Piston 1: measure size and shape, and give limits
            rests on Main journals 1 and 2: measure size and shape, and give limits
            rests on Main housing bores 1 and 2: measure the clearance, and give its limits
            rests on Main housing bores 1 and 2: measure size and shape, and give limits
            rests on Rod journal 1: measure size and shape, and give limits
            rests on Big-end bore 1: measure the clearance, and give its limits
            rests on Big-end bore 1: measure size and shape, and give limits
            next Main housing bore 1: measure the clearance, and give its limits
            trouble Oversizes: the size of the pistons is not given, so the bore is reckoned from the name of the oversize. The shop finishes to the piston it measures.
            trouble Main shells: the wall of a new shell is not known. Give its size under Limits, or measure one.
            trouble Rod shells: the wall of a new shell is not known. Give its size under Limits, or measure one."#]],
    );
}
