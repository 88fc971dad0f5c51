//! Words of the screens. Trade and metrology terms as the trade uses them.

use super::SetOn;
use crate::quantity::Shown;
use crate::session::{
    Arrangement, Bound, Counting, Direction, Feature, FirstEnd, Gauge, GaugeKind, Kind, Level,
    Quantity, RouteChoice, Sense, Session, Station, Use,
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

/// A kind, one of it.
#[must_use]
pub const fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Bore => "Bore",
        Kind::Piston => "Piston",
        Kind::MainJournal => "Main journal",
        Kind::RodJournal => "Rod journal",
    }
}

/// A kind, all of it.
#[must_use]
pub const fn kind_plural(kind: Kind) -> &'static str {
    match kind {
        Kind::Bore => "Bores",
        Kind::Piston => "Pistons",
        Kind::MainJournal => "Main journals",
        Kind::RodJournal => "Rod journals",
    }
}

/// A feature: kind and position.
#[must_use]
pub fn feature(feature: Feature) -> String {
    format!("{} {}", kind(feature.kind), feature.position)
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
        (Kind::Bore | Kind::Piston, Some(bank)) => format!("{name}, bank {bank}"),
        (Kind::RodJournal, _) if session.rods_per_throw() == 2 => {
            format!("{name}, rods {}", rods())
        }
        _ => name,
    }
}

/// A level, short.
#[must_use]
pub const fn level(level: Level) -> &'static str {
    match level {
        Level::Top => "top",
        Level::Middle => "middle",
        Level::Bottom => "bottom",
        Level::Reference => "unworn reference",
        Level::First => "first end",
        Level::Centre => "centre",
        Level::Last => "last end",
        Level::GaugePoint => "skirt",
    }
}

/// A direction on a kind, short. Clockwise is seen from the end called
/// first.
#[must_use]
pub const fn direction(kind: Kind, direction: Direction) -> &'static str {
    match (kind, direction) {
        (Kind::Bore, Direction::D0) => "thrust",
        (Kind::Bore, Direction::D90) => "along the crank",
        (Kind::Bore, Direction::D45) => "45° clockwise of thrust",
        (Kind::Bore, Direction::D135) => "45° anticlockwise of thrust",
        (Kind::Piston, Direction::D0) => "square to the pin",
        (Kind::Piston, Direction::D90) => "along the pin",
        (Kind::Piston, _) => "45° to the pin",
        (Kind::MainJournal, Direction::D0) => "in line with throw 1",
        (Kind::MainJournal, Direction::D90) => "across throw 1",
        (Kind::MainJournal, Direction::D45) => "45° clockwise of throw 1",
        (Kind::MainJournal, Direction::D135) => "45° anticlockwise of throw 1",
        (Kind::RodJournal, Direction::D0) => "in line with the throw",
        (Kind::RodJournal, Direction::D90) => "across the throw",
        (Kind::RodJournal, Direction::D45) => "45° clockwise of the throw",
        (Kind::RodJournal, Direction::D135) => "45° anticlockwise of the throw",
    }
}

/// A station on its feature: level and direction.
#[must_use]
pub fn place(station: Station) -> String {
    let direction = direction(station.kind, station.direction);
    format!("{}, {direction}", level(station.level))
}

/// A station in full.
#[must_use]
pub fn station(station: Station) -> String {
    format!("{}, {}", feature(Feature::of(station)), place(station))
}

/// Where exactly the gauge goes at a level, as a sentence.
pub(super) const fn where_exactly(level: Level) -> &'static str {
    match level {
        Level::Top => "Just below the highest point the top ring reaches, not on the ridge.",
        Level::Middle => "Midway between the top and the bottom of ring travel.",
        Level::Bottom => "Just above the lowest point of ring travel.",
        Level::Reference => "Below ring travel or above the ridge, where nothing has worn.",
        Level::First => "About 6 mm (1/4 in) from the fillet on the first end's side.",
        Level::Centre => "In the middle of the journal, clear of the oil hole.",
        Level::Last => "About 6 mm (1/4 in) from the fillet on the last end's side.",
        Level::GaugePoint => {
            "At the height on the skirt the piston's maker states; otherwise its largest diameter."
        }
    }
}

/// A quantity.
#[must_use]
pub const fn quantity(quantity: Quantity) -> &'static str {
    match quantity {
        Quantity::Size => "Size",
        Quantity::Wear => "Wear",
        Quantity::OutOfRound => "Out-of-round",
        Quantity::Taper => "Taper",
        Quantity::Barrel => "Barrel or hour-glass",
        Quantity::Clearance => "Piston-to-wall",
    }
}

/// Which limit of a quantity.
#[must_use]
pub const fn bound(quantity: Quantity, bound: Bound) -> &'static str {
    match (quantity, bound) {
        (_, Bound::NewLow) => "new, low",
        (Quantity::OutOfRound | Quantity::Taper, Bound::NewHigh) => "new, at most",
        (_, Bound::NewHigh) => "new, high",
        (_, Bound::Service) => "service limit",
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
