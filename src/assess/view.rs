//! The standing readings of a session, arranged by feature.

use litemap::LiteMap;

use super::limits;
use super::{Finding, FindingKey, Outcome, UsedLimits};
use crate::form::{Place, Spot};
use crate::quantity::{Size, Weights};
use crate::session::{Feature, Kind, Quantity, Session, Stamp, Station};
use crate::verdict::{Comparison, compare};

/// A session arranged for assessing: one list of sizes, and for every
/// station the readings in it.
pub(super) struct View<'a> {
    pub(super) session: &'a Session,
    sizes: Vec<Size>,
    ids: Vec<Stamp>,
    stations: LiteMap<Station, Vec<usize>>,
    limits: LiteMap<(Kind, Quantity), UsedLimits>,
}

impl<'a> View<'a> {
    pub(super) fn new(session: &'a Session) -> Self {
        let mut view = Self {
            session,
            sizes: Vec::new(),
            ids: Vec::new(),
            stations: LiteMap::new(),
            limits: LiteMap::new(),
        };
        for (id, reading) in session.standing() {
            let here = view.stations.entry(reading.station).or_default();
            here.push(view.sizes.len());
            view.sizes.push(reading.entered.size());
            view.ids.push(id);
        }
        for kind in Kind::ALL {
            for &(quantity, _) in crate::session::limit_keys(kind) {
                let used = limits::used(session, kind, quantity);
                view.limits.insert((kind, quantity), used);
            }
        }
        view
    }

    /// The mean of the readings at a station; `None` if nothing was read.
    pub(super) fn at(&self, station: Station) -> Option<Weights> {
        let readings = self.stations.get(&station)?;
        Some(Weights::mean_of(readings.iter().copied()))
    }

    /// Every station of a feature at which something was read, with its mean.
    pub(super) fn stations_of(&self, feature: Feature) -> impl Iterator<Item = (Station, Weights)> {
        self.stations
            .iter()
            .filter(move |(station, _)| Feature::of(**station) == feature)
            .map(|(station, here)| (*station, Weights::mean_of(here.iter().copied())))
    }

    /// A spot for the form room: levels become ranks along the axis.
    pub(super) fn spot(station: Station, weights: Weights) -> Spot {
        let levels = station.kind.levels();
        let rank = levels.iter().position(|level| *level == station.level);
        Spot {
            place: Place {
                along: rank.and_then(|r| u8::try_from(r).ok()).unwrap_or(u8::MAX),
                angle: station.direction.degrees(),
            },
            weights,
        }
    }

    /// The exact value of weights over the readings.
    pub(super) fn value(&self, weights: &Weights) -> Option<crate::quantity::Exact> {
        weights.value(&self.sizes)
    }

    /// Makes a finding of a value, or says that it was not measured.
    pub(super) fn finding(
        &self,
        key: FindingKey,
        weights: Option<&Weights>,
        missing: Vec<Station>,
    ) -> Finding {
        let limits = self
            .limits
            .get(&(key.feature.kind, key.quantity))
            .cloned()
            .unwrap_or_default();
        let outcome = match weights.and_then(|w| self.value(w)) {
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
        let terms = weights.map_or(&[][..], Weights::terms);
        let id = |&(index, _): &(usize, i64)| self.ids.get(index).copied();
        let readings = terms.iter().filter_map(id).collect();
        Finding {
            key,
            outcome,
            limits,
            readings,
            missing,
        }
    }
}
