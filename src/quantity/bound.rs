//! Every limit on a number in one place.

use super::Size;

/// The largest size that can be entered: 10 m. Nothing on an engine comes
/// near it, and ten thousand such sizes still sum without overflow.
pub const SIZE_MAX: Size = Size::from_quanta(100_000_000_000);

/// The most decimals an entry may have: one quantum is 0.0000001 mm, and the
/// finest inch decimal that is whole in quanta is 1 µin, the sixth.
pub const DECIMALS_MAX: u8 = 6;

/// The longest text of one entered length, in characters.
pub const TEXT_MAX: usize = 16;
