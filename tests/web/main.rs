//! Component tests in a browser.
#![cfg(target_arch = "wasm32")]
// A test says what it expects by failing loudly.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

mod device;
mod store;

wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);
