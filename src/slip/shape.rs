//! The shapes slips have: what would have been read without each.

use super::Looks;
use crate::quantity::{Deviation, Entered, EnteredDeviation, Exact, Size, Unit, show};
use crate::session::{Gauge, GaugeKind, Indication};

/// Steps of a micrometer's sleeve and range in inches: 40 turns make an inch,
/// ten numbers do.
const INCH: &[(Looks, i64)] = &[
    (Looks::Turn, 6_350_000),
    (Looks::SleeveLines, 12_700_000),
    (Looks::SleeveLines, 19_050_000),
    (Looks::NumberLine, 25_400_000),
    (Looks::Range, 254_000_000),
];

/// And in millimetres: a turn is half of one, a number stands at every fifth.
const MILLIMETRE: &[(Looks, i64)] = &[
    (Looks::Turn, 5_000_000),
    (Looks::SleeveLines, 10_000_000),
    (Looks::NumberLine, 50_000_000),
    (Looks::Range, 250_000_000),
];

/// What a gauge would have shown without a slip, for every slip it allows.
pub(super) fn without(entered: &Indication, gauge: &Gauge) -> Vec<(Looks, Indication)> {
    match entered {
        Indication::Size(read) => of_size(read, gauge),
        Indication::Deviation(read) => of_deviation(read, gauge),
    }
}

fn of_size(read: &Entered, gauge: &Gauge) -> Vec<(Looks, Indication)> {
    let mut found = Vec::new();
    let mut add = |looks, text: &str, unit| {
        if let Ok(other) = Entered::parse(text, unit) {
            found.push((looks, Indication::Size(other)));
        }
    };
    let unit = read.unit();
    let moved = |by: i64| {
        let size = read.size() + Deviation::from_quanta(by);
        show(size.into(), unit, read.decimals()).text
    };
    if has_thimble(gauge.kind) {
        let steps = match unit {
            Unit::Inch => INCH,
            Unit::Millimetre => MILLIMETRE,
        };
        for &(looks, by) in steps {
            add(looks, &moved(by), unit);
            add(looks, &moved(-by), unit);
        }
        if let Some(by) = wrapped(read, gauge) {
            add(Looks::Wrap, &moved(by), unit);
        }
    }
    for (looks, text) in typed(read.text()) {
        add(looks, &text, unit);
    }
    for other in Unit::ALL.into_iter().filter(|other| *other != unit) {
        add(Looks::Unit, read.text(), other);
    }
    found
}

fn of_deviation(read: &EnteredDeviation, gauge: &Gauge) -> Vec<(Looks, Indication)> {
    let (sign, digits) = match read.text().strip_prefix('-') {
        Some(digits) => ("-", digits),
        None => ("", read.text()),
    };
    let other_sign = if sign.is_empty() { "-" } else { "" };
    let mut texts = vec![(Looks::Sign, format!("{other_sign}{digits}"))];
    // What is typed is the count of graduations.
    let step = gauge.graduation.size().quanta().max(1);
    let quanta = read.deviation().abs().quanta();
    if quanta % step == 0 {
        for (looks, count) in typed(&(quanta / step).to_string()) {
            let count: usize = count.parse().unwrap_or(0);
            let length = Exact::new(count as i128 * i128::from(step), 1);
            let text = show(length, read.unit(), gauge.decimals()).text;
            texts.push((looks, format!("{sign}{text}")));
        }
    }
    let parsed = texts.into_iter().filter_map(|(looks, text)| {
        let other = EnteredDeviation::parse(&text, read.unit()).ok()?;
        (other != *read).then_some((looks, Indication::Deviation(other)))
    });
    parsed.collect()
}

/// True for gauges that are read on a sleeve and a thimble, their own or that
/// of the micrometer that takes their size off.
const fn has_thimble(kind: GaugeKind) -> bool {
    matches!(
        kind,
        GaugeKind::OutsideMicrometer
            | GaugeKind::InsideMicrometer
            | GaugeKind::TelescopingGauge
            | GaugeKind::DepthGauge
    )
}

/// How far the thimble line beside the one just passed lies, where the
/// vernier is about to wrap: at 8 and 9 the next line already looks passed,
/// at 0 and 1 the line passed does not look it yet.
fn wrapped(read: &Entered, gauge: &Gauge) -> Option<i64> {
    let unit = read.unit();
    let vernier = gauge.decimals() == unit.decimals() && read.decimals() == unit.decimals();
    let line = unit.quanta() / 10_i64.pow(u32::from(unit.decimals()) - 1);
    match read.text().bytes().last() {
        Some(b'8' | b'9') if vernier => Some(-line),
        Some(b'0' | b'1') if vernier => Some(line),
        _ => None,
    }
}

/// The keys beside each digit on the keypad, 7 8 9 in its first row and 0 in
/// its last.
const BESIDE: [&str; 10] = [
    "2", "24", "1350", "26", "157", "2468", "359", "48", "579", "68",
];

/// The texts in which one digit is of a key beside, or two digits beside each
/// other have changed places.
fn typed(text: &str) -> Vec<(Looks, String)> {
    let mut found = Vec::new();
    let mut before: Option<(usize, char)> = None;
    let with = |changes: [(usize, char); 2]| {
        let changed = text.char_indices().map(|at| {
            let change = changes.iter().find(|change| change.0 == at.0);
            change.map_or(at.1, |change| change.1)
        });
        changed.collect()
    };
    for (at, digit) in text.char_indices() {
        let Some(keys) = digit.to_digit(10).and_then(|d| BESIDE.get(d as usize)) else {
            continue;
        };
        for key in keys.chars() {
            found.push((Looks::Key, with([(at, key); 2])));
        }
        if let Some((place, other)) = before.replace((at, digit))
            && other != digit
        {
            found.push((Looks::Digits, with([(place, digit), (at, other)])));
        }
    }
    found
}

/// True for a size that a gauge can show.
pub(super) fn is_within_reach(gauge: &Gauge, size: Size) -> bool {
    Size::from_quanta(0) < size && gauge.reaches(size)
}
