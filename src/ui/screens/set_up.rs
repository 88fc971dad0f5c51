//! Layout, gauges and handing on of a session.

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::set_up_fields::{Form, set_up_fields};
use super::set_up_given::given;
use crate::present::{self, NewSession};
use crate::session::{Edit, SessionId};
use crate::store::file;
use crate::ui::parts::bar::{bar, head};
use crate::ui::parts::el::el;
use crate::ui::parts::held::Held;
use crate::ui::parts::live::act;
use crate::ui::parts::notices::export_button;
use crate::ui::parts::press::{heading, link, para, press, refusal};
use crate::ui::state::{Change, State};
use crate::ui::way::{Sheet, sheet_address};

/// The set-up of a session.
pub fn set_up(id: &SessionId) -> AnyView {
    let state = State::get();
    let form = Held::new(state.peek(|s, _| NewSession::of(s)).unwrap_or_default());
    let refused = Held::new(None::<String>);
    // Every change is an edit of its own and can be undone.
    let changed = act(move || {
        let now = form.now();
        let edit = state.peek(|s, _| now.edit(s));
        let done = now.check().and(edit.unwrap_or(Ok(Edit::Batch(Vec::new()))));
        let done = done.and_then(|edit| match edit.is_nothing() {
            true => Ok(None),
            false => state.change(Change::Edit(&edit)),
        });
        refused.set(done.err());
    });
    let asked = state.peek(|s, _| present::asked(s)).unwrap_or_default();
    let kinds = link(
        "button",
        &sheet_address(id, Sheet::Kinds),
        "Choose what to measure",
    );
    let measured = el("section", "")
        .with(heading("What to measure"))
        .with(para("", asked))
        .with(para("actions", kinds));
    let mut at_hand = el("section", "").with(heading("Gauges"));
    for row in state.peek(present::gauges).unwrap_or_default().gauges {
        let name = format!("{}: ", present::gauge(&row.gauge));
        at_hand = at_hand.with(para("", el("b", "").with(name)).with(row.setting));
    }
    let gauges = link(
        "button",
        &sheet_address(id, Sheet::Gauges),
        "Set, check or add gauges",
    );
    let told = "The file holds everything entered here. It opens on any device, and taking it in \
                twice duplicates nothing. Files are the backup.";
    let hand_on = para("actions", export_button()).with(press("Share", act(move || share(state))));
    let hand_on = el("section", "")
        .with(heading("Hand on"))
        .with(para("", told))
        .with(hand_on);
    let sheet = el("div", "sheet wide tiles")
        .with(head("Set-up"))
        .with(set_up_fields(Form { form, changed }))
        .with(refusal(refused))
        .with(given())
        .with(measured)
        .with(at_hand.with(para("actions", gauges)))
        .with(hand_on);
    el("div", "").with(bar(id, Sheet::SetUp)).with(sheet).done()
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
