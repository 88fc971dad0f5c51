//! The drawings of features: every station is on them, in its place.

use std::collections::BTreeSet;

use fenderbench::present::{Drawing, SpotState, Stop, Why, drawing};
use fenderbench::session::{Direction, Feature, Field, Kind, RouteChoice, Session, Station};

use crate::make::{feature, session, station};
use crate::repository::sources;

pub fn engine() -> Session {
    session(vec![Field::Cylinders(4), Field::Mains(5)])
}

fn stop(station: Station, read: usize, asked: usize) -> Stop {
    Stop {
        station,
        values: vec!["1.0000 in".to_owned(); read],
        asked,
        why: Why::First,
    }
}

/// Stops of the fuller route, the first of them read.
pub fn stops(of: Feature) -> Vec<Stop> {
    let stations = of.stations(RouteChoice::Fuller).into_iter().enumerate();
    stations
        .map(|(n, at)| stop(at, usize::from(n == 0), 1))
        .collect()
}

/// Every place a kind has, on the route or not.
fn places(of: Feature) -> Vec<Station> {
    let kind = of.kind;
    let mut places = Vec::new();
    for part in kind.parts() {
        for level in kind.levels() {
            for direction in kind.directions() {
                places.push(of.station(*level, *direction).on(*part));
            }
        }
    }
    places
}

/// Every drawing there can be, with its station and the stops it was made of.
fn every() -> impl Iterator<Item = (Station, Vec<Stop>, Drawing)> {
    let session = engine();
    Kind::ALL.into_iter().flat_map(move |kind| {
        let feature = feature(kind, 1);
        let stops = stops(feature);
        let session = session.clone();
        places(feature).into_iter().map(move |now| {
            let drawn = drawing(&session, &stops, now);
            (now, stops.clone(), drawn)
        })
    })
}

/// The elements of a drawing, each as its attributes.
fn elements(drawn: &Drawing) -> Vec<&str> {
    let elements = drawn.markup.split('<').skip(1);
    elements
        .map(|element| element.split('>').next().unwrap())
        .collect()
}

fn class(element: &str) -> &str {
    let behind = element.split_once("class=\"").map_or("", |(_, b)| b);
    behind.split('"').next().unwrap()
}

#[test]
fn every_place_is_drawn_and_one_is_where_one_is() {
    for (now, stops, drawn) in every() {
        let all = elements(&drawn);
        let marks: Vec<_> = all.iter().map(|e| class(e)).collect();
        let count = |what: &str| marks.iter().filter(|m| m.starts_with(what)).count();
        let is_now = |m: &&&str| m.starts_with("mark") && m.ends_with(" now");
        assert_eq!(marks.iter().filter(is_now).count(), 1, "{now}");
        let on_route = stops.iter().any(|stop| stop.station == now);
        let shown = stops.len() + usize::from(!on_route);
        assert_eq!(drawn.spots.len(), shown, "{now}");
        // In the view onto the end those of the level, but the one that is
        // drawn as the gauge.
        let ends = drawn.spots.iter().filter(|s| s.on_end.is_some()).count();
        let unasked = places(Feature::of(now)).len() - shown;
        assert_eq!(count("mark unasked"), unasked, "{now}");
        let marked = shown + ends.saturating_sub(1) + unasked;
        assert_eq!(count("mark"), marked, "{now}");
        assert_eq!(count("gauge"), 1, "{now}");
        assert_eq!(count("head"), 1, "{now}");
    }
}

#[test]
fn marks_lie_within_the_drawing_each_in_its_own_place() {
    for (now, _, drawn) in every() {
        let mut taken = BTreeSet::new();
        for spot in &drawn.spots {
            for at in [Some(spot.at), spot.on_end].into_iter().flatten() {
                let inside = at.iter().all(|to| (30..=1170).contains(to));
                assert!(inside, "{now}: {} at {at:?}", spot.station);
                assert!(taken.insert(at), "{now}: two marks at {at:?}");
            }
        }
    }
}

#[test]
fn no_two_places_look_the_same() {
    let mut all = BTreeSet::new();
    for (now, _, drawn) in every() {
        let (_, lines) = drawn.markup.split_once('>').unwrap();
        assert!(all.insert((now.kind, lines.to_owned())), "{now}");
    }
}

#[test]
fn a_tap_finds_the_nearest_mark_whatever_the_box() {
    for (now, _, drawn) in every() {
        for [width, height] in [[300, 300], [344, 260], [280, 500]] {
            let side = width.min(height);
            for spot in &drawn.spots {
                for [x, y] in [Some(spot.at), spot.on_end].into_iter().flatten() {
                    let pixel = |at: i32, length: i32| at * side / 1200 + (length - side) / 2;
                    let point = [pixel(x, width), pixel(y, height)];
                    let found = drawn.nearest(point, [width, height]);
                    assert_eq!(found, Some(spot.station), "{now} in {width}×{height}");
                }
            }
        }
    }
    let nothing = Drawing::default();
    assert_eq!(nothing.nearest([0, 0], [0, 0]), None);
}

#[test]
fn what_is_read_is_filled_and_what_is_asked_again_half() {
    let bore = feature(Kind::Bore, 2);
    let [thrust, along] = bore.square_pair(fenderbench::session::Level::Top);
    let turned = thrust.facing(Direction::D45);
    let again = Stop {
        why: Why::Again,
        ..stop(along, 1, 2)
    };
    let other = station("bore/3/whole/top/0");
    let stops = [
        stop(thrust, 0, 1),
        stop(along, 1, 1),
        stop(other, 1, 1),
        again,
    ];
    let drawn = drawing(&engine(), &stops, turned);
    let states: Vec<_> = drawn.spots.iter().map(|s| (s.station, s.state)).collect();
    assert_eq!(
        states,
        [
            (thrust, SpotState::Open),
            (along, SpotState::Partly),
            (turned, SpotState::Open),
        ]
    );
    let name = "Bore 2 from the side and from above: top, 45° clockwise of thrust now; 0 of 3 \
                places read";
    assert_eq!(drawn.name, name);
    assert!(
        drawn
            .markup
            .contains(&format!("role=\"img\" aria-label=\"{name}\">"))
    );
}

#[test]
fn directions_turn_clockwise_as_their_words_say() {
    for (now, _, drawn) in every() {
        let square = drawn
            .spots
            .iter()
            .find(|s| s.station.direction == Direction::D0);
        let Some(on_end) = drawn
            .spots
            .iter()
            .find(|s| s.station == now)
            .and_then(|s| s.on_end)
        else {
            continue;
        };
        // The middle of the end is the middle of its first diameter.
        let kind = now.kind;
        let first = at_first(now);
        let upright = matches!(kind, Kind::Bore | Kind::Piston);
        let [x, y] = middle(kind);
        let from = [first[0] - x, first[1] - y];
        if upright {
            assert!(from[0] < 0 && from[1] == 0, "{now}: across, to the left");
        } else {
            assert!(from[0] == 0 && from[1] < 0, "{now}: up");
        }
        let to = [on_end[0] - x, on_end[1] - y];
        let turned = from[0] * to[1] - from[1] * to[0];
        let along = from[0] * to[0] + from[1] * to[1];
        // Across and down: clockwise is to turn by more than nothing. Roots
        // are rounded, so a hundredth of the square will do.
        let whole = from[0].pow(2) + from[1].pow(2);
        let [cos, sin] = match now.direction {
            Direction::D0 => [100, 0],
            Direction::D45 => [71, 71],
            Direction::D60 => [50, 87],
            Direction::D90 => [0, 100],
            Direction::D120 => [-50, 87],
            Direction::D135 => [-71, 71],
        };
        assert!(
            (along * 100 / whole - cos).abs() <= 2,
            "{now}: {along} of {whole}"
        );
        assert!(
            (turned * 100 / whole - sin).abs() <= 2,
            "{now}: {turned} of {whole}"
        );
        assert!(square.is_some());
    }
}

/// Where the first direction of a station's level is marked on the end.
fn at_first(station: Station) -> [i32; 2] {
    let first = station.facing(Direction::D0);
    let drawn = drawing(&engine(), &[], first);
    drawn.spots[0].on_end.unwrap()
}

/// A line of `plates.txt` of this kind, as numbers.
fn numbers(kind: Kind, code: &str) -> Vec<i32> {
    let mut mine = false;
    for line in plates().lines() {
        match line.split_once(' ') {
            Some(("=", kinds)) => mine = kinds.split(' ').any(|k| k == kind.key()),
            Some((this, rest)) if mine && this == code => {
                return rest.split(' ').map(|n| n.parse().unwrap()).collect();
            }
            _ => {}
        }
    }
    Vec::new()
}

fn middle(kind: Kind) -> [i32; 2] {
    let end = numbers(kind, "E");
    [end[0] * 10, end[1] * 10]
}

pub fn plates() -> String {
    let files = sources("src/present/drawing").into_iter();
    let mut plates = files.filter(|file| file.path.ends_with("plates.txt"));
    plates.next().unwrap().text
}

#[test]
fn bores_are_touched_from_inside_and_all_else_from_outside() {
    for (now, _, drawn) in every() {
        let end = numbers(now.kind, "E");
        let Some(radius) = end.get(2) else { continue };
        let away = |point: &str| {
            let point: Vec<f64> = point
                .split_whitespace()
                .map(|n| n.parse().unwrap())
                .collect();
            let [x, y] = [0, 1].map(|n: usize| point[n] - f64::from(end[n]));
            (x * x + y * y).sqrt()
        };
        let head = elements(&drawn)
            .into_iter()
            .find(|e| class(e) == "head")
            .unwrap();
        let path = head
            .split("d=\"")
            .nth(1)
            .unwrap()
            .split('"')
            .next()
            .unwrap();
        // The last two heads are those of the view onto the end.
        let heads: Vec<_> = path.split('M').skip(1).collect();
        for head in &heads[heads.len() - 2..] {
            let [tip, neck, _] = head.split('L').map(away).collect::<Vec<_>>()[..] else {
                panic!("{now}: {head}");
            };
            assert!((tip - f64::from(*radius)).abs() < 0.3, "{now}: {tip}");
            assert_eq!(now.kind.is_hole(), neck < tip, "{now}: {neck} {tip}");
        }
    }
}

#[test]
fn drawings_hold_lines_and_words_and_no_colours() {
    let style = sources("style").into_iter();
    let style: String = style.map(|file| file.text).collect();
    for (now, _, drawn) in every() {
        assert!(
            drawn.markup.len() < 6000,
            "{now}: {} bytes",
            drawn.markup.len()
        );
        assert!(
            !drawn.markup.contains('#') && !drawn.markup.contains("style"),
            "{now}"
        );
        let mut open = 0;
        for element in elements(&drawn) {
            let name = element.split(' ').next().unwrap();
            open += match name {
                "svg" | "text" => 1,
                "/svg" | "/text" => -1,
                _ => {
                    assert!(name == "path" && element.ends_with('/'), "{now}: {element}");
                    0
                }
            };
            assert_eq!(element.matches('"').count() % 2, 0, "{now}: {element}");
            for class in class(element).split(' ').filter(|c| !c.is_empty()) {
                // A mark that is open is the plain one.
                let known =
                    class == "open" || class == "part" || style.contains(&format!(".{class}"));
                assert!(known, "{now}: {class} has no style");
            }
        }
        assert_eq!(open, 0, "{now}");
    }
}
