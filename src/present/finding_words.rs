//! Words of the findings: guides, repeats, ovals, and what is not seen.

use super::wording::{self, number};
use crate::assess::{CommonRule, Detail, Finding, GuideWord, Repeats, Rule};
use crate::quantity::{Exact, Shown, Unit, show, show_signed};
use crate::session::{Direction, Kind, Level, Quantity};

/// What stands over the common rules.
pub const COMMON_RULES: &str = "Said by the trade of engines in general. They fill the blank until \
                                the manual's limits are entered; no part's word rests on them.";

/// What the standard route cannot see in bores.
pub(super) const BORES_BLIND: &str = "Out-of-round: two directions do not show an oval of a bore \
                                      that lies at 45° to them. The fuller route does.";

/// What no gauge with two points can see.
pub(super) const LOBES_BLIND: &str = "Out-of-round is a difference of diameters: gauges that touch \
                                      at two points do not see three lobes, or any odd number.";

/// A value with its unit: shapes with their sign, which a fitted oval has
/// none of.
pub(super) fn value(finding: &Finding, value: Exact, unit: Unit) -> String {
    let shown = match (finding.key.quantity, finding.detail) {
        (_, Some(Detail::Oval { exact, .. })) => {
            let shown = show(value, unit, unit.decimals());
            let exact = exact && shown.exact;
            Shown { exact, ..shown }
        }
        (Quantity::OutOfRound | Quantity::Taper | Quantity::Barrel, _) => {
            show_signed(value, unit, unit.decimals())
        }
        _ => show(value, unit, unit.decimals()),
    };
    format!("{} {}", number(&shown), unit.sign())
}

/// Which way an oval lies. Clockwise is seen from the end called first.
pub(super) fn long_axis(kind: Kind, degrees: u16, level: Option<Level>) -> String {
    let zero = match kind {
        Kind::Bore | Kind::Piston => "thrust",
        Kind::MainJournal => "throw 1",
        Kind::RodJournal => "the throw",
        _ => "the joint",
    };
    let way = match (kind, degrees) {
        (Kind::Bore, 0) => "across the crank".to_owned(),
        (_, 0) => wording::direction(kind, Direction::D0).to_owned(),
        (_, 90) => wording::direction(kind, Direction::D90).to_owned(),
        (_, 1..90) => format!("{degrees}° clockwise of {zero}"),
        _ => format!("{}° anticlockwise of {zero}", 180 - degrees),
    };
    match level {
        Some(level) => format!("longest {way}, at the {}", wording::level(level)),
        None => format!("longest {way}"),
    }
}

/// What the taper of a bore does to a ring in it.
pub(super) fn ring_gap(change: Exact, unit: Unit) -> String {
    let shown = number(&show(change.abs(), unit, unit.decimals()));
    format!(
        "A ring's end gap would change by {shown} {} between top and bottom (π times the mean \
         taper): a check with feeler gauges.",
        unit.sign()
    )
}

/// What the common rules say. Never a verdict.
pub(super) const fn guide(word: GuideWord) -> &'static str {
    match word {
        GuideWord::InsideStrictest => "inside the strictest common rule",
        GuideWord::OutsideLoosest => "outside the loosest common rule",
        GuideWord::RulesDisagree => "common rules disagree, ask the shop",
    }
}

/// A common rule with whose it is.
pub(super) fn rule(rule: &Rule, unit: Unit) -> String {
    let CommonRule { text, source, .. } = rule.common;
    let length = |length: Exact| number(&show(length, unit, unit.decimals()));
    let (low, high, sign) = if rule.common.of_bore {
        // The same number in both units.
        let part = |steps: u16| {
            let inch = Exact::new(i128::from(steps) * 2_540, 1);
            number(&show(inch, Unit::Inch, Unit::Inch.decimals()))
        };
        (part(rule.common.low), part(rule.common.high), "of the bore")
    } else {
        (length(rule.low), length(rule.high), unit.sign())
    };
    if rule.low == Exact::ZERO {
        format!("up to {high} {sign}, {text} — {source}")
    } else {
        format!("{low} to {high} {sign}, {text} — {source}")
    }
}

/// How far the readings at one station lie apart.
pub(super) fn repeats(repeats: &Repeats, unit: Unit) -> String {
    let spread = number(&show(repeats.spread, unit, unit.decimals()));
    let place = wording::place(repeats.station);
    format!(
        "{place}: {spread} {} in {} readings",
        unit.sign(),
        repeats.count
    )
}
