//! What is measured with what, and what each gauge is set to.

mod set;

use leptos::prelude::*;

use crate::present::{self, GaugeRow, UseRow};
use crate::session::{Edit, Gauge, GaugeKind, SessionId};
use crate::ui::parts::bar::{bar, head};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::field::choices;
use crate::ui::parts::held::Held;
use crate::ui::parts::live::{act, live};
use crate::ui::parts::press::{heading, link, main_press, para, press, refusal};
use crate::ui::state::{Change, State};
use crate::ui::way::{Sheet, sheet_address};
use set::{line, set_form};

/// The longest text of a length.
const LENGTH_MAX: usize = crate::quantity::TEXT_MAX;

/// The gauges.
pub fn gauges(id: &SessionId) -> AnyView {
    let state = State::get();
    let how = sheet_address(id, Sheet::Instrument);
    let told = "A gauge keeps its own unit, and what was read stays as it was typed. What a gauge \
                is set to counts for all that is read after it.";
    // Drawn anew at every change: nothing else changes here but the gauges.
    let view = move || state.now(present::gauges).unwrap_or_default();
    let uses = live(move || rows(view().uses.into_iter().map(one_use)));
    let at_hand = live(move || rows(view().gauges.into_iter().map(one)));
    let sheet = el("div", "sheet gauges wide")
        .with(head("Gauges"))
        .with(para("", told))
        .with(para("", link("button", &how, "How to read a micrometer")))
        .with(heading("Measured with"))
        .with(uses)
        .with(heading("At hand"))
        .with(at_hand)
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
    let study = present::study(&row);
    let (ids, names): (Vec<_>, Vec<_>) = row.options.into_iter().unzip();
    let choose = Callback::new(move |at: usize| {
        if let Some(id) = ids.get(at) {
            change(state, &present::use_gauge(kind, *id));
        }
    });
    let word = if row.study {
        "Not five times after all"
    } else {
        "Read one spot five times"
    };
    let repeats = (!row.repeats.is_empty()).then(|| para("", row.repeats));
    let study = press(word, act(move || change(state, &study)));
    choices(row.title, names, Held::new(chosen).into(), choose)
        .with(repeats)
        .with(para("actions", study))
}

fn rows(rows: impl Iterator<Item = El>) -> AnyView {
    rows.fold(el("div", "listed"), El::with).done()
}

fn one(row: GaugeRow) -> El {
    let state = State::get();
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
        .with(set_form(row.clone()))
        .with(row.set.is_some().then(|| again(row.clone())))
        .with(describe(state, row).with(para("actions", put_away)))
}

/// What the gauge shows when it is checked again.
fn again(row: GaugeRow) -> El {
    let state = State::get();
    let shows = Held::new(String::new());
    let refused = Held::new(None::<String>);
    let label = format!("What it shows on it now, {}", row.gauge.unit().sign());
    let keep = act(move || {
        let edit = present::check_again(&row, &shows.now());
        let done = edit.and_then(|edit| state.change(Change::Edit(&edit)));
        refused.set(done.err());
    });
    el("details", "more")
        .with(el("summary", "").with("Check it again at the end"))
        .with(line(label, shows))
        .with(refusal(refused))
        .with(main_press("Keep this check", keep))
}

/// Graduation and range.
fn describe(state: State, row: GaugeRow) -> El {
    let graduations = Gauge::all_graduations();
    let options = graduations.iter().map(ToString::to_string).collect();
    let now = graduations.iter().position(|g| *g == row.gauge.graduation);
    let now = now.unwrap_or(graduations.len());
    let end = |end: Option<&crate::quantity::Entered>| {
        Held::new(end.map_or_else(String::new, |end| end.text().to_owned()))
    };
    let range = row.gauge.range.as_ref();
    let (least, greatest) = (end(range.map(|r| &r.0)), end(range.map(|r| &r.1)));
    let refused = Held::new(None::<String>);
    let chosen = Held::new(now);
    let of = row.clone();
    let keep = act(move || {
        let graduation = graduations.get(chosen.now());
        let graduation = graduation.unwrap_or(&of.gauge.graduation).clone();
        let (least, greatest) = (least.now(), greatest.now());
        let edit = present::describe_gauge(&of, graduation, &least, &greatest);
        let done = edit.and_then(|edit| state.change(Change::Edit(&edit)));
        refused.set(done.err());
    });
    let unit = row.gauge.unit().sign();
    el("details", "more")
        .with(el("summary", "").with(present::gauge(&row.gauge)))
        .with(choices(
            &format!("{} reads to", row.title),
            options,
            chosen.into(),
            Callback::new(move |at| chosen.set(at)),
        ))
        .with(line(format!("Range from, {unit}"), least))
        .with(line(format!("Range to, {unit}"), greatest))
        .with(refusal(refused))
        .with(para("actions", press("Keep this", keep)))
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
