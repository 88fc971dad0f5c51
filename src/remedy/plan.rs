//! The plan for the whole set.

use super::facts::Facts;
use super::planner::Planner;
use super::search::View;
use super::{Item, Job, Judged, Part, Prover, Question, Row, Sizes, Trouble, Way, Work};
use crate::verdict::Decision;

/// By what ways are chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// The cheapest of those whose every price is known.
    Price,
    /// The lightest, because it is not fully priced.
    Weight,
}

/// What fixing a choice would lead to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Effect {
    /// The choice.
    pub work: Work,
    /// Whether there is a proved way with it.
    pub is_enough: bool,
    /// The cylinder that this way sleeves besides.
    pub sleeve: Option<usize>,
    /// What that costs; `None` where a price is blank.
    pub total: Option<u64>,
}

/// The further reading that could change the plan most.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Next {
    /// What to find out.
    pub question: Question,
    /// The way that is proved if it comes out well.
    pub if_well: Way,
    /// The best that can still be hoped for if it comes out badly.
    pub if_badly: Way,
}

/// About what there is trouble.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum About {
    /// Oversizes and their pistons.
    Bores,
    /// Undersizes of a row.
    Journals(Row),
    /// Shells of a row.
    Shells(Row),
}

/// The plan for a set.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// The best proved way: to reckon with, and to order by.
    pub way: Way,
    /// A better one that open questions may still allow: what it rests on is
    /// to be found out before anything is ordered.
    pub hope: Option<Way>,
    /// The best proved way that does without something the first needs; but
    /// all sleeved, another crankshaft or block only where that has it, too.
    pub runner_up: Option<Way>,
    /// By what they were chosen.
    pub basis: Basis,
    /// What has no price yet in the ways above.
    pub blanks: Vec<Item>,
    /// What fixing any other choice would lead to.
    pub effects: Vec<Effect>,
    /// The one further reading that could change most.
    pub next: Option<Next>,
    /// The word for every part.
    pub parts: Vec<Judged>,
    /// Parts that are used again and that nobody looked over.
    pub unseen: Vec<Part>,
    /// What each oversize would clean up.
    pub oversizes: Sizes,
    /// The same of the undersizes of mains and rod journals.
    pub undersizes: [Sizes; 2],
    /// Why the plan is partial, or narrower than it could be.
    pub troubles: Vec<(About, Trouble)>,
}

/// Plans for a set. There is always a plan, if a partial one.
#[must_use]
pub fn plan(job: &Job, prover: &Prover) -> Plan {
    let facts = Facts::new(job, prover);
    let by_weight = View {
        job,
        facts: &facts,
        least: Decision::In,
        answer: None,
        doubted: None,
        pin: None,
        without: None,
        never: &[],
        prices: None,
    };
    let open = |view| View {
        least: Decision::Open,
        ..view
    };
    let is_priced = |view: View| {
        let best = view.best();
        let items = best.map(|found| view.items(&found)).unwrap_or_default();
        items.iter().all(|(item, _)| job.prices.contains_key(item))
    };
    let is_priced = is_priced(by_weight) && is_priced(open(by_weight));
    let (basis, prices) = if is_priced {
        (Basis::Price, Some(&job.prices))
    } else {
        (Basis::Weight, None)
    };
    let sure = View {
        prices,
        ..by_weight
    };
    let hopeful = open(sure);
    let planner = Planner {
        prover,
        sure,
        hopeful,
        sure_groups: sure.groups(),
        hopeful_groups: hopeful.groups(),
    };
    planner.plan(basis)
}
