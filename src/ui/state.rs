//! The state of the app. Screens read it through [`State::read`] and change
//! it through its methods; none sees how it is held or kept.

use litemap::LiteMap;

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::archive::{self, Incoming};
use crate::assess::{Assessment, assess};
use crate::device::page::{self, Worker};
use crate::device::random;
use crate::present::{Draft, NewSession};
use crate::session::{Document, Edit, Session, SessionId};
use crate::store::keeper::{Away, Found, Keeper};

/// How safe the latest change is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Saved {
    /// Nothing was changed yet.
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
    document: RwSignal<Option<Document>>,
    assessment: Memo<Assessment>,
    /// Sessions that are not open.
    others: RwSignal<LiteMap<SessionId, Session>>,
    removed: RwSignal<Away>,
    writing: RwSignal<usize>,
    /// How safe the latest change is.
    pub saved: RwSignal<Saved>,
    /// Sentences for the person, shown until put away.
    pub notices: RwSignal<Vec<String>>,
    /// What is known of working offline.
    pub worker: RwSignal<Worker>,
    /// A file that was opened and is not taken in yet.
    pub incoming: RwSignal<Option<Incoming>>,
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
    pub fn new((keeper, found): (Keeper, Found)) -> Self {
        let worker = RwSignal::new(page::worker());
        page::on_worker(move || worker.set(page::worker()));
        let document = RwSignal::new(None::<Document>);
        let assessment = Memo::new(move |_| {
            document.with(|d| d.as_ref().map_or_else(Assessment::default, |d| assess(d.session())))
        });
        Self {
            keeper: StoredValue::new_local(keeper),
            document,
            assessment,
            others: RwSignal::new(found.sessions),
            removed: RwSignal::new(found.removed),
            writing: RwSignal::new(0),
            saved: RwSignal::new(Saved::Untouched),
            notices: RwSignal::new(found.notices),
            worker,
            incoming: RwSignal::new(None),
        }
    }

    fn keeper(self) -> Keeper {
        self.keeper.get_value()
    }

    /// Opens a session; false if it is not on this device.
    pub fn enter(self, id: &SessionId) -> bool {
        if self.document.with_untracked(|d| is_open(d.as_ref(), id)) {
            return true;
        }
        self.leave();
        let Some(mut session) = self.others.write().remove(id) else {
            return false;
        };
        let replica = self.keeper().replica();
        // Only a session whose stored parts were damaged lacks them.
        let before = session.clone();
        session.add_missing_gauges(replica);
        let added = session.beyond(&before);
        if !added.is_empty() {
            self.keep(&session, &added);
        }
        self.document.set(Some(Document::open(session, replica)));
        true
    }

    /// Closes the open session.
    pub fn leave(self) {
        if let Some(document) = self.document.write().take() {
            let session = document.session().clone();
            self.others.write().insert(session.id.clone(), session);
        }
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
        Memo::new(move |_| self.peek_tracked(&view).unwrap_or_default())
    }

    fn peek_tracked<T>(self, view: impl Fn(&Session, &Assessment) -> T) -> Option<T> {
        self.document.with(|document| {
            let document = document.as_ref()?;
            Some(self.assessment.with(|a| view(document.session(), a)))
        })
    }

    /// Looks at the open session once, without following it.
    pub fn peek<T>(self, view: impl Fn(&Session, &Assessment) -> T) -> Option<T> {
        untrack(|| self.peek_tracked(view))
    }

    /// Whether there is something to undo and to redo.
    pub fn history(self) -> Memo<(bool, bool)> {
        Memo::new(move |_| {
            self.document.with(|document| {
                let document = document.as_ref();
                document.map_or((false, false), |d| (d.can_undo(), d.can_redo()))
            })
        })
    }

    /// Changes the open session by an edit, by undoing or by redoing, keeps
    /// it, and returns the part that changed, if any did.
    ///
    /// # Errors
    /// The sentence why it cannot be; then nothing has changed.
    pub fn change(self, change: Change<'_>) -> Result<Option<Session>, String> {
        let changed = self.document.try_update(|document| {
            let document = document.as_mut()?;
            match change {
                Change::Edit(edit) => Some(document.dispatch(edit)),
                Change::Undo => document.undo(),
                Change::Redo => document.redo(),
            }
        });
        let added = changed.flatten().transpose().map_err(|why| why.to_string())?;
        let added = added.filter(|added| !added.is_empty());
        self.document.with_untracked(|document| {
            if let (Some(document), Some(added)) = (document, &added) {
                self.keep(document.session(), added);
            }
        });
        Ok(added)
    }

    fn keep(self, session: &Session, added: &Session) {
        self.saved.set(Saved::Writing);
        *self.writing.write_untracked() += 1;
        let kept = self.keeper().keep(session, added);
        spawn_local(async move {
            let kept = kept.await;
            *self.writing.write_untracked() -= 1;
            match kept {
                Err(why) => self.saved.set(Saved::NotSafe(why.to_string())),
                // A change that did not reach the journal stays unsafe
                // whatever later ones do.
                Ok(()) if matches!(self.saved.get_untracked(), Saved::NotSafe(_)) => {}
                Ok(()) if 0 < self.writing.get_untracked() => {}
                Ok(()) => self.saved.set(Saved::Safe),
            }
        });
    }

    /// Makes a session and opens it.
    pub fn create(self, new: &NewSession) -> SessionId {
        self.leave();
        let replica = self.keeper().replica();
        let id = SessionId::from_number(random::number());
        let session = Session::create(id.clone(), new.fields(), replica);
        self.keep(&session, &session);
        self.document.set(Some(Document::open(session, replica)));
        id
    }

    /// Takes in a session, or what is new of one that is here.
    pub fn take_in(self, theirs: &Session) {
        self.leave();
        let here = self.others.with_untracked(|others| others.get(&theirs.id).cloned());
        let before = here.unwrap_or_else(|| Session::empty(theirs.id.clone()));
        let mut ours = before.clone();
        ours.merge(theirs);
        let added = ours.beyond(&before);
        if !added.is_empty() {
            self.keep(&ours, &added);
        }
        self.others.write().insert(theirs.id.clone(), ours);
        self.put_back(&theirs.id);
    }

    /// A session here by its id, open or not.
    pub fn find(self, id: &SessionId) -> Option<Session> {
        let open = self.document.with(|document| {
            let document = document.as_ref().filter(|d| d.session().id == *id);
            document.map(|d| d.session().clone())
        });
        open.or_else(|| self.others.with(|others| others.get(id).cloned()))
    }

    /// What the bench shows: sessions on it, or those put away.
    pub fn list<T>(self, away: bool, row: impl Fn(&Session) -> T) -> Vec<T> {
        let removed = self.removed.get();
        self.others.with(|others| {
            let shown = others.values().filter(|s| removed.contains_key(&s.id) == away);
            shown.map(row).collect()
        })
    }

    /// Puts a session away.
    pub fn put_away(self, id: &SessionId) {
        self.removed.write().insert(id.clone(), ());
        self.keep_removed();
    }

    /// Puts a session back on the bench.
    pub fn put_back(self, id: &SessionId) {
        if self.removed.write().remove(id).is_some() {
            self.keep_removed();
        }
    }

    fn keep_removed(self) {
        let kept = self.removed.with_untracked(|r| self.keeper().keep_removed(r));
        if let Err(why) = kept {
            self.tell(why.to_string());
        }
    }

    /// Deletes a session for good.
    pub fn delete(self, id: SessionId) {
        self.others.write().remove(&id);
        self.put_back(&id);
        let keeper = self.keeper();
        spawn_local(async move {
            if let Err(why) = keeper.delete(&id).await {
                self.tell(why.to_string());
            }
        });
    }

    /// Shows a sentence until the person puts it away.
    pub fn tell(self, sentence: String) {
        self.notices.write().push(sentence);
    }

    /// The text of the open session for a file.
    pub fn export(self) -> Option<(String, String)> {
        let replica = self.keeper().replica();
        self.peek(|session, _| {
            let name = crate::present::file_name(session);
            (name, archive::write(session, replica))
        })
    }

    /// Keeps where the person is and what is typed.
    pub fn keep_draft(self, id: &SessionId, draft: &Draft) {
        self.keeper().keep_draft(id, &draft.to_text());
    }

    /// Where the person was and what was typed.
    pub fn draft(self, id: &SessionId) -> Option<Draft> {
        Draft::from_text(&self.keeper().draft(id)?)
    }
}

fn is_open(document: Option<&Document>, id: &SessionId) -> bool {
    document.is_some_and(|document| document.session().id == *id)
}
