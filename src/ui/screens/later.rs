//! The screens that a start does not need.
//!
//! The build takes them, and all that only they use, into a module of its
//! own, which the page loads once the app stands. [`screen`] is the one way
//! in, so nobody else may call what is behind it.

use leptos::prelude::AnyView;

use super::{findings, gauges, instrument, kinds, limits, looks, plan, set_up};
use crate::session::SessionId;
use crate::ui::way::Sheet;

/// A screen of a session; `None` for those that a start may need.
#[inline(never)]
pub fn screen(id: &SessionId, sheet: Sheet) -> Option<AnyView> {
    Some(match sheet {
        Sheet::Looks => looks(id),
        Sheet::Findings => findings(id),
        Sheet::Plan => plan(id),
        Sheet::Limits => limits(id),
        Sheet::SetUp => set_up(id),
        Sheet::Gauges => gauges(id),
        Sheet::Kinds => kinds(id),
        Sheet::Instrument => instrument(id),
        Sheet::Route | Sheet::Stations => return None,
    })
}
