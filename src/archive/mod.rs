//! JSON text ↔ session, and how a session lies in storage.
//!
//! There is one format. A file is a session; what is stored is a session in
//! parts, each written as a file of its own; reading them back is merging.
//! This room has no defaults and knows no browser.

mod error;
mod guard;
mod object;
mod shelf;
mod text;
mod v1;

pub use error::ImportError;
pub use guard::{BYTES_MAX, DEPTH_MAX};
pub use shelf::{
    DRAFT_SLOT, FILED_SLOT, Loaded, READINGS_PER_SEGMENT, ROOT, Shelf, key_of, session_of_key,
};

use crate::session::{Replica, Session};

/// The word every file starts with.
pub const FORMAT: &str = "fenderbench-session";

/// The version this program writes, and the newest it reads.
pub const VERSION: u64 = 1;

/// Counters above this are no session's: half of what a stamp can hold.
const COUNTER_ROOM: u64 = 1 << 51;

/// The program's own version, told in every file.
pub const APP: &str = env!("CARGO_PKG_VERSION");

/// A session as it came out of a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Incoming {
    /// The session.
    pub session: Session,
    /// False if the text was changed after it was written: its check sum is
    /// there and differs.
    pub untouched: bool,
}

/// The text of a session or of a part of one: UTF-8 JSON, a record a line.
#[must_use]
pub fn write(session: &Session, replica: Replica) -> String {
    v1::write::file(session, replica)
}

/// Reads a session or a part of one.
///
/// # Errors
/// [`ImportError`] says what is wrong and where.
#[inline(never)] // Once in the app, not at each of its callers.
pub fn read(text: &str) -> Result<Incoming, ImportError> {
    let text = guard::check(text)?;
    let mut file = object::Object::parse(text, "the file")?;
    if file.text("format").ok().as_deref() != Some(FORMAT) {
        return Err(ImportError::NotASession);
    }
    match file.count("version")? {
        VERSION => v1::read::file(file),
        found => Err(ImportError::TooNew {
            found,
            supported: VERSION,
        }),
    }
}

/// Reads a whole session that somebody hands on, and checks what a part need
/// not hold: that the limits can stand and that every reading names a gauge.
///
/// # Errors
/// [`ImportError`] says what is wrong and where.
pub fn import(text: &str) -> Result<Incoming, ImportError> {
    let incoming = read(text)?;
    let session = &incoming.session;
    let next = session.next_stamp(Replica::new(0)).counter;
    if COUNTER_ROOM < next {
        let why = format!("the counter {next} leaves no room for later facts.");
        return Err(ImportError::damaged("the file", why));
    }
    session
        .check_limits()
        .map_err(|why| ImportError::damaged("limits", why))?;
    let known = |section: &str, id: String| session.extras.contains_key(&(section.to_owned(), id));
    for (id, reading) in &session.readings {
        let (gauge, setting) = (reading.gauge, reading.setting);
        if !session.gauges.contains_key(&gauge) && !known("gauges", gauge.to_string()) {
            let why = format!("the gauge {gauge} is not in the file.");
            return Err(ImportError::damaged(&format!("readings, {id}"), why));
        }
        if !session.settings.contains_key(&setting) && !known("settings", setting.to_string()) {
            let why = format!("the setting {setting} is not in the file.");
            return Err(ImportError::damaged(&format!("readings, {id}"), why));
        }
    }
    Ok(incoming)
}
