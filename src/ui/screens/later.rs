//! What a start does not need.
//!
//! The build takes it, and all that only it uses, into a module of its own,
//! which the page loads once the app stands. [`part`] is the one way in, so
//! nobody else may call what is behind it.

use leptos::prelude::AnyView;

use super::route::{Entry, drawing};
use super::set_up_fields::Form;
use super::{
    below, findings, first, gauges, instrument, kinds, limits, looks, plan, set_up, set_up_more,
    stations,
};
use crate::session::SessionId;
use crate::ui::way::Sheet;

/// A part of the app that is behind the gate.
pub enum Part<'a> {
    /// A screen of a session.
    Sheet(&'a SessionId, Sheet),
    /// The drawing of the fender screen.
    Drawing(&'a Entry),
    /// How the app works, for newcomers.
    First,
    /// What stands below the sessions on the bench.
    Below,
    /// What of the set-up can wait.
    More(Form),
}

/// A part; `None` for the screens that a start may need.
#[inline(never)]
pub fn part(part: Part<'_>) -> Option<AnyView> {
    let (id, sheet) = match part {
        Part::Sheet(id, sheet) => (id, sheet),
        Part::Drawing(entry) => return Some(drawing(*entry)),
        Part::First => return Some(first::first()),
        Part::Below => return Some(below::below()),
        Part::More(form) => return Some(set_up_more::more(form)),
    };
    Some(match sheet {
        Sheet::Looks => looks(id),
        Sheet::Findings => findings(id),
        Sheet::Plan => plan(id),
        Sheet::Limits => limits(id),
        Sheet::SetUp => set_up(id),
        Sheet::Gauges => gauges(id),
        Sheet::Kinds => kinds(id),
        Sheet::Instrument => instrument(id),
        Sheet::Stations => stations(id),
        Sheet::Route => return None,
    })
}
