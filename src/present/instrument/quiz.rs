//! Ten readings to be taken off the drawing.

use super::Micrometer;
use super::scale::LINE;
use crate::present::keypad::{Face, Key, Keypad, Pressed, Reads};
use crate::quantity::Entered;
use crate::session::Kind;

/// How many readings are asked for.
pub const QUESTIONS: usize = 10;

/// The quiz as a state machine: keys in, what is right or wrong out. Nothing
/// of it is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Quiz {
    asked: Vec<Micrometer>,
    /// What was read, in counts.
    read: Vec<i64>,
    keypad: Keypad,
    /// True while the answer to the last reading is told.
    telling: bool,
    refused: String,
}

impl Quiz {
    /// A quiz with a micrometer, by chance.
    #[must_use]
    pub fn new(micrometer: Micrometer, seed: u64) -> Self {
        Self {
            asked: questions(micrometer, seed),
            read: Vec::new(),
            keypad: empty(micrometer),
            telling: false,
            refused: String::new(),
        }
    }

    /// What is to be read; `None` at the end.
    #[must_use]
    pub fn micrometer(&self) -> Option<Micrometer> {
        let read = self.read.len();
        let at = if self.telling { read - 1 } else { read };
        self.asked.get(at).copied()
    }

    /// Takes a key; false if it was refused.
    pub fn press(&mut self, key: Key) -> bool {
        self.refused = match self.keypad.press(key) {
            Pressed::Taken => String::new(),
            Pressed::Refused(why) => why,
        };
        self.refused.is_empty()
    }

    /// Enters what is typed, and from what is told to it goes on; false if it
    /// is no reading yet.
    pub fn enter(&mut self) -> bool {
        let Some(micrometer) = self.micrometer() else {
            return false;
        };
        if self.telling {
            self.telling = false;
            return true;
        }
        match Entered::parse(self.keypad.typed(), micrometer.unit()) {
            Ok(read) if read.decimals() == micrometer.decimals() => {
                self.read.push(micrometer.counts(read.size()));
                self.keypad = empty(micrometer);
                self.telling = true;
            }
            _ => self.refused = "Type all decimals, zeros too.".to_owned(),
        }
        self.telling
    }

    /// How far it has come, or the score.
    #[must_use]
    pub fn title(&self) -> String {
        let (count, word) = match self.micrometer() {
            Some(_) => (
                self.read.len() + usize::from(!self.telling),
                " of 10: what does it read?",
            ),
            None => (QUESTIONS - self.wrong().len(), " of 10 right"),
        };
        [&*count.to_string(), word].concat()
    }

    /// What is typed.
    #[must_use]
    pub fn face(&self) -> Face {
        self.keypad.face()
    }

    /// Why a key or the number was not taken; else empty.
    #[must_use]
    pub fn refused(&self) -> &str {
        &self.refused
    }

    /// What is said to the reading just entered; `None` while one is awaited.
    #[must_use]
    pub fn told(&self) -> Option<String> {
        let read = self.read.last().filter(|_| self.telling)?;
        Some(said(self.micrometer()?, *read))
    }

    /// What was read wrong so far, each with what is said to it.
    #[must_use]
    pub fn wrong(&self) -> Vec<(Micrometer, String)> {
        let mut wrong = Vec::new();
        for (asked, read) in self.asked.iter().zip(&self.read) {
            if asked.reading() != *read {
                wrong.push((*asked, said(*asked, *read)));
            }
        }
        wrong
    }
}

/// What is said to a reading, in counts.
fn said(asked: Micrometer, read: i64) -> String {
    let typed = asked.count_text(read);
    if asked.reading() == read {
        return [&*typed, ": right."].concat();
    }
    [&*typed, ": wrong. ", &asked.mistake(read)].concat()
}

/// An empty keypad on which readings are typed in full.
fn empty(micrometer: Micrometer) -> Keypad {
    let reads = Reads {
        kind: Kind::Piston,
        unit: micrometer.unit(),
        decimals: micrometer.decimals(),
        dial: None,
    };
    Keypad::new(reads, None)
}

/// Ten settings, no two alike. A third of them stands where a line of the
/// sleeve comes out or is about to, another where the vernier is mostly
/// misread.
fn questions(micrometer: Micrometer, seed: u64) -> Vec<Micrometer> {
    let mut state = seed;
    let mut below = move |end: i64| {
        // SplitMix64 (Steele, Lea, Flood: Fast splittable pseudorandom number
        // generators, 2014), from memory.
        state = state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = state;
        mixed = (mixed ^ mixed >> 30).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ mixed >> 27).wrapping_mul(0x94d0_49bb_1331_11eb);
        i64::try_from((mixed ^ mixed >> 31) >> 1).unwrap_or(0) % end
    };
    let (turn, span) = (micrometer.scale().turn, micrometer.scale().span);
    let grain = micrometer.grain();
    let mut asked: Vec<Micrometer> = Vec::new();
    while asked.len() < QUESTIONS {
        let any = below(span / grain) * grain;
        let at = match asked.len() % 3 {
            1 => {
                let line = 1 + below(span / turn - 1);
                line * turn - turn / 5 + below(3 * turn / 10 / grain) * grain
            }
            2 if micrometer.has_vernier() => {
                let tenth = below(3);
                any - any % LINE + if tenth == 0 { 1 } else { 7 + tenth }
            }
            _ => any,
        };
        let one = micrometer.set_at(at);
        if !asked.contains(&one) {
            asked.push(one);
        }
    }
    asked
}
