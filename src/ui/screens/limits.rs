//! The limits of the manual, by kind.

use leptos::prelude::*;

use crate::present::{self, LimitsForm};
use crate::quantity::Unit;
use crate::session::{Kind, NOTE_MAX, SessionId};
use crate::ui::parts::bar::{Bar, SavedWord};
use crate::ui::parts::field::{Choices, TextField, among};
use crate::ui::parts::live::{said, some, text};
use crate::ui::parts::press::{Press, act};
use crate::ui::state::{Change, State};
use crate::ui::way::Sheet;

/// A form for each kind.
#[component]
pub fn Limits(id: SessionId) -> impl IntoView {
    let forms: Vec<AnyView> = Kind::ALL.map(of_kind).into();
    view! {
        <Bar id here=Sheet::Limits/>
        <div class="sheet">
            <h1>"Limits"</h1>
            <p>
                "From your own service manual, in its unit, as printed. Leave blank what it does \
                not give. A value equal to a limit is inside it."
            </p>
            {forms}
        </div>
    }
}

fn of_kind(kind: Kind) -> AnyView {
    let state = State::get();
    let Some(start) = state.peek(|s, _| LimitsForm::of(s, kind)) else {
        return ().into_any();
    };
    let count = start.rows.len();
    let form = RwSignal::new(start);
    let told = RwSignal::new(None::<String>);
    let kept = RwSignal::new(false);
    let keep = act(move || {
        let edit = state.peek(|s, _| form.with_untracked(|form| form.edit(s)));
        let done = match edit {
            Some(Ok(edit)) => state.change(Change::Edit(&edit)).map(|_| ()),
            Some(Err(why)) => Err(why),
            None => Ok(()),
        };
        kept.set(done.is_ok());
        told.set(done.err());
    });
    let rows: Vec<AnyView> = (0..count).filter_map(|at| row(form, at)).collect();
    let (chosen, choose) = among(
        Unit::ALL,
        move || form.with(|form| form.unit),
        move |unit| form.update(|form| form.unit = unit),
    );
    let units = Unit::ALL.map(|unit| unit.sign().to_owned()).to_vec();
    let legend = format!("Unit of the manual for {}", present::kind_plural(kind));
    let source = text(move || form.with(|form| form.source.clone()));
    let set_source = Callback::new(move |text| form.update(|form| form.source = text));
    let told = some(move || told.get(), |why| said("refusal", "refused", why));
    let kept = some(
        move || kept.get().then_some(()),
        |()| view! { <span role="status">"Kept, "<SavedWord/></span> }.into_any(),
    );
    view! {
        <section class="limits" data-testid=format!("limits-{}", kind.key())>
            <h2>{present::kind_plural(kind)}</h2>
            <Choices legend options=units chosen choose/>
            <div class="rows">{rows}</div>
            <TextField label=("", "Source: manual, page") value=source set=set_source most=NOTE_MAX as u16/>
            <p class="actions"><Press label="Keep these limits" act=keep class="main"/>{kept}</p>
            {told}
        </section>
    }
    .into_any()
}

fn row(form: RwSignal<LimitsForm>, at: usize) -> Option<AnyView> {
    let (quantity, bound) = form.with_untracked(|form| {
        let row = form.rows.get(at)?;
        Some((row.quantity, row.bound))
    })?;
    let read = move |form: &LimitsForm| form.rows.get(at).map(|row| row.text.clone());
    let value = text(move || form.with(read).unwrap_or_default());
    let set = Callback::new(move |text| {
        form.update(|form| {
            if let Some(row) = form.rows.get_mut(at) {
                row.text = text;
            }
        });
    });
    Some(view! { <TextField label=(quantity, bound) value set most=16 decimal=true/> }.into_any())
}
