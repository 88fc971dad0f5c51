//! Instruments, and which of them a kind of feature is measured with.

use super::{Edit, Field, FieldKey, Kind, Register, Session, Setting, Stamp};
use crate::quantity::{Entered, Size, Unit};

/// A kind of gauge.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum GaugeKind {
    /// Outside micrometer.
    OutsideMicrometer,
    /// Telescoping gauge, read with an outside micrometer.
    TelescopingGauge,
    /// Dial bore gauge: reads deviations from its setting.
    DialBoreGauge,
    /// Inside micrometer.
    InsideMicrometer,
    /// Caliper.
    Caliper,
    /// Depth gauge.
    DepthGauge,
    /// Feeler gauges.
    FeelerGauge,
    /// Dial indicator: its full swing, or how far a part moves, is read.
    DialIndicator,
    /// Plastic gauging strip.
    PlasticStrip,
}

/// A gauge with its own unit and graduation.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Gauge {
    /// What it is.
    pub kind: GaugeKind,
    /// The smallest step it is read to, in its own unit.
    pub graduation: Entered,
    /// The least and the greatest it can read; `None` where nobody said.
    pub range: Option<(Entered, Entered)>,
    /// True if nothing more is read with it. What was read stays.
    pub away: bool,
}

impl GaugeKind {
    /// All kinds.
    pub const ALL: [Self; 9] = [
        Self::OutsideMicrometer,
        Self::TelescopingGauge,
        Self::DialBoreGauge,
        Self::InsideMicrometer,
        Self::Caliper,
        Self::DepthGauge,
        Self::FeelerGauge,
        Self::DialIndicator,
        Self::PlasticStrip,
    ];

    /// The word in files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::OutsideMicrometer => "outside_micrometer",
            Self::TelescopingGauge => "telescoping_gauge",
            Self::DialBoreGauge => "dial_bore_gauge",
            Self::InsideMicrometer => "inside_micrometer",
            Self::Caliper => "caliper",
            Self::DepthGauge => "depth_gauge",
            Self::FeelerGauge => "feeler_gauge",
            Self::DialIndicator => "dial_indicator",
            Self::PlasticStrip => "plastic_strip",
        }
    }

    /// The kind of this word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.key() == key)
    }

    /// True if it shows deviations from its setting, not sizes.
    #[must_use]
    pub const fn reads_deviations(self) -> bool {
        matches!(self, Self::DialBoreGauge)
    }

    /// True if features of this kind can be measured with it.
    #[must_use]
    pub const fn measures(self, kind: Kind) -> bool {
        match kind {
            _ if kind.is_hole() => matches!(
                self,
                Self::TelescopingGauge
                    | Self::DialBoreGauge
                    | Self::InsideMicrometer
                    | Self::Caliper
            ),
            Kind::RunOut => matches!(self, Self::DialIndicator),
            Kind::EndPlay => matches!(self, Self::DialIndicator | Self::FeelerGauge),
            Kind::MainStrip | Kind::RodStrip => matches!(self, Self::PlasticStrip),
            Kind::BoreScore | Kind::MainScore | Kind::RodScore => {
                matches!(self, Self::DepthGauge | Self::DialIndicator)
            }
            _ if kind.is_amount() => matches!(self, Self::FeelerGauge),
            _ => matches!(self, Self::OutsideMicrometer | Self::Caliper),
        }
    }

    /// What a kind is mostly measured with (common practice).
    #[must_use]
    pub const fn usual_for(kind: Kind) -> Self {
        match kind {
            _ if kind.is_hole() => Self::TelescopingGauge,
            Kind::RunOut | Kind::EndPlay => Self::DialIndicator,
            Kind::MainStrip | Kind::RodStrip => Self::PlasticStrip,
            Kind::BoreScore | Kind::MainScore | Kind::RodScore => Self::DepthGauge,
            _ if kind.is_amount() => Self::FeelerGauge,
            _ => Self::OutsideMicrometer,
        }
    }
}

impl Gauge {
    /// A gauge of this kind, read as finely as this unit has it. (`None` only
    /// if a graduation here were no length.)
    #[must_use]
    pub fn usual(kind: GaugeKind, unit: Unit) -> Option<Self> {
        let [finest, half, whole] = Self::graduations(unit);
        let step = match kind {
            // Blades come in half thous and hundredths, strips are read by
            // the printed widths, and an indicator by its lines.
            GaugeKind::FeelerGauge | GaugeKind::DialIndicator | GaugeKind::PlasticStrip => half,
            GaugeKind::Caliper | GaugeKind::DepthGauge => whole,
            _ => finest,
        };
        let graduation = Entered::parse(step, unit).ok()?;
        Some(Self {
            kind,
            graduation,
            range: None,
            away: false,
        })
    }

    /// The unit it reads in.
    #[must_use]
    pub const fn unit(&self) -> Unit {
        self.graduation.unit()
    }

    /// The decimals it is read to.
    #[must_use]
    pub fn decimals(&self) -> u8 {
        self.graduation.decimals()
    }

    /// True if it can read this size.
    #[must_use]
    pub fn reaches(&self, size: Size) -> bool {
        let within = |(least, greatest): &(Entered, Entered)| {
            least.size() <= size && size <= greatest.size()
        };
        self.range.as_ref().is_none_or(within)
    }

    /// Every graduation offered, of both units.
    #[must_use]
    pub fn all_graduations() -> Vec<Entered> {
        let of_unit = |unit| Self::graduations(unit).map(|text| Entered::parse(text, unit));
        Unit::ALL.into_iter().flat_map(of_unit).flatten().collect()
    }

    /// The graduations offered, finest first: micrometers with and without
    /// vernier, the usual dials.
    #[must_use]
    pub const fn graduations(unit: Unit) -> [&'static str; 3] {
        match unit {
            Unit::Inch => ["0.0001", "0.0005", "0.001"],
            Unit::Millimetre => ["0.001", "0.01", "0.02"],
        }
    }
}

impl Session {
    /// The gauge a kind is measured with and its latest setting: the gauge
    /// chosen for it, else the first of the usual kind.
    #[must_use]
    pub fn gauge_for(&self, kind: Kind) -> Option<(Stamp, &Gauge, Stamp)> {
        let usual = GaugeKind::usual_for(kind);
        let chosen = match self.field(FieldKey::GaugeOf(kind)) {
            Field::GaugeOf(_, chosen) => chosen,
            _ => None,
        };
        let chosen = chosen.and_then(|id| self.gauges.iter().find(|(known, _)| **known == id));
        let at_hand = |(_, gauge): &(&Stamp, &Register<Gauge>)| {
            !gauge.value.away && gauge.value.kind.measures(kind)
        };
        let of_kind = |(_, gauge): &(&Stamp, &Register<Gauge>)| gauge.value.kind == usual;
        let (id, gauge) = chosen
            .filter(at_hand)
            .or_else(|| self.gauges.iter().filter(at_hand).find(of_kind))
            .or_else(|| self.gauges.iter().find(at_hand))?;
        Some((*id, &gauge.value, self.setting_of(*id)?))
    }

    /// The edit by which features of a kind are asked for, or not any more,
    /// with the usual gauge for them where none is at hand.
    #[must_use]
    pub fn ask_for(&self, kind: Kind, asked: bool) -> Edit {
        let mut edits = vec![Edit::Set(Field::Measure(kind, asked))];
        if asked && self.gauge_for(kind).is_none() {
            let gauge = Gauge::usual(GaugeKind::usual_for(kind), self.display_unit());
            edits.extend(gauge.map(Edit::AddGauge));
        }
        Edit::Batch(edits)
    }

    /// The latest setting of a gauge that is not put away.
    #[must_use]
    pub fn setting_of(&self, gauge: Stamp) -> Option<Stamp> {
        let of_gauge =
            |(_, s): &(&Stamp, &Register<Setting>)| s.value.gauge == gauge && !s.value.away;
        self.settings.iter().rfind(of_gauge).map(|(id, _)| *id)
    }
}
