//! What the trade commonly says where the manual is silent.
//!
//! A rule of thumb fills a blank and decides nothing: a guide stands beside
//! a comparison and never enters it. Only what is said of engines in general
//! stands here, nothing that comes from the manual of one engine; public
//! manuals differ by a factor of ten on one limit, so none of these is a
//! default.

use super::FindingKey;
use super::view::View;
use crate::quantity::{Exact, Unit, Weights};
use crate::session::{Feature, Kind, Level, Quantity, Use};

/// A rule of thumb of the trade, as it is said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CommonRule {
    /// Least, in steps of 0.00001 in or 0.00001 of the bore. Of a shape
    /// nothing, and its amount counts, whichever way it goes.
    pub low: u16,
    /// Greatest, in the same steps.
    pub high: u16,
    /// Whether both are parts of the size of the bore.
    pub of_bore: bool,
    /// What it is said of.
    pub text: &'static str,
    /// Who says it.
    pub source: &'static str,
}

/// A common rule in lengths, for one finding.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rule {
    /// Least that it allows.
    pub low: Exact,
    /// Greatest that it allows; both belong to it.
    pub high: Exact,
    /// The rule.
    pub common: &'static CommonRule,
}

/// Where a value lies among the common rules. Never a verdict.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GuideWord {
    /// Inside the strictest common rule, so inside all of them.
    InsideStrictest,
    /// Outside the loosest common rule, so outside all of them.
    OutsideLoosest,
    /// Inside some of them and outside others.
    RulesDisagree,
}

/// What the common rules say of a value for which no limit is given.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Guide {
    /// Where the value lies among them.
    pub word: GuideWord,
    /// The rules that were used, at least one.
    pub rules: Vec<Rule>,
}

const PRACTICE: &str = "common practice";
const NOTES: &str = "old-engine and trade rebuild notes";
const ANSWERS: &str = "common practice; 0.001 per inch also in trade questions and answers";

const fn up_to(high: u16, text: &'static str, source: &'static str) -> CommonRule {
    between(0, high, text, source)
}

const fn between(low: u16, high: u16, text: &'static str, source: &'static str) -> CommonRule {
    CommonRule {
        low,
        high,
        of_bore: false,
        text,
        source,
    }
}

const fn of_bore(low: u16, high: u16, text: &'static str, source: &'static str) -> CommonRule {
    CommonRule {
        of_bore: true,
        ..between(low, high, text, source)
    }
}

/// The first is for hard use only.
const BORE_OUT_OF_ROUND: &[CommonRule] = &[
    up_to(50, "as made", PRACTICE),
    up_to(200, "used again on the street (strict)", PRACTICE),
    up_to(300, "used again on the street", PRACTICE),
    up_to(500, "used again at the most", NOTES),
];

/// The first is for hard use only.
const BORE_TAPER: &[CommonRule] = &[
    up_to(100, "good", NOTES),
    up_to(300, "new rings will do", NOTES),
    up_to(500, "new rings are doubtful", NOTES),
    up_to(600, "to be bored above it", NOTES),
];

const JOURNAL: &[CommonRule] = &[up_to(50, "small car engines", PRACTICE)];

/// Of a barrel, where the manual limits the taper.
static AS_TAPER: CommonRule = up_to(0, "as the manual's taper", PRACTICE);

const CAST: CommonRule = between(100, 200, "cast pistons in general", PRACTICE);
const FORGED: CommonRule = between(
    200,
    400,
    "forged pistons in general; more with boost or racing heat",
    PRACTICE,
);

/// Piston-to-wall on the road; with hard use the last gives way to what is
/// said of it.
const CLEARANCE: &[CommonRule] = &[
    CAST,
    FORGED,
    of_bore(50, 100, "plain cast pistons of older design", ANSWERS),
];
const CLEARANCE_TRACK: &[CommonRule] = &[
    CAST,
    FORGED,
    of_bore(90, 125, "forged pistons of low-silicon alloy", PRACTICE),
];
const CLEARANCE_BOOSTED: &[CommonRule] = &[
    CAST,
    FORGED,
    of_bore(
        110,
        160,
        "forged pistons of low-silicon alloy with boost or in endurance",
        PRACTICE,
    ),
];

/// The common rules for a quantity of a kind in this use, strictest first
/// where they follow each other; none where the trade has no general one.
#[must_use]
pub fn common_rules(kind: Kind, quantity: Quantity, machine_use: Use) -> &'static [CommonRule] {
    let by_use = |rules: &'static [CommonRule]| match (machine_use, rules) {
        (Use::Street | Use::Towing, [_, on_the_road @ ..]) => on_the_road,
        _ => rules,
    };
    match (kind, quantity) {
        (Kind::Bore, Quantity::OutOfRound) => by_use(BORE_OUT_OF_ROUND),
        (Kind::Bore, Quantity::Taper) => by_use(BORE_TAPER),
        (
            Kind::MainJournal | Kind::RodJournal,
            Quantity::OutOfRound | Quantity::Taper | Quantity::Barrel,
        ) => JOURNAL,
        (Kind::Piston, Quantity::Clearance) => match machine_use {
            Use::Street | Use::Towing => CLEARANCE,
            Use::Track => CLEARANCE_TRACK,
            Use::Boosted => CLEARANCE_BOOSTED,
        },
        _ => &[],
    }
}

/// What the common rules say of a value; `None` where there are none.
pub(super) fn guide(view: &View<'_>, key: FindingKey, value: Exact) -> Option<Guide> {
    let rules = rules(view, key);
    let amount = match key.quantity {
        Quantity::OutOfRound | Quantity::Taper | Quantity::Barrel => value.abs(),
        _ => value,
    };
    let inside = |rule: &&Rule| rule.low <= amount && amount <= rule.high;
    let word = match rules.iter().filter(inside).count() {
        _ if rules.is_empty() => return None,
        0 => GuideWord::OutsideLoosest,
        all if all == rules.len() => GuideWord::InsideStrictest,
        _ => GuideWord::RulesDisagree,
    };
    Some(Guide { word, rules })
}

fn rules(view: &View<'_>, key: FindingKey) -> Vec<Rule> {
    let kind = key.feature.kind;
    if key.quantity == Quantity::Barrel {
        // A barrel is judged as a taper is, so what the manual says of taper
        // goes before what the trade says.
        let taper = view.limits(kind, Quantity::Taper);
        if !taper.given.is_empty() {
            let high = taper.limits.service.high.or(taper.limits.new.high);
            let rule = high.map(|high| Rule {
                low: Exact::ZERO,
                high,
                common: &AS_TAPER,
            });
            return rule.into_iter().collect();
        }
    }
    let common = common_rules(kind, key.quantity, view.session.machine_use());
    let rule = |common| in_lengths(common, || bore_size(view, key));
    common.iter().filter_map(rule).collect()
}

fn in_lengths(common: &'static CommonRule, bore: impl FnOnce() -> Option<Exact>) -> Option<Rule> {
    let one = if common.of_bore {
        bore()?
    } else {
        Exact::new(Unit::Inch.quanta().into(), 1)
    };
    let steps = |n: u16| Exact::new(one.numerator() * i128::from(n), one.denominator() * 100_000);
    Some(Rule {
        low: steps(common.low),
        high: steps(common.high),
        common,
    })
}

/// What the bore around a piston was made to, or else its mean size now.
fn bore_size(view: &View<'_>, key: FindingKey) -> Option<Exact> {
    let bore = Feature {
        kind: Kind::Bore,
        ..key.feature
    };
    let size = view.nominal(Kind::Bore).or_else(|| {
        let worn = view
            .stations_of(bore)
            .filter(|(station, _)| station.level != Level::Reference);
        let worn: Vec<_> = worn.map(|(_, weights)| weights).collect();
        let all: Vec<_> = worn.iter().collect();
        (!all.is_empty()).then(|| Weights::mean(&all))
    });
    view.value(&size?)
}
