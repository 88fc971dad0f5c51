//! Run-out: bend and how far two axes are apart.
#![allow(
    clippy::float_arithmetic,
    reason = "cosines of its own to hold exact roots against"
)]

use fenderbench::form::{axes_apart, bend, taper_by_gaps};
use fenderbench::quantity::{Exact, Size, Unit, Weights, show};
use fenderbench::uncertainty::quanta;
use proptest::prelude::*;

use crate::golden::golden;
use crate::make::exact;

#[test]
fn offsets_are_those_of_the_table() {
    for row in golden!("run_outs.csv") {
        let inches = |column| exact(&format!("{} in", row.get(column)));
        let hours = u8::try_from(row.whole("hours")).unwrap();
        let apart = axes_apart(inches("first"), inches("second"), hours).unwrap();
        let shown = show(apart.distance, Unit::Inch, 5);
        // Both to five decimals, as the table has them.
        let expected = show(inches("apart"), Unit::Inch, 5);
        assert_eq!(
            shown.text[..7],
            expected.text[..7],
            "{} {}",
            shown.text,
            row.place()
        );
    }
}

#[test]
fn a_bend_is_half_the_swing() {
    let swings = [Size::from_quanta(762_000), Size::from_quanta(762_001)];
    let half = |weights: &Weights| bend(weights).unwrap().value(&swings);
    assert_eq!(half(&Weights::mean_of([0])), Some(exact("0.0015 in")));
    let mean = Weights::mean_of([0, 1]);
    assert_eq!(half(&mean), Some(Exact::new(1_524_001, 4)));
}

#[test]
fn a_root_is_told_from_a_whole_distance() {
    let swing = |text| exact(text);
    let is_exact = |first, second, hours| axes_apart(swing(first), swing(second), hours);
    let whole = is_exact("0.003 in", "0.004 in", 3).unwrap();
    assert!(whole.exact);
    assert_eq!(whole.distance, exact("0.0025 in"));
    assert!(!is_exact("0.002 in", "0.002 in", 3).unwrap().exact);
    assert!(!is_exact("0.002 in", "0.002 in", 1).unwrap().exact);
    assert!(is_exact("0.002 in", "0 in", 1).unwrap().exact);
    // A third of a quantum is rounded before anything else.
    let third = axes_apart(Exact::new(1, 3), Exact::ZERO, 0).unwrap();
    assert_eq!(
        (third.distance, third.exact),
        (Exact::new(333, 2_000), false)
    );
    let far = Exact::whole(1 << 40);
    assert_eq!(axes_apart(far, far, 0), None, "no swing that can be read");
}

proptest! {
    #[test]
    fn two_axes_are_apart_as_the_cosine_says(
        first in 0_i64..100_000_000_000,
        second in 0_i64..100_000_000_000,
        from in 1_u8..=12,
        to in 1_u8..=12,
    ) {
        let (a, b) = (Exact::whole(first), Exact::whole(second));
        let hours = from.abs_diff(to);
        let apart = axes_apart(a, b, hours).unwrap();
        prop_assert_eq!(Some(apart), axes_apart(b, a, 12 - hours));
        let t = f64::from(hours) * std::f64::consts::PI / 6.0;
        let (x, y) = (quanta(a), quanta(b));
        let square = x * x + y * y - 2.0 * x * y * libm::cos(t);
        let expected = square.max(0.0).sqrt() / 2.0;
        let found = quanta(apart.distance);
        prop_assert!((found - expected).abs() <= 1e-7 * (x + y) + 1.0, "{found} {expected}");
        // Never more than half the sum, nor less than half the difference.
        let twice = apart.distance + apart.distance;
        let unit = Exact::new(1, 500);
        prop_assert!(twice <= a + b + unit);
        prop_assert!((a - b).abs() <= twice + unit);
    }

    #[test]
    fn a_taper_by_gaps_undoes_the_change_of_the_gap(
        top in 1_i64..10_000_000,
        bottom in 1_i64..10_000_000,
    ) {
        let gaps = [top, bottom].map(Size::from_quanta);
        let taper = taper_by_gaps(&Weights::mean_of([0]), &Weights::mean_of([1])).unwrap();
        let taper = taper.value(&gaps).unwrap();
        let change = fenderbench::form::ring_gap_change(taper);
        prop_assert_eq!(change, Exact::whole(top - bottom));
    }
}
