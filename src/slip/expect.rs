//! What is to be expected at a place, from what stands around it.

use litemap::LiteMap;

use super::bound;
use super::nominal::{machined_to, made};
use crate::quantity::{Deviation, Size};
use crate::session::{Direction, Feature, Kind, Reading, Session, Stamp, Station};

/// The standing readings of a session by their places.
pub(super) struct Neighbours<'a> {
    pub(super) session: &'a Session,
    /// In the order they were entered.
    entered: Vec<(Stamp, &'a Reading)>,
    /// The sizes read at each station.
    read: LiteMap<Station, Vec<(Stamp, Size)>>,
    /// The median of each.
    median: LiteMap<Station, i64>,
}

/// Where a size is to be expected, and how closely: a heavy-tailed scatter
/// about one or more centres.
pub(super) struct Expected {
    /// A centre, and how many times less likely than the first it is.
    centres: Vec<(i64, i128)>,
    /// The square of the scatter, in quanta squared.
    square: i128,
    /// True where the feature itself has been read.
    pub(super) own: bool,
    /// True where nothing of the kind has been read.
    pub(super) from_made: bool,
}

impl<'a> Neighbours<'a> {
    /// Of all that stand but at one station.
    pub(super) fn of(session: &'a Session, but: Option<Station>) -> Self {
        let standing = session.standing();
        let entered: Vec<_> = standing.filter(|(_, r)| Some(r.station) != but).collect();
        let mut read = LiteMap::<Station, Vec<(Stamp, Size)>>::new();
        for (id, reading) in &entered {
            if let Some(size) = session.size_of(reading) {
                read.entry(reading.station).or_default().push((*id, size));
            }
        }
        let mut median = LiteMap::new();
        for (station, sizes) in &read {
            if let Some(middle) = median_of(sizes.iter().map(|(_, size)| size.quanta())) {
                median.insert(*station, middle);
            }
        }
        Self {
            session,
            entered,
            read,
            median,
        }
    }

    /// What was entered before a reading, or all.
    pub(super) fn before(&self, itself: Option<Stamp>) -> &[(Stamp, &'a Reading)] {
        let is_before = |(id, _): &(Stamp, &Reading)| itself.is_none_or(|itself| *id < itself);
        let end = self.entered.partition_point(is_before);
        self.entered.get(..end).unwrap_or_default()
    }

    /// What is to be expected at a station of a reading that scatters by
    /// `noise`, itself left out; `None` where nothing is known.
    pub(super) fn expected(
        &self,
        station: Station,
        itself: Option<Stamp>,
        noise_square: i128,
    ) -> Option<Expected> {
        let at = |centre, spread: i64, own| Expected {
            centres: vec![(centre, 1)],
            square: square(spread) + noise_square,
            own,
            from_made: false,
        };
        let here = self.read.get(&station).into_iter().flatten();
        let here = here.filter(|(id, _)| Some(*id) != itself);
        if let Some(centre) = median_of(here.map(|(_, size)| size.quanta())) {
            return Some(at(centre, 0, true));
        }
        let kind = station.kind;
        let mut predictions = self.on_the_feature(station);
        let mut prior = bound::within(kind);
        let own = !predictions.is_empty();
        if !own {
            predictions = self.beside(station);
            prior = bound::between(kind);
        }
        let Some(centre) = median_of(predictions.iter().copied()) else {
            return self.worn(station, noise_square);
        };
        let count = i64::try_from(predictions.len()).unwrap_or(i64::MAX) - 1;
        let apart = predictions.iter().map(|p| (p - centre).abs());
        // Half as much again makes a standard deviation of a median distance.
        let spread = median_of(apart).unwrap_or(0) * 3 / 2;
        let spread = (count * spread + bound::PRIOR * prior) / (count + bound::PRIOR);
        Some(at(centre, spread, own))
    }

    /// What every other place read on the feature says of this one, by how
    /// both differ on every other feature where both are read; where there is
    /// none, that they are alike.
    fn on_the_feature(&self, station: Station) -> Vec<i64> {
        let own = |s: &Station| Feature::of(*s) == Feature::of(station) && *s != station;
        let own = || self.median.iter().filter(|(s, _)| own(s));
        let there: Vec<(u8, i64)> = self.others(station).collect();
        let mut found = Vec::new();
        for (place, value) in own() {
            for (position, here) in &there {
                let place = Station {
                    position: *position,
                    ..*place
                };
                found.extend(self.median.get(&place).map(|other| value + here - other));
            }
        }
        // A piston is ground oval, by more than any wear.
        if found.is_empty() && station.kind != Kind::Piston {
            found.extend(own().map(|(_, value)| *value));
        }
        found
    }

    /// What the same place reads on the other features of the kind; where it
    /// was not read, what anything of the kind reads.
    fn beside(&self, station: Station) -> Vec<i64> {
        let same: Vec<i64> = self.others(station).map(|(_, value)| value).collect();
        if same.is_empty() && station.kind != Kind::Piston {
            let of_kind = self.median.iter().filter(|(s, _)| s.kind == station.kind);
            let others = of_kind.filter(|(s, _)| **s != station);
            return others.map(|(_, value)| *value).collect();
        }
        same
    }

    fn others(&self, station: Station) -> impl Iterator<Item = (u8, i64)> {
        let same = move |s: &Station| {
            s.position != station.position
                && *s
                    == Station {
                        position: s.position,
                        ..station
                    }
        };
        let all = self.median.iter();
        all.filter(move |(s, _)| same(s))
            .map(|(s, value)| (s.position, *value))
    }

    /// What a part that has run measures, from what its kind was made to or
    /// may have been machined to; of a piston, from its bore.
    fn worn(&self, station: Station, noise_square: i128) -> Option<Expected> {
        let kind = station.kind;
        if kind == Kind::Piston && station.direction != Direction::D0 {
            return None;
        }
        let (from, (off, spread), steps) = match made(self.session, kind) {
            Some(made) => (made.size(), bound::worn(kind), machined_to(kind, &made)),
            None if kind == Kind::Piston => {
                (self.bore_of(station)?, bound::IN_ITS_BORE, Vec::new())
            }
            None => return None,
        };
        let centre = |size: Size| (size + Deviation::from_quanta(off)).quanta();
        let mut centres = vec![(centre(from), 1)];
        let steps = steps.iter().map(|s| (centre(s.size()), bound::MACHINED));
        centres.extend(steps);
        Some(Expected {
            centres,
            square: square(spread) + noise_square,
            own: false,
            from_made: true,
        })
    }

    /// The smallest reading of the bore a piston runs in, else what bores
    /// were made to.
    pub(super) fn bore_of(&self, piston: Station) -> Option<Size> {
        let bore = Feature {
            kind: Kind::Bore,
            position: piston.position,
        };
        self.unworn(bore)
            .or_else(|| made(self.session, Kind::Bore).map(|made| made.size()))
    }

    /// The place of a feature that has worn least: of a bore the smallest, of
    /// anything else the largest.
    pub(super) fn unworn(&self, feature: Feature) -> Option<Size> {
        let read = self.median.iter();
        let read = read.filter(|(s, _)| Feature::of(**s) == feature);
        let sizes = read.map(|(_, value)| Size::from_quanta(*value));
        if feature.kind.is_hole() {
            sizes.min()
        } else {
            sizes.max()
        }
    }

    /// The feature of a kind whose readings a size is nearest to, and how far
    /// from their median.
    pub(super) fn nearest(&self, kind: Kind, size: Size) -> Option<(Feature, Deviation)> {
        let mut nearest: Option<(Feature, Deviation)> = None;
        for (station, value) in self.median.iter().filter(|(s, _)| s.kind == kind) {
            let apart = (size - Size::from_quanta(*value)).abs();
            if nearest.is_none_or(|(_, least)| apart < least) {
                nearest = Some((Feature::of(*station), apart));
            }
        }
        nearest
    }
}

impl Expected {
    /// How unlikely a size is here: the reciprocal of the density of a
    /// scatter with heavy tails, so that ratios of two are odds. Unit: quanta
    /// squared.
    pub(super) fn unlikeliness(&self, size: Size) -> i128 {
        let of =
            |(centre, times): &(i64, i128)| times * (self.least() + square(size.quanta() - centre));
        self.centres.iter().map(of).min().unwrap_or(i128::MAX)
    }

    /// How unlikely the likeliest size is.
    pub(super) const fn least(&self) -> i128 {
        3 * self.square
    }

    /// True if no centre is within `reach` and so many times the scatter.
    pub(super) fn is_far(&self, size: Size, spreads: i128, reach: i64) -> bool {
        let most = spreads * spreads * self.square + square(reach);
        let beyond = |(centre, _): &(i64, i128)| most < square(size.quanta() - centre);
        self.centres.iter().all(beyond)
    }

    /// The square of the scatter.
    pub(super) const fn square(&self) -> i128 {
        self.square
    }
}

pub(super) fn square(quanta: i64) -> i128 {
    i128::from(quanta) * i128::from(quanta)
}

/// The middle value, or the mean of the two in the middle; `None` of none.
pub(super) fn median_of(values: impl Iterator<Item = i64>) -> Option<i64> {
    let mut sorted: Vec<i64> = Vec::new();
    for value in values {
        let at = sorted.partition_point(|other| *other < value);
        sorted.insert(at, value);
    }
    let high = *sorted.get(sorted.len() / 2)?;
    let low = *sorted.get((sorted.len() - 1) / 2)?;
    Some(low + (high - low) / 2)
}
