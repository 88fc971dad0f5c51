//! Where the errors of the sizes come from, and what they share.

use super::view::{SetOn, View};
use crate::quantity::{Exact, Size};
use crate::session::{Against, Gauge, GaugeKind, Kind, Reading, Stamp};
use crate::uncertainty::{
    Draw, Instrument, Material, Measured, Sample, Sensitivity, Source, SourceId, Spread,
    correction, crush, high_spot, permissible_error, pooled, repeatability, thermal_sources,
    thermal_terms, transfer,
};

/// What an error comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cause {
    /// Hand and gauge: readings of one spot of this kind differ.
    Repeatability(Kind, Stamp),
    /// The micrometer to which a gauge was set was brought to the size by
    /// hand as well; one error for a setting.
    SetByHand(Stamp),
    /// The scale of this gauge shows no finer steps.
    Resolution(Stamp),
    /// A gauge is not right all along its range; one error for a setting.
    Setting(Stamp),
    /// Nobody checked the gauge; one error for a setting.
    AsFound(Stamp),
    /// The gauge showed something else when it was checked again.
    Drift(Stamp),
    /// The gauge carries the size of a kind to a micrometer: it may stand
    /// aslant or off the axis.
    Transfer(Kind),
    /// It is warmer or colder than 20 °C where the gauges are.
    Climate,
    /// Parts of a kind and gauges are not equally warm.
    PartWarmth(Kind),
    /// Parts of a kind may grow more or less than their material does.
    PartGrowth(Kind),
    /// So may the gauges.
    GaugeGrowth,
    /// New parts of a kind are made to a tolerance.
    AsMade(Kind),
    /// Shells of a kind are pressed together in their housing.
    Crush(Kind),
    /// The high spot of an indicator was noted in whole hours.
    HighSpot,
    /// The gauge is not known.
    Unknown,
}

/// All sources of error of a session and their causes, in one order.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Doubts {
    sources: Vec<Source>,
    causes: Vec<Cause>,
}

/// Of a gauge nobody checked, either way half of this: 0.001 in, our own
/// choice for a borrowed micrometer.
const AS_FOUND: Size = Size::from_quanta(254_000);

/// Of a size as made without limits for it: as much, our own choice.
const AS_MADE: Size = Size::from_quanta(254_000);

impl Doubts {
    /// The sources, as a budget wants them.
    #[must_use]
    pub fn sources(&self) -> &[Source] {
        &self.sources
    }

    /// What is behind a source.
    #[must_use]
    pub fn cause(&self, source: SourceId) -> Option<Cause> {
        self.causes.get(source.0).copied()
    }

    /// The source of a cause, where something hangs on it.
    #[must_use]
    pub fn of(&self, cause: Cause) -> Option<Source> {
        let place = self.causes.iter().position(|known| *known == cause)?;
        self.sources.get(place).copied()
    }

    /// One of the errors of a cause, where something hangs on it.
    #[must_use]
    pub(super) fn draw(&self, cause: Cause, number: usize) -> Option<Draw> {
        let place = self.causes.iter().position(|known| *known == cause)?;
        Some(draw(SourceId(place), number))
    }

    /// The source of this cause, made where there is none.
    fn source(&mut self, cause: Cause, make: impl FnOnce() -> Source) -> SourceId {
        let known = self.causes.iter().position(|known| *known == cause);
        SourceId(known.unwrap_or_else(|| {
            self.causes.push(cause);
            self.sources.push(make());
            self.causes.len() - 1
        }))
    }

    /// The one error of a source that all share who have it.
    fn shared(&mut self, cause: Cause, make: impl FnOnce() -> Source) -> Draw {
        let source = self.source(cause, make);
        Draw { source, number: 0 }
    }
}

/// How a size hangs on an error, for [`Measured::new`].
type Term = (Draw, Sensitivity);

/// An error that is in a size as it is.
const fn once(draw: Draw) -> Term {
    (draw, 1.0)
}

/// One error among several of a source.
const fn draw(source: SourceId, number: usize) -> Draw {
    Draw { number, source }
}

/// What is known of the sizes of a view, in their order: each with the errors
/// it holds.
pub(super) fn measured(view: &View<'_>) -> (Vec<Measured>, Doubts) {
    let mut making = Making {
        view,
        doubts: Doubts::default(),
        own: own_repeats(view),
    };
    let mut measured = Vec::with_capacity(view.sizes.len());
    let mut places = vec![0; view.readings.len()];
    for (place, (_, here)) in view.stations.iter().enumerate() {
        for index in here {
            if let Some(known) = places.get_mut(*index) {
                *known = place;
            }
        }
    }
    for (index, ((_, reading), place)) in view.readings.iter().zip(places).enumerate() {
        let size = view.sizes.get(index).copied().unwrap_or_default();
        measured.push(making.reading(index, reading, size, place));
    }
    for set_on in &view.set_to {
        measured.push(making.set_on(set_on));
    }
    for (kind, index) in &view.nominals {
        let size = view.sizes.get(*index).copied().unwrap_or_default();
        measured.push(making.as_made(*kind, size));
    }
    for (kind, _) in &view.crush {
        let pressed = making.doubts.shared(Cause::Crush(*kind), crush);
        measured.push(Measured::new(Exact::ZERO, &[once(pressed)]));
    }
    if view.stations.keys().any(|at| at.kind == Kind::RunOut) {
        making.doubts.shared(Cause::HighSpot, high_spot);
    }
    (measured, making.doubts)
}

struct Making<'a> {
    view: &'a View<'a>,
    doubts: Doubts,
    /// What own repeats say of a kind and a gauge.
    own: Vec<(Kind, Stamp, Spread)>,
}

impl Making<'_> {
    fn reading(&mut self, index: usize, reading: &Reading, size: Size, place: usize) -> Measured {
        let kind = reading.station.kind;
        let Some(gauge) = self.view.session.gauges.get(&reading.gauge) else {
            let unknown = self.doubts.shared(Cause::Unknown, || Source::UNKNOWN);
            return Measured::new(size.into(), &[once(unknown)]);
        };
        let gauge = &gauge.value;
        let mut terms = Vec::with_capacity(10);
        let by_hand = self.repeatability(kind, reading.gauge, gauge);
        let scale = self.resolution(reading.gauge, gauge);
        // Readings of one spot are rounded alike, so that repeats do not see
        // what the scale does not show.
        terms.extend([draw(by_hand, index), draw(scale, place)].map(once));
        if kind.is_amount() {
            // What is common practice of a blade, a strip or an indicator
            // holds all it may be off by, and nothing so small grows.
            return Measured::new(size.into(), &terms);
        }
        if gauge.kind == GaugeKind::TelescopingGauge {
            let carrying = self.doubts.source(Cause::Transfer(kind), || transfer(size));
            terms.push(once(draw(carrying, place)));
        }
        self.setting(reading.setting, by_hand, scale, size, &mut terms);
        let more = self.temperature(kind, size, &mut terms);
        Measured::new(Exact::from(size) + more, &terms)
    }

    /// What all readings of a setting share: what the gauge is off by there,
    /// and the errors of the readings by which it was set.
    fn setting(
        &mut self,
        id: Stamp,
        by_hand: SourceId,
        scale: SourceId,
        size: Size,
        terms: &mut Vec<Term>,
    ) {
        let setting = self.view.session.settings.get(&id);
        let Some(set) = setting.and_then(|setting| setting.value.set.as_ref()) else {
            let found = || Source::resolution(AS_FOUND);
            terms.push(once(self.doubts.shared(Cause::AsFound(id), found)));
            return;
        };
        let off = self
            .doubts
            .shared(Cause::Setting(id), || permissible_error(size));
        // Behind all readings and stations, which have the first numbers.
        let number = self.view.readings.len() + off.source.0;
        terms.extend([off, draw(by_hand, number), draw(scale, number)].map(once));
        if let Some(drift) = set.drift().filter(|drift| drift.quanta() != 0) {
            // It went that far at some time between, so either way.
            let twice = drift.quanta().saturating_abs().saturating_mul(2);
            let drifted = || Source::resolution(Size::from_quanta(twice));
            terms.push(once(self.doubts.shared(Cause::Drift(id), drifted)));
        }
        if set.against != Against::Standard {
            // The micrometer was brought to the size by hand as well.
            let usual = || repeatability(None, Instrument::OutsideMicrometer);
            terms.push(once(self.doubts.shared(Cause::SetByHand(id), usual)));
        }
    }

    /// The size a gauge was set to on a feature. What the micrometer is off by
    /// is in it as in the readings of the setting, and cancels.
    fn set_on(&mut self, set_on: &SetOn) -> Measured {
        let size = self.view.sizes.get(set_on.index).copied();
        let size = size.unwrap_or_default();
        let off = || permissible_error(size);
        let setting = self.doubts.shared(Cause::Setting(set_on.setting), off);
        let mut terms = vec![once(setting)];
        let more = self.temperature(set_on.on.kind, size, &mut terms);
        Measured::new(Exact::from(size) + more, &terms)
    }

    fn as_made(&mut self, kind: Kind, size: Size) -> Measured {
        let new = self.view.limits(kind, crate::session::Quantity::Size);
        let new = new.limits.new;
        let width = new.low.zip(new.high).map(|(low, high)| high - low);
        let width = width.and_then(|width| width.numerator().try_into().ok());
        let width = width.map_or(AS_MADE, Size::from_quanta);
        let made = self
            .doubts
            .shared(Cause::AsMade(kind), || Source::resolution(width));
        Measured::new(size.into(), &[once(made)])
    }

    /// The errors of temperature, and what is to be added for a size at 20 °C.
    fn temperature(&mut self, kind: Kind, size: Size, terms: &mut Vec<Term>) -> Exact {
        let session = self.view.session;
        let climate = session.climate();
        // The bore of fitted shells grows as the housing does that holds them.
        let kind = match kind {
            Kind::MainFitted => Kind::MainHousing,
            Kind::RodFitted => Kind::BigEnd,
            kind => kind,
        };
        let part = session.material(kind).expansion();
        let gauge = Material::Steel.expansion();
        let [shop, apart, grows, gauge_grows] = thermal_sources(part, gauge, climate);
        let draws = [
            self.doubts.shared(Cause::Climate, || shop),
            self.doubts.shared(Cause::PartWarmth(kind), || apart),
            self.doubts.shared(Cause::PartGrowth(kind), || grows),
            self.doubts.shared(Cause::GaugeGrowth, || gauge_grows),
        ];
        terms.extend(thermal_terms(size, part, gauge, climate, draws));
        correction(size, part, gauge, climate).into()
    }

    fn repeatability(&mut self, kind: Kind, id: Stamp, gauge: &Gauge) -> SourceId {
        let mut own = self.own.iter();
        // Repeats of an amount do not see what a blade or a strip is off by,
        // which the common figure holds as well.
        let own = own.find(|(of, with, _)| (*of, *with) == (kind, id) && !kind.is_amount());
        let own = own.map(|(.., spread)| *spread);
        let usual = instrument(gauge.kind);
        let cause = Cause::Repeatability(kind, id);
        self.doubts.source(cause, || repeatability(own, usual))
    }

    fn resolution(&mut self, id: Stamp, gauge: &Gauge) -> SourceId {
        let step = gauge.graduation.size();
        self.doubts
            .source(Cause::Resolution(id), || Source::resolution(step))
    }
}

/// What is taken for a gauge until own repeats are there. Somebody who has
/// none yet is at the first weekend with a telescoping gauge; a dial bore
/// gauge shows differences, its setting is a source of its own.
const fn instrument(kind: GaugeKind) -> Instrument {
    match kind {
        GaugeKind::OutsideMicrometer => Instrument::OutsideMicrometer,
        GaugeKind::TelescopingGauge => Instrument::TelescopingGaugeAtFirst,
        GaugeKind::DialBoreGauge => Instrument::DialBoreGaugeDifference,
        GaugeKind::InsideMicrometer => Instrument::InsideMicrometer,
        GaugeKind::Caliper => Instrument::Caliper,
        GaugeKind::DepthGauge => Instrument::DepthGauge,
        GaugeKind::FeelerGauge => Instrument::Feeler,
        GaugeKind::DialIndicator => Instrument::DialIndicator,
        GaugeKind::PlasticStrip => Instrument::PlasticStrip,
    }
}

/// The spread of readings of one spot in one setting, pooled for each kind
/// and gauge.
fn own_repeats(view: &View<'_>) -> Vec<(Kind, Stamp, Spread)> {
    let mut found: Vec<(Kind, Stamp, Spread)> = Vec::new();
    for (station, here) in view.stations.iter().filter(|(_, here)| 1 < here.len()) {
        let reading = |index: &usize| view.readings.get(*index).map(|(_, reading)| *reading);
        let mut settings: Vec<(Stamp, Stamp)> = Vec::new();
        for reading in here.iter().filter_map(reading) {
            let with = (reading.gauge, reading.setting);
            if !settings.contains(&with) {
                settings.push(with);
            }
        }
        for (gauge, setting) in settings {
            let same = |index: &&usize| {
                reading(index).is_some_and(|r| (r.gauge, r.setting) == (gauge, setting))
            };
            let sizes = here
                .iter()
                .filter(same)
                .filter_map(|i| view.sizes.get(*i).copied());
            let Some(spread) = sizes.collect::<Sample>().spread() else {
                continue;
            };
            let known = found
                .iter_mut()
                .find(|(k, g, _)| (*k, *g) == (station.kind, gauge));
            match known {
                None => found.push((station.kind, gauge, spread)),
                Some((.., so_far)) => *so_far = pooled([*so_far, spread]).unwrap_or(spread),
            }
        }
    }
    found
}
