//! The limits of the manual, by kind.

use leptos::prelude::*;

use crate::present::{self, LimitsForm};
use crate::quantity::{TEXT_MAX, Unit};
use crate::session::{Kind, NOTE_MAX, SessionId};
use crate::ui::parts::bar::{bar, saved_word};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::field::{among, choices, text_field};
use crate::ui::parts::held::Held;
use crate::ui::parts::live::{act, text};
use crate::ui::parts::press::{heading, main_press, para, refusal, shown_while};
use crate::ui::state::{Change, State};
use crate::ui::way::Sheet;

const TOLD: &str = "From your own service manual, in its unit, as printed. Leave blank what it \
                    does not give. A value equal to a limit is inside it.";

/// A form for each kind.
pub fn limits(id: &SessionId) -> AnyView {
    let mut sheet = el("div", "sheet wide tiles")
        .with(el("h1", "").with("Limits"))
        .with(para("", TOLD));
    for kind in State::get().peek(|s, _| s.kinds()).unwrap_or_default() {
        sheet = sheet.with(of_kind(kind));
    }
    el("div", "")
        .with(bar(id, Sheet::Limits))
        .with(sheet)
        .done()
}

fn of_kind(kind: Kind) -> Option<El> {
    let state = State::get();
    let start = state.peek(|s, _| LimitsForm::of(s, kind))?;
    if start.rows.is_empty() {
        return None;
    }
    let title = present::kind_plural(kind);
    // What few manuals are silent of is in sight, and what somebody gave.
    let given = start.rows.iter().any(|row| !row.text.is_empty());
    let section = if kind.is_usual() || given {
        el("section", "limits").with(heading(title))
    } else {
        el("details", "more limits").with(el("summary", "").with(title))
    };
    let mut rows = el("div", "rows");
    let labels = start.rows.iter().map(|row| (row.quantity, row.bound));
    let labels: Vec<_> = labels.collect();
    let form = Held::new(start);
    for (at, (quantity, bound)) in labels.into_iter().enumerate() {
        rows = rows.with(row(form, at, quantity, bound));
    }
    let told = Held::new(None::<String>);
    let kept = Held::new(false);
    let keep = act(move || {
        let edit = state.peek(|s, _| form.peek(|form| form.edit(s)));
        let done = match edit {
            Some(Ok(edit)) => state.change(Change::Edit(&edit)).map(|_| ()),
            Some(Err(why)) => Err(why),
            None => Ok(()),
        };
        kept.set(done.is_ok());
        if done.is_ok() {
            state.say("Limits kept.");
        }
        told.set(done.err());
    });
    let (chosen, choose) = among(
        Unit::ALL,
        move || form.with(|form| form.unit),
        move |unit| form.update(|form| form.unit = unit),
    );
    let units = Unit::ALL.map(|unit| unit.sign().to_owned()).to_vec();
    let legend = format!("Unit of the manual for {title}");
    let source = text(move || form.with(|form| form.source.clone()));
    let set_source = Callback::new(move |text| form.update(|form| form.source = text));
    let is_kept = shown_while(
        move || kept.get(),
        || {
            el("span", "")
                .id("kept")
                .with("Kept, ")
                .with(saved_word())
                .done()
        },
    );
    let section = section
        .set("data-testid", &format!("limits-{}", kind.key()))
        .with(choices(&legend, units, chosen, choose))
        .with(rows)
        .with(text_field(
            "Source: manual, page",
            source,
            set_source,
            NOTE_MAX,
        ))
        .with(para("actions", main_press("Keep these limits", keep)).with(is_kept))
        .with(refusal(told));
    Some(section)
}

fn row(form: Held<LimitsForm>, at: usize, quantity: &'static str, bound: &'static str) -> El {
    let read = move |form: &LimitsForm| form.rows.get(at).map(|row| row.text.clone());
    let value = text(move || form.with(read).unwrap_or_default());
    let set = Callback::new(move |text| {
        form.update(|form| {
            if let Some(row) = form.rows.get_mut(at) {
                row.text = text;
            }
        });
    });
    let label = el("span", "")
        .with(el("b", "").with(quantity))
        .with(", ")
        .with(bound);
    text_field(label, value, set, TEXT_MAX)
}
