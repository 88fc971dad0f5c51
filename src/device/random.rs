//! Chance, for the name of a replica.

/// 64 random bits, so that two phones draw the same number practically never.
#[must_use]
pub fn number() -> u64 {
    let mut bytes = [0; 8];
    let drawn = web_sys::window()
        .and_then(|window| window.crypto().ok())
        .is_some_and(|crypto| crypto.get_random_values_with_u8_array(&mut bytes).is_ok());
    if drawn {
        u64::from_le_bytes(bytes)
    } else {
        weaker()
    }
}

/// For a browser without the better source, of which none is known: a number fixed in its
/// place would give two phones the same name. One draw has about 52 bits, in the low end.
fn weaker() -> u64 {
    let draw = || js_sys::Math::random().to_bits();
    draw() ^ draw().rotate_left(32)
}
