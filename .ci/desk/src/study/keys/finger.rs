//! A finger on the keypad: which keys are pressed where others were meant.
//!
//! One key in a hundred slips, in one of four ways, each as often as the
//! others: it is left out, comes twice, is a key beside, or changes places
//! with the next one. The four are those by which Thimbleby and Cairns 2010
//! (doi 10.1098/rsif.2010.0112) and Cauchi et al. 2012 compare ways to enter
//! numbers, from memory; one in a hundred is what this screen is held to;
//! that they are equally often is our own choice, as no source says how often
//! each is on a touch screen.
//!
//! All of them reach the machine. The screen takes no key again within 80 ms
//! and no second contact within 50 ms, so that most doubles of a wet finger
//! never get there; here each is as slow as a hand that presses twice, which
//! is the harder case. What is not a key of the keypad (Read again, Keep it)
//! does not slip.

use fenderbench::present::Key;

use crate::study::chance::Chance;

/// A key of the keypad, or ENTER.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Press {
    /// 0 to 9.
    Digit(u8),
    /// The key to the left of 0, whatever it means just now.
    Left,
    /// Takes back.
    Back,
    /// Below all of them, as wide as they are.
    Enter,
}

/// Of a hundred keys, so many slip.
pub const SLIPS: f64 = 1.0;

/// What happens to a key that slips.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Slip {
    LeftOut,
    Twice,
    Beside,
    Swapped,
}

const KINDS: [Slip; 4] = [Slip::LeftOut, Slip::Twice, Slip::Beside, Slip::Swapped];

/// The keys as they lie, ENTER below.
const ROWS: [[Press; 3]; 4] = [
    [Press::Digit(7), Press::Digit(8), Press::Digit(9)],
    [Press::Digit(4), Press::Digit(5), Press::Digit(6)],
    [Press::Digit(1), Press::Digit(2), Press::Digit(3)],
    [Press::Left, Press::Digit(0), Press::Back],
];

/// What is pressed where these keys were meant. Each inner list is one
/// movement, of one key or of two that have changed places.
pub fn pressed(chance: &mut Chance, meant: &[Press]) -> Vec<Vec<Press>> {
    let mut movements = Vec::new();
    let mut left = meant.iter().copied().peekable();
    while let Some(key) = left.next() {
        let slips = chance.in_a_hundred(SLIPS);
        let kind = if slips { chance.one_of(&KINDS) } else { None };
        movements.push(match kind {
            None => vec![key],
            Some(Slip::LeftOut) => vec![],
            Some(Slip::Twice) => vec![key, key],
            Some(Slip::Beside) => chance.one_of(&beside(key)).into_iter().collect(),
            // After the last one there is nothing to change places with.
            Some(Slip::Swapped) => left.next().into_iter().chain([key]).collect(),
        });
    }
    movements
}

/// The keys that share an edge with this one.
fn beside(key: Press) -> Vec<Press> {
    if key == Press::Enter {
        return ROWS.into_iter().last().into_iter().flatten().collect();
    }
    let at = |row: usize, column: usize| ROWS.get(row)?.get(column).copied();
    let mut found = Vec::new();
    for (row, keys) in ROWS.iter().enumerate() {
        let Some(column) = keys.iter().position(|other| *other == key) else {
            continue;
        };
        let across = [column.checked_sub(1), Some(column + 1)];
        found.extend(across.into_iter().flatten().filter_map(|c| at(row, c)));
        let along = [row.checked_sub(1), Some(row + 1)];
        found.extend(along.into_iter().flatten().filter_map(|r| at(r, column)));
        if row + 1 == ROWS.len() {
            found.push(Press::Enter);
        }
    }
    found
}

/// The keys of a number as it is written; a sign is the key to the left, as
/// the point is.
pub fn keys(text: &str) -> Vec<Press> {
    let key = |c: char| match c.to_digit(10).and_then(|d| u8::try_from(d).ok()) {
        Some(digit) => Press::Digit(digit),
        None => Press::Left,
    };
    text.chars().map(key).collect()
}

/// What a key means to the keypad while the key to the left means this;
/// `None` of ENTER.
pub const fn means(press: Press, left: Key) -> Option<Key> {
    match press {
        Press::Digit(digit) => Some(Key::Digit(digit)),
        Press::Left => Some(left),
        Press::Back => Some(Key::Back),
        Press::Enter => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn beside_a_key_are_those_that_share_an_edge() {
        let digits = |text: &str| keys(text);
        assert_eq!(beside(Press::Digit(5)), digits("4682"));
        assert_eq!(beside(Press::Digit(7)), digits("84"));
        let mut zero = vec![Press::Left, Press::Back, Press::Digit(2), Press::Enter];
        assert_eq!(beside(Press::Digit(0)), zero);
        zero = vec![Press::Left, Press::Digit(0), Press::Back];
        assert_eq!(beside(Press::Enter), zero);
    }

    #[test]
    fn as_many_keys_slip_as_are_to() {
        let mut chance = Chance::new(1);
        let meant = keys("672");
        let mut other = 0;
        for _ in 0..100_000 {
            let movements = pressed(&mut chance, &meant);
            other += usize::from(movements.concat() != meant);
        }
        // In 1 - 0.99² × 0.9925 of the numbers, as the last key has nothing to change places
        // with; within three standard deviations.
        assert!((2_571..=2_877).contains(&other), "{other}");
    }
}
