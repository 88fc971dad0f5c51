//! What a person feels and hears of a touch, and what the phone does while
//! somebody measures. `public/hands.js` does it, once it is there.

use super::page;

/// What became of a touch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Felt {
    /// A key was taken.
    Key,
    /// A reading, or another change of the session, was.
    Entry,
    /// It was not taken.
    Refusal,
}

/// Lets the person feel and hear what became of a touch.
pub fn feel(what: Felt) {
    page::set(
        "felt",
        match what {
            Felt::Key => "key",
            Felt::Entry => "entry",
            Felt::Refusal => "refusal",
        },
    );
}

/// Says this aloud, in place of what is still being said.
pub fn say(words: &str) {
    page::set("say", words);
}

/// Somebody measures, or no more: until then the screen stays on.
pub fn measures(now: bool) {
    page::set("measuring", if now { "yes" } else { "no" });
}
