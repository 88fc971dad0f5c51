//! What is proved of a value, and how sure it is.

use super::view::View;
use super::{FindingKey, Settle, UsedLimits};
use crate::quantity::{Exact, Weights};
use crate::session::{Quantity, wears};
use crate::uncertainty::{Combined, Measured, Probability};
use crate::verdict::{Band, Decision, DecisionRule, Limits, Verdict, Wear};

/// The rule by which verdicts are given.
pub const RULE: DecisionRule = DecisionRule::ONE_SIDED_95;

/// How sure a value is, and what is proved of it by [`RULE`].
#[derive(Clone, Debug, PartialEq)]
pub struct Sure {
    /// The value at 20 °C, with the errors it holds.
    pub measured: Measured,
    /// Its standard uncertainty and the degrees of freedom.
    pub combined: Combined,
    /// How far inside a limit the value must lie to be proved within it.
    pub guard: Exact,
    /// What is proved.
    pub verdict: Verdict,
    /// The probability that the feature lies within the band that decided;
    /// `None` without limits.
    pub conformity: Option<Probability>,
    /// Distance of the value from the nearest end of that band, negative
    /// outside.
    pub margin: Option<Exact>,
    /// Of a shape that is less than twice its uncertainty: how large it may
    /// be at most.
    pub at_most: Option<Exact>,
    /// What would settle it, where it is too close to call.
    pub settle: Option<Settle>,
}

impl View<'_> {
    /// How sure the value of these weights is. Where it is the worst of
    /// several, those are given as well: all must be in for it to be in, and
    /// one that is out must be more surely so than a single one, or the worst
    /// of enough good ones would always be convicted.
    pub(super) fn sure(
        &self,
        key: FindingKey,
        weights: &Weights,
        among: &[Weights],
        limits: &UsedLimits,
    ) -> Option<Sure> {
        let measured = Measured::weighted(weights, &self.measured)?;
        self.sure_of(key, measured, among, limits)
    }

    /// The same of a value that is no weighted sum of sizes.
    pub(super) fn sure_of(
        &self,
        key: FindingKey,
        measured: Measured,
        among: &[Weights],
        limits: &UsedLimits,
    ) -> Option<Sure> {
        let combined = measured.combined(self.doubts.sources());
        let value = measured.value();
        let convict = u32::try_from(among.len()).unwrap_or(u32::MAX);
        let [pass, convict] =
            [RULE.millionths, RULE.to_convict_by_one_of(convict)].map(Probability::per_million);
        let mut guard = self.factors.guard_band(&combined, pass);
        let mut guard_out = self.factors.guard_band(&combined, convict);
        for other in among {
            let other = Measured::weighted(other, &self.measured)?;
            let combined = other.combined(self.doubts.sources());
            guard = guard.max(self.factors.guard_band(&combined, pass));
            guard_out = guard_out.max(self.factors.guard_band(&combined, convict));
        }
        let limits = &limits.limits;
        let is_critical = is_critical(key, limits, value, guard);
        let decide = |band: &Band| band.decide_worst(&[(value, guard, guard_out)]);
        let service = match key.quantity {
            Quantity::Size => {
                let [worn, other] = sides(&limits.service, wears(key.feature.kind, key.quantity));
                match decide(&other) {
                    Some(Decision::Out) => Some(Decision::Out),
                    _ => decide(&worn),
                }
            }
            _ => decide(&limits.service),
        };
        let verdict = Verdict::of(decide(&limits.new), service, is_critical);
        let band = deciding(limits, verdict);
        let conformity = (!band.is_open()).then(|| combined.within(value, band.low, band.high));
        let mut sure = Sure {
            measured,
            combined,
            guard,
            verdict,
            conformity,
            margin: band.margin(value),
            at_most: None,
            settle: None,
        };
        sure.settle = self.settle(&sure);
        Some(sure)
    }
}

/// Whether the least clearance is in doubt: too little of it seizes, so
/// nothing is left to the person there.
fn is_critical(key: FindingKey, limits: &Limits, value: Exact, guard: Exact) -> bool {
    let least = limits.service.low.or(limits.new.low);
    key.quantity == Quantity::Clearance && least.is_some_and(|least| value < least + guard)
}

/// The end of a service band to which wear leads, and the other one. Wear
/// never leads there, so a size near it need not be proved inside: it only
/// must not be proved outside.
fn sides(band: &Band, wear: Wear) -> [Band; 2] {
    let [low, high] = [Band::new(band.low, None), Band::new(None, band.high)];
    match wear {
        Wear::Larger => [high, low],
        Wear::Smaller => [low, high],
    }
}

/// The band a verdict is about: the one as made where the value lies in it,
/// or where there is no other.
pub(super) fn deciding(limits: &Limits, verdict: Verdict) -> Band {
    match verdict {
        Verdict::WithinNew | Verdict::OutsideNew => limits.new,
        _ if limits.service.is_open() => limits.new,
        _ => limits.service,
    }
}
