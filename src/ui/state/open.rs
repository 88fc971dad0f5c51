//! Which session is open.

use super::State;
use crate::device::random;
use crate::present::NewSession;
use crate::session::{Document, Session, SessionId};

impl State {
    /// Opens a session; false if it is not on this device.
    pub fn enter(self, id: &SessionId) -> bool {
        if self.document.peek(|d| is_open(d.as_ref(), id)) {
            return true;
        }
        self.leave();
        let Some(mut session) = self.others.update(|others| others.remove(id)) else {
            return false;
        };
        let keeper = self.keeper();
        let replica = keeper.replica();
        // Only a session whose stored parts were damaged lacks them.
        let before = session.clone();
        session.add_missing_gauges(replica);
        let added = session.beyond(&before);
        if !added.is_empty() {
            self.keep(&session, &added);
        }
        self.document
            .set(Some(Document::open(session, replica, keeper.own())));
        true
    }

    /// Closes the open session.
    pub fn leave(self) {
        if let Some(document) = self.document.update(Option::take) {
            let session = document.session().clone();
            self.others
                .update(|others| others.insert(session.id.clone(), session));
        }
    }

    /// Makes a session and opens it.
    ///
    /// # Errors
    /// The sentence why its set-up cannot be.
    pub fn create(self, new: &NewSession) -> Result<SessionId, String> {
        new.check()?;
        let fields = new.fields()?;
        self.leave();
        let keeper = self.keeper();
        let replica = keeper.replica();
        let id = SessionId::from_number(random::number());
        let session = Session::create(id.clone(), fields, replica);
        self.keep(&session, &session);
        self.document
            .set(Some(Document::open(session, replica, keeper.own())));
        Ok(id)
    }
}

fn is_open(document: Option<&Document>, id: &SessionId) -> bool {
    document.is_some_and(|document| document.session().id == *id)
}
