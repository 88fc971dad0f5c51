//! What is said aloud to somebody who does not look: the reading just
//! entered, digit by digit, and where the gauge goes next.

use super::{LastRead, RouteView};

const DIGITS: [&str; 10] = [
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine",
];

/// What is said after ENTER, and of a refusal or a question: these alone,
/// else the reading and the next place.
#[must_use]
pub fn spoken(view: &RouteView, last: Option<&LastRead>) -> String {
    if !view.asked.is_empty() {
        return aloud(&view.asked);
    }
    let is_refused = view.is_refused && !view.said.is_empty();
    let read = match last {
        Some(last) if !is_refused => {
            let at = [&last.feature, ", ", &last.place, ": "].concat();
            [&at, &*last.value, ", ", &last.words, ". "].concat()
        }
        _ => String::new(),
    };
    let next = if !view.said.is_empty() {
        view.said.clone()
    } else if view.asks_hour {
        "At what hour was the most?".to_owned()
    } else {
        ["Next: ", &view.feature, ", ", &view.place, "."].concat()
    };
    aloud(&(read + &next))
}

/// Text as it is to be spoken: numbers with a point digit by digit, their
/// signs and units in full.
#[must_use]
pub fn aloud(text: &str) -> String {
    let mut said = String::new();
    let mut rest = text;
    while let Some(at) = rest.find(|c: char| c.is_ascii_digit()) {
        let (before, from) = rest.split_at(at);
        let end = from.find(|c: char| !c.is_ascii_digit() && c != '.');
        let number = from.split_at(end.unwrap_or(from.len())).0;
        // The last point is that of the sentence.
        let number = number.trim_end_matches('.');
        rest = from.split_at(number.len()).1;
        if !number.bytes().any(|b| b == b'.') {
            said.push_str(before);
            said.push_str(number);
            continue;
        }
        let signs = [("-", "minus "), ("−", "minus "), ("+", "plus "), ("", "")];
        let signed = |(sign, name)| Some((before.strip_suffix(sign)?, name));
        let (before, sign) = signs.into_iter().find_map(signed).unwrap_or((before, ""));
        said.push_str(before);
        said.push_str(sign);
        for (at, c) in number.bytes().enumerate() {
            if 0 < at {
                said.push(' ');
            }
            let digit = DIGITS.get(usize::from(c.wrapping_sub(b'0')));
            said.push_str(digit.unwrap_or(&"point"));
        }
        let unit = rest.trim_start_matches([' ', '\u{a0}']);
        for (sign, name) in [("in", " inch"), ("mm", " millimetres")] {
            let is_letter = |c: char| c.is_ascii_alphabetic();
            match unit.strip_prefix(sign) {
                Some(after) if !after.starts_with(is_letter) => {
                    said.push_str(name);
                    rest = after;
                }
                _ => {}
            }
        }
    }
    said.push_str(rest);
    said
}
