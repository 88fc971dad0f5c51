//! Session → what a plan for the set is made from.
//!
//! What a plan needs is told here in parts and indices; which feature that is
//! follows from the position, which is one more than the index.

mod aside;
mod looks;
mod pins;
mod rows;
mod volume;

pub use aside::CrossCheck;
pub use pins::{choice, feature_of, word};
pub use volume::{Volumes, volumes};

use super::view::View;
use super::{Assessment, RULE, clearance};
use crate::quantity::{Entered, Exact, Size, Unit, Weights};
use crate::remedy::{self, Cylinder, Job, LIGHT_HONE, Paired, Plan, Prover, Row, Stock, WornBore};
use crate::session::{
    Bound, Dimension, Direction, Feature, Kind, Level, Quantity, Session, Station,
};
use crate::uncertainty::{Draw, Measured, Source, SourceId};
use crate::verdict::{Band, Decision, Verdict};

/// What to do with the parts of a session, and why.
#[derive(Clone, Debug)]
pub struct Advice {
    /// What the plan was made from.
    pub job: Job,
    /// The plan.
    pub plan: Plan,
    /// What sorting the pistons to the bores would gain, where both run again.
    pub pairing: Option<Paired>,
    /// Sizes of ground journals by the person's own readings.
    pub cross_checks: Vec<CrossCheck>,
    /// Features without limits that lie outside all common rules, so that
    /// nothing is taken to be good there.
    pub outside_all_rules: Vec<Feature>,
}

/// What a bar is taken to stand off the axis of a bore where nobody said:
/// 0.0005 in, our own choice.
pub const BAR_OFFSET: Exact = tenths(5);

/// What the bar leaves for the hone, on diameter, where nobody said: 0.003 in
/// (trade guide for machine shops).
pub const HONING_ALLOWANCE: Exact = tenths(30);

/// The doubt of the wall of a shell that is bought: 0.0001 in either way
/// (common practice: what a ball anvil repeats within).
const NEW_WALL: Size = Size::from_quanta(2 * 25_400);

const fn tenths(number: i64) -> Exact {
    Exact::whole(number * Unit::Inch.quanta() / 10_000)
}

/// What to do with the parts of a session.
#[must_use]
pub fn advise(session: &Session, assessment: &Assessment) -> Advice {
    let mut making = Making::new(session, assessment);
    let job = making.job();
    let plan = remedy::plan(&job, &making.prover());
    let journals = making.cross_checks(&job, &plan);
    let prover = making.prover();
    let checked = |(row, journal): (Row, Measured)| CrossCheck {
        row,
        size: journal.value(),
        guard: prover.guard(&journal),
    };
    Advice {
        pairing: making.pairing(&job, &plan, &prover),
        cross_checks: journals.into_iter().map(checked).collect(),
        outside_all_rules: making.outside_all_rules(),
        job,
        plan,
    }
}

/// The steps in which parts of a kind can be had: as listed, else what is
/// mostly stocked (common practice).
#[must_use]
pub fn stocked(session: &Session, kind: Kind) -> Vec<Entered> {
    session.stock(kind).unwrap_or_else(|| {
        let unit = session.display_unit();
        let steps: &[&str] = match (kind, unit) {
            (Kind::Piston, Unit::Inch) => &["0.010", "0.020", "0.030", "0.040", "0.060"],
            (Kind::Piston, Unit::Millimetre) => &["0.25", "0.50", "0.75", "1.00"],
            (_, Unit::Inch) => &["0.001", "0.002", "0.010", "0.020", "0.030"],
            (_, Unit::Millimetre) => &["0.025", "0.050", "0.25", "0.50", "0.75"],
        };
        let parsed = steps.iter().map(|step| Entered::parse(step, unit));
        parsed.flatten().collect()
    })
}

pub(super) struct Making<'a> {
    view: View<'a>,
    session: &'a Session,
    assessment: &'a Assessment,
    /// Those of the readings, and those of what is bought.
    sources: Vec<Source>,
    /// Numbers of draws handed out so far.
    draws: usize,
}

impl<'a> Making<'a> {
    fn new(session: &'a Session, assessment: &'a Assessment) -> Self {
        let view = View::new(session);
        let sources = view.doubts.sources().to_vec();
        Self {
            view,
            session,
            assessment,
            sources,
            draws: 0,
        }
    }

    fn prover(&self) -> Prover<'_> {
        Prover {
            sources: &self.sources,
            factors: &self.view.factors,
            rule: RULE,
        }
    }

    fn job(&mut self) -> Job {
        let session = self.session;
        let standard = self.standard(Kind::Bore);
        let wanted = self.band(Kind::Piston, Quantity::Clearance).new;
        let target = middle(&wanted);
        let cylinders = session.features_of(Kind::Bore);
        let cylinders = cylinders.map(|bore| self.cylinder(bore, standard, target));
        let cylinders = cylinders.collect();
        let pistons = session.features_of(Kind::Piston);
        let pistons = pistons.map(|piston| self.piston(piston)).collect();
        let given = |name| {
            session
                .length(name)
                .map(|length| Exact::from(length.size()))
        };
        let mut job = Job {
            cylinders,
            pistons,
            looks: looks::looks(session),
            alignment: None,
            straightness: self.straightness(),
            standard,
            stock: self.stock(),
            honing: given(Dimension::HoningAllowance).unwrap_or(HONING_ALLOWANCE),
            light_hone: LIGHT_HONE,
            greatest: given(Dimension::GreatestBore).map(|bore| bore - standard),
            allowed: self
                .band(Kind::Piston, Quantity::Clearance)
                .service_or_new(),
            wanted,
            target,
            mains: self.bearings(Row::Mains),
            rods: self.bearings(Row::Rods),
            measured_later: true,
            pins: Vec::new(),
            prices: session.prices(),
        };
        job.pins = pins::pins(session, &job);
        job
    }

    fn cylinder(&mut self, bore: Feature, standard: Exact, target: Exact) -> Cylinder {
        let (reference, worn): (Vec<_>, Vec<_>) = self
            .view
            .stations_of(bore)
            .partition(|(station, _)| station.level == Level::Reference);
        let largest = self.extreme(&worn, |a, b| b < a);
        let largest = largest.unwrap_or_else(|| Measured::new(standard, &[]));
        let reference = if reference.is_empty() {
            // A block that was bored before has worn from there.
            let bored = self.session.nominal(Kind::Bore).map(Exact::from);
            let bored = bored.filter(|made| *made != standard);
            bored.and_then(|_| self.measured(&self.view.nominal(Kind::Bore)?))
        } else {
            let all: Vec<_> = reference.iter().map(|(_, weights)| weights).collect();
            self.measured(&Weights::mean(&all))
        };
        let offset = self.session.length(Dimension::BarOffset);
        let offset = offset.map_or(BAR_OFFSET, |length| length.size().into());
        let across = |(station, _): &&(Station, Weights)| station.direction == Direction::D0;
        let across: Vec<_> = worn.iter().filter(across).cloned().collect();
        let piston = Feature {
            kind: Kind::Piston,
            ..bore
        };
        let clearances = clearance::all(&self.view, piston);
        let clearances: Vec<_> = clearances
            .values()
            .filter_map(|w| self.measured(w))
            .collect();
        let ends = |all: &[Measured]| farther(all, target);
        let sizes: Vec<_> = across
            .iter()
            .filter_map(|(_, w)| self.measured(w))
            .collect();
        let smallest = sizes.iter().min_by_key(|size| size.value()).cloned();
        let greatest = sizes.into_iter().max_by_key(Measured::value);
        Cylinder {
            worn: WornBore {
                largest,
                reference,
                score: self.amount(Kind::BoreScore, bore.position),
                offset: Some(Measured::new(offset, &[])),
            },
            form: self.form(
                bore,
                &[
                    Quantity::Size,
                    Quantity::Wear,
                    Quantity::OutOfRound,
                    Quantity::Taper,
                ],
            ),
            bore: greatest.or(smallest),
            clearance: ends(&clearances),
        }
    }

    /// What is proved of a piston by itself; without limits of its own its
    /// clearance decides, as wear of bore and piston add up (common practice).
    fn piston(&self, piston: Feature) -> Option<Decision> {
        let own = self.form(piston, &[Quantity::Size]);
        let clearances = self.assessment.of(piston);
        let is_outside = clearances
            .filter(|finding| finding.key.quantity == Quantity::Clearance)
            .any(aside::is_outside_all_rules);
        let is_limited = !self.band(Kind::Piston, Quantity::Size).is_open();
        let is_read = self.view.stations_of(piston).next().is_some();
        if is_limited {
            own
        } else if is_outside {
            Some(Decision::Open)
        } else {
            is_read.then_some(Decision::In)
        }
    }

    /// Standard pistons, and those of each oversize, as their maker makes
    /// them where that is known.
    fn stock(&self) -> Vec<Stock> {
        let standard = self.made_to(Kind::Piston);
        let of = |over: Exact| Stock {
            over,
            piston: standard.map(|standard| standard + over),
        };
        let steps = stocked(self.session, Kind::Piston).into_iter();
        let steps = steps.map(|step| of(step.size().into()));
        core::iter::once(of(Exact::ZERO)).chain(steps).collect()
    }

    fn straightness(&self) -> Option<Decision> {
        let mains = self.session.features_of(Kind::RunOut);
        let quantities = [Quantity::Size, Quantity::Alignment];
        let each = mains.filter_map(|main| self.form(main, &quantities));
        each.reduce(Decision::and)
    }

    /// What is proved of a feature by these of its findings; `None` where
    /// nothing was read or no limit is given.
    fn form(&self, feature: Feature, quantities: &[Quantity]) -> Option<Decision> {
        self.view.stations_of(feature).next()?;
        let findings = self.assessment.of(feature);
        let counts = |finding: &&super::Finding| {
            finding.key.which.decides() && quantities.contains(&finding.key.quantity)
        };
        let each = findings.filter(counts).filter_map(|finding| {
            let is_limited = !finding.limits.limits.is_open();
            match finding.decided() {
                // Of what lies outside all common rules nothing is taken to
                // be good.
                Some(verdict) => decision(verdict)
                    .or_else(|| aside::is_outside_all_rules(finding).then_some(Decision::Open)),
                // How far it wore says no more than its size, where that was
                // judged.
                None if finding.key.quantity == Quantity::Wear => None,
                None => is_limited.then_some(Decision::Open),
            }
        });
        each.reduce(Decision::and)
    }

    fn band(&self, kind: Kind, quantity: Quantity) -> crate::verdict::Limits {
        self.view.limits(kind, quantity).limits
    }

    /// The size as made by the manual: the end that does not wear.
    fn made_to(&self, kind: Kind) -> Option<Exact> {
        let unworn = if kind.is_hole() {
            [Bound::NewLow, Bound::NewHigh]
        } else {
            [Bound::NewHigh, Bound::NewLow]
        };
        let given = |bound| self.session.limit(kind, Quantity::Size, bound);
        let of_manual = unworn.into_iter().find_map(given);
        let size = of_manual.map(|size| size.size());
        size.or_else(|| self.session.nominal(kind)).map(Exact::from)
    }

    /// The standard size of a kind, from which steps count; where nobody gave
    /// it, the least worn there is.
    fn standard(&self, kind: Kind) -> Exact {
        self.made_to(kind).unwrap_or_else(|| {
            let of_kind = self.view.stations.keys().filter(|s| s.kind == kind);
            let sizes = of_kind.filter_map(|station| self.view.value(&self.view.at(*station)?));
            let least_worn = if kind.is_hole() {
                sizes.min()
            } else {
                sizes.max()
            };
            least_worn.unwrap_or(Exact::ZERO)
        })
    }

    fn measured(&self, weights: &Weights) -> Option<Measured> {
        Measured::weighted(weights, &self.view.measured)
    }

    /// What was read of a kind that is read at one place.
    fn amount(&self, kind: Kind, position: u8) -> Option<Measured> {
        let station = Station::new(kind, position, Level::Centre, Direction::D0);
        self.measured(&self.view.at(station)?)
    }

    fn extreme(
        &self,
        stations: &[(Station, Weights)],
        precedes: fn(Exact, Exact) -> bool,
    ) -> Option<Measured> {
        let weights = super::feature::extreme(&self.view, stations, precedes)?;
        self.measured(&weights)
    }

    /// A value with one more error, out of a source of its own.
    fn doubted(&mut self, value: Exact, source: Source) -> Measured {
        let place = self.sources.iter().position(|known| *known == source);
        let place = place.unwrap_or_else(|| {
            self.sources.push(source);
            self.sources.len() - 1
        });
        // Above all numbers that readings have.
        self.draws += 1;
        let draw = Draw {
            number: usize::MAX - self.draws,
            source: SourceId(place),
        };
        Measured::new(value, &[(draw, 1.0)])
    }
}

/// Of several values the one farther from what is wanted.
fn farther(all: &[Measured], target: Exact) -> Option<Measured> {
    let apart = |one: &&Measured| (one.value() - target).abs();
    all.iter().max_by_key(apart).cloned()
}

/// The middle of a band; of half a band its end, of none nothing.
fn middle(band: &Band) -> Exact {
    match (band.low, band.high) {
        (Some(low), Some(high)) => {
            let sum = low + high;
            Exact::new(sum.numerator(), 2 * sum.denominator())
        }
        (low, high) => low.or(high).unwrap_or(Exact::ZERO),
    }
}

/// What a verdict means for using a part again. An oval that two directions
/// do not show holds nothing up: that is told, and common practice reads
/// bores in two.
const fn decision(verdict: Verdict) -> Option<Decision> {
    match verdict {
        Verdict::WithinNew | Verdict::WithinService | Verdict::NotSeen => Some(Decision::In),
        Verdict::BeyondLimit | Verdict::OutsideNew => Some(Decision::Out),
        Verdict::TooClose | Verdict::DoNotAssemble => Some(Decision::Open),
        Verdict::NoLimit => None,
    }
}
