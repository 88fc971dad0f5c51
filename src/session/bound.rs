//! Every limit on a session in one place.

/// Most cylinders.
pub const CYLINDERS_MAX: u8 = 16;

/// Most main journals.
pub const MAINS_MAX: u8 = 33;

/// Most steps in which parts of a kind can be had.
pub const STEPS_MAX: usize = 12;

/// The coldest and the warmest that parts are measured at, in °C: beyond them
/// somebody mistyped, or read another scale.
pub const DEGREES_MIN: i32 = -40;
/// See [`DEGREES_MIN`].
pub const DEGREES_MAX: i32 = 60;

/// Most readings in one session, struck ones included.
pub const READINGS_MAX: usize = 10_000;

/// Longest name, source note or other free text, in characters.
pub const NOTE_MAX: usize = 200;
