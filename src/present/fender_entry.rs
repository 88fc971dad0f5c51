//! From a number typed on the fender screen to a reading of the session, and
//! the keypad it is typed on.

use super::keypad::{Keypad, Reads};
use super::plausible::plausible;
use super::route::Purpose;
use crate::session::{Edit, Extra, Field, Indication, Kind, Reading, Session, Station};

/// The edit that enters a value at a station: a reading more, or one in
/// place of what stands there. `None` if the session has no gauge for it.
#[must_use]
pub fn entry(
    session: &Session,
    station: Station,
    purpose: Purpose,
    entered: &Indication,
    taken: &str,
) -> Option<Edit> {
    let reading = reading(session, station, entered, taken)?;
    Some(placed(session, purpose, reading))
}

/// A reading at a station with the gauge in use there.
pub(super) fn reading(
    session: &Session,
    station: Station,
    entered: &Indication,
    taken: &str,
) -> Option<Reading> {
    let (gauge, _, setting) = session.gauge_for(station.kind)?;
    Some(Reading {
        station,
        entered: entered.clone(),
        gauge,
        setting,
        taken: taken.to_owned(),
        strikes: 0,
        kept: false,
        extra: Extra::new(),
    })
}

/// The edit that adds a reading, or puts it in place of what stands there.
pub(super) fn placed(session: &Session, purpose: Purpose, reading: Reading) -> Edit {
    let station = reading.station;
    let add = Edit::Add(reading);
    let here = session.standing().filter(|(_, r)| r.station == station);
    let mut edits: Vec<Edit> = match purpose {
        Purpose::Add | Purpose::Hour => Vec::new(),
        Purpose::Replace => here.map(|(id, _)| Edit::Strike(id)).collect(),
    };
    if edits.is_empty() {
        return add;
    }
    // The hour was that of the reading that is struck.
    let main = station.position;
    if station.kind == Kind::RunOut && session.high_spot(main).is_some() {
        edits.push(Edit::Set(Field::HighSpot(main, None)));
    }
    edits.push(add);
    Edit::Batch(edits)
}

/// The keypad for a station: in what its gauge reads, near what is plausible.
/// `None` for a gauge that shows deviations and was not set.
#[must_use]
pub fn keypad(session: &Session, station: Station, whole: bool, typed: &str) -> Option<Keypad> {
    let (_, gauge, setting) = session.gauge_for(station.kind)?;
    let dial = if gauge.kind.reads_deviations() {
        let set = session.settings.get(&setting)?.value.set.clone()?;
        Some((gauge.graduation.clone(), set))
    } else {
        None
    };
    let reads = Reads {
        kind: station.kind,
        unit: gauge.unit(),
        decimals: gauge.decimals(),
        dial,
    };
    let near = plausible(session, station);
    Some(Keypad::resumed(reads, near, whole, typed))
}
