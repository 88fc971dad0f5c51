//! The least-squares oval against what defines it.

use fenderbench::form::{LEVELS_MAX, Oval, OvalShape, Place, READINGS_MAX, Spot, oval};
use fenderbench::quantity::{Deviation, Entered, Exact, Size, Weights};
use fenderbench::session;
use proptest::prelude::*;

use crate::form::{FIRST, LAST, SHAPE, SIZE, diameter, quanta, spots};
use crate::make::{INCH, MM};

const DIRECTIONS: [u16; 4] = [0, 45, 90, 135];

/// How often each place was read: by level, then by direction.
type Design = Vec<[usize; 4]>;

/// The places of a design, one for each reading.
fn places(design: &Design) -> Vec<Place> {
    let mut places = Vec::new();
    for (along, counts) in (0_u8..).zip(design) {
        for (angle, count) in DIRECTIONS.into_iter().zip(counts) {
            places.extend(vec![Place { along, angle }; *count]);
        }
    }
    places
}

/// Readings taken at these places in this order, repeats together.
fn grouped(places: &[Place]) -> Vec<Spot> {
    let mut all = places.to_vec();
    all.sort_unstable();
    all.dedup();
    let spot = |place: Place| {
        let here = (0..places.len()).filter(|index| places[*index] == place);
        let weights = Weights::mean_of(here);
        Spot { place, weights }
    };
    all.into_iter().map(spot).collect()
}

/// The values of a fit: A, B, the means.
fn values(fit: &Oval, readings: &[Size]) -> (Exact, Exact, Vec<(u8, Exact)>) {
    let value = |weights: &Weights| weights.value(readings).unwrap();
    let means = fit.means.iter().map(|(along, mean)| (*along, value(mean)));
    (value(&fit.cosine), value(&fit.sine), means.collect())
}

fn sizes(quanta: &[i64]) -> Vec<Size> {
    quanta.iter().copied().map(Size::from_quanta).collect()
}

/// cos 2t and sin 2t, written down once more.
fn harmonic(angle: u16) -> (i128, i128) {
    match angle {
        0 => (1, 0),
        45 => (0, 1),
        90 => (-1, 0),
        _ => (0, -1),
    }
}

fn times(whole: i128, of: Exact) -> Exact {
    Exact::new(whole * of.numerator(), of.denominator())
}

/// What makes a fit the least-squares one: the residuals sum up to nothing
/// at each level, and against cos 2t and against sin 2t.
fn is_least_squares(fit: &Oval, places: &[Place], readings: &[Size]) {
    let (a, b, means) = values(fit, readings);
    let mut sums = vec![Exact::ZERO; means.len() + 2];
    for (place, reading) in places.iter().zip(readings) {
        let (c, s) = harmonic(place.angle);
        let level = means
            .iter()
            .position(|(along, _)| *along == place.along)
            .unwrap();
        let rest = Exact::from(*reading) - means[level].1 - times(c, a) - times(s, b);
        sums[level] = sums[level] + rest;
        let last = means.len();
        sums[last] = sums[last] + times(c, rest);
        sums[last + 1] = sums[last + 1] + times(s, rest);
    }
    assert!(sums.iter().all(|sum| *sum == Exact::ZERO), "{sums:?}");
}

/// The rank of the rows (level, cos 2t, sin 2t), by elimination.
fn rank(design: &Design) -> usize {
    let levels = design.len();
    let mut rows: Vec<Vec<i128>> = Vec::new();
    for place in places(design) {
        let (c, s) = harmonic(place.angle);
        let mut row = vec![0; levels + 2];
        row[usize::from(place.along)] = 1;
        (row[levels], row[levels + 1]) = (c, s);
        rows.push(row);
    }
    rows.sort_unstable();
    rows.dedup();
    let mut rank = 0;
    for column in 0..levels + 2 {
        let Some(pivot) = rows.iter().position(|row| row[column] != 0) else {
            continue;
        };
        let pivot = rows.swap_remove(pivot);
        rank += 1;
        for row in &mut rows {
            let factor = row[column];
            for (cell, above) in row.iter_mut().zip(&pivot) {
                *cell = *cell * pivot[column] - above * factor;
            }
        }
    }
    rank
}

#[test]
fn staggered_pairs_give_each_number_once() {
    let (spots, readings) = spots(&[
        (FIRST, 0, diameter(1_000, 30, -40, 0)),
        (FIRST, 90, diameter(1_000, 30, -40, 90)),
        (LAST, 45, diameter(2_000, 30, -40, 45)),
        (LAST, 135, diameter(2_000, 30, -40, 135)),
    ]);
    let fit = oval(&spots).unwrap();
    assert_eq!(fit.cosine.terms(), [(0, 1), (1, -1)]);
    assert_eq!(fit.cosine.denominator(), 2);
    assert_eq!(fit.sine.terms(), [(2, 1), (3, -1)]);
    assert_eq!(fit.sine.denominator(), 2);
    assert_eq!(
        fit.means,
        [
            (FIRST, Weights::mean_of([0, 1])),
            (LAST, Weights::mean_of([2, 3]))
        ]
    );
    assert_eq!(fit.freedom, 0);
    let shape = fit.shape(&readings).unwrap();
    assert_eq!(
        (shape.size, shape.exact),
        (Deviation::from_quanta(100), true)
    );
    assert_eq!(fit.shape(&readings[..3]), None);
}

#[test]
fn what_cannot_be_fitted_is_not() {
    let none = |diameters: &[(u8, u16, i64)]| assert_eq!(oval(&spots(diameters).0), None);
    none(&[]);
    // The plain way: whatever is at 45° leaves no trace.
    none(&[(FIRST, 0, 5), (FIRST, 90, 5), (LAST, 0, 5), (LAST, 90, 5)]);
    // Three directions at three levels: as many unknown means.
    none(&[(0, 0, 5), (1, 45, 5), (2, 90, 5)]);
    // A direction that no station has.
    let four = DIRECTIONS.map(|angle| (FIRST, angle, 5));
    none(&[&four[..], &[(FIRST, 30, 5)]].concat());
    let levels = u8::try_from(LEVELS_MAX).unwrap();
    let all = |levels: u8| (0..levels).flat_map(|along| DIRECTIONS.map(|t| (along, t, 5)));
    assert!(oval(&spots(&all(levels).collect::<Vec<_>>()).0).is_some());
    none(&all(levels + 1).collect::<Vec<_>>());
}

#[test]
fn as_many_readings_as_a_session_holds() {
    assert_eq!(usize::try_from(READINGS_MAX), Ok(session::READINGS_MAX));
    let check = |design: Design, solved: bool| {
        let places = places(&design);
        let fit = oval(&grouped(&places));
        assert_eq!(fit.is_some(), solved, "{design:?}");
        let scatter = |i: i64| 900_000_000 + 7_919 * i * i % 100_003;
        let readings: Vec<_> = (0..places.len() as i64).map(scatter).collect();
        if let Some(fit) = fit {
            let readings = sizes(&readings);
            let (a, b, _) = values(&fit, &readings);
            assert!(OvalShape::of(a, b).is_some());
        }
    };
    check(vec![[2_500; 4]], true);
    check(vec![[625; 4]; 4], true);
    check(vec![[2_503, 2_477, 2_521, 2_499]], true);
    check(
        vec![[1_249, 1_277, 1_231, 1_259], [1_223, 1_213, 1_283, 1_265]],
        true,
    );
    let three = vec![
        [829, 839, 821, 853],
        [857, 811, 823, 809],
        [827, 859, 863, 809],
    ];
    check(three, true);
    // Unevenly spread over four levels: still whole at this many…
    let uneven = |row: [usize; 4]| row.map(|count| count * 9 / 20);
    let four = [
        [574, 654, 586, 614],
        [578, 575, 577, 637],
        [670, 642, 608, 612],
        [590, 666, 610, 625],
    ];
    check(four.map(uneven).to_vec(), true);
    // …and no longer at all of them: no answer, rather than a wrong one.
    check(four.to_vec(), false);
    check(vec![[2_501, 2_500, 2_500, 2_500]], false);
}

fn design() -> impl Strategy<Value = Design> {
    let count = prop_oneof![3 => Just(0_usize), 3 => Just(1), 2 => 2_usize..7];
    let level = prop::array::uniform4(count)
        .prop_filter("a level without readings is none", |level| {
            level.iter().any(|count| 0 < *count)
        });
    prop::collection::vec(level, 1..=LEVELS_MAX)
}

fn solvable() -> impl Strategy<Value = Design> {
    design().prop_filter("A and B can be told", |design| {
        rank(design) == design.len() + 2
    })
}

proptest! {
    #![proptest_config(crate::generators::config(256))]

    #[test]
    fn there_is_a_fit_where_the_rank_allows_it(design in design()) {
        let fit = oval(&grouped(&places(&design)));
        prop_assert_eq!(fit.is_some(), rank(&design) == design.len() + 2);
    }

    #[test]
    fn data_of_the_model_come_back(
        design in solvable(),
        means in prop::array::uniform4(SIZE),
        (a, b) in (SHAPE, SHAPE),
    ) {
        let places = places(&design);
        let at = |place: &Place| diameter(means[usize::from(place.along)], a, b, place.angle);
        let readings = sizes(&places.iter().map(at).collect::<Vec<_>>());
        let fit = oval(&grouped(&places)).unwrap();
        let means: Vec<_> = (0_u8..).zip(means.map(quanta)).take(design.len()).collect();
        prop_assert_eq!(values(&fit, &readings), (quanta(a), quanta(b), means));
        prop_assert_eq!(fit.freedom, places.len() - design.len() - 2);
    }

    #[test]
    fn any_data_are_fitted_by_least_squares(
        design in solvable(),
        scatter in prop::collection::vec(SIZE, 120),
    ) {
        let places = places(&design);
        let readings = sizes(&scatter[..places.len()]);
        is_least_squares(&oval(&grouped(&places)).unwrap(), &places, &readings);
    }

    #[test]
    fn a_common_error_moves_the_means_alone(
        design in solvable(),
        scatter in prop::collection::vec(SIZE, 120),
        error in SHAPE,
    ) {
        let places = places(&design);
        let fit = oval(&grouped(&places)).unwrap();
        let at = |error: i64| {
            let moved: Vec<_> = scatter.iter().take(places.len()).map(|s| s + error).collect();
            values(&fit, &sizes(&moved))
        };
        let ((a, b, means), moved) = (at(0), at(error));
        let means: Vec<_> = means.into_iter().map(|(l, m)| (l, m + quanta(error))).collect();
        prop_assert_eq!(moved, (a, b, means));
    }

    #[test]
    fn the_order_of_readings_and_their_grouping_do_not_matter(
        (design, order) in solvable().prop_flat_map(|design| {
            let count = places(&design).len();
            (Just(design), Just((0..count).collect::<Vec<_>>()).prop_shuffle())
        }),
        scatter in prop::collection::vec(SIZE, 120),
    ) {
        let places = places(&design);
        let plain = values(&oval(&grouped(&places)).unwrap(), &sizes(&scatter[..places.len()]));
        let turned: Vec<_> = order.iter().map(|&i| places[i]).collect();
        let readings = sizes(&order.iter().map(|&i| scatter[i]).collect::<Vec<_>>());
        let fit = oval(&grouped(&turned)).unwrap();
        prop_assert_eq!(&values(&fit, &readings), &plain);
        // One spot for each reading, as they came.
        let single = |(index, &place): (usize, &Place)| Spot {
            place,
            weights: Weights::mean_of([index]),
        };
        let singles: Vec<_> = turned.iter().enumerate().map(single).collect();
        prop_assert_eq!(oval(&singles), Some(fit));
    }

    #[test]
    fn inches_and_millimetres_agree(tenths in prop::array::uniform4(19_000_i64..21_000)) {
        // 0.0001 in is 0.00254 mm.
        let fit = oval(&grouped(&DIRECTIONS.map(|angle| Place { along: FIRST, angle }))).unwrap();
        let shape = |text: &dyn Fn(i64) -> Entered| {
            let readings = tenths.map(|tenths| text(tenths).size());
            (values(&fit, &readings), fit.shape(&readings))
        };
        let inch = shape(&|t| {
            Entered::parse(&format!("{}.{:04}", t / 10_000, t % 10_000), INCH).unwrap()
        });
        let mm = shape(&|t| {
            let t = t * 254;
            Entered::parse(&format!("{}.{:05}", t / 100_000, t % 100_000), MM).unwrap()
        });
        prop_assert_eq!(inch, mm);
    }
}
