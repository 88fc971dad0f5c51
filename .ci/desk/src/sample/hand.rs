//! A session entered as a person would: gauges set first, then station by
//! station as the route asks.

use std::collections::BTreeMap;

use fenderbench::archive;
use fenderbench::assess::assess;
use fenderbench::present::{next_open, route};
use fenderbench::quantity::{Entered, EnteredDeviation, Unit};
use fenderbench::session::{
    Against, Edit, Feature, Field, Gauge, GaugeKind, Indication, Kind, LimitKey, Reading, Replica,
    Sense, Session, SessionId, SetTo, Setting, Stamp, Station,
};

/// What stands behind a reading that was a slip: it is struck at once.
const SLIP: char = 'x';

/// The person, with the session under way.
pub struct Hand {
    pub session: Session,
    replica: Replica,
    at: Option<Station>,
    morning: Morning,
}

/// When the readings were taken. No clock: a made-up morning.
pub struct Morning {
    /// The day, as in an RFC 3339 text.
    pub day: &'static str,
    /// The hour of the first reading.
    pub first_hour: u64,
    /// The seconds each takes, the gauges of the sample being what they are.
    pub seconds_each: u64,
}

/// What was read at each station, as typed: several numbers where it was
/// read several times on the spot.
pub type Values = BTreeMap<Station, &'static str>;

impl Hand {
    /// A new session. The numbers of a sample are fixed, so that its file is
    /// the same whenever and wherever it is made.
    pub fn new(id: u64, replica: u64, set_up: Vec<Field>, morning: Morning) -> Self {
        let replica = Replica::new(replica);
        Self {
            session: Session::create(SessionId::from_number(id), set_up, replica),
            replica,
            at: None,
            morning,
        }
    }

    /// Makes an edit and gives the one that takes it back.
    pub fn apply(&mut self, edit: &Edit) -> Result<Edit, String> {
        let done = self.session.apply(edit, self.replica);
        done.map_err(|why| why.to_string())
    }

    /// The gauge of this kind that every session starts with.
    pub fn first(&self, kind: GaugeKind) -> Result<Stamp, String> {
        let mut gauges = self.session.gauges.iter();
        let first = gauges.find(|(_, gauge)| gauge.value.kind == kind);
        first
            .map(|(id, _)| *id)
            .ok_or_else(|| format!("No {}.", kind.key()))
    }

    /// Takes a gauge into use for these kinds.
    pub fn take(&mut self, gauge: Gauge, kinds: &[Kind]) -> Result<Stamp, String> {
        self.apply(&Edit::AddGauge(gauge))?;
        let newest = self.session.gauges.last().map(|(id, _)| *id);
        let id = newest.ok_or("No gauge was added.")?;
        for kind in kinds {
            self.apply(&Edit::Set(Field::GaugeOf(*kind, Some(id))))?;
        }
        Ok(id)
    }

    /// Sets a gauge, and gives the edit that puts the setting away.
    pub fn set(&mut self, gauge: Stamp, note: &str, set: SetTo) -> Result<Edit, String> {
        self.apply(&Edit::AddSetting(Setting {
            note: note.to_owned(),
            set: Some(set),
            ..Setting::as_found(gauge)
        }))
    }

    /// Goes the way the route asks as far as there are values, and enters
    /// each with the gauge at hand.
    pub fn follow(&mut self, mut values: Values) -> Result<(), String> {
        while let Some(station) = self.asked() {
            let Some(here) = values.remove(&station) else {
                break;
            };
            for value in here.split(' ') {
                self.enter(station, value)?;
            }
            self.at = Some(station);
        }
        match values.first_key_value() {
            Some((station, _)) => Err(format!("{station} is not asked for.")),
            None => Ok(()),
        }
    }

    /// The station that the route asks for next.
    pub fn asked(&self) -> Option<Station> {
        next_open(&route(&self.session, &assess(&self.session)), self.at)
    }

    /// The session as the device exports it.
    pub fn export(&self) -> String {
        archive::write(&self.session, self.replica)
    }

    fn enter(&mut self, station: Station, value: &str) -> Result<(), String> {
        let number = value.trim_end_matches(SLIP);
        let gauge = self.session.gauge_for(station.kind);
        let (gauge, with, setting) = gauge.ok_or_else(|| format!("{station} has no gauge."))?;
        let unit = with.unit();
        let entered = if with.kind.reads_deviations() {
            EnteredDeviation::parse(number, unit).map(Indication::Deviation)
        } else {
            Entered::parse(number, unit).map(Indication::Size)
        };
        let strike = self.apply(&Edit::Add(Reading {
            station,
            entered: entered.map_err(|why| format!("{station}: {why}"))?,
            gauge,
            setting,
            taken: self.morning.taken(self.session.readings.len()),
            strikes: 0,
            kept: false,
            extra: String::new(),
        }))?;
        if number != value {
            self.apply(&strike)?;
        }
        Ok(())
    }
}

impl Morning {
    /// When the reading of this number was taken.
    fn taken(&self, number: usize) -> String {
        let seconds = u64::try_from(number).unwrap_or(0) * self.seconds_each;
        let (hour, minute, second) = (seconds / 3600, seconds / 60 % 60, seconds % 60);
        let (day, hour) = (self.day, self.first_hour + hour);
        format!("{day}T{hour:02}:{minute:02}:{second:02}.000Z")
    }
}

/// Set on a standard, and what the gauge showed there.
pub fn on_standard(size: &str, shows: &str, unit: Unit) -> Result<SetTo, String> {
    Ok(SetTo {
        against: Against::Standard,
        size: length(size, unit)?,
        shows: length(shows, unit)?.into(),
        again: None,
        sense: Sense::PlusLarger,
    })
}

/// A gauge that reads from and to these sizes.
pub fn gauge(
    kind: GaugeKind,
    graduation: &str,
    range: (&str, &str),
    unit: Unit,
) -> Result<Gauge, String> {
    Ok(Gauge {
        kind,
        graduation: length(graduation, unit)?,
        range: Some((length(range.0, unit)?, length(range.1, unit)?)),
        away: false,
    })
}

/// The edit that sets these limits and where they come from.
pub fn limits(limits: &[(&str, &str)], unit: Unit) -> Result<Edit, String> {
    let mut edits = Vec::new();
    let mut limited = Vec::new();
    for (key, value) in limits {
        let key = LimitKey::parse(key).ok_or_else(|| format!("{key} is no limit."))?;
        edits.push(Edit::Set(Field::Limit(key, Some(length(value, unit)?))));
        limited.push(key.kind);
    }
    for kind in Kind::ALL.into_iter().filter(|kind| limited.contains(kind)) {
        let source = Field::LimitSource(kind, super::SOURCE.to_owned());
        edits.push(Edit::Set(source));
    }
    Ok(Edit::Batch(edits))
}

/// Values by station from rows that have one for each of a kind, in the
/// order in which the route goes round it.
pub fn rows(session: &Session, kind: Kind, rows: &[&[&'static str]]) -> Values {
    let mut values = Values::new();
    for (position, row) in (1..).zip(rows) {
        let stations = Feature { kind, position }.stations(session.route());
        values.extend(stations.into_iter().zip(row.iter().copied()));
    }
    values
}

/// Values by the text of their station.
pub fn places(values: &[(&str, &'static str)]) -> Result<Values, String> {
    let place = |(station, value): &(&str, &'static str)| {
        let found = Station::parse(station).map(|station| (station, *value));
        found.ok_or_else(|| format!("{station} is no station."))
    };
    values.iter().map(place).collect()
}

/// The edit that lists what can be had, in steps from standard.
pub fn stock(listed: &[(Kind, &[&str])], unit: Unit) -> Result<Edit, String> {
    let mut edits = Vec::new();
    for (kind, steps) in listed {
        let steps = steps.iter().map(|step| length(step, unit));
        let steps = steps.collect::<Result<Vec<_>, _>>()?;
        edits.push(Edit::Set(Field::Stock(*kind, Some(steps))));
    }
    Ok(Edit::Batch(edits))
}

pub fn length(text: &str, unit: Unit) -> Result<Entered, String> {
    Entered::parse(text, unit).map_err(|why| format!("{text}: {why}"))
}
