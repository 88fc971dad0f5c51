//! A session with its history: the only writer.

use super::{Edit, Refused, Replica, Session, Stamp};

/// A session being worked on by one device, with undo and redo.
///
/// Each change returns the part of the session it added, to be stored.
#[derive(Clone, Debug)]
pub struct Document {
    session: Session,
    replica: Replica,
    undo: Vec<Edit>,
    redo: Vec<Edit>,
}

impl Document {
    /// Opens a session. Standing readings of the device's own replicas can
    /// be undone, last first, however long ago they were entered.
    #[must_use]
    pub fn open(session: Session, replica: Replica, own: &[Replica]) -> Self {
        let undo = session
            .standing()
            .filter(|(id, _)| own.contains(&id.replica))
            .map(|(id, _)| Edit::Strike(id))
            .collect();
        Self {
            session,
            replica,
            undo,
            redo: Vec::new(),
        }
    }

    /// The session as it stands.
    #[must_use]
    pub const fn session(&self) -> &Session {
        &self.session
    }

    /// Applies an edit and returns what it added.
    ///
    /// # Errors
    /// [`Refused`] says why; then nothing has changed.
    pub fn dispatch(&mut self, edit: &Edit) -> Result<Session, Refused> {
        let (inverse, added) = self.change(edit)?;
        self.undo.push(inverse);
        self.redo.clear();
        Ok(added)
    }

    /// Takes back the last edit; `None` if there is nothing to take back.
    ///
    /// # Errors
    /// [`Refused`] if facts merged since then stand against it.
    pub fn undo(&mut self) -> Option<Result<Session, Refused>> {
        let edit = self.undo.pop()?;
        Some(self.change(&edit).map(|(inverse, added)| {
            self.redo.push(inverse);
            added
        }))
    }

    /// Does again what was taken back last; `None` if there is nothing.
    ///
    /// # Errors
    /// [`Refused`] if facts merged since then stand against it.
    pub fn redo(&mut self) -> Option<Result<Session, Refused>> {
        let edit = self.redo.pop()?;
        Some(self.change(&edit).map(|(inverse, added)| {
            self.undo.push(inverse);
            added
        }))
    }

    /// True if there is something to take back.
    #[must_use]
    pub const fn can_undo(&self) -> bool {
        !self.undo.is_empty()
    }

    /// True if there is something to do again.
    #[must_use]
    pub const fn can_redo(&self) -> bool {
        !self.redo.is_empty()
    }

    /// Takes in facts from elsewhere; they are not part of the history.
    ///
    /// What others struck or put back meanwhile is no longer to be turned
    /// over here: an undo would do the opposite of what it says.
    pub fn merge(&mut self, facts: &Session) {
        let before = self.session.readings.clone();
        self.session.merge(facts);
        let now = &self.session.readings;
        let turned = |id: &Stamp| before.get(id).is_some_and(|r| now.get(id) != Some(r));
        self.undo.retain(|edit| !turns(edit, &turned));
        self.redo.retain(|edit| !turns(edit, &turned));
    }

    fn change(&mut self, edit: &Edit) -> Result<(Edit, Session), Refused> {
        let before = self.session.clone();
        let inverse = self.session.apply(edit, self.replica)?;
        Ok((inverse, self.session.beyond(&before)))
    }
}

/// True if an edit strikes or puts back one of these readings.
fn turns(edit: &Edit, one_of: &dyn Fn(&Stamp) -> bool) -> bool {
    match edit {
        Edit::Strike(id) => one_of(id),
        Edit::Batch(edits) => edits.iter().any(|edit| turns(edit, one_of)),
        Edit::Add(_)
        | Edit::Set(_)
        | Edit::AddGauge(_)
        | Edit::Gauge(..)
        | Edit::AddSetting(_)
        | Edit::Setting(..) => false,
    }
}
