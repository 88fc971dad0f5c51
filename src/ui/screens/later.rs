//! The screens that a start does not need.
//!
//! The build takes them, and all that only they use, into a module of its
//! own, which the page loads once the app stands. [`screen`] is the one way
//! in, so nobody else may call what is behind it; see [`super::loaded`].

use leptos::prelude::AnyView;

use super::{findings, first, gauges, kinds, limits, looks, plan, preview, safety, set_up};
use crate::session::SessionId;
use crate::ui::way::Sheet;

/// What is behind the gate.
#[derive(Clone, Debug)]
pub enum Behind {
    /// A screen of a session.
    Of(SessionId, Sheet),
    /// How the app works, for newcomers.
    First,
    /// What the opened file holds.
    Preview,
    /// Where the data is.
    Safety,
}

/// A screen or a part of one; `None` for those that a start may need.
#[inline(never)]
pub fn screen(what: &Behind) -> Option<AnyView> {
    Some(match what {
        Behind::First => first::first(),
        Behind::Preview => preview::preview(),
        Behind::Safety => safety::safety(),
        Behind::Of(id, sheet) => match sheet {
            Sheet::Looks => looks(id),
            Sheet::Findings => findings(id),
            Sheet::Plan => plan(id),
            Sheet::Limits => limits(id),
            Sheet::SetUp => set_up(id),
            Sheet::Gauges => gauges(id),
            Sheet::Kinds => kinds(id),
            Sheet::Route | Sheet::Stations => return None,
        },
    })
}
