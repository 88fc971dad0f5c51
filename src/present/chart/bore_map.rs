//! How a bore has worn, seen along its axis.

use super::glyph::{ONE, STEPS, cosine};
use super::read::{level_word, levels, places};
use super::rings::{Ring, Rings};
use super::{Body, Chart, Name, Table, quanta, round_step, told};
use crate::present::wording;
use crate::quantity::Exact;
use crate::session::{Direction, Feature, Kind, Level, Session, Station};

/// Directions and how they lie in the drawing.
const WAYS: [(Direction, char); 4] = [
    (Direction::D0, '↔'),
    (Direction::D90, '↕'),
    (Direction::D45, '↘'),
    (Direction::D135, '↗'),
];

/// The outline of a bore at each level, over the size it had where nothing
/// has worn; `None` of what is no bore, or was not read.
pub(in crate::present) fn bore_map(session: &Session, feature: Feature) -> Option<Chart> {
    if feature.kind != Kind::Bore {
        return None;
    }
    let unit = session.display_unit();
    let places = places(session, feature);
    let name = Name::new(&wording::feature(feature), "Shape at each level");
    let (unworn, worn): (Vec<_>, Vec<_>) = places
        .iter()
        .copied()
        .partition(|(station, _)| station.level == Level::Reference);
    let smallest = worn.iter().map(|(_, value)| *value).min()?;
    let count = i128::try_from(unworn.len()).unwrap_or_default();
    let (reference, told_as) = match unworn.iter().map(|(_, value)| *value).reduce(|a, b| a + b) {
        Some(sum) => (
            Exact::new(sum.numerator(), sum.denominator() * count),
            "where it is unworn",
        ),
        None => (smallest, "the smallest that was read"),
    };
    let mut table = Table {
        head: vec!["Level", "Direction", "Size", "Over the dashed circle"],
        rows: Vec::new(),
    };
    let mut rings = Vec::new();
    for level in levels(feature.kind, &worn) {
        let at = |direction| {
            let here = |(station, _): &&(Station, Exact)| {
                (station.level, station.direction) == (level, direction)
            };
            worn.iter().find(here).map(|(_, value)| *value)
        };
        let read = WAYS.map(|(direction, _)| at(direction));
        let mut texts = Vec::new();
        for ((direction, way), value) in WAYS.into_iter().zip(read) {
            let Some(value) = value else { continue };
            let shown = told(value, unit);
            texts.push(format!("{way} {shown}"));
            table.rows.push(vec![
                wording::level(level).to_owned(),
                wording::direction(feature.kind, direction).to_owned(),
                format!("{shown} {}", unit.sign()),
                format!("{} {}", super::near(value - reference, unit), unit.sign()),
            ]);
        }
        if let Some(over) = outline(read.map(|value| value.map(|value| quanta(value - reference))))
        {
            rings.push(Ring {
                label: level_word(level).to_owned(),
                texts,
                over,
                read: WAYS
                    .into_iter()
                    .zip(read)
                    .filter(|(_, value)| value.is_some())
                    .map(|((direction, _), _)| usize::from(direction.degrees() / 5))
                    .collect(),
            });
        }
    }
    if rings.is_empty() {
        let told = "No level was read in two directions square to each other: no shape to draw.";
        return Some(Chart::missing(name, told));
    }
    let over = rings.iter().flat_map(|ring| &ring.over);
    let most = over.map(|over| over.abs()).max().unwrap_or_default().max(1);
    let radius = quanta(reference) / 2;
    // So that the outermost stands out by two fifths of the circle.
    let times = round_step(1, radius * 2 / 5 / most);
    let notes = vec![format!(
        "Looking down the bore, drawn ×{times}: ↔ thrust, ↕ along the crank. Dashed circle: {} {} \
         ({told_as}). Dots: read there; between them it is drawn as an oval.",
        super::near(reference, unit),
        unit.sign()
    )];
    let rings = Rings {
        radius,
        times,
        rings,
    };
    Some(Chart {
        name,
        body: Some(Body::Rings(rings)),
        notes,
        table,
    })
}

/// How far the radius is over the circle at every step of 5°, drawn as an
/// oval through diameters in the order of [`WAYS`], given as they are over it.
/// Two square to each other must be there.
fn outline([thrust, along, turned, back]: [Option<i64>; 4]) -> Option<Vec<i64>> {
    let square = thrust.zip(along);
    let other = turned.zip(back);
    // Twice the mean, and twice half the difference of each square pair.
    let sum = match (square, other) {
        (Some((a, b)), Some((c, d))) => (a + b + c + d) / 2,
        (Some((a, b)), None) | (None, Some((a, b))) => a + b,
        (None, None) => return None,
    };
    let half = |pair: Option<(i64, i64)>, one: Option<i64>, two: Option<i64>| match pair {
        Some((a, b)) => a - b,
        None => match (one, two) {
            (Some(one), _) => 2 * one - sum,
            (_, Some(two)) => sum - 2 * two,
            (None, None) => 0,
        },
    };
    let [cosine_part, sine_part] = [half(square, thrust, along), half(other, turned, back)];
    let over = |step: usize| {
        let part = |size: i64, step| size * i64::from(cosine(step)) / i64::from(ONE);
        let oval = part(cosine_part, 2 * step) + part(sine_part, 2 * step + STEPS * 3 / 4);
        (sum + oval) / 4
    };
    Some((0..STEPS).map(over).collect())
}
