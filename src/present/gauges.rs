//! The gauges screen: what each kind is measured with, what each gauge is
//! set to, and the form that sets one.

use super::wording;
use crate::assess::{Assessment, Cause};
use crate::quantity::{Entered, EnteredDeviation, Unit, show};
use crate::session::{
    Against, Edit, Feature, Field, Gauge, GaugeKind, Indication, Kind, Sense, Session, SetTo,
    Setting, Stamp,
};
use crate::uncertainty::{Combined, Distribution, Probability, rounded};

/// The whole screen.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct GaugesView {
    /// What each kind of feature is measured with.
    pub uses: Vec<UseRow>,
    /// Gauges at hand, the first taken into use first.
    pub gauges: Vec<GaugeRow>,
}

/// What a kind is measured with.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UseRow {
    /// The kind.
    pub kind: Kind,
    /// Its name.
    pub title: &'static str,
    /// Gauges that measure it.
    pub options: Vec<(Stamp, String)>,
    /// The place among them of the one in use.
    pub chosen: usize,
    /// How well its readings repeat there, and by what that is known.
    pub repeats: String,
    /// True if one spot is asked for five times.
    pub study: bool,
}

/// A gauge at hand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GaugeRow {
    /// Its id.
    pub id: Stamp,
    /// The gauge.
    pub gauge: Gauge,
    /// Its name, with a number where there are several of a kind.
    pub title: String,
    /// What it is set to, as a sentence.
    pub setting: String,
    /// True if nothing can be read with it until it is set.
    pub unset: bool,
    /// The latest setting on something.
    pub set: Option<(Stamp, Setting)>,
}

/// The gauges of a session as shown.
#[must_use]
pub fn gauges(session: &Session, assessment: &Assessment) -> GaugesView {
    let mut gauges: Vec<GaugeRow> = Vec::new();
    let at_hand = session.gauges.iter().filter(|(_, g)| !g.value.away);
    for (id, register) in at_hand {
        let gauge = &register.value;
        let of_kind = |row: &&GaugeRow| row.gauge.kind == gauge.kind;
        let number = gauges.iter().filter(of_kind).count() + 1;
        let name = wording::gauge_kind(gauge.kind);
        let title = match number {
            1 => name.to_owned(),
            _ => format!("{name} {number}"),
        };
        let latest = session.setting_of(*id);
        let latest = latest.and_then(|s| Some((s, session.settings.get(&s)?.value.clone())));
        let latest = latest.filter(|(_, setting)| setting.set.is_some());
        let set = latest
            .as_ref()
            .and_then(|(_, setting)| setting.set.as_ref());
        gauges.push(GaugeRow {
            id: *id,
            gauge: gauge.clone(),
            title,
            setting: setting(set, gauge.kind),
            unset: set.is_none() && gauge.kind.reads_deviations(),
            set: latest,
        });
    }
    let uses = session.kinds().into_iter().map(|kind| {
        let fit = gauges.iter().filter(|row| row.gauge.kind.measures(kind));
        let options: Vec<_> = fit.map(|row| (row.id, named(row))).collect();
        let used = session.gauge_for(kind).map(|(id, ..)| id);
        let chosen = options.iter().position(|(id, _)| Some(*id) == used);
        UseRow {
            kind,
            title: wording::kind_plural(kind),
            chosen: chosen.unwrap_or(options.len()),
            repeats: repeats(session, assessment, kind),
            study: session.study(kind),
            options,
        }
    });
    GaugesView {
        uses: uses.collect(),
        gauges,
    }
}

/// How well readings of a kind repeat, as a sentence.
fn repeats(session: &Session, assessment: &Assessment, kind: Kind) -> String {
    let unit = session.display_unit();
    let source = session.gauge_for(kind).and_then(|(gauge, ..)| {
        let doubts = &assessment.doubts;
        doubts.of(Cause::Repeatability(kind, gauge))
    });
    let Some(source) = source else {
        return String::new();
    };
    let half = Combined::new(source.u(), source.dof()).expanded(Probability::per_million(950_000));
    let half = show(rounded(half), unit, unit.decimals());
    let half = format!("± {} {}", half.text, unit.sign());
    if source.distribution() == Distribution::StudentT {
        format!("Your readings of one spot keep within {half}, by your own repeats.")
    } else {
        format!("Readings of one spot are taken to keep within {half}: common practice.")
    }
}

/// The edit that asks for one spot of a kind five times, or no more.
#[must_use]
pub const fn study(row: &UseRow) -> Edit {
    Edit::Set(Field::Study(row.kind, !row.study))
}

/// The edit that notes what a gauge shows when it is checked again on what it
/// was set to.
///
/// # Errors
/// The sentence why that is no number.
pub fn check_again(row: &GaugeRow, shows: &str) -> Result<Edit, String> {
    let (id, mut setting) = row
        .set
        .clone()
        .ok_or("It was not set on anything yet: set it first.")?;
    let set = setting
        .set
        .as_mut()
        .ok_or("It was not set on anything yet: set it first.")?;
    let unit = set.size.unit();
    let again = match set.shows {
        Indication::Size(_) => Entered::parse(shows, unit).map(Indication::Size),
        Indication::Deviation(_) => EnteredDeviation::parse(shows, unit).map(Indication::Deviation),
    };
    set.again = Some(again.map_err(|why| why.to_string())?);
    Ok(Edit::Setting(id, setting))
}

/// Whether a gauge showed so much else when it was checked again that what
/// was read with it is to be read again (common practice, 0.0002 in or 5 µm);
/// `None` where nobody checked.
fn went_off(set: &SetTo) -> Option<bool> {
    let most = match set.size.unit() {
        Unit::Inch => 50_800,
        Unit::Millimetre => 50_000,
    };
    Some(most < set.drift()?.quanta().saturating_abs())
}

/// Settings in which a gauge went off, each with how many readings it has.
pub(super) fn gone_off(session: &Session) -> Vec<String> {
    let mut told = Vec::new();
    for (id, register) in &session.settings {
        let Some(set) = register.value.set.as_ref() else {
            continue;
        };
        let readings = session
            .standing()
            .filter(|(_, reading)| reading.setting == *id);
        let count = readings.count();
        if went_off(set) == Some(true) && 0 < count {
            let gauge = session.gauges.get(&register.value.gauge);
            let name = gauge.map_or("A gauge", |gauge| wording::gauge_kind(gauge.value.kind));
            told.push(format!(
                "{name}: it had gone off when it was checked again; readings taken in \
                 that setting: {count}."
            ));
        }
    }
    told
}

/// A gauge by its name and range.
fn named(row: &GaugeRow) -> String {
    format!("{}{}", row.title, wording::range(&row.gauge))
}

fn setting(set: Option<&SetTo>, kind: GaugeKind) -> String {
    let Some(set) = set else {
        return if kind.reads_deviations() {
            "Not set yet: nothing can be read with it.".to_owned()
        } else {
            "As found: nobody checked it on a standard.".to_owned()
        };
    };
    let on = match set.against {
        Against::Standard => "a standard".to_owned(),
        Against::Micrometer => "a micrometer locked".to_owned(),
        Against::Feature(feature) => {
            let name = wording::feature(feature).to_ascii_lowercase();
            format!("the micrometer locked on {name}")
        }
    };
    let (size, shows) = (&set.size, &set.shows);
    let mut told = match set.shows {
        Indication::Size(_) => format!("Checked on {on}, {size}: it showed {shows}."),
        Indication::Deviation(_) => {
            let sense = wording::sense(set.sense).to_ascii_lowercase();
            format!("Set on {on} at {size}, where it shows {shows}; {sense}.")
        }
    };
    if let (Some(again), Some(off)) = (&set.again, went_off(set)) {
        let word = if off {
            "It went too far: read again what was read in this setting."
        } else {
            "It held."
        };
        told.push_str(&format!(" Checked again it showed {again}. {word}"));
    }
    told
}

/// The edit that takes a gauge of a kind into use.
#[must_use]
pub fn add_gauge(session: &Session, kind: GaugeKind) -> Option<Edit> {
    Gauge::usual(kind, session.display_unit()).map(Edit::AddGauge)
}

/// The edit that measures a kind with a gauge.
#[must_use]
pub const fn use_gauge(kind: Kind, gauge: Stamp) -> Edit {
    Edit::Set(Field::GaugeOf(kind, Some(gauge)))
}

/// The edit that describes a gauge by its graduation and range; empty ends
/// are no range.
///
/// # Errors
/// The sentence why an end is no length.
pub fn describe_gauge(
    row: &GaugeRow,
    graduation: Entered,
    least: &str,
    greatest: &str,
) -> Result<Edit, String> {
    let unit = graduation.unit();
    let range = match (least.trim(), greatest.trim()) {
        ("", "") => None,
        ("", _) | (_, "") => {
            return Err("Range: give both ends, or none.".to_owned());
        }
        (least, greatest) => {
            let end = |text| Entered::parse(text, unit).map_err(|why| format!("Range: {why}"));
            Some((end(least)?, end(greatest)?))
        }
    };
    let gauge = Gauge {
        graduation,
        range,
        ..row.gauge.clone()
    };
    Ok(Edit::Gauge(row.id, gauge))
}

/// Against what a gauge is set, as the form asks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SetOn {
    /// A setting standard, gauge block or ring.
    Standard,
    /// A micrometer set to a size and locked.
    Micrometer,
    /// A micrometer still locked on a piston or journal.
    Feature,
}

impl SetOn {
    /// All, as they are offered.
    pub const ALL: [Self; 3] = [Self::Standard, Self::Micrometer, Self::Feature];
}

/// The form that sets a gauge.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SetForm {
    /// Against what.
    pub on: SetOn,
    /// The feature the micrometer is locked on.
    pub feature: Feature,
    /// The size of that, as typed.
    pub size: String,
    /// What the gauge shows on it, as typed.
    pub shows: String,
    /// Which way the dial goes; `None` until somebody has said.
    pub sense: Option<Sense>,
}

impl SetForm {
    /// The form as it comes up: nothing is taken for granted but that a dial
    /// stands on zero.
    #[must_use]
    pub fn of(gauge: &Gauge) -> Self {
        let shows = if gauge.kind.reads_deviations() {
            "0"
        } else {
            ""
        };
        Self {
            on: SetOn::Standard,
            feature: Feature {
                kind: Kind::Piston,
                position: 1,
            },
            size: String::new(),
            shows: shows.to_owned(),
            sense: None,
        }
    }

    /// The latest reading of the feature, to be compared with the locked
    /// micrometer; empty where there is none in this unit.
    #[must_use]
    pub fn size_read(&self, session: &Session, unit: Unit) -> String {
        let on_it = |r: &Indication| match r {
            Indication::Size(size) if size.unit() == unit => Some(size.text().to_owned()),
            _ => None,
        };
        let mut readings = session.standing().rev();
        let found = readings.find(|(_, r)| Feature::of(r.station) == self.feature);
        found
            .and_then(|(_, r)| on_it(&r.entered))
            .unwrap_or_default()
    }

    /// The edit that sets the gauge so.
    ///
    /// # Errors
    /// A sentence that says what is missing or wrong.
    pub fn edit(&self, row: &GaugeRow) -> Result<Edit, String> {
        let unit = row.gauge.unit();
        let deviations = row.gauge.kind.reads_deviations();
        if self.size.trim().is_empty() {
            return Err("Type the size it is set to.".to_owned());
        }
        let length = |text: &str| Entered::parse(text, unit).map_err(|why| why.to_string());
        let size = length(&self.size)?;
        let (shows, sense) = if deviations {
            let by = EnteredDeviation::parse(&self.shows, unit).map_err(|why| why.to_string())?;
            let sense = self
                .sense
                .ok_or("Say which way the dial goes: plus larger, or plus smaller.")?;
            (Indication::Deviation(by), sense)
        } else {
            (Indication::Size(length(&self.shows)?), Sense::PlusLarger)
        };
        let against = match self.on {
            SetOn::Standard => Against::Standard,
            SetOn::Micrometer => Against::Micrometer,
            SetOn::Feature => Against::Feature(self.feature),
        };
        Ok(Edit::AddSetting(Setting {
            set: Some(SetTo {
                against,
                size,
                shows,
                again: None,
                sense,
            }),
            ..Setting::as_found(row.id)
        }))
    }
}
