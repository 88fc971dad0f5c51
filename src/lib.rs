//! Fenderbench: from micrometer readings of a torn-down engine to what they
//! say against the manual's limits.
//!
//! Data flows one way through the rooms, in this order:
//!
//! facts ([`session`]) → [`form`] → [`verdict`] → [`assess`] → [`present`] → screens
//!
//! [`remedy`] tells from proved numbers what to do; it knows no session.
//!
//! What never happens, and is tested in `tests/it/tidy.rs`:
//! - a room imports a room that stands after it in the map of DEVELOPERS.md;
//! - a float takes part in a length (only [`uncertainty`] has any);
//! - the pure rooms read a clock, a random number or a browser;
//! - anything but [`session::Document`] changes a session;
//! - a reading is changed: it is struck and another one added;
//! - a screen does arithmetic or sees how anything is stored.

pub mod quantity;

pub mod form;
pub mod uncertainty;
pub mod verdict;

pub mod remedy;

pub mod session;
pub mod slip;

pub mod assess;

pub mod archive;
pub mod report;

pub mod present;

#[cfg(feature = "web")]
pub mod device;
#[cfg(feature = "web")]
pub mod store;
#[cfg(feature = "web")]
pub mod ui;
