//! Where the person is on the route, and what their touches do.

use leptos::prelude::*;

use crate::device::{buzz, clock};
use crate::present::{self, Draft, Keypad, Pressed, Purpose, Stop};
use crate::session::Station;
use crate::ui::parts::keypad::Touch;
use crate::ui::state::{Change, State};

/// Where the person is on the route.
#[derive(Clone, Copy)]
pub struct Entry {
    pub state: State,
    pub stops: Memo<Vec<Stop>>,
    pub at: RwSignal<Option<(Station, Purpose)>>,
    pub keypad: RwSignal<Option<Keypad>>,
    pub said: RwSignal<Option<String>>,
}

impl Entry {
    pub fn new(state: State, draft: Option<Draft>) -> Self {
        let entry = Self {
            state,
            stops: state.read(present::route),
            at: RwSignal::new(None),
            keypad: RwSignal::new(None),
            said: RwSignal::new(None),
        };
        match draft {
            Some(draft) => {
                entry.go(draft.station, draft.purpose);
                let keypad = entry.pad(draft.station, draft.whole, &draft.typed);
                entry.keypad.set(keypad);
            }
            None => entry.go_on(None),
        }
        entry
    }

    fn pad(self, station: Station, whole: bool, typed: &str) -> Option<Keypad> {
        let pad = |s: &_, _: &_| present::keypad(s, station, whole, typed);
        self.state.peek(pad).flatten()
    }

    pub fn go(self, station: Station, purpose: Purpose) {
        self.at.set(Some((station, purpose)));
        self.keypad.set(self.pad(station, false, ""));
    }

    /// Goes to the next open station, or says that there is none.
    pub fn go_on(self, from: Option<Station>) {
        let next = self.stops.with_untracked(|stops| {
            let last = stops.last().map(|stop| stop.station);
            (present::next_open(stops, from), last)
        });
        match next {
            (Some(station), _) => self.go(station, Purpose::Add),
            (None, last) => {
                self.said.set(Some("Everything on the route is read.".to_owned()));
                if let Some(station) = from.or(last) {
                    self.go(station, Purpose::Replace);
                }
            }
        }
    }

    pub fn touch(self, touch: Touch) {
        match touch {
            Touch::Enter => self.enter(),
            Touch::Key(key) => {
                let mut pressed = Pressed::Taken;
                self.keypad.update(|keypad| {
                    if let Some(keypad) = keypad {
                        pressed = keypad.press(key);
                    }
                });
                match pressed {
                    Pressed::Taken => {
                        buzz::tick();
                        self.said.set(None);
                    }
                    Pressed::Refused(why) => self.refuse(why),
                }
            }
        }
    }

    fn refuse(self, why: String) {
        buzz::refuse();
        self.said.set(Some(why));
    }

    fn enter(self) {
        let Some((station, purpose)) = self.at.get_untracked() else {
            return;
        };
        let Some(keypad) = self.keypad.get_untracked() else {
            return;
        };
        let entered = match keypad.enter() {
            Ok(entered) => entered,
            Err(why) => return self.refuse(why),
        };
        let taken = clock::now_text();
        let edit = self
            .state
            .peek(|s, _| present::entry(s, station, purpose, &entered, &taken))
            .flatten();
        let Some(edit) = edit else { return };
        match self.state.change(Change::Edit(&edit)) {
            Err(why) => self.refuse(why),
            Ok(_) => {
                buzz::tick();
                self.said.set(None);
                self.go_on(Some(station));
            }
        }
    }

    /// Undoes or redoes, and goes to where that made a difference.
    pub fn step(self, change: Change<'_>) {
        match self.state.change(change) {
            Err(why) => self.refuse(why),
            Ok(changed) => {
                self.said.set(None);
                let readings = changed.map(|c| c.readings).unwrap_or_default();
                match readings.values().next_back() {
                    Some(reading) => self.arrive(reading.station),
                    None => {
                        if let Some((station, purpose)) = self.at.get_untracked() {
                            self.go(station, purpose);
                        }
                    }
                }
            }
        }
    }

    /// Goes to a station: to correct it if something stands there.
    pub fn arrive(self, station: Station) {
        let read = self.stops.with_untracked(|stops| {
            let stop = stops.iter().find(|stop| stop.station == station);
            stop.is_some_and(Stop::is_read)
        });
        self.go(station, if read { Purpose::Replace } else { Purpose::Add });
    }
}
