//! How much one fit takes in.

/// The most levels of one feature in a fit.
pub const LEVELS_MAX: usize = 4;

/// The most readings of one feature in a fit.
pub const READINGS_MAX: i64 = 10_000;
