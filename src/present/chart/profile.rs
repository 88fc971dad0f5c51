//! How the size of a feature changes along it.

use super::glyph::{Glyph, character};
use super::ladder::within;
use super::read::{level_word, levels, places, rank};
use super::rows::{Joint, Row, Rows};
use super::{Body, Chart, Name, Table, quanta, told};
use crate::assess::{Assessment, Finding};
use crate::present::wording;
use crate::quantity::Exact;
use crate::session::{Direction, Feature, Quantity, Session};

/// The sizes along a round feature, level by level, each direction by itself;
/// `None` where nothing of that was read.
pub(in crate::present) fn profile(
    session: &Session,
    assessment: &Assessment,
    feature: Feature,
) -> Option<Chart> {
    let kind = feature.kind;
    if kind.directions().len() < 2 || kind.levels().len() < 2 {
        return None;
    }
    let unit = session.display_unit();
    let places = places(session, feature);
    let name = Name::new(&wording::feature(feature), "Size along it");
    let size = |finding: &&Finding| finding.key.quantity == Quantity::Size;
    let limits = &assessment.of(feature).find(size)?.limits;
    let mut rows = Rows {
        unit,
        ..within(limits)
    };
    let mut table = Table {
        head: vec!["Level", "Direction", "Size"],
        rows: Vec::new(),
    };
    let read: Vec<_> = levels(kind, &places).collect();
    let mut means = Vec::new();
    let mut along: Vec<(Direction, Vec<(usize, i64)>)> = Vec::new();
    for (number, level) in read.iter().enumerate() {
        let mut points = Vec::new();
        let mut sum = Exact::ZERO;
        for direction in kind.directions() {
            let here = |(station, _): &&_| {
                let station: &crate::session::Station = station;
                (station.level, station.direction) == (*level, *direction)
            };
            let Some((_, value)) = places.iter().find(here) else {
                continue;
            };
            let at = quanta(*value);
            sum = sum + *value;
            points.push((at, Glyph::Direction(rank(*direction))));
            match along.iter_mut().find(|(known, _)| known == direction) {
                Some((_, line)) => line.push((number, at)),
                None => along.push((*direction, vec![(number, at)])),
            }
            table.rows.push(vec![
                wording::level(*level).to_owned(),
                wording::direction(kind, *direction).to_owned(),
                told(*value, unit) + " " + unit.sign(),
            ]);
        }
        let count = i128::try_from(points.len()).unwrap_or(1);
        let mean = Exact::new(sum.numerator(), sum.denominator() * count);
        means.push((number, quanta(mean)));
        rows.rows.push(Row {
            label: level_word(*level).to_owned(),
            text: super::near(mean, unit),
            points,
            ..Row::default()
        });
    }
    if read.is_empty() {
        return None;
    }
    if read.len() < 2 || !rows.has_scale() {
        let told = "Read at one level only: a second one shows how it changes along.";
        return Some(Chart::missing(name, told));
    }
    let mut notes: Vec<_> = along
        .iter()
        .map(|(direction, _)| {
            let sign = character(rank(*direction));
            format!("{sign} {}", wording::direction(kind, *direction))
        })
        .collect();
    // Directions that change from end to end have no line of their own.
    let is_line = |(_, line): &(_, Vec<_>)| 1 < line.len();
    if along.iter().any(is_line) {
        let lines = along.into_iter().filter(is_line);
        rows.joints = lines
            .map(|(direction, points)| Joint {
                dash: if rank(direction) == 0 { 0 } else { 5 },
                points,
            })
            .collect();
    } else {
        rows.joints.push(Joint {
            dash: 5,
            points: means,
        });
        notes.push("dashed: from mean to mean".to_owned());
    }
    Some(Chart {
        name,
        body: Some(Body::Rows(rows)),
        notes: vec![notes.join(", ") + ". At the end of each row: the mean."],
        table,
    })
}
