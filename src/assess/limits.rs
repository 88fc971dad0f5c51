//! The limits of a session in the sense of each quantity.

use super::UsedLimits;
use crate::quantity::{Entered, Exact};
use crate::session::{Bound, Field, FieldKey, Kind, Quantity, Session, limit_keys, wears};
use crate::verdict::{self, Band, Limits, Wear};

/// The limits given for a quantity of a kind; open bands where the manual is
/// silent, and where what is given contradicts itself.
pub(super) fn used(session: &Session, kind: Kind, quantity: Quantity) -> UsedLimits {
    let bounds = limit_keys(kind)
        .iter()
        .find(|(q, _)| *q == quantity)
        .map_or(&[][..], |(_, bounds)| bounds);
    let given: Vec<(Bound, Entered)> = bounds
        .iter()
        .filter_map(|bound| Some((*bound, session.limit(kind, quantity, *bound)?)))
        .collect();
    let size = |bound| {
        let found = given.iter().find(|(b, _)| *b == bound)?;
        Some(found.1.size())
    };
    let (low, high, service) = (
        size(Bound::NewLow),
        size(Bound::NewHigh),
        size(Bound::Service),
    );
    let wear = wears(kind, quantity);
    let limits = if verdict::check(low, high, service, wear).is_ok() {
        let exact = |limit: Option<_>| limit.map(Exact::from);
        bands(quantity, wear, exact(low), exact(high), exact(service))
    } else {
        Limits::default()
    };
    let source = match session.field(FieldKey::LimitSource(kind)) {
        Field::LimitSource(_, source) => source,
        _ => String::new(),
    };
    UsedLimits {
        limits,
        given,
        source,
    }
}

fn bands(
    quantity: Quantity,
    wear: Wear,
    low: Option<Exact>,
    high: Option<Exact>,
    service: Option<Exact>,
) -> Limits {
    // A piston larger than its bore has no clearance, whatever is not given.
    let floor = |high: Option<Exact>| high.filter(|_| quantity == Quantity::Clearance);
    let low_of = |high| low.or(floor(high).map(|_| Exact::ZERO));
    match quantity {
        Quantity::OutOfRound | Quantity::Taper | Quantity::Barrel | Quantity::Twist => Limits {
            new: Band::either_way(high),
            service: Band::either_way(service),
        },
        Quantity::Size
        | Quantity::Wear
        | Quantity::Clearance
        | Quantity::Bend
        | Quantity::Alignment => Limits {
            new: Band::new(low_of(high), high),
            // Wear moves one end only: on the other side the limit as made
            // goes on counting, or an impossible size would pass.
            service: match (service, wear) {
                (None, _) => Band::default(),
                (service, Wear::Larger) => Band::new(low_of(service), service),
                (service, Wear::Smaller) => Band::new(service, high),
            },
        },
    }
}
