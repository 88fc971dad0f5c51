//! The state of the app. Screens read it through [`State::read`] and change
//! it through its methods; none sees how it is held or kept.

mod keep;
mod open;

use leptos::prelude::*;
use litemap::LiteMap;

use crate::archive::Incoming;
use crate::assess::{Assessment, assess};
use crate::device::page::{self, Later, Worker};
use crate::session::{Document, Edit, Session, SessionId};
use crate::store::keeper::{Away, Found, Keeper};
use crate::ui::parts::held::Held;

/// How safe the latest change is.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum Saved {
    /// Nothing was changed yet.
    #[default]
    Untouched,
    /// On its way to the journal.
    Writing,
    /// Committed: it survives a crash.
    Safe,
    /// Only in memory, or in one store; why, as a sentence.
    NotSafe(String),
}

/// A change to the open session.
#[derive(Clone, Copy)]
pub enum Change<'a> {
    /// An edit.
    Edit(&'a Edit),
    /// Taking back the last edit.
    Undo,
    /// Doing the last undone edit again.
    Redo,
}

/// The app's handle, copied into every screen.
#[derive(Clone, Copy)]
pub struct State {
    keeper: StoredValue<Keeper, LocalStorage>,
    document: Held<Option<Document>>,
    assessment: Memo<Assessment>,
    /// Sessions that are not open.
    others: Held<LiteMap<SessionId, Session>>,
    removed: Held<Away>,
    /// How safe the latest change is.
    pub saved: Held<Saved>,
    /// Sentences for the person, shown until put away.
    pub notices: Held<Vec<String>>,
    /// What a screen reader says, as the eye sees it by itself.
    pub said: Held<String>,
    /// What is known of working offline.
    pub worker: Held<Worker>,
    /// Whether what a start does not need is there.
    pub later: Held<Later>,
    /// A file that was opened and is not taken in yet.
    pub incoming: Held<Option<Incoming>>,
}

impl State {
    /// The handle a screen gets.
    pub fn get() -> Self {
        expect_context()
    }

    /// Opens the stores and reads everything there is.
    pub async fn open() -> (Keeper, Found) {
        Keeper::open().await
    }

    /// The state at the start.
    pub fn new((mut keeper, found): (Keeper, Found)) -> Self {
        let worker = Held::new(page::worker());
        page::on_worker(move || worker.set(page::worker()));
        let later = Held::new(page::later());
        page::on_later(move || later.set(page::later()));
        let document = Held::new(None::<Document>);
        // Not compared: it changes with the document, and what screens show of
        // it is compared later.
        let anew = |_: Option<&Assessment>, _: Option<&Assessment>| true;
        let read = move |_: Option<&Assessment>| {
            document.with(|d| {
                d.as_ref()
                    .map_or_else(Assessment::default, |d| assess(d.session()))
            })
        };
        let assessment = Memo::new_with_compare(read, anew);
        let state = Self {
            keeper: StoredValue::new_local(keeper.clone()),
            document,
            assessment,
            others: Held::new(found.sessions),
            removed: Held::new(found.removed),
            saved: Held::new(Saved::Untouched),
            notices: Held::new(found.notices),
            said: Held::new(String::new()),
            worker,
            later,
            incoming: Held::new(None),
        };
        keeper.meet_others(move |_, text| state.hear(&text));
        state.keeper.set_value(keeper);
        state
    }

    fn keeper(self) -> Keeper {
        self.keeper.get_value()
    }

    /// What a screen shows of the open session: recomputed when it changes,
    /// passed on when the result does. `T::default()` without a session.
    pub fn read<T>(
        self,
        view: impl Fn(&Session, &Assessment) -> T + Send + Sync + 'static,
    ) -> Memo<T>
    where
        T: PartialEq + Default + Send + Sync + 'static,
    {
        let read = move || self.peek_tracked(&view).unwrap_or_default();
        let read: Box<dyn Fn() -> T + Send + Sync> = Box::new(read);
        Memo::new(move |_| read())
    }

    fn peek_tracked<T>(self, view: impl FnOnce(&Session, &Assessment) -> T) -> Option<T> {
        self.document.with(|document| {
            let document = document.as_ref()?;
            Some(self.assessment.with(|a| view(document.session(), a)))
        })
    }

    /// Looks at the open session, and again when it changes in any way; for
    /// parts that are cheap to make anew, see [`State::read`].
    pub fn now<T>(self, view: impl FnOnce(&Session, &Assessment) -> T) -> Option<T> {
        self.peek_tracked(view)
    }

    /// Looks at the open session once, without following it.
    pub fn peek<T>(self, view: impl FnOnce(&Session, &Assessment) -> T) -> Option<T> {
        untrack(|| self.peek_tracked(view))
    }

    /// Whether there is something to undo.
    pub fn can_undo(self) -> bool {
        self.document
            .with(|d| d.as_ref().is_some_and(Document::can_undo))
    }

    /// Whether there is something to do again.
    pub fn can_redo(self) -> bool {
        self.document
            .with(|d| d.as_ref().is_some_and(Document::can_redo))
    }

    /// Changes the open session by an edit, by undoing or by redoing, keeps
    /// it, and returns the part that changed, if any did.
    ///
    /// # Errors
    /// The sentence why it cannot be; then nothing has changed.
    pub fn change(self, change: Change<'_>) -> Result<Option<Session>, String> {
        let changed = self.document.update(|document| {
            let document = document.as_mut()?;
            match change {
                Change::Edit(edit) => Some(document.dispatch(edit)),
                Change::Undo => document.undo(),
                Change::Redo => document.redo(),
            }
        });
        let added = changed.transpose().map_err(|why| why.to_string())?;
        let added = added.filter(|added| !added.is_empty());
        self.document.peek(|document| {
            if let (Some(document), Some(added)) = (document, &added) {
                self.keep(document.session(), added);
            }
        });
        Ok(added)
    }
}
