//! Where reading a micrometer goes wrong.

use super::Micrometer;
use super::scale::{LINE, STEP};

/// Said where a line of the sleeve is about to show.
const NOT_YET: &str = "A line of the sleeve counts once the thimble has passed 0.";

/// Said where a line of the sleeve has just come out.
const ALREADY: &str = "A line of the sleeve that is out counts, right at the thimble's edge too.";

/// Said of the thimble lines beside the reading line.
const PASSED: &str = "Of the thimble the line just passed counts, not the nearest one.";

/// Said where a scale was counted backwards.
const UPWARDS: &str = "The numbers of thimble and vernier grow upwards.";

/// Said where numbers or lines of the sleeve were miscounted.
const RECOUNT: &str = "Take the last number of the sleeve that is out, then the lines after it.";

impl Micrometer {
    /// What may go wrong as it stands, each with what would be read then.
    #[must_use]
    pub fn warnings(self) -> Vec<String> {
        let mut told = Vec::new();
        let mut warn = |why: &str, wrong: i64| {
            let wrong = self.count_text(self.start() + wrong);
            told.push(format!("{why} Else {wrong} would be read."));
        };
        let (at, turn, tenth) = (self.at(), self.turn(), self.tenth());
        let thimble = self.thimble();
        if 4 * self.lines() <= 5 * thimble {
            warn(NOT_YET, at + turn);
        } else if 10 * thimble <= self.lines() && turn <= at {
            warn(ALREADY, at - turn);
        }
        if self.has_vernier() {
            match tenth {
                8 | 9 => warn(PASSED, at + LINE),
                1 | 2 if LINE <= at => warn(PASSED, at - LINE),
                _ => {}
            }
            if tenth != 0 && tenth != 5 {
                warn(UPWARDS, at + LINE - 2 * tenth);
            }
        } else if thimble % 5 != 0 {
            warn(UPWARDS, at + self.downwards());
        }
        told
    }

    /// How far off a thimble is read that is counted down from the number
    /// below the reading line.
    const fn downwards(self) -> i64 {
        -2 * (self.thimble() % 5) * LINE
    }

    /// What a wrong reading looks like, as a sentence with what sets it right.
    /// `read` counts from zero, not from the start of the range.
    #[must_use]
    pub fn mistake(self, read: i64) -> String {
        let truth = self.start() + self.at();
        let off = read - truth;
        let by = off.abs();
        let turn = self.turn();
        let line = if off < 0 { ALREADY } else { NOT_YET };
        let number = if self.number() == STEP {
            "One number of the sleeve"
        } else {
            "One millimetre"
        };
        let of_lines = [
            (turn, "One turn of the thimble", line),
            (STEP, number, RECOUNT),
            (self.number(), "One number of the sleeve", RECOUNT),
            (2 * turn, "Two lines of the sleeve", RECOUNT),
            (3 * turn, "Three lines of the sleeve", RECOUNT),
            (self.span(), "One range", ""),
            (LINE, "One line of the thimble", PASSED),
        ];
        let found = of_lines.into_iter().find(|(step, ..)| *step == by);
        if let Some((_, what, why)) = found {
            let word = if off < 0 { "too little" } else { "too much" };
            let by = self.short_text(by);
            return format!("{what} {word}, {by} {}. {why}", self.unit().sign());
        }
        let tenth = self.tenth();
        let down = self.downwards();
        let from_numbers = [down, down + 2 * 5 * LINE];
        let (what, why) = if read == self.at() {
            ("The start of the range was left out.", "")
        } else if self.has_vernier() && off == LINE - 2 * tenth {
            ("The vernier was counted from the wrong end.", UPWARDS)
        } else if down != 0 && from_numbers.contains(&off) {
            ("The thimble was counted down from a number.", UPWARDS)
        } else if self.has_vernier() && read / LINE == truth / LINE {
            (
                "Another line of the vernier.",
                "It is the one that goes on straight as a line of the thimble.",
            )
        } else if is_swap(&self.count_text(truth), &self.count_text(read)) {
            ("Two digits changed places.", "")
        } else {
            ("Go through it step by step.", "")
        };
        format!("{what} {why}")
    }
}

/// True if two digits beside each other have changed places.
fn is_swap(text: &str, other: &str) -> bool {
    let digits = |text: &str| text.bytes().filter(u8::is_ascii_digit).collect::<Vec<_>>();
    let (text, other) = (digits(text), digits(other));
    let apart = text.iter().zip(&other).position(|(a, b)| a != b);
    let Some(at) = apart.filter(|_| text.len() == other.len()) else {
        return false;
    };
    let mut swapped = text;
    if at + 1 < swapped.len() {
        swapped.swap(at, at + 1);
    }
    swapped == other
}
