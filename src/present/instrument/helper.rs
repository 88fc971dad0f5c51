//! The way from the fender to the reading helper and back.

use super::Micrometer;
use crate::assess::Assessment;
use crate::present::{Draft, Purpose, next_open, place, plausible, route};
use crate::quantity::{Size, Unit};
use crate::session::{Feature, Session};

/// What the reading helper starts from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Helper {
    /// The micrometer in use, closed.
    pub micrometer: Micrometer,
    /// Where the reading goes; empty where none is taken with a micrometer.
    pub place: String,
    /// The number under way there, and in what it is typed.
    at: Option<(Draft, Unit, u8)>,
}

/// The helper for the place where somebody is, else for the next open one:
/// with the micrometer in use there, else the first one at hand.
#[must_use]
pub fn helper(session: &Session, assessment: &Assessment, draft: Option<Draft>) -> Helper {
    let draft = draft.or_else(|| {
        let station = next_open(&route(session, assessment), None)?;
        Some(Draft::to_read(station, Purpose::Add))
    });
    let here = draft.and_then(|draft| {
        let station = draft.station;
        let (_, gauge, setting) = session.gauge_for(station.kind)?;
        let near = plausible(session, station, setting);
        // A shaft wears below its size, out of a range that starts there.
        let worn = i64::from(!station.kind.is_hole());
        let near = near.map(|near| Size::from_quanta(near.quanta() - worn));
        let micrometer = Micrometer::of_gauge(gauge, near)?;
        let at = (draft, gauge.unit(), gauge.decimals());
        Some((micrometer, at))
    });
    let Some((micrometer, at)) = here else {
        let at_hand = session.gauges.iter().filter(|(_, g)| !g.value.away);
        let mut at_hand = at_hand.filter_map(|(_, g)| Micrometer::of_gauge(&g.value, None));
        return Helper {
            micrometer: at_hand.next().unwrap_or_default(),
            place: String::new(),
            at: None,
        };
    };
    let station = at.0.station;
    let feature = crate::present::feature(Feature::of(station));
    Helper {
        micrometer,
        place: format!("{feature}, {}", place(station)),
        at: Some(at),
    }
}

impl Helper {
    /// The number for the keypad, typed and not entered; `None` where the
    /// gauge in use reads otherwise.
    #[must_use]
    pub fn take(&self, micrometer: Micrometer) -> Option<Draft> {
        let (draft, unit, decimals) = self.at.as_ref()?;
        let alike = *unit == micrometer.unit() && *decimals == micrometer.decimals();
        alike.then(|| Draft {
            whole: true,
            typed: micrometer.text(),
            ..draft.clone()
        })
    }
}

impl Default for Helper {
    fn default() -> Self {
        Self {
            micrometer: Micrometer::default(),
            place: String::new(),
            at: None,
        }
    }
}
