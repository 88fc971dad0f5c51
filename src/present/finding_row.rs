//! One value of a feature, in words.

use super::finding_words;
use super::findings::{FindingRow, told};
use super::mark::{Mark, comparison_words};
use super::wording;
use crate::assess::{Detail, Finding, Which};
use crate::quantity::Exact;
use crate::session::{Direction, Feature, Kind, Quantity, Session};

/// A value of a feature as a row.
pub(super) fn row(session: &Session, finding: &Finding) -> FindingRow {
    let unit = session.display_unit();
    let Feature { kind, position } = finding.key.feature;
    let quantity = finding.key.quantity;
    let comparison = finding.comparison();
    let value = finding.value();
    let (mark, words) = told(finding, unit);
    let reads = mark == Mark::Open;
    FindingRow {
        label: label(finding),
        value: value.map_or_else(
            || "—".to_owned(),
            |v| finding_words::value(finding, v, unit),
        ),
        sense: match finding.detail {
            Some(Detail::Oval { axis, level, .. }) => {
                axis.map(|axis| finding_words::long_axis(finding.key.feature.kind, axis, level))
            }
            _ if (kind, quantity) == (Kind::RunOut, Quantity::Size) => session
                .high_spot(position)
                .map(|hour| format!("most at {}", wording::hour(hour))),
            _ => value.and_then(|v| {
                finding_words::sense(finding, v.numerator().signum()).map(str::to_owned)
            }),
        },
        mark,
        words: match (quantity, comparison) {
            (Quantity::Wear, None) => "needs an unworn reference".to_owned(),
            _ => words,
        },
        reads: reads.then(|| comparison_words(quantity, comparison, unit)),
        guide: finding.guide.as_ref().map(|g| finding_words::guide(g.word)),
        note: match finding.detail {
            Some(Detail::RingGap(change)) if change != Exact::ZERO => {
                Some(finding_words::ring_gap(change, unit))
            }
            Some(Detail::TwoWays(two)) => Some(finding_words::two_ways(&two, unit)),
            Some(Detail::Impossible) => Some(finding_words::impossible()),
            _ => None,
        },
    }
}

/// What a value is called.
pub(super) fn label(finding: &Finding) -> String {
    let kind = finding.key.feature.kind;
    let name = wording::quantity(kind, finding.key.quantity);
    match (finding.key.quantity, finding.key.which) {
        (Quantity::Barrel | Quantity::Bend | Quantity::Alignment | Quantity::Twist, _) => {
            name.to_owned()
        }
        (_, Which::By(way)) => format!("{name}, {}", finding_words::way(way)),
        (_, Which::Surest) => format!("{name}, by the surest way"),
        (Quantity::Taper, Which::Along(None)) if kind.is_amount() => {
            format!("{name} of the bore, by the gaps")
        }
        (_, Which::Fitted) => format!("{name}, fitted"),
        (Quantity::Size, Which::Mean) if kind == Kind::Piston || kind.is_amount() => {
            name.to_owned()
        }
        (_, Which::Mean) => format!("{name}, mean"),
        (Quantity::Clearance, Which::Smallest) => format!("{name}, least"),
        (Quantity::Clearance, Which::Largest) => format!("{name}, greatest"),
        (Quantity::Wear, Which::Largest) => name.to_owned(),
        (_, Which::Smallest) => format!("{name}, smallest"),
        (_, Which::Largest) => format!("{name}, largest"),
        (_, Which::At(level, direction)) if kind.directions().contains(&Direction::D60) => {
            let (level, near) = (wording::level(level), wording::direction(kind, direction));
            format!("{name}, {level}, {near}")
        }
        (_, Which::At(level, direction)) => {
            let turned = match direction {
                Direction::D45 => " (45° pair)",
                _ => "",
            };
            format!("{name}, {}{turned}", wording::level(level))
        }
        (_, Which::Along(Some(direction))) => {
            format!("{name}, {}", wording::direction(kind, direction))
        }
        (_, Which::Along(None)) => format!("{name}, between the means of the ends"),
    }
}
