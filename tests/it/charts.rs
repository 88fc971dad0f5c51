//! Charts: where things are drawn, and that their tables say the same.

use expect_test::{ExpectFile, expect_file};
use fenderbench::assess::assess;
use fenderbench::present::{Anchor, Chart, FeatureView, FindingsView, Ink, Picture, Shape};
use fenderbench::present::{KindView, findings};
use fenderbench::session::{Field, Kind, Session};
use plotters::prelude::SVGBackend;

use crate::make::{limit, measured, sample};

/// A phone of 360 px, less its margins.
const PHONE: (i32, i32) = (328, 16);

const SAMPLES: [&str; 3] = ["hill-climb-six", "pump-twin", "quarry-v-twin"];

fn view(session: &Session) -> FindingsView {
    findings(session, &assess(session))
}

fn kind(session: &Session, kind: Kind) -> KindView {
    let kinds = view(session).kinds.into_iter();
    kinds.into_iter().find(|view| view.kind == kind).unwrap()
}

fn features(kind: &KindView) -> impl Iterator<Item = &FeatureView> {
    kind.features.iter()
}

/// The chart of this name among those of a kind and its features.
fn chart(session: &Session, of: Kind, name: &str) -> Chart {
    let kind = kind(session, of);
    let mut all: Vec<Chart> = kind.ladders.iter().chain(&kind.repeats).cloned().collect();
    all.extend(features(&kind).flat_map(|feature| feature.charts.clone()));
    let named = |chart: &&Chart| format!("{}: {}", chart.name.of, chart.name.what) == name;
    let names: Vec<_> = all.iter().map(|chart| chart.name.clone()).collect();
    let found = all.iter().find(named);
    found
        .unwrap_or_else(|| panic!("{name} of {names:?}"))
        .clone()
}

/// The picture as the backend of plotters draws it, with its words.
fn svg(picture: &Picture) -> String {
    let inks = [
        (16, 28, 38),
        (57, 69, 78),
        (11, 79, 158),
        (163, 60, 0),
        (211, 221, 230),
    ];
    let mut text = String::new();
    let backend = SVGBackend::with_string(&mut text, picture.size(16));
    picture.draw(backend, 16, inks).unwrap();
    let words: String = picture
        .words
        .iter()
        .map(|word| {
            let anchor = match word.anchor {
                Anchor::Start => "start",
                Anchor::Middle => "middle",
                Anchor::End => "end",
            };
            let (x, y) = word.at;
            let weight = if word.is_title {
                " font-weight=\"bold\""
            } else {
                ""
            };
            format!(
                "<text x=\"{x}\" y=\"{y}\" text-anchor=\"{anchor}\" font-size=\"{}\"{weight} \
             font-family=\"sans-serif\">{}</text>\n",
                PHONE.1, word.text
            )
        })
        .collect();
    text.replace("</svg>", &(words + "</svg>"))
}

fn check(sample_of: &str, of: Kind, name: &str, expect: &ExpectFile) {
    let chart = chart(&sample(sample_of), of, name);
    expect.assert_eq(&svg(&chart.lay_out(PHONE.0, PHONE.1)));
}

#[test]
fn one_of_each_is_drawn_as_it_was_looked_at() {
    check(
        "hill-climb-six",
        Kind::Bore,
        "Bores: Size",
        &expect_file!["../charts/size_ladder.svg"],
    );
    check(
        "hill-climb-six",
        Kind::Piston,
        "Pistons: Piston-to-wall",
        &expect_file!["../charts/clearance_ladder.svg"],
    );
    check(
        "quarry-v-twin",
        Kind::Bore,
        "Bore 1: Shape at each level",
        &expect_file!["../charts/bore_map.svg"],
    );
    check(
        "hill-climb-six",
        Kind::MainJournal,
        "Main journal 3: Size along it",
        &expect_file!["../charts/profile.svg"],
    );
    check(
        "hill-climb-six",
        Kind::Bore,
        "Bores: Dial bore gauge",
        &expect_file!["../charts/repeats.svg"],
    );
}

/// The middle of a shape from left to right, in sixteenths of a pixel.
fn middle(points: &[(i32, i32)]) -> i32 {
    let xs = || points.iter().map(|(x, _)| *x);
    i32::midpoint(xs().min().unwrap(), xs().max().unwrap())
}

fn tapered() -> Session {
    let fields = vec![
        Field::Cylinders(1),
        limit("bore/size/new_low", "82.000 mm"),
        limit("bore/size/new_high", "82.020 mm"),
        limit("bore/size/service", "82.100 mm"),
    ];
    let readings = [
        ("bore/1/whole/top/0", "82.050 mm"),
        ("bore/1/whole/bottom/0", "82.025 mm"),
    ];
    measured(fields, &readings)
}

#[test]
fn values_stand_where_the_scale_says() {
    // Of 328 px the words `bottom` and `82.025` take six letters of 10.24 px
    // and a gap of 6 px each: 67 px; 10 px stay free at both ends of the scale.
    // So 82.000 is at 77 px and 82.100 at 328 − 77 = 251 px.
    let picture = chart(&tapered(), Kind::Bore, "Bore 1: Size along it").lay_out(PHONE.0, PHONE.1);
    let dots: Vec<_> = picture
        .shapes
        .iter()
        .filter_map(|shape| match shape {
            Shape::Fill(Ink::Ink, points) => Some(middle(points)),
            _ => None,
        })
        .collect();
    // Half and a quarter of the way.
    assert_eq!(dots, [164 * 16, (77 * 16) + 174 * 4]);
    let limits: Vec<_> = picture
        .shapes
        .iter()
        .filter_map(|shape| match shape {
            Shape::Area(Ink::Orange, ends) => Some(middle(ends)),
            _ => None,
        })
        .collect();
    assert_eq!(limits, [251 * 16]);
    let band = picture.shapes.iter().find_map(|shape| match shape {
        Shape::Area(Ink::Tint, [from, to]) => Some([from.0, to.0]),
        _ => None,
    });
    // A fifth of the way.
    assert_eq!(band, Some([77 * 16, 77 * 16 + 174 * 16 / 5]));
    let words: Vec<_> = picture
        .words
        .iter()
        .map(|word| word.text.as_str())
        .collect();
    assert_eq!(
        words,
        [
            "new 82.000 to 82.020 mm",
            "service limit 82.100 mm",
            "top",
            "82.050",
            "bottom",
            "82.025",
            "0.02 mm",
            "larger →"
        ]
    );
}

#[test]
fn a_shape_is_drawn_so_many_times_larger() {
    // The longest diameter of bore 5 is 0.118 mm over the unworn 82.010 mm,
    // its radius 0.059 mm. Two fifths of 41.005 mm are 278 times that: ×200.
    let map = chart(
        &sample("hill-climb-six"),
        Kind::Bore,
        "Bore 5: Shape at each level",
    );
    assert!(map.notes[0].contains("drawn ×200"), "{:?}", map.notes);
    assert!(
        map.notes[0].contains("82.010 mm (where it is unworn)"),
        "{:?}",
        map.notes
    );
    // The circle has 5/16 of a third of the width: 34 px for 41.005 mm. The
    // top is out by 34 × 200 × 0.059 / 41.005 = 9.8 px: 44 px from its middle.
    let picture = map.lay_out(PHONE.0, PHONE.1);
    let outline = picture.shapes.iter().find_map(|shape| match shape {
        Shape::Line(Ink::Ink, _, points) if 70 < points.len() => Some(points.clone()),
        _ => None,
    });
    let outline = outline.unwrap();
    let xs = || outline.iter().map(|(x, _)| *x);
    let half = (xs().max().unwrap() - xs().min().unwrap()) / 2;
    assert!((43 * 16..45 * 16).contains(&half), "{half}");
}

#[test]
fn an_outline_goes_through_what_was_read() {
    // Two square pairs with the same mean: an oval goes through all four.
    let readings = [
        ("bore/1/whole/top/0", "82.060 mm"),
        ("bore/1/whole/top/90", "82.020 mm"),
        ("bore/1/whole/top/45", "82.050 mm"),
        ("bore/1/whole/top/135", "82.030 mm"),
        ("bore/1/whole/reference/0", "82.000 mm"),
    ];
    let session = measured(vec![Field::Cylinders(1)], &readings);
    let map = chart(&session, Kind::Bore, "Bore 1: Shape at each level");
    let picture = map.lay_out(220, 16);
    let outline = picture.shapes.iter().find_map(|shape| match shape {
        Shape::Line(Ink::Ink, _, points) if 70 < points.len() => Some(points.clone()),
        _ => None,
    });
    let outline = outline.unwrap();
    let across = |step: usize| {
        let ((a, b), (c, d)) = (outline[step], outline[step + 36]);
        ((a - c).pow(2) + (b - d).pow(2)).isqrt()
    };
    // A circle of 2 × 68.75 px, and each diameter so much more, as read.
    let over = [0, 18, 9, 27].map(|step| across(step) - 2 * 220 * 16 * 5 / 16);
    let unit = over[1];
    for (over, times) in over.into_iter().zip([60, 20, 50, 30]) {
        assert!((over * 20 - unit * times).abs() < 100, "{over} of {unit}");
    }
}

#[test]
fn tables_say_what_the_findings_say() {
    let mut compared = 0;
    for name in SAMPLES {
        for kind in view(&sample(name)).kinds {
            for ladder in &kind.ladders {
                for row in &ladder.table.rows {
                    assert_eq!(row.len(), ladder.table.head.len());
                    let feature = features(&kind).find(|feature| feature.title == row[0]);
                    let feature = feature.unwrap_or_else(|| panic!("{}", row[0]));
                    for number in row[1..3].iter().filter(|number| *number != "—") {
                        let mut rows = feature.rows.iter();
                        assert!(rows.any(|row| row.value == *number), "{}: {number}", row[0]);
                        compared += 1;
                    }
                    if row[1] != "—" {
                        let mut rows = feature.rows.iter();
                        assert!(rows.any(|told| told.words == row[4]), "{row:?}");
                    }
                }
            }
        }
    }
    assert!(100 < compared, "{compared}");
}

#[test]
fn what_stands_at_a_row_is_in_its_table() {
    for name in SAMPLES {
        for kind in view(&sample(name)).kinds {
            let shown = features(&kind).flat_map(|feature| &feature.charts);
            for chart in kind
                .ladders
                .iter()
                .chain(shown)
                .filter(|chart| chart.is_drawn())
            {
                assert!(!chart.table.rows.is_empty(), "{:?}", chart.name);
                let picture = chart.lay_out(PHONE.0, PHONE.1);
                for word in &picture.words {
                    let (x, _) = word.at;
                    assert!((0..=picture.width).contains(&x), "{word:?}");
                }
                assert!(picture.words.iter().all(|word| word.at.1 <= picture.height));
            }
        }
    }
}

#[test]
fn nothing_to_draw_is_told_in_a_sentence() {
    let told = |session: &Session, of, name| {
        let chart = chart(session, of, name);
        assert!(!chart.is_drawn());
        assert_eq!(chart.lay_out(PHONE.0, PHONE.1).shapes, []);
        chart.notes.join(" ")
    };
    let none = measured(vec![Field::Cylinders(1)], &[]);
    assert_eq!(
        told(&none, Kind::Bore, "Bores: Size"),
        "None of them was measured yet."
    );
    let readings = [("end_play/1/whole/centre/0", "0.120 mm")];
    let one = measured(
        vec![Field::Cylinders(1), Field::Measure(Kind::EndPlay, true)],
        &readings,
    );
    assert!(
        chart(&one, Kind::EndPlay, "Crank end play: End play").is_drawn(),
        "its doubt is a scale"
    );
    let readings = [("main_journal/1/whole/first/0", "60.000 mm")];
    let level = measured(vec![Field::Cylinders(1)], &readings);
    assert_eq!(
        told(&level, Kind::MainJournal, "Main journal 1: Size along it"),
        "Read at one level only: a second one shows how it changes along."
    );
    let readings = [
        ("bore/1/whole/top/0", "82.000 mm"),
        ("bore/1/whole/bottom/0", "82.010 mm"),
    ];
    let way = measured(vec![Field::Cylinders(1)], &readings);
    assert_eq!(
        told(&way, Kind::Bore, "Bore 1: Shape at each level"),
        "No level was read in two directions square to each other: no shape to draw."
    );
}

#[test]
fn lines_are_seen_however_fine_the_screen() {
    let chart = chart(&tapered(), Kind::Bore, "Bore 1: Size along it");
    let picture = chart.lay_out(PHONE.0, PHONE.1);
    for sixteenths in [8, 16, 42, 64] {
        let (width, height) = picture.size(sixteenths);
        assert_eq!(i64::from(width), i64::from((328 * sixteenths + 15) / 16));
        let mut text = String::new();
        let backend = SVGBackend::with_string(&mut text, (width, height));
        picture.draw(backend, sixteenths, [(0, 0, 0); 5]).unwrap();
        assert!(
            !text.contains("width=\"0\"") && !text.contains("height=\"0\""),
            "{text}"
        );
    }
}
