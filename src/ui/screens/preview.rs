//! What an opened file holds, and the question whether to take it in.

use leptos::prelude::*;

use crate::archive::Incoming;
use crate::present;
use crate::ui::parts::el::el;
use crate::ui::parts::live::{Live, act, flag, live, nothing};
use crate::ui::parts::press::{heading, main_press, para, press};
use crate::ui::state::State;

/// The file that is open, as long as one is.
pub fn preview() -> Live {
    let state = State::get();
    live(move || match state.incoming.get() {
        Some(incoming) => before(&incoming),
        None => nothing(),
    })
}

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
