//! What the phone offers besides a screen and a store: the time, chance, a
//! shake in the hand, sounds, a voice, and a screen that stays on. Nothing
//! here panics where a browser lacks it.

pub mod clock;
pub mod feel;
pub mod page;
pub mod random;
