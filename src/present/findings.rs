//! The findings screen: by kind, feature and value.

use core::cmp::Reverse;

use super::chart::{self, Chart};
use super::finding_row::row;
use super::finding_words;
use super::gauges::gone_off;
use super::mark::{self, Mark, comparison_words, mark};
use super::slip_words::{machined_words, slips};
use super::sure::{self, SureView};
use super::wording;
use crate::assess::{Assessment, Finding, FindingKey, Repeats};
use crate::quantity::{Entered, Exact, Unit};
use crate::session::{Feature, Kind, Quantity, RouteChoice, Session, limit_keys, ordered};
use crate::slip::new_nominal;
use crate::verdict::{Comparison, Verdict};

/// The whole screen.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct FindingsView {
    /// The name of the session.
    pub name: String,
    /// Kinds, first those with something beyond a limit, then those with
    /// something open, in the order they are measured.
    pub kinds: Vec<KindView>,
    /// Readings in doubt, in words: those of a setting in which the gauge went
    /// off, and those that look like slips.
    pub slips: Vec<String>,
    /// Readings of features the layout does not have, in words.
    pub outside_layout: Vec<String>,
    /// Limits that contradict each other after two copies met.
    pub contradiction: Option<String>,
}

/// All features of a kind.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KindView {
    /// The kind.
    pub kind: Kind,
    /// Its name.
    pub title: &'static str,
    /// The shape of its worst verdict.
    pub mark: Mark,
    /// How many of its features are beyond limits, open, within them.
    pub tally: String,
    /// Its sizes and clearances, all on one scale.
    pub ladders: Vec<Chart>,
    /// What was read more than once, for each gauge.
    pub repeats: Vec<Chart>,
    /// True if a manual can give limits for it.
    pub is_limited: bool,
    /// The limits in use, as printed in the manual.
    pub limits: Vec<LimitRow>,
    /// Where they come from.
    pub source: String,
    /// What the measuring of it cannot see; each is said once on the screen.
    pub blind: Vec<&'static str>,
    /// The common rules used where no limit is given, and who says them.
    pub rules: Vec<LimitRow>,
    /// What all of the kind seem to have been machined to, in words.
    pub machined: Option<String>,
    /// The size to take as made, where a second gauge says the same.
    pub machined_to: Option<Entered>,
    /// Its features, the worst first.
    pub features: Vec<FeatureView>,
    /// So many of them from the first on are beyond limits or open.
    pub open: usize,
    /// What the others are, in words.
    pub settled: String,
}

/// The limits of one quantity, or a common rule for it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LimitRow {
    /// The quantity.
    pub quantity: &'static str,
    /// The limits, as typed; the rule, as said.
    pub text: String,
}

/// One feature: its worst comparison, and every value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FeatureView {
    /// Its name.
    pub title: String,
    /// The shape of its worst verdict.
    pub mark: Mark,
    /// Its worst verdict in words, with what it is about.
    pub words: String,
    /// Its shape.
    pub charts: Vec<Chart>,
    /// Its values.
    pub rows: Vec<FindingRow>,
    /// How sure those are that decide, and why.
    pub sure: Vec<SureView>,
    /// What was read more than once, and how far the readings lie apart.
    pub repeats: Vec<String>,
    /// What was not read, in words.
    pub missing: Vec<String>,
}

/// One value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FindingRow {
    /// What it is.
    pub label: String,
    /// The value with its unit, or a dash.
    pub value: String,
    /// What its sign means, or which way it lies.
    pub sense: Option<String>,
    /// The shape of its verdict, or of its comparison where others decide.
    pub mark: Mark,
    /// Its verdict in words, or its comparison where others decide.
    pub words: String,
    /// What it reads, where that is not proved.
    pub reads: Option<String>,
    /// What the common rules say, where no limit is given.
    pub guide: Option<&'static str>,
    /// How it can be checked another way.
    pub note: Option<String>,
}

/// The findings of a session as shown.
#[must_use]
pub fn findings(session: &Session, assessment: &Assessment) -> FindingsView {
    let outside = assessment.outside_layout.iter();
    let outside_layout = outside
        .filter_map(|id| session.readings.get(id))
        .map(|r| format!("{}: {}", wording::station(r.station), r.entered))
        .collect();
    let told = |kind: &Kind| {
        let mut all = assessment.findings.iter();
        all.any(|finding| finding.key.feature.kind == *kind)
    };
    let kinds = Kind::ALL.into_iter().filter(told);
    let kinds = kinds.map(|kind| kind_view(session, assessment, kind));
    let kinds = (0_u8..).zip(kinds);
    let kinds = ordered(kinds.map(|(place, view)| ((Grade::of(view.mark), place), view)));
    FindingsView {
        name: session.name(),
        kinds: kinds.into_iter().map(|(_, view)| view).collect(),
        slips: gone_off(session)
            .into_iter()
            .chain(slips(session).into_iter().map(|(_, told)| told))
            .collect(),
        outside_layout,
        contradiction: session.check_limits().err().map(|why| why.to_string()),
    }
}

fn kind_view(session: &Session, assessment: &Assessment, kind: Kind) -> KindView {
    let unit = session.display_unit();
    let first = Feature { kind, position: 1 };
    let mut limits: Vec<LimitRow> = Vec::new();
    let mut source = String::new();
    for finding in assessment.of(first) {
        if let Some(text) = limit_text(finding) {
            source.clone_from(&finding.limits.source);
            add_once(&mut limits, finding, text);
        }
    }
    let mut rules = Vec::new();
    let of_kind = |finding: &&Finding| finding.key.feature.kind == kind;
    for finding in assessment.findings.iter().filter(of_kind) {
        for rule in finding.guide.iter().flat_map(|guide| &guide.rules) {
            add_once(&mut rules, finding, finding_words::rule(rule, unit));
        }
    }
    let features = worst_first(session, assessment, kind);
    let features = features.into_iter();
    let features = features.map(|feature| feature_view(session, assessment, feature));
    let features: Vec<_> = features.collect();
    let marks: Vec<_> = features.iter().map(|feature| feature.mark).collect();
    // They are in this order but for what is told and not known of a bore.
    let is_open = |mark: &Mark| Grade::of(*mark) <= Grade::Open;
    let open = marks.iter().rposition(is_open).map_or(0, |last| last + 1);
    let settled = marks.get(open..).unwrap_or_default();
    let ladder = |quantity| chart::ladder(session, assessment, kind, quantity);
    let ladders = [Quantity::Size, Quantity::Clearance].into_iter();
    let machined = new_nominal(session, kind);
    KindView {
        kind,
        title: wording::kind_plural(kind),
        mark: marks
            .iter()
            .copied()
            .min_by_key(|mark| Grade::of(*mark))
            .unwrap_or(Mark::Unread),
        tally: tally(&marks),
        ladders: ladders.filter_map(ladder).collect(),
        repeats: chart::repeats(session, assessment, kind),
        is_limited: !limit_keys(kind).is_empty(),
        limits,
        source,
        blind: blind(kind, session.route()),
        rules,
        machined: machined.as_ref().map(machined_words),
        machined_to: machined.filter(|to| to.witnessed).map(|to| to.size),
        settled: format!(
            "{} {}: {}",
            if open == 0 { "All" } else { "The other" },
            settled.len(),
            tally(settled)
        ),
        features,
        open,
    }
}

/// What matters first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Grade {
    Beyond,
    Open,
    Within,
    NoLimit,
    Unread,
}

impl Grade {
    const fn of(mark: Mark) -> Self {
        match mark {
            Mark::Small | Mark::Large | Mark::Shape => Self::Beyond,
            Mark::Open => Self::Open,
            Mark::New | Mark::Service => Self::Within,
            Mark::NoLimit => Self::NoLimit,
            Mark::Unread => Self::Unread,
        }
    }
}

/// How many features are what.
fn tally(marks: &[Mark]) -> String {
    let grades = [
        (Grade::Beyond, "beyond a limit"),
        (Grade::Open, "too close to call"),
        (Grade::Within, "within limits"),
        (Grade::NoLimit, "without a limit"),
        (Grade::Unread, "not measured"),
    ];
    let counted = grades.into_iter().filter_map(|(grade, words)| {
        let of = |mark: &&Mark| Grade::of(**mark) == grade;
        let count = marks.iter().filter(of).count();
        (0 < count).then(|| format!("{count} {words}"))
    });
    counted.collect::<Vec<_>>().join(", ")
}

/// What cannot be seen, where it matters first: two points at the first kind
/// of which out-of-round is told, two directions at the kind that the route
/// reads in no more.
fn blind(kind: Kind, route: RouteChoice) -> Vec<&'static str> {
    match (kind, route) {
        (Kind::Bore, RouteChoice::Standard) => {
            vec![finding_words::LOBES_BLIND, finding_words::BORES_BLIND]
        }
        (Kind::Bore, _) => vec![finding_words::LOBES_BLIND],
        (Kind::MainJournal, RouteChoice::Plain) => vec![wording::PLAIN_ROUTE_BLIND],
        _ => Vec::new(),
    }
}

fn add_once(rows: &mut Vec<LimitRow>, finding: &Finding, text: String) {
    let quantity = wording::quantity(finding.key.feature.kind, finding.key.quantity);
    let row = LimitRow { quantity, text };
    if !rows.contains(&row) {
        rows.push(row);
    }
}

/// The features of a kind, the worst first: by their worst verdict, then
/// by how far beyond the limit or how near to it they come; those of which
/// nothing was measured last.
fn worst_first(session: &Session, assessment: &Assessment, kind: Kind) -> Vec<Feature> {
    let badness = |finding: &Finding| {
        let margin = finding.sure.as_ref()?.margin;
        Some((rank(finding)?, margin.map_or(Exact::ZERO, |m| -m)))
    };
    let of = |feature| assessment.of(feature).filter_map(badness).max();
    let features = session.features_of(kind);
    let by_badness = ordered(features.map(|f| ((Reverse(of(f)), f), ())));
    by_badness.keys().map(|(_, feature)| *feature).collect()
}

/// The limits of a finding as the manual prints them; `None` without any.
fn limit_text(finding: &Finding) -> Option<String> {
    let FindingKey {
        feature, quantity, ..
    } = finding.key;
    let given = finding.limits.given.iter();
    let texts: Vec<_> = given
        .map(|(bound, limit)| format!("{} {limit}", wording::bound(feature.kind, quantity, *bound)))
        .collect();
    (!texts.is_empty()).then(|| texts.join(" · "))
}

fn feature_view(session: &Session, assessment: &Assessment, feature: Feature) -> FeatureView {
    let unit = session.display_unit();
    let all: Vec<&Finding> = assessment.of(feature).collect();
    let (mark, mut words) = match worst(&all) {
        Some(finding) => {
            let quantity = finding.key.quantity;
            let (mark, words) = told(finding, unit);
            (
                mark,
                format!("{} {words}", wording::quantity(feature.kind, quantity)),
            )
        }
        None => (Mark::Unread, "not measured".to_owned()),
    };
    let asked = feature.stations(session.route());
    let read = |station| session.standing().any(|(_, r)| r.station == station);
    // Of shells a clearance can be known of which nobody asked for the walls.
    let counts = session.is_asked(feature.kind) || asked.iter().copied().any(read);
    if mark != Mark::Unread && counts && !asked.into_iter().all(read) {
        words.push_str("; not all of it measured");
    }
    let missing = all.iter().flat_map(|f| f.missing.iter());
    let missing = ordered(missing.map(|station| (*station, ())));
    let of_feature = |repeats: &&Repeats| Feature::of(repeats.station) == feature;
    let repeats = assessment.repeats.iter().filter(of_feature);
    let charts = [
        chart::bore_map(session, feature),
        chart::profile(session, assessment, feature),
    ];
    FeatureView {
        charts: charts.into_iter().flatten().collect(),
        title: wording::feature(feature),
        mark,
        words,
        rows: all.iter().map(|finding| row(session, finding)).collect(),
        sure: sure::of_feature(assessment, &all, unit),
        repeats: repeats
            .map(|repeats| finding_words::repeats(repeats, unit))
            .collect(),
        missing: missing.keys().copied().map(wording::station).collect(),
    }
}

/// The worst of several findings that decide: the first of the worst kind,
/// and among amounts over a limit those of one quantity by the largest.
pub(super) fn worst<'a>(findings: &[&'a Finding]) -> Option<&'a Finding> {
    let by = |finding: &Finding| match finding.comparison() {
        Some(Comparison::BeyondLimit(by) | Comparison::OutsideNew(by)) => by.abs(),
        _ => Exact::ZERO,
    };
    let badness = |finding: &Finding| Some((rank(finding)?, by(finding)));
    let mut worst: Option<&Finding> = None;
    for finding in findings {
        let here = badness(finding);
        if here.is_some() && worst.is_none_or(|worst| badness(worst) < here) {
            worst = Some(finding);
        }
    }
    worst
}

/// A verdict, or what a part of one reads, with its mark.
pub(super) fn told(finding: &Finding, unit: Unit) -> (Mark, String) {
    let quantity = finding.key.quantity;
    let reads = finding.comparison();
    match finding.decided() {
        Some(verdict) => (
            mark::verdict_mark(quantity, verdict, reads),
            mark::verdict_words(quantity, verdict, reads, unit),
        ),
        None => (
            mark(quantity, reads),
            comparison_words(quantity, reads, unit),
        ),
    }
}

/// How bad a verdict is, worst highest; `None` of what does not decide. A
/// bore wears oval across the crank, so what two directions do not show there
/// is said, but does not stand before what is known.
fn rank(finding: &Finding) -> Option<u8> {
    Some(match finding.decided()? {
        Verdict::NoLimit => 0,
        Verdict::NotSeen if finding.key.feature.kind == Kind::Bore => 1,
        Verdict::WithinNew => 2,
        Verdict::WithinService => 3,
        Verdict::NotSeen => 4,
        Verdict::TooClose => 5,
        Verdict::DoNotAssemble => 6,
        Verdict::OutsideNew => 7,
        Verdict::BeyondLimit => 8,
    })
}
