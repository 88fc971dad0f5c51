//! localStorage: raw texts, the limit, and a browser that denies it.

use fenderbench::store::StoreError;
use fenderbench::store::journal::Journal;
use fenderbench::store::local;
use wasm_bindgen_test::wasm_bindgen_test;

use super::{pair, replace, restore, window};

#[wasm_bindgen_test]
fn local_keeps_raw_texts() {
    let before = local::used_bytes().unwrap();
    assert_eq!(local::get("t:a"), Ok(None));
    local::put("t:b", "{\"second\":1}").unwrap();
    local::put("t:a", "Ø 49.99 \u{1f527}").unwrap();
    local::put("u:a", "").unwrap();
    let raw = window().local_storage().unwrap().unwrap();
    assert_eq!(raw.get_item("t:b").unwrap().unwrap(), "{\"second\":1}");
    assert_eq!(
        local::entries("t:").unwrap(),
        [
            pair("t:a", "Ø 49.99 \u{1f527}"),
            pair("t:b", "{\"second\":1}")
        ]
    );
    assert_eq!(local::get("u:a"), Ok(Some(String::new())));
    // Three keys of 3 units, texts of 10 (the last sign takes two), 12 and none.
    assert_eq!(local::used_bytes().unwrap() - before, 2 * (3 * 3 + 10 + 12));
    for key in ["t:a", "t:b", "u:a", "never there"] {
        local::remove(key).unwrap();
    }
    assert_eq!(local::used_bytes(), Ok(before));
}

#[wasm_bindgen_test]
fn a_full_local_store_keeps_the_old_text() {
    local::put("t:full", "old").unwrap();
    let mut filled = 0;
    let mut size = 1 << 20;
    while size > 0 {
        let key = format!("t:fill{filled}");
        match local::put(&key, &"x".repeat(size)) {
            Ok(()) => filled += 1,
            Err(error) => {
                assert_eq!(error, StoreError::Full);
                assert_eq!(local::get(&key), Ok(None));
                size /= 2;
            }
        }
    }
    let refused = local::put("t:full", &"y".repeat(4096));
    let kept = local::get("t:full");
    let used = local::used_bytes().unwrap();
    for (key, _) in local::entries("t:").unwrap() {
        local::remove(&key).unwrap();
    }
    assert_eq!(refused, Err(StoreError::Full));
    assert_eq!(kept, Ok(Some("old".into())));
    // Counted as the browser counts: its limit is 10 MiB.
    assert!((10_485_700..=10_485_760).contains(&used), "{used}");
    local::put("t:full", "room again").unwrap();
    local::remove("t:full").unwrap();
}

#[wasm_bindgen_test]
async fn a_refused_store_is_said_and_nothing_panics() {
    let throwing = "throw new DOMException('denied', 'SecurityError')";
    for body in [throwing, "return null"] {
        let of_local = replace(&window(), "localStorage", body);
        let of_journal = replace(&window(), "indexedDB", body);
        let seen = [
            local::get("k").err(),
            local::put("k", "v").err(),
            local::remove("k").err(),
            local::entries("").err(),
            local::used_bytes().err(),
            Journal::open().await.err(),
        ];
        restore(&window(), "localStorage", &of_local);
        restore(&window(), "indexedDB", &of_journal);
        assert!(
            seen.iter().all(|e| *e == Some(StoreError::Refused)),
            "{body}: {seen:?}"
        );
    }
    assert_eq!(local::get("k"), Ok(None));
}
