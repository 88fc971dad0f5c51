//! Mean size, out-of-round and taper as weights over readings.

use fenderbench::form::{Place, Spot, mean_size, out_of_round, taper};
use fenderbench::quantity::{Exact, Size, Weights};
use proptest::prelude::*;

use crate::make::exact;

pub const FIRST: u8 = 0;
pub const CENTRE: u8 = 1;
pub const LAST: u8 = 2;

/// Spots with one reading each, and the readings, in quanta.
pub fn spots(diameters: &[(u8, u16, i64)]) -> (Vec<Spot>, Vec<Size>) {
    let spot = |(index, &(along, angle, _)): (usize, &(u8, u16, i64))| Spot {
        place: Place { along, angle },
        weights: Weights::mean_of([index]),
    };
    let spots = diameters.iter().enumerate().map(spot).collect();
    let readings = diameters.iter().map(|d| Size::from_quanta(d.2)).collect();
    (spots, readings)
}

/// Mean in quanta, out-of-rounds as (level, angle, quanta), tapers as
/// (angle, quanta).
type Answers = (
    Option<Exact>,
    Vec<(u8, u16, Exact)>,
    Vec<(Option<u16>, Exact)>,
);

fn answers(diameters: &[(u8, u16, i64)]) -> Answers {
    let (spots, readings) = spots(diameters);
    let value = |weights: &Weights| weights.value(&readings).unwrap();
    let shapes = out_of_round(&spots);
    let tapers = taper(&spots, FIRST, LAST);
    (
        mean_size(&spots).map(|weights| value(&weights)),
        shapes
            .iter()
            .map(|o| (o.along, o.angle, value(&o.weights)))
            .collect(),
        tapers
            .iter()
            .map(|t| (t.angle, value(&t.weights)))
            .collect(),
    )
}

pub fn quanta(quanta: i64) -> Exact {
    Exact::new(quanta.into(), 1)
}

/// A diameter of size R with an oval D = R + a cos 2θ + b sin 2θ. At the four
/// directions in use that is whole: R + a, R + b, R − a, R − b.
pub fn diameter(size: i64, a: i64, b: i64, angle: u16) -> i64 {
    match angle {
        0 => size + a,
        45 => size + b,
        90 => size - a,
        _ => size - b,
    }
}

#[test]
fn a_second_harmonic_at_four_directions() {
    // Identity: mean 100.006, cosine part 0.006, sine part 0.014.
    let at = |angle, text| (FIRST, angle, exact(text).numerator().try_into().unwrap());
    let (mean, shapes, _) = answers(&[
        at(0, "100.012 mm"),
        at(45, "100.020 mm"),
        at(90, "100.000 mm"),
        at(135, "99.992 mm"),
    ]);
    assert_eq!(mean, Some(exact("100.006 mm")));
    let twice_cosine = (FIRST, 0, exact("0.012 mm"));
    let twice_sine = (FIRST, 45, exact("0.028 mm"));
    assert_eq!(shapes, [twice_cosine, twice_sine]);
}

#[test]
fn a_barrel_is_not_seen_by_two_places() {
    // Ends 2.4990 and 2.4990 in, centre 2.4995 in: a barrel of 0.0005 in.
    let at = |along, text| (along, 0, exact(text).numerator().try_into().unwrap());
    let ends = [at(FIRST, "2.4990 in"), at(LAST, "2.4990 in")];
    let (mean, _, tapers) = answers(&ends);
    assert_eq!(tapers, [(Some(0), Exact::ZERO)]);
    assert_eq!(mean, Some(exact("2.4990 in")));
    let all = [ends[0], at(CENTRE, "2.4995 in"), ends[1]];
    let (mean, _, tapers) = answers(&all);
    assert_eq!(tapers, [(Some(0), Exact::ZERO)]);
    assert_ne!(mean, Some(exact("2.4990 in")));
}

#[test]
fn without_readings_there_is_no_answer() {
    assert_eq!(answers(&[]), (None, vec![], vec![]));
    let (_, shapes, tapers) = answers(&[(FIRST, 0, 5)]);
    assert_eq!((shapes, tapers), (vec![], vec![]));
    // Two directions of one end, one direction of the other: nothing to compare.
    let (_, shapes, tapers) = answers(&[(FIRST, 0, 5), (FIRST, 90, 4), (LAST, 45, 7)]);
    assert_eq!((shapes, tapers), (vec![(FIRST, 0, quanta(1))], vec![]));
    // Only the ends asked for are compared.
    let (_, _, tapers) = answers(&[(FIRST, 0, 5), (CENTRE, 0, 4)]);
    assert_eq!(tapers, []);
}

#[test]
fn one_direction_at_both_ends_is_compared_before_means() {
    let (_, _, tapers) = answers(&[
        (FIRST, 0, 10),
        (FIRST, 90, 20),
        (LAST, 0, 7),
        (LAST, 45, 1),
        (LAST, 135, 1),
    ]);
    assert_eq!(tapers, [(Some(0), quanta(3))]);
}

#[test]
fn weights_cancel_and_refuse_what_is_not_there() {
    let readings = [6, 7, 11].map(Size::from_quanta);
    let pair = Weights::mean_of([0, 1]);
    let nothing = &pair - &pair;
    assert_eq!(nothing.terms(), []);
    assert_eq!(nothing.value(&readings), Some(Exact::ZERO));
    let rest = &Weights::mean_of([0, 1, 2]) - &pair;
    assert_eq!(rest.terms(), [(0, -1), (1, -1), (2, 2)]);
    assert_eq!(rest.denominator(), 6);
    assert_eq!(rest.value(&readings), Some(Exact::new(9, 6)));
    assert_eq!(rest.value(&readings[..2]), None);
    assert_eq!(Weights::mean_of([2, 2]).value(&readings), Some(quanta(11)));
}

#[test]
fn weights_beyond_64_bits_have_no_value() {
    // Primes of repeats: their product has 20 digits.
    let counts = [211, 223, 227, 229, 233, 239, 241, 251, 257];
    let means: Vec<_> = counts.map(|count| Weights::mean_of(0..count)).into();
    let means: Vec<_> = means.iter().collect();
    let readings = vec![Size::from_quanta(7); 257];
    assert_eq!(Weights::mean(&means[..7]).value(&readings), Some(quanta(7)));
    let beyond = Weights::mean(&means);
    assert_eq!(beyond.value(&readings), None);
    assert_eq!((&beyond - means[0]).value(&readings), None);
    assert_eq!(Weights::of_sums(&[(1 << 70, means[0])], 3), None);
    assert_eq!(Weights::of_sums(&[(3, means[0])], 1 << 70), None);
    let reduced = Weights::of_sums(&[(1 << 70, means[0])], 1 << 70);
    assert_eq!(
        reduced.map(|w| w.value(&readings)),
        Some(Some(quanta(7 * 211)))
    );
}

#[test]
fn repeats_do_not_outweigh_other_places() {
    let readings = [10, 10, 10, 40].map(Size::from_quanta);
    let spot = |angle, weights| Spot {
        place: Place {
            along: FIRST,
            angle,
        },
        weights,
    };
    let spots = [
        spot(0, Weights::mean_of([0, 1, 2])),
        spot(90, Weights::mean_of([3])),
    ];
    let mean = mean_size(&spots).unwrap();
    assert_eq!(mean.value(&readings), Some(quanta(25)));
    let shape = &out_of_round(&spots)[0].weights;
    assert_eq!(shape.value(&readings), Some(quanta(-30)));
}

/// Sizes of journals and bores in quanta, and ovals on them.
pub const SIZE: core::ops::Range<i64> = 100_000_000..2_000_000_000;
pub const SHAPE: core::ops::Range<i64> = -1_000_000..1_000_000;

proptest! {
    #![proptest_config(crate::generators::config(256))]

    #[test]
    fn staggered_taper_does_not_hang_on_the_oval(
        (near, far) in (SIZE, SIZE),
        (a, b) in (SHAPE, SHAPE),
        (c, d) in (SHAPE, SHAPE),
    ) {
        let (_, shapes, tapers) = answers(&[
            (FIRST, 0, diameter(near, a, b, 0)),
            (FIRST, 90, diameter(near, a, b, 90)),
            (LAST, 45, diameter(far, c, d, 45)),
            (LAST, 135, diameter(far, c, d, 135)),
        ]);
        prop_assert_eq!(tapers, vec![(None, quanta(near - far))]);
        // Together the two ends see an oval whatever its direction.
        prop_assert_eq!(
            shapes,
            vec![(FIRST, 0, quanta(2 * a)), (LAST, 45, quanta(2 * d))]
        );
    }

    #[test]
    fn two_square_readings_miss_an_oval_at_45_degrees(size in SIZE, b in SHAPE) {
        let plain = [
            (FIRST, 0, diameter(size, 0, b, 0)),
            (FIRST, 90, diameter(size, 0, b, 90)),
            (LAST, 0, diameter(size, 0, b, 0)),
            (LAST, 90, diameter(size, 0, b, 90)),
        ];
        let (mean, shapes, _) = answers(&plain);
        prop_assert_eq!(mean, Some(quanta(size)));
        prop_assert_eq!(
            shapes,
            vec![(FIRST, 0, Exact::ZERO), (LAST, 0, Exact::ZERO)]
        );
        let mut staggered = plain;
        staggered[2] = (LAST, 45, diameter(size, 0, b, 45));
        staggered[3] = (LAST, 135, diameter(size, 0, b, 135));
        let (_, shapes, _) = answers(&staggered);
        prop_assert_eq!(shapes[1], (LAST, 45, quanta(2 * b)));
    }

    #[test]
    fn odd_lobes_are_invisible_and_even_ones_are_not(
        radius in SIZE,
        lobes in prop::array::uniform2(SHAPE),
    ) {
        // Opposite radii of an odd lobing differ by opposite amounts, of an
        // even one by the same.
        let diameters = |sign: i64| {
            let diameter = |lobe: i64| (radius + lobe) + (radius + sign * lobe);
            answers(&[(FIRST, 0, diameter(lobes[0])), (FIRST, 90, diameter(lobes[1]))])
        };
        let (mean, shapes, _) = diameters(-1);
        prop_assert_eq!(mean, Some(quanta(2 * radius)));
        prop_assert_eq!(shapes, vec![(FIRST, 0, Exact::ZERO)]);
        let (_, shapes, _) = diameters(1);
        prop_assert_eq!(shapes, vec![(FIRST, 0, quanta(2 * (lobes[0] - lobes[1])))]);
    }

    #[test]
    fn a_common_error_leaves_shapes_alone(
        sizes in prop::array::uniform4(SIZE),
        error in SHAPE,
    ) {
        let at = |error: i64| answers(&[
            (FIRST, 0, sizes[0] + error),
            (FIRST, 90, sizes[1] + error),
            (LAST, 0, sizes[2] + error),
            (LAST, 90, sizes[3] + error),
        ]);
        let ((mean, shapes, tapers), (moved, same_shapes, same_tapers)) = (at(0), at(error));
        prop_assert_eq!(shapes, same_shapes);
        prop_assert_eq!(tapers, same_tapers);
        prop_assert_eq!(mean.map(|m| m + quanta(error)), moved);
    }
}
