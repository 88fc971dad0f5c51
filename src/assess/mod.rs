//! Session → assessment: what every feature reads, and how that compares
//! with the limits as the readings stand. Pure, and the only caller of all
//! the rooms above.

mod amount;
mod clearance;
mod doubt;
mod facts;
mod feature;
mod finding;
mod guide;
mod housing;
mod job;
mod limits;
mod oil;
mod ovals;
mod settle;
mod shape;
mod sure;
mod view;

pub use doubt::{Cause, Doubts};
pub use facts::facts;
pub use finding::{Detail, Finding, FindingKey, Outcome, Repeats, TwoWays, UsedLimits, Way, Which};
pub use guide::{CommonRule, Guide, GuideWord, Only, Per, Rule, common_rules};
pub use job::{
    Advice, BAR_OFFSET, CrossCheck, HONING_ALLOWANCE, Volumes, advise, choice, feature_of, stocked,
    volumes, word,
};
pub use settle::Settle;
pub use sure::{RULE, Sure};

use crate::session::{Feature, Kind, Quantity, Reading, Session, Stamp};
use crate::verdict::{Comparison, compare};
use view::View;

/// Everything the readings of a session say.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Assessment {
    /// Findings of all features in the order they are measured.
    pub findings: Vec<Finding>,
    /// Every station that was read more than once.
    pub repeats: Vec<Repeats>,
    /// Standing readings of features the layout does not have.
    pub outside_layout: Vec<Stamp>,
    /// The sources of error on which the findings rest.
    pub doubts: Doubts,
}

/// Assesses a session.
///
/// The order in which readings were entered makes no difference: findings
/// depend on which readings stand, not on when they came.
#[must_use]
pub fn assess(session: &Session) -> Assessment {
    let view = View::new(session);
    let mut findings = Vec::new();
    let kinds = session.kinds();
    for kind in Kind::ALL {
        let counts = kinds.contains(&kind);
        for feature in session.features_of(kind) {
            if counts {
                feature::assess(&view, feature, &mut findings);
                clearance::assess(&view, feature, &mut findings);
            }
            // There are ways to an oil clearance without a look at the walls.
            oil::assess(&view, feature, counts, &mut findings);
        }
    }
    let outside = |station| !session.has(Feature::of(station));
    let outside_layout = session
        .standing()
        .filter(|(_, reading)| outside(reading.station))
        .map(|(id, _)| id)
        .collect();
    Assessment {
        findings,
        repeats: view.repeats(),
        outside_layout,
        doubts: view.doubts,
    }
}

impl Assessment {
    /// The findings of one feature.
    pub fn of(&self, feature: Feature) -> impl Iterator<Item = &Finding> {
        self.findings
            .iter()
            .filter(move |finding| finding.key.feature == feature)
    }

    /// One finding by its key.
    #[must_use]
    pub fn get(&self, key: FindingKey) -> Option<&Finding> {
        self.findings.iter().find(|finding| finding.key == key)
    }
}

/// What one reading reads against the size limits of its kind.
#[must_use]
pub fn compare_reading(session: &Session, reading: &Reading) -> Comparison {
    let used = limits::used(session, reading.station.kind, Quantity::Size);
    let size = session.size_of(reading);
    size.map_or(Comparison::NoLimit, |size| {
        compare(size.into(), &used.limits)
    })
}
