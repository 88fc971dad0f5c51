//! Verdicts and comparisons, as a shape and in words.

use super::wording::number;
use crate::quantity::{Exact, Unit, show};
use crate::session::Quantity;
use crate::verdict::{Comparison, Verdict};

/// The shape that stands beside a comparison, so that no state is told by
/// colour alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// Inside new limits.
    New,
    /// Inside the service limit.
    Service,
    /// Beyond or outside, too small.
    Small,
    /// Beyond or outside, too large.
    Large,
    /// Beyond or outside, out of shape.
    Shape,
    /// Neither inside nor beyond is proved.
    Open,
    /// No limit given.
    NoLimit,
    /// Not measured.
    Unread,
}

impl Mark {
    /// The word by which styles know the mark.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::New => "new",
            Self::Service => "service",
            Self::Small => "small",
            Self::Large => "large",
            Self::Shape => "shape",
            Self::Open => "open",
            Self::NoLimit => "no-limit",
            Self::Unread => "unread",
        }
    }
}

/// The mark of a comparison of a quantity.
#[must_use]
pub const fn mark(quantity: Quantity, comparison: Option<Comparison>) -> Mark {
    match comparison {
        None => Mark::Unread,
        Some(Comparison::NoLimit) => Mark::NoLimit,
        Some(Comparison::InsideNew) => Mark::New,
        Some(Comparison::InsideService) => Mark::Service,
        Some(Comparison::BeyondLimit(by) | Comparison::OutsideNew(by)) => match quantity {
            Quantity::OutOfRound | Quantity::Taper | Quantity::Barrel | Quantity::Twist => {
                Mark::Shape
            }
            _ if by.is_negative() => Mark::Small,
            _ => Mark::Large,
        },
    }
}

/// The mark of a verdict, with the comparison it is about.
#[must_use]
pub const fn verdict_mark(quantity: Quantity, verdict: Verdict, reads: Option<Comparison>) -> Mark {
    match verdict {
        Verdict::WithinNew => Mark::New,
        Verdict::WithinService => Mark::Service,
        Verdict::TooClose | Verdict::DoNotAssemble | Verdict::NotSeen => Mark::Open,
        Verdict::NoLimit => Mark::NoLimit,
        Verdict::BeyondLimit | Verdict::OutsideNew => mark(quantity, reads),
    }
}

/// The words of a verdict; what is proved to be outside, with the amount it
/// reads.
#[must_use]
pub fn verdict_words(
    quantity: Quantity,
    verdict: Verdict,
    reads: Option<Comparison>,
    unit: Unit,
) -> String {
    let word = match verdict {
        Verdict::WithinNew => "within new limits",
        Verdict::WithinService => "within service limit",
        Verdict::TooClose => "too close to call",
        Verdict::DoNotAssemble => "too close to call: do not assemble, have it measured",
        Verdict::NotSeen => "not seen all round: other directions were not read",
        Verdict::NoLimit => "no limit given",
        Verdict::BeyondLimit | Verdict::OutsideNew => {
            let words = comparison_words(quantity, reads, unit);
            return words.strip_prefix("reads ").unwrap_or(&words).to_owned();
        }
    };
    word.to_owned()
}

/// The sentence of a comparison.
#[must_use]
pub fn comparison_words(quantity: Quantity, comparison: Option<Comparison>, unit: Unit) -> String {
    let how = || match mark(quantity, comparison) {
        Mark::Shape => "",
        Mark::Small => " (too small)",
        _ => " (too large)",
    };
    let amount = |by: Exact| {
        let shown = show(by.abs(), unit, unit.decimals());
        format!("{} {}{}", number(&shown), unit.sign(), how())
    };
    match comparison {
        None => "not measured".to_owned(),
        Some(Comparison::InsideNew) => "reads inside new limits".to_owned(),
        Some(Comparison::InsideService) => "reads inside service limit".to_owned(),
        Some(Comparison::BeyondLimit(by)) => format!("reads beyond limit by {}", amount(by)),
        Some(Comparison::OutsideNew(by)) => {
            format!("reads outside new limits by {}", amount(by))
        }
        Some(Comparison::NoLimit) => "no limit given".to_owned(),
    }
}
