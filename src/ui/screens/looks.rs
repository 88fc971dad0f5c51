//! What can be seen of each part, and what is behind it.

use leptos::prelude::*;

use super::look_at::look_at;
use crate::present::{self, CauseRow, LookGroup, Said};
use crate::remedy::Spot;
use crate::session::SessionId;
use crate::ui::parts::bar::bar;
use crate::ui::parts::el::{El, el};
use crate::ui::parts::held::Held;
use crate::ui::parts::live::{act, live};
use crate::ui::parts::press::{heading, para, press};
use crate::ui::state::State;
use crate::ui::way::{Sheet, to_top};

/// The part that is looked at, of all of them none.
pub type Here = Held<Option<Spot>>;

/// Goes to a part, or back to all of them.
pub fn open(here: Here, spot: Option<Spot>) {
    here.set(spot);
    to_top();
}

/// All parts, or the one that is looked at.
pub fn looks(id: &SessionId) -> AnyView {
    let here = Held::new(None::<Spot>);
    let sheet = live(move || match here.get() {
        Some(spot) => look_at(spot, here),
        None => all(here),
    });
    el("div", "").with(bar(id, Sheet::Looks)).with(sheet).done()
}

fn all(here: Here) -> AnyView {
    let view = State::get().peek(present::looks_view).unwrap_or_default();
    let told = "What was seen, heard and felt: each part once, in this order. \
                It says where to measure, and what is behind what was measured.";
    let mut sheet = el("div", "sheet looks wide tiles")
        .with(el("h1", "").with("Look"))
        .with(para("lead-in", told))
        .with(before_strip_down());
    for clash in view.clashes {
        sheet = sheet.with(para("refusal", clash).id("clash"));
    }
    if !view.causes.is_empty() {
        let causes = view.causes.into_iter().map(|row| cause(row).done());
        let section = el("section", "")
            .id("causes")
            .with(heading("What can be behind it"))
            .with(causes.collect::<Vec<_>>());
        sheet = sheet.with(section);
    }
    if !view.debris.is_empty() {
        let told = format!("Metal went round with the oil. {}.", view.debris.join(". "));
        let section = el("section", "")
            .id("aftermath")
            .with(heading("Clean and replace"))
            .with(para("", told))
            .with(list(present::aftermath().into()));
        sheet = sheet.with(section);
    }
    let mut before = None;
    for group in view.groups {
        if before != Some(group.before) {
            before = Some(group.before);
            let when = if group.before {
                "Before strip-down"
            } else {
                "As it comes apart"
            };
            sheet = sheet.with(heading(when));
        }
        sheet = sheet.with(parts(group, here));
    }
    sheet.done()
}

fn before_strip_down() -> El {
    let said = present::BEFORE_STRIP_DOWN
        .iter()
        .map(|(text, source)| Said {
            text: (*text).to_owned(),
            source: source.text(),
        });
    el("details", "more")
        .id("before")
        .with(el("summary", "").with("Before strip-down: measure, mark and tag"))
        .with(list(said.collect()))
}

fn list(said: Vec<Said>) -> El {
    let one = |said: Said| {
        let source = el("small", "").with(said.source);
        el("li", "").with(said.text).with(" ").with(source).done()
    };
    el("ul", "advice").with(said.into_iter().map(one).collect::<Vec<_>>())
}

fn cause(row: CauseRow) -> El {
    let summary = el("summary", "")
        .with(el("b", "").with(row.title))
        .with(el("span", "").with(row.word));
    let check = vec![row.check];
    let mut more = el("details", "cause")
        .id("cause")
        .with(summary)
        .with(told("For it", row.supports))
        .with(told("Against it", row.contradicts));
    if let Some(needs) = row.needs {
        more = more.with(para("", format!("Still to measure: {needs}?")).id("needs"));
    }
    more.with(told("Check", check))
}

fn told(title: &'static str, said: Vec<Said>) -> Option<El> {
    let some = !said.is_empty();
    some.then(|| el("div", "").with(para("lead-in", title)).with(list(said)))
}

fn parts(group: LookGroup, here: Here) -> El {
    let mut list = el("ul", "");
    for row in group.spots {
        let spot = row.spot;
        let read = if row.answered { "yes" } else { "no" };
        let key = press(
            el("span", "").with(row.name),
            act(move || open(here, Some(spot))),
        )
        .with(el("b", "").with(row.told))
        .set("data-read", read);
        list = list.with(el("li", "").with(key));
    }
    el("section", "stops").with(list)
}
