//! The plan for the set as JSON.

use serde::Serialize;

use super::words;
use crate::assess::{Advice, feature_of, word};
use crate::quantity::{Exact, Unit, show};
use crate::remedy::{
    About, HousingWork, Item, Judged, Part, Predicted, Question, Row, RowWay, ShellWork, Sizes,
    Way, Work,
};
use crate::session::Session;

#[derive(Serialize)]
pub(super) struct Plan {
    unit: &'static str,
    basis: &'static str,
    way: Told,
    hope: Option<Told>,
    runner_up: Option<Told>,
    blanks: Vec<&'static str>,
    choices: Vec<Choice>,
    next: Option<Next>,
    parts: Vec<Word>,
    unseen: Vec<String>,
    oversizes: Cuts,
    undersizes: Undersizes,
    troubles: Vec<Trouble>,
}

/// A combination of works.
#[derive(Serialize)]
struct Told {
    works: Works,
    items: Vec<Paid>,
    total: Option<String>,
    rests_on: Vec<Asked>,
    clearances: Vec<Clearance>,
    recheck: Vec<&'static str>,
}

/// The choices of a way; what nothing there is would be enough for is null.
#[derive(Serialize)]
struct Works {
    bores: Option<String>,
    sleeve: Option<String>,
    pistons: Option<String>,
    mains: Option<Bearings>,
    rods: Option<Bearings>,
}

#[derive(Serialize)]
struct Bearings {
    journals: String,
    housings: Vec<String>,
    shells: String,
    halves: Vec<[String; 2]>,
}

#[derive(Serialize)]
struct Paid {
    item: &'static str,
    count: usize,
    price: Option<String>,
}

#[derive(Serialize)]
struct Asked {
    part: String,
    ask: &'static str,
    reason: &'static str,
}

#[derive(Serialize)]
struct Clearance {
    part: String,
    value: String,
    guard: Option<String>,
    made: bool,
}

#[derive(Serialize)]
struct Choice {
    about: &'static str,
    word: String,
    enough: bool,
    total: Option<String>,
}

#[derive(Serialize)]
struct Next {
    question: Asked,
    if_well: Works,
    if_badly: Works,
}

#[derive(Serialize)]
struct Word {
    part: String,
    gate: Option<&'static str>,
    word: &'static str,
}

#[derive(Serialize)]
struct Cuts {
    sizes: Vec<Cut>,
    plan: Option<String>,
    sweep: Option<String>,
    worst: Option<String>,
}

#[derive(Serialize)]
struct Cut {
    step: String,
    cut: String,
    decision: &'static str,
    reason: &'static str,
    rests_on: Option<String>,
}

#[derive(Serialize)]
struct Undersizes {
    main_journals: Cuts,
    rod_journals: Cuts,
}

#[derive(Serialize)]
struct Trouble {
    about: &'static str,
    trouble: &'static str,
}

/// The plan, lengths in the session's display unit.
pub(super) fn plan(session: &Session, advice: &Advice) -> Plan {
    let plan = &advice.plan;
    let teller = Teller {
        session,
        advice,
        unit: session.display_unit(),
    };
    let way = |way: &Way| teller.way(way);
    let [mains, rods] = &plan.undersizes;
    Plan {
        unit: teller.unit.sign(),
        basis: words::basis(plan.basis),
        way: way(&plan.way),
        hope: plan.hope.as_ref().map(way),
        runner_up: plan.runner_up.as_ref().map(way),
        blanks: plan.blanks.iter().map(|item| item.key()).collect(),
        choices: plan
            .effects
            .iter()
            .map(|effect| {
                let (about, word) = word(session, &advice.job, effect.work);
                Choice {
                    about: about.key(),
                    word,
                    enough: effect.is_enough,
                    total: effect.total.map(amount),
                }
            })
            .collect(),
        next: plan.next.as_ref().map(|next| Next {
            question: asked(&next.question),
            if_well: teller.works(&next.if_well),
            if_badly: teller.works(&next.if_badly),
        }),
        parts: plan.parts.iter().map(judged).collect(),
        unseen: plan.unseen.iter().map(|part| name(*part)).collect(),
        oversizes: teller.cuts(&plan.oversizes, Part::Cylinder),
        undersizes: Undersizes {
            main_journals: teller.cuts(mains, |index| Part::Journal(Row::Mains, index)),
            rod_journals: teller.cuts(rods, |index| Part::Journal(Row::Rods, index)),
        },
        troubles: plan
            .troubles
            .iter()
            .map(|(about, trouble)| Trouble {
                about: about_key(*about),
                trouble: words::trouble(*trouble),
            })
            .collect(),
    }
}

/// Tells the ways of one advice.
struct Teller<'a> {
    session: &'a Session,
    advice: &'a Advice,
    unit: Unit,
}

impl Teller<'_> {
    fn text(&self, length: Exact) -> String {
        show(length, self.unit, self.unit.decimals()).text
    }

    fn word(&self, work: Work) -> String {
        word(self.session, &self.advice.job, work).1
    }

    fn works(&self, way: &Way) -> Works {
        let top = way.top.as_ref();
        let row = |row| Some(self.bearings(row, way.row(row)?));
        Works {
            bores: top.map(|top| self.word(Work::Bores(top.bores))),
            sleeve: top.and_then(|top| Some(name(Part::Cylinder(top.sleeve?)))),
            pistons: top.map(|top| self.word(Work::Pistons(top.pistons))),
            mains: row(Row::Mains),
            rods: row(Row::Rods),
        }
    }

    fn bearings(&self, row: Row, done: &RowWay) -> Bearings {
        let housing = |work: &HousingWork| self.word(Work::Housings(row, *work));
        // The word of a size of shell stands behind that of the work.
        let size = |index| {
            let word = self.word(Work::Shells(row, ShellWork::One(index)));
            let size = word.split_once(' ').map(|(_, size)| size.to_owned());
            size.unwrap_or(word)
        };
        Bearings {
            journals: self.word(Work::Journals(row, done.journals)),
            housings: done.housings.iter().map(housing).collect(),
            shells: self.word(Work::Shells(row, done.shells)),
            halves: done.halves.iter().map(|both| both.map(size)).collect(),
        }
    }

    fn way(&self, way: &Way) -> Told {
        let prices = self.session.prices();
        let paid = |(item, count): &(Item, usize)| Paid {
            item: item.key(),
            count: *count,
            price: prices.get(item).map(ToString::to_string),
        };
        let clearance = |one: &Predicted| Clearance {
            part: name(one.part),
            value: self.text(one.clearance),
            guard: one.guard.map(|guard| self.text(guard)),
            made: one.guard.is_none(),
        };
        Told {
            works: self.works(way),
            items: way.items.iter().map(paid).collect(),
            total: way.total.map(amount),
            rests_on: way.rests_on.iter().map(asked).collect(),
            clearances: way.clearances.iter().map(clearance).collect(),
            recheck: way.recheck.iter().map(|one| words::recheck(*one)).collect(),
        }
    }

    fn cuts(&self, sizes: &Sizes, part: fn(usize) -> Part) -> Cuts {
        let step = |index: Option<usize>| {
            let candidate = sizes.candidates.get(index?)?;
            Some(self.text(candidate.step))
        };
        let rests_on = |index: Option<usize>| index.map(|index| name(part(index)));
        let cuts = sizes.candidates.iter().map(|candidate| Cut {
            step: self.text(candidate.step),
            cut: self.text(candidate.cut),
            decision: words::decision(candidate.proof.decision),
            reason: words::reason(candidate.proof.reason),
            rests_on: rests_on(candidate.proof.rests_on),
        });
        Cuts {
            sizes: cuts.collect(),
            plan: step(sizes.plan),
            sweep: step(sizes.sweep),
            worst: rests_on(sizes.worst),
        }
    }
}

fn asked(question: &Question) -> Asked {
    Asked {
        part: name(question.part),
        ask: words::ask(question.ask),
        reason: words::reason(question.reason),
    }
}

fn judged(judged: &Judged) -> Word {
    Word {
        part: name(judged.part),
        gate: judged.gate.map(words::gate),
        word: words::word(judged.word),
    }
}

/// A part as its feature; the block and the crankshaft are none.
fn name(part: Part) -> String {
    match feature_of(part) {
        Some(feature) => feature.to_string(),
        None if part == Part::Crank => "crank".to_owned(),
        None => "block".to_owned(),
    }
}

const fn about_key(about: About) -> &'static str {
    match about {
        About::Bores => "bores",
        About::Journals(Row::Mains) => "main_journals",
        About::Journals(Row::Rods) => "rod_journals",
        About::Shells(Row::Mains) => "main_shells",
        About::Shells(Row::Rods) => "rod_shells",
    }
}

/// An amount in the smallest coin, with two decimals.
fn amount(coins: u64) -> String {
    format!("{}.{:02}", coins / 100, coins % 100)
}
