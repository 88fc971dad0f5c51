//! What the readings of one feature say.

use leptos::prelude::*;

use super::how_sure::how_sure;
use crate::present::{Chart, FeatureView, FindingRow};
use crate::ui::parts::chart::figure;
use crate::ui::parts::el::{El, el};
use crate::ui::parts::mark::mark_sign;
use crate::ui::parts::press::para;

/// Puts charts on the page, one after the other, and keeps them to be drawn
/// in this order.
pub fn show(drawn: &mut Vec<Chart>, charts: Vec<Chart>) -> Vec<AnyView> {
    let figures = charts.iter().map(|chart| figure(chart).done()).collect();
    drawn.extend(charts);
    figures
}

/// The findings of one feature, folded.
pub fn of_feature(charts: &mut Vec<Chart>, feature: FeatureView) -> El {
    let summary = el("summary", "")
        .with(mark_sign(feature.mark))
        .with(el("b", "").with(feature.title))
        .with(el("span", "").with(feature.words));
    let mut body = el("tbody", "");
    for mut one in feature.rows {
        let note = one.note.take();
        body = body.with(row(one)).with(note.map(note_row));
    }
    let mut head = el("tr", "");
    for title in ["What", "Value", "Reads"] {
        head = head.with(el("th", "").set("scope", "col").with(title));
    }
    let table = el("table", "").with(el("thead", "").with(head)).with(body);
    let told = |what: &str, rows: Vec<String>| {
        (!rows.is_empty()).then(|| format!("{what}: {}.", rows.join("; ")))
    };
    let repeats = told(
        "Read more than once, largest less smallest",
        feature.repeats,
    );
    let missing = told("Not read", feature.missing);
    el("details", "feature-findings")
        .id("feature-findings")
        .with(summary)
        .with(show(charts, feature.charts))
        .with(table)
        .with((!feature.sure.is_empty()).then(|| how_sure(feature.sure)))
        .with(repeats.map(|told| para("repeats", told)))
        .with(missing.map(|told| para("missing", told)))
}

fn row(row: FindingRow) -> El {
    let value = el("td", "number")
        .with(row.value)
        .with(row.sense.map(|sense| el("small", "").with(sense)));
    let reads = el("td", "reads")
        .with(mark_sign(row.mark))
        .with(el("span", "").with(row.words))
        .with(row.reads.map(|reads| el("small", "").with(reads)))
        .with(row.guide.map(|guide| el("small", "guide").with(guide)));
    el("tr", "")
        .id("finding")
        .with(el("th", "").set("scope", "row").with(row.label))
        .with(value)
        .with(reads)
}

/// A sentence across the table, under the row it belongs to.
fn note_row(note: String) -> El {
    el("tr", "note").with(el("td", "").set("colspan", "3").with(note))
}
