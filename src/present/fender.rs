//! The fender screen as a state machine: where the person is on the route,
//! what is being typed, and what was said last.

use super::Draft;
use super::fender_entry::{keypad, placed, reading};
use super::keypad::{Face, Key, Keypad, Pressed};
use super::plausible::is_doubtful;
use super::route::{Purpose, Stop, Why, next_open};
use super::slip_words::slip_words;
use crate::session::{Edit, Field, FieldKey, Indication, Kind, Reading, Refused, Session, Station};
use crate::slip::{review, suspect};

/// What is said where no gauge at hand measures the kind.
const NO_GAUGE: &str = "No gauge for this is at hand: take one into use in Set-up, Gauges.";

/// What is said to a digit while the hour is asked for.
const HOUR_FIRST: &str = "First the hour of the high spot, or Skip to leave it out.";

/// What is said to somebody who would go elsewhere with a number under way.
const TYPED_FIRST: &str = "A number is under way: ENTER it or take it back first, then go.";

/// What is said to a number whose leading digits may be others.
const IN_FULL: &str = "That would be far from what was read before: type it in full.";

/// What is said where the person is sent back to, without what stands there.
const MAY_BE_SLIP: &str = "What stands here may be a slip: read it again.";

/// Where the person is and what they are typing.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Fender {
    at: Option<(Station, Purpose)>,
    keypad: Option<Keypad>,
    said: Option<String>,
    refused: bool,
    /// What the number typed looks like, while the person is asked.
    asked: Option<String>,
    /// Whether it is shown what the place means.
    explained: bool,
    /// Whether something was entered to come here.
    entered: bool,
}

impl Fender {
    /// Goes on where the draft was left, or starts with the first station
    /// where nothing was read.
    #[must_use]
    pub fn start(session: &Session, stops: &[Stop], draft: Option<&Draft>) -> Self {
        let mut fender = Self::default();
        match draft {
            Some(draft) => {
                fender.at = Some((draft.station, draft.purpose));
                fender.set_keypad(session, draft.station, draft.whole, &draft.typed);
            }
            None => fender.go_on(session, stops),
        }
        fender
    }

    /// What is to be kept, so that a reload goes on here.
    #[must_use]
    pub fn draft(&self) -> Option<Draft> {
        let (station, purpose) = self.at?;
        let keypad = self.keypad.as_ref()?;
        Some(Draft {
            station,
            purpose,
            whole: keypad.is_whole(),
            typed: keypad.typed().to_owned(),
        })
    }

    /// The station.
    #[must_use]
    pub fn station(&self) -> Option<Station> {
        self.at.map(|(station, _)| station)
    }

    /// What a number typed here is for.
    #[must_use]
    pub fn purpose(&self) -> Purpose {
        self.at.map_or(Purpose::Add, |(_, purpose)| purpose)
    }

    /// The number under way.
    #[must_use]
    pub fn face(&self) -> Option<Face> {
        self.keypad.as_ref().map(Keypad::face)
    }

    /// What was said last.
    #[must_use]
    pub fn said(&self) -> Option<&str> {
        self.said.as_deref()
    }

    /// True while the hour of a high spot is asked for, and no number.
    #[must_use]
    pub fn asks_hour(&self) -> bool {
        self.purpose() == Purpose::Hour
    }

    /// The edit that notes the hour of the high spot, 1 to 12; `None` where it
    /// is not asked for.
    #[must_use]
    pub fn hour(&self, hour: u8) -> Option<Edit> {
        let main = self.station().filter(|_| self.asks_hour())?.position;
        Some(Edit::Set(Field::HighSpot(main, Some(hour))))
    }

    /// What the number typed looks like, while the person is asked whether it
    /// is a slip.
    #[must_use]
    pub fn asked(&self) -> Option<&str> {
        self.asked.as_deref()
    }

    /// Reads again: what was typed is gone, and nothing is asked. In full,
    /// where a corrected number is to be typed or it was typed in full before.
    pub fn read_again(&mut self, session: &Session, whole: bool) {
        if let Some(station) = self.station() {
            let whole = whole || self.keypad.as_ref().is_some_and(Keypad::is_whole);
            self.asked = None;
            self.set_keypad(session, station, whole, "");
        }
    }

    /// Takes a key; false if it was refused, which is then said. Whoever goes
    /// on typing while a slip is asked about reads again.
    pub fn press(&mut self, session: &Session, key: Key) -> bool {
        if self.asks_hour() {
            self.refuse(HOUR_FIRST.to_owned());
            return false;
        }
        if self.asked.is_some() {
            self.read_again(session, false);
        }
        let Some(keypad) = &mut self.keypad else {
            return false;
        };
        match keypad.press(key) {
            Pressed::Taken => {
                self.said = None;
                self.explained = false;
                true
            }
            Pressed::Refused(why) => {
                self.refuse(why);
                false
            }
        }
    }

    /// Whether it is shown what the place means.
    #[must_use]
    pub const fn is_explained(&self) -> bool {
        self.explained
    }

    /// Shows what the place means, or hides it.
    pub const fn explain(&mut self) {
        self.explained = !self.explained;
    }

    /// Whether something was entered to come here.
    #[must_use]
    pub const fn has_entered(&self) -> bool {
        self.entered
    }

    /// True if what was said last is a refusal.
    #[must_use]
    pub const fn is_refused(&self) -> bool {
        self.refused
    }

    /// Says why something was refused.
    pub fn refuse(&mut self, why: String) {
        self.said = Some(why);
        self.refused = true;
        self.explained = false;
    }

    /// The edit that enters the number typed, read at this time; `None` if it
    /// is refused, which is then said, or looks like a slip, which is then
    /// asked about once.
    #[must_use]
    pub fn enter(&mut self, session: &Session, taken: &str) -> Option<Edit> {
        self.entered(session, taken, false)
    }

    /// The edit that enters the number typed all the same: the person stands
    /// by it, which is recorded.
    #[must_use]
    pub fn keep(&mut self, session: &Session, taken: &str) -> Option<Edit> {
        self.entered(session, taken, true)
    }

    fn entered(&mut self, session: &Session, taken: &str, kept: bool) -> Option<Edit> {
        if self.asks_hour() {
            self.refuse(HOUR_FIRST.to_owned());
            return None;
        }
        let (station, purpose) = self.at?;
        let keypad = self.keypad.as_ref()?;
        let entered = match keypad.enter() {
            Ok(entered) => entered,
            Err(why) => {
                self.refuse(why);
                return None;
            }
        };
        if let (Indication::Size(size), false) = (&entered, keypad.is_whole())
            && is_doubtful(session, station, size.size())
        {
            self.set_keypad(session, station, true, "");
            self.refuse(IN_FULL.to_owned());
            return None;
        }
        let mut reading = reading(session, station, &entered, taken)?;
        if kept {
            reading.kept = self.asked.take().is_some();
        } else {
            let slip = suspect(session, &reading, purpose == Purpose::Replace);
            self.asked = slip.as_ref().map(slip_words);
            if self.asked.is_some() {
                self.said = None;
                self.explained = false;
                return None;
            }
        }
        Some(placed(session, purpose, reading))
    }

    /// Goes on after an edit: from a run-out just read to the hour of its high
    /// spot; from one that is stood by to one that says otherwise; else on.
    pub fn after(&mut self, session: &Session, stops: &[Stop]) {
        let latest = session.standing().next_back().map(|(_, reading)| reading);
        let swings = |reading: &Reading| {
            let size = session.size_of(reading);
            reading.station.kind == Kind::RunOut && size.is_some_and(|size| 0 < size.quanta())
        };
        match latest.filter(|reading| Some(reading.station) == self.station()) {
            Some(reading) if !self.asks_hour() && swings(reading) => {
                self.go(session, reading.station, Purpose::Hour);
            }
            Some(reading) if reading.kept && self.go_back(session, Some(reading.station.kind)) => {}
            _ => self.go_on(session, stops),
        }
        self.entered = true;
    }

    /// Goes to where undoing something or doing it again made a difference:
    /// to a reading, or to the question for the hour of a high spot.
    pub fn back_to(&mut self, session: &Session, changed: &Session) {
        let hour_of = |key: &FieldKey| match key {
            FieldKey::HighSpot(main) => Some(*main),
            _ => None,
        };
        let reading = changed.readings.last().map(|(_, reading)| reading.station);
        if let Some(station) = reading {
            return self.arrive(session, station);
        }
        let main = changed.fields.keys().find_map(hour_of);
        let swing = session.standing().map(|(_, reading)| reading.station);
        let of_main = |s: &Station| s.kind == Kind::RunOut && Some(s.position) == main;
        if let Some(station) = swing.rev().find(of_main) {
            self.arrive(session, station);
            if session.high_spot(station.position).is_none() {
                self.go(session, station, Purpose::Hour);
            }
        }
    }

    /// Goes to where something stands that looks like a slip, to read it
    /// again; false without any.
    fn go_back(&mut self, session: &Session, to: Option<Kind>) -> bool {
        let slips = review(session).into_iter();
        let mut stations = slips.filter_map(|(id, _)| Some(session.readings.get(&id)?.station));
        let station = stations.find(|station| to.is_none_or(|kind| kind == station.kind));
        if let Some(station) = station {
            self.go(session, station, Purpose::Replace);
            self.said = Some(MAY_BE_SLIP.to_owned());
            self.refused = false;
        }
        station.is_some()
    }

    /// Goes to the next station where nothing was read, or says that there
    /// is none. What looks like a slip is read again before anything is to be
    /// settled by it.
    pub fn go_on(&mut self, session: &Session, stops: &[Stop]) {
        let here = self.station();
        let asks = |stop: &Stop| !stop.is_read() && !matches!(stop.why, Why::Settle(..));
        if !stops.iter().any(asks) && self.go_back(session, None) {
            return;
        }
        match next_open(stops, here) {
            Some(station) => self.go(session, station, Purpose::Add),
            None => {
                if let Some(station) = here.or(stops.last().map(|stop| stop.station)) {
                    self.go(session, station, Purpose::Replace);
                }
                self.said = Some("Everything on the route is read.".to_owned());
                self.refused = false;
            }
        }
    }

    /// Goes to a station: to correct it if something stands there.
    pub fn arrive(&mut self, session: &Session, station: Station) {
        let read = session.standing().any(|(_, r)| r.station == station);
        let purpose = if read { Purpose::Replace } else { Purpose::Add };
        self.go(session, station, purpose);
    }

    /// Goes to a station somebody points at: to correct it if all is read
    /// there. What is typed would be lost, so it is said and nobody goes.
    pub fn jump(&mut self, session: &Session, stops: &[Stop], station: Station) {
        if self.station() == Some(station) {
            return;
        }
        if self.asks_hour() {
            return self.refuse(HOUR_FIRST.to_owned());
        }
        if self.keypad.as_ref().is_some_and(|k| !k.typed().is_empty()) {
            return self.refuse(TYPED_FIRST.to_owned());
        }
        let asks_more = |stop: &Stop| stop.station == station && !stop.is_read();
        if stops.iter().any(asks_more) {
            self.go(session, station, Purpose::Add);
        } else {
            self.arrive(session, station);
        }
    }

    /// Goes to where the latest reading was taken, for one more.
    pub fn repeat(&mut self, session: &Session) {
        if let Some((_, reading)) = session.standing().next_back() {
            self.go(session, reading.station, Purpose::Add);
        }
    }

    /// Turns between one reading more and one in place of what stands.
    pub fn turn(&mut self) {
        if let Some((_, purpose)) = &mut self.at {
            *purpose = match purpose {
                Purpose::Add => Purpose::Replace,
                Purpose::Replace | Purpose::Hour => Purpose::Add,
            };
        }
    }

    fn go(&mut self, session: &Session, station: Station, purpose: Purpose) {
        self.asked = None;
        self.explained = false;
        self.entered = false;
        self.at = Some((station, purpose));
        self.said = None;
        self.set_keypad(session, station, false, "");
    }

    /// Without a keypad there is nothing to type on, and it is said why.
    fn set_keypad(&mut self, session: &Session, station: Station, whole: bool, typed: &str) {
        self.keypad = keypad(session, station, whole, typed);
        if self.keypad.is_none() {
            let at_hand = session.gauge_for(station.kind).is_some();
            self.refuse(if at_hand {
                Refused::NotSet.to_string()
            } else {
                NO_GAUGE.to_owned()
            });
        }
    }
}
