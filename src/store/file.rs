//! Files: saved, shared and read. They are the backup.

use js_sys::{Array, Reflect, Uint8Array};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    Blob, BlobPropertyBag, File, FilePropertyBag, HtmlAnchorElement, ShareData, Url, Window,
};

use super::{StoreError, text_at, window};

/// The largest file that is read, in bytes.
pub const FILE_BYTES_MAX: u32 = crate::archive::BYTES_MAX as u32;

/// How long a saved file's address stays valid, in milliseconds. Some phones first ask where
/// to put it, and fetch it only after the answer.
const REVOKE_AFTER_MS: i32 = 60_000;

/// Lets the browser save `text` as `NAME.json`; `name` may already have that ending. Nobody is
/// told whether the person then keeps the file.
///
/// # Errors
/// [`StoreError::Other`] when the browser cannot make a file.
pub fn download(name: &str, text: &str) -> Result<(), StoreError> {
    let window = window()?;
    let kind = BlobPropertyBag::new();
    kind.set_type("application/json");
    let blob = Blob::new_with_str_sequence_and_options(&parts(text), &kind)?;
    let document = window.document().ok_or(StoreError::Refused)?;
    let link: HtmlAnchorElement = document.create_element("a")?.unchecked_into();
    let url = Url::create_object_url_with_blob(&blob)?;
    link.set_href(&url);
    link.set_download(&format!("{}.json", stem(name)));
    link.click();
    revoke_later(&window, url)
}

/// Reads a file that the person chose. A byte order mark at its start is no part of the text.
///
/// # Errors
/// [`StoreError::TooLarge`] before anything is read; [`StoreError::Damaged`] if it is not text
/// in UTF-8; [`StoreError::Other`] if the browser cannot read it.
pub async fn read(file: File) -> Result<String, StoreError> {
    if file.size() > f64::from(FILE_BYTES_MAX) {
        return Err(StoreError::TooLarge {
            bytes: file.size() as u64,
            most: FILE_BYTES_MAX,
        });
    }
    // The bytes and not `text()`, which would quietly mend what is broken.
    let buffer = JsFuture::from(file.array_buffer()).await.map_err(|_| {
        StoreError::Other("The browser could not read this file. Choose it again.".into())
    })?;
    let text = String::from_utf8(Uint8Array::new(&buffer).to_vec())
        .map_err(|_| StoreError::Damaged("the file is not text in UTF-8".into()))?;
    Ok(match text.strip_prefix('\u{feff}') {
        Some(rest) => rest.to_owned(),
        None => text,
    })
}

/// What became of a file that was to be shared.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shared {
    /// It was handed over.
    Done,
    /// The person changed their mind.
    LeftBe,
    /// The browser cannot or may not: save it instead.
    CannotBe,
}

/// Offers `text` to other apps as the file `NAME.json.txt`; `name` may already end in `.json`.
///
/// # Errors
/// [`StoreError::Other`] when the browser cannot make a file.
pub async fn share(name: &str, text: &str) -> Result<Shared, StoreError> {
    let navigator = window()?.navigator();
    let can = |what: &str| Reflect::has(&navigator, &what.into()).unwrap_or(false);
    if !can("share") || !can("canShare") {
        return Ok(Shared::CannotBe);
    }
    let kind = FilePropertyBag::new();
    kind.set_type("text/plain");
    // Plain text, because browsers refuse to share `.json`, and only after the person was asked.
    let name = format!("{}.json.txt", stem(name));
    let file = File::new_with_str_sequence_and_options(&parts(text), &name, &kind)?;
    let data = ShareData::new();
    data.set_files(&Array::of1(&file));
    if !navigator.can_share_with_data(&data) {
        return Ok(Shared::CannotBe);
    }
    Ok(
        match JsFuture::from(navigator.share_with_data(&data)).await {
            Ok(_) => Shared::Done,
            Err(thrown) if cancelled(&thrown) => Shared::LeftBe,
            Err(_) => Shared::CannotBe,
        },
    )
}

fn cancelled(thrown: &JsValue) -> bool {
    text_at(thrown, "name").is_some_and(|name| name == "AbortError")
}

fn parts(text: &str) -> Array {
    Array::of1(&text.into())
}

fn stem(name: &str) -> &str {
    name.strip_suffix(".json").unwrap_or(name)
}

/// Frees the file's memory once the browser surely has it.
fn revoke_later(window: &Window, url: String) -> Result<(), StoreError> {
    // It frees itself when it is called.
    let revoke = Closure::once_into_js(move || Url::revoke_object_url(&url));
    window.set_timeout_with_callback_and_timeout_and_arguments_0(
        revoke.unchecked_ref(),
        REVOKE_AFTER_MS,
    )?;
    Ok(())
}
