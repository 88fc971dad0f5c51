//! What stands beside the plan: which size cleans up what, and how far sizes
//! of shells may be mixed.

use super::{list, section, set};
use crate::present::{self, MixingChoice, MixingView, SizesView};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::live::act;
use crate::ui::parts::press::{heading, para, press};

/// Every size, and whether it cleans up all; nothing where nothing is
/// machined.
pub fn sizes(all: Vec<SizesView>) -> Option<El> {
    let some = !all.is_empty();
    let mut sheet = section("sizes", "Which size cleans up");
    for one in all {
        let mut table = el("table", "");
        for [size, word] in one.rows {
            let row = el("tr", "")
                .with(el("th", "").set("scope", "row").with(size))
                .with(el("td", "").with(word));
            table = table.with(row);
        }
        let taken = (!one.taken.is_empty())
            .then(|| para("lead-in", "Taken, as nobody gave it under Set-up:"));
        let told = (!one.taken.is_empty()).then(|| list(one.taken));
        sheet = sheet
            .with(para("", el("b", "").with(one.title)))
            .with(one.worst.map(|worst| para("lead-in", worst)))
            .with(table)
            .with(taken)
            .with(told);
    }
    some.then_some(sheet)
}

/// How far sizes of shells may be mixed, closed until somebody asks.
pub fn mixing(view: MixingView) -> El {
    let options = view.choices.first().map(|choice| choice.options.iter());
    let chosen = options.and_then(|mut all| all.find(|(.., is_chosen)| *is_chosen));
    let summary = el("summary", "")
        .with(el("b", "").with("Mixing sizes of shells"))
        .with(chosen.map(|(label, ..)| el("span", "").with(label.clone())));
    let mut more = el("details", "plan-line").id("mixing").with(summary);
    if 1 < view.choices.len() {
        // There is more to choose, and the plan is made anew after each tap.
        more = more.set("open", "");
    }
    more = more.with(list(view.told.map(str::to_owned).into()));
    for one in view.choices {
        more = choice(more, one);
    }
    more
}

fn choice(mut more: El, choice: MixingChoice) -> El {
    let pin = choice.pin;
    more = more.with(heading(choice.title));
    for (label, word, is_chosen) in choice.options {
        let fix = act(move || set(&present::fix(pin, word.clone())));
        let pressed = if is_chosen { "true" } else { "false" };
        let chosen = is_chosen.then(|| el("small", "").with("chosen"));
        let key = press(el("span", "").with(label), fix).with(chosen);
        more = more.with(key.set("aria-pressed", pressed));
    }
    more
}
