//! What would settle a finding that is too close to call.

use super::Cause;
use super::ovals::{Group, Seen};
use super::sure::{RULE, Sure};
use super::view::View;
use crate::quantity::Exact;
use crate::session::{Feature, Station};
use crate::uncertainty::{Draw, Probability, quanta};
use crate::verdict::{Ask, Round, Share, Verdict, ask, never};

/// What to do about a finding that is too close to call.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Settle {
    /// Read these places again, so often; whether that should do, if the
    /// value stays.
    Read(Vec<(Station, usize)>, bool),
    /// Repeats with this gauge cannot; one that is sure to so much can.
    FinerGauge(Exact),
    /// Two rounds more left it open: let the shop measure it.
    Shop,
}

impl View<'_> {
    /// Whether an error is a new one at every reading.
    pub(super) fn is_by_hand(&self, draw: Draw) -> bool {
        matches!(
            self.doubts.cause(draw.source),
            Some(Cause::Repeatability(..))
        )
    }

    /// What would settle a value that is a weighted sum of readings; `None`
    /// where it is settled.
    pub(super) fn settle(&self, sure: &Sure) -> Option<Settle> {
        if !matches!(sure.verdict, Verdict::TooClose | Verdict::DoNotAssemble) {
            return None;
        }
        let distance = sure.margin?.abs();
        let stations: Vec<(&Station, &Vec<usize>)> = self.stations.iter().collect();
        let place = |index: usize| {
            let here = |(_, here): &(&Station, &Vec<usize>)| here.contains(&index);
            stations.iter().position(here)
        };
        let sources = self.doubts.sources();
        let (each, fixed) = sure.measured.variances(sources, stations.len(), |draw| {
            if self.is_by_hand(draw) {
                place(draw.number)
            } else {
                None
            }
        });
        let mut shares = Vec::new();
        let mut asked = Vec::new();
        for ((station, here), variance) in stations.iter().zip(each) {
            if variance != 0.0 {
                let looks = u16::try_from(here.len()).unwrap_or(u16::MAX);
                shares.push(Share { variance, looks });
                asked.push(**station);
            }
        }
        let confidence = Probability::per_million(RULE.millionths);
        let factor = self.factors.one_sided(&sure.combined, confidence);
        if never(quanta(distance), factor, fixed) {
            return Some(Settle::FinerGauge(distance));
        }
        let Some(round) = round(shares.iter().map(|share| share.looks)) else {
            return Some(Settle::Shop);
        };
        let told = ask(quanta(distance), factor, fixed, &shares, round);
        let at = |look: usize| asked.get(look).copied().into_iter().collect();
        Some(self.reading(&told, at))
    }
}

impl Seen<'_> {
    /// What would settle an oval: more of its square pairs, those first that
    /// nobody has read.
    pub(super) fn settle(
        &self,
        feature: Feature,
        verdict: Verdict,
        limit: Exact,
    ) -> Option<Settle> {
        if !matches!(verdict, Verdict::TooClose | Verdict::NotSeen) {
            return None;
        }
        let pair = |group: &Group, level: usize, part: usize| {
            let rank = group.ranks.get(level).copied().unwrap_or_default();
            let level = feature.kind.levels().get(usize::from(rank)).copied();
            let pair = level.map(|level| feature.pair(level, part == 1));
            pair.into_iter().flatten().collect::<Vec<_>>()
        };
        if verdict == Verdict::NotSeen {
            let (group, level, part) = self.unread()?;
            let told = self.view.to_read(pair(group, level, part), 1);
            return Some(Settle::Read(told, false));
        }
        // The levels of a bore are settled one by one, the widest first.
        let group = self.widest(limit)?;
        let parts = group.levels.iter().flat_map(|level| level.parts);
        let Some(round) = round(parts.map(|part| part.looks).filter(|looks| 0 < *looks)) else {
            return Some(Settle::Shop);
        };
        let told = self
            .ovals(&group.levels, limit, false)?
            .ask(self.repeats?, round);
        let at = |look: usize| pair(group, look / 2, look % 2);
        Some(self.view.reading(&told, at))
    }
}

/// The round that comes next, by how often each look was taken: the first
/// where most were taken once, none after two more.
fn round(looks: impl Iterator<Item = u16>) -> Option<Round> {
    let (mut places, mut all) = (0_u16, 0_u16);
    for looks in looks {
        places = places.saturating_add(1);
        all = all.saturating_add(looks);
    }
    let rounds = [places.saturating_mul(2), places.saturating_mul(4)];
    let done = rounds.into_iter().filter(|round| *round <= all).count();
    Round::after(u8::try_from(done).unwrap_or(u8::MAX), places)
}

impl View<'_> {
    /// The stations of what is asked for, each with how often.
    fn reading(&self, told: &Ask, stations: impl Fn(usize) -> Vec<Station>) -> Settle {
        let mut looks: Vec<(usize, usize)> = Vec::new();
        for look in &told.looks {
            match looks.iter_mut().find(|(known, _)| known == look) {
                Some((_, times)) => *times += 1,
                None => looks.push((*look, 1)),
            }
        }
        let each = looks.iter();
        let asked = each.flat_map(|&(look, times)| self.to_read(stations(look), times));
        Settle::Read(asked.collect(), told.settles)
    }

    /// What is to be read so that all of these, which count together, were
    /// read so many times more: less where one is ahead of the others.
    fn to_read(&self, together: Vec<Station>, times: usize) -> Vec<(Station, usize)> {
        let read = |station: &Station| self.stations.get(station).map_or(0, Vec::len);
        let all = together.iter().map(read).min().unwrap_or_default() + times;
        let open = together.into_iter().filter_map(|station| {
            let more = all.saturating_sub(read(&station));
            (0 < more).then_some((station, more))
        });
        open.collect()
    }
}
