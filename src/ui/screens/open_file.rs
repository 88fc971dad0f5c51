//! Opening a file: what it holds is shown before anything is stored.

use leptos::ev::Event;
use leptos::prelude::*;
use leptos::task::spawn_local;
use web_sys::HtmlInputElement;

use super::preview::preview;
use crate::archive;
use crate::present;
use crate::store::{StoreError, file, sample};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::held::Held;
use crate::ui::parts::live::act;
use crate::ui::parts::press::{fold, para, press, refusal};
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
        let text = text.map_err(|why| format!("{why} Nothing was changed."));
        let read = text.and_then(|text| archive::import(&text).map_err(present::not_opened));
        if read.is_ok() {
            state.say("Below is what the file holds.");
        }
        refused.set(read.as_ref().err().cloned());
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
    let keys = para(
        "actions",
        el("label", "button").with("Open a file").with(input),
    );
    let mut samples = el("div", "actions samples");
    for (name, words) in SAMPLES {
        let try_it = act(move || spawn_local(async move { take(sample::fetch(name).await) }));
        samples = samples.with(press(words, try_it));
    }
    // In nobody's way once there is something of their own.
    let samples = fold("Or try a sample".into(), samples.into());
    let samples = match untrack(|| state.list(false, |_| ())).is_empty() {
        true => samples.set("open", ""),
        false => samples,
    };
    el("div", "fields")
        .with(keys)
        .with(samples)
        .with(refusal(refused))
        .with(preview())
}
