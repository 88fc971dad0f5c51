//! Layout, gauges and handing on of a session.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::set_up_fields::{Form, set_up_fields};
use crate::present::{self, NewSession};
use crate::session::{Edit, Gauge, SessionId, Stamp};
use crate::store::file;
use crate::ui::parts::bar::{bar, saved_word};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::field::choices;
use crate::ui::parts::live::act;
use crate::ui::parts::notices::export_button;
use crate::ui::parts::press::{heading, para, press, refusal};
use crate::ui::state::{Change, State};
use crate::ui::way::Sheet;

/// The set-up of a session.
pub fn set_up(id: &SessionId) -> AnyView {
    let state = State::get();
    let form = RwSignal::new(state.peek(|s, _| NewSession::of(s)).unwrap_or_default());
    let told = RwSignal::new(None::<String>);
    // Every change is an edit of its own and can be undone.
    let changed = act(move || {
        let now = form.get_untracked();
        let edit = state.peek(|s, _| now.edit(s));
        let done = now.check().and_then(|()| match edit {
            Some(edit) if !edit.is_nothing() => state.change(Change::Edit(&edit)),
            _ => Ok(None),
        });
        told.set(done.err());
    });
    let gauges = state.peek(|s, _| {
        let gauges = s.gauges.iter();
        gauges
            .map(|(id, g)| (*id, g.value.clone()))
            .collect::<Vec<_>>()
    });
    let mut sheet = el("div", "sheet")
        .with(el("h1", "").with("Set-up"))
        .with(set_up_fields(Form { form, changed }))
        .with(refusal(told))
        .with(para("", saved_word()))
        .with(heading("Gauges"))
        .with(para(
            "",
            "A gauge keeps its own unit. Readings stay as they were typed.",
        ));
    for (id, gauge) in gauges.unwrap_or_default() {
        sheet = sheet.with(one_gauge(id, &gauge));
    }
    let told = "The file holds everything entered here. It opens on any device, and taking it in \
                twice duplicates nothing. Files are the backup.";
    let hand_on = para("actions", export_button()).with(press("Share", act(move || share(state))));
    let sheet = sheet
        .with(heading("Hand on"))
        .with(para("", told))
        .with(hand_on);
    el("div", "").with(bar(id, Sheet::SetUp)).with(sheet).done()
}

fn one_gauge(id: Stamp, gauge: &Gauge) -> El {
    let state = State::get();
    let graduations = Gauge::all_graduations();
    let options = graduations.iter().map(ToString::to_string).collect();
    let now = graduations.iter().position(|g| *g == gauge.graduation);
    let chosen = RwSignal::new(now.unwrap_or(graduations.len()));
    let kind = gauge.kind;
    let choose = Callback::new(move |at: usize| {
        if let Some(graduation) = graduations.get(at).cloned() {
            chosen.set(at);
            let edit = Edit::Gauge(id, Gauge { kind, graduation });
            if let Err(why) = state.change(Change::Edit(&edit)) {
                state.tell(why);
            }
        }
    });
    choices(
        &present::gauge_choice(gauge),
        options,
        chosen.into(),
        choose,
    )
}

/// Shares the session, or writes a file where that cannot be.
fn share(state: State) {
    let Some((name, text)) = state.export() else {
        return;
    };
    spawn_local(async move {
        let done = match file::share(&name, &text).await {
            Ok(true) => Ok(()),
            Ok(false) => file::download(&name, &text),
            Err(why) => Err(why),
        };
        if let Err(why) = done {
            state.tell(why.to_string());
        }
    });
}
