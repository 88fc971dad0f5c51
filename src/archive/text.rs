//! Small pieces of JSON text.

use crate::session::Extra;

/// A string with its quotes.
pub(super) fn quoted(text: &str) -> String {
    serde_json::Value::from(text).to_string()
}

/// An object on one line, the unknown fields last.
pub(super) fn object(fields: &[(&str, String)], extra: &Extra) -> String {
    let known = fields.iter().map(|(key, text)| (*key, text.as_str()));
    let unknown = extra.iter().map(|(key, text)| (key.as_str(), text.as_str()));
    let fields: Vec<_> = known.chain(unknown).map(field).collect();
    format!("{{{}}}", fields.join(","))
}

/// An object with a field a line.
pub(super) fn lines(fields: &[(String, String)]) -> String {
    let fields: Vec<_> = fields
        .iter()
        .map(|(key, text)| field((key, text)))
        .collect();
    format!("{{\n{}\n}}", fields.join(",\n"))
}

fn field((key, text): (&str, &str)) -> String {
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
