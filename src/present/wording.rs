//! Words of the screens. Trade and metrology terms as the trade uses them.

use super::SetOn;
pub use super::place_words::{direction, kind, kind_plural, level, place, station};
pub(super) use super::place_words::{measured, where_exactly};
use crate::quantity::Shown;
use crate::session::{
    Arrangement, Bound, Counting, Feature, FirstEnd, Gauge, GaugeKind, Kind, Quantity, RouteChoice,
    Sense, Session, Use,
};
use crate::uncertainty::{Climate, Material};

/// What the words of the findings mean.
pub const PROVED_AT_95: &str = "A word stands where your readings prove it: at a limit it would \
                                be wrong in at most 5 cases of 100. Where they prove neither, it \
                                is too close to call, and a tap shows what would settle it.";

/// What the plain route cannot see.
pub const PLAIN_ROUTE_BLIND: &str = "Two places in the same two directions cannot see an oval \
                                     that lies at 45° to them.";

/// A shown length with a true minus sign, and ≈ where it is rounded.
#[must_use]
pub fn number(shown: &Shown) -> String {
    let text = shown.text.replace('-', "−");
    if shown.exact {
        text
    } else {
        format!("≈ {text}")
    }
}

/// A feature: kind and position, where there is more than one.
#[must_use]
pub fn feature(feature: Feature) -> String {
    let kind = kind(feature.kind);
    match feature.kind {
        Kind::EndPlay => kind.to_owned(),
        _ => format!("{kind} {}", feature.position),
    }
}

/// A feature, with its bank or the rods that run on it where the number
/// alone leaves that open.
pub(super) fn feature_here(session: &Session, of: Feature) -> String {
    let name = feature(of);
    let rods = || {
        let on_it = session.cylinders_on(of.position);
        let on_it: Vec<_> = on_it.iter().map(ToString::to_string).collect();
        on_it.join(" and ")
    };
    match (of.kind, session.bank(of.position)) {
        (kind, Some(bank)) if kind.goes_with_cylinders() => format!("{name}, bank {bank}"),
        (Kind::RodJournal | Kind::RodSide | Kind::RodScore, _) if session.rods_per_throw() == 2 => {
            format!("{name}, rods {}", rods())
        }
        _ => name,
    }
}

/// A quantity of a kind.
#[must_use]
pub const fn quantity(kind: Kind, quantity: Quantity) -> &'static str {
    match quantity {
        Quantity::Size => match kind {
            Kind::EndPlay => "End play",
            Kind::RodSide | Kind::TopRingSide | Kind::SecondRingSide => "Side clearance",
            Kind::MainShell | Kind::RodShell => "Wall at the crown",
            Kind::MainStrip | Kind::RodStrip => "Oil clearance by strip",
            Kind::RunOut => "Run-out, full swing",
            Kind::TopRingGap | Kind::SecondRingGap => "End gap",
            Kind::Deck | Kind::Head => "Out of flat",
            Kind::BoreScore | Kind::MainScore | Kind::RodScore => "Depth",
            _ => "Size",
        },
        Quantity::Wear => "Wear",
        Quantity::OutOfRound => "Out-of-round",
        Quantity::Taper => "Taper",
        Quantity::Barrel => "Barrel or hour-glass",
        Quantity::Clearance => match kind {
            Kind::MainShell | Kind::RodShell => "Oil clearance",
            Kind::PinBore => "Pin in piston",
            Kind::SmallEnd => "Pin in rod",
            _ => "Piston-to-wall",
        },
        Quantity::Bend => "Bend",
        Quantity::Alignment => "Off its neighbour",
        Quantity::Twist => "Twist",
    }
}

/// Which limit of a quantity of a kind.
#[must_use]
pub const fn bound(kind: Kind, quantity: Quantity, bound: Bound) -> &'static str {
    match (kind, quantity, bound) {
        (_, _, Bound::NewLow) => "new, low",
        (Kind::RunOut | Kind::Deck | Kind::Head, _, Bound::NewHigh)
        | (_, Quantity::OutOfRound | Quantity::Taper, Bound::NewHigh) => "new, at most",
        (_, _, Bound::NewHigh) => "new, high",
        (_, _, Bound::Service) => "service limit",
    }
}

/// An arrangement of cylinders.
#[must_use]
pub const fn arrangement(arrangement: Arrangement) -> &'static str {
    match arrangement {
        Arrangement::InLine => "In-line",
        Arrangement::Vee => "V",
        Arrangement::Flat => "Flat",
        Arrangement::Single => "Single",
    }
}

/// A route choice.
#[must_use]
pub const fn route_choice(choice: RouteChoice) -> &'static str {
    match choice {
        RouteChoice::Standard => "Standard: journals in staggered directions",
        RouteChoice::Fuller => "Fuller: three levels, 45° pairs, every reference",
        RouteChoice::Plain => "Plain: two places, the same two directions",
    }
}

/// What the machine is used for.
#[must_use]
pub const fn machine_use(machine_use: Use) -> &'static str {
    match machine_use {
        Use::Street => "Street",
        Use::Towing => "Towing",
        Use::Track => "Track",
        Use::Boosted => "Boosted",
    }
}

/// Which end is counted from.
#[must_use]
pub const fn first_end(end: FirstEnd) -> &'static str {
    match end {
        FirstEnd::Timing => "The timing end",
        FirstEnd::Flywheel => "The flywheel end",
    }
}

/// How two banks are counted.
#[must_use]
pub const fn counting(counting: Counting) -> &'static str {
    match counting {
        Counting::Across => "From bank to bank: 1 and 2 face each other",
        Counting::AlongBanks => "All of bank 1, then all of bank 2",
    }
}

/// How warm it is.
#[must_use]
pub const fn climate(climate: Climate) -> &'static str {
    match climate {
        Climate::Cold => "Cold: about 8 °C",
        Climate::Mild => "Mild: about 20 °C",
        Climate::Hot => "Hot: about 32 °C",
        Climate::Degrees(_) => "By thermometer",
    }
}

/// What a part is made of.
#[must_use]
pub const fn material(material: Material) -> &'static str {
    match material {
        Material::Steel => "Steel",
        Material::GreyIron => "Cast iron",
        Material::DuctileIron => "Ductile cast iron",
        Material::PistonAlloy => "Aluminium piston alloy",
        Material::CastAluminium => "Aluminium",
    }
}

/// Against what a gauge is set.
#[must_use]
pub const fn set_on(on: SetOn) -> &'static str {
    match on {
        SetOn::Standard => "A setting standard, gauge block or ring",
        SetOn::Micrometer => "A micrometer set to a size and locked",
        SetOn::Feature => "The micrometer still locked on a piston or journal",
    }
}

/// Which way a dial goes.
#[must_use]
pub const fn sense(sense: Sense) -> &'static str {
    match sense {
        Sense::PlusLarger => "Plus means larger",
        Sense::PlusSmaller => "Plus means smaller",
    }
}

/// A gauge with graduation, unit and range.
#[must_use]
pub fn gauge(gauge: &Gauge) -> String {
    let kind = gauge_kind(gauge.kind);
    format!("{kind}, {}{}", gauge.graduation, range(gauge))
}

/// The range of a gauge after a comma; nothing without one.
pub(super) fn range(gauge: &Gauge) -> String {
    let range = gauge.range.as_ref();
    let range = range.map(|(least, greatest)| format!(", {} to {greatest}", least.text()));
    range.unwrap_or_default()
}

/// An hour of the clock.
#[must_use]
pub fn hour(hour: u8) -> String {
    format!("{hour} o’clock")
}

/// A kind of gauge.
#[must_use]
pub const fn gauge_kind(kind: GaugeKind) -> &'static str {
    match kind {
        GaugeKind::OutsideMicrometer => "Outside micrometer",
        GaugeKind::TelescopingGauge => "Telescoping gauge and micrometer",
        GaugeKind::DialBoreGauge => "Dial bore gauge",
        GaugeKind::InsideMicrometer => "Inside micrometer",
        GaugeKind::Caliper => "Caliper",
        GaugeKind::DepthGauge => "Depth gauge",
        GaugeKind::FeelerGauge => "Feeler gauges",
        GaugeKind::DialIndicator => "Dial indicator",
        GaugeKind::PlasticStrip => "Plastic gauging strip",
    }
}
