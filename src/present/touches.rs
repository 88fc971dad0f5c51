//! Which touches of the keypad count: a finger that shakes or slides on oil
//! comes down twice, and the side of a hand comes down with it.

/// Sooner after another contact than this, a contact is the hand's and not a
/// finger's: our own choice, half of what quick typing takes.
const CONTACT_MS: u64 = 50;

/// Sooner after its last contact than this, a key has bounced: our own
/// choice, less than anybody's second tap of a key takes.
const BOUNCE_MS: u64 = 80;

/// The latest contacts.
#[derive(Clone, Copy, Debug)]
pub struct Touches<K> {
    /// The latest, with any key.
    any_ms: Option<u64>,
    /// The key that counted last, and the latest contact with it.
    counted: Option<(K, u64)>,
}

/// Before the first contact.
impl<K> Default for Touches<K> {
    fn default() -> Self {
        Self {
            any_ms: None,
            counted: None,
        }
    }
}

impl<K: Copy + PartialEq> Touches<K> {
    /// True if a contact with this key counts, at this time in milliseconds.
    /// One that does not count is the latest all the same: what goes on
    /// bouncing goes on being one touch.
    pub fn counts(&mut self, key: K, at_ms: u64) -> bool {
        let apart = |before: u64, least_ms| least_ms <= at_ms.saturating_sub(before);
        let same = self.counted.filter(|(last, _)| *last == key);
        let counts = self.any_ms.is_none_or(|any| apart(any, CONTACT_MS))
            && same.is_none_or(|(_, last)| apart(last, BOUNCE_MS));
        self.any_ms = Some(at_ms);
        if counts || same.is_some() {
            self.counted = Some((key, at_ms));
        }
        counts
    }
}
