//! What the trade commonly says where the manual is silent.
//!
//! A rule of thumb fills a blank and decides nothing: a guide stands beside
//! a comparison and never enters it. Only what is said of engines in general
//! stands here, nothing that comes from the manual of one engine; public
//! manuals differ by a factor of ten on one limit, so none of these is a
//! default.

use super::FindingKey;
use super::oil::Bearing;
use super::view::View;
use crate::quantity::{Exact, Unit};
use crate::session::{Feature, Kind, Quantity, Use};

/// A rule of thumb of the trade, as it is said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CommonRule {
    /// Least, in steps of 0.000001 in or a millionth of a size. Of a shape
    /// nothing, and its amount counts, whichever way it goes.
    pub low: u16,
    /// Greatest, in the same steps.
    pub high: u16,
    /// What both are parts of.
    pub per: Per,
    /// What comes on top of both, in steps of 0.000001 in.
    pub plus: u16,
    /// Where it holds.
    pub only: Only,
    /// What it is said of.
    pub text: &'static str,
    /// Who says it.
    pub source: &'static str,
}

/// What the numbers of a common rule are parts of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Per {
    /// An inch: they are lengths.
    Inch,
    /// The size of the bore.
    Bore,
    /// The diameter of the journal.
    Journal,
}

/// Where a common rule holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Only {
    /// Always.
    Always,
    /// Of a shape whose sign is plus: of a housing, longer square to the
    /// joint of its cap.
    Plus,
    /// Of one whose sign is minus.
    Minus,
    /// With one rod on a throw.
    OneRod,
    /// With two.
    TwoRods,
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
const ARTICLES: &str = "common practice; 0.001 per inch and the more also in trade articles";
const GAPS: &str = "common practice; the greatest from old-engine and trade rebuild notes";
const PARTLY: &str = "common practice and in part from memory";
const SERIES: &str = "general part of a series of repair manuals";

const fn between(low: u16, high: u16, text: &'static str, source: &'static str) -> CommonRule {
    CommonRule {
        low,
        high,
        per: Per::Inch,
        plus: 0,
        only: Only::Always,
        text,
        source,
    }
}

const fn up_to(high: u16, text: &'static str, source: &'static str) -> CommonRule {
    between(0, high, text, source)
}

impl CommonRule {
    const fn of(self, per: Per) -> Self {
        Self { per, ..self }
    }

    const fn only(self, only: Only) -> Self {
        Self { only, ..self }
    }
}

/// The first is for hard use only.
const BORE_OUT_OF_ROUND: &[CommonRule] = &[
    up_to(500, "as made", PRACTICE),
    up_to(2_000, "used again on the street (strict)", PRACTICE),
    up_to(3_000, "used again on the street", PRACTICE),
    up_to(5_000, "used again at the most", NOTES),
];

/// The first is for hard use only.
const BORE_TAPER: &[CommonRule] = &[
    up_to(1_000, "good", NOTES),
    up_to(3_000, "new rings will do", NOTES),
    up_to(5_000, "new rings are doubtful", NOTES),
    up_to(6_000, "to be bored above it", NOTES),
];

const JOURNAL: &[CommonRule] = &[up_to(500, "small car engines", PRACTICE)];

const HOUSING_OUT_OF_ROUND: &[CommonRule] = &[
    up_to(300, "as made", PRACTICE),
    up_to(500, "used again where longer square to the joint", PRACTICE).only(Only::Plus),
    up_to(1_000, "used again where longer near the joint", PRACTICE).only(Only::Minus),
];
const HOUSING_TAPER: &[CommonRule] = &[up_to(400, "used again", PRACTICE)];

/// Of a barrel, where the manual limits the taper.
static AS_TAPER: CommonRule = up_to(0, "as the manual's taper", PRACTICE);

const CAST: CommonRule = between(1_000, 2_000, "cast pistons in general", PRACTICE);
const FORGED: CommonRule = between(
    2_000,
    4_000,
    "forged pistons in general; more with boost or racing heat",
    PRACTICE,
);

/// Piston-to-wall on the road; with hard use the last gives way to what is
/// said of it.
const CLEARANCE: &[CommonRule] = &[
    CAST,
    FORGED,
    between(500, 1_000, "plain cast pistons of older design", ANSWERS).of(Per::Bore),
];
const CLEARANCE_TRACK: &[CommonRule] = &[
    CAST,
    FORGED,
    between(900, 1_250, "forged pistons of low-silicon alloy", PRACTICE).of(Per::Bore),
];
const CLEARANCE_BOOSTED: &[CommonRule] = &[
    CAST,
    FORGED,
    between(
        1_100,
        1_600,
        "forged pistons of low-silicon alloy with boost or in endurance",
        PRACTICE,
    )
    .of(Per::Bore),
];

const OIL: CommonRule = between(750, 1_250, "ordinary use", ARTICLES).of(Per::Journal);
const OIL_CLEARANCE: &[CommonRule] = &[OIL];
const OIL_CLEARANCE_HARD: &[CommonRule] = &[CommonRule {
    plus: 500,
    text: "hard use: 0.0005 in more than ordinary",
    ..OIL
}];

const PIN_IN_PISTON: &[CommonRule] = &[between(200, 600, "floating pins", PARTLY)];
const PIN_IN_ROD: &[CommonRule] = &[between(300, 800, "floating pins in a bush", PARTLY)];

const fn gap(least: u16, text: &'static str) -> CommonRule {
    between(least, 8_000, text, GAPS).of(Per::Bore)
}

const RING_GAP: &[CommonRule] = &[
    gap(4_000, "target as the least; worn at the greatest"),
    gap(3_000, "the least there is; worn at the greatest"),
];
const RING_GAP_TRACK: &[CommonRule] = &[
    gap(4_500, "target of hard use as the least"),
    gap(3_000, "the least there is; worn at the greatest"),
];
const RING_GAP_BOOSTED: &[CommonRule] = &[
    gap(5_500, "target of much boost as the least"),
    gap(5_000, "target of mild boost as the least"),
    gap(3_000, "the least there is; worn at the greatest"),
];

/// As wide as 1.25 times the gap of the top ring; the least as there.
const SECOND_RING_GAP: &[CommonRule] = &[
    gap(5_000, "1.25 times the target of the top ring"),
    gap(4_000, "as the target of the top ring"),
];
const SECOND_RING_GAP_TRACK: &[CommonRule] = &[
    gap(5_625, "1.25 times the target of the top ring"),
    gap(4_500, "as the target of the top ring"),
];
const SECOND_RING_GAP_BOOSTED: &[CommonRule] = &[
    gap(
        6_875,
        "1.25 times the target of the top ring with much boost",
    ),
    gap(5_500, "as the target of the top ring with much boost"),
    gap(5_000, "as the target of the top ring with mild boost"),
];

const RING_SIDE: &[CommonRule] = &[
    between(1_200, 3_500, "as made", PRACTICE),
    between(1_200, 4_000, "used again (strict)", PRACTICE),
    between(1_200, 6_000, "used again at the most", PRACTICE),
];

const RUN_OUT: &[CommonRule] = &[
    up_to(1_000, "good", PRACTICE),
    up_to(2_000, "used again: short crankshafts", PRACTICE),
    up_to(
        4_000,
        "used again: the centre of long crankshafts",
        PRACTICE,
    ),
];

const END_PLAY: &[CommonRule] = &[
    between(3_000, 8_000, "as made", PRACTICE),
    between(3_000, 12_000, "used again (strict)", PRACTICE),
    between(3_000, 18_000, "used again at the most", PRACTICE),
];

const ROD_SIDE: &[CommonRule] = &[
    between(4_000, 12_000, "one rod on a throw: as made", PRACTICE).only(Only::OneRod),
    between(4_000, 16_000, "one rod on a throw: used again", PRACTICE).only(Only::OneRod),
    between(8_000, 20_000, "two rods on a throw: as made", PRACTICE).only(Only::TwoRods),
    between(8_000, 25_000, "two rods on a throw: used again", PRACTICE).only(Only::TwoRods),
];

const FLAT: &[CommonRule] = &[
    up_to(
        2_000,
        "with a gasket of steel layers or a thin aluminium head",
        PRACTICE,
    ),
    up_to(6_000, "in general over the whole length", SERIES),
];

/// The common rules for a quantity of a kind in this use, strictest first
/// where they follow each other; none where the trade has no general one.
#[must_use]
pub fn common_rules(kind: Kind, quantity: Quantity, machine_use: Use) -> &'static [CommonRule] {
    let by_use = |rules: &'static [CommonRule]| match (machine_use, rules) {
        (Use::Street | Use::Towing, [_, on_the_road @ ..]) => on_the_road,
        _ => rules,
    };
    let harder = |road, track, boosted| match machine_use {
        Use::Street | Use::Towing => road,
        Use::Track => track,
        Use::Boosted => boosted,
    };
    match (kind, quantity) {
        (Kind::Bore, Quantity::OutOfRound) => by_use(BORE_OUT_OF_ROUND),
        (Kind::Bore, Quantity::Taper) => by_use(BORE_TAPER),
        (
            Kind::MainJournal | Kind::RodJournal,
            Quantity::OutOfRound | Quantity::Taper | Quantity::Barrel,
        ) => JOURNAL,
        (Kind::MainHousing | Kind::BigEnd, Quantity::OutOfRound) => HOUSING_OUT_OF_ROUND,
        (Kind::MainHousing | Kind::BigEnd, Quantity::Taper) => HOUSING_TAPER,
        (Kind::Piston, Quantity::Clearance) => {
            harder(CLEARANCE, CLEARANCE_TRACK, CLEARANCE_BOOSTED)
        }
        (Kind::MainShell | Kind::RodShell, Quantity::Clearance) => {
            harder(OIL_CLEARANCE, OIL_CLEARANCE_HARD, OIL_CLEARANCE_HARD)
        }
        (Kind::PinBore, Quantity::Clearance) => PIN_IN_PISTON,
        (Kind::SmallEnd, Quantity::Clearance) => PIN_IN_ROD,
        (Kind::TopRingGap, Quantity::Size) => harder(RING_GAP, RING_GAP_TRACK, RING_GAP_BOOSTED),
        (Kind::SecondRingGap, Quantity::Size) => harder(
            SECOND_RING_GAP,
            SECOND_RING_GAP_TRACK,
            SECOND_RING_GAP_BOOSTED,
        ),
        (Kind::TopRingSide | Kind::SecondRingSide, Quantity::Size) => RING_SIDE,
        (Kind::RunOut, Quantity::Size) => RUN_OUT,
        (Kind::EndPlay, Quantity::Size) => END_PLAY,
        (Kind::RodSide, Quantity::Size) => ROD_SIDE,
        (Kind::Deck | Kind::Head, Quantity::Size) => FLAT,
        _ => &[],
    }
}

/// What the common rules say of a value; `None` where there are none.
pub(super) fn guide(view: &View<'_>, key: FindingKey, value: Exact) -> Option<Guide> {
    let rules = rules(view, key, value);
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

fn rules(view: &View<'_>, key: FindingKey, value: Exact) -> Vec<Rule> {
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
    let two_rods = 1 < view.session.rods_per_throw();
    let holds = |rule: &&CommonRule| match rule.only {
        Only::Always => true,
        Only::Plus => !value.is_negative(),
        Only::Minus => value.is_negative(),
        Only::OneRod => !two_rods,
        Only::TwoRods => two_rods,
    };
    let common = common_rules(kind, key.quantity, view.session.machine_use());
    let rule = |common| in_lengths(view, key.feature, common);
    common.iter().filter(holds).filter_map(rule).collect()
}

/// A rule in lengths; `None` where the size it goes by is not known.
fn in_lengths(view: &View<'_>, feature: Feature, common: &'static CommonRule) -> Option<Rule> {
    let inch = Exact::whole(Unit::Inch.quanta());
    let one = match common.per {
        Per::Inch => inch,
        Per::Bore => view.nominal_or_mean(Feature {
            kind: Kind::Bore,
            ..feature
        })?,
        Per::Journal => view.nominal_or_mean(Bearing::of(view.session, feature)?.journal)?,
    };
    let steps = |of: Exact, n: u16| {
        Exact::new(of.numerator() * i128::from(n), of.denominator() * 1_000_000)
    };
    let length = |n| steps(one, n) + steps(inch, common.plus);
    Some(Rule {
        low: length(common.low),
        high: length(common.high),
        common,
    })
}
