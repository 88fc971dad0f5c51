//! The gates a part goes through, in order; the first that fires gives the
//! word (common practice).

use super::{Finish, Harm, Part};
use crate::verdict::Decision;

/// Why a part is not simply used again, in the order they are asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Gate {
    /// Cracked, blue, broken, bent, welded: overrides good numbers.
    Soundness,
    /// Its readings contradict each other.
    Sense,
    /// Size and shape against its own limits, with their doubt.
    Form,
    /// The surface.
    Surface,
    /// What is done to the part it runs with, or its clearance to that.
    Partner,
    /// Another part of its kind: one decides for all.
    Set,
}

/// What to do with a part; up to replacing it, the heavier the later.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Word {
    /// Use it again.
    UseAgain,
    /// Work by hand.
    HandWork,
    /// Send it to the machine shop.
    Shop,
    /// Replace it.
    Replace,
    /// Measure it again, or measure it at all, or give a limit.
    MeasureAgain,
    /// Ask a specialist: a crack test, straightening.
    AskSpecialist,
}

/// The word for a part, and the gate that gave it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Judged {
    /// The part.
    pub part: Part,
    /// The gate that fired; `None` where it may be used again.
    pub gate: Option<Gate>,
    /// The word.
    pub word: Word,
}

/// What the gates are asked about a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Checks {
    /// What was seen that no measure makes good.
    pub harm: Option<Harm>,
    /// Whether its readings contradict each other.
    pub contradictory: bool,
    /// What is proved of its own size and shape.
    pub form: Option<Decision>,
    /// How it looks.
    pub surface: Option<Finish>,
    /// What is proved of its clearance; `None` where nothing runs in it.
    pub clearance: Option<Decision>,
    /// What the plan does with it.
    pub planned: Word,
    /// Whether the plan replaces or machines what it runs with.
    pub partner_changes: bool,
}

/// Whether a part is sound, by what was seen. Nobody having looked does not
/// hold up anything; it is said beside the plan.
#[must_use]
pub const fn soundness(harm: Option<Harm>) -> Decision {
    match harm {
        None | Some(Harm::None | Harm::Spun) => Decision::In,
        Some(Harm::MayBeCracked | Harm::Welded) => Decision::Open,
        Some(Harm::Cracked | Harm::HeatBlue | Harm::Broken | Harm::Bent) => Decision::Out,
    }
}

/// Sends a part through the gates.
#[must_use]
pub fn judge(part: Part, checks: &Checks) -> Judged {
    let (gate, word) = fired(part, checks);
    // What one gate asks for does not undo what the plan needs for more than
    // that, unless there is to be an answer first.
    let word = if word <= Word::Replace {
        word.max(checks.planned)
    } else {
        word
    };
    Judged { part, gate, word }
}

fn fired(part: Part, checks: &Checks) -> (Option<Gate>, Word) {
    let may_be_machined = !matches!(part, Part::Piston(_) | Part::Shells(..));
    let shop = if may_be_machined {
        Word::Shop
    } else {
        Word::Replace
    };
    let form = checks.form.unwrap_or(Decision::Open);
    let replaced = checks.planned == Word::Replace;
    match soundness(checks.harm) {
        Decision::Open => return (Some(Gate::Soundness), Word::AskSpecialist),
        // A cracked cylinder may take a sleeve, and a shaft be straightened.
        Decision::Out if matches!(part, Part::Cylinder(_)) => {
            return (Some(Gate::Soundness), Word::Shop);
        }
        Decision::Out if part == Part::Crank && checks.harm == Some(Harm::Bent) => {
            return (Some(Gate::Soundness), Word::AskSpecialist);
        }
        Decision::Out => return (Some(Gate::Soundness), Word::Replace),
        Decision::In => {}
    }
    if checks.contradictory {
        return (Some(Gate::Sense), Word::MeasureAgain);
    }
    if checks.harm == Some(Harm::Spun) || form == Decision::Out {
        return (Some(Gate::Form), shop);
    }
    // What is replaced for its partner's sake need not be measured.
    if form == Decision::Open && !(replaced && checks.partner_changes) {
        return (Some(Gate::Form), Word::MeasureAgain);
    }
    match checks.surface {
        Some(Finish::Scored) => return (Some(Gate::Surface), shop),
        Some(Finish::Dull) => return (Some(Gate::Surface), Word::HandWork),
        None | Some(Finish::Good) => {}
    }
    match checks.clearance {
        _ if checks.planned == Word::UseAgain => (None, Word::UseAgain),
        _ if checks.partner_changes => (Some(Gate::Partner), checks.planned),
        Some(Decision::Open) => (Some(Gate::Partner), Word::MeasureAgain),
        Some(Decision::Out) => (Some(Gate::Partner), checks.planned),
        None | Some(Decision::In) => (Some(Gate::Set), checks.planned),
    }
}
