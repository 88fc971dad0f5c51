//! How far sizes of shells may be mixed: the person's choice.

use crate::assess::Advice;
use crate::remedy::Row;
use crate::session::{Pin, Session};

/// The choices about mixing; nothing without shells to choose from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MixingView {
    /// What is said about halves, and where sources disagree.
    pub told: [&'static str; 3],
    /// The choices.
    pub choices: Vec<MixingChoice>,
}

/// One choice, with all there is to choose from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MixingChoice {
    /// What is chosen.
    pub title: &'static str,
    /// Where it is kept.
    pub pin: Pin,
    /// What there is: in words, its word in files, whether it is chosen.
    pub options: Vec<(String, Option<String>, bool)>,
}

/// Trade press on the conditions; shops and manuals on what is against it.
const TOLD: [&str; 3] = [
    "Two sizes in one housing bring the clearance half a step. It is off unless you choose it, \
     and the same size in both halves is taken wherever that is enough.",
    "Trade press mixes halves of one make, material and series, neighbouring sizes, walls at most \
     0.0005 in (0.013 mm) apart, an upper half in place of an upper one; never used with new, \
     never where the thrust is taken.",
    "Sources disagree. Which half the thicker one belongs in: some say where the load is, upper \
     in rods and lower in mains; other shops always put the odd one below. Several service \
     manuals forbid mixing in one bore: look in yours first.",
];

/// The choices as they stand.
pub(super) fn mixing(session: &Session, advice: &Advice) -> Option<MixingView> {
    let job = &advice.job;
    let can_choose = |row| {
        let row = job.row(row);
        !row.shells.is_empty() && !row.places.is_empty()
    };
    if ![Row::Mains, Row::Rods].into_iter().any(can_choose) {
        return None;
    }
    let choice = |title, pin, options: Vec<(String, Option<String>)>| {
        let now = session.pin(pin);
        let option = |(label, word): (String, Option<String>)| {
            let is_chosen = word == now;
            (label, word, is_chosen)
        };
        MixingChoice {
            title,
            pin,
            options: options.into_iter().map(option).collect(),
        }
    };
    let plain = |label: &str, word: Option<&str>| (label.to_owned(), word.map(str::to_owned));
    let sizes = vec![
        plain("one size all along", Some("set")),
        plain("another size from place to place", None),
        plain("halves of two sizes as well", Some("halves")),
    ];
    let mut choices = vec![choice("How far sizes may differ", Pin::Mixing, sizes)];
    if session.pin(Pin::Mixing).as_deref() == Some("halves") && can_choose(Row::Mains) {
        let mains = (1..=job.mains.places.len()).map(|main| main.to_string());
        let mains = mains.map(|main| (main.clone(), Some(main)));
        let none = plain("not known: none is mixed at any main", None);
        choices.push(choice(
            "The main that takes the thrust",
            Pin::ThrustMain,
            core::iter::once(none).chain(mains).collect(),
        ));
    }
    Some(MixingView {
        told: TOLD,
        choices,
    })
}
