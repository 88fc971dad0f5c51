//! The plan in words, and how one further reading changes it.

use expect_test::{Expect, expect};
use fenderbench::assess::{advise, assess};
use fenderbench::present::{Next, PlanView, what_to_do};
use fenderbench::remedy::{Look, Spot, Subject};
use fenderbench::session::{Edit, Field, Session};

use crate::make::{add, edited, sample, unread};

pub fn view(session: &Session) -> PlanView {
    what_to_do(session, &advise(session, &assess(session)))
}

/// The plan as far as it says what to do and what that rests on.
pub fn told(view: &PlanView) -> String {
    let mut told = Vec::new();
    for line in &view.lines {
        let why = line.why.as_ref().map(|why| format!(" ({why})"));
        told.push(format!(
            "{}: {}{}",
            line.about,
            line.what,
            why.unwrap_or_default()
        ));
    }
    told.push(view.total.clone());
    let mut section = |title: &str, lines: &[String]| {
        let lines = lines.iter().map(|line| format!("{title} {line}"));
        told.extend(lines);
    };
    section("rests on", &view.rests_on);
    if let Some(maybe) = &view.maybe {
        section("maybe", &maybe.instead);
        section("if well", &maybe.if_well);
    }
    section("or", &view.runner_up);
    if let Some(Next { what, well, badly }) = &view.next {
        section("next", core::slice::from_ref(what));
        section("then", well);
        section("else", badly);
    }
    section("trouble", &view.troubles);
    told.join("\n")
}

fn check(session: &Session, expect: &Expect) {
    expect.assert_eq(&told(&view(session)));
}

#[test]
fn the_depth_of_a_score_changes_the_plan() {
    let twin = sample("quarry-v-twin");
    // The score was seen, and nobody measured it yet.
    let before = edited(
        twin.clone(),
        vec![unread(&twin, "bore_score/1/whole/centre/0")],
    );
    check(
        &before,
        &expect![[r#"
            Bores: bore and hone all to 0.020 in over, a sleeve in bore 1 (Bores 1 and 2: surface)
            Pistons: buy a set, 0.020 in over (Piston 1: size and shape)
            Main journals: polish, oil holes plugged (Main journal 2: surface)
            Main housings: use again
            Main shells: buy standard ones (Main shells 1 and 2: size and shape)
            Rod journals: grind all to 0.020 in under (Rod journal 1: size and shape)
            Rods: replace the rod (Rod 2: not sound)
            Rod shells: buy the set for the journals as machined (Rod shells 1 and 2: size and shape)
            All together 1144.00
            maybe Bores: bore and hone all to 0.010 in over
            maybe Pistons: buy a set, 0.010 in over
            maybe Rod journals: grind all to 0.010 in under
            maybe Rods: resize the big end
            if well Bore 1: measure how deep the scores are
            if well Bore 2: have the shop sweep or rough-bore it first, then buy parts
            if well Rod journal 1: have the shop sweep or rough-bore it first, then buy parts
            if well Rod 2: test for cracks, or ask a specialist
            or Main journals: grind all to 0.010 in under
            or Main shells: buy the set for the journals as machined
            next Bore 1: measure how deep the scores are
            then Bores: bore and hone all to 0.020 in over
            else Bores: bore and hone all to 0.010 in over, a sleeve in bore 1
            else Pistons: buy a set, 0.010 in over
            else Rod journals: grind all to 0.010 in under
            else Rods: resize the big end"#]],
    );
    let depth = add(&before, "bore_score/1/whole/centre/0", "0.0025 in");
    check(
        &edited(before, vec![depth]),
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
            else Rod journals: grind all to 0.010 in under"#]],
    );
}

#[test]
fn the_crack_test_that_is_asked_for_saves_the_rod() {
    let twin = sample("quarry-v-twin");
    let asked = view(&twin).next.unwrap().what;
    assert_eq!(asked, "Rod 2: test for cracks, or ask a specialist");
    let spot = Spot {
        subject: Subject::Rod,
        position: 2,
    };
    let tested = Edit::Set(Field::Look(spot, Look::RodCrack, Some(false)));
    check(
        &edited(twin, vec![tested]),
        &expect![[r#"
            Bores: bore and hone all to 0.020 in over (Bores 1 and 2: surface)
            Pistons: buy a set, 0.020 in over (Piston 1: size and shape)
            Main journals: polish, oil holes plugged (Main journal 2: surface)
            Main housings: use again
            Main shells: buy standard ones (Main shells 1 and 2: size and shape)
            Rod journals: grind all to 0.020 in under (Rod journal 1: size and shape)
            Rods: resize the big end (Rod 2: size and shape)
            Rod shells: buy the set for the journals as machined (Rod shells 1 and 2: size and shape)
            All together 864.00
            maybe Rod journals: grind all to 0.010 in under
            if well Rod journal 1: have the shop sweep or rough-bore it first, then buy parts
            or Main journals: grind all to 0.010 in under
            or Main shells: buy the set for the journals as machined
            next Rod journal 1: have the shop sweep or rough-bore it first, then buy parts
            then Rod journals: grind all to 0.010 in under"#]],
    );
}

#[test]
fn the_shop_is_told_the_clearance_and_not_a_size() {
    let view = view(&sample("quarry-v-twin"));
    expect![[r#"
        Finish each bore to the piston that goes in it, as you measure it: piston-to-wall on diameter at 20 °C (68 °F) 0.0024 in to 0.0040 in. Mark which piston is for which bore.
        Torque plate and main caps on while boring and honing. Measure cold; write down three levels in two directions.
        Grind the rod journals to the shells supplied, measured in their torqued housings: oil clearance 0.0010 in to 0.0035 in.
        By your own readings that would be a journal of 1.72945 in ± 0.0004 in: a cross-check, not an order.
        Crack test before grinding and after it, and demagnetise. Keep the fillet radius, no step; round and clean the oil holes; polish in the direction of rotation.
        Ask: is this shaft hardened, how deep, and what is left after grinding? Are its fillets rolled? Shops and sources differ; it depends on the process."#]].assert_eq(&view.shop.join("\n"));
    let rows = view.parts.iter().map(|row| {
        let why = Some(row.why).filter(|why| !why.is_empty());
        let why = why.map(|why| format!(" ({why})")).unwrap_or_default();
        format!("{}: {}{why}", row.parts, row.word)
    });
    expect![[r#"
        Block: machine shop (as the bores and housings need)
        Crankshaft: machine shop (as the journals need)
        Bores 1 and 2: machine shop (surface)
        Piston 1: replace (size and shape)
        Piston 2: replace (the part it runs with)
        Main journal 1: hand work (goes with the others of its kind)
        Main journal 2: hand work (surface)
        Main housing bores 1 and 2: use again (by its numbers; nobody looked for cracks and scores)
        Main shells 1 and 2: replace (size and shape)
        Rod journal 1: machine shop (size and shape)
        Rod 1: use again
        Rod 2: ask a specialist (not sound)
        Rod shells 1 and 2: replace (size and shape)"#]]
    .assert_eq(&rows.collect::<Vec<_>>().join("\n"));
    let clearances = view.clearances.iter().map(|row| row.join(", "));
    expect![[r#"
        Piston-to-wall 1, 0.0032 in, made so by the shop
        Piston-to-wall 2, 0.0032 in, made so by the shop
        Oil clearance, Main housing bore 1, ≈ 0.0022 in, measured, ± 0.0005 in
        Oil clearance, Main housing bore 2, ≈ 0.0024 in, measured, ± 0.0005 in
        Oil clearance, Big-end bore 1, 0.00225 in, made so by the shop
        Oil clearance, Big-end bore 2, 0.00225 in, made so by the shop"#]]
    .assert_eq(&clearances.collect::<Vec<_>>().join("\n"));
}

#[test]
fn the_other_samples_end_in_plans_too() {
    check(
        &sample("hill-climb-six"),
        &expect![[r#"
            Bores: bore and hone all to 0.50 mm over (Bore 5: size and shape)
            Pistons: buy a set, 0.50 mm over (Pistons 1, 2, 3, 4, 5 and 6: the part it runs with)
            Main journals: grind all to 0.25 mm under
            Main housings: use again
            Main shells: buy the set for the journals as machined (Main shells 1, 2, 3, 4, 5, 6 and 7: the part it runs with)
            Rod journals: grind all to 0.25 mm under (Rod journal 2: size and shape)
            Rods: use again
            Rod shells: buy the set for the journals as machined (Rod shells 1, 2, 3, 4, 5 and 6: the part it runs with)
            11 prices are missing for the sum.
            rests on Bores 1, 2, 3 and 6: read the unworn reference
            rests on Main housing bores 1, 2, 3, 4, 5, 6 and 7: measure the clearance, and give its limits
            rests on Main housing bores 1, 2, 3, 4, 5, 6 and 7: measure size and shape, and give limits
            rests on Big-end bores 1, 2, 3, 4, 5 and 6: measure the clearance, and give its limits
            rests on Big-end bores 1, 2, 3, 4, 5 and 6: measure size and shape, and give limits
            maybe Bores: bore and hone all to 0.25 mm over
            maybe Pistons: buy a set, 0.25 mm over
            maybe Main journals: use again
            maybe Main shells: buy standard ones
            if well Bores 1, 2, 3 and 6: read the unworn reference
            if well Bore 5: have the shop sweep or rough-bore it first, then buy parts
            if well Main journals 3, 5, 6 and 7: size and shape are too close to call: read again
            if well Main housing bores 1, 2, 3, 4, 5, 6 and 7: measure the clearance, and give its limits
            if well Main housing bores 1, 2, 3, 4, 5, 6 and 7: measure size and shape, and give limits
            if well Big-end bores 1, 2, 3, 4, 5 and 6: measure the clearance, and give its limits
            if well Big-end bores 1, 2, 3, 4, 5 and 6: measure size and shape, and give limits
            next Main housing bore 1: measure the clearance, and give its limits
            else Bores: bore and hone all to 0.25 mm over
            else Pistons: buy a set, 0.25 mm over"#]],
    );
    check(
        &sample("pump-twin"),
        &expect![[r#"
            Bores: bore and hone all to 0.030 in over
            Pistons: buy a set, 0.030 in over (Piston 1: the part it runs with)
            Main journals: grind all to 0.010 in under
            Main housings: use again
            Main shells: buy the set for the journals as machined (Main shells 1, 2 and 3: the part it runs with)
            Rod journals: use again
            Rods: use again
            Rod shells: buy standard ones
            10 prices are missing for the sum.
            rests on Bores 1 and 2: read the unworn reference
            rests on Main housing bores 1, 2 and 3: measure the clearance, and give its limits
            rests on Main housing bores 1, 2 and 3: measure size and shape, and give limits
            rests on Rod journals 1 and 2: measure size and shape, and give limits
            rests on Big-end bores 1 and 2: measure the clearance, and give its limits
            rests on Big-end bores 1 and 2: measure size and shape, and give limits
            maybe Bores: use again, new rings
            maybe Pistons: buy a set, standard
            maybe Main journals: use again
            maybe Main shells: buy standard ones
            if well Bores 1 and 2: measure the clearance, and give its limits
            if well Bores 1 and 2: size and shape are too close to call: read again
            if well Main journal 2: outside all common rules: look up the limits of the manual, or read again
            if well Main journal 3: measure size and shape, and give limits
            if well Main housing bores 1, 2 and 3: measure the clearance, and give its limits
            if well Main housing bores 1, 2 and 3: measure size and shape, and give limits
            if well Rod journals 1 and 2: measure size and shape, and give limits
            if well Big-end bores 1 and 2: measure the clearance, and give its limits
            if well Big-end bores 1 and 2: measure size and shape, and give limits
            next Main housing bore 1: measure the clearance, and give its limits
            else Bores: use again, new rings
            else Pistons: buy a set, standard"#]],
    );
}
