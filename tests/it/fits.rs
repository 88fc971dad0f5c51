//! Published fits: the worst clearances by subtraction of exact sizes.

use fenderbench::quantity::Exact;
use fenderbench::verdict::{Band, Comparison, Limits, compare};

use crate::golden::{Row, golden};
use crate::make::exact;

fn length(row: &Row, column: &str) -> Exact {
    exact(&format!("{} {}", row.get(column), row.get("unit")))
}

#[test]
fn worst_clearances_are_as_published() {
    for row in golden!("fits.csv") {
        let least = length(&row, "hole_low") - length(&row, "shaft_high");
        let greatest = length(&row, "hole_high") - length(&row, "shaft_low");
        assert_eq!(least, length(&row, "clearance_min"), "{}", row.place());
        assert_eq!(greatest, length(&row, "clearance_max"), "{}", row.place());
    }
}

#[test]
fn worst_clearances_lie_just_inside_their_limits() {
    let quantum = Exact::new(1, 1);
    for row in golden!("fits.csv") {
        let (low, high) = (length(&row, "clearance_min"), length(&row, "clearance_max"));
        let limits = Limits {
            new: Band::new(Some(low), Some(high)),
            service: Band::default(),
        };
        let least = length(&row, "hole_low") - length(&row, "shaft_high");
        let greatest = length(&row, "hole_high") - length(&row, "shaft_low");
        let check = |value, expected| {
            assert_eq!(compare(value, &limits), expected, "{}", row.place());
        };
        check(least, Comparison::InsideNew);
        check(greatest, Comparison::InsideNew);
        check(least - quantum, Comparison::OutsideNew(-quantum));
        check(greatest + quantum, Comparison::OutsideNew(quantum));
    }
}
