//! How the app works, on a sample: what it tells, a reading to be typed, and
//! where everything is kept. Each of the three can be skipped.

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::archive;
use crate::present::{self, FirstView, KEPT, LastRead, Practice, RouteView};
use crate::session::Session;
use crate::store::{keeper, sample};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::held::Held;
use crate::ui::parts::keypad::{Touch, keys};
use crate::ui::parts::live::{act, flag, live, nothing, text};
use crate::ui::parts::mark::mark_sign;
use crate::ui::parts::press::{heading, link, main_press, para, press};
use crate::ui::state::State;
use crate::ui::way::to_top;

/// The sample that is shown.
const SAMPLE: &str = "hill-climb-six";

const STEPS: usize = 3;

/// The sample: on its way, here, or the sentence why it is not.
type Sample = Held<Option<Result<Session, String>>>;

/// The three, one at a time.
pub fn first() -> AnyView {
    State::get().leave();
    keeper::keep_choice("seen", "yes");
    let sample: Sample = Held::new(None);
    spawn_local(async move {
        let text = sample::fetch(SAMPLE).await.map_err(|why| why.to_string());
        let read = text.and_then(|text| archive::import(&text).map_err(|why| why.to_string()));
        sample.set(Some(read.map(|incoming| incoming.session)));
    });
    let step = Held::new(0_usize);
    let at = text(move || at(step.get()));
    let is_last = flag(move || step.get() + 1 == STEPS);
    let next = main_press("Next", by(step, |step| step + 1)).when("hidden", is_last);
    let bar = el("nav", "bar")
        .set("aria-label", "How it works")
        .with(link("button", "#/", "Skip"))
        .with(el("span", "").with(at))
        .with(next);
    let sheet = live(move || match step.get() {
        0 => of_sample(step, sample, "What you get", told),
        1 => of_sample(step, sample, "Type a reading", practised),
        _ => kept(step),
    });
    el("div", "first").with(bar).with(sheet).done()
}

fn at(step: usize) -> String {
    format!("{} of {STEPS}", step + 1)
}

/// Goes so many steps on or back.
fn by(step: Held<usize>, to: fn(usize) -> usize) -> Callback<()> {
    let state = State::get();
    act(move || {
        step.update(|step| *step = to(*step));
        state.say(&at(step.now()));
        to_top();
    })
}

fn back(step: Held<usize>) -> El {
    press("Back", by(step, |step| step.saturating_sub(1)))
}

fn of_sample(
    step: Held<usize>,
    sample: Sample,
    title: &'static str,
    shown: fn(&Session) -> El,
) -> AnyView {
    let view = live(move || {
        sample.with(|sample| match sample {
            None => para("", "One moment …").done(),
            Some(Err(why)) => para("refusal", why.clone()).done(),
            Some(Ok(session)) => shown(session).done(),
        })
    });
    let back = (0 < step.now()).then(|| para("", back(step)));
    el("div", "sheet")
        .with(el("h1", "").with(title))
        .with(view)
        .with(back)
        .done()
}

/// What the readings of the sample say, and what to do.
fn told(session: &Session) -> El {
    let FirstView { told, parts, plan } = present::first_view(session);
    let mut list = el("ul", "");
    for part in parts {
        let words = el("p", "worst")
            .with(mark_sign(part.mark))
            .with(el("span", "").with(part.words));
        let title = el("b", "").with(part.title);
        list = list.with(el("li", "").id("first-part").with(title).with(words));
    }
    let mut table = el("table", "");
    for [about, what] in plan {
        let row = el("tr", "")
            .with(el("th", "").set("scope", "row").with(about))
            .with(el("td", "").with(what));
        table = table.with(row);
    }
    el("div", "")
        .with(para("", told))
        .with(list)
        .with(heading("And what to do about it"))
        .with(table.id("first-plan"))
}

/// The keypad of the route, with one reading to type.
fn practised(session: &Session) -> El {
    let Some(practice) = Practice::of(session) else {
        return el("div", "");
    };
    let task = practice.task();
    let state = State::get();
    let practice = Held::new(Some(practice));
    let view = move || practice.with(|p| p.as_ref().map(Practice::view).unwrap_or_default());
    let part = move |part: fn(&RouteView) -> String| text(move || part(&view()));
    let whole = flag(move || view().face.whole);
    let touch = Callback::new(move |touch| {
        let taken = practice.update(|practice| match (practice, touch) {
            (Some(practice), Touch::Key(key)) => practice.press(key),
            (Some(practice), Touch::Enter) => practice.enter(),
            _ => false,
        });
        let told = said(&untrack(view));
        if !told.is_empty() {
            state.say(&told);
        }
        taken
    });
    let number = el("output", "")
        .id("value")
        .with(el("span", "lead").with(part(|v| v.face.lead.clone())))
        .with(el("span", "typed").with(part(|v| v.face.typed.clone())))
        .with(el("span", "open").with(part(|v| "▢".repeat(v.face.open))));
    let unit = el("span", "unit").with(part(|v| v.face.unit.to_owned()));
    let value = el("div", "value").with(number).with(" ").with(unit);
    let read = text(move || {
        let read = practice.with(|p| p.as_ref()?.read());
        read.map(|read| read.value).unwrap_or_default()
    });
    let below = live(move || {
        if read.get().is_empty() {
            let keys = keys(whole, flag(|| false), touch);
            return el("div", "pad").with(keys).done();
        }
        let read = practice.peek(|p| p.as_ref()?.read());
        read.map_or_else(nothing, |read| done(read).done())
    });
    el("div", "fields quiz")
        .with(para("", task).id("task"))
        .with(para("feature", part(|v| v.feature.clone())))
        .with(value)
        .with(para("told", part(said)).id("said"))
        .with(below)
}

fn said(view: &RouteView) -> String {
    format!("{}{}", view.said, view.asked)
}

fn done(read: LastRead) -> El {
    let words = el("span", "")
        .with(el("b", "").with(read.value))
        .with(" ")
        .with(read.words);
    let words = el("p", "worst")
        .id("last")
        .with(mark_sign(read.mark))
        .with(words);
    let told = "That is all of it. The digits before your three are the nearest to what you read \
                so far; you see the whole number before ENTER. The first two of a kind are typed in \
                full. What looks like a slip is asked about at once.";
    el("div", "fields").with(words).with(para("", told))
}

/// Where everything is kept.
fn kept(step: Held<usize>) -> AnyView {
    let mut sheet = el("div", "sheet").with(el("h1", "").with("What is kept where"));
    for [title, told] in KEPT {
        let one = el("section", "").with(heading(title));
        sheet = sheet.with(one.with(para("", told)));
    }
    let ways = para("actions", link("button main", "#/new", "New session"))
        .with(link("button", "#/", "To the bench"))
        .with(back(step));
    sheet.with(ways).done()
}
