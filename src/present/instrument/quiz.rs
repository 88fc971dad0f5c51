//! Ten readings to be taken off the drawing.

use super::Micrometer;
use super::scale::LINE;
use crate::present::keypad::{Face, Key, Keypad, Pressed, Reads};
use crate::quantity::{Entered, Size};
use crate::session::Kind;

/// How many readings are asked for.
pub const QUESTIONS: usize = 10;

/// The quiz as a state machine: keys in, what is right or wrong out. Nothing
/// of it is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Quiz {
    asked: Vec<Micrometer>,
    /// What was read, as counts.
    read: Vec<i64>,
    keypad: Keypad,
    /// True while the answer to the last reading is told.
    telling: bool,
    refused: String,
}

/// What the quiz shows.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct QuizView {
    /// How far it has come, or the score.
    pub title: String,
    /// What is to be read; `None` at the end.
    pub micrometer: Option<Micrometer>,
    /// What is typed.
    pub face: Face,
    /// Why something was not taken.
    pub refused: String,
    /// Whether the reading was right, once it is entered.
    pub right: Option<bool>,
    /// What was said to it.
    pub told: String,
    /// At the end: what was read wrong, each with what it looks like.
    pub wrong: Vec<(Micrometer, String)>,
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

    /// Another one with the same micrometer.
    #[must_use]
    pub fn again(&self, seed: u64) -> Self {
        let first = self.asked.first().copied().unwrap_or_default();
        Self::new(first, seed)
    }

    /// The place of what is shown.
    const fn at(&self) -> usize {
        let read = self.read.len();
        if self.telling { read - 1 } else { read }
    }

    /// Takes a key; false if it was refused.
    pub fn press(&mut self, key: Key) -> bool {
        let pressed = self.keypad.press(key);
        self.refused = match pressed {
            Pressed::Taken => String::new(),
            Pressed::Refused(why) => why,
        };
        self.refused.is_empty()
    }

    /// Enters what is typed, and from there goes on; false if it is no
    /// reading yet.
    pub fn enter(&mut self) -> bool {
        if self.telling {
            self.telling = false;
            return true;
        }
        let Some(micrometer) = self.asked.get(self.at()) else {
            return false;
        };
        let entered = Entered::parse(self.keypad.typed(), micrometer.unit());
        let all = |entered: &Entered| entered.decimals() == micrometer.decimals();
        let Some(entered) = entered.ok().filter(all) else {
            let decimals = micrometer.decimals();
            self.refused = format!("Type all {decimals} decimals, zeros too.");
            return false;
        };
        self.read.push(micrometer.counts(entered.size()));
        self.keypad = empty(*micrometer);
        self.telling = true;
        true
    }

    /// What is shown.
    #[must_use]
    pub fn view(&self) -> QuizView {
        let answers = self.asked.iter().zip(&self.read);
        let wrong = answers.filter(|(asked, read)| !asked.reads(**read));
        let wrong: Vec<_> = wrong.map(|(asked, read)| (*asked, asked.said_of(*read))).collect();
        let at = self.at();
        let Some(micrometer) = self.asked.get(at).copied() else {
            let right = self.asked.len() - wrong.len();
            return QuizView {
                title: format!("{right} of {QUESTIONS} right"),
                wrong,
                ..QuizView::default()
            };
        };
        let read = self.read.get(at).copied();
        QuizView {
            title: format!("{} of {QUESTIONS}", at + 1),
            micrometer: Some(micrometer),
            face: self.keypad.face(),
            refused: self.refused.clone(),
            right: read.map(|read| micrometer.reads(read)),
            told: read.map_or_else(String::new, |read| micrometer.said_of(read)),
            wrong: Vec::new(),
        }
    }
}

impl Micrometer {
    /// A size as a count, cut to whole ones.
    fn counts(self, size: Size) -> i64 {
        size.quanta() / self.quanta()
    }

    /// True if this count is what it reads.
    fn reads(self, count: i64) -> bool {
        count == self.start() + self.at()
    }

    /// What is said to a reading.
    fn said_of(self, count: i64) -> String {
        let sign = self.unit().sign();
        let read = self.count_text(count);
        if self.reads(count) {
            format!("{read} {sign}: right.")
        } else {
            let mistake = self.mistake(count);
            format!("{read} was typed, it reads {} {sign}. {mistake}", self.text())
        }
    }
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
        let drawn = i64::try_from((mixed ^ mixed >> 31) >> 1).unwrap_or(0);
        drawn % end
    };
    let (turn, span) = (micrometer.turn(), micrometer.span());
    let grain = micrometer.grain();
    let mut asked: Vec<Micrometer> = Vec::new();
    while asked.len() < QUESTIONS {
        let any = below(span / grain) * grain;
        let at = match asked.len() % 3 {
            1 => {
                let line = 1 + below(span / turn - 1);
                line * turn - turn / 5 + any % (3 * turn / 10)
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
