//! IndexedDB's events as futures.
//!
//! A promise's own two functions serve as the handlers. They belong to the
//! browser, which frees them, so no closure has to be kept alive here and a
//! future that is dropped early does no harm. Listening starts at the call,
//! not at the first poll.

use js_sys::Promise;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;
use web_sys::{DomException, IdbOpenDbRequest, IdbRequest, IdbTransaction};

use super::{StoreError, text_at};

/// The result of a request, once it has one.
///
/// # Errors
/// What the browser reports for the request.
pub(super) fn result(
    request: &IdbRequest,
) -> impl Future<Output = Result<JsValue, StoreError>> + use<> {
    let request = request.clone();
    let settled = JsFuture::from(Promise::new(&mut |success, error| {
        request.set_onsuccess(Some(&success));
        request.set_onerror(Some(&error));
    }));
    async move {
        match settled.await {
            Ok(_) => Ok(request.result()?),
            Err(_) => Err(reason(request.error()?)),
        }
    }
}

/// The result of a request to open a database.
///
/// # Errors
/// What the browser reports, or that another tab holds an older database open.
pub(super) async fn opened(request: &IdbOpenDbRequest) -> Result<JsValue, StoreError> {
    let settled = JsFuture::from(Promise::new(&mut |success, error| {
        request.set_onsuccess(Some(&success));
        request.set_onerror(Some(&error));
        request.set_onblocked(Some(&error));
    }));
    match settled.await {
        Ok(_) => Ok(request.result()?),
        Err(event) if text_at(&event, "type").is_some_and(|name| name == "blocked") => {
            Err(StoreError::Other(
                "Another tab holds the store in an older version. Close every other tab of \
                 this app and reload this page."
                    .into(),
            ))
        }
        Err(_) => Err(reason(request.error()?)),
    }
}

/// The end of a transaction: only then is what it wrote committed.
///
/// # Errors
/// What the browser reports when it takes everything in the transaction back.
pub(super) fn complete(
    transaction: &IdbTransaction,
) -> impl Future<Output = Result<(), StoreError>> + use<> {
    let transaction = transaction.clone();
    let settled = JsFuture::from(Promise::new(&mut |complete, abort| {
        transaction.set_oncomplete(Some(&complete));
        transaction.set_onabort(Some(&abort));
    }));
    async move {
        match settled.await {
            Ok(_) => Ok(()),
            Err(_) => Err(reason(transaction.error())),
        }
    }
}

fn reason(exception: Option<DomException>) -> StoreError {
    exception.map_or_else(
        || StoreError::Other("The browser stopped storing this. Try again.".into()),
        |exception| JsValue::from(exception).into(),
    )
}
