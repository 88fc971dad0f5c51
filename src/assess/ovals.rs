//! What is proved of an out-of-round.

use super::sure::{RULE, Sure, deciding};
use super::view::{View, rank};
use crate::form::OutOfRound;
use crate::quantity::Exact;
use crate::session::{Feature, Kind, Quantity};
use crate::uncertainty::{Combined, Measured, Probability, rounded};
use crate::verdict::{Band, Decision, Oval, OvalLevel, Ovals, Part, Verdict};

/// What was seen of the ovals of a feature: of a bore one for each level,
/// which are told apart; of a journal one all along.
pub(super) struct Seen {
    groups: Vec<Vec<OvalLevel>>,
    /// How sure each square pair is.
    parts: Vec<Combined>,
}

impl Seen {
    /// The square pairs of a feature, arranged by level.
    pub(super) fn of(view: &View<'_>, feature: Feature, pairs: &[OutOfRound]) -> Self {
        let levels = feature.kind.levels();
        let last = levels.last().map_or(0, |level| rank(feature.kind, *level));
        let mut seen = Self {
            groups: Vec::new(),
            parts: Vec::new(),
        };
        let mut found = Vec::new();
        for along in 0..=last {
            let mut level = OvalLevel::at_rank(along, last);
            let mut is_read = false;
            for pair in pairs.iter().filter(|pair| pair.along == along) {
                let Some(measured) = Measured::weighted(&pair.weights, &view.measured) else {
                    continue;
                };
                let combined = measured.combined(view.doubts.sources());
                let looks = pair.weights.terms().len() / 2;
                let looks = u16::try_from(looks.max(1)).unwrap_or(u16::MAX);
                let place = usize::from(pair.angle / 45);
                if let Some(part) = level.parts.get_mut(place) {
                    *part = Part::new(measured.value(), &combined, looks);
                    seen.parts.push(combined);
                    is_read = true;
                }
            }
            if is_read {
                found.push(level);
            }
        }
        if feature.kind == Kind::Bore {
            seen.groups = found.into_iter().map(|level| vec![level]).collect();
        } else if !found.is_empty() {
            seen.groups = vec![found];
        }
        seen
    }

    /// Whether both square pairs were read, so that an oval cannot hide
    /// between the directions of one.
    fn all_round(&self) -> bool {
        let read = |levels: &Vec<OvalLevel>| {
            [0, 1].map(|part| {
                let part = |level: &OvalLevel| level.parts.get(part).is_some_and(|p| 0 < p.looks);
                levels.iter().any(part)
            })
        };
        !self.groups.is_empty() && self.groups.iter().all(|levels| read(levels) == [true; 2])
    }

    fn ovals<'a>(&self, levels: &'a [OvalLevel], limit: Exact, convict: bool) -> Ovals<'a> {
        let several = u32::try_from(self.groups.len()).unwrap_or(u32::MAX);
        let sure = if convict {
            RULE.to_convict_by_one_of(several)
        } else {
            RULE.millionths
        };
        Ovals::new(levels, limit, &self.parts, Probability::per_million(sure))
    }

    /// Decides on one band: in if every oval is, out if one is.
    fn decide(&self, band: &Band) -> Option<Decision> {
        let limit = band.high?;
        let is = |levels: &Vec<OvalLevel>, convict: bool, what: Decision| {
            self.ovals(levels, limit, convict).decide() == what
        };
        Some(
            if self
                .groups
                .iter()
                .any(|levels| is(levels, true, Decision::Out))
            {
                Decision::Out
            } else if self
                .groups
                .iter()
                .all(|levels| is(levels, false, Decision::In))
            {
                Decision::In
            } else {
                Decision::Open
            },
        )
    }

    /// Puts right what was said of the largest out-of-round, or of the fitted
    /// oval: an oval is judged by all that was read of it, and what was read
    /// in two directions only is never proved to be round.
    pub(super) fn judge(&self, view: &View<'_>, feature: Feature, sure: &mut Sure) {
        let used = view.limits(feature.kind, Quantity::OutOfRound);
        let limits = &used.limits;
        if self.all_round() {
            let decided = [limits.new, limits.service].map(|band| self.decide(&band));
            sure.verdict = Verdict::of(decided[0], decided[1], false);
        } else if matches!(
            sure.verdict,
            Verdict::WithinNew | Verdict::WithinService | Verdict::TooClose
        ) {
            sure.verdict = Verdict::NotSeen;
            sure.conformity = None;
        }
    }

    /// How sure the largest fitted oval is.
    pub(super) fn fitted(
        &self,
        view: &View<'_>,
        feature: Feature,
        mut sure: Sure,
        size: Exact,
    ) -> Sure {
        let used = view.limits(feature.kind, Quantity::OutOfRound);
        self.judge(view, feature, &mut sure);
        let band = deciding(&used.limits, sure.verdict);
        let limit = band.high.unwrap_or(Exact::ZERO);
        let ovals = self.groups.iter().flat_map(|levels| {
            let ovals = self.ovals(levels, limit, false);
            let factor = ovals.factor;
            ovals
                .at_levels()
                .into_iter()
                .map(move |oval| (oval, factor))
        });
        let larger = |a: (Oval, _), b: (Oval, _)| if a.0.size() < b.0.size() { b } else { a };
        let Some((oval, factor)) = ovals.reduce(larger) else {
            return sure;
        };
        let nu = self
            .parts
            .iter()
            .map(Combined::nu)
            .reduce(|a, b| if a < b { a } else { b });
        sure.combined = Combined::new(oval.u(), nu.unwrap_or_default());
        let confidence = Probability::per_million(RULE.millionths);
        sure.guard = sure.combined.guard_band(confidence);
        sure.conformity = band
            .high
            .map(|high| sure.combined.within(size, None, Some(high)));
        sure.at_most = sure
            .combined
            .hides(size)
            .then(|| rounded(oval.at_most(factor)));
        sure
    }
}
