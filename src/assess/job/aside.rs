//! What stands beside a plan and decides nothing in it.

use super::Making;
use super::pins::shells_of;
use super::rows::housing_of;
use crate::assess::{Finding, GuideWord};
use crate::quantity::Exact;
use crate::remedy::{
    self, BoreWork, HousingWork, JournalWork, Mate, Paired, PistonWork, Plan, Prover, Row, Shell,
    TopWay,
};
use crate::session::{Direction, Feature, Kind, Quantity, Station};
use crate::uncertainty::Measured;
use crate::verdict::Verdict;

/// The journal that a housing, the shells for it and the clearance would
/// want, all by the person's own readings.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CrossCheck {
    /// The row of the place.
    pub row: Row,
    /// Its diameter.
    pub size: Exact,
    /// Its guard band.
    pub guard: Exact,
}

/// Whether a value without limits lies outside all that is commonly said of
/// it.
pub(super) fn is_outside_all_rules(finding: &Finding) -> bool {
    let guide = finding.guide.as_ref();
    finding.decided() == Some(Verdict::NoLimit)
        && guide.is_some_and(|guide| guide.word == GuideWord::OutsideLoosest)
}

impl Making<'_> {
    /// Features of which some quantity lies outside all common rules.
    pub(super) fn outside_all_rules(&self) -> Vec<Feature> {
        let mut told = Vec::new();
        for finding in &self.assessment.findings {
            let feature = finding.key.feature;
            if is_outside_all_rules(finding) && !told.contains(&feature) {
                told.push(feature);
            }
        }
        told
    }

    fn square(&self, feature: Feature) -> Option<Measured> {
        let square = |station: Station| station.direction == Direction::D0;
        self.measured(&self.view.mean_of(feature, square)?)
    }

    /// What sorting the pistons would gain, where they run again in bores
    /// that stay as they are and all of both were measured. Pistons change
    /// places within a bank.
    pub(super) fn pairing(&self, job: &remedy::Job, plan: &Plan, by: &Prover) -> Option<Paired> {
        let kept = |top: TopWay| {
            let bores = [BoreWork::UseAgain, BoreWork::Deglaze, BoreWork::Hone];
            top.pistons == PistonWork::Keep && top.sleeve.is_none() && bores.contains(&top.bores)
        };
        plan.way.top.filter(|top| kept(*top))?;
        let pistons = self.session.features_of(Kind::Piston);
        let mut mates = [Vec::new(), Vec::new()];
        for (piston, cylinder) in pistons.zip(&job.cylinders) {
            let group = self.session.bank(piston.position).unwrap_or(0).into();
            let sizes = [cylinder.bore.clone()?, self.square(piston)?];
            for (mates, size) in mates.iter_mut().zip(sizes) {
                mates.push(Mate { size, group });
            }
        }
        let [bores, pistons] = mates;
        Some(remedy::pair(&bores, &pistons, &[], by))
    }

    /// The journals of ground rows, where the housing stays and its size, the
    /// wall of new shells and the wanted clearance are known.
    pub(super) fn cross_checks(&mut self, job: &remedy::Job, plan: &Plan) -> Vec<(Row, Measured)> {
        let mut told = Vec::new();
        for row in [Row::Mains, Row::Rods] {
            let bearings = job.row(row);
            let done = plan.way.row(row);
            let Some((done, shell)) = done.zip(bearings.shells.first()) else {
                continue;
            };
            let JournalWork::Grind(size) = done.journals else {
                continue;
            };
            let Some(under) = bearings.undersizes.get(size) else {
                continue;
            };
            if self.band(shells_of(row), Quantity::Clearance).new.is_open() {
                continue;
            }
            let wall = Shell::undersize(shell.wall, *under).wall;
            let kind = housing_of(row);
            let housings = self.session.features_of(kind).zip(&done.housings);
            for (housing, work) in housings {
                if *work == HousingWork::Keep
                    && let Some(size) = self.square(housing)
                {
                    let journal = remedy::target(&size, [wall; 2], bearings.target);
                    told.push((row, self.with_new_walls(&journal)));
                }
            }
        }
        told
    }
}
