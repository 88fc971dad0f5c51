//! The word for every part of a set.

use super::facts::{PlaceFacts, of};
use super::gates::{Checks, Judged, Word, judge};
use super::search::View;
use super::{BoreWork, HousingWork, Job, JournalWork, Part, PistonWork, Row, ShellWork, Way};
use crate::verdict::Decision;

/// Every part there is, in order.
fn all(job: &Job) -> Vec<Part> {
    let mut parts = vec![Part::Block, Part::Crank];
    let cylinders = 0..job.cylinders.len();
    parts.extend(cylinders.clone().map(Part::Cylinder));
    parts.extend(cylinders.map(Part::Piston));
    for row in [Row::Mains, Row::Rods] {
        let bearings = job.row(row);
        let places = 0..bearings.places.len();
        parts.extend((0..bearings.journals.len()).map(|index| Part::Journal(row, index)));
        parts.extend(places.clone().map(|index| Part::Housing(row, index)));
        parts.extend(places.map(|index| Part::Shells(row, index)));
    }
    parts
}

/// Sends every part through the gates, under what the way does with it.
pub(super) fn judged(view: &View, way: &Way, hope: Option<&Way>) -> Vec<Judged> {
    let each = all(view.job).into_iter();
    each.map(|part| judge(part, &checks(view, way, hope, part)))
        .collect()
}

fn checks(view: &View, way: &Way, hope: Option<&Way>, part: Part) -> Checks {
    let job = view.job;
    let looks = job.looks(part);
    let (form, clearance) = proved(view, part);
    // What was taken to be good is still to be measured.
    let is_open = |open: &super::Question| (open.part, open.ask) == (part, super::Ask::Form);
    let form = if view.facts.open.iter().any(is_open) {
        Some(Decision::Open)
    } else {
        form
    };
    // What is machined or replaced in any case need not be measured more
    // surely.
    let stays = |way: &Way| planned(way, part) < Word::Shop;
    let form = match form {
        Some(Decision::Open) if !stays(way) && !hope.is_some_and(stays) => Some(Decision::In),
        form => form,
    };
    let left = [BoreWork::UseAgain, BoreWork::Deglaze, BoreWork::Hone];
    let is_bored = way.top.is_some_and(|top| !left.contains(&top.bores));
    let partner_changes = match part {
        Part::Piston(_) => is_bored,
        Part::Shells(row, index) => way.row(row).is_some_and(|done| {
            done.shells == ShellWork::ToFit
                || done
                    .housings
                    .get(index)
                    .is_some_and(|work| *work != HousingWork::Keep)
        }),
        _ => false,
    };
    Checks {
        harm: looks.harm,
        contradictory: looks.contradictory,
        form,
        surface: looks.surface,
        clearance,
        planned: planned(way, part),
        partner_changes,
    }
}

/// What is proved of a part by itself, and of the clearance in it with the
/// best there is to go in.
fn proved(view: &View, part: Part) -> (Option<Decision>, Option<Decision>) {
    let (job, facts) = (view.job, view.facts);
    let best = |decisions: &mut dyn Iterator<Item = Decision>| {
        decisions.fold(Decision::Out, |best, one| match (best, one) {
            (Decision::In, _) | (_, Decision::In) => Decision::In,
            (Decision::Open, _) | (_, Decision::Open) => Decision::Open,
            _ => Decision::Out,
        })
    };
    let in_place = |place: &PlaceFacts| {
        let new = place.new.iter().map(|pair| of(*pair, false));
        best(&mut new.chain([place.own, of(place.chosen, false)]))
    };
    match part {
        Part::Block => (job.alignment.or(Some(Decision::In)), None),
        Part::Crank => (job.straightness.or(Some(Decision::In)), None),
        Part::Cylinder(index) => {
            let cylinder = facts.cylinders.get(index);
            let clearance = cylinder.map(|cylinder| of(cylinder.own, false));
            (cylinder.map(|cylinder| cylinder.form), clearance)
        }
        Part::Piston(index) => {
            let cylinder = facts.cylinders.get(index);
            let clearance = cylinder.map(|cylinder| of(cylinder.own, false));
            (cylinder.map(|cylinder| cylinder.piston_form), clearance)
        }
        Part::Journal(row, index) => {
            let journal = facts.row(row).journals.get(index);
            let runs_here = job.row(row).places.iter().zip(&facts.row(row).places);
            let mut here = runs_here.filter(|(place, _)| place.journal == index);
            let clearance = here.try_fold(Decision::In, |all, (_, place)| {
                Some(all.and(in_place(place)))
            });
            (journal.map(|journal| journal.form), clearance)
        }
        Part::Housing(row, index) => {
            let place = facts.row(row).places.get(index);
            (place.map(|place| place.form), place.map(in_place))
        }
        Part::Shells(row, index) => {
            let place = facts.row(row).places.get(index);
            (place.map(|place| place.shells_form), None)
        }
    }
}

/// What a way does with a part; nothing where it has no answer.
fn planned(way: &Way, part: Part) -> Word {
    match part {
        Part::Block => {
            let bores = match way.top {
                Some(top) if top.bores == BoreWork::NewBlock => Word::Replace,
                Some(top) if top.sleeve.is_some() || top.bores == BoreWork::Sleeves => Word::Shop,
                Some(top) if matches!(top.bores, BoreWork::Oversize(_)) => Word::Shop,
                _ => Word::UseAgain,
            };
            let housings = way.mains.as_ref().map(|done| done.housings.as_slice());
            let housings = housings
                .unwrap_or_default()
                .iter()
                .map(|work| housing(*work));
            housings.fold(bores, Word::max)
        }
        Part::Crank => {
            let rows = [&way.mains, &way.rods].into_iter().flatten();
            let works = rows.map(|done| journal(done.journals));
            works.fold(Word::UseAgain, Word::max)
        }
        Part::Cylinder(index) => way.top.map_or(Word::UseAgain, |top| match top.bores {
            BoreWork::NewBlock => Word::Replace,
            _ if top.sleeve == Some(index) => Word::Shop,
            BoreWork::UseAgain => Word::UseAgain,
            BoreWork::Deglaze | BoreWork::Hone => Word::HandWork,
            BoreWork::Oversize(_) | BoreWork::Sleeves => Word::Shop,
        }),
        Part::Piston(_) => match way.top.map(|top| top.pistons) {
            Some(PistonWork::New(_)) => Word::Replace,
            Some(PistonWork::Keep) | None => Word::UseAgain,
        },
        Part::Journal(row, _) => {
            let done = way.row(row);
            done.map_or(Word::UseAgain, |done| journal(done.journals))
        }
        Part::Housing(row, index) => {
            let work = way.row(row).and_then(|done| done.housings.get(index));
            work.map_or(Word::UseAgain, |work| housing(*work))
        }
        Part::Shells(row, _) => match way.row(row).map(|done| done.shells) {
            None | Some(ShellWork::Keep) => Word::UseAgain,
            Some(_) => Word::Replace,
        },
    }
}

const fn journal(work: JournalWork) -> Word {
    match work {
        JournalWork::Keep => Word::UseAgain,
        JournalWork::Polish => Word::HandWork,
        JournalWork::Grind(_) => Word::Shop,
        JournalWork::NewCrank => Word::Replace,
    }
}

const fn housing(work: HousingWork) -> Word {
    match work {
        HousingWork::Keep => Word::UseAgain,
        HousingWork::Machine => Word::Shop,
        HousingWork::New => Word::Replace,
    }
}
