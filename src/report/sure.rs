//! How sure a value is, as JSON.

use serde::Serialize;

use crate::assess::{Assessment, Cause, Finding, Settle};
use crate::quantity::{Unit, show};
use crate::uncertainty::{self, Budget, Probability, rounded};

/// How sure a value is. A number that is not there is infinite, or has no
/// limit to be about.
#[derive(Serialize)]
pub(super) struct Sure {
    value_at_20_c: String,
    u: String,
    nu: Option<f64>,
    guard_band: String,
    probability_inside: Option<f64>,
    at_most: Option<String>,
    settle: Option<Settling>,
    budget: Vec<Part>,
}

/// What would settle a finding that is too close to call.
#[derive(Serialize)]
#[serde(rename_all = "snake_case")]
enum Settling {
    /// Readings more, by station, and whether that should do.
    Read {
        stations: Vec<(String, usize)>,
        settles: bool,
    },
    /// A gauge that is sure to so much.
    FinerGauge(String),
    /// The shop's gauges.
    Shop,
}

/// What one source has in an uncertainty.
#[derive(Serialize)]
struct Part {
    source: &'static str,
    sensitivity: f64,
    u: f64,
    contribution: String,
    share: f64,
    dof: Option<f64>,
}

/// How sure a finding is, where it is weighed.
pub(super) fn sure(assessment: &Assessment, finding: &Finding, unit: Unit) -> Option<Sure> {
    let sure = finding.sure.as_ref()?;
    let finite = |number: f64| number.is_finite().then_some(number);
    let text = |length| show(length, unit, unit.decimals() + FINER).text;
    let doubts = &assessment.doubts;
    let budget = Budget::of(&sure.measured, doubts.sources());
    let part = |row: &uncertainty::Row| Part {
        source: cause_key(doubts.cause(row.source)),
        sensitivity: row.sensitivity,
        u: row.u,
        contribution: text(rounded(row.contribution)),
        share: row.share,
        dof: finite(row.dof),
    };
    Some(Sure {
        value_at_20_c: text(sure.measured.value()),
        u: text(rounded(sure.combined.u())),
        nu: finite(sure.combined.nu()),
        guard_band: text(sure.guard),
        probability_inside: sure.conformity.map(Probability::value),
        at_most: sure.at_most.map(text),
        settle: sure.settle.as_ref().map(|settle| match settle {
            Settle::Read(stations, settles) => Settling::Read {
                stations: stations
                    .iter()
                    .map(|(station, times)| (station.to_string(), *times))
                    .collect(),
                settles: *settles,
            },
            Settle::FinerGauge(to) => Settling::FinerGauge(text(*to)),
            Settle::Shop => Settling::Shop,
        }),
        budget: budget.rows.iter().map(part).collect(),
    })
}

/// Decimals beyond those of a length.
const FINER: u8 = 2;

/// The word of a cause in JSON.
const fn cause_key(cause: Option<Cause>) -> &'static str {
    match cause {
        Some(Cause::Repeatability(..)) => "repeatability",
        Some(Cause::SetByHand(_)) => "setting_by_hand",
        Some(Cause::Resolution(_)) => "resolution",
        Some(Cause::Setting(_)) => "setting",
        Some(Cause::AsFound(_)) => "as_found",
        Some(Cause::Drift(_)) => "drift",
        Some(Cause::Transfer(_)) => "transfer",
        Some(Cause::Climate) => "temperature",
        Some(Cause::PartWarmth(_)) => "part_temperature",
        Some(Cause::PartGrowth(_)) => "part_expansion",
        Some(Cause::GaugeGrowth) => "gauge_expansion",
        Some(Cause::AsMade(_)) => "as_made",
        Some(Cause::Crush(_)) => "crush",
        Some(Cause::HighSpot) => "high_spot",
        Some(Cause::Unknown) | None => "unknown_gauge",
    }
}
