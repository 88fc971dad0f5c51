//! Small pieces of JSON text.

use crate::session::Extra;

/// A string with its quotes.
pub(super) fn quoted(text: &str) -> String {
    // Writing text has no way to fail.
    serde_json::to_string(text).unwrap_or_default()
}

/// An object on one line, the unknown fields last.
pub(super) fn object(fields: &[(&str, String)], extra: &Extra) -> String {
    let mut fields: Vec<_> = fields.iter().map(|(key, text)| field(key, text)).collect();
    if !extra.is_empty() {
        fields.push(extra.clone());
    }
    format!("{{{}}}", fields.join(","))
}

/// An object with a field a line.
pub(super) fn lines(fields: &[(String, String)]) -> String {
    let fields: Vec<_> = fields.iter().map(|(key, text)| field(key, text)).collect();
    format!("{{\n{}\n}}", fields.join(",\n"))
}

/// A field of an object.
pub(super) fn field(key: &str, text: &str) -> String {
    format!("{}:{text}", quoted(key))
}

/// FNV-1a, 64 bit: enough to notice a text that was damaged by chance.
/// Source: IETF draft-eastlake-fnv, offset basis and prime of 64 bits.
pub(super) fn check_sum(text: &str) -> String {
    let hash = text.bytes().fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3)
    });
    format!("{hash:016x}")
}
