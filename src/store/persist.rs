//! Whether the browser may clear everything by itself when space is short.

use js_sys::Promise;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;
use web_sys::StorageManager;

/// Asks the browser to keep the data until the person deletes it. True if it will; false if it
/// declines or does not know the question. Some browsers ask the person.
pub async fn persist() -> bool {
    answer(StorageManager::persist).await
}

/// Whether the browser has agreed to keep the data, without asking it to.
pub async fn persisted() -> bool {
    answer(StorageManager::persisted).await
}

async fn answer(ask: impl Fn(&StorageManager) -> Result<Promise, JsValue>) -> bool {
    let Some(window) = web_sys::window() else {
        return false;
    };
    // On plain http there is no manager, whatever the type says; asking then fails.
    match ask(&window.navigator().storage()) {
        Ok(promise) => JsFuture::from(promise)
            .await
            .is_ok_and(|granted| granted.is_truthy()),
        Err(_) => false,
    }
}
