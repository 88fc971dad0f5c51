//! The time of day. It is written down for people and never orders anything:
//! phones' clocks are wrong too often.

/// Now, in UTC, to the millisecond, as RFC 3339 has it: `2026-05-04T09:08:07.006Z`.
#[must_use]
pub fn now_text() -> String {
    js_sys::Date::new_0().to_iso_string().into()
}
