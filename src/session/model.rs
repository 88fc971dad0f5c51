//! What a session is made of.

use litemap::LiteMap;

use super::{Field, FieldKey, Gauge, GaugeKind, Reading, Replica, Setting, Stamp};
use crate::quantity::Unit;

/// Unknown fields of an object in a file, as the text they had between the
/// braces, kept so that an older version hands on what a newer one wrote.
pub type Extra = String;

/// The random name of a session, the same on every device: 16 hex digits.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SessionId(String);

impl SessionId {
    /// The id of this text; `None` unless it is 16 lower-case hex digits.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let hex = |b: u8| matches!(b, b'0'..=b'9' | b'a'..=b'f');
        (text.len() == 16 && text.bytes().all(hex)).then(|| Self(text.to_owned()))
    }

    /// The id of a random number.
    #[must_use]
    pub fn from_number(number: u64) -> Self {
        Self(format!("{number:016x}"))
    }

    /// The text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

/// A value that can be set again; the latest stamp wins.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Register<T> {
    /// The value.
    pub value: T,
    /// Who set it, and when in the order of facts.
    pub stamp: Stamp,
    /// Unknown fields.
    pub extra: Extra,
}

impl<T> Register<T> {
    /// A register just set.
    #[must_use]
    pub const fn new(value: T, stamp: Stamp) -> Self {
        Self {
            value,
            stamp,
            extra: Extra::new(),
        }
    }
}

/// Everything entered about one engine on one bench, or a part of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Session {
    /// Its name in the world.
    pub id: SessionId,
    /// Set-up fields and limits that somebody has set.
    pub fields: LiteMap<FieldKey, Register<Field>>,
    /// Gauges.
    pub gauges: LiteMap<Stamp, Register<Gauge>>,
    /// Settings of gauges.
    pub settings: LiteMap<Stamp, Register<Setting>>,
    /// Readings in the order they were entered.
    pub readings: LiteMap<Stamp, Reading>,
    /// What this version does not know, by section and key.
    pub extras: LiteMap<(String, String), String>,
}

impl Session {
    /// A session with nothing in it.
    #[must_use]
    pub const fn empty(id: SessionId) -> Self {
        Self {
            id,
            fields: LiteMap::new(),
            gauges: LiteMap::new(),
            settings: LiteMap::new(),
            readings: LiteMap::new(),
            extras: LiteMap::new(),
        }
    }

    /// A new session with these fields set and the usual gauges.
    #[must_use]
    pub fn create(id: SessionId, fields: Vec<Field>, replica: Replica) -> Self {
        let mut session = Self::empty(id);
        for field in fields {
            let stamp = session.next_stamp(replica);
            let register = Register::new(field, stamp);
            session.fields.insert(register.value.key(), register);
        }
        session.add_missing_gauges(replica);
        session
    }

    /// Gives the session an outside micrometer, a telescoping gauge and each
    /// gauge a setting, so that nobody has to set one up first.
    pub fn add_missing_gauges(&mut self, replica: Replica) {
        for kind in [GaugeKind::OutsideMicrometer, GaugeKind::TelescopingGauge] {
            if !self.gauges.values().any(|g| g.value.kind == kind) {
                let Some(gauge) = Gauge::usual(kind, self.display_unit()) else {
                    continue;
                };
                let stamp = self.next_stamp(replica);
                self.gauges.insert(stamp, Register::new(gauge, stamp));
            }
        }
        let gauges: Vec<_> = self.gauges.keys().copied().collect();
        for gauge in gauges {
            if !self.settings.values().any(|s| s.value.gauge == gauge) {
                let stamp = self.next_stamp(replica);
                let setting = Setting::as_found(gauge);
                self.settings.insert(stamp, Register::new(setting, stamp));
            }
        }
    }

    /// The value of a set-up field, its default while nobody has set it.
    #[must_use]
    pub fn field(&self, key: FieldKey) -> Field {
        self.fields
            .get(&key)
            .map_or_else(|| key.default(), |register| register.value.clone())
    }

    /// The unit in which findings are shown.
    #[must_use]
    pub fn display_unit(&self) -> Unit {
        match self.field(FieldKey::DisplayUnit) {
            Field::DisplayUnit(unit) => unit,
            _ => Unit::Millimetre,
        }
    }

    /// The readings that count, in the order they were entered.
    pub fn standing(&self) -> impl DoubleEndedIterator<Item = (Stamp, &Reading)> {
        self.readings
            .iter()
            .filter(|(_, reading)| !reading.is_struck())
            .map(|(id, reading)| (*id, reading))
    }

    /// The next stamp of a replica: above everything it has seen.
    #[must_use]
    pub fn next_stamp(&self, replica: Replica) -> Stamp {
        let mut counter = 0;
        let mut see = |stamp: &Stamp| counter = stamp.counter.max(counter);
        self.fields.values().for_each(|field| see(&field.stamp));
        for (id, gauge) in &self.gauges {
            see(id);
            see(&gauge.stamp);
        }
        for (id, setting) in &self.settings {
            see(id);
            see(&setting.stamp);
        }
        // Readings are in order of their stamps, so the last has the largest.
        self.readings.last().iter().for_each(|(id, _)| see(id));
        let unknown = self.extras.keys().filter_map(|(_, key)| Stamp::parse(key));
        unknown.for_each(|stamp| see(&stamp));
        counter += 1;
        Stamp { counter, replica }
    }
}
