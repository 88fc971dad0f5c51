//! What the browser keeps: localStorage holds segments and heads, IndexedDB
//! the journal, files the backup.
//!
//! Both stores hold texts that the `archive` room makes. This room moves them
//! and says plainly when it cannot; it knows no screen and no format. Nothing
//! in it panics, also where the browser lacks or denies a store.

pub mod file;
pub mod journal;
pub mod keeper;
pub mod local;
pub mod others;
pub mod persist;
pub mod sample;

mod record;
mod wait;

use std::fmt;

use js_sys::Reflect;
use wasm_bindgen::JsValue;

/// Why something could not be kept or fetched. Shown as it is to the person.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StoreError {
    /// The browser denies storage to this page.
    Refused,
    /// The space the browser gives is used up. What stood there before still stands.
    Full,
    /// It cannot be read; the text says what was found.
    Damaged(String),
    /// A file over the limit. Both numbers are bytes.
    TooLarge {
        /// The size of the file.
        bytes: u64,
        /// The largest size that is read.
        most: u32,
    },
    /// It is kept, but only where a killed browser may lose it: there is no journal.
    NoJournal,
    /// Anything else, as a whole sentence.
    Other(String),
}

impl fmt::Display for StoreError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Refused => f.write_str(
                "This browser refuses to store anything here: readings stay only while this \
                 page is open. Export a file.",
            ),
            Self::Full => f.write_str(
                "The space this browser gives is full. Export a file, then delete sessions that \
                 are finished.",
            ),
            Self::Damaged(what) => write!(f, "This cannot be read: {what}. Try another copy."),
            Self::TooLarge { bytes, most } => write!(
                f,
                "This file has {} kB and at most {} kB are read. Choose a file that was \
                 exported from here.",
                bytes.div_ceil(1024),
                most / 1024
            ),
            Self::NoJournal => f.write_str(
                "This browser gives no journal: the last minute of readings can be lost if it \
                 is killed. Export a file before you put the phone away.",
            ),
            Self::Other(sentence) => f.write_str(sentence),
        }
    }
}

impl std::error::Error for StoreError {}

impl From<JsValue> for StoreError {
    /// What a browser threw, by its name: names are standard, messages are not.
    fn from(thrown: JsValue) -> Self {
        match text_at(&thrown, "name").unwrap_or_default().as_str() {
            "QuotaExceededError" | "NS_ERROR_DOM_QUOTA_REACHED" => Self::Full,
            "SecurityError" | "NotAllowedError" => Self::Refused,
            "InvalidStateError" => Self::Other(
                "The connection to the store is closed: the app runs in a newer version in \
                 another tab, or the browser's data was cleared. Reload this page."
                    .into(),
            ),
            "VersionError" => Self::Other(
                "A newer version of this app has written here. Close every tab of it and open \
                 it again."
                    .into(),
            ),
            name => {
                let message = text_at(&thrown, "message").unwrap_or_default();
                Self::Other(format!(
                    "The browser reports: {name} {message}. Reload this page and try again."
                ))
            }
        }
    }
}

/// The text in a property; nothing if there is none or it is no text.
fn text_at(value: &JsValue, property: &str) -> Option<String> {
    Reflect::get(value, &property.into()).ok()?.as_string()
}

/// The window, which workers and some sandboxes do not have.
fn window() -> Result<web_sys::Window, StoreError> {
    web_sys::window().ok_or(StoreError::Refused)
}
