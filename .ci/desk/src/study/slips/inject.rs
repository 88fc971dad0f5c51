//! Slips as hands make them, put on honest readings.

use fenderbench::quantity::{Entered, EnteredDeviation, Size, Unit, show};
use fenderbench::session::{Gauge, GaugeKind, Indication};

/// A slip of the study. Written apart from the shapes of the check, so that
/// a mistake in those shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Injected {
    Turn,
    SleeveLines,
    NumberLine,
    Range,
    Wrap,
    LastDigits,
    InnerDigits,
    Sign,
    OtherUnit,
    OtherKind,
}

impl Injected {
    pub const fn words(self) -> &'static str {
        match self {
            Self::Turn => "thimble turn",
            Self::SleeveLines => "two sleeve lines",
            Self::NumberLine => "number line",
            Self::Range => "range",
            Self::Wrap => "thimble wrap",
            Self::LastDigits => "last two digits swapped",
            Self::InnerDigits => "two digits before swapped",
            Self::Sign => "sign reversed",
            Self::OtherUnit => "wrong unit",
            Self::OtherKind => "wrong kind of feature",
        }
    }
}

/// Every slip that can be made in reading or typing this.
pub fn slips(honest: &Indication, gauge: &Gauge) -> Vec<(Injected, Indication)> {
    match honest {
        Indication::Size(read) if gauge.kind == GaugeKind::DialBoreGauge => digits(read.text())
            .filter_map(|(slip, text)| size(slip, &text, read.unit()))
            .collect(),
        Indication::Size(read) => on_a_thimble(read),
        Indication::Deviation(read) => on_a_dial(read, gauge),
    }
}

fn size(slip: Injected, text: &str, unit: Unit) -> Option<(Injected, Indication)> {
    let entered = Entered::parse(text, unit).ok()?;
    Some((slip, Indication::Size(entered)))
}

fn on_a_thimble(read: &Entered) -> Vec<(Injected, Indication)> {
    let unit = read.unit();
    // A turn, two lines, a number, a range; in quanta.
    let steps: [i64; 4] = match unit {
        Unit::Inch => [6_350_000, 12_700_000, 25_400_000, 254_000_000],
        Unit::Millimetre => [5_000_000, 10_000_000, 50_000_000, 250_000_000],
    };
    let names = [
        Injected::Turn,
        Injected::SleeveLines,
        Injected::NumberLine,
        Injected::Range,
    ];
    let mut found = Vec::new();
    let mut moved = |slip, by: i64| {
        let other = Size::from_quanta(read.size().quanta() + by);
        let text = show(other.into(), unit, read.decimals()).text;
        found.extend(size(slip, &text, unit));
    };
    for (name, step) in names.into_iter().zip(steps) {
        moved(name, step);
        moved(name, -step);
    }
    // A vernier, with the thimble line beside it.
    let (vernier, line) = match unit {
        Unit::Inch => (4, 254_000),
        Unit::Millimetre => (3, 100_000),
    };
    if read.decimals() == vernier {
        match read.text().bytes().last() {
            Some(b'8' | b'9') => moved(Injected::Wrap, line),
            Some(b'0' | b'1') => moved(Injected::Wrap, -line),
            _ => {}
        }
    }
    for (slip, text) in digits(read.text()) {
        found.extend(size(slip, &text, unit));
    }
    let other = match unit {
        Unit::Inch => Unit::Millimetre,
        Unit::Millimetre => Unit::Inch,
    };
    found.extend(size(Injected::OtherUnit, read.text(), other));
    found
}

/// The last two digits swapped, and the two before the last.
fn digits(text: &str) -> impl Iterator<Item = (Injected, String)> {
    let chars: Vec<char> = text.chars().collect();
    let swap = move |slip, from_end: usize| {
        let at = chars.len().checked_sub(from_end)?;
        let (a, b) = (*chars.get(at)?, *chars.get(at + 1)?);
        let swaps = a.is_ascii_digit() && b.is_ascii_digit() && a != b;
        swaps.then(|| {
            let mut swapped = chars.clone();
            swapped.swap(at, at + 1);
            (slip, swapped.into_iter().collect())
        })
    };
    let both = [(Injected::LastDigits, 2), (Injected::InnerDigits, 3)];
    both.into_iter()
        .filter_map(move |(slip, from_end)| swap(slip, from_end))
}

/// On a dial graduations are counted, and it is the count that is typed.
fn on_a_dial(read: &EnteredDeviation, gauge: &Gauge) -> Vec<(Injected, Indication)> {
    let (step, unit) = (gauge.graduation.size().quanta(), gauge.unit());
    let count = read.deviation().quanta() / step;
    let deviation = |slip, count: i64| {
        let length = Size::from_quanta(count.abs() * step);
        let text = show(length.into(), unit, gauge.decimals()).text;
        let sign = if count < 0 { "-" } else { "" };
        let entered = EnteredDeviation::parse(&format!("{sign}{text}"), unit).ok()?;
        Some((slip, Indication::Deviation(entered)))
    };
    let mut found = Vec::new();
    if count != 0 {
        found.extend(deviation(Injected::Sign, -count));
    }
    for (slip, text) in digits(&count.abs().to_string()) {
        let swapped = text.parse::<i64>().map(|n| n * count.signum());
        found.extend(swapped.ok().and_then(|n| deviation(slip, n)));
    }
    found
}
