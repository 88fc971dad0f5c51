//! Words of the findings: guides, repeats, ovals, and what is not seen.

use super::wording::{self, number};
use crate::assess::{
    CommonRule, Detail, Finding, GuideWord, Per, Repeats, Rule, TwoWays, Way, Which,
};
use crate::quantity::{Exact, Shown, Unit, show, show_signed};
use crate::remedy::IMPOSSIBLE_CLEARANCE;
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
        (_, Some(Detail::Oval { exact, .. } | Detail::Root(exact))) => {
            let shown = show(value, unit, unit.decimals());
            let exact = exact && shown.exact;
            Shown { exact, ..shown }
        }
        (Quantity::OutOfRound | Quantity::Taper | Quantity::Barrel | Quantity::Twist, _) => {
            show_signed(value, unit, unit.decimals())
        }
        _ => show(value, unit, unit.decimals()),
    };
    format!("{} {}", number(&shown), unit.sign())
}

/// What the sign of a shape means.
pub(super) const fn sense(finding: &Finding, sign: i128) -> Option<&'static str> {
    let kind = finding.key.feature.kind;
    match (finding.key.quantity, finding.key.which, kind, sign) {
        (_, _, _, 0) => None,
        (Quantity::OutOfRound, Which::At(..), Kind::Bore, 1) => Some("longer across the crank"),
        (Quantity::OutOfRound, Which::At(..), Kind::Bore, _) => Some("longer along the crank"),
        (Quantity::OutOfRound, _, Kind::MainHousing | Kind::BigEnd, 1) => {
            Some("longer square to the joint")
        }
        (Quantity::OutOfRound, _, Kind::MainHousing | Kind::BigEnd, _) => {
            Some("longer near the joint")
        }
        (
            Quantity::Taper,
            Which::Along(_),
            Kind::Bore | Kind::TopRingGap | Kind::SecondRingGap,
            _,
        ) => Some(if 0 < sign {
            "larger at the top"
        } else {
            "larger at the bottom"
        }),
        (Quantity::Taper, Which::Along(_), _, 1) => Some("larger at the first end"),
        (Quantity::Taper, Which::Along(_), _, _) => Some("larger at the last end"),
        (Quantity::Barrel, _, _, 1) => Some("barrel: larger in the middle"),
        (Quantity::Barrel, _, _, _) => Some("hour-glass: smaller in the middle"),
        _ => None,
    }
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

/// By which way an oil clearance was found.
pub(super) const fn way(way: Way) -> &'static str {
    match way {
        Way::Parts => "housing less walls less journal",
        Way::Fitted => "fitted shells less journal",
        Way::Strip => "by strip",
    }
}

/// How two ways to one value agree.
pub(super) fn two_ways(two: &TwoWays, unit: Unit) -> String {
    let length = |length| number(&show(length, unit, unit.decimals()));
    let (apart, allowed) = (length(two.apart), length(two.allowed));
    let sign = unit.sign();
    if two.agree() {
        format!("Two ways agree: {apart} {sign} apart, and their doubts allow {allowed} {sign}.")
    } else {
        format!(
            "Two ways are {apart} {sign} apart, and their doubts allow {allowed} {sign}: there is \
             an error in one of them."
        )
    }
}

/// What to look for behind a clearance that cannot be, in this order.
pub(super) fn impossible() -> String {
    let causes = IMPOSSIBLE_CLEARANCE.join("; ");
    format!("This cannot be. Look for, in this order: {causes}.")
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
    // The same number in both units.
    let part = |steps: u16| {
        let inch = Exact::new(i128::from(steps) * 254, 1);
        number(&show(inch, Unit::Inch, Unit::Inch.decimals()))
    };
    let parts = |of| (part(rule.common.low), part(rule.common.high), of);
    let (low, high, sign) = match rule.common.per {
        Per::Inch => (length(rule.low), length(rule.high), unit.sign()),
        Per::Bore => parts("of the bore"),
        Per::Journal => parts("of the journal"),
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
