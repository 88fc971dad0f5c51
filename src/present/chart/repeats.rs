//! How far the readings of one spot lie apart.

use super::glyph::Glyph;
use super::read::{level_word, mean};
use super::rows::{Row, Rows};
use super::{Body, Chart, Name, Table, quanta, told};
use crate::assess::{Assessment, Cause};
use crate::present::{sure, wording};
use crate::quantity::{Exact, Size};
use crate::session::{Feature, Kind, Session, Stamp, Station};
use crate::uncertainty::rounded;

/// A station and what was read there.
type Spot = (Station, Vec<Size>);

/// What was read more than once of a kind, for each gauge: every reading
/// beside the mean of its spot, and what the gauge is counted with.
pub(in crate::present) fn repeats(
    session: &Session,
    assessment: &Assessment,
    kind: Kind,
) -> Vec<Chart> {
    let mut gauges: Vec<(Stamp, Vec<Spot>)> = Vec::new();
    for (_, reading) in session.standing() {
        let station = reading.station;
        let Some(size) = session.size_of(reading) else {
            continue;
        };
        if station.kind != kind || !session.has(Feature::of(station)) {
            continue;
        }
        let place = gauges.iter().position(|(gauge, _)| *gauge == reading.gauge);
        let place = place.unwrap_or_else(|| {
            gauges.push((reading.gauge, Vec::new()));
            gauges.len() - 1
        });
        let Some((_, spots)) = gauges.get_mut(place) else {
            continue;
        };
        match spots.iter_mut().find(|(known, _)| *known == station) {
            Some((_, sizes)) => sizes.push(size),
            None => spots.push((station, vec![size])),
        }
    }
    let charts = gauges.into_iter().filter_map(|(gauge, mut spots)| {
        spots.retain(|(_, sizes)| 1 < sizes.len());
        (!spots.is_empty()).then(|| of_gauge(session, assessment, (kind, gauge), &spots))
    });
    charts.collect()
}

fn of_gauge(
    session: &Session,
    assessment: &Assessment,
    (kind, gauge): (Kind, Stamp),
    spots: &[(Station, Vec<Size>)],
) -> Chart {
    let unit = session.display_unit();
    let source = assessment.doubts.of(Cause::Repeatability(kind, gauge));
    let half = source.map(|source| {
        let once = rounded(source.u());
        once + once
    });
    let with = session.gauges.get(&gauge);
    let with = with.map_or("a gauge that is not known", |gauge| {
        wording::gauge_kind(gauge.value.kind)
    });
    let name = Name::new(wording::kind_plural(kind), with);
    let mut rows = Rows {
        new: half.map(|half| {
            let ends = [-half, half].map(|end| Some(quanta(end)));
            (ends, format!("± {}", sure::length(half, unit)))
        }),
        service: None,
        rows: Vec::new(),
        joints: Vec::new(),
        unit,
    };
    let mut table = Table {
        head: vec!["Place", "Readings", "Mean", "Apart"],
        rows: Vec::new(),
    };
    for (station, sizes) in spots {
        let mean = mean(sizes);
        let exact = |size: &Size| Exact::from(*size);
        let (least, most) = (sizes.iter().min(), sizes.iter().max());
        let apart = most
            .zip(least)
            .map_or(Exact::ZERO, |(most, least)| (*most - *least).into());
        let apart = told(apart, unit);
        let readings: Vec<_> = sizes.iter().map(|size| told(exact(size), unit)).collect();
        rows.rows.push(Row {
            label: spot(*station),
            text: apart.clone(),
            points: sizes
                .iter()
                .map(|size| (quanta(exact(size) - mean), Glyph::Direction(1)))
                .collect(),
            ..Row::default()
        });
        table.rows.push(vec![
            wording::station(*station),
            readings.join(", "),
            super::near(mean, unit),
            apart,
        ]);
    }
    if !rows.has_scale() {
        return Chart::missing(name, "All readings of a spot are alike.");
    }
    let notes = vec![
        "Each reading beside the mean of its spot. Tinted: how far this gauge is taken to be off \
         in 19 readings of 20. At the end: largest less smallest."
            .to_owned(),
    ];
    Chart {
        name,
        body: Some(Body::Rows(rows)),
        notes,
        table,
    }
}

/// A spot in few words.
fn spot(station: Station) -> String {
    let Station { kind, position, .. } = station;
    let mut spot = format!("{} {position}", wording::kind(kind));
    if 1 < kind.levels().len() {
        spot = spot + ", " + level_word(station.level);
    }
    if 1 < kind.directions().len() {
        spot = format!("{spot}, {}°", station.direction.degrees());
    }
    spot
}
