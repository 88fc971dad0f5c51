//! Keeping: what is written, read back, put away and handed on.

use leptos::task::spawn_local;

use super::{Saved, State};
use crate::archive;
use crate::present::Draft;
use crate::session::{Document, Session, SessionId};

impl State {
    pub(super) fn keep(self, session: &Session, added: &Session) {
        self.saved.set(Saved::Writing);
        let keeper = self.keeper();
        let kept = keeper.keep(session, added);
        spawn_local(async move {
            match kept.await {
                Err(why) => self.saved.set(Saved::NotSafe(why.to_string())),
                // The word is about the latest change.
                Ok(_) if keeper.is_busy() => {}
                Ok(told) => {
                    self.saved.set(Saved::Safe);
                    if let Some(why) = told {
                        self.tell_once(&why.to_string());
                    }
                }
            }
        });
    }

    /// Takes in what another tab has entered and kept.
    pub(super) fn hear(self, text: &str) {
        let Ok(incoming) = archive::read(text) else {
            return;
        };
        let theirs = incoming.session;
        let is_open = |d: &Document| d.session().id == theirs.id;
        if self.document.peek(|d| d.as_ref().is_some_and(is_open)) {
            self.document.update(|document| {
                if let Some(document) = document {
                    document.merge(&theirs);
                }
            });
        } else {
            self.others.update(|others| {
                let empty = || Session::empty(theirs.id.clone());
                let ours = others.entry(theirs.id.clone()).or_insert_with(empty);
                ours.merge(&theirs);
            });
        }
    }

    /// Takes in a session, or what is new of one that is here.
    pub fn take_in(self, theirs: &Session) {
        self.leave();
        let here = self.others.peek(|others| others.get(&theirs.id).cloned());
        let before = here.unwrap_or_else(|| Session::empty(theirs.id.clone()));
        let mut ours = before.clone();
        ours.merge(theirs);
        let added = ours.beyond(&before);
        if !added.is_empty() {
            self.keep(&ours, &added);
        }
        self.others
            .update(|others| others.insert(theirs.id.clone(), ours));
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
            let shown = others
                .values()
                .filter(|s| removed.contains_key(&s.id) == away);
            shown.map(row).collect()
        })
    }

    /// Puts a session away.
    pub fn put_away(self, id: &SessionId) {
        self.removed
            .update(|removed| removed.insert(id.clone(), ()));
        self.keep_removed();
    }

    /// Puts a session back on the bench.
    pub fn put_back(self, id: &SessionId) {
        let removed = self.removed.update(|removed| removed.remove(id));
        if removed.is_some() {
            self.keep_removed();
        }
    }

    fn keep_removed(self) {
        let kept = self.removed.peek(|r| self.keeper().keep_removed(r));
        if let Err(why) = kept {
            self.tell(why.to_string());
        }
    }

    /// Deletes a session for good.
    pub fn delete(self, id: SessionId) {
        self.others.update(|others| others.remove(&id));
        self.put_back(&id);
        let keeper = self.keeper();
        spawn_local(async move {
            if let Err(why) = keeper.delete(&id).await {
                self.tell(why.to_string());
            }
        });
    }

    /// As [`State::tell`], but not while the same is shown.
    fn tell_once(self, sentence: &str) {
        let is_shown = |told: &Vec<String>| told.iter().any(|told| told == sentence);
        if !self.notices.peek(is_shown) {
            self.tell(sentence.to_owned());
        }
    }

    /// Has a screen reader say what the eye sees by itself.
    pub fn say(self, sentence: &str) {
        // The same sentence again is said only where it is another text.
        let again = self.said.peek(|said| said == sentence);
        let end = if again { "\u{a0}" } else { "" };
        self.said.set(format!("{sentence}{end}"));
    }

    /// Shows a sentence until the person puts it away.
    pub fn tell(self, sentence: String) {
        self.notices.update(|told| told.push(sentence));
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
