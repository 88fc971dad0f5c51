//! What a newcomer sees of the app, on a sample: what it tells, how a reading
//! is typed, and where everything is kept.

use super::fender_view::{LastRead, RouteView, last_read, view};
use super::findings::findings;
use super::mark::Mark;
use super::route::{Purpose, Stop, route};
use super::what_to_do::what_to_do;
use super::{Draft, Fender, Key};
use crate::assess::{advise, assess};
use crate::session::{Document, Indication, Kind, Replica, Session};

/// So many of the worst parts are shown, and lines of the plan.
const SHOWN: usize = 3;

/// What the app tells of a sample.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct FirstView {
    /// What it is made from.
    pub told: String,
    /// The worst part of each kind, those first that want work.
    pub parts: Vec<FirstPart>,
    /// About what, and what to do.
    pub plan: Vec<[String; 2]>,
}

/// A part with its word.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FirstPart {
    /// The shape of the word.
    pub mark: Mark,
    /// Which part.
    pub title: String,
    /// What its readings say.
    pub words: String,
}

/// The sample as the first screen shows it.
#[must_use]
pub fn first_view(sample: &Session) -> FirstView {
    let assessment = assess(sample);
    let readings = sample.standing().count();
    let parts = findings(sample, &assessment).kinds.into_iter();
    let worst = parts.filter_map(|kind| kind.features.into_iter().next());
    let off = |mark| matches!(mark, Mark::Small | Mark::Large | Mark::Shape);
    let worst = worst.filter(|part| off(part.mark)).take(SHOWN);
    let plan = what_to_do(sample, &advise(sample, &assessment));
    FirstView {
        told: format!(
            "{readings} readings of an invented engine, against the limits of its invented manual, \
             say:"
        ),
        parts: worst
            .map(|part| FirstPart {
                mark: part.mark,
                title: part.title,
                words: part.words,
            })
            .collect(),
        plan: plan
            .lines
            .into_iter()
            .take(SHOWN)
            .map(|line| [line.about.to_owned(), line.what])
            .collect(),
    }
}

/// One reading to be typed for practice, with the keypad of the route and all
/// its checks, on a copy of the sample that nobody keeps.
#[derive(Clone, Debug)]
pub struct Practice {
    copy: Document,
    stops: Vec<Stop>,
    fender: Fender,
    shows: Indication,
}

impl Practice {
    /// The last rod journal of the sample, not read yet; `None` where the
    /// sample has none.
    #[must_use]
    pub fn of(sample: &Session) -> Option<Self> {
        let of_kind = |kind| kind == Kind::RodJournal;
        let (_, last) = sample.standing().rfind(|(_, r)| of_kind(r.station.kind))?;
        let (station, shows) = (last.station, last.entered.clone());
        let mut copy = sample.clone();
        let there = sample.readings.iter();
        for (id, _) in there.filter(|(_, reading)| reading.station == station) {
            copy.readings.remove(id);
        }
        let stops = route(&copy, &assess(&copy));
        let draft = Draft::to_read(station, Purpose::Add);
        Some(Self {
            fender: Fender::start(&copy, &stops, Some(&draft)),
            copy: Document::open(copy, Replica::new(0), &[]),
            stops,
            shows,
        })
    }

    /// What to do, as a sentence.
    #[must_use]
    pub fn task(&self) -> String {
        let digits = match &self.shows {
            Indication::Size(size) => size.text(),
            Indication::Deviation(by) => by.text(),
        };
        let digits: Vec<_> = digits.chars().filter(char::is_ascii_digit).collect();
        let last = digits.iter().rev().take(super::keypad::LAST_DIGITS).rev();
        let last: Vec<_> = last.map(char::to_string).collect();
        format!(
            "The micrometer shows {}. Type its last three digits, {}, then ENTER.",
            self.shows,
            last.join(" ")
        )
    }

    /// What the route's screen shows of it.
    #[must_use]
    pub fn view(&self) -> RouteView {
        view(self.copy.session(), &self.stops, &self.fender)
    }

    /// What was read, once it was.
    #[must_use]
    pub fn read(&self) -> Option<LastRead> {
        let station = self.fender.station()?;
        let read = self.copy.session().standing();
        let is_read = read.map(|(_, r)| r.station).any(|of| of == station);
        last_read(self.copy.session()).filter(|_| is_read)
    }

    /// Takes a key; false if it was refused.
    pub fn press(&mut self, key: Key) -> bool {
        self.fender.press(self.copy.session(), key)
    }

    /// ENTER; false if it was refused or asked about.
    pub fn enter(&mut self) -> bool {
        let edit = self.fender.enter(self.copy.session(), "");
        edit.is_some_and(|edit| self.copy.dispatch(&edit).is_ok())
    }
}

/// What is kept where: a few words, and a sentence.
pub const KEPT: [[&str; 2]; 3] = [
    [
        "On this device",
        "Each reading is kept when you press ENTER. Once “saved” stands beside it, a crash, a \
         dead battery or a restart does not lose it.",
    ],
    [
        "Nowhere else",
        "No account, no signal needed, and nothing is sent. Nobody sees it unless you share it.",
    ],
    [
        "Files are the backup",
        "Clearing the browser’s data, or losing the phone, loses what is on it. Export a file \
         when a session is done.",
    ],
];
