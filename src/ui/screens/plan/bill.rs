//! What is paid for, with the person's own prices.

use leptos::prelude::*;

use crate::present::{self, BillRow};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::held::Held;
use crate::ui::parts::live::nothing;
use crate::ui::parts::press::{heading, para};
use crate::ui::state::{Change, State};

const TOLD: &str = "Your own prices, in your money. Blank is asked for, never guessed.";

/// The rows that are shown change with the items, not with their prices.
pub fn follow(shown: Held<Vec<BillRow>>, now: &[BillRow]) {
    let items = |rows: &[BillRow]| {
        rows.iter()
            .map(|row| (row.item, row.count))
            .collect::<Vec<_>>()
    };
    if shown.peek(|shown| items(shown)) != items(now) {
        shown.set(now.to_vec());
    }
}

/// The items with a field for the price of each; nothing where nothing is
/// paid for.
pub fn bill(rows: Vec<BillRow>) -> AnyView {
    if rows.is_empty() {
        return nothing();
    }
    let mut section = el("section", "bill")
        .id("bill")
        .with(heading("What it costs"))
        .with(para("lead-in", TOLD));
    for row in rows {
        section = section.with(item(row));
    }
    section.done()
}

fn item(row: BillRow) -> El {
    let item = row.item;
    let input = el("input", "")
        .set("type", "text")
        .set("inputmode", "decimal")
        .set("autocomplete", "off")
        .set("maxlength", "12")
        .set("value", &row.price)
        .on("change", move |event| {
            let state = State::get();
            let edit = present::set_price(item, &event_target_value(&event));
            let done = edit.and_then(|edit| state.change(Change::Edit(&edit)).map(|_| ()));
            if let Err(why) = done {
                state.tell(why);
            }
        });
    let label = format!("{} × {}", row.count, row.what);
    el("label", "field")
        .with(el("span", "").with(label))
        .with(input)
}
