//! Layout, gauges and handing on of a session.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::set_up_fields::SetUpFields;
use crate::present::{self, NewSession};
use crate::session::{Edit, Gauge, SessionId, Stamp};
use crate::store::file;
use crate::ui::parts::bar::{Bar, SavedWord};
use crate::ui::parts::field::Choices;
use crate::ui::parts::live::{said, some};
use crate::ui::parts::notices::ExportButton;
use crate::ui::parts::press::{Press, act};
use crate::ui::state::{Change, State};
use crate::ui::way::Sheet;

/// The set-up of a session.
#[component]
pub fn SetUp(id: SessionId) -> impl IntoView {
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
    let gauges = gauges.unwrap_or_default().into_iter();
    let gauges: Vec<AnyView> = gauges.map(|(id, gauge)| one_gauge(id, gauge)).collect();
    view! {
        <Bar id here=Sheet::SetUp/>
        <div class="sheet">
            <h1>"Set-up"</h1>
            <SetUpFields form changed/>
            {some(move || told.get(), |why| said("refusal", "refused", why))}
            <p><SavedWord/></p>
            <h2>"Gauges"</h2>
            <p>"A gauge keeps its own unit. Readings stay as they were typed."</p>
            {gauges}
            <HandOn/>
        </div>
    }
}

fn one_gauge(id: Stamp, gauge: Gauge) -> AnyView {
    let state = State::get();
    let graduations = Gauge::all_graduations();
    let options = graduations.iter().map(ToString::to_string).collect();
    let now = graduations.iter().position(|g| *g == gauge.graduation);
    let chosen = RwSignal::new(now.unwrap_or(graduations.len()));
    let legend = present::gauge_choice(&gauge);
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
    view! { <Choices legend options chosen=chosen.into() choose/> }.into_any()
}

/// Export and share.
#[component]
fn HandOn() -> impl IntoView {
    let state = State::get();
    let share = act(move || {
        if let Some((name, text)) = state.export() {
            spawn_local(async move {
                let shared = file::share(&name, &text).await;
                let done = match shared {
                    Ok(true) => Ok(()),
                    Ok(false) => file::download(&name, &text),
                    Err(why) => Err(why),
                };
                if let Err(why) = done {
                    state.tell(why.to_string());
                }
            });
        }
    });
    view! {
        <h2>"Hand on"</h2>
        <p>
            "The file holds everything entered here. It opens on any device, and taking it in twice \
            duplicates nothing. Files are the backup."
        </p>
        <p class="actions"><ExportButton/><Press label="Share" act=share/></p>
    }
}
