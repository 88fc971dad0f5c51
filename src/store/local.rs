//! localStorage: short texts under keys, at once and without waiting.
//!
//! Values are raw texts, without the quotes a JSON value would get. A value
//! written here is safe from a crash of the page but not, for up to a minute,
//! from a kill of the browser; that is what the journal is for.

use gloo_storage::{LocalStorage, Storage as _};
use litemap::LiteMap;
use web_sys::Storage;

use super::{StoreError, window};

/// The text under a key, if there is one.
///
/// # Errors
/// [`StoreError::Refused`] where the browser denies storage.
pub fn get(key: &str) -> Result<Option<String>, StoreError> {
    Ok(storage()?.get_item(key)?)
}

/// Puts a text under a key, in place of what was there.
///
/// # Errors
/// [`StoreError::Full`] when it does not fit: the text that was there stays.
/// [`StoreError::Refused`] where the browser denies storage.
pub fn put(key: &str, text: &str) -> Result<(), StoreError> {
    Ok(storage()?.set_item(key, text)?)
}

/// Takes a key and its text away; nothing happens if it is not there.
///
/// # Errors
/// [`StoreError::Refused`] where the browser denies storage.
pub fn remove(key: &str) -> Result<(), StoreError> {
    Ok(storage()?.remove_item(key)?)
}

/// Keys that begin with `prefix`, with their texts, sorted by key.
///
/// # Errors
/// [`StoreError::Refused`] where the browser denies storage.
pub fn entries(prefix: &str) -> Result<Vec<(String, String)>, StoreError> {
    let storage = storage()?;
    let mut entries = LiteMap::<String, String>::new();
    for index in 0..storage.length()? {
        if let Some(key) = storage.key(index)?
            && key.starts_with(prefix)
            && let Some(text) = storage.get_item(&key)?
        {
            entries.insert(key, text);
        }
    }
    Ok(entries.into_iter().collect())
}

/// Bytes in use by all keys and texts, two for each UTF-16 unit as browsers count them. The
/// usual limit is 10 MiB (10 485 760), and no browser reports what is left of it.
///
/// # Errors
/// [`StoreError::Refused`] where the browser denies storage.
pub fn used_bytes() -> Result<usize, StoreError> {
    let units = |text: &str| text.encode_utf16().count();
    Ok(entries("")?
        .iter()
        .map(|(key, text)| 2 * (units(key) + units(text)))
        .sum())
}

/// localStorage, if the browser allows it. `LocalStorage::raw` panics where it does not, so
/// that is asked first.
fn storage() -> Result<Storage, StoreError> {
    window()?.local_storage()?.ok_or(StoreError::Refused)?;
    Ok(LocalStorage::raw())
}
