//! Opening a file: what it holds is shown before anything is stored.

use leptos::ev::Event;
use leptos::prelude::*;
use leptos::task::spawn_local;
use web_sys::HtmlInputElement;

use crate::archive::{self, Incoming};
use crate::present;
use crate::store::{StoreError, file, sample};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::held::Held;
use crate::ui::parts::live::{act, flag, live, nothing};
use crate::ui::parts::press::{heading, main_press, para, press, refusal};
use crate::ui::state::State;

/// The samples by name, each with the words on its key.
const SAMPLES: [(&str, &str); 3] = [
    ("hill-climb-six", "A six-cylinder, complete (invented)"),
    (
        "pump-twin",
        "A two-cylinder pump engine, half done (invented)",
    ),
    ("quarry-v-twin", "A V-twin with a spun bearing (invented)"),
];

/// Open a file, or a sample.
pub fn open_file() -> El {
    let state = State::get();
    let refused = Held::new(None::<String>);
    let take = move |text: Result<String, StoreError>| {
        let text = text.map_err(|why| why.to_string());
        let read = text.and_then(|text| archive::import(&text).map_err(|why| why.to_string()));
        let told = read
            .as_ref()
            .err()
            .map(|why| format!("{why} Nothing was changed."));
        if told.is_none() {
            state.say("Below is what the file holds.");
        }
        refused.set(told);
        state.incoming.set(read.ok());
    };
    let chosen = move |event: Event| {
        let input = event_target::<HtmlInputElement>(&event);
        let first = input.files().and_then(|files| files.get(0));
        // The same file can be chosen again.
        input.set_value("");
        if let Some(chosen) = first {
            spawn_local(async move { take(file::read(chosen).await) });
        }
    };
    let input = el("input", "unseen")
        .set("type", "file")
        .set("accept", ".json,.txt,application/json,text/plain")
        .id("file")
        .on("change", chosen);
    let before = live(move || match state.incoming.get() {
        Some(incoming) => before(&incoming),
        None => nothing(),
    });
    let keys = para(
        "actions",
        el("label", "button").with("Open a file").with(input),
    );
    let mut samples = para("actions samples", el("span", "").with("Or try a sample:"));
    for (name, words) in SAMPLES {
        let try_it = act(move || spawn_local(async move { take(sample::fetch(name).await) }));
        samples = samples.with(press(words, try_it));
    }
    el("div", "fields")
        .with(keys)
        .with(samples)
        .with(refusal(refused))
        .with(before)
}

/// What the opened file holds, and the question whether to take it in.
fn before(incoming: &Incoming) -> AnyView {
    let state = State::get();
    let here = state.find(&incoming.session.id);
    let preview = present::preview(incoming, here.as_ref());
    let put_down = act(move || state.incoming.set(None));
    let take_in = act(move || {
        if let Some(incoming) = state.incoming.now() {
            state.take_in(&incoming.session);
            state.incoming.set(None);
        }
    });
    let warning = preview
        .warning
        .map(|told| para("refusal", told).id("warning"));
    let mut section = el("section", "preview")
        .id("preview")
        .with(heading(preview.name))
        .with(warning);
    for line in preview.lines {
        section = section.with(para("", line));
    }
    let nothing_new = preview.nothing_new;
    let take_in = main_press("Take it in", take_in).when("disabled", flag(move || nothing_new));
    section
        .with(para("actions", take_in).with(press("Leave it", put_down)))
        .done()
}
