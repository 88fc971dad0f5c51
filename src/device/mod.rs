//! What the phone offers besides a screen and a store: the time, chance, and
//! a shake in the hand. Nothing here panics where a browser lacks it.

pub mod buzz;
pub mod clock;
pub mod page;
pub mod random;
