//! Where the person is on the route and what they have typed, kept at every
//! key so that a reload goes on in mid-number.

use super::Purpose;
use crate::session::Station;

/// The place on the route and the number under way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Draft {
    /// The station.
    pub station: Station,
    /// What the number is for.
    pub purpose: Purpose,
    /// True while the number is typed in full.
    pub whole: bool,
    /// Keys typed.
    pub typed: String,
}

impl Draft {
    /// At a station, with nothing typed yet.
    #[must_use]
    pub const fn to_read(station: Station, purpose: Purpose) -> Self {
        Self {
            station,
            purpose,
            whole: false,
            typed: String::new(),
        }
    }

    /// The draft as text for storage.
    #[must_use]
    pub fn to_text(&self) -> String {
        let whole = if self.whole { "whole" } else { "last" };
        let purpose = self.purpose.key();
        format!("{} {purpose} {whole} {}", self.station, self.typed)
    }

    /// Reads a stored draft; `None` if it is not one.
    #[must_use]
    pub fn from_text(text: &str) -> Option<Self> {
        let mut words = text.splitn(4, ' ');
        Some(Self {
            station: Station::parse(words.next()?)?,
            purpose: Purpose::from_key(words.next()?)?,
            whole: words.next()? == "whole",
            typed: words.next()?.to_owned(),
        })
    }
}
