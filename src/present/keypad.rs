//! The keypad as a state machine: keys in, a number out.
//!
//! A size is typed in full until two numbers agree on its leading digits. After
//! that the last three digits are typed and completed to the value nearest to
//! what is plausible there. Of a dial the graduations beyond its setting are counted.
//! An amount, a play or a depth, is typed in full every time and may be
//! nothing: what others of its kind come to says little of it.
//! Nothing is refused in mid-number but a key that cannot be; the number is
//! judged at ENTER.

use super::plausible::{can_be, can_be_words};
use super::wording;
use crate::quantity::{Entered, EnteredDeviation, Exact, Size, Unit, show};
use crate::session::{Indication, Kind, SetTo};

/// How many digits are typed when the leading ones are completed.
pub const LAST_DIGITS: usize = 3;

/// The most digits of a count of graduations: a dial turns a few times.
const COUNT_DIGITS: usize = 4;

/// A key.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Key {
    /// A digit, 0 to 9.
    Digit(u8),
    /// The decimal point; a comma typed counts as one.
    Point,
    /// Takes back the last key.
    Back,
    /// Between the last digits and the number in full.
    Whole,
    /// Between plus and minus, on a dial.
    Sign,
}

/// In what a gauge reads, and of what.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reads {
    /// The kind of feature it stands on.
    pub kind: Kind,
    /// Its unit.
    pub unit: Unit,
    /// Its decimals.
    pub decimals: u8,
    /// Of a dial, its graduation and what it is set to.
    pub dial: Option<(Entered, SetTo)>,
}

/// What became of a key.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Pressed {
    /// Taken.
    Taken,
    /// Not taken, with a sentence.
    Refused(String),
}

/// A number being typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Keypad {
    reads: Reads,
    near: Option<Size>,
    whole: bool,
    typed: String,
}

/// What the keypad shows: never more than what was typed and what follows
/// from it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Face {
    /// Digits that were completed, before those typed.
    pub lead: String,
    /// What was typed, with the point in its place.
    pub typed: String,
    /// Digits that are still open.
    pub open: usize,
    /// The unit's sign.
    pub unit: &'static str,
    /// True while the number is typed in full.
    pub whole: bool,
    /// True if the leading digits could be completed.
    pub can_complete: bool,
    /// Of a dial, what the count comes to.
    pub dial: Option<String>,
}

impl Keypad {
    /// An empty keypad; `near` is what is plausible here, if anything is.
    #[must_use]
    pub fn new(reads: Reads, near: Option<Size>) -> Self {
        Self {
            reads,
            whole: near.is_none(),
            near,
            typed: String::new(),
        }
    }

    /// The keypad with these keys typed already.
    #[must_use]
    pub fn resumed(reads: Reads, near: Option<Size>, whole: bool, typed: &str) -> Self {
        let mut keypad = Self::new(reads, near);
        keypad.whole = whole || near.is_none();
        for c in typed.chars() {
            let key = match (c, c.to_digit(10).and_then(|d| u8::try_from(d).ok())) {
                (_, Some(digit)) => Key::Digit(digit),
                ('-', None) => Key::Sign,
                _ => Key::Point,
            };
            keypad.press(key);
        }
        keypad
    }

    /// Takes a key, or says why not.
    pub fn press(&mut self, key: Key) -> Pressed {
        match key {
            Key::Digit(digit) => self.digit(digit),
            Key::Point => self.point(),
            Key::Back => {
                self.typed.pop();
                Pressed::Taken
            }
            Key::Sign => self.turn_sign(),
            Key::Whole => {
                if self.near.is_none() {
                    let why = if self.reads.kind.is_amount() {
                        "This is typed in full each time: all digits and the point."
                    } else {
                        "Typed in full until two numbers agree: from then on, three digits do."
                    };
                    return Pressed::Refused(why.to_owned());
                }
                self.whole = !self.whole;
                self.typed.clear();
                Pressed::Taken
            }
        }
    }

    fn turn_sign(&mut self) -> Pressed {
        if self.reads.dial.is_none() {
            return Pressed::Refused("A size has no sign: type its digits.".to_owned());
        }
        if self.typed.starts_with('-') {
            self.typed.remove(0);
        } else {
            self.typed.insert(0, '-');
        }
        Pressed::Taken
    }

    /// Digits typed of a count, without the sign.
    fn counted_digits(&self) -> &str {
        self.typed.trim_start_matches('-')
    }

    fn digit(&mut self, digit: u8) -> Pressed {
        let decimals = self.typed.split_once('.').map(|(_, d)| d.len());
        let refusal = if self.reads.dial.is_some() {
            let full = COUNT_DIGITS <= self.counted_digits().len();
            full.then(|| {
                format!("At most {COUNT_DIGITS} digits of graduations: ENTER, or take one back.")
            })
        } else if !self.whole && LAST_DIGITS <= self.typed.len() {
            Some(format!(
                "{LAST_DIGITS} digits are typed: ENTER, or take one back."
            ))
        } else if decimals == Some(self.reads.decimals.into()) {
            Some(format!(
                "This gauge reads {} decimals: ENTER, or take one back.",
                self.reads.decimals
            ))
        } else if decimals.is_none() && 3 <= self.typed.len() && self.whole {
            Some("Three digits stand before the point at most: now the point.".to_owned())
        } else {
            None
        };
        if let Some(why) = refusal {
            return Pressed::Refused(why);
        }
        self.typed.push(char::from(b'0' + digit.min(9)));
        Pressed::Taken
    }

    fn point(&mut self) -> Pressed {
        if self.reads.dial.is_some() {
            return Pressed::Refused(
                "A dial has no point: count whole graduations from zero.".to_owned(),
            );
        }
        if !self.whole {
            return Pressed::Refused("The point is set for you: type the digits.".to_owned());
        }
        if self.typed.contains('.') {
            return Pressed::Refused("The point is there already: type the decimals.".to_owned());
        }
        if self.typed.is_empty() {
            self.typed.push('0');
        }
        self.typed.push('.');
        Pressed::Taken
    }

    /// The number, if it can be one.
    ///
    /// # Errors
    /// A sentence that says what is missing or wrong.
    pub fn enter(&self) -> Result<Indication, String> {
        if let Some((graduation, set)) = &self.reads.dial {
            let read = Indication::Deviation(self.deviation(graduation)?);
            let size = set.size_at(&read).filter(|size| self.is_plausible(*size));
            return match size {
                Some(_) => Ok(read),
                None => Err(format!(
                    "{read} from {} {} Count again.",
                    set.size,
                    self.is_none()
                )),
            };
        }
        let text = if self.whole {
            self.whole_text()?
        } else {
            self.completed_text()?
        };
        let entered = Entered::parse(&text, self.reads.unit).map_err(|why| why.to_string())?;
        if !self.is_plausible(entered.size()) {
            let is_none = self.is_none();
            return Err(format!("{entered} {is_none} Is the point in its place?"));
        }
        Ok(entered.into())
    }

    fn is_plausible(&self, size: Size) -> bool {
        let (least, greatest) = can_be(self.reads.kind);
        least <= size && size <= greatest
    }

    /// That a value is none of what is measured, and what could be.
    fn is_none(&self) -> String {
        let noun = wording::measured(self.reads.kind).to_ascii_lowercase();
        let can_be = can_be_words(self.reads.kind, self.reads.unit);
        format!("is no {noun}: {can_be} can be.")
    }

    /// The graduations counted, as the length they are.
    fn deviation(&self, graduation: &Entered) -> Result<EnteredDeviation, String> {
        let digits = self.counted_digits();
        let count: i128 = digits
            .parse()
            .map_err(|_| "Type the graduations from zero; 0 where it stands there.".to_owned())?;
        let length = Exact::new(count * i128::from(graduation.size().quanta()), 1);
        let text = show(length, self.reads.unit, self.reads.decimals).text;
        let sign = if digits.len() < self.typed.len() {
            "-"
        } else {
            ""
        };
        EnteredDeviation::parse(&format!("{sign}{text}"), self.reads.unit)
            .map_err(|why| why.to_string())
    }

    fn whole_text(&self) -> Result<String, String> {
        if self.typed.is_empty() {
            return Err("Nothing is typed yet: type the reading first.".to_owned());
        }
        let decimals = self.typed.split_once('.').map_or(0, |(_, d)| d.len());
        let wanted = usize::from(self.reads.decimals);
        if decimals < wanted {
            return Err(format!(
                "This gauge reads {wanted} decimals: type all of them, zeros too."
            ));
        }
        Ok(self.typed.clone())
    }

    fn completed_text(&self) -> Result<String, String> {
        let typed = self.typed.len();
        match self.completion(&self.typed) {
            Some(count) if typed == LAST_DIGITS => Ok(self.counted(count)),
            _ => Err(format!(
                "Type the last {LAST_DIGITS} digits: {typed} so far."
            )),
        }
    }

    /// The count of graduations that ends in these three digits and lies
    /// nearest to what is plausible; of two as near, the smaller.
    fn completion(&self, digits: &str) -> Option<i128> {
        let near = i128::from(self.near?.quanta());
        let scale = 10_i128.pow(self.reads.decimals.into());
        let unit = i128::from(self.reads.unit.quanta());
        let ending: i64 = digits.parse().ok()?;
        let span = 10_i128.pow(u32::try_from(LAST_DIGITS).ok()?);
        // The lowest candidate lies at most half a span below the plausible
        // value, which need not be a whole number of graduations.
        let lowest = -(span / 2 * unit - near * scale).div_euclid(unit);
        let count = lowest + (i128::from(ending) - lowest).rem_euclid(span);
        Some(if 0 < count { count } else { count + span })
    }

    /// A count of graduations as decimal text.
    fn counted(&self, count: i128) -> String {
        let decimals = usize::from(self.reads.decimals);
        let count = i64::try_from(count).unwrap_or(i64::MAX);
        let digits = format!("{count:0width$}", width = decimals + 1);
        let (whole, rest) = digits.split_at(digits.len() - decimals);
        format!("{whole}.{rest}")
    }

    /// What to show.
    #[must_use]
    pub fn face(&self) -> Face {
        let (lead, typed, open) = if self.reads.dial.is_some() {
            self.dial_face()
        } else if self.whole {
            let open = self.typed.split_once('.').map_or(0, |(_, decimals)| {
                usize::from(self.reads.decimals).saturating_sub(decimals.len())
            });
            (String::new(), self.typed.clone(), open)
        } else {
            self.completed_face()
        };
        Face {
            lead,
            typed,
            open,
            unit: match self.reads.dial {
                Some(_) => "graduations",
                None => self.reads.unit.sign(),
            },
            whole: self.whole,
            can_complete: self.near.is_some(),
            dial: self.reads.dial.as_ref().map(|(graduation, set)| {
                let read = self.deviation(graduation).map(Indication::Deviation);
                let size = read.ok().and_then(|read| Some((set.size_at(&read)?, read)));
                size.map_or_else(
                    || format!("from {}", set.size),
                    |(size, read)| {
                        let shown = show(size.into(), self.reads.unit, self.reads.decimals);
                        format!("{read} makes {} {}", shown.text, self.reads.unit.sign())
                    },
                )
            }),
        }
    }

    fn dial_face(&self) -> (String, String, usize) {
        let digits = self.counted_digits();
        let sign = if digits.len() < self.typed.len() {
            "−"
        } else {
            "+"
        };
        (
            sign.to_owned(),
            digits.to_owned(),
            usize::from(digits.is_empty()),
        )
    }

    fn completed_face(&self) -> (String, String, usize) {
        let open = LAST_DIGITS.saturating_sub(self.typed.len());
        // Half-way through, the leading digits are those of the middle of
        // what can still come.
        let filler: String = "500".chars().take(open).collect();
        let Some(count) = self.completion(&format!("{}{filler}", self.typed)) else {
            return (String::new(), self.typed.clone(), open);
        };
        let text = self.counted(count);
        let from_end = |digits: usize| {
            let point = usize::from(usize::from(self.reads.decimals) < digits);
            text.len().saturating_sub(digits + point)
        };
        let start = from_end(LAST_DIGITS);
        let end = from_end(open);
        let part = |from, to| text.get(from..to).unwrap_or_default().to_owned();
        (part(0, start), part(start, end), open)
    }

    /// The keys typed so far, to be kept through a reload.
    #[must_use]
    pub fn typed(&self) -> &str {
        &self.typed
    }

    /// True while the number is typed in full.
    #[must_use]
    pub const fn is_whole(&self) -> bool {
        self.whole
    }
}
