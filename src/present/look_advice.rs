//! What to do before strip-down, and after metal went round with the oil.

use super::Said;
use crate::remedy::{Aftermath, Source};

/// What to do while the engine is still together, and as it comes apart.
pub const BEFORE_STRIP_DOWN: [(&str, Source); 9] = [
    (
        "Say which end you count from, write it on the block, and keep to it.",
        Source::Practice,
    ),
    (
        "Leak test with the heads on, each cylinder at the top. The crank can spin when air is let in: lock the flywheel, keep your hands out.",
        Source::LeakTest,
    ),
    (
        "Drain the oil through a clean cloth, cut the filter open, keep what you find.",
        Source::Practice,
    ),
    (
        "End play: indicator on the nose, lever the crank to and fro, before a cap comes off.",
        Source::Practice,
    ),
    (
        "Side clearance of each rod, with feelers, before a piston comes out.",
        Source::Practice,
    ),
    (
        "Number each main and rod cap on the side it faces, the same on its partner, with paint or a scriber on a flat that carries no load.",
        Source::Practice,
    ),
    (
        "Tag each shell as it comes out: bearing, upper or lower, which edge was at the first end. Throw none away and wipe none before it was looked at.",
        Source::Practice,
    ),
    (
        "Number each piston and the side it faced; keep its rings with it and note where their gaps stood.",
        Source::Practice,
    ),
    (
        "Keep lifters and all of the valve gear in their order. Broken rings and the edges of bores cut like razors: wear gloves.",
        Source::Practice,
    ),
];

/// Where a crack is asked for.
pub const BY_TEST: &str = "A crack is looked for by a test, with dye or magnetic particles: say \
                           \u{201c}not seen\u{201d} only after one.";

/// What has to be cleaned or replaced once metal went round with the oil.
#[must_use]
pub fn aftermath() -> [Said; 8] {
    Aftermath::ALL.map(|what| {
        let text = match what {
            Aftermath::Cooler => "Replace the oil cooler: it cannot be cleaned reliably.",
            Aftermath::Lines => "Replace oil lines and hoses.",
            Aftermath::Filter => "Replace the filter and its adaptor.",
            Aftermath::Pump => "Replace the oil pump, or at least look at its body for scores.",
            Aftermath::Pickup => "Replace the screen of the pickup.",
            Aftermath::Galleries => "All gallery plugs out: brush and flush every gallery.",
            Aftermath::CrankDrillings => {
                "The crank's plugs out: brush, wash and blow through its drillings."
            }
            Aftermath::SmallWays => {
                "Clean oil jets, a turbo's feed, lifters, cam bearings, cam timing valves and the relief valve."
            }
        };
        Said {
            text: text.to_owned(),
            source: what.source(),
        }
    })
}
