//! Words of a plan: works, parts, questions, items, what to look at again.

pub use crate::assess::feature_of;

use super::wording;
use crate::assess::Advice;
use crate::quantity::{Exact, Unit, show};
use crate::remedy::{
    About, Ask, BoreWork, Gate, HousingWork, Item, JournalWork, Part, PistonWork, Question, Reason,
    Recheck, Row, ShellWork, Trouble, Way, Word, Work,
};

/// What a plan is for, beside it.
pub const PLAN_CAUTION: &str = "This is arithmetic and general trade guidance, no approval. The \
                                service manual, licensed practice and local rules come first; \
                                aircraft, passenger boats and commercial vehicles need a licensed \
                                person and approved data. Cranks, rods and bolts that work hard \
                                are used again only after a crack test: one that fails at speed \
                                throws parts and can start a fire. You sign the final decision.";

/// A step in the session's unit.
pub(super) fn step(over: Exact, unit: Unit) -> String {
    // Steps are named with a decimal less than sizes are read to.
    let shown = show(over, unit, unit.decimals() - 1);
    format!("{} {}", shown.text, unit.sign())
}

fn under(advice: &Advice, row: Row, index: usize, unit: Unit) -> String {
    let steps = &advice.job.row(row).undersizes;
    steps
        .get(index)
        .map_or_else(String::new, |under| step(*under, unit))
}

fn over(advice: &Advice, index: usize, unit: Unit) -> String {
    match advice.job.stock.get(index) {
        Some(stock) if stock.over == Exact::ZERO => "standard".to_owned(),
        Some(stock) => format!("{} over", step(stock.over, unit)),
        None => String::new(),
    }
}

/// About what a choice is.
pub(super) const fn about(work: Work) -> &'static str {
    match work {
        Work::Bores(_) => "Bores",
        Work::Pistons(_) => "Pistons",
        Work::Journals(Row::Mains, _) => "Main journals",
        Work::Journals(Row::Rods, _) => "Rod journals",
        Work::Housings(Row::Mains, _) => "Main housings",
        Work::Housings(Row::Rods, _) => "Rods",
        Work::Shells(Row::Mains, _) => "Main shells",
        Work::Shells(Row::Rods, _) => "Rod shells",
    }
}

/// A choice in words.
pub(super) fn work(advice: &Advice, work: Work, unit: Unit) -> String {
    let plain = |text: &str| text.to_owned();
    match work {
        Work::Bores(work) => match work {
            BoreWork::UseAgain => plain("use again, new rings"),
            BoreWork::Deglaze => plain("break the glaze by hand, new rings"),
            BoreWork::Hone => plain("light hone, then measure the clearance again"),
            BoreWork::Oversize(index) => {
                format!("bore and hone all to {}", over(advice, index, unit))
            }
            BoreWork::Sleeves => plain("sleeve all"),
            BoreWork::NewBlock => plain("another block"),
        },
        Work::Pistons(PistonWork::Keep) => plain("use again, each in its own bore"),
        Work::Pistons(PistonWork::New(index)) => {
            format!("buy a set, {}", over(advice, index, unit))
        }
        Work::Journals(row, work) => match work {
            JournalWork::Keep => plain("use again"),
            JournalWork::Polish => plain("polish, oil holes plugged"),
            JournalWork::Grind(index) => {
                format!("grind all to {} under", under(advice, row, index, unit))
            }
            JournalWork::NewCrank => plain("another crankshaft"),
        },
        Work::Housings(row, work) => match (row, work) {
            (_, HousingWork::Keep) => plain("use again"),
            (Row::Mains, HousingWork::Machine) => plain("hone in line"),
            (Row::Rods, HousingWork::Machine) => plain("resize the big end"),
            (Row::Mains, HousingWork::New) => plain("another block"),
            (Row::Rods, HousingWork::New) => plain("replace the rod"),
        },
        Work::Shells(row, work) => match work {
            ShellWork::Keep => plain("use again, each in its place"),
            ShellWork::One(index) => match index.checked_sub(1) {
                None => plain("buy standard ones"),
                Some(_) => format!("buy {}", size_of_shell(advice, row, index, unit)),
            },
            ShellWork::Places => plain("buy sizes place by place"),
            ShellWork::ToFit => plain("buy the set for the journals as machined"),
        },
    }
}

/// By how much a size of shell makes the clearance smaller than standard.
pub(super) fn size_of_shell(advice: &Advice, row: Row, index: usize, unit: Unit) -> String {
    let shells = &advice.job.row(row).shells;
    let (Some(standard), Some(shell)) = (shells.first(), shells.get(index)) else {
        return String::new();
    };
    let more = shell.wall - standard.wall;
    if more == Exact::ZERO {
        return "standard".to_owned();
    }
    format!("{} under", step(more + more, unit))
}

/// The choices of a way, in the order of the parts.
pub(super) fn works(way: &Way) -> Vec<Work> {
    let mut works = Vec::new();
    if let Some(top) = way.top {
        works.extend([Work::Bores(top.bores), Work::Pistons(top.pistons)]);
    }
    for (row, done) in [(Row::Mains, &way.mains), (Row::Rods, &way.rods)] {
        let Some(done) = done else { continue };
        works.push(Work::Journals(row, done.journals));
        // Of rods the heaviest stands for all; which ones is said beside it.
        let heaviest = [HousingWork::New, HousingWork::Machine, HousingWork::Keep];
        let heaviest = heaviest
            .into_iter()
            .find(|work| done.housings.contains(work));
        works.extend(heaviest.map(|work| Work::Housings(row, work)));
        works.push(Work::Shells(row, done.shells));
    }
    works
}

/// A part by its name.
pub(super) fn part(part: Part) -> String {
    match feature_of(part) {
        Some(feature) if is_rod(part) => format!("Rod {}", feature.position),
        Some(feature) => wording::feature(feature),
        None if part == Part::Crank => "Crankshaft".to_owned(),
        None => "Block".to_owned(),
    }
}

/// Whether a part is a rod, of which its big end is measured.
const fn is_rod(part: Part) -> bool {
    matches!(part, Part::Housing(Row::Rods, _))
}

/// Parts of one kind by their numbers: "Bores 1, 2 and 5".
pub(super) fn parts(all: &[Part]) -> String {
    match all {
        [] => String::new(),
        [one] => part(*one),
        [first, ..] if is_rod(*first) => numbered("Rods", all),
        [first, ..] => numbered(of_kind(*first), all),
    }
}

/// The same of what is measured of them.
fn measured(all: &[Part]) -> String {
    match all {
        [one] => feature_of(*one).map_or_else(|| part(*one), wording::feature),
        [first, ..] => numbered(of_kind(*first), all),
        [] => String::new(),
    }
}

fn of_kind(part: Part) -> &'static str {
    feature_of(part).map_or("Parts", |feature| wording::kind_plural(feature.kind))
}

fn numbered(kind: &str, all: &[Part]) -> String {
    let number = |part: &Part| feature_of(*part).map(|feature| feature.position.to_string());
    let numbers: Vec<_> = all.iter().filter_map(number).collect();
    match numbers.split_last() {
        Some((last, others)) if !others.is_empty() => {
            format!("{kind} {} and {last}", others.join(", "))
        }
        _ => kind.to_owned(),
    }
}

/// What there is to find out, of one part or of several.
fn question(ask: Ask, reason: Reason) -> &'static str {
    match (ask, reason) {
        (Ask::Soundness, _) => "test for cracks, or ask a specialist",
        (Ask::Form, Reason::Unknown) => "measure size and shape, and give limits",
        (Ask::Form, _) => "size and shape are too close to call: read again",
        (Ask::Surface, _) | (Ask::CleanUp, Reason::Score) => "measure how deep the scores are",
        (Ask::Clearance, Reason::Unknown) => "measure the clearance, and give its limits",
        (Ask::Clearance, _) => "the clearance is too close to call: read again",
        (Ask::CleanUp, Reason::Axis) => {
            "have the shop sweep or rough-bore it first, then buy parts"
        }
        (Ask::CleanUp, Reason::NoReference) => "read the unworn reference",
        (Ask::CleanUp, Reason::Mistyped) => {
            "the clearance is larger than the step: look at both sizes"
        }
        (Ask::CleanUp, _) => "what cleans it up is too close to call: read again",
    }
}

/// What there is to find out of one part, with what was seen of it.
fn asked(advice: &Advice, one: &Question) -> &'static str {
    let is_of_sizes = !matches!(one.ask, Ask::Soundness | Ask::Surface);
    let outside = || {
        let feature = feature_of(one.part);
        feature.is_some_and(|feature| advice.outside_all_rules.contains(&feature))
    };
    match (one.ask, one.reason) {
        _ if is_of_sizes && advice.job.looks(one.part).contradictory => {
            "look again: what was seen contradicts itself"
        }
        (Ask::Form, Reason::Form) if outside() => {
            "outside all common rules: look up the limits of the manual, or read again"
        }
        (ask, reason) => question(ask, reason),
    }
}

/// Questions, those alike in one line, in their order.
pub(super) fn questions(advice: &Advice, all: &[Question]) -> Vec<String> {
    let mut told: Vec<(Vec<Part>, &'static str, bool)> = Vec::new();
    for one in all {
        let words = asked(advice, one);
        let is_whole = one.ask == Ask::Soundness;
        let kind = |part| feature_of(part).map(|feature| feature.kind);
        let alike = told.iter_mut().find(|(parts, so_far, _)| {
            *so_far == words && parts.first().is_some_and(|p| kind(*p) == kind(one.part))
        });
        match alike {
            Some((parts, ..)) if parts.contains(&one.part) => {}
            Some((parts, ..)) => parts.push(one.part),
            None => told.push((vec![one.part], words, is_whole)),
        }
    }
    let line = |(all, words, is_whole): (Vec<Part>, &str, bool)| {
        let name = if is_whole { parts } else { measured };
        format!("{}: {words}", name(&all))
    };
    told.into_iter().map(line).collect()
}

/// The word for a part.
pub(super) const fn word(word: Word) -> &'static str {
    match word {
        Word::UseAgain => "use again",
        Word::HandWork => "hand work",
        Word::Shop => "machine shop",
        Word::Replace => "replace",
        Word::MeasureAgain => "measure again",
        Word::AskSpecialist => "ask a specialist",
    }
}

/// Why.
pub(super) const fn gate(gate: Gate) -> &'static str {
    match gate {
        Gate::Soundness => "not sound",
        Gate::Sense => "what was seen contradicts itself",
        Gate::Form => "size and shape",
        Gate::Surface => "surface",
        Gate::Partner => "the part it runs with",
        Gate::Set => "goes with the others of its kind",
    }
}

/// What is paid for.
pub(super) const fn item(item: Item) -> &'static str {
    match item {
        Item::Wash => "Hot wash, galleries open",
        Item::CrackTest => "Crack test of the crank, before and after",
        Item::BoreSetUp => "Setting up the block for boring",
        Item::GrindSetUp => "Setting up the crank for grinding",
        Item::Rings => "Rings, a cylinder",
        Item::Deglaze => "Deglazing, a cylinder",
        Item::Polish => "Polishing the crank",
        Item::Hone => "Light hone, a cylinder",
        Item::MainShells => "Main shells, a pair",
        Item::RodShells => "Rod shells, a pair",
        Item::Piston => "Piston",
        Item::ResizeRod => "Resizing a rod",
        Item::AlignHone => "Honing the main housings in line",
        Item::Bore => "Boring and honing to the piston, a cylinder",
        Item::GrindMains => "Grinding all mains",
        Item::GrindRodJournals => "Grinding all rod journals",
        Item::Rod => "Rod",
        Item::Sleeve => "Sleeve, fitted and finished",
        Item::Crank => "Crankshaft",
        Item::Block => "Block, finished to the pistons",
    }
}

/// What to look at again afterwards.
pub(super) const fn recheck(recheck: Recheck) -> &'static str {
    match recheck {
        Recheck::RingSet => "the ring set: its size",
        Recheck::GasketBore => "the bore of the head gasket",
        Recheck::Wall => "the wall of the cylinders",
        Recheck::Compression => "compression",
        Recheck::PistonWeight => "the weight of the pistons, and the balance",
        Recheck::KnockMargin => "the margin to knocking: fuel and timing",
        Recheck::PistonClearance => "piston-to-wall",
        Recheck::RingGapAtBottom => "ring gaps at the bottom of ring travel",
        Recheck::RingType => "whether the rings suit such a bore",
        Recheck::ShellSet => "the shell set: its size",
        Recheck::Fillet => "the fillets: radius, no step",
        Recheck::EndPlay => "end play",
        Recheck::SealLand => "the land of the oil seal",
        Recheck::Stroke => "the stroke",
        Recheck::DeckHeight => "the height of the crowns to the deck",
        Recheck::Cracks => "cracks, after grinding as well",
        Recheck::OilHoles => "oil holes rounded and clean",
        Recheck::TimingDrive => "the slack of the timing drive",
        Recheck::Seal => "whether the seal runs concentric",
        Recheck::MainClearance => "the oil clearance of all mains",
        Recheck::CentreDistance => "the centre distance of the rods",
        Recheck::BoltTorque => "rod bolts and their torque",
        Recheck::PistonHeight => "whether all pistons stand equally high",
        Recheck::Galleries => "galleries washed with their plugs out",
        Recheck::MeasureAgain => "everything the shop touched, measured again",
    }
}

/// Why a plan is partial.
pub(super) fn trouble(about: About, trouble: Trouble) -> String {
    let what = match about {
        About::Bores => "Oversizes",
        About::Journals(Row::Mains) => "Undersizes of the mains",
        About::Journals(Row::Rods) => "Undersizes of the rod journals",
        About::Shells(Row::Mains) => "Main shells",
        About::Shells(Row::Rods) => "Rod shells",
    };
    let why = match trouble {
        Trouble::NoParts => "nothing of them was measured",
        Trouble::NoSizes => match about {
            About::Shells(_) => {
                "the wall of a new shell is not known. Give its size under Limits, or measure one"
            }
            _ => "no sizes are listed. List what can be bought under Set-up",
        },
        Trouble::NoPistons => {
            "the size of the pistons is not given, so the bore is reckoned from the name of the \
             oversize. The shop finishes to the piston it measures"
        }
        Trouble::OutOfReach => "no size that is listed is enough",
        Trouble::Uneven => "there are not as many of the one as of the other",
    };
    format!("{what}: {why}.")
}
