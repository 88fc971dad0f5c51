//! Where sessions are kept: localStorage and the journal together.
//!
//! A change is written to localStorage at once and to the journal, and
//! counts as saved when the journal has committed it: a killed browser was
//! seen to lose committed localStorage writes, never committed journal ones.

use litemap::LiteMap;
use std::cell::{Cell, RefCell};
use std::rc::Rc;

use super::journal::Journal;
use super::others::Others;
use super::{StoreError, local};
use crate::archive::{self, DRAFT_SLOT, ROOT, Shelf, key_of, session_of_key};
use crate::device::random;
use crate::session::{Replica, Session, SessionId, ordered};

const REPLICAS: &str = "fenderbench/replicas";

/// How many replicas of its own a device remembers, to undo their readings.
const REPLICAS_MAX: usize = 64;

const REMOVED: &str = "fenderbench/removed";
/// Before the names of what is chosen for this phone. `public/boot.js` reads
/// the theme too, before the app starts.
const CHOICES: &str = "fenderbench/";
const DAMAGED: &str = "fenderbench/damaged/";

/// Sessions put away from the bench.
pub type Away = LiteMap<SessionId, ()>;

/// The two stores and what lies in them.
#[derive(Clone)]
pub struct Keeper {
    replica: Replica,
    own: Rc<[Replica]>,
    journal: Option<Journal>,
    others: Option<Rc<Others>>,
    shelves: Rc<RefCell<LiteMap<SessionId, Shelf>>>,
    /// What the journal could not take, to go with the next record.
    owed: Rc<RefCell<LiteMap<SessionId, Session>>>,
    under_way: Rc<Cell<usize>>,
}

/// Everything found at the start.
pub struct Found {
    /// Sessions by id.
    pub sessions: LiteMap<SessionId, Session>,
    /// Sessions put away, to be put back or deleted.
    pub removed: Away,
    /// What the person must know, as sentences.
    pub notices: Vec<String>,
}

/// What lies stored of one session.
#[derive(Default)]
struct Stored {
    slots: Vec<(String, String)>,
    journal: Vec<String>,
}

impl Keeper {
    /// Opens both stores and reads all sessions. Always succeeds: what does
    /// not work is told in the notices, and the app goes on in memory.
    pub async fn open() -> (Self, Found) {
        let mut notices = Vec::new();
        let slots = local::entries(ROOT).unwrap_or_else(|why| {
            notices.push(why.to_string());
            Vec::new()
        });
        let (journal, records) = match open_journal().await {
            Ok((journal, records)) => (Some(journal), records),
            Err(why) => {
                notices.push(why.to_string());
                (None, Vec::new())
            }
        };
        let own = replicas();
        let keeper = Self {
            replica: own.first().copied().unwrap_or(Replica::new(0)),
            own: own.into(),
            journal,
            others: None,
            shelves: Rc::default(),
            owed: Rc::default(),
            under_way: Rc::default(),
        };
        let found = keeper.read(&slots, records, notices);
        (keeper, found)
    }

    /// Listens to what other tabs have entered, and tells them.
    pub fn meet_others(&mut self, hear: impl Fn(String, String) + 'static) {
        self.others = Others::open(hear).map(Rc::new);
    }

    /// True while a change is on its way to the journal.
    #[must_use]
    pub fn is_busy(&self) -> bool {
        0 < self.under_way.get()
    }

    /// The replica that enters facts now.
    #[must_use]
    pub const fn replica(&self) -> Replica {
        self.replica
    }

    /// All replicas of this device.
    #[must_use]
    pub fn own(&self) -> &[Replica] {
        &self.own
    }

    fn read(
        &self,
        slots: &[(String, String)],
        records: Vec<(String, String)>,
        mut notices: Vec<String>,
    ) -> Found {
        let mut by_session = LiteMap::<SessionId, Stored>::new();
        for (key, text) in slots {
            if let Some((id, _)) = session_of_key(key) {
                let here = &mut by_session.entry(id).or_default().slots;
                here.push((key.clone(), text.clone()));
            }
        }
        for (id, text) in records {
            if let Some(id) = SessionId::parse(&id) {
                by_session.entry(id).or_default().journal.push(text);
            }
        }
        let mut sessions = LiteMap::new();
        for (id, Stored { slots, journal }) in by_session {
            let loaded = Shelf::load(&id, &slots, &journal);
            for key in &loaded.damaged {
                set_aside(&slots, key);
                notices.push(format!(
                    "A stored part of “{}” is damaged. It was set aside; everything that could \
                     be read is here.",
                    loaded.session.name()
                ));
            }
            self.shelves.borrow_mut().insert(id.clone(), loaded.shelf);
            if !loaded.session.is_empty() {
                sessions.insert(id, loaded.session);
            }
        }
        Found {
            sessions,
            removed: removed(),
            notices,
        }
    }

    /// Keeps a session of which `added` is new. localStorage is written
    /// before this returns; the future ends when the journal has committed.
    ///
    /// The future gives what the person should know although the change is
    /// safe, if anything: that the first store did not take it.
    ///
    /// # Errors
    /// The future gives the sentence why the change is not safe.
    pub fn keep(
        &self,
        session: &Session,
        added: &Session,
    ) -> impl Future<Output = Result<Option<StoreError>, StoreError>> + use<> {
        let id = session.id.clone();
        let mut shelves = self.shelves.borrow_mut();
        let shelf = shelves
            .entry(id.clone())
            .or_insert_with(|| Shelf::new(id.clone()));
        // A write that fails leaves the shelf as it was, to be tried again.
        let mut next = shelf.clone();
        let writes = next.store(session, self.replica);
        let local = writes
            .iter()
            .try_for_each(|(key, text)| local::put(key, text));
        if local.is_ok() {
            *shelf = next;
        }
        drop(shelves);
        let owed = self.owed.borrow_mut().remove(&id);
        let mut record = owed.unwrap_or_else(|| Session::empty(id.clone()));
        record.merge(added);
        let text = archive::write(&record, self.replica);
        if let Some(others) = &self.others {
            others.tell(id.as_str(), &text);
        }
        // Called now, not when polled: records lie in the order of changes.
        let journal = self.journal.as_ref();
        let appended = journal.map(|journal| journal.append(id.as_str(), &text));
        self.under_way.set(self.under_way.get() + 1);
        let keeper = self.clone();
        async move {
            let appended = match appended {
                Some(appended) => appended.await,
                None => Err(StoreError::NoJournal),
            };
            keeper.under_way.set(keeper.under_way.get() - 1);
            if appended.is_err() {
                let mut owed = keeper.owed.borrow_mut();
                let empty = || Session::empty(id.clone());
                owed.entry(id.clone()).or_insert_with(empty).merge(&record);
            }
            let is_owed = keeper.owed.borrow().contains_key(&id);
            match (appended, local.err()) {
                (Ok(()), told) if !is_owed => Ok(told),
                // What is wrong with the first store is said first: it is the
                // one that a person can do something about.
                (_, Some(why)) | (Err(why), None) => Err(why),
                (Ok(()), None) => Err(StoreError::NoJournal),
            }
        }
    }

    /// Keeps what is being typed in a session.
    pub fn keep_draft(&self, id: &SessionId, text: &str) {
        // A draft that cannot be kept is lost at a reload and nothing else;
        // the state of the store is told where readings are kept.
        let _ = local::put(&key_of(id, DRAFT_SLOT), text);
    }

    /// What was being typed in a session.
    #[must_use]
    pub fn draft(&self, id: &SessionId) -> Option<String> {
        local::get(&key_of(id, DRAFT_SLOT)).ok().flatten()
    }

    /// Puts sessions away, or back: the set given is what is away.
    ///
    /// # Errors
    /// [`StoreError`] if it cannot be kept.
    pub fn keep_removed(&self, removed: &Away) -> Result<(), StoreError> {
        let ids: Vec<_> = removed.keys().map(SessionId::as_str).collect();
        local::put(REMOVED, &ids.join("\n"))
    }

    /// Deletes a session for good from both stores.
    ///
    /// # Errors
    /// [`StoreError`] if part of it could not be deleted.
    pub async fn delete(&self, id: &SessionId) -> Result<(), StoreError> {
        let keys = local::entries(&key_of(id, ""))?;
        for (key, _) in keys {
            local::remove(&key)?;
        }
        self.shelves.borrow_mut().remove(id);
        match &self.journal {
            Some(journal) => journal.forget(id.as_str()).await,
            None => Ok(()),
        }
    }
}

/// Keeps a word chosen for this phone, for the next start.
pub fn keep_choice(name: &str, word: &str) {
    let _ = local::put(&[CHOICES, name].concat(), word);
}

/// The word chosen for this phone, if one was kept.
#[must_use]
pub fn choice(name: &str) -> Option<String> {
    local::get(&[CHOICES, name].concat()).ok().flatten()
}

async fn open_journal() -> Result<(Journal, Vec<(String, String)>), StoreError> {
    let journal = Journal::open().await?;
    let records = journal.read_all().await?;
    Ok((journal, records))
}

/// The replicas of this device, the latest first: one is drawn at every
/// start, since two tabs that count alike under one would give two readings
/// the same id.
fn replicas() -> Vec<Replica> {
    let stored = local::get(REPLICAS).ok().flatten().unwrap_or_default();
    let stored = stored
        .lines()
        .filter_map(|line| u64::from_str_radix(line, 16).ok());
    let mut numbers = vec![random::number()];
    numbers.extend(stored.take(REPLICAS_MAX));
    let lines: Vec<_> = numbers.iter().map(|number| format!("{number:x}")).collect();
    // Where they cannot be kept, nothing is lost but the undo of older readings.
    let _ = local::put(REPLICAS, &lines.join("\n"));
    numbers.into_iter().map(Replica::new).collect()
}

fn removed() -> Away {
    let text = local::get(REMOVED).ok().flatten().unwrap_or_default();
    let ids = text.lines().filter_map(SessionId::parse);
    ordered(ids.map(|id| (id, ())))
}

/// Copies a damaged text to where nothing writes over it.
fn set_aside(slots: &[(String, String)], key: &str) {
    if let Some((_, text)) = slots.iter().find(|(k, _)| k == key) {
        let _ = local::put(&format!("{DAMAGED}{key}"), text);
    }
}
