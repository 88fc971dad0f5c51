//! All features of a kind on one scale, against what is allowed.

use super::glyph::Glyph;
use super::rows::{Row, Rows};
use super::{Body, Chart, Name, Table, quanta};
use crate::assess::{Assessment, Finding, UsedLimits, Which};
use crate::present::findings::{told, worst};
use crate::present::{finding_words, sure, wording};
use crate::quantity::{Exact, Unit};
use crate::session::{Bound, Feature, Kind, Quantity, Session, wears};
use crate::verdict::Wear;

/// The sizes or clearances of a kind; `None` of a kind that has none.
pub(in crate::present) fn ladder(
    session: &Session,
    assessment: &Assessment,
    kind: Kind,
    quantity: Quantity,
) -> Option<Chart> {
    let unit = session.display_unit();
    let of_kind = |finding: &&Finding| {
        let key = finding.key;
        (key.feature.kind, key.quantity) == (kind, quantity) && key.which.decides()
    };
    let all: Vec<&Finding> = assessment.findings.iter().filter(of_kind).collect();
    let limits = &all.first()?.limits;
    let title = wording::quantity(kind, quantity);
    let name = Name::new(wording::kind_plural(kind), title);
    let mut rows = Rows {
        rows: Vec::new(),
        joints: Vec::new(),
        unit,
        ..within(limits)
    };
    let mut table = Table {
        head: vec!["", "Smallest", "Largest", "±", "Says"],
        rows: Vec::new(),
    };
    let mut measured = 0;
    for feature in session.features_of(kind) {
        let of = |finding: &&&Finding| finding.key.feature == feature && finding.value().is_some();
        let mut here: Vec<&Finding> = all.iter().filter(of).copied().collect();
        // Of equals the one that wears is told.
        let worn = match wears(kind, quantity) {
            Wear::Larger => Which::Largest,
            Wear::Smaller => Which::Smallest,
        };
        if let Some(place) = here.iter().position(|finding| finding.key.which == worn) {
            here.swap(0, place);
        }
        measured += usize::from(!here.is_empty());
        let (row, line) = row(feature, &here, unit);
        rows.rows.push(row);
        table.rows.push(line);
    }
    if measured == 0 {
        return Some(Chart::missing(name, "None of them was measured yet."));
    }
    if !rows.has_scale() {
        let told = "One value and no limits: there is nothing to compare it with.";
        return Some(Chart::missing(name, told));
    }
    let notes = match (&rows.new, &rows.service) {
        (None, None) => vec!["No limits given: the rows compare with each other only.".to_owned()],
        _ => Vec::new(),
    };
    Some(Chart {
        name,
        body: Some(Body::Rows(rows)),
        notes,
        table,
    })
}

/// What the manual allows, as the background of rows.
pub(super) fn within(limits: &UsedLimits) -> Rows {
    let given = |bound| {
        let mut given = limits.given.iter();
        given
            .find(|(known, _)| *known == bound)
            .map(|(_, limit)| limit)
    };
    let (low, high) = (given(Bound::NewLow), given(Bound::NewHigh));
    let words = match (low, high) {
        (Some(low), Some(high)) => Some(format!("new {} to {high}", low.text())),
        (Some(low), None) => Some(format!("new, from {low}")),
        (None, Some(high)) => Some(format!("new, up to {high}")),
        (None, None) => None,
    };
    let service = given(Bound::Service);
    let ends = [low, high].map(|end| end.map(|end| end.size().quanta()));
    Rows {
        new: words.map(|words| (ends, words)),
        service: service.map(|at| (at.size().quanta(), format!("service limit {at}"))),
        rows: Vec::new(),
        joints: Vec::new(),
        unit: Unit::Millimetre,
    }
}

/// The row of a feature, drawn and as a line of the table.
fn row(feature: Feature, here: &[&Finding], unit: Unit) -> (Row, Vec<String>) {
    let name = wording::feature(feature);
    let mut row = Row {
        label: match feature.kind {
            Kind::EndPlay => String::new(),
            _ => feature.position.to_string(),
        },
        text: "—".to_owned(),
        ..Row::default()
    };
    let Some((decides, value)) = worst(here)
        .or_else(|| here.first().copied())
        .and_then(|f| Some((f, f.value()?)))
    else {
        let dash = || "—".to_owned();
        return (
            row,
            vec![name, dash(), dash(), dash(), "not measured".to_owned()],
        );
    };
    let ends = |with: fn(Exact, Exact) -> [Exact; 2]| {
        let mut ends = [value, value];
        for finding in here {
            let guard = finding.sure.as_ref().map_or(Exact::ZERO, |sure| sure.guard);
            let [low, high] = finding.value().map_or(ends, |value| with(value, guard));
            ends = [ends[0].min(low), ends[1].max(high)];
        }
        ends
    };
    let span = ends(|value, _| [value, value]);
    let doubt = ends(|value, guard| [value - guard, value + guard]);
    let (mark, words) = told(decides, unit);
    let shown = |value| finding_words::value(decides, value, unit);
    row.text = super::told(value, unit);
    row.span = (span[0] < span[1]).then(|| span.map(quanta));
    row.doubt = (doubt != span).then(|| doubt.map(quanta));
    row.points = vec![(quanta(value), Glyph::Verdict(mark))];
    let guard = decides
        .sure
        .as_ref()
        .map(|sure| sure::length(sure.guard, unit));
    let line = vec![
        name,
        shown(span[0]),
        shown(span[1]),
        guard.unwrap_or_else(|| "—".to_owned()),
        words,
    ];
    (row, line)
}
