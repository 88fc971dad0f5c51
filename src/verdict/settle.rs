//! What would settle what is open: which readings again, how often, and when
//! it is better to stop.
#![allow(
    clippy::float_arithmetic,
    reason = "no length, but how far a doubt reaches; only + - * / and sqrt, so that every \
              device asks for the same"
)]

use super::{Oval, OvalLevel, Ovals};

/// So much more doubt than there is does a plan reckon with: the value, too,
/// moves when more is read. Chosen, as the lengths of the second round, on the
/// journals that the study is built with.
const PLANNED: f64 = 1.06;

/// How much one round of more readings may ask for, in looks. A look is what
/// is read together: one station, or a square pair.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Round {
    /// The most, where that would settle it.
    pub most: u16,
    /// The most where it would not: a few may still move the value.
    pub few: u16,
    /// Whether what was not read yet comes before what was.
    pub unread_first: bool,
}

impl Round {
    /// The round after `done` others of something that took `first` looks at
    /// first. `None` after two: then the shop should measure it.
    ///
    /// The first round takes as long as the first pass, the second up to
    /// twice that. What is still open then lies so near the limit that the
    /// same hand and gauge would go on for long.
    #[must_use]
    pub fn after(done: u8, first: u16) -> Option<Self> {
        let (most, few) = match done {
            0 => (first, first),
            1 => (
                first.saturating_mul(5) / 2,
                first.saturating_add(first / 4 * 2),
            ),
            _ => return None,
        };
        Some(Self {
            most,
            few,
            unread_first: done == 0,
        })
    }
}

/// What to read next.
#[derive(Clone, Debug, PartialEq)]
pub struct Ask {
    /// The looks by their index, the most useful first; an index again is
    /// another look.
    pub looks: Vec<usize>,
    /// Whether that should settle it, if the value stays as it is.
    pub settles: bool,
    /// By what factor all doubt would have to shrink for what was read to
    /// settle it: what a gauge for this needs, as a part of this one's error.
    pub finer: f64,
}

/// What repeats do to the variance of a part of an oval, in quanta².
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Repeats {
    /// Of one look: shrinks with their number.
    pub once: f64,
    /// What no number of looks takes away.
    pub fixed: f64,
}

/// One look's part in the variance of a quantity that is a weighted sum.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Share {
    /// What repeats shrink, as it stands, in quanta².
    pub variance: f64,
    /// How often it was read, at least once.
    pub looks: u16,
}

/// Whether the variance that no repeat takes away leaves a value open that
/// lies so far from the limit, in quanta.
#[must_use]
pub fn never(distance: f64, factor: f64, fixed: f64) -> bool {
    distance <= factor * fixed.sqrt()
}

/// What settles a quantity that is a weighted sum of readings: its distance
/// from the limit, in quanta, the factor of the rule, the variance that no
/// repeat takes away, and each look's share in the rest.
#[must_use]
pub fn ask(distance: f64, factor: f64, fixed: f64, shares: &[Share], round: Round) -> Ask {
    let doubt = |added: &[u16]| {
        let left = shares.iter().zip(added).map(|(share, more)| {
            let looks = f64::from(share.looks.max(1));
            share.variance * looks / (looks + f64::from(*more))
        });
        factor * (fixed + left.sum::<f64>()).sqrt()
    };
    let gap = |added: &[u16]| PLANNED * doubt(added) - distance;
    let (looks, settles) = choose(shares.len(), round, &|_, _| true, &gap);
    let finer = distance / doubt(&vec![0; shares.len()]);
    Ask {
        looks,
        settles,
        finer,
    }
}

impl Ovals<'_> {
    /// What settles an oval. Look 2 l + p is part p of level l.
    #[must_use]
    pub fn ask(&self, repeats: Repeats, round: Round) -> Ask {
        let now = self.at_levels();
        let together = self.together();
        let is_inside = now.iter().all(|oval| oval.size() <= self.limit);
        let gap = |added: &[u16]| {
            let levels = repeats.after(self.levels, added);
            let then = Ovals {
                levels: &levels,
                ..*self
            };
            let variances = then
                .at_levels()
                .into_iter()
                .chain([then.together()])
                .map(|oval| oval.variance);
            let ovals = now
                .iter()
                .chain([&together])
                .take(if is_inside { now.len() } else { now.len() + 1 })
                .zip(variances)
                .map(|(oval, variance)| Oval {
                    value: oval.value,
                    variance,
                });
            self.gap(is_inside, ovals, PLANNED * self.factor)
        };
        let may = |look: usize, added: &[u16]| self.may(round, is_inside, look, added);
        let (looks, settles) = choose(2 * self.levels.len(), round, &may, &gap);
        let finer = now.iter().map(|oval| {
            let distance = (self.limit - oval.size()) / (self.factor * oval.u());
            if is_inside { distance } else { -distance }
        });
        let finer = if is_inside {
            finer.fold(f64::INFINITY, f64::min)
        } else {
            finer.fold(0.0, f64::max)
        };
        Ask {
            looks,
            settles,
            finer,
        }
    }

    /// How far the doubt reaches over the limit, from the side on which the
    /// ovals lie; nothing or less where they are decided.
    fn gap(&self, is_inside: bool, ovals: impl Iterator<Item = Oval>, factor: f64) -> f64 {
        if is_inside {
            let most = ovals.map(|oval| oval.at_most(factor));
            most.fold(0.0, f64::max) - self.limit
        } else {
            let least = ovals.map(|oval| oval.at_least(factor));
            self.limit - least.fold(0.0, f64::max)
        }
    }

    /// Whether a look may be asked for. A level that by itself reads beyond
    /// the limit while all together do not goes before all others. In a first
    /// round the parts not yet read at the two ends do, where a straight line
    /// is known least: so that an oval which changes along is seen to.
    fn may(&self, round: Round, is_inside: bool, look: usize, added: &[u16]) -> bool {
        let contrary = |level: &OvalLevel| is_inside && self.limit < level.as_read();
        if let Some(contrary) = self.levels.iter().position(contrary) {
            return look / 2 == contrary;
        }
        let last = self.levels.len().saturating_sub(1);
        let is_unread = |look: usize| {
            let level = self.levels.get(look / 2);
            let part = level.and_then(|level| level.parts.get(look % 2));
            (look / 2 == 0 || look / 2 == last)
                && part.is_some_and(|part| part.looks == 0)
                && added.get(look) == Some(&0)
        };
        let any_unread = round.unread_first && (0..2 * self.levels.len()).any(is_unread);
        !any_unread || is_unread(look)
    }
}

impl Repeats {
    /// By the variances of a part that was read so often.
    #[must_use]
    pub fn new(by_hand: f64, looks: u16, fixed: f64) -> Self {
        Self {
            once: by_hand * f64::from(looks.max(1)),
            fixed,
        }
    }

    /// The levels with so many more looks, their values left as they are.
    fn after(&self, levels: &[OvalLevel], added: &[u16]) -> Vec<OvalLevel> {
        let mut levels = levels.to_vec();
        let parts = levels.iter_mut().flat_map(|level| &mut level.parts);
        for (part, more) in parts.zip(added).filter(|(_, more)| 0 < **more) {
            let looks = f64::from(part.looks);
            let so_far = part.variance - self.fixed;
            let once = if 0 < part.looks {
                so_far * looks
            } else {
                self.once
            };
            part.looks = part.looks.saturating_add(*more);
            part.variance = self.fixed + once / f64::from(part.looks);
        }
        levels
    }
}

/// Takes the look that leaves the smallest gap, then the next, until there is
/// none; at least one. And whether that is so.
fn choose(
    count: usize,
    round: Round,
    may: &dyn Fn(usize, &[u16]) -> bool,
    gap: &dyn Fn(&[u16]) -> f64,
) -> (Vec<usize>, bool) {
    let mut added = vec![0; count];
    let mut looks = Vec::new();
    let mut left = f64::INFINITY;
    while looks.len() < usize::from(round.most) && 0.0 < left {
        let mut best: Option<(usize, f64)> = None;
        for look in (0..count).filter(|look| may(*look, &added)) {
            let mut then = added.clone();
            one_more(&mut then, look);
            let gap = gap(&then);
            if best.is_none_or(|(_, least)| gap < least) {
                best = Some((look, gap));
            }
        }
        let Some((look, gap)) = best else { break };
        one_more(&mut added, look);
        looks.push(look);
        left = gap;
    }
    let settles = left <= 0.0;
    if !settles {
        looks.truncate(round.few.into());
    }
    (looks, settles)
}

fn one_more(added: &mut [u16], look: usize) {
    if let Some(more) = added.get_mut(look) {
        *more += 1;
    }
}
