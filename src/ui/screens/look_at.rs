//! One part: what can be seen of it, each answered in one tap.

use leptos::prelude::*;

use super::looks::{Here, open};
use crate::present::{self, LookRow};
use crate::remedy::Spot;
use crate::session::{Edit, Field};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::held::Held;
use crate::ui::parts::live::{act, flag, text};
use crate::ui::parts::press::{main_press, para, press};
use crate::ui::state::{Change, State};

/// The looks of a part.
pub fn look_at(spot: Spot, here: Here) -> AnyView {
    let state = State::get();
    let looked = state.peek(|session, _| {
        let sights: Vec<_> = session.sights().collect();
        let next = present::next_spot(session, spot);
        let next = next.map(|next| (next, present::spot_name(session, next)));
        let name = present::spot_name(session, spot);
        (name, present::looks_at(&sights, spot), next)
    });
    let (name, rows, next) = looked.unwrap_or_default();
    // Only what was answered here is taken back here.
    let steps = Held::new(0_usize);
    let undo = act(move || {
        steps.update(|steps| *steps = steps.saturating_sub(1));
        if let Err(why) = state.change(Change::Undo) {
            state.tell(why);
        }
    });
    let nothing_else = act(move || {
        if let Some(rest) = state.peek(|session, _| present::nothing_else(session, spot)) {
            give(steps, &rest);
        }
    });
    let all_answered = flag(move || {
        let rest = state.now(|session, _| present::nothing_else(session, spot));
        rest.is_none_or(|rest| rest.is_nothing())
    });
    let by_test = rows
        .iter()
        .any(|row| row.look.is_crack() && row.drawing.is_none());
    let rows = rows.into_iter().map(|row| look(spot, row, steps).done());
    let next = next.map(|(next, name)| {
        let word = format!("Next: {name}");
        main_press(word, act(move || open(here, Some(next)))).id("next")
    });
    let actions = el("div", "actions look-actions")
        .with(press("Nothing else seen", nothing_else).when("disabled", all_answered))
        .with(press("Undo", undo).when("disabled", flag(move || steps.get() == 0)))
        .with(press("All parts", act(move || open(here, None))))
        .with(next);
    el("div", "sheet looks wide")
        .with(el("h1", "").id("part").with(name))
        .with(by_test.then(|| para("caution", present::BY_TEST)))
        .with(el("ul", "look-list").with(rows.collect::<Vec<_>>()))
        .with(actions)
        .done()
}

fn give(steps: Held<usize>, edit: &Edit) {
    let state = State::get();
    match state.change(Change::Edit(edit)) {
        Ok(Some(_)) => steps.update(|steps| *steps += 1),
        Ok(None) => {}
        Err(why) => state.tell(why),
    }
}

fn look(spot: Spot, row: LookRow, steps: Held<usize>) -> El {
    let state = State::get();
    let look = row.look;
    let answer = move || {
        let answer = state.now(|session, _| present::look_answer(session, spot, look));
        answer.flatten()
    };
    let key = |word: &'static str, means: bool| {
        let pressed = text(move || (answer() == Some(means)).to_string());
        // A second tap takes the answer back.
        let answered = act(move || {
            let given = untrack(answer) != Some(means);
            let edit = Edit::Set(Field::Look(spot, look, given.then_some(means)));
            give(steps, &edit);
        });
        press(word, answered).follow("aria-pressed", pressed)
    };
    let drawing = row.drawing.map(|address| {
        el("img", "drawing")
            .set("src", &address)
            .set("alt", "")
            .set("width", "96")
            .set("height", "96")
    });
    let answers = el("div", "answers")
        .set("role", "group")
        .set("aria-label", row.words)
        .with(key("Seen", true))
        .with(key("Not seen", false));
    el("li", "look")
        .id("look")
        .with(drawing)
        .with(el("span", "").with(row.words))
        .with(answers)
}
