//! Every figure of the check in one place. Lengths are in quanta of 0.1 nm.
//!
//! Where no source is named they are our own choice, made on engines by
//! chance with the seeds for building.

use super::Looks;
use crate::quantity::Size;
use crate::session::{GaugeKind, Kind};

/// A tenth of a thou, 0.0001 in.
const TENTH: i64 = 25_400;

/// From how many times likelier on the person is asked.
pub(super) const ODDS: i128 = 4;

/// How much likelier a slip must be than one of whole turns, as a fraction: a
/// reading has up to five swaps of digits and fifteen keys beside, some close
/// by, and honest readings mostly look like these. `None` where it is not
/// looked for: what a key beside changes is within what parts of a kind differ
/// by, until the feature itself has been read (`own`).
pub(super) const fn close_by(looks: Looks, own: bool) -> Option<(i128, i128)> {
    match (looks, own) {
        (Looks::Key, true) => Some((2, 1)),
        (Looks::Key, false) => None,
        (Looks::Digits | Looks::Wrap, true) => Some((4, 3)),
        (Looks::Digits | Looks::Wrap, false) => Some((3, 1)),
        _ => Some((1, 1)),
    }
}

/// How many times less likely than the size made to a usual over- or
/// undersize is, while nobody has said that there is one.
pub(super) const MACHINED: i128 = 20;

/// How many readings the spread to be expected counts for, beside the spread
/// that is read.
pub(super) const PRIOR: i64 = 3;

/// Beyond so many times the spread, and the distance of [`far`], a reading is
/// far from its neighbours, whatever it looks like.
pub(super) const FAR_SPREADS: i128 = 8;

/// Within so many times the scatter a size is at home.
pub(super) const AT_HOME: i128 = 3;

/// So many readings in a row at different places, the same to the last digit,
/// are copies.
pub(super) const COPIES: usize = 5;

/// How places on one feature differ from what the others show: from wear,
/// out-of-round and taper.
pub(super) const fn within(kind: Kind) -> i64 {
    match kind {
        Kind::Bore => 12 * TENTH,
        Kind::Piston => 8 * TENTH,
        _ => 3 * TENTH,
    }
}

/// How one place differs between features of a kind. (Common practice expects
/// neighbours within 0.003 in.)
pub(super) const fn between(kind: Kind) -> i64 {
    match kind {
        Kind::Bore => 20 * TENTH,
        Kind::Piston => 10 * TENTH,
        _ => 5 * TENTH,
    }
}

/// Where a part that has run lies from what it was made to, and how widely.
pub(super) const fn worn(kind: Kind) -> (i64, i64) {
    match kind {
        Kind::Bore => (20 * TENTH, 30 * TENTH),
        Kind::Piston => (-10 * TENTH, 15 * TENTH),
        _ if kind.is_hole() => (3 * TENTH, 10 * TENTH),
        _ => (-6 * TENTH, 10 * TENTH),
    }
}

/// The same of a piston from its bore, where its own size is not known:
/// 0.001 to 0.004 in as made (common practice).
pub(super) const IN_ITS_BORE: (i64, i64) = (-30 * TENTH, 25 * TENTH);

/// What wear and damage alone can do.
pub(super) const fn far(kind: Kind) -> i64 {
    match kind {
        Kind::Bore => 150 * TENTH,
        _ => 100 * TENTH,
    }
}

/// How far on the side that does not wear a part may lie: new parts vary and
/// gauges are set wrongly.
pub(super) const UNWORN_SIDE: i64 = 20 * TENTH;

/// True if the least worn place of a feature that was made to a size could
/// measure this.
pub(super) fn could_be(kind: Kind, size: Size, made: Size) -> bool {
    let grown = (size - made).quanta();
    let worn = if kind.is_hole() { grown } else { -grown };
    (-UNWORN_SIDE..=LEAST_WORN).contains(&worn)
}

/// How far the least worn place of a feature may have worn: common practice
/// calls 0.003 to 0.005 in of taper doubtful.
const LEAST_WORN: i64 = 50 * TENTH;

/// The standard deviation of one reading where nobody has measured it: half
/// of what common practice gives as 95 % for somebody who does this now and
/// then. Quanta.
pub(super) const fn noise(kind: GaugeKind) -> i64 {
    let half_tenths = match kind {
        GaugeKind::OutsideMicrometer => 3,
        GaugeKind::DialBoreGauge => 4,
        GaugeKind::TelescopingGauge
        | GaugeKind::InsideMicrometer
        | GaugeKind::DepthGauge
        | GaugeKind::FeelerGauge => 10,
        GaugeKind::Caliper => 20,
        GaugeKind::DialIndicator | GaugeKind::PlasticStrip => 5,
    };
    half_tenths * TENTH / 2
}
