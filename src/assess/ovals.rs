//! What is proved of an out-of-round.

use super::sure::{RULE, Sure, deciding};
use super::view::{View, rank};
use crate::form::OutOfRound;
use crate::quantity::Exact;
use crate::session::{Feature, Kind, Quantity};
use crate::uncertainty::{Combined, Measured, Probability, rounded};
use crate::verdict::{Band, Decision, Oval, OvalLevel, Ovals, Part, Repeats, Verdict};

/// What was seen of the ovals of a feature: of a bore one for each level,
/// which are told apart; of a journal one all along.
pub(super) struct Seen<'a> {
    pub(super) view: &'a View<'a>,
    groups: Vec<Group>,
    /// How sure the least certain square pair is.
    least: Option<Combined>,
    /// What more readings of a pair do to its doubt.
    pub(super) repeats: Option<Repeats>,
}

/// Levels that are judged together, in order along the feature.
#[derive(Default)]
pub(super) struct Group {
    pub(super) ranks: Vec<u8>,
    pub(super) levels: Vec<OvalLevel>,
}

impl<'a> Seen<'a> {
    /// The square pairs of a feature, arranged by level.
    pub(super) fn of(view: &'a View<'a>, feature: Feature, pairs: &[OutOfRound]) -> Self {
        let levels = feature.kind.levels();
        let last = levels.last().map_or(0, |level| rank(feature.kind, *level));
        let mut seen = Self {
            view,
            groups: Vec::new(),
            least: None,
            repeats: None,
        };
        let apart = feature.kind == Kind::Bore;
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
                    if seen.least.is_none_or(|least| combined.nu() < least.nu()) {
                        seen.least = Some(combined);
                    }
                    let by_hand = |draw| view.is_by_hand(draw).then_some(0);
                    let sources = view.doubts.sources();
                    let (each, fixed) = measured.variances(sources, 1, by_hand);
                    let each = each.first().copied().unwrap_or_default();
                    seen.repeats = Some(Repeats::new(each, looks, fixed));
                    is_read = true;
                }
            }
            if is_read {
                if apart || seen.groups.is_empty() {
                    seen.groups.push(Group::default());
                }
                if let Some(group) = seen.groups.last_mut() {
                    group.ranks.push(along);
                    group.levels.push(level);
                }
            }
        }
        seen
    }

    /// Whether both square pairs were read, so that an oval cannot hide
    /// between the directions of one.
    fn all_round(&self) -> bool {
        let read = |group: &Group| {
            let levels = &group.levels;
            [0, 1].map(|part| {
                let part = |level: &OvalLevel| level.parts.get(part).is_some_and(|p| 0 < p.looks);
                levels.iter().any(part)
            })
        };
        !self.groups.is_empty() && self.groups.iter().all(|group| read(group) == [true; 2])
    }

    pub(super) fn ovals<'b>(
        &self,
        levels: &'b [OvalLevel],
        limit: Exact,
        convict: bool,
    ) -> Option<Ovals<'b>> {
        let several = u32::try_from(self.groups.len()).unwrap_or(u32::MAX);
        let sure = if convict {
            RULE.to_convict_by_one_of(several)
        } else {
            RULE.millionths
        };
        let sure = Probability::per_million(sure);
        let factor = self.view.factors.one_sided(self.least.as_ref()?, sure);
        Some(Ovals::new(levels, limit, factor))
    }

    /// Decides on one band: in if every oval is, out if one is.
    fn decide(&self, band: &Band) -> Option<Decision> {
        let limit = band.high?;
        let is = |group: &Group, convict: bool, what: Decision| {
            self.ovals(&group.levels, limit, convict)
                .is_some_and(|ovals| ovals.decide() == what)
        };
        Some(
            if self
                .groups
                .iter()
                .any(|group| is(group, true, Decision::Out))
            {
                Decision::Out
            } else if self
                .groups
                .iter()
                .all(|group| is(group, false, Decision::In))
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
    pub(super) fn judge(&self, feature: Feature, sure: &mut Sure) {
        let used = self.view.limits(feature.kind, Quantity::OutOfRound);
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
        let band = deciding(limits, sure.verdict);
        let settle = band
            .high
            .and_then(|limit| self.settle(feature, sure.verdict, limit));
        sure.settle = settle;
    }

    /// The group with the widest oval.
    pub(super) fn widest(&self, limit: Exact) -> Option<&Group> {
        let size = |group: &Group| {
            let ovals = self.ovals(&group.levels, limit, false);
            let sizes = ovals.into_iter().flat_map(|ovals| ovals.at_levels());
            sizes
                .map(|oval| oval.size())
                .reduce(|a, b| if a < b { b } else { a })
        };
        let wider = |a, b| if size(a) < size(b) { b } else { a };
        self.groups.iter().reduce(wider)
    }

    /// A group, the place in it of a level and a part that nobody has read.
    pub(super) fn unread(&self) -> Option<(&Group, usize, usize)> {
        let part = |level: &OvalLevel| level.parts.iter().position(|part| part.looks == 0);
        self.groups.iter().find_map(|group| {
            let mut levels = group.levels.iter().enumerate();
            levels.find_map(|(at, level)| Some((group, at, part(level)?)))
        })
    }

    /// How sure the largest fitted oval is.
    pub(super) fn fitted(&self, feature: Feature, mut sure: Sure, size: Exact) -> Sure {
        let used = self.view.limits(feature.kind, Quantity::OutOfRound);
        self.judge(feature, &mut sure);
        let band = deciding(&used.limits, sure.verdict);
        let limit = band.high.unwrap_or(Exact::ZERO);
        let ovals = self.groups.iter().filter_map(|group| {
            let ovals = self.ovals(&group.levels, limit, false)?;
            Some(
                ovals
                    .at_levels()
                    .into_iter()
                    .map(move |oval| (oval, ovals.factor)),
            )
        });
        let larger = |a: (Oval, _), b: (Oval, _)| if a.0.size() < b.0.size() { b } else { a };
        let (Some((oval, factor)), Some(least)) = (ovals.flatten().reduce(larger), self.least)
        else {
            return sure;
        };
        sure.combined = Combined::new(oval.u(), least.nu());
        let confidence = Probability::per_million(RULE.millionths);
        sure.guard = self.view.factors.guard_band(&sure.combined, confidence);
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
