//! The standing readings of a session, arranged by feature.

use litemap::LiteMap;

use super::{Doubts, doubt, guide, limits};
use super::{Finding, FindingKey, Outcome, RULE, Repeats, TwoWays, UsedLimits};
use crate::form::{Place, Spot};
use crate::quantity::{Exact, Size, Weights};
use crate::session::{Against, Feature, Kind, Level, Quantity, Reading, Session, Stamp, Station};
use crate::uncertainty::{Factors, Measured, Probability};
use crate::verdict::{Comparison, compare};

/// A session arranged for assessing: one list of sizes, and for every
/// station the readings in it.
///
/// Behind the readings the list has the sizes of settings, those the kinds
/// were made to, and for fitted shells a nothing that has the error of their
/// crush, so that weights take them in as well.
pub(super) struct View<'a> {
    pub(super) session: &'a Session,
    pub(super) sizes: Vec<Size>,
    pub(super) readings: Vec<(Stamp, &'a Reading)>,
    pub(super) stations: LiteMap<Station, Vec<usize>>,
    pub(super) set_to: Vec<SetOn>,
    pub(super) nominals: Vec<(Kind, usize)>,
    pub(super) crush: Vec<(Kind, usize)>,
    limits: LiteMap<(Kind, Quantity), UsedLimits>,
    /// The sizes with the errors they hold, at 20 °C.
    pub(super) measured: Vec<Measured>,
    pub(super) doubts: Doubts,
    pub(super) factors: Factors,
}

/// A setting on a feature.
pub(super) struct SetOn {
    pub(super) setting: Stamp,
    pub(super) on: Feature,
    /// The place of its size in the list.
    pub(super) index: usize,
}

impl<'a> View<'a> {
    pub(super) fn new(session: &'a Session) -> Self {
        let mut view = Self {
            session,
            sizes: Vec::new(),
            readings: Vec::new(),
            stations: LiteMap::new(),
            set_to: Vec::new(),
            nominals: Vec::new(),
            crush: Vec::new(),
            limits: LiteMap::new(),
            measured: Vec::new(),
            doubts: Doubts::default(),
            factors: Factors::default(),
        };
        for (id, reading) in session.standing() {
            // A deviation from nothing is no size; only a merged or damaged
            // copy can hold one.
            let Some(size) = session.size_of(reading) else {
                continue;
            };
            let here = view.stations.entry(reading.station).or_default();
            here.push(view.sizes.len());
            view.sizes.push(size);
            view.readings.push((id, reading));
        }
        for (id, setting) in &session.settings {
            let used = || {
                view.readings
                    .iter()
                    .any(|(_, reading)| reading.setting == *id)
            };
            if let Some(set) = &setting.value.set
                && let Against::Feature(partner) = set.against
                && used()
            {
                view.set_to.push(SetOn {
                    setting: *id,
                    on: partner,
                    index: view.sizes.len(),
                });
                view.sizes.push(set.size.size());
            }
        }
        for kind in Kind::ALL {
            if let Some(nominal) = session.nominal(kind) {
                view.nominals.push((kind, view.sizes.len()));
                view.sizes.push(nominal);
            }
        }
        for kind in [Kind::MainShell, Kind::RodShell] {
            if view.stations.keys().any(|station| station.kind == kind) {
                view.crush.push((kind, view.sizes.len()));
                view.sizes.push(Size::default());
            }
        }
        for kind in Kind::ALL {
            for &(quantity, _) in crate::session::limit_keys(kind) {
                let used = limits::used(session, kind, quantity);
                view.limits.insert((kind, quantity), used);
            }
        }
        (view.measured, view.doubts) = doubt::measured(&view);
        view
    }

    /// The mean of the readings at a station; `None` if nothing was read.
    pub(super) fn at(&self, station: Station) -> Option<Weights> {
        let readings = self.stations.get(&station)?;
        Some(Weights::mean_of(readings.iter().copied()))
    }

    /// The mean deviation at a station from the size at which the gauge was
    /// set on another feature; `None` if nothing was read that way.
    pub(super) fn direct(&self, station: Station, partner: Feature) -> Option<Weights> {
        let deviation = |index: &usize| {
            let (_, reading) = self.readings.get(*index)?;
            let is_it = |set: &&SetOn| set.setting == reading.setting && set.on == partner;
            let set = self.set_to.iter().find(is_it)?;
            let mean = |index| Weights::mean_of([index]);
            Some(&mean(*index) - &mean(set.index))
        };
        let deviations = self.stations.get(&station)?.iter().filter_map(deviation);
        let deviations: Vec<_> = deviations.collect();
        let all: Vec<_> = deviations.iter().collect();
        (!all.is_empty()).then(|| Weights::mean(&all))
    }

    /// The size a kind was made to, where somebody said it.
    pub(super) fn nominal(&self, kind: Kind) -> Option<Weights> {
        let (_, index) = self.nominals.iter().find(|(of, _)| *of == kind)?;
        Some(Weights::mean_of([*index]))
    }

    /// Nothing, with what the crush of fitted shells may be off by.
    pub(super) fn crush(&self, kind: Kind) -> Option<Weights> {
        let (_, index) = self.crush.iter().find(|(of, _)| *of == kind)?;
        Some(Weights::mean_of([*index]))
    }

    /// The mean of these places of a feature, each counting once; `None` if
    /// nothing was read there.
    pub(super) fn mean_of(
        &self,
        feature: Feature,
        counts: impl Fn(Station) -> bool,
    ) -> Option<Weights> {
        let all = self
            .stations_of(feature)
            .filter(|(station, _)| counts(*station));
        let all: Vec<_> = all.map(|(_, weights)| weights).collect();
        let each: Vec<_> = all.iter().collect();
        (!each.is_empty()).then(|| Weights::mean(&each))
    }

    /// What a kind was made to, or else the mean size of a feature of it now.
    pub(super) fn nominal_or_mean(&self, feature: Feature) -> Option<Exact> {
        let worn = |station: Station| station.level != Level::Reference;
        let size = self.nominal(feature.kind);
        let size = size.or_else(|| self.mean_of(feature, worn));
        self.value(&size?)
    }

    /// How far two ways to one value are apart, and how much of that their
    /// doubts allow; one of so many comparisons, either way.
    pub(super) fn two_ways(&self, ways: [&Weights; 2], of: usize) -> Option<TwoWays> {
        let [one, other] = ways;
        let apart = Measured::weighted(&(one - other), &self.measured)?;
        let several = u32::try_from(2 * of).unwrap_or(u32::MAX);
        let sure = Probability::per_million(RULE.to_convict_by_one_of(several));
        let combined = apart.combined(self.doubts.sources());
        Some(TwoWays {
            apart: apart.value().abs(),
            allowed: self.factors.guard_band(&combined, sure),
        })
    }

    /// Every station of a feature at which something was read, with its mean.
    pub(super) fn stations_of(&self, feature: Feature) -> impl Iterator<Item = (Station, Weights)> {
        self.stations
            .iter()
            .filter(move |(station, _)| Feature::of(**station) == feature)
            .map(|(station, here)| (*station, Weights::mean_of(here.iter().copied())))
    }

    /// Every station of the layout that was read more than once.
    pub(super) fn repeats(&self) -> Vec<Repeats> {
        let here = self.stations.iter();
        let here = here.filter(|(station, _)| self.session.has(Feature::of(**station)));
        here.filter_map(|(station, readings)| {
            let sizes = || readings.iter().filter_map(|index| self.sizes.get(*index));
            let spread = *sizes().max()? - *sizes().min()?;
            (1 < readings.len()).then(|| Repeats {
                station: *station,
                count: readings.len(),
                spread: spread.into(),
            })
        })
        .collect()
    }

    /// A spot for the form room: levels become ranks along the axis.
    pub(super) fn spot(station: Station, weights: Weights) -> Spot {
        Spot {
            place: Place {
                along: rank(station.kind, station.level),
                angle: station.direction.degrees(),
            },
            weights,
        }
    }

    /// The exact value of weights over the readings.
    pub(super) fn value(&self, weights: &Weights) -> Option<Exact> {
        weights.value(&self.sizes)
    }

    /// The limits of a quantity of a kind; none where the manual is silent.
    pub(super) fn limits(&self, kind: Kind, quantity: Quantity) -> UsedLimits {
        let limits = self.limits.get(&(kind, quantity));
        limits.cloned().unwrap_or_default()
    }

    /// Makes a finding of a value, or says that it was not measured.
    pub(super) fn finding(
        &self,
        key: FindingKey,
        weights: Option<&Weights>,
        missing: Vec<Station>,
    ) -> Finding {
        self.finding_among(key, weights, &[], missing)
    }

    /// Makes a finding of the worst of several values.
    #[inline(never)]
    pub(super) fn finding_among(
        &self,
        key: FindingKey,
        weights: Option<&Weights>,
        among: &[Weights],
        missing: Vec<Station>,
    ) -> Finding {
        let value = weights.and_then(|weights| self.value(weights));
        let mut finding = self.finding_of(key, value, weights, missing);
        // Of the parts of a finding the largest decides; it alone is weighed.
        let weights = weights.filter(|_| key.which.is_weighed());
        let sure = weights.and_then(|w| self.sure(key, w, among, &finding.limits));
        finding.sure = sure.map(Box::new);
        finding
    }

    /// Makes a finding of a value that rests on the readings of these
    /// weights, whatever they weigh in it.
    pub(super) fn finding_of(
        &self,
        key: FindingKey,
        value: Option<Exact>,
        weights: Option<&Weights>,
        missing: Vec<Station>,
    ) -> Finding {
        let limits = self.limits(key.feature.kind, key.quantity);
        let outcome = match value {
            None => Outcome::NotMeasured,
            Some(value) => {
                let comparison = compare(value, &limits.limits);
                let band = match comparison {
                    Comparison::InsideNew | Comparison::OutsideNew(_) => limits.limits.new,
                    _ => limits.limits.service,
                };
                Outcome::Value {
                    value,
                    comparison,
                    margin: band.margin(value),
                }
            }
        };
        let guide = match &outcome {
            Outcome::Value { value, .. } if limits.given.is_empty() => {
                guide::guide(self, key, *value)
            }
            _ => None,
        };
        let terms = weights.map_or(&[][..], Weights::terms);
        let id = |&(index, _): &(usize, i64)| self.readings.get(index).map(|(id, _)| *id);
        let readings = terms.iter().filter_map(id).collect();
        Finding {
            key,
            outcome,
            sure: None,
            detail: None,
            limits,
            guide,
            readings,
            missing,
        }
    }
}

/// The rank of a level along the axis of its kind.
pub(super) fn rank(kind: Kind, level: Level) -> u8 {
    let levels = (0_u8..).zip(kind.levels());
    let mut found = levels.filter(|(_, known)| **known == level);
    found.next().map_or(u8::MAX, |(rank, _)| rank)
}
