//! What is measured with what, and what each gauge is set to.

mod set;

use leptos::prelude::*;

use crate::present::{self, GaugeRow, UseRow};
use crate::session::{Edit, Gauge, GaugeKind, SessionId};
use crate::ui::parts::bar::{bar, saved_word};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::field::{choices, text_field};
use crate::ui::parts::live::{Live, act, live};
use crate::ui::parts::press::{heading, para, press, refusal};
use crate::ui::state::{Change, State};
use crate::ui::way::Sheet;
use set::set_form;

/// The longest text of a length.
const LENGTH_MAX: usize = crate::quantity::TEXT_MAX;

/// The gauges.
pub fn gauges(id: &SessionId) -> AnyView {
    let state = State::get();
    let told = "A gauge keeps its own unit, and what was read stays as it was typed. What a gauge \
                is set to counts for all that is read after it.";
    let uses = state.read(|s, _| present::gauges(s).uses);
    let uses = live(move || {
        let rows = uses.get().into_iter();
        let rows: Vec<AnyView> = rows.map(|row| one_use(row).done()).collect();
        el("div", "").with(rows).done()
    });
    let sheet = el("div", "sheet gauges")
        .with(el("h1", "").with("Gauges"))
        .with(para("", told))
        .with(para("", saved_word()))
        .with(heading("Measured with"))
        .with(uses)
        .with(heading("At hand"))
        .with(at_hand(state))
        .with(heading("Take another into use"))
        .with(others(state));
    el("div", "")
        .with(bar(id, Sheet::Gauges))
        .with(sheet)
        .done()
}

/// Does an edit, and tells why where it cannot be.
fn change(state: State, edit: &Edit) {
    if let Err(why) = state.change(Change::Edit(edit)) {
        state.tell(why);
    }
}

fn one_use(row: UseRow) -> El {
    let state = State::get();
    let (kind, chosen) = (row.kind, row.chosen);
    let (ids, names): (Vec<_>, Vec<_>) = row.options.into_iter().unzip();
    let choose = Callback::new(move |at: usize| {
        if let Some(id) = ids.get(at) {
            change(state, &present::use_gauge(kind, *id));
        }
    });
    choices(row.title, names, Signal::derive(move || chosen), choose)
}

/// Every gauge at hand. Drawn anew only when there are other gauges or one
/// is set, so that a field being typed in stays.
fn at_hand(state: State) -> Live {
    let rows = state.read(|s, _| present::gauges(s).gauges);
    live(move || {
        let rows: Vec<AnyView> = rows
            .get()
            .into_iter()
            .map(|row| one(state, row).done())
            .collect();
        el("div", "").with(rows).done()
    })
}

fn one(state: State, row: GaugeRow) -> El {
    let setting = para("setting", row.setting.clone());
    let setting = if row.unset {
        setting.set("data-unset", "yes")
    } else {
        setting
    };
    let away = Edit::Gauge(
        row.id,
        Gauge {
            away: true,
            ..row.gauge.clone()
        },
    );
    let put_away = press("Put away", act(move || change(state, &away)));
    el("section", "gauge")
        .id("gauge")
        .with(el("h3", "").with(row.title.clone()))
        .with(setting)
        .with(set_form(state, row.clone()))
        .with(describe(state, row).with(para("actions", put_away)))
}

/// Graduation and range.
fn describe(state: State, row: GaugeRow) -> El {
    let graduations = Gauge::all_graduations();
    let options = graduations.iter().map(ToString::to_string).collect();
    let now = graduations.iter().position(|g| *g == row.gauge.graduation);
    let now = now.unwrap_or(graduations.len());
    let end = |end: Option<&crate::quantity::Entered>| {
        RwSignal::new(end.map_or_else(String::new, |end| end.text().to_owned()))
    };
    let range = row.gauge.range.as_ref();
    let (least, greatest) = (end(range.map(|r| &r.0)), end(range.map(|r| &r.1)));
    let refused = RwSignal::new(None::<String>);
    let of = row.clone();
    let describe = move |graduation| {
        let edit = least.with_untracked(|least| {
            greatest.with_untracked(|g| present::describe_gauge(&of, graduation, least, g))
        });
        let done = edit.and_then(|edit| state.change(Change::Edit(&edit)));
        refused.set(done.err());
    };
    let describe = StoredValue::new(describe);
    let choose = Callback::new(move |at: usize| {
        if let Some(graduation) = graduations.get(at).cloned() {
            describe.with_value(|describe| describe(graduation));
        }
    });
    let graduation = row.gauge.graduation.clone();
    let keep = act(move || describe.with_value(|describe| describe(graduation.clone())));
    let unit = row.gauge.unit().sign();
    let line = |label: String, text: RwSignal<String>| {
        let set = Callback::new(move |typed| text.set(typed));
        text_field(label, text.into(), set, LENGTH_MAX)
    };
    el("details", "more")
        .with(el("summary", "").with(present::gauge(&row.gauge)))
        .with(choices(
            &format!("{} reads to", row.title),
            options,
            Signal::derive(move || now),
            choose,
        ))
        .with(line(format!("Range from, {unit}"), least))
        .with(line(format!("Range to, {unit}"), greatest))
        .with(refusal(refused))
        .with(para("actions", press("Keep the range", keep)))
}

fn others(state: State) -> El {
    let mut keys = el("div", "actions");
    for kind in GaugeKind::ALL {
        let add = act(move || {
            let edit = state.peek(|s, _| present::add_gauge(s, kind)).flatten();
            if let Some(edit) = edit {
                change(state, &edit);
            }
        });
        keys = keys.with(press(present::gauge_kind(kind), add));
    }
    keys
}
