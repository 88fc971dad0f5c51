//! What the readings say, by kind and feature.

use leptos::prelude::*;

use super::how_sure::how_sure;
use super::limits::the_words;
use crate::present::{self, FeatureView, FindingRow, KindView, LimitRow};
use crate::session::{Edit, Field, SessionId};
use crate::ui::parts::bar::bar;
use crate::ui::parts::el::{El, el};
use crate::ui::parts::live::act;
use crate::ui::parts::mark::mark_sign;
use crate::ui::parts::press::{empty, heading, link, para, press};
use crate::ui::state::{Change, State};
use crate::ui::way::{Sheet, sheet_address};

const CAUTION: &str = "The service manual comes first. Cracks, heat colour and stretched bolts \
                       are not a measuring question: have cranks, rods and bolts crack-tested \
                       before they are used again.";

/// All findings.
pub fn findings(id: &SessionId) -> AnyView {
    let state = State::get();
    let view = state.peek(present::findings).unwrap_or_default();
    let limits = sheet_address(id, Sheet::Limits);
    let is_empty = state.peek(|s, _| present::nothing_read(s));
    let sheet = el("div", "sheet findings").with(el("h1", "").with("Findings"));
    let sheet = if is_empty.unwrap_or_default() {
        let measure = sheet_address(id, Sheet::Route);
        sheet.with(empty(present::NO_FINDINGS, &measure, "Measure"))
    } else {
        let plan = link("button main", &sheet_address(id, Sheet::Plan), "What to do");
        sheet
            .with(para("honest", present::PROVED_AT_95))
            .with(para("actions", plan))
    };
    let mut sheet = sheet.with(view.contradiction.map(|told| para("notice", told)));
    if !view.slips.is_empty() {
        let told = "What follows rests on these.";
        let slips = el("section", "")
            .id("slips")
            .with(heading("Read again"))
            .with(para("", told))
            .with(list(view.slips));
        sheet = sheet.with(slips);
    }
    for kind in view.kinds {
        sheet = sheet.with(of_kind(kind, &limits));
    }
    if !view.outside_layout.is_empty() {
        let told = "Kept and exported, but the layout has no such feature.";
        let outside = el("section", "")
            .id("outside-layout")
            .with(heading("Outside the layout"))
            .with(para("", told))
            .with(list(view.outside_layout));
        sheet = sheet.with(outside);
    }
    let sheet = sheet.with(the_words()).with(para("caution", CAUTION));
    el("div", "")
        .with(bar(id, Sheet::Findings))
        .with(sheet)
        .done()
}

fn list(rows: Vec<String>) -> El {
    let rows = rows.into_iter().map(|row| el("li", "").with(row).done());
    el("ul", "").with(rows.collect::<Vec<_>>())
}

fn of_kind(kind: KindView, limits: &str) -> El {
    let told = if !kind.is_limited {
        None
    } else if kind.limits.is_empty() {
        let told = "No limits given yet: enter those of the manual";
        Some(para("", link("", limits, told)))
    } else {
        let source = if kind.source.is_empty() {
            "not noted"
        } else {
            &kind.source
        };
        let used = el("details", "limits-used")
            .with(el("summary", "").with("Limits used"))
            .with(limit_list(kind.limits))
            .with(para("", format!("Source: {source}")));
        Some(used)
    };
    let mut section = el("section", "")
        .id("kind")
        .with(heading(kind.title))
        .with(told)
        .with((!kind.rules.is_empty()).then(|| common_rules(kind.rules)));
    let of = kind.kind;
    if let Some(told) = kind.machined {
        section = section.with(para("notice", told).id("machined"));
    }
    if let Some(size) = kind.machined_to {
        let state = State::get();
        let word = format!("Take {size} as made");
        let take = act(move || {
            let edit = Edit::Set(Field::Nominal(of, Some(size.clone())));
            let done = state.change(Change::Edit(&edit));
            state.tell(match done {
                Ok(_) => format!("{size} is kept as the size made to."),
                Err(why) => why,
            });
        });
        section = section.with(para("actions", press(word, take)));
    }
    for feature in kind.features {
        section = section.with(of_feature(feature));
    }
    for told in kind.blind {
        section = section.with(para("honest", told));
    }
    section
}

fn common_rules(rules: Vec<LimitRow>) -> El {
    el("details", "limits-used")
        .id("common-rules")
        .with(el("summary", "").with("Common rules, no verdict"))
        .with(para("", present::COMMON_RULES))
        .with(limit_list(rules))
}

fn limit_list(rows: Vec<LimitRow>) -> El {
    let rows = rows.into_iter();
    list(
        rows.map(|row| format!("{}: {}", row.quantity, row.text))
            .collect(),
    )
}

fn of_feature(feature: FeatureView) -> El {
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
