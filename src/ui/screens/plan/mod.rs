//! What to do: the plan for the set.

mod bill;
mod more;

use leptos::prelude::*;

use crate::assess::advise;
use crate::present::{self, Maybe, Next, PartRow, PlanLine, PlanView, Row3};
use crate::session::SessionId;
use crate::ui::parts::bar::bar;
use crate::ui::parts::el::{El, el};
use crate::ui::parts::held::Held;
use crate::ui::parts::live::{act, live};
use crate::ui::parts::press::{empty, heading, para, press};
use crate::ui::state::{Change, State};
use crate::ui::way::{Sheet, sheet_address};

const TAP: &str = "A tap on a line shows why, and what else there is.";

/// The plan, made anew when something changes.
pub fn plan(id: &SessionId) -> AnyView {
    let state = State::get();
    let is_empty = state.peek(|s, _| present::nothing_read(s) && s.sights().next().is_none());
    if is_empty.unwrap_or_default() {
        let sheet = el("div", "sheet plan")
            .with(el("h1", "").with("What to do"))
            .with(empty(
                present::NO_PLAN,
                &sheet_address(id, Sheet::Route),
                "Measure",
            ));
        return el("div", "").with(bar(id, Sheet::Plan)).with(sheet).done();
    }
    let priced = Held::new(Vec::new());
    let sheet = live(move || {
        let view = state
            .now(|session, assessment| present::what_to_do(session, &advise(session, assessment)));
        let view = view.unwrap_or_default();
        bill::follow(priced, &view.bill);
        told(view).done()
    });
    // Of its own, so that a price that changes the plan leaves the fields.
    let bill = live(move || bill::bill(priced.get()));
    let sheet = el("div", "sheet plan wide")
        .with(el("h1", "").with("What to do"))
        .with(para("caution", present::PLAN_CAUTION))
        .with(sheet)
        .with(bill);
    el("div", "").with(bar(id, Sheet::Plan)).with(sheet).done()
}

fn told(view: PlanView) -> El {
    let mut sheet = el("div", "");
    for trouble in view.troubles {
        sheet = sheet.with(para("notice", trouble).id("trouble"));
    }
    let rests = (!view.rests_on.is_empty()).then(|| para("honest", present::PLAN_RESTS));
    let mut lines = section("plan", "The plan for the set")
        .with(rests.map(|told| told.id("rests")))
        .with(para("lead-in", view.basis))
        .with(para("lead-in", TAP));
    for one in view.lines {
        lines = lines.with(line(one));
    }
    let lines = lines
        .with(view.mixing.map(more::mixing))
        .with(para("total", view.total).id("total"));
    // What is decided, and what it rests on and leads to: side by side where there is room.
    let decided = el("div", "")
        .with(lines)
        .with(view.maybe.map(maybe))
        .with(view.next.map(next));
    let beside = el("div", "")
        .with(some_list(
            "rests-on",
            "Find out before you order",
            view.rests_on,
        ))
        .with(some_list(
            "runner-up",
            "The next best that is sure",
            view.runner_up,
        ))
        .with(more::sizes(view.sizes))
        .with(clearances(view.clearances))
        .with(some_list(
            "volumes",
            "Displacement and compression",
            view.volumes,
        ))
        .with(some_list("shop", "Tell the machine shop", view.shop))
        .with(parts(view.parts))
        .with(some_list(
            "recheck",
            "Look at again afterwards",
            view.recheck.into_iter().map(str::to_owned).collect(),
        ));
    sheet.with(decided).with(beside)
}

fn section(id: &'static str, title: &'static str) -> El {
    el("section", "").id(id).with(heading(title))
}

fn list(rows: Vec<String>) -> El {
    let rows = rows.into_iter().map(|row| el("li", "").with(row).done());
    el("ul", "").with(rows.collect::<Vec<_>>())
}

fn some_list(id: &'static str, title: &'static str, rows: Vec<String>) -> Option<El> {
    (!rows.is_empty()).then(|| section(id, title).with(list(rows)))
}

/// A line of the plan; behind it what else there is, to be fixed with a tap.
fn line(line: PlanLine) -> El {
    let fixed = line.fixed.then(|| el("small", "").with("fixed by you"));
    let summary = el("summary", "")
        .with(el("b", "").with(line.about))
        .with(el("span", "").with(line.what).with(fixed));
    let mut more = el("details", "plan-line")
        .id("plan-line")
        .with(summary)
        .with(line.why.map(|why| para("lead-in", why)));
    let pin = line.pin;
    if line.fixed {
        let leave = act(move || set(&present::fix(pin, None)));
        more = more.with(para("actions", press("Leave it to the plan", leave)));
    }
    for other in line.others {
        let word = other.word;
        let fix = act(move || set(&present::fix(pin, Some(word.clone()))));
        let label = el("span", "").with(other.what);
        let key = press(label, fix).with(el("small", "").with(other.leads_to));
        more = more.with(key);
    }
    more
}

fn set(edit: &crate::session::Edit) {
    let state = State::get();
    if let Err(why) = state.change(Change::Edit(edit)) {
        state.tell(why);
    }
}

fn maybe(maybe: Maybe) -> El {
    section("maybe", "Less may do")
        .with(list(maybe.instead))
        .with(para("lead-in", "if these come out well:"))
        .with(list(maybe.if_well))
}

fn next(next: Next) -> El {
    let side = |title: &'static str, rows: Vec<String>| {
        let rows = if rows.is_empty() {
            vec!["the plan stays as it is".to_owned()]
        } else {
            rows
        };
        el("div", "").with(para("lead-in", title)).with(list(rows))
    };
    section("next", "Read this next: it can change most")
        .with(para("", next.what))
        .with(side("If it comes out well", next.well))
        .with(side("If it does not, at best", next.badly))
}

fn clearances(rows: Vec<Row3>) -> Option<El> {
    let mut table = el("table", "");
    let some = !rows.is_empty();
    for [part, value, how] in rows {
        let row = el("tr", "")
            .with(el("th", "").set("scope", "row").with(part))
            .with(el("td", "").with(value).with(el("small", "").with(how)));
        table = table.with(row);
    }
    some.then(|| section("clearances", "Clearances this leads to").with(table))
}

fn parts(rows: Vec<PartRow>) -> El {
    let mut table = el("table", "");
    for row in rows {
        let word = el("td", "")
            .set("data-word", row.key)
            .with(el("b", "").with(row.word))
            .with(el("small", "").with(row.why));
        let part = el("th", "").set("scope", "row").with(row.parts);
        table = table.with(el("tr", "").id("part").with(part).with(word));
    }
    section("parts", "Part by part").with(table)
}
