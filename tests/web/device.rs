//! The clock and chance, in a real browser.

use std::collections::BTreeSet;

use fenderbench::device::{clock, random};
use wasm_bindgen_test::wasm_bindgen_test;

use crate::store::{replace, restore, window};

/// `2026-05-04T09:08:07.006Z`, with every digit as `0`.
#[wasm_bindgen_test]
fn the_time_has_the_shape_of_rfc_3339() {
    let now = clock::now_text();
    let shape: String = now
        .chars()
        .map(|c| if c.is_ascii_digit() { '0' } else { c })
        .collect();
    assert_eq!(shape, "0000-00-00T00:00:00.000Z", "{now}");
}

#[wasm_bindgen_test]
fn random_numbers_differ_and_use_all_bits() {
    let drawn: Vec<u64> = (0..200).map(|_| random::number()).collect();
    assert_eq!(drawn.iter().collect::<BTreeSet<_>>().len(), 200);
    assert_eq!(drawn.iter().fold(0, |all, n| all | n), u64::MAX);
    assert_eq!(drawn.iter().fold(u64::MAX, |all, n| all & n), 0);
}

#[wasm_bindgen_test]
fn random_numbers_come_from_the_browsers_own_source() {
    let original = replace(
        &window(),
        "crypto",
        "return { getRandomValues: bytes => bytes.fill(7) };",
    );
    let drawn = random::number();
    restore(&window(), "crypto", &original);
    assert_eq!(drawn, 0x0707_0707_0707_0707);
}

#[wasm_bindgen_test]
fn random_numbers_differ_without_that_source() {
    let original = replace(&window(), "crypto", "return undefined");
    let drawn: BTreeSet<u64> = (0..200).map(|_| random::number()).collect();
    restore(&window(), "crypto", &original);
    assert_eq!(drawn.len(), 200);
}
