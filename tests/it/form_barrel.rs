//! Level means, barrel and the ring gap.

use fenderbench::form::{Barrel, barrel, level_mean, ring_gap_change};
use fenderbench::quantity::{Exact, show};
use proptest::prelude::*;

use crate::form::{CENTRE, FIRST, LAST, SHAPE, SIZE, diameter, quanta, spots};
use crate::golden::golden;
use crate::make::{exact, unit};

/// The barrel in quanta and whether it rests on square pairs.
fn bulge(diameters: &[(u8, u16, i64)]) -> Option<(bool, Exact)> {
    let (spots, readings) = spots(diameters);
    let Barrel { square, weights } = barrel(&spots, FIRST, CENTRE, LAST)?;
    Some((square, weights.value(&readings).unwrap()))
}

fn mean_at_first(diameters: &[(u8, u16, i64)]) -> Option<Exact> {
    let (spots, readings) = spots(diameters);
    level_mean(&spots, FIRST).map(|weights| weights.value(&readings).unwrap())
}

#[test]
fn barrels_and_hour_glasses() {
    for row in golden!("barrels.csv") {
        let value = |column| exact(&format!("{} {}", row.get(column), row.get("unit")));
        let at = |column| i64::try_from(value(column).numerator()).unwrap();
        let levels = [
            (FIRST, at("first")),
            (CENTRE, at("centre")),
            (LAST, at("last")),
        ];
        let one_way = levels.map(|(along, size)| (along, 0, size));
        let expected = value("barrel");
        assert_eq!(bulge(&one_way), Some((false, expected)), "{}", row.place());
        let pairs = levels.map(|(along, size)| [(along, 0, size), (along, 90, size)]);
        let pairs = pairs.concat();
        assert_eq!(bulge(&pairs), Some((true, expected)), "{}", row.place());
    }
}

#[test]
fn a_barrel_needs_three_levels_that_compare() {
    let pair = |along, angle| [(along, angle, 9), (along, angle + 90, 7)];
    assert_eq!(bulge(&[]), None);
    assert_eq!(bulge(&[pair(FIRST, 0), pair(LAST, 45)].concat()), None);
    assert_eq!(bulge(&[pair(FIRST, 0), pair(CENTRE, 0)].concat()), None);
    // A single diameter at the centre is compared with the like ones only…
    let [near, far] = [pair(FIRST, 0), pair(LAST, 0)];
    let along = |angle| [&near[..], &far[..], &[(CENTRE, angle, 5)]].concat();
    assert_eq!(bulge(&along(90)), Some((false, quanta(-2))));
    // …and with nothing where there are none: the oval would come in.
    assert_eq!(bulge(&along(45)), None);
    let staggered = [near, pair(LAST, 45)].concat();
    let single = |angle| [&staggered[..], &[(CENTRE, angle, 5)]].concat();
    assert_eq!(
        [0, 45, 90, 135].map(|angle| bulge(&single(angle))),
        [None; 4]
    );
    // Other levels than the three are not looked at.
    let more = [&along(90)[..], &[(CENTRE + 2, 90, 50), (CENTRE + 2, 0, 50)]].concat();
    assert_eq!(bulge(&more), bulge(&along(90)));
}

#[test]
fn a_level_mean_leaves_a_diameter_without_its_partner_out() {
    assert_eq!(mean_at_first(&[]), None);
    assert_eq!(
        mean_at_first(&[(FIRST, 0, 5), (FIRST, 45, 5), (LAST, 90, 5)]),
        None
    );
    let pair = [(FIRST, 135, 5), (FIRST, 45, 8)];
    assert_eq!(mean_at_first(&pair), Some(Exact::new(13, 2)));
    let more = [&pair[..], &[(FIRST, 0, 100), (CENTRE, 90, 100)]].concat();
    assert_eq!(mean_at_first(&more), Some(Exact::new(13, 2)));
    let both = [&pair[..], &[(FIRST, 0, 1), (FIRST, 90, 2)]].concat();
    assert_eq!(mean_at_first(&both), Some(Exact::new(16, 4)));
}

#[test]
fn a_ring_gap_grows_by_pi() {
    for row in golden!("ring_gaps.csv") {
        let change = exact(&format!("{} {}", row.get("bore"), row.get("unit")));
        let decimals = u8::try_from(row.whole("decimals")).unwrap();
        let gap = show(ring_gap_change(change), unit(row.get("unit")), decimals);
        assert_eq!(gap.text, row.get("gap"), "{}", row.place());
        assert!(!gap.exact, "π is no quotient: {}", row.place());
    }
    // 10^15 times one quantum, against the digits of π.
    let digits = ring_gap_change(quanta(1_000_000_000_000_000));
    assert!(Exact::new(3_141_592_653_589_792, 1) < digits);
    assert!(digits < Exact::new(3_141_592_653_589_794, 1));
    assert_eq!(ring_gap_change(Exact::ZERO), Exact::ZERO);
    assert_eq!(ring_gap_change(quanta(-5)), -ring_gap_change(quanta(5)));
}

proptest! {
    #![proptest_config(crate::generators::config(256))]

    #[test]
    fn square_pairs_see_a_barrel_through_any_ovals(
        size in SIZE,
        (taper, barrel) in (SHAPE, SHAPE),
        ovals in prop::array::uniform3((SHAPE, SHAPE)),
        facing in prop::array::uniform3(prop::bool::ANY),
    ) {
        let means = [size + taper, size + barrel, size - taper];
        let diameters: Vec<_> = (0..3_u8)
            .zip(means.into_iter().zip(ovals).zip(facing))
            .flat_map(|(along, ((mean, (a, b)), facing))| {
                let angle = if facing { 0 } else { 45 };
                [angle, angle + 90].map(|angle| (along, angle, diameter(mean, a, b, angle)))
            })
            .collect();
        prop_assert_eq!(bulge(&diameters), Some((true, quanta(barrel))));
    }

    #[test]
    fn shared_directions_see_a_barrel_through_one_oval(
        size in SIZE,
        (taper, barrel) in (SHAPE, SHAPE),
        (a, b) in (SHAPE, SHAPE),
        angles in prop::sample::subsequence(vec![0_u16, 45, 90, 135], 1..=4),
    ) {
        let means = [size + taper, size + barrel, size - taper];
        let diameters: Vec<_> = (0..3_u8)
            .zip(means)
            .flat_map(|(along, mean)| {
                let at = |angle: &u16| (along, *angle, diameter(mean, a, b, *angle));
                angles.iter().map(at).collect::<Vec<_>>()
            })
            .collect();
        let pair = |angle| angles.contains(&angle) && angles.contains(&(angle + 90));
        let square = pair(0) || pair(45);
        prop_assert_eq!(bulge(&diameters), Some((square, quanta(barrel))));
    }
}
