//! Why a text is not taken in.

use core::fmt;

use super::guard::{BYTES_MAX, DEPTH_MAX};

/// Why a text is not taken in. The display is a sentence that says what is
/// wrong and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ImportError {
    /// Larger than [`BYTES_MAX`].
    TooLarge {
        /// Its size in bytes.
        bytes: usize,
    },
    /// Nested deeper than [`DEPTH_MAX`].
    TooDeep,
    /// Not JSON, or cut off.
    NotJson {
        /// Line of the first fault, from 1.
        line: usize,
        /// Column of the first fault, from 1.
        column: usize,
        /// True if the text ends too early.
        cut_off: bool,
    },
    /// JSON, but not a session.
    NotASession,
    /// Written by a later version.
    TooNew {
        /// The version of the file.
        found: u64,
        /// The newest that can be read.
        supported: u64,
    },
    /// A session with something wrong in it.
    Damaged {
        /// Where.
        place: String,
        /// What, as a sentence.
        why: String,
    },
}

impl ImportError {
    pub(super) fn damaged(place: &str, why: impl fmt::Display) -> Self {
        Self::Damaged {
            place: place.to_owned(),
            why: why.to_string(),
        }
    }
}

impl fmt::Display for ImportError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLarge { bytes } => write!(
                f,
                "The file has {} kB; a session has at most {} kB.",
                bytes / 1024,
                BYTES_MAX / 1024
            ),
            Self::TooDeep => write!(f, "The file is nested deeper than {DEPTH_MAX} levels."),
            Self::NotJson {
                line,
                column,
                cut_off: true,
            } => write!(
                f,
                "The file is cut off: it ends at line {line}, column {column}."
            ),
            Self::NotJson { line, column, .. } => write!(
                f,
                "The file is damaged at line {line}, column {column}: that is not JSON."
            ),
            Self::NotASession => write!(f, "This is not a Fenderbench session."),
            Self::TooNew { found, supported } => write!(
                f,
                "The file has format version {found}; this program reads up to {supported}. \
                 Update it and try again."
            ),
            Self::Damaged { place, why } => write!(f, "In {place}: {why}"),
        }
    }
}

impl core::error::Error for ImportError {}
