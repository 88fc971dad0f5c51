//! Merging, and its counterpart: what one session has over another.
//!
//! Merging is commutative, associative and idempotent, and
//! `older.merge(newer.beyond(&older))` gives `newer` whenever `newer` grew
//! out of `older`.

use litemap::LiteMap;

use super::{Reading, Register, Session};

impl Session {
    /// Takes in every fact of another session of the same engine, or of a
    /// part of one.
    pub fn merge(&mut self, other: &Self) {
        merge_map(&mut self.fields, &other.fields, merge_register);
        merge_map(&mut self.gauges, &other.gauges, merge_register);
        merge_map(&mut self.settings, &other.settings, merge_register);
        merge_map(&mut self.readings, &other.readings, merge_reading);
        merge_map(&mut self.extras, &other.extras, keep_greater);
    }

    /// The part of this session that merging into `older` would add.
    #[must_use]
    pub fn beyond(&self, older: &Self) -> Self {
        Self {
            id: self.id.clone(),
            fields: map_beyond(&self.fields, &older.fields),
            gauges: map_beyond(&self.gauges, &older.gauges),
            settings: map_beyond(&self.settings, &older.settings),
            readings: map_beyond(&self.readings, &older.readings),
            extras: map_beyond(&self.extras, &older.extras),
        }
    }

    /// True if there is nothing in the session.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.fields.is_empty()
            && self.gauges.is_empty()
            && self.settings.is_empty()
            && self.readings.is_empty()
            && self.extras.is_empty()
    }
}

/// A map of these pairs, of which most come in order. (Collecting one would
/// sort, and a sort is compiled anew for every type.)
pub fn ordered<K: Ord, V>(pairs: impl Iterator<Item = (K, V)>) -> LiteMap<K, V> {
    let mut map = LiteMap::new();
    for (key, value) in pairs {
        map.insert(key, value);
    }
    map
}

fn merge_map<K: Ord + Clone, V: Clone + PartialEq>(
    into: &mut LiteMap<K, V>,
    from: &LiteMap<K, V>,
    merge: fn(&mut V, &V),
) {
    for (key, theirs) in from {
        match into.get_mut(key) {
            Some(ours) if ours != theirs => merge(ours, theirs),
            Some(_) => {}
            None => {
                into.insert(key.clone(), theirs.clone());
            }
        }
    }
}

fn map_beyond<K: Ord + Clone, V: Clone + PartialEq>(
    ours: &LiteMap<K, V>,
    older: &LiteMap<K, V>,
) -> LiteMap<K, V> {
    let newer = ours
        .iter()
        .filter(|(key, value)| older.get(key) != Some(value));
    ordered(newer.map(|(key, value)| (key.clone(), value.clone())))
}

/// The later stamp wins. One stamp is given out once, so two values under
/// one stamp are a damaged copy; the choice must only not depend on order.
fn merge_register<T: Clone + Ord>(ours: &mut Register<T>, theirs: &Register<T>) {
    let rank = |r: &Register<T>| (r.stamp, r.value.clone(), r.extra.clone());
    if rank(ours) < rank(theirs) {
        *ours = theirs.clone();
    }
}

/// A reading never changes but for its strikes, of which the larger count
/// holds. Two different readings under one id are a damaged copy, see
/// [`merge_register`].
fn merge_reading(ours: &mut Reading, theirs: &Reading) {
    let strikes = ours.strikes.max(theirs.strikes);
    if *ours
        < (Reading {
            strikes: ours.strikes,
            ..theirs.clone()
        })
    {
        *ours = theirs.clone();
    }
    ours.strikes = strikes;
}

/// Unknown text has no stamp that could be read; the greater text is a
/// choice that does not depend on order.
fn keep_greater(ours: &mut String, theirs: &String) {
    if *ours < *theirs {
        ours.clone_from(theirs);
    }
}
