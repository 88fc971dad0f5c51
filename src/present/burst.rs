//! A gauge that types: many have a plug or a radio that makes them a
//! keyboard. It types faster than any person, and its number counts as it
//! stands, whatever the keypad would have made of its first keys.

use super::Fender;
use super::keypad::Key;
use crate::quantity::EnteredDeviation;
use crate::session::Session;

/// The longest pause between two keys of a gauge, in milliseconds. Our own
/// choice: 120 words of five letters in a minute are a letter in 100 ms.
const PAUSE_MS: u64 = 35;

/// The fewest characters that are a gauge's and no person's double touch.
const LEAST: usize = 4;

/// The most that are looked at: longer than any gauge's number with its unit.
const MOST: usize = 24;

/// Who typed a character, by how soon it came after those before it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Typist {
    /// A person.
    Person,
    /// Too soon for a person; whether it is a gauge the next ones tell.
    Unknown,
    /// A gauge.
    Gauge,
}

/// What came without a pause.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Burst {
    text: String,
    length: usize,
    at_ms: u64,
}

impl Burst {
    /// Takes a character typed at a time; times come from one clock and do
    /// not go back.
    pub fn typed(&mut self, c: char, at_ms: u64) -> Typist {
        if !self.goes_on(at_ms) {
            *self = Self::default();
        }
        self.at_ms = at_ms;
        if self.length < MOST {
            self.text.push(c);
            self.length += 1;
        }
        match self.length {
            1 => Typist::Person,
            length if length < LEAST => Typist::Unknown,
            _ => Typist::Gauge,
        }
    }

    /// ENTER at a time, or another key that ends a number: all that a gauge
    /// has typed before it, if it was one.
    pub fn ended(&mut self, at_ms: u64) -> Option<String> {
        let is_gauge = self.goes_on(at_ms) && LEAST <= self.length;
        let ended = core::mem::take(self);
        is_gauge.then_some(ended.text)
    }

    /// All that came without a pause so far.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    const fn goes_on(&self, at_ms: u64) -> bool {
        at_ms.saturating_sub(self.at_ms) <= PAUSE_MS
    }
}

const NO_NUMBER: &str = "”, which is no number with a point.";
const OTHER_UNIT: &str = "”, but is set up in another unit.";
const BETWEEN: &str = "”, which lies between two graduations.";

/// Puts what a gauge has typed on the keypad as a number in full, of a dial
/// as the graduations it comes to; false if it is no number here. Why not is
/// said once the gauge `has_ended`; until then more may come.
pub fn gauge_typed(fender: &mut Fender, session: &Session, text: &str, has_ended: bool) -> bool {
    // The hour is asked for: it says so, and nothing is typed.
    if fender.asks_hour() {
        return fender.press(session, Key::Point);
    }
    fender.read_again(session, true);
    let is_taken = match keys(fender, session, text) {
        Ok(keys) => keys.bytes().all(|key| {
            let key = match key {
                b'.' => Key::Point,
                b'-' => Key::Sign,
                digit => Key::Digit(digit.wrapping_sub(b'0')),
            };
            fender.press(session, key)
        }),
        Err(why) => {
            if has_ended {
                fender.refuse(["The gauge typed “", text, why].concat());
            }
            false
        }
    };
    if !is_taken {
        fender.read_again(session, true);
    }
    is_taken
}

/// The keys that make the number, a sign last.
fn keys(fender: &Fender, session: &Session, text: &str) -> Result<String, &'static str> {
    let at = fender.station().ok_or(NO_NUMBER)?;
    let (_, gauge, _) = session.gauge_for(at.kind).ok_or(NO_NUMBER)?;
    let is_unit = |c: char| c == ' ' || c.is_ascii_alphabetic();
    let (number, unit) = text.split_at(text.find(is_unit).unwrap_or(text.len()));
    let unit = unit.trim_start_matches(' ');
    if !unit.is_empty() && !unit.eq_ignore_ascii_case(gauge.unit().sign()) {
        return Err(OTHER_UNIT);
    }
    let mut keys = String::new();
    let (mut has_point, mut is_minus) = (false, false);
    for (at, c) in number.bytes().enumerate() {
        match c {
            b'+' | b'-' if at == 0 => is_minus = c == b'-',
            b'.' | b',' if !has_point && !keys.is_empty() => {
                has_point = true;
                keys.push('.');
            }
            b'0'..=b'9' => {
                // Gauges fill up with zeros that stand for nothing.
                if keys == "0" {
                    keys.clear();
                }
                keys.push(char::from(c));
            }
            _ => return Err(NO_NUMBER),
        }
    }
    if !has_point || keys.ends_with('.') {
        return Err(NO_NUMBER);
    }
    if gauge.kind.reads_deviations() {
        let by = EnteredDeviation::parse(&keys, gauge.unit()).map_err(|_| NO_NUMBER)?;
        let (by, step) = (by.deviation().quanta(), gauge.graduation.size().quanta());
        if by.checked_rem(step) != Some(0) {
            return Err(BETWEEN);
        }
        keys = by.checked_div(step).unwrap_or(0).to_string();
    }
    if is_minus {
        keys.push('-');
    }
    Ok(keys)
}
