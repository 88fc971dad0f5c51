//! Oil clearance: by every way that was taken, told at the shells.

use super::clearance::is_impossible;
use super::view::View;
use super::{Detail, FindingKey, Settle, TwoWays, Way, Which};
use crate::quantity::Weights;
use crate::session::{Direction, Feature, Kind, Part, Quantity, Session, Station};
use crate::verdict::Verdict;

/// What an oil clearance is between, and the other ways to it.
pub(super) struct Bearing {
    shell: Feature,
    housing: Feature,
    fitted: Feature,
    strip: Feature,
    /// The journal; two rods on a throw share one.
    pub(super) journal: Feature,
}

impl Bearing {
    /// The bearing of a main or rod shell.
    pub(super) fn of(session: &Session, shell: Feature) -> Option<Self> {
        let of_kind = |kind| Feature { kind, ..shell };
        let [housing, fitted, strip] = match shell.kind {
            Kind::MainShell => [Kind::MainHousing, Kind::MainFitted, Kind::MainStrip],
            Kind::RodShell => [Kind::BigEnd, Kind::RodFitted, Kind::RodStrip],
            _ => return None,
        }
        .map(of_kind);
        let journal = if shell.kind == Kind::MainShell {
            of_kind(Kind::MainJournal)
        } else {
            let mut throws = session.features_of(Kind::RodJournal);
            throws.find(|throw| {
                session
                    .cylinders_on(throw.position)
                    .contains(&shell.position)
            })?
        };
        Some(Self {
            shell,
            housing,
            fitted,
            strip,
            journal,
        })
    }

    /// The clearance by each way that has all its readings.
    ///
    /// Housing and walls count square to the joint only. The journal turns
    /// in them, so each of its directions comes to stand there: its mean
    /// counts, and its shape is judged by itself.
    fn ways(&self, view: &View<'_>) -> Vec<(Way, Weights)> {
        let square = |station: Station| station.direction == Direction::D0;
        let journal = || view.mean_of(self.journal, |_| true);
        let wall = |part| view.mean_of(self.shell, |station| station.part == part);
        let parts = || {
            let inside = [wall(Part::Upper)?, wall(Part::Lower)?, journal()?];
            let housing = view.mean_of(self.housing, square)?;
            let clearance = inside.iter().fold(housing, |left, part| &left - part);
            Some(&clearance - &view.crush(self.shell.kind)?)
        };
        let fitted = || {
            let bore = view.mean_of(self.fitted, square)?;
            // What was read with the gauge set on the journal has no error of
            // the micrometer in it.
            let places = view.stations_of(self.fitted);
            let places = places.filter(|(station, _)| square(*station));
            let direct = places.filter_map(|(station, _)| view.direct(station, self.journal));
            let direct: Vec<_> = direct.collect();
            if direct.is_empty() {
                return Some(&bore - &journal()?);
            }
            Some(Weights::mean(&direct.iter().collect::<Vec<_>>()))
        };
        let strip = || view.mean_of(self.strip, |_| true);
        let ways = [
            (Way::Parts, parts()),
            (Way::Fitted, fitted()),
            (Way::Strip, strip()),
        ];
        let taken = ways.into_iter();
        taken
            .filter_map(|(way, weights)| Some((way, weights?)))
            .collect()
    }

    /// What the arithmetic takes and nobody has read.
    fn missing(&self, view: &View<'_>) -> Vec<Station> {
        let all = [self.housing, self.shell, self.journal];
        let asked = all.map(|of| of.stations(view.session.route()));
        let mut missing = asked.concat();
        missing.retain(|station| {
            let counts = station.kind != self.housing.kind || station.direction == Direction::D0;
            counts && view.at(*station).is_none()
        });
        missing
    }
}

/// Adds the oil clearance of a pair of shells by each way, then by the
/// surest, which decides; where nothing is known of it, that it is not
/// measured, if the shells are asked for.
pub(super) fn assess(
    view: &View<'_>,
    shell: Feature,
    is_asked: bool,
    findings: &mut Vec<super::Finding>,
) {
    let Some(bearing) = Bearing::of(view.session, shell) else {
        return;
    };
    let ways = bearing.ways(view);
    let key = |which| FindingKey::new(shell, Quantity::Clearance, which);
    if ways.is_empty() {
        if is_asked {
            findings.push(view.finding(key(Which::Surest), None, bearing.missing(view)));
        }
        return;
    }
    let first = findings.len();
    for (way, weights) in &ways {
        let mut finding = view.finding(key(Which::By(*way)), Some(weights), Vec::new());
        finding.detail = finding
            .value()
            .filter(|value| is_impossible(shell.kind, *value))
            .map(|_| Detail::Impossible);
        // What would settle it is told of the surest.
        if let Some(sure) = &mut finding.sure {
            sure.settle = None;
        }
        findings.push(finding);
    }
    let told = findings.get(first..).unwrap_or_default();
    let doubt = |finding: &&super::Finding| finding.sure.as_ref().map(|sure| sure.guard);
    let surest = told
        .iter()
        .min_by_key(doubt)
        .map(|finding| finding.key.which);
    let surest = ways.iter().find(|(way, _)| Some(Which::By(*way)) == surest);
    let mut finding = view.finding(key(Which::Surest), surest.map(|(_, w)| w), Vec::new());
    let compared = furthest(view, &ways);
    if let (Some((two, read)), Some(sure)) = (&compared, &mut finding.sure)
        && !two.agree()
        && sure.verdict != Verdict::NoLimit
    {
        // One of them is wrong, and nobody knows which.
        sure.verdict = Verdict::DoNotAssemble;
        sure.conformity = None;
        sure.settle = Some(read_again(view, read));
    }
    finding.detail = match finding.value() {
        Some(value) if is_impossible(shell.kind, value) => Some(Detail::Impossible),
        _ => compared.map(|(two, _)| Detail::TwoWays(two)),
    };
    findings.push(finding);
}

/// Of several ways the two that stand furthest out, and what both rest on.
fn furthest(view: &View<'_>, ways: &[(Way, Weights)]) -> Option<(TwoWays, Weights)> {
    let pairs = ways.len() * ways.len().saturating_sub(1) / 2;
    let mut found: Option<(TwoWays, Weights)> = None;
    for (rank, (_, one)) in ways.iter().enumerate() {
        for (_, other) in ways.iter().skip(rank + 1) {
            let Some(two) = view.two_ways([one, other], pairs) else {
                continue;
            };
            let excess = |two: &TwoWays| two.apart - two.allowed;
            if found
                .as_ref()
                .is_none_or(|(so_far, _)| excess(so_far) < excess(&two))
            {
                found = Some((two, one - other));
            }
        }
    }
    found
}

/// Every place two ways rest on once more, where it was read once; then the
/// shop.
fn read_again(view: &View<'_>, weights: &Weights) -> Settle {
    let rests_on = |here: &[usize]| {
        weights
            .terms()
            .iter()
            .any(|(index, _)| here.contains(index))
    };
    let once = view.stations.iter().filter(|(_, here)| here.len() < 2);
    let once = once.filter(|(_, here)| rests_on(here));
    let once: Vec<_> = once.map(|(station, _)| (*station, 1)).collect();
    if once.is_empty() {
        Settle::Shop
    } else {
        Settle::Read(once, false)
    }
}
