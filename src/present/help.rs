//! One sentence in place: what to do where something is refused, or where
//! there is nothing yet.

use crate::archive::ImportError;
use crate::session::Session;

/// Why a file was not opened, and what can be done.
#[must_use]
pub fn not_opened(why: ImportError) -> String {
    let what = match why {
        ImportError::TooNew { .. } => "Nothing was changed.",
        _ => {
            "Nothing was changed. Try another copy of it, or choose a file that was exported \
             from here."
        }
    };
    format!("{why} {what}")
}

/// True as long as no reading stands.
#[must_use]
pub fn nothing_read(session: &Session) -> bool {
    session.standing().next().is_none()
}

/// Findings without readings.
pub const NO_FINDINGS: &str = "Nothing is read yet. Measure: each part gets its word here as soon \
                               as it is read. Without limits it says sizes, and beside them what \
                               common rules say.";

/// A plan without readings.
pub const NO_PLAN: &str = "Nothing is read yet, so there is nothing to go by. Measure, and enter \
                           the limits of your manual: the plan for the whole set follows from \
                           them. Prices can come last.";

/// A plan that rests on open questions.
pub const PLAN_RESTS: &str = "Not sure yet: this holds only if all turns out well that stands \
                              under “Find out before you order”.";

/// What is asked for is nothing.
pub const NOTHING_ASKED: &str = "Nothing is asked for. Choose what to measure, and its places, \
                                 gauges and limits come up.";

/// The same on the route, where the way there is a key.
pub(super) const NOTHING_ON_ROUTE: &str = "Nothing is asked for: under Go to, choose what to \
                                           measure.";

/// No gauge at hand.
pub const NO_GAUGES: &str = "No gauge is at hand, so nothing can be read: take one into use below.";

/// No gauge at hand measures a kind.
pub const NO_GAUGE_FOR_IT: &str = "None at hand measures this: take one into use below.";

/// Why one spot is read five times.
pub const WHY_FIVE_TIMES: &str = "Five readings of one spot tell how far your own readings differ. \
                                  Without them common practice is taken, and less may be proved.";

/// Why a gauge is checked, or set.
#[must_use]
pub const fn why_set(dial: bool) -> &'static str {
    if dial {
        "A dial shows only how much more or less: set it on a known size first."
    } else {
        "What it shows too much there is taken off all you read with it. Unchecked, it may be a \
         little off, and less is proved."
    }
}

/// What the words of limits and findings mean, one sentence each.
pub const WORDS: [[&str; 2]; 9] = [
    [
        "New, low and high",
        "Between these two a new part was made.",
    ],
    [
        "Service limit",
        "How far the manual lets it wear before it has to be machined or replaced.",
    ],
    ["Wear", "A bore’s size less its unworn size."],
    [
        "Out-of-round",
        "Two diameters at one level, one less the other.",
    ],
    ["Taper", "The size at one end less the size at the other."],
    [
        "Barrel or hour-glass",
        "Thicker or thinner in the middle than at both ends.",
    ],
    [
        "Piston-to-wall",
        "The bore less the piston in it, on diameter.",
    ],
    [
        "Oil clearance",
        "The bore of the fitted shells less the journal, on diameter.",
    ],
    ["≈", "Rounded to be shown; what is compared is exact."],
];
