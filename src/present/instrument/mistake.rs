//! Where reading a micrometer goes wrong.

use super::Micrometer;
use super::scale::LINE;

/// Of a line of the sleeve that is about to show.
const NOT_YET: &str = "A line of the sleeve counts once the thimble has passed 0.";

/// Of a line of the sleeve that has just come out.
const ALREADY: &str = "A line of the sleeve that is out counts, right at the thimble's edge too.";

/// Of the thimble lines beside the reading line.
const PASSED: &str = "Of the thimble the line just passed counts, not the nearest.";

/// Of a scale that was counted backwards.
const UPWARDS: &str = "The numbers of thimble and vernier grow upwards.";

/// Of numbers or lines of the sleeve that were miscounted.
const RECOUNT: &str = "Take the last number that is out, then the lines after it.";

/// Of the wrong line of a vernier.
const STRAIGHT: &str = "The vernier line that counts goes on straight as a thimble line.";

impl Micrometer {
    /// What may go wrong as it stands, each with what would be read then.
    #[must_use]
    pub fn warnings(self) -> Vec<String> {
        let (at, turn, tenth) = (self.at(), self.scale().turn, self.tenth());
        let (thimble, lines) = (self.thimble(), self.lines());
        let at_turn = if 4 * lines <= 5 * thimble {
            (NOT_YET, turn)
        } else if 10 * thimble <= lines && turn <= at {
            (ALREADY, -turn)
        } else {
            ("", 0)
        };
        let at_line = match tenth {
            8 | 9 => (PASSED, LINE),
            1 | 2 if LINE <= at => (PASSED, -LINE),
            _ => ("", 0),
        };
        let backwards = if self.has_vernier() {
            (LINE - 2 * tenth) % LINE
        } else {
            -self.down()
        };
        let mut told = Vec::new();
        for (why, off) in [at_turn, at_line, (UPWARDS, backwards)] {
            if off != 0 {
                let wrong = self.count_text(self.reading() + off);
                told.push([why, " Else ", &wrong, " would be read."].concat());
            }
        }
        told
    }

    /// How much less is read where the thimble is counted down from the number
    /// below the reading line.
    const fn down(self) -> i64 {
        2 * (self.thimble() % 5) * LINE
    }

    /// What a wrong reading, in counts, looks like: a sentence with what sets
    /// it right.
    #[must_use]
    pub fn mistake(self, read: i64) -> String {
        let truth = self.reading();
        let off = read - truth;
        let by = off.abs();
        let scale = self.scale();
        let of_turn = if off < 0 { ALREADY } else { NOT_YET };
        let of_sleeve = scale.miscounts.iter().find(|(step, _)| *step == by);
        let (what, why) = if by == scale.turn {
            ("One turn of the thimble", of_turn)
        } else if by == LINE {
            ("One line of the thimble", PASSED)
        } else if let Some((_, what)) = of_sleeve {
            (*what, if by == scale.span { "" } else { RECOUNT })
        } else {
            return self.odd_mistake(read, off).to_owned();
        };
        let word = if off < 0 {
            " too little, "
        } else {
            " too much, "
        };
        let by = self.short_text(by);
        let told = [what, word, &by, " ", self.unit().sign(), ". ", why].concat();
        told.trim_end().to_owned()
    }

    /// What is not a step of a scale too much or too little.
    fn odd_mistake(self, read: i64, off: i64) -> &'static str {
        let down = self.down();
        if read == self.at() {
            "The start of the range was left out."
        } else if down != 0 && (off == -down || off == 10 * LINE - down)
            || self.has_vernier() && off == LINE - 2 * self.tenth()
        {
            UPWARDS
        } else if self.has_vernier() && off.abs() < LINE {
            STRAIGHT
        } else if is_swap(&self.text(), &self.count_text(read)) {
            "Two digits changed places."
        } else {
            "Go through it step by step."
        }
    }
}

/// True if two digits have changed places.
fn is_swap(text: &str, other: &str) -> bool {
    let mut apart = text.bytes().zip(other.bytes()).filter(|(a, b)| a != b);
    let (first, second) = (apart.next(), apart.next());
    let crossed = first.map(|(a, b)| (b, a)) == second;
    text.len() == other.len() && second.is_some() && crossed && apart.next().is_none()
}
