//! How a micrometer is drawn: line by line, read off the markup.

use expect_test::expect;
use fenderbench::present::instrument::Micrometer;

use crate::instrument::{every, micrometer};
use crate::make::INCH;

/// A stroke of a drawing: its class and its points.
type Stroke = (String, Vec<[i64; 2]>);

/// The strokes of the drawings in some markup, and their numbers with places.
fn strokes(svg: &str) -> (Vec<Stroke>, Vec<([i64; 2], i64)>) {
    let inside = |text: &str, name: &str| {
        let rest = text.split_once(&format!("{name}=\"")).unwrap().1;
        rest.split_once('"').unwrap().0.to_owned()
    };
    let number = |text: &str| text.parse::<i64>().unwrap_or_else(|_| panic!("{text}"));
    let mut found = Vec::new();
    for path in svg.split("<path ").skip(1) {
        let (class, data) = (inside(path, "class"), inside(path, "d"));
        for stroke in data.split('M').skip(1) {
            let points = stroke.split('L').map(|point| {
                let (x, y) = point.split_once(' ').unwrap();
                [number(x), number(y)]
            });
            found.push((class.clone(), points.collect()));
        }
    }
    let labels = svg.split("<text ").skip(1).map(|label| {
        let (_, rest) = label.split_once('>').unwrap();
        let place = [number(&inside(label, "x")), number(&inside(label, "y"))];
        (place, number(rest.split_once('<').unwrap().0))
    });
    (found, labels.collect())
}

/// The two drawings of a micrometer.
fn drawn(set: Micrometer, marked: bool) -> Vec<String> {
    let markup = set.drawing(marked);
    assert!(!markup.contains("style="));
    let drawings = markup.split_inclusive("</svg>").map(str::to_owned);
    drawings.collect()
}

/// Settings spread over all scales.
fn some(settings: &[Micrometer]) -> impl Iterator<Item = Micrometer> + '_ {
    settings.iter().step_by(7).chain(settings.last()).copied()
}

#[test]
fn a_vernier_line_coincides_exactly_where_it_is_the_digit() {
    for settings in every() {
        for set in some(&settings) {
            let drawings = drawn(set, true);
            assert_eq!(drawings.len(), 1 + usize::from(set.has_vernier()));
            let Some(vernier) = drawings.get(1) else {
                continue;
            };
            let (strokes, numbers) = strokes(vernier);
            let lines = strokes.iter().filter(|(class, _)| class == "line");
            let seam = 500;
            let (mut vernier, mut thimble) = (Vec::new(), Vec::new());
            for points in lines.map(|(_, points)| points) {
                match points[..] {
                    [[x, 210], [_, y]] if y == seam => vernier.push(x),
                    [[x, y], [to, _]] if y == seam && x == to => thimble.push(x),
                    _ => {}
                }
            }
            assert_eq!(vernier.len(), 11);
            let coincide: Vec<_> = (0..)
                .zip(&vernier)
                .filter(|(_, x)| thimble.contains(x))
                .collect();
            let digits: Vec<i64> = coincide.iter().map(|(line, _)| *line).collect();
            let expected = if set.tenth() == 0 {
                vec![0, 10]
            } else {
                vec![set.tenth()]
            };
            assert_eq!(digits, expected, "{}", set.text());
            let on = strokes.iter().find(|(class, _)| class == "on").unwrap();
            assert_eq!(on.1[0][0], *coincide[0].1);
            // Each line of the vernier bears its number.
            for (line, x) in (0..).zip(&vernier) {
                assert!(numbers.contains(&([*x, 100], line % 10)));
            }
        }
    }
}

#[test]
fn the_thimble_covers_the_sleeve_by_what_it_reads() {
    for settings in every() {
        for set in some(&settings) {
            let turn = if set.unit() == INCH { 250 } else { 500 };
            let (strokes, numbers) = strokes(&drawn(set, true)[0]);
            let solid = strokes.iter().find(|(class, _)| class == "solid").unwrap();
            let edge = solid.1[1][0];
            let axis = 890;
            // Lines of the sleeve start at the reading line and stand on it.
            let of_sleeve = |(class, points): &&Stroke| {
                class == "line" && points[0][1] == axis && points[0][0] == points[1][0]
            };
            let sleeve: Vec<i64> = strokes
                .iter()
                .filter(of_sleeve)
                .map(|(_, p)| p[0][0])
                .collect();
            let last = *sleeve.last().unwrap();
            assert!(
                last <= edge && edge < last + 110,
                "{}: {last} {edge}",
                set.text()
            );
            let past = (edge - last) * turn - 110 * (set.at() % turn);
            assert!(past.abs() < 2 * turn, "{}: {past}", set.text());
            if set.at() / turn < 15 {
                assert_eq!(i64::try_from(sleeve.len()).unwrap(), set.at() / turn + 1);
            }
            for pair in sleeve.windows(2) {
                assert!((109..=111).contains(&(pair[1] - pair[0])), "{sleeve:?}");
            }
            // The latest number that is out stands over its line.
            let step = if set.unit() == INCH { 1_000 } else { 5_000 };
            let latest = set.at() / step * step;
            let back = (set.at() / turn - latest / turn) * 110;
            let near = |(place, number): &([i64; 2], i64)| {
                *number == latest / 1_000 && (place[0] - (last - back)).abs() <= 2
            };
            assert!(numbers.iter().any(near), "{}: {numbers:?}", set.text());
        }
    }
}

#[test]
fn the_line_that_counts_stands_at_the_reading_line_or_just_below() {
    for settings in every() {
        for set in some(&settings) {
            let (strokes, _) = strokes(&drawn(set, true)[0]);
            let on: Vec<_> = strokes.iter().filter(|(class, _)| class == "on").collect();
            let [_, (_, thimble)] = on[..] else {
                panic!("{on:?}");
            };
            let below = thimble[0][1] - 890;
            assert!(0 <= below, "{}", set.text());
            assert_eq!(below == 0, set.tenth() == 0, "{}", set.text());
            // The next one stands above.
            let edge = thimble[0][0];
            let above = strokes.iter().any(|(class, points)| {
                let high = 890 - points[0][1];
                class == "line" && points[0][0] == edge && 0 < high && high < 190
            });
            assert!(above, "{}", set.text());
        }
    }
}

#[test]
fn neighbours_are_drawn_otherwise_and_only_helpers_are_marked() {
    for settings in every() {
        let drawings: Vec<_> = settings.iter().map(|set| set.drawing(false)).collect();
        for (set, pair) in settings.iter().zip(drawings.windows(2)) {
            let lines = |svg: &str| strokes(svg).0;
            assert!(lines(&pair[0]) != lines(&pair[1]), "{}", set.text());
            assert!(!pair[0].contains("class=\"on\""));
        }
    }
}

#[test]
fn the_drawing_is_told_in_words_that_do_not_tell_the_reading() {
    let set = micrometer(INCH, 1, "2").set_at(2_683);
    let drawing = set.drawing(false);
    let words = drawing.split_once("aria-label=\"").unwrap().1;
    let words = words.split_once('"').unwrap().0;
    expect!["2–3. Sleeve numbers: 2. Sleeve lines: 2. Thimble line: 18. Vernier line: 3"]
        .assert_eq(words);
    assert!(!words.contains(&set.text()));
}
