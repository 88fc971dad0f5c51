//! What the readings say, by kind and feature.

use leptos::prelude::*;

use super::feature_findings::{of_feature, show};
use super::limits::the_words;
use crate::device::page;
use crate::present::{self, Chart, FeatureView, KindView, LimitRow};
use crate::session::{Edit, Field, SessionId};
use crate::ui::parts::bar::bar;
use crate::ui::parts::chart::draw_all;
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
    // The page is named by it, and what is printed.
    page::set("name", &view.name);
    on_cleanup(|| page::set("name", ""));
    let is_empty = state.peek(|s, _| present::nothing_read(s));
    let sheet = el("div", "sheet findings")
        .with(el("h1", "").with("Findings"))
        .with(para("on-paper", view.name));
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
    let legend = el("details", "more")
        .with(el("summary", "").with("How to read the charts"))
        .with(para("", present::HOW_TO_READ));
    sheet = sheet.with(legend);
    let mut charts = Vec::new();
    for kind in view.kinds {
        sheet = sheet.with(of_kind(&mut charts, kind, &limits));
    }
    draw_all(charts);
    if !view.outside_layout.is_empty() {
        let told = "Kept and exported, but the layout has no such feature.";
        let outside = el("section", "")
            .id("outside-layout")
            .with(heading("Outside the layout"))
            .with(para("", told))
            .with(list(view.outside_layout));
        sheet = sheet.with(outside);
    }
    let print = para("actions", press("Print", act(page::print)));
    let sheet = sheet
        .with(the_words())
        .with(para("caution", CAUTION))
        .with(print);
    el("div", "")
        .with(bar(id, Sheet::Findings))
        .with(sheet)
        .done()
}

fn list(rows: Vec<String>) -> El {
    let rows = rows.into_iter().map(|row| el("li", "").with(row).done());
    el("ul", "").with(rows.collect::<Vec<_>>())
}

fn of_kind(charts: &mut Vec<Chart>, kind: KindView, limits: &str) -> El {
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
    let tally = para("tally", "")
        .with(mark_sign(kind.mark))
        .with(el("span", "").with(kind.tally));
    let mut section = el("section", "")
        .id("kind")
        .with(heading(kind.title))
        .with(tally)
        .with(show(charts, kind.ladders))
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
    let mut features = kind.features.into_iter();
    for feature in features.by_ref().take(kind.open) {
        section = section.with(of_feature(charts, feature));
    }
    if 0 < features.len() {
        section = section.with(settled(charts, features, kind.settled));
    }
    if !kind.repeats.is_empty() {
        let fold = el("details", "more")
            .with(el("summary", "").with("Read more than once"))
            .with(show(charts, kind.repeats));
        section = section.with(fold);
    }
    for told in kind.blind {
        section = section.with(para("honest", told));
    }
    section
}

/// The features of which nothing is beyond a limit or open, folded together.
fn settled(
    charts: &mut Vec<Chart>,
    features: impl Iterator<Item = FeatureView>,
    words: String,
) -> El {
    let mut fold = el("details", "more settled").with(el("summary", "").with(words));
    for feature in features {
        fold = fold.with(of_feature(charts, feature));
    }
    fold.id("settled")
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
