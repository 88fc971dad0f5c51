//! Who entered a fact, and when in the order of facts.

use core::fmt;

/// The number under which facts are entered: drawn at random at every start
/// on a device and never taken from a file, so that no two copies of a session
/// count under the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Replica(u64);

impl Replica {
    /// The replica of this number.
    #[must_use]
    pub const fn new(number: u64) -> Self {
        Self(number)
    }

    /// The number.
    #[must_use]
    pub const fn number(self) -> u64 {
        self.0
    }
}

/// The place of a fact in the order of facts: a counter that is above every
/// counter seen before, then the replica. It is also the id of the fact.
///
/// ```
/// use fenderbench::session::{Replica, Stamp};
/// let stamp = Stamp { counter: 7, replica: Replica::new(0xa1) };
/// assert_eq!(stamp.to_string(), "7@a1");
/// assert_eq!(Stamp::parse("7@a1"), Some(stamp));
/// assert_eq!(Stamp::parse("07@a1"), None);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Stamp {
    /// Above every counter the replica had seen.
    pub counter: u64,
    /// The device.
    pub replica: Replica,
}

/// The largest counter: room for every later one in a JSON number.
const COUNTER_MAX: u64 = 1 << 52;

impl Stamp {
    /// Reads the text of a stamp; `None` unless it is written exactly as
    /// [`fmt::Display`] writes it, so that one stamp has one text.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let (counter, replica) = text.split_once('@')?;
        let stamp = Self {
            counter: counter.parse().ok().filter(|c| *c <= COUNTER_MAX)?,
            replica: Replica(u64::from_str_radix(replica, 16).ok()?),
        };
        (stamp.to_string() == text).then_some(stamp)
    }
}

impl fmt::Display for Stamp {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}@{:x}", self.counter, self.replica.0)
    }
}
