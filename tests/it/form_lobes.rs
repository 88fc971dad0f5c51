//! What two-point diameters see of lobed shapes, and what they do not.

use fenderbench::form::{OvalShape, out_of_round, oval};
use fenderbench::quantity::Deviation;

use crate::form::{FIRST, quanta, spots};
use crate::golden::golden;

/// The directions of a fit.
const DIRECTIONS: [u16; 4] = [0, 45, 90, 135];

/// 10⁹ times the cosine of 0°, 15°, … 90°.
const COSINES: [i64; 7] = [
    1_000_000_000,
    965_925_826,
    866_025_404,
    707_106_781,
    500_000_000,
    258_819_045,
    0,
];

/// 10⁹ times the cosine of a multiple of 15°. Half a turn on it is exactly
/// the opposite number.
fn cosine(degrees: i64) -> i64 {
    assert_eq!(degrees % 15, 0);
    match degrees.rem_euclid(360) {
        d @ 0..=90 => COSINES[usize::try_from(d / 15).unwrap()],
        d @ 91..=180 => -cosine(180 - d),
        d => cosine(360 - d),
    }
}

/// The fitted oval of four diameters at one level, and the largest
/// difference of square ones.
fn seen(diameter: impl Fn(i64) -> i64) -> (OvalShape, Deviation) {
    let diameters = DIRECTIONS.map(|angle| (FIRST, angle, diameter(angle.into())));
    let (spots, readings) = spots(&diameters);
    let fit = oval(&spots).unwrap();
    let square = out_of_round(&spots);
    let square = square.iter().map(|o| o.weights.value(&readings).unwrap());
    let square = square.map(|o| o.abs().numerator()).max().unwrap();
    (
        fit.shape(&readings).unwrap(),
        Deviation::from_quanta(square.try_into().unwrap()),
    )
}

#[test]
fn two_points_see_even_lobes_and_a_fit_the_second_harmonic() {
    // A radius of 50 mm and lobes of 0.1 mm, in quanta: with the cosines
    // above whole to the last digit.
    let (radius, amplitude) = (500_000_000_i64, 1_000_000_i64);
    for row in golden!("lobes.csv") {
        let lobes = i64::try_from(row.whole("lobes")).unwrap();
        let radius = |t: i64| radius * 1_000 + amplitude * cosine(lobes * t) / 1_000_000;
        let diameter = |t: i64| radius(t) + radius(t + 180);
        let around = || (0..180).step_by(15).map(diameter);
        let vary = around().max().unwrap() - around().min().unwrap();
        let times = |column| row.whole(column) * i128::from(amplitude) * 1_000;
        assert_eq!(i128::from(vary), times("diameters_vary"), "{}", row.place());
        let (shape, _) = seen(diameter);
        let fitted = Deviation::from_quanta(times("fitted").try_into().unwrap());
        assert_eq!((shape.size, shape.exact), (fitted, true), "{}", row.place());
        let axis = (fitted != Deviation::from_quanta(0)).then_some(0);
        assert_eq!(shape.axis_ten_thousandths, axis, "{}", row.place());
    }
}

#[test]
fn a_reuleaux_triangle_measures_round() {
    let width = 1_000_000_000_i64;
    // From the middle to a corner: w / √3.
    let corner = i64::try_from((i128::from(width).pow(2) / 3).isqrt()).unwrap();
    for row in golden!("reuleaux.csv") {
        let of_width = |length: i64| i128::from((length + width / 200_000) * 100_000 / width);
        assert_eq!(
            of_width(corner),
            row.whole("circumscribed"),
            "{}",
            row.place()
        );
        assert_eq!(
            of_width(width - corner),
            row.whole("inscribed"),
            "{}",
            row.place()
        );
        assert_eq!(
            of_width(2 * corner - width),
            row.whole("radial"),
            "{}",
            row.place()
        );
    }
    for turned in (0..360).step_by(15) {
        // How far the shape reaches from its middle: to a corner where the
        // direction is within 30° of one, else to the arc around the corner
        // on the other side.
        let reach = |t: i64| {
            let from_corner = (t - turned + 60).rem_euclid(120) - 60;
            if (-30..30).contains(&from_corner) {
                corner * cosine(from_corner) / 1_000_000_000
            } else {
                let from_arc = (t - turned).rem_euclid(120) - 60;
                width - corner * cosine(from_arc) / 1_000_000_000
            }
        };
        let (shape, square) = seen(|t| reach(t) + reach(t + 180));
        let nothing = Deviation::from_quanta(0);
        assert_eq!((shape.size, shape.exact, square), (nothing, true, nothing));
        assert_eq!(shape.axis_ten_thousandths, None);
        // It is anything but round.
        let around = || (0..360).step_by(15).map(reach);
        assert!(width / 10 < around().max().unwrap() - around().min().unwrap());
    }
}

#[test]
fn two_square_diameters_show_an_oval_by_the_cosine() {
    // An oval of 0.01 mm; A and B are the nearest whole quanta.
    let (mean, size) = (500_000_000, 100_000);
    for row in golden!("square_diameters.csv") {
        let axis = i64::try_from(row.whole("axis")).unwrap();
        let part =
            |degrees: i64| (size / 2 * cosine(degrees) + 500_000_000).div_euclid(1_000_000_000);
        let (a, b) = (part(2 * axis), part(2 * axis - 90));
        let diameters = [
            (FIRST, 0, mean + a),
            (FIRST, 90, mean - a),
            (FIRST, 45, mean + b),
            (FIRST, 135, mean - b),
        ];
        let (spots, readings) = spots(&diameters);
        let plain = out_of_round(&spots[..2]);
        let thousandths = i64::try_from(row.whole("part")).unwrap();
        let expected = Some(quanta(size * thousandths / 1_000));
        assert_eq!(
            plain[0].weights.value(&readings),
            expected,
            "{}",
            row.place()
        );
        // The two alone cannot be fitted; all four show all of it.
        assert_eq!(oval(&spots[..2]), None);
        let shape = oval(&spots).unwrap().shape(&readings).unwrap();
        assert_eq!(shape.size, Deviation::from_quanta(size), "{}", row.place());
        // Whole quanta of the parts turn the axis by less than 0.001°.
        let found = i64::from(shape.axis_ten_thousandths.unwrap());
        assert!((found - axis * 10_000).abs() < 10, "{}", row.place());
    }
}
