//! How a session lies in key-value storage: sealed segments of readings,
//! written once, and a small head in two slots written in turn.
//!
//! Everything is a part of the session, so loading is merging whatever can
//! be read, in any order; the journal's records merge the same way.

use super::{read, write};
use crate::session::{Replica, Session, SessionId, ordered};

/// What every key of ours starts with.
pub const ROOT: &str = "fenderbench/1/";

/// The slot of the number being typed.
pub const DRAFT_SLOT: &str = "draft";

/// The slot of what went into a file.
pub const FILED_SLOT: &str = "filed";

/// Readings in a sealed segment: a head stays below about 12 kB, so that
/// writing it costs a phone no noticeable time.
pub const READINGS_PER_SEGMENT: usize = 32;

/// The key of a slot of a session.
#[must_use]
pub fn key_of(id: &SessionId, slot: &str) -> String {
    format!("{ROOT}{}/{slot}", id.as_str())
}

/// The session and slot of a key of ours.
#[must_use]
pub fn session_of_key(key: &str) -> Option<(SessionId, &str)> {
    let (id, slot) = key.strip_prefix(ROOT)?.split_once('/')?;
    Some((SessionId::parse(id)?, slot))
}

/// What of a session lies sealed, and where the next head goes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shelf {
    sealed: Session,
    segments: usize,
    turn: u64,
}

/// A session as it was found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Loaded {
    /// Everything that could be read, merged.
    pub session: Session,
    /// Where to go on writing.
    pub shelf: Shelf,
    /// Keys whose text is damaged. They are kept and not written over.
    pub damaged: Vec<String>,
}

impl Shelf {
    /// The shelf of a session of which nothing is stored.
    #[must_use]
    pub const fn new(id: SessionId) -> Self {
        Self {
            sealed: Session::empty(id),
            segments: 0,
            turn: 0,
        }
    }

    /// Puts together a session from its slots, given as (key, text), and
    /// from its journal's records.
    #[must_use]
    pub fn load(id: &SessionId, slots: &[(String, String)], journal: &[String]) -> Loaded {
        let mut session = Session::empty(id.clone());
        let mut shelf = Self::new(id.clone());
        let mut damaged = Vec::new();
        for (key, text) in slots {
            let Some((_, slot)) = session_of_key(key) else {
                continue;
            };
            let (turn, text, is_segment) = if let Some(number) = slot.strip_prefix("segment-") {
                let number = number.parse().unwrap_or(0);
                shelf.segments = shelf.segments.max(number);
                (0, text.as_str(), true)
            } else if slot.starts_with("head-") {
                let (turn, text) = text.split_once('\n').unwrap_or(("", text));
                (turn.parse().unwrap_or(0), text, false)
            } else {
                continue;
            };
            match part(id, text) {
                Some(part) => {
                    session.merge(&part);
                    shelf.turn = shelf.turn.max(turn);
                    if is_segment {
                        shelf.sealed.merge(&part);
                    }
                }
                None => damaged.push(key.clone()),
            }
        }
        for record in journal {
            if let Some(part) = part(id, record) {
                session.merge(&part);
            }
        }
        Loaded {
            session,
            shelf,
            damaged,
        }
    }

    /// The texts to write, in order, so that the session lies stored; each
    /// with its key. A full head sheds its readings into a sealed segment.
    #[must_use]
    pub fn store(&mut self, session: &Session, replica: Replica) -> Vec<(String, String)> {
        let mut writes = Vec::new();
        let mut rest = session.beyond(&self.sealed);
        while READINGS_PER_SEGMENT <= rest.readings.len() {
            let mut segment = Session::empty(session.id.clone());
            let readings = rest.readings.iter().take(READINGS_PER_SEGMENT);
            segment.readings = ordered(readings.map(|(id, r)| (*id, r.clone())));
            self.segments += 1;
            let slot = format!("segment-{:04}", self.segments);
            writes.push((key_of(&session.id, &slot), write(&segment, replica)));
            self.sealed.merge(&segment);
            rest = session.beyond(&self.sealed);
        }
        self.turn += 1;
        let slot = if self.turn.is_multiple_of(2) {
            "head-b"
        } else {
            "head-a"
        };
        let text = format!("{}\n{}", self.turn, write(&rest, replica));
        writes.push((key_of(&session.id, slot), text));
        writes
    }
}

/// A part of this very session whose check sum holds.
fn part(id: &SessionId, text: &str) -> Option<Session> {
    let incoming = read(text).ok()?;
    (incoming.untouched && incoming.session.id == *id).then_some(incoming.session)
}
