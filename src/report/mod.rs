//! Assessment and plan → JSON. The keys are documented in DEVELOPERS.md and stable.

mod causes;
mod plan;
mod sure;
mod words;

use serde::Serialize;

use crate::archive::APP;
use crate::assess::{
    Assessment, Detail, Finding, FindingKey, GuideWord, Outcome, RULE, Way, Which, advise,
};
use crate::quantity::{Entered, Exact, Unit, show};
use crate::remedy::IMPOSSIBLE_CLEARANCE;
use crate::session::{Session, Stamp};
use crate::slip::{self, Looks};
use crate::verdict::{Comparison, Verdict};
use causes::{Aftermath, Cause, Clash, evidence};
use plan::{Plan, plan};
use sure::{Sure, sure};

#[derive(Serialize)]
struct Report<'a> {
    format: &'static str,
    version: u8,
    app: &'static str,
    session: &'a str,
    name: String,
    unit: &'static str,
    compared: &'static str,
    rule: &'static str,
    findings: Vec<Row<'a>>,
    plan: Plan,
    causes: Vec<Cause>,
    clashes: Vec<Clash>,
    aftermath: Aftermath,
    repeats: Vec<Repeats>,
    slips: Vec<Slip>,
    kept: Vec<String>,
    outside_layout: Vec<String>,
}

#[derive(Serialize)]
struct Row<'a> {
    feature: String,
    quantity: &'static str,
    which: String,
    value: Option<String>,
    exact: bool,
    unit: &'static str,
    axis_degrees: Option<u16>,
    ring_gap_change: Option<String>,
    two_ways: Option<Ways>,
    impossible: Option<[&'static str; 4]>,
    comparison: &'static str,
    beyond_by: Option<String>,
    margin: Option<String>,
    verdict: Option<&'static str>,
    sure: Option<Sure>,
    limits: Limits<'a>,
    guide: Option<Guide>,
    missing: Vec<String>,
    readings: Vec<String>,
}

/// How two ways to one value agree.
#[derive(Serialize)]
struct Ways {
    apart: String,
    allowed: String,
    agree: bool,
}

#[derive(Serialize)]
struct Limits<'a> {
    new_low: Option<Limit<'a>>,
    new_high: Option<Limit<'a>>,
    service: Option<Limit<'a>>,
    source: &'a str,
}

#[derive(Serialize)]
struct Limit<'a> {
    value: &'a str,
    unit: &'static str,
}

#[derive(Serialize)]
struct Repeats {
    station: String,
    count: usize,
    spread: String,
    unit: &'static str,
}

/// A reading that may be a slip.
#[derive(Serialize)]
struct Slip {
    reading: String,
    looks: String,
    would_be: Option<String>,
}

#[derive(Serialize)]
struct Guide {
    word: &'static str,
    rules: Vec<Rule>,
}

#[derive(Serialize)]
struct Rule {
    low: String,
    high: String,
    unit: &'static str,
    text: &'static str,
    source: &'static str,
}

/// Every finding, the plan and what was seen as JSON text, lengths in the session's display unit.
///
/// # Errors
/// Only if the JSON writer fails, which it has no reason to.
pub fn json(session: &Session, assessment: &Assessment) -> Result<String, serde_json::Error> {
    let unit = session.display_unit();
    let repeats = assessment.repeats.iter().map(|repeats| Repeats {
        station: repeats.station.to_string(),
        count: repeats.count,
        spread: show(repeats.spread, unit, unit.decimals()).text,
        unit: unit.sign(),
    });
    let evidence = evidence(session, assessment);
    let report = Report {
        format: "fenderbench-assessment",
        version: 1,
        app: APP,
        session: session.id.as_str(),
        name: session.name(),
        unit: unit.sign(),
        compared: "as read, without uncertainty",
        rule: RULE.name,
        findings: assessment
            .findings
            .iter()
            .map(|f| row(assessment, f, unit))
            .collect(),
        plan: plan(session, &advise(session, assessment)),
        causes: evidence.causes,
        clashes: evidence.clashes,
        aftermath: evidence.aftermath,
        repeats: repeats.collect(),
        slips: slips(session),
        kept: session
            .standing()
            .filter(|(_, reading)| reading.kept)
            .map(|(id, _)| id.to_string())
            .collect(),
        outside_layout: assessment
            .outside_layout
            .iter()
            .map(ToString::to_string)
            .collect(),
    };
    serde_json::to_string_pretty(&report)
}

fn slips(session: &Session) -> Vec<Slip> {
    let found = slip::review(session);
    let row = |(id, slip): (Stamp, slip::Slip)| Slip {
        reading: id.to_string(),
        looks: looks_key(slip.looks),
        would_be: slip.would_be.map(|would_be| would_be.to_string()),
    };
    found.into_iter().map(row).collect()
}

/// The word of what a reading looks like in JSON; a feature stands behind it.
fn looks_key(looks: Looks) -> String {
    let word = match looks {
        Looks::Turn => "turn",
        Looks::SleeveLines => "sleeve_lines",
        Looks::NumberLine => "number_line",
        Looks::Range => "range",
        Looks::Wrap => "wrap",
        Looks::Digits => "digits",
        Looks::Key => "key",
        Looks::Sign => "sign",
        Looks::Unit => "unit",
        Looks::Elsewhere(kind) => return format!("elsewhere/{}", kind.key()),
        Looks::Neighbour(feature) => return format!("elsewhere/{feature}"),
        Looks::Copies => "copies",
        Looks::Impossible => "impossible",
        Looks::Far => "far",
    };
    word.to_owned()
}

/// The word of a comparison in JSON; without one, nothing was measured.
#[must_use]
pub const fn comparison_key(comparison: Option<Comparison>) -> &'static str {
    match comparison {
        None => "not_measured",
        Some(Comparison::InsideNew) => "inside_new_limits",
        Some(Comparison::InsideService) => "inside_service_limit",
        Some(Comparison::BeyondLimit(_)) => "beyond_limit",
        Some(Comparison::OutsideNew(_)) => "outside_new_limits",
        Some(Comparison::NoLimit) => "no_limit_given",
    }
}

/// The word of a guide in JSON.
#[must_use]
pub const fn guide_key(word: GuideWord) -> &'static str {
    match word {
        GuideWord::InsideStrictest => "inside_strictest_rule",
        GuideWord::OutsideLoosest => "outside_loosest_rule",
        GuideWord::RulesDisagree => "rules_disagree",
    }
}

/// The address of a finding in JSON: feature and which of its values.
#[must_use]
pub fn which_key(key: FindingKey) -> String {
    match key.which {
        Which::Mean => "mean".to_owned(),
        Which::Smallest => "smallest".to_owned(),
        Which::Largest => "largest".to_owned(),
        Which::At(level, direction) => format!("at/{}/{}", level.key(), direction.degrees()),
        Which::Along(Some(direction)) => format!("along/{}", direction.degrees()),
        Which::Along(None) => "along/means".to_owned(),
        Which::Fitted => "fitted".to_owned(),
        Which::By(Way::Parts) => "by/parts".to_owned(),
        Which::By(Way::Fitted) => "by/fitted".to_owned(),
        Which::By(Way::Strip) => "by/strip".to_owned(),
        Which::Surest => "surest".to_owned(),
    }
}

fn row<'a>(assessment: &Assessment, finding: &'a Finding, unit: Unit) -> Row<'a> {
    let text = |value: Exact| show(value, unit, unit.decimals());
    let (value, margin) = match &finding.outcome {
        Outcome::NotMeasured => (None, None),
        Outcome::Value { value, margin, .. } => (Some(text(*value)), *margin),
    };
    let comparison = finding.comparison();
    let beyond_by = match comparison {
        Some(Comparison::BeyondLimit(by) | Comparison::OutsideNew(by)) => Some(text(by).text),
        _ => None,
    };
    let (mut axis_degrees, mut ring_gap_change) = (None, None);
    let (mut two_ways, mut impossible) = (None, None);
    let mut whole = true;
    match finding.detail {
        Some(Detail::Oval { axis, exact, .. }) => (axis_degrees, whole) = (axis, exact),
        Some(Detail::RingGap(change)) => ring_gap_change = Some(text(change).text),
        Some(Detail::Root(exact)) => whole = exact,
        Some(Detail::TwoWays(two)) => {
            two_ways = Some(Ways {
                apart: text(two.apart).text,
                allowed: text(two.allowed).text,
                agree: two.agree(),
            });
        }
        Some(Detail::Impossible) => impossible = Some(IMPOSSIBLE_CLEARANCE),
        None => {}
    }
    let feature = finding.key.feature;
    Row {
        feature: format!("{}/{}", feature.kind.key(), feature.position),
        quantity: finding.key.quantity.key(),
        which: which_key(finding.key),
        exact: whole && value.as_ref().is_some_and(|shown| shown.exact),
        value: value.map(|shown| shown.text),
        unit: unit.sign(),
        axis_degrees,
        ring_gap_change,
        two_ways,
        impossible,
        comparison: comparison_key(comparison),
        beyond_by,
        margin: margin.map(|m| text(m).text),
        verdict: finding.decided().map(verdict_key),
        sure: sure(assessment, finding, unit),
        limits: limits(finding),
        guide: guide(finding, unit),
        missing: finding.missing.iter().map(ToString::to_string).collect(),
        readings: finding.readings.iter().map(ToString::to_string).collect(),
    }
}

/// The word of a verdict in JSON.
#[must_use]
pub const fn verdict_key(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::WithinNew => "within_new_limits",
        Verdict::WithinService => "within_service_limit",
        Verdict::BeyondLimit => "beyond_limit",
        Verdict::OutsideNew => "outside_new_limits",
        Verdict::TooClose => "too_close_to_call",
        Verdict::DoNotAssemble => "do_not_assemble",
        Verdict::NotSeen => "not_seen_all_round",
        Verdict::NoLimit => "no_limit_given",
    }
}

fn limits(finding: &Finding) -> Limits<'_> {
    use crate::session::Bound;
    let given = |bound| {
        let found = finding.limits.given.iter().find(|(b, _)| *b == bound);
        found.map(|(_, limit): &(Bound, Entered)| Limit {
            value: limit.text(),
            unit: limit.unit().sign(),
        })
    };
    Limits {
        new_low: given(Bound::NewLow),
        new_high: given(Bound::NewHigh),
        service: given(Bound::Service),
        source: &finding.limits.source,
    }
}

fn guide(finding: &Finding, unit: Unit) -> Option<Guide> {
    let guide = finding.guide.as_ref()?;
    let text = |length| show(length, unit, unit.decimals()).text;
    let rules = guide.rules.iter().map(|rule| Rule {
        low: text(rule.low),
        high: text(rule.high),
        unit: unit.sign(),
        text: rule.common.text,
        source: rule.common.source,
    });
    Some(Guide {
        word: guide_key(guide.word),
        rules: rules.collect(),
    })
}
