//! What was read of a feature, as charts want it.

use crate::quantity::{Exact, Size};
use crate::session::{Direction, Feature, Kind, Level, Session, Station};

/// Every place of a feature that was read, with the mean of its readings.
pub(super) fn places(session: &Session, feature: Feature) -> Vec<(Station, Exact)> {
    let mut places: Vec<(Station, Vec<Size>)> = Vec::new();
    for (_, reading) in session.standing() {
        let station = reading.station;
        let Some(size) = session
            .size_of(reading)
            .filter(|_| Feature::of(station) == feature)
        else {
            continue;
        };
        match places.iter_mut().find(|(known, _)| *known == station) {
            Some((_, sizes)) => sizes.push(size),
            None => places.push((station, vec![size])),
        }
    }
    let places = places.into_iter();
    places
        .map(|(station, sizes)| (station, mean(&sizes)))
        .collect()
}

/// The mean of some sizes; nothing of none.
pub(super) fn mean(sizes: &[Size]) -> Exact {
    let sum = sizes.iter().map(|size| i128::from(size.quanta())).sum();
    Exact::new(sum, i128::try_from(sizes.len().max(1)).unwrap_or(1))
}

/// The levels of a kind at which something was read, in their order.
pub(super) fn levels(kind: Kind, places: &[(Station, Exact)]) -> impl Iterator<Item = Level> {
    let read = |level: &Level| places.iter().any(|(station, _)| station.level == *level);
    kind.levels().iter().copied().filter(read)
}

/// How directions are told apart, the usual ones first.
pub(super) const fn rank(direction: Direction) -> usize {
    match direction {
        Direction::D0 => 0,
        Direction::D60 | Direction::D90 => 1,
        Direction::D45 | Direction::D120 => 2,
        Direction::D135 => 3,
    }
}

/// A level in one or two words.
pub(super) const fn level_word(level: Level) -> &'static str {
    match level {
        Level::Reference => "unworn",
        level => super::super::wording::level(level),
    }
}
