//! Every limit on a session in one place.

/// Most cylinders.
pub const CYLINDERS_MAX: u8 = 16;

/// Most main journals.
pub const MAINS_MAX: u8 = 33;

/// Most readings in one session, struck ones included.
pub const READINGS_MAX: usize = 10_000;

/// Longest name, source note or other free text, in characters.
pub const NOTE_MAX: usize = 200;
