//! What is refused before anything is read.

use super::ImportError;

/// Largest text: 2.5 MiB, so that a session with the most readings it can
/// hold (about 210 bytes each) always opens again.
pub const BYTES_MAX: usize = 5 * 512 * 1024;

/// Deepest nesting. A session has five levels; unknown fields may have more.
pub const DEPTH_MAX: usize = 16;

/// The text without a byte order mark, if its size and depth are bearable.
pub(super) fn check(text: &str) -> Result<&str, ImportError> {
    if BYTES_MAX < text.len() {
        return Err(ImportError::TooLarge { bytes: text.len() });
    }
    if DEPTH_MAX < depth(text) {
        return Err(ImportError::TooDeep);
    }
    Ok(text.strip_prefix('\u{feff}').unwrap_or(text))
}

/// The deepest nesting of braces and brackets outside of strings.
fn depth(text: &str) -> usize {
    let (mut deepest, mut depth) = (0, 0_usize);
    let (mut in_string, mut escaped) = (false, false);
    for byte in text.bytes() {
        match byte {
            _ if escaped => escaped = false,
            b'\\' if in_string => escaped = true,
            b'"' => in_string = !in_string,
            b'{' | b'[' if !in_string => {
                depth += 1;
                deepest = deepest.max(depth);
            }
            b'}' | b']' if !in_string => depth = depth.saturating_sub(1),
            _ => {}
        }
    }
    deepest
}
