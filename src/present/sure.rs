//! How sure a value is, in words and as a table.

use super::finding_row::label;
use super::finding_words;
use super::mark;
use super::wording::{self, number};
use crate::assess::{Assessment, Cause, Finding, FindingKey, Settle, Sure, Which};
use crate::quantity::{Exact, Unit, round_half_even, show};
use crate::session::{Quantity, Station};
use crate::uncertainty::{Budget, Row, rounded};
use crate::verdict::Verdict;

/// How sure one value is, and where the doubt comes from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SureView {
    /// What it is.
    pub title: String,
    /// The value, its doubt and what that makes of it, each a sentence.
    pub told: Vec<String>,
    /// Where the doubt comes from, the most first.
    pub rows: Vec<DoubtRow>,
}

/// One source of doubt.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DoubtRow {
    /// What it is.
    pub source: String,
    /// What it does to the value, one standard deviation, with its unit.
    pub doubt: String,
    /// Its part of all doubt.
    pub share: String,
    /// On how many readings more than needed that rests.
    pub dof: String,
}

/// The values of a feature that decide, those that are open first.
pub(super) fn of_feature(
    assessment: &Assessment,
    findings: &[&Finding],
    unit: Unit,
) -> Vec<SureView> {
    let mut views = Vec::new();
    let mut open = 0;
    for finding in findings {
        let (Some(verdict), Some(sure)) = (finding.decided(), &finding.sure) else {
            continue;
        };
        // The fitted oval says more than the largest pair.
        let fitted = FindingKey {
            which: Which::Fitted,
            ..finding.key
        };
        let said = finding.key.quantity == Quantity::OutOfRound
            && finding.key != fitted
            && assessment.get(fitted).is_some();
        if verdict == Verdict::NoLimit || said {
            continue;
        }
        let view = view(assessment, finding, sure, unit);
        if is_open(verdict) {
            views.insert(open, view);
            open += 1;
        } else {
            views.push(view);
        }
    }
    views
}

const fn is_open(verdict: Verdict) -> bool {
    matches!(
        verdict,
        Verdict::TooClose | Verdict::DoNotAssemble | Verdict::NotSeen
    )
}

fn view(assessment: &Assessment, finding: &Finding, sure: &Sure, unit: Unit) -> SureView {
    let doubts = &assessment.doubts;
    let budget = Budget::of(&sure.measured, doubts.sources());
    let mut told = vec![sentence(finding, sure, unit)];
    if let Some(value) = finding.value()
        && value != sure.measured.value()
        && sure.at_most.is_none()
    {
        let at_20 = length(sure.measured.value(), unit);
        told.push(format!("At 20 °C that is {at_20}; the limits hold there."));
    }
    if let Some(most) = sure.at_most {
        let most = length(most, unit);
        told.push(format!(
            "Your readings show no more than this: at most {most}."
        ));
    }
    if let Some(conformity) = sure.conformity {
        let cases = conformity.of_a_hundred();
        told.push(format!(
            "Of 100 such readings {cases} would come from a part inside."
        ));
    }
    if let Some(most) = budget.rows.first() {
        let source = cause(doubts.cause(most.source));
        told.push(format!("Most of the doubt: {source}."));
    }
    told.extend(sure.settle.as_ref().map(|settle| to_settle(settle, unit)));
    let row = |row: &Row| DoubtRow {
        source: cause(doubts.cause(row.source)).to_owned(),
        doubt: rounded_to(rounded(row.contribution), unit, unit.decimals() + 1),
        share: format!("{}\u{a0}%", row.per_cent()),
        dof: row
            .whole_dof()
            .map_or_else(|| "known".to_owned(), |dof| dof.to_string()),
    };
    // What does not show in whole per cents explains nothing.
    let rows = budget.rows.iter().filter(|row| 0 < row.per_cent());
    SureView {
        title: label(finding),
        told,
        rows: rows.map(row).collect(),
    }
}

/// The value beside what noise alone would show, and the word.
fn sentence(finding: &Finding, sure: &Sure, unit: Unit) -> String {
    let quantity = finding.key.quantity;
    let name = wording::quantity(finding.key.feature.kind, quantity);
    let value = finding.value().unwrap_or(Exact::ZERO);
    let value = finding_words::value(finding, value, unit);
    let guard = length(sure.guard, unit);
    let word = mark::verdict_words(quantity, sure.verdict, finding.comparison(), unit);
    match quantity {
        Quantity::OutOfRound | Quantity::Taper | Quantity::Barrel => {
            format!("{name} {value}; your noise alone would show up to {guard}: {word}.")
        }
        _ => format!("{name} {value}, and up to {guard} beside it: {word}."),
    }
}

/// What would settle it.
fn to_settle(settle: &Settle, unit: Unit) -> String {
    match settle {
        Settle::Read(stations, settles) => {
            let one = |(station, times): &(Station, usize)| match times {
                1 => wording::place(*station),
                _ => format!("{}, {times} times", wording::place(*station)),
            };
            let places: Vec<_> = stations.iter().map(one).collect();
            let may = if *settles {
                ""
            } else {
                " It may still stay open."
            };
            format!("To settle it, read: {}.{may}", places.join("; "))
        }
        Settle::FinerGauge(to) => format!(
            "Reading it again cannot settle it: a gauge that is sure to {} can.",
            length(*to, unit)
        ),
        Settle::Shop => "Two rounds more left it open: let the shop measure it.".to_owned(),
    }
}

/// A length to the decimals of its unit: a doubt is known to two digits at
/// best, so nothing more is told of it.
pub(super) fn length(exact: Exact, unit: Unit) -> String {
    rounded_to(exact, unit, unit.decimals())
}

fn rounded_to(exact: Exact, unit: Unit, decimals: u8) -> String {
    format!("{}\u{a0}{}", near(exact, unit, decimals), unit.sign())
}

/// A length to so many decimals, without its unit.
pub(super) fn near(exact: Exact, unit: Unit, decimals: u8) -> String {
    let step = i128::from(unit.quanta()) / 10_i128.pow(decimals.into());
    let steps = round_half_even(exact.numerator(), exact.denominator() * step);
    number(&show(Exact::new(steps * step, 1), unit, decimals))
}

/// What an error comes from.
const fn cause(cause: Option<Cause>) -> &'static str {
    match cause {
        Some(Cause::Repeatability(..)) => "readings of one spot differ, by hand and gauge",
        Some(Cause::SetByHand(_)) => "the micrometer was brought to the size by hand",
        Some(Cause::Resolution(_)) => "the scale shows no finer steps",
        Some(Cause::Setting(_)) => "what the gauge is off by in this setting",
        Some(Cause::AsFound(_)) => "nobody checked the gauge on a standard",
        Some(Cause::Drift(_)) => "the gauge showed something else when it was checked again",
        Some(Cause::Transfer(_)) => "the telescoping gauge may have stood aslant or off the axis",
        Some(Cause::Climate) => "how warm the shop was",
        Some(Cause::PartWarmth(_)) => "part and gauge not equally warm",
        Some(Cause::PartGrowth(_)) => "how much the part's material grows",
        Some(Cause::GaugeGrowth) => "how much the gauge grows",
        Some(Cause::AsMade(_)) => "the tolerance of new parts",
        Some(Cause::Crush(_)) => "what pressing the shells in does to walls and housing",
        Some(Cause::HighSpot) => "the high spot was noted in whole hours",
        Some(Cause::Unknown) | None => "the gauge is not known: choose one",
    }
}
