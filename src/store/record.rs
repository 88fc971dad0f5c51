//! The one shape that leaves this room: `{session, text}`. It stands in the
//! journal and goes to other tabs; the rescue page reads it without this code.

use js_sys::{Object, Reflect};
use wasm_bindgen::JsValue;

use super::{StoreError, text_at};

/// The two texts as a plain object.
pub(super) fn object(session: &str, text: &str) -> Result<JsValue, StoreError> {
    let object = Object::new();
    Reflect::set(&object, &"session".into(), &session.into())?;
    Reflect::set(&object, &"text".into(), &text.into())?;
    Ok(object.into())
}

/// The two texts of such an object; nothing if it has another shape.
pub(super) fn texts(object: &JsValue) -> Option<(String, String)> {
    Some((text_at(object, "session")?, text_at(object, "text")?))
}
