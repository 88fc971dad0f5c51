//! What the touches on the fender screen do.

use leptos::prelude::*;

use crate::device::feel::{Felt, feel, say};
use crate::device::{clock, page};
use crate::present::{self, Fender, RouteView, Stop};
use crate::session::{Edit, Session, SessionId};
use crate::ui::parts::held::Held;
use crate::ui::parts::keypad::Touch;
use crate::ui::state::{Change, State};

/// The fender screen's handle, copied into its parts.
#[derive(Clone, Copy)]
pub struct Entry {
    pub state: State,
    pub view: Memo<RouteView>,
    pub stops: Memo<Vec<Stop>>,
    pub fender: Held<Fender>,
}

impl Entry {
    pub fn new(state: State, id: &SessionId) -> Self {
        let stops = state.read(present::route);
        let draft = state.draft(id);
        let start = |session: &Session, _: &_| {
            stops.with_untracked(|stops| Fender::start(session, stops, draft.as_ref()))
        };
        let fender = Held::new(state.peek(start).unwrap_or_default());
        let view = state.read(move |session, _| {
            stops.with(|stops| fender.with(|fender| present::view(session, stops, fender)))
        });
        Self {
            state,
            view,
            stops,
            fender,
        }
    }

    /// Changes where the person is or what is typed, and keeps it.
    pub fn step(self, step: impl Fn(&mut Fender, &Session, &[Stop])) {
        self.take(&step);
    }

    /// One for all steps: each would bring all this along.
    #[inline(never)]
    fn take(self, step: &dyn Fn(&mut Fender, &Session, &[Stop])) {
        let stepped = self.state.peek(|session, _| {
            let mut fender = self.fender.now();
            self.stops
                .with_untracked(|stops| step(&mut fender, session, stops));
            if let Some(draft) = fender.draft() {
                self.state.keep_draft(&session.id, &draft);
            }
            fender
        });
        if let Some(fender) = stepped {
            self.fender.set(fender);
        }
    }

    /// What a touch does; true if it was taken.
    pub fn touch(self, touch: Touch) -> bool {
        let taken = match touch {
            Touch::Enter => self.entered(Fender::enter),
            Touch::Hour(hour) => {
                let edit = self.fender.peek(|fender| fender.hour(hour));
                edit.is_some_and(|edit| self.change(Change::Edit(&edit)))
            }
            Touch::Key(key) => {
                let mut fender = self.fender.now();
                let taken = self.state.peek(|session, _| fender.press(session, key));
                let taken = taken.unwrap_or(false);
                feel(if taken { Felt::Key } else { Felt::Refusal });
                self.step(|f, _, _| f.clone_from(&fender));
                if taken {
                    return true;
                }
                false
            }
        };
        self.tell();
        taken
    }

    /// Says aloud what became of a touch, where the person wants that.
    pub fn tell(self) {
        if page::is_set("spoken", "on") {
            let last = self.state.peek(|session, _| present::last_read(session));
            let last = last.flatten();
            say(&self
                .view
                .with_untracked(|view| present::spoken(view, last.as_ref())));
        }
    }

    /// Enters what looks like a slip all the same.
    pub fn keep(self) {
        self.entered(Fender::keep);
        self.tell();
    }

    fn entered(self, enter: fn(&mut Fender, &Session, &str) -> Option<Edit>) -> bool {
        let mut fender = self.fender.now();
        let now = clock::now_text();
        let edit = self
            .state
            .peek(|session, _| enter(&mut fender, session, &now));
        match edit.flatten() {
            None => {
                feel(Felt::Refusal);
                self.fender.set(fender);
                false
            }
            Some(edit) => self.change(Change::Edit(&edit)),
        }
    }

    /// Changes the session, and goes on from there; after undo or redo, to
    /// where it made a difference. True if it was taken.
    pub fn change(self, change: Change<'_>) -> bool {
        match self.state.change(change) {
            Err(why) => {
                feel(Felt::Refusal);
                self.step(|fender, _, _| fender.refuse(why.clone()));
                false
            }
            Ok(changed) => {
                feel(Felt::Entry);
                self.step(|fender, session, stops| match (change, &changed) {
                    (Change::Edit(_), _) => fender.after(session, stops),
                    (_, Some(changed)) => fender.back_to(session, changed),
                    (_, None) => {}
                });
                true
            }
        }
    }
}
