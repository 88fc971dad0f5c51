//! The shape beside a comparison.

use leptos::prelude::*;

use crate::present::Mark;

/// A mark, drawn; the words beside it tell the same, so it is hidden from
/// screen readers.
pub fn mark_sign(mark: Mark) -> AnyView {
    // In a square of 24: inside is round, outside has corners, the side
    // that is off shows which way.
    let path = match mark {
        Mark::New => "M12 3a9 9 0 1 0 0 18a9 9 0 1 0 0-18z",
        Mark::Service => "M12 3a9 9 0 1 0 0 18a9 9 0 1 0 0-18zM12 6v12a6 6 0 1 0 0-12z",
        Mark::Small => "M3 5h18l-9 15z",
        Mark::Large => "M3 19h18L12 4z",
        Mark::Shape => "M12 2l10 10-10 10L2 12z",
        Mark::NoLimit => {
            "M12 3a9 9 0 1 0 0 18a9 9 0 1 0 0-18zM12 5.5a6.5 6.5 0 1 1 0 13a6.5 6.5 0 1 1 0-13z"
        }
        // A bow: it could be either.
        Mark::Open => "M3 4l18 16V4L3 20z",
        Mark::Unread => "M4 11h16v2H4z",
    };
    view! {
        <svg class="mark" data-mark=mark.key() viewBox="0 0 24 24" aria-hidden="true">
            <path d=path fill-rule="evenodd"/>
        </svg>
    }
    .into_any()
}
