//! Lengths, volumes and sizes to be had, besides those of features.

use crate::present;
use crate::session::NOTE_MAX;
use crate::ui::parts::el::{El, el};
use crate::ui::parts::field::text_field;
use crate::ui::parts::held::Held;
use crate::ui::parts::live::{act, text};
use crate::ui::parts::press::{main_press, para, refusal, shown_while};
use crate::ui::state::{Change, State};

use leptos::prelude::*;

/// The form, folded away until it is wanted.
pub fn given() -> El {
    let state = State::get();
    let form = Held::new(
        state
            .peek(|s, _| present::given_form(s))
            .unwrap_or_default(),
    );
    let told = Held::new(None::<String>);
    let kept = Held::new(false);
    let keep = act(move || {
        let edit = state.peek(|s, _| form.peek(|rows| present::given_edit(s, rows)));
        let done = match edit {
            Some(Ok(edit)) => state.change(Change::Edit(&edit)).map(|_| ()),
            Some(Err(why)) => Err(why),
            None => Ok(()),
        };
        kept.set(done.is_ok());
        if done.is_ok() {
            state.say("Kept.");
        }
        told.set(done.err());
    });
    let mut fields = el("div", "");
    for (at, row) in form.now().into_iter().enumerate() {
        let value = text(move || {
            let read = |rows: &Vec<present::GivenRow>| rows.get(at).map(|row| row.text.clone());
            form.with(read).unwrap_or_default()
        });
        let set = Callback::new(move |text| {
            form.update(|rows| {
                if let Some(row) = rows.get_mut(at) {
                    row.text = text;
                }
            });
        });
        let told = (!row.told.is_empty()).then(|| el("small", "").with(row.told));
        fields = fields.with(text_field(row.label, value, set, NOTE_MAX).with(told));
    }
    let is_kept = shown_while(move || kept.get(), || el("span", "").with("Kept.").done());
    el("details", "more")
        .id("given")
        .with(el("summary", "").with("Stroke, gasket, volumes, sizes to be had"))
        .with(fields)
        .with(para("actions", main_press("Keep these", keep)).with(is_kept))
        .with(refusal(told))
}
