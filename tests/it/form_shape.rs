//! Size and axis of an oval.

use fenderbench::form::{OvalShape, oval};
use fenderbench::quantity::{Deviation, Exact, Weights};
use proptest::prelude::*;

use crate::form::{FIRST, SHAPE, quanta, spots};
use crate::golden::golden;
use crate::make::exact;

#[test]
fn ovals_of_four_directions() {
    for row in golden!("ovals.csv") {
        let value = |column| exact(&format!("{} {}", row.get(column), row.get("unit")));
        let columns = ["d0", "d45", "d90", "d135"].map(value);
        let read = columns.map(|size| i64::try_from(size.numerator()).unwrap());
        let diameters: Vec<_> = [0, 45, 90, 135].into_iter().zip(read).collect();
        let diameters: Vec<_> = diameters.iter().map(|&(t, d)| (FIRST, t, d)).collect();
        let (spots, readings) = spots(&diameters);
        let fit = oval(&spots).unwrap();
        let of = |weights: &Weights| weights.value(&readings).unwrap();
        assert_eq!(of(&fit.means[0].1), value("mean"), "{}", row.place());
        assert_eq!(of(&fit.cosine), value("cosine"), "{}", row.place());
        assert_eq!(of(&fit.sine), value("sine"), "{}", row.place());
        assert_eq!(fit.freedom, 1);
        let shape = fit.shape(&readings).unwrap();
        let size = i64::try_from(row.whole("size_quanta")).unwrap();
        assert_eq!(shape.size, Deviation::from_quanta(size), "{}", row.place());
        assert_eq!(shape.exact, row.get("exact") == "yes", "{}", row.place());
        let axis = shape
            .axis_ten_thousandths
            .map_or("none".to_owned(), |axis| {
                format!("{}.{:04}", axis / 10_000, axis % 10_000)
            });
        assert_eq!(axis, row.get("axis"), "{}", row.place());
    }
}

#[test]
fn numbers_without_a_small_common_denominator() {
    // 3 and 4 quanta and a little more each: A and B as from thousands of
    // uneven repeats.
    let d = 3_i128.pow(38);
    let shape = OvalShape::of(Exact::new(3 * d + 1, d), Exact::new(4 * d - 1, d + 2)).unwrap();
    assert_eq!(
        (shape.size, shape.exact),
        (Deviation::from_quanta(10), false)
    );
    let plain = OvalShape::of(quanta(3), quanta(4)).unwrap();
    assert_eq!(shape.axis_ten_thousandths, plain.axis_ten_thousandths);
    // 25 000 quanta and a little.
    let large = OvalShape::of(
        Exact::new(15_000 * d + 1, d),
        Exact::new(20_000 * d + 1, d + 2),
    );
    let large = large.unwrap();
    assert_eq!(
        (large.size, large.exact),
        (Deviation::from_quanta(50_000), false)
    );
    // A hair above and below a half.
    let half = |more| OvalShape::of(Exact::new(5 * d + more * d / 1_000, 4 * d), Exact::ZERO);
    assert_eq!(half(1).unwrap().size, Deviation::from_quanta(3));
    assert_eq!(half(-1).unwrap().size, Deviation::from_quanta(2));
    // Whole after all: halves of quanta, rounded to the even one.
    let five_quarters = OvalShape::of(Exact::new(5, 4), Exact::ZERO).unwrap();
    assert_eq!(
        (five_quarters.size, five_quarters.exact),
        (Deviation::from_quanta(2), false)
    );
    let fifth = OvalShape::of(Exact::new(3, 5), Exact::new(4, 5)).unwrap();
    assert_eq!((fifth.size, fifth.exact), (Deviation::from_quanta(2), true));
    // Beyond what sizes can give there is no answer.
    for beyond in [i128::MAX, -i128::MAX, i128::from(i64::MAX)] {
        assert_eq!(OvalShape::of(Exact::new(beyond, 1), Exact::ZERO), None);
        assert_eq!(OvalShape::of(quanta(1), Exact::new(beyond, 1)), None);
    }
}

proptest! {
    #![proptest_config(crate::generators::config(256))]

    #[test]
    fn the_size_is_the_nearest_whole_one(
        (p, q) in (SHAPE, SHAPE),
        d in 1_i128..1_000,
        e in 1_i128..1_000,
    ) {
        let shape = OvalShape::of(Exact::new(p.into(), d), Exact::new(q.into(), e)).unwrap();
        let n = i128::from(shape.size.quanta());
        // (n ± 1/2)² around 4 (p²/d² + q²/e²), all times (2de)².
        let square = 16 * ((i128::from(p) * e).pow(2) + (i128::from(q) * d).pow(2));
        let bound = |half: i128| ((2 * n + half) * d * e).pow(2);
        prop_assert!(n == 0 || bound(-1) <= square);
        prop_assert!(square <= bound(1));
        prop_assert_eq!(shape.exact, square == bound(0));
    }

    #[test]
    fn the_axis_turns_with_the_part((a, b) in (SHAPE, SHAPE), scale in 2_i64..1_000) {
        prop_assume!((a, b) != (0, 0));
        let axis = |a: i64, b: i64| {
            OvalShape::of(quanta(a), quanta(b)).unwrap().axis_ten_thousandths.unwrap()
        };
        let at = axis(a, b);
        prop_assert!(at < 1_800_000);
        // Directions counted from 45° on, from the far side, and a larger oval.
        prop_assert_eq!(axis(-b, a), (at + 450_000) % 1_800_000);
        prop_assert_eq!(axis(-a, -b), (at + 900_000) % 1_800_000);
        prop_assert!((1_800_000 - at) % 1_800_000 == axis(a, -b));
        prop_assert_eq!(axis(a * scale, b * scale), at);
    }
}
