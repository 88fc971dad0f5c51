//! What a person can do to a session, as data. Applying an edit gives the
//! edit that takes it back.

use core::fmt;

use super::{
    Bound, CYLINDERS_MAX, DEGREES_MAX, DEGREES_MIN, Field, FieldKey, Gauge, Indication, Kind,
    LimitKey, MAINS_MAX, NOTE_MAX, Quantity, READINGS_MAX, Reading, Register, Replica, STEPS_MAX,
    Session, Setting, Stamp, limit_keys, wears,
};
use crate::quantity::{Entered, Size, Unit};
use crate::uncertainty::Climate;
use crate::verdict::{self, LimitsRefused};

/// An edit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Edit {
    /// Enter a reading.
    Add(Reading),
    /// Strike a reading, or put a struck one back.
    Strike(Stamp),
    /// Set a set-up field or a limit.
    Set(Field),
    /// Take a gauge into use, as it is found.
    AddGauge(Gauge),
    /// Describe a gauge anew. Readings keep the unit they were typed in.
    Gauge(Stamp, Gauge),
    /// Set a gauge.
    AddSetting(Setting),
    /// Describe a setting anew.
    Setting(Stamp, Setting),
    /// Several edits that are one step for the person.
    Batch(Vec<Self>),
}

impl Edit {
    /// True for a batch of nothing.
    #[must_use]
    pub fn is_nothing(&self) -> bool {
        matches!(self, Self::Batch(edits) if edits.is_empty())
    }
}

/// Why an edit cannot be. The display is a sentence for the person.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refused {
    /// A number outside its range.
    Count {
        /// What is counted.
        what: &'static str,
        /// The largest that can be.
        most: u8,
    },
    /// A temperature below [`DEGREES_MIN`] or above [`DEGREES_MAX`].
    Degrees,
    /// A text longer than [`NOTE_MAX`].
    TooLong,
    /// More steps than [`STEPS_MAX`] in which parts can be had.
    Steps,
    /// Steps in more than one unit.
    StepUnits,
    /// Something that is not to be seen there.
    NoLook,
    /// A size of zero or less.
    NoSize,
    /// A deviation of a gauge that was not set, or set by sizes.
    NotSet,
    /// What a gauge shows, in another unit than this of the size it was set to.
    OtherUnit(Unit),
    /// A size the gauge cannot read, and what it can.
    OutOfRange((Entered, Entered)),
    /// A graduation of zero, or a range that ends before it starts.
    Gauge,
    /// The session is full.
    Full,
    /// A fact is named that is not in the session.
    Unknown(Stamp),
    /// Limits that cannot stand together.
    Limits(Kind, Quantity, LimitsRefused),
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Count { what, most } => {
                write!(f, "The number of {what} must be from 1 to {most}.")
            }
            Self::Degrees => write!(
                f,
                "The shop must be from −40 to 60 °C: read the thermometer again."
            ),
            Self::TooLong => write!(
                f,
                "At most {NOTE_MAX} characters can be kept here: shorten it."
            ),
            Self::Steps => write!(
                f,
                "At most {STEPS_MAX} sizes of one part can be listed: leave out what you would not buy."
            ),
            Self::StepUnits => write!(
                f,
                "The sizes of one part are in two units: list them all in one."
            ),
            Self::NoLook => write!(
                f,
                "That cannot be seen there: note it on the part where it was."
            ),
            Self::NoSize => write!(f, "Zero or less is no size: type one above zero."),
            Self::NotSet => write!(
                f,
                "A gauge that shows deviations has to be set first: in Set-up, Gauges."
            ),
            Self::OtherUnit(unit) => write!(
                f,
                "The gauge was set in {0}: say in {0} too what it shows.",
                unit.sign()
            ),
            Self::OutOfRange((least, greatest)) => write!(
                f,
                "This gauge reads from {least} to {greatest}: take another, or read again."
            ),
            Self::Gauge => write!(
                f,
                "A gauge needs a graduation, and a range that starts below its end."
            ),
            Self::Full => write!(f, "A session holds {READINGS_MAX} readings; start another."),
            Self::Unknown(id) => write!(
                f,
                "What {id} names is not in this session: load the page again."
            ),
            Self::Limits(kind, quantity, why) => {
                let (kind, quantity) = (kind.key(), quantity.key());
                let place = format!("{kind}, {quantity}").replace('_', " ");
                write!(f, "Limits for {place}: {why}.")
            }
        }
    }
}

impl core::error::Error for Refused {}

impl Session {
    /// Applies an edit under the replica's next stamp and returns the edit
    /// that takes it back. A refused edit changes nothing.
    ///
    /// # Errors
    /// [`Refused`] says why.
    pub fn apply(&mut self, edit: &Edit, replica: Replica) -> Result<Edit, Refused> {
        let mut changed = self.clone();
        let inverse = changed.step(edit, replica)?;
        // Merged sets of limits can contradict each other; that must not stop
        // the person from entering readings or mending the limits.
        if self.check_limits().is_ok() {
            changed.check_limits()?;
        }
        *self = changed;
        Ok(inverse)
    }

    fn step(&mut self, edit: &Edit, replica: Replica) -> Result<Edit, Refused> {
        let stamp = self.next_stamp(replica);
        match edit {
            Edit::Add(reading) => {
                self.check_reading(reading)?;
                self.readings.insert(stamp, reading.clone());
                Ok(Edit::Strike(stamp))
            }
            Edit::Strike(id) => {
                let reading = self.readings.get_mut(id).ok_or(Refused::Unknown(*id))?;
                reading.strikes = reading.strikes.saturating_add(1);
                Ok(edit.clone())
            }
            Edit::Set(field) => {
                field.check()?;
                let before = self.field(field.key());
                let register = Register::new(field.clone(), stamp);
                self.fields.insert(field.key(), register);
                Ok(Edit::Set(before))
            }
            Edit::Gauge(id, gauge) => {
                gauge.check()?;
                let before = self.gauges.get(id).ok_or(Refused::Unknown(*id))?;
                let inverse = Edit::Gauge(*id, before.value.clone());
                let register = Register::new(gauge.clone(), stamp);
                self.gauges.insert(*id, register);
                Ok(inverse)
            }
            Edit::AddGauge(gauge) => {
                gauge.check()?;
                self.gauges
                    .insert(stamp, Register::new(gauge.clone(), stamp));
                // Facts are never taken out again, so that copies can merge.
                let away = Gauge {
                    away: true,
                    ..gauge.clone()
                };
                let setting = Setting::as_found(stamp);
                self.step(&Edit::AddSetting(setting), replica)?;
                Ok(Edit::Gauge(stamp, away))
            }
            Edit::AddSetting(setting) => {
                self.check_setting(setting)?;
                self.settings
                    .insert(stamp, Register::new(setting.clone(), stamp));
                let away = Setting {
                    away: true,
                    ..setting.clone()
                };
                Ok(Edit::Setting(stamp, away))
            }
            Edit::Setting(id, setting) => {
                self.check_setting(setting)?;
                let before = self.settings.get(id).ok_or(Refused::Unknown(*id))?;
                let inverse = Edit::Setting(*id, before.value.clone());
                self.settings
                    .insert(*id, Register::new(setting.clone(), stamp));
                Ok(inverse)
            }
            Edit::Batch(edits) => {
                let mut inverses = Vec::with_capacity(edits.len());
                for edit in edits {
                    inverses.push(self.step(edit, replica)?);
                }
                inverses.reverse();
                Ok(Edit::Batch(inverses))
            }
        }
    }

    fn check_reading(&self, reading: &Reading) -> Result<(), Refused> {
        if READINGS_MAX <= self.readings.len() {
            return Err(Refused::Full);
        }
        if NOTE_MAX < reading.taken.chars().count() {
            return Err(Refused::TooLong);
        }
        let gauge = self.gauges.get(&reading.gauge);
        let gauge = &gauge.ok_or(Refused::Unknown(reading.gauge))?.value;
        if !self.settings.contains_key(&reading.setting) {
            return Err(Refused::Unknown(reading.setting));
        }
        let size = self.size_of(reading).ok_or(Refused::NotSet)?;
        let zero = Size::from_quanta(0);
        if size < zero || size == zero && !reading.station.kind.is_amount() {
            return Err(Refused::NoSize);
        }
        match &gauge.range {
            Some(range) if !gauge.reaches(size) => Err(Refused::OutOfRange(range.clone())),
            _ => Ok(()),
        }
    }

    fn check_setting(&self, setting: &Setting) -> Result<(), Refused> {
        if NOTE_MAX < setting.note.chars().count() {
            return Err(Refused::TooLong);
        }
        let gauge = self.gauges.get(&setting.gauge);
        let gauge = &gauge.ok_or(Refused::Unknown(setting.gauge))?.value;
        let Some(set) = &setting.set else {
            return Ok(());
        };
        let zero = Size::from_quanta(0);
        let shown = set.size_at(&set.shows).filter(|_| zero < set.size.size());
        if shown.is_none() {
            return Err(Refused::NoSize);
        }
        for shown in core::iter::once(&set.shows).chain(&set.again) {
            let deviation = matches!(shown, Indication::Deviation(_));
            if deviation != gauge.kind.reads_deviations() {
                return Err(Refused::NotSet);
            }
            // A file has one unit for all three.
            if shown.unit() != set.size.unit() {
                return Err(Refused::OtherUnit(set.size.unit()));
            }
        }
        Ok(())
    }

    /// The limit of this name as the manual prints it, if it is given.
    #[must_use]
    pub fn limit(&self, kind: Kind, quantity: Quantity, bound: Bound) -> Option<Entered> {
        let key = LimitKey {
            kind,
            quantity,
            bound,
        };
        match self.field(FieldKey::Limit(key)) {
            Field::Limit(_, limit) => limit,
            _ => None,
        }
    }

    /// Checks every limit given against the others of its quantity.
    ///
    /// # Errors
    /// [`Refused::Limits`] names the first that cannot stand.
    pub fn check_limits(&self) -> Result<(), Refused> {
        for kind in Kind::ALL {
            for &(quantity, _) in limit_keys(kind) {
                let size = |bound| self.limit(kind, quantity, bound).map(|l| l.size());
                verdict::check(
                    size(Bound::NewLow),
                    size(Bound::NewHigh),
                    size(Bound::Service),
                    wears(kind, quantity),
                )
                .map_err(|why| Refused::Limits(kind, quantity, why))?;
            }
        }
        Ok(())
    }
}

impl Gauge {
    /// Checks a gauge by itself.
    ///
    /// # Errors
    /// [`Refused::Gauge`] for a graduation of zero and for a range that ends
    /// before it starts.
    pub fn check(&self) -> Result<(), Refused> {
        let zero = Size::from_quanta(0);
        let runs_backward =
            |(least, greatest): &(Entered, Entered)| greatest.size() <= least.size();
        if self.graduation.size() == zero || self.range.as_ref().is_some_and(runs_backward) {
            return Err(Refused::Gauge);
        }
        Ok(())
    }
}

impl Field {
    /// Checks one set-up value by itself.
    ///
    /// # Errors
    /// [`Refused`] says what is out of range.
    pub fn check(&self) -> Result<(), Refused> {
        let within = |what, number: u8, most| {
            if (1..=most).contains(&number) {
                Ok(())
            } else {
                Err(Refused::Count { what, most })
            }
        };
        let is_nothing = |size: &Entered| size.size() == Size::from_quanta(0);
        match self {
            Self::Cylinders(n) => within("cylinders", *n, CYLINDERS_MAX),
            Self::Mains(n) => within("main journals", *n, MAINS_MAX),
            Self::RodsPerThrow(n) => within("rods on a throw", *n, 2),
            Self::Name(text) | Self::LimitSource(_, text) | Self::Pin(_, Some(text))
                if NOTE_MAX < text.chars().count() =>
            {
                Err(Refused::TooLong)
            }
            Self::Climate(Climate::Degrees(thousandths))
                if !(DEGREES_MIN * 1_000..=DEGREES_MAX * 1_000).contains(thousandths) =>
            {
                Err(Refused::Degrees)
            }
            Self::Look(spot, look, _) if !look.subjects().contains(&spot.subject) => {
                Err(Refused::NoLook)
            }
            Self::HighSpot(main, hour) => {
                within("main journals", *main, MAINS_MAX)?;
                hour.map_or(Ok(()), |hour| within("hours", hour, 12))
            }
            Self::Stock(_, Some(steps)) if STEPS_MAX < steps.len() => Err(Refused::Steps),
            Self::Stock(_, Some(steps)) if steps.iter().any(is_nothing) => Err(Refused::NoSize),
            Self::Stock(_, Some(steps)) => match steps.as_slice() {
                [first, rest @ ..] if rest.iter().any(|step| step.unit() != first.unit()) => {
                    Err(Refused::StepUnits)
                }
                _ => Ok(()),
            },
            Self::Length(name, Some(length)) if is_nothing(length) && !name.may_be_nothing() => {
                Err(Refused::NoSize)
            }
            Self::Nominal(_, Some(size)) if is_nothing(size) => Err(Refused::NoSize),
            _ => Ok(()),
        }
    }
}
