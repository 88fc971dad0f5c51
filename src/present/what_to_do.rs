//! What to do: the plan for the set as it is shown.

use super::mixing::{MixingView, mixing};
use super::plan_parts::{PartRow, Row3, clearances, parts};
use super::plan_words as words;
use super::shop_words;
use super::size_words::{SizesView, sizes};
use super::volume_words;
use super::wording;
use crate::assess::{Advice, word};
use crate::quantity::{Unit, show};
use crate::remedy::{
    About, Basis, BoreWork, Effect, HousingWork, Item, JournalWork, Part, PistonWork, Price, Row,
    ShellWork, Trouble, Way, Word, Work,
};
use crate::session::{Edit, Field, Pin, Session};
use crate::uncertainty::Measured;
use crate::verdict::Decision;

/// The whole screen.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PlanView {
    /// What to reckon with, about one thing a line.
    pub lines: Vec<PlanLine>,
    /// What the choice went by.
    pub basis: &'static str,
    /// What this rests on, in words: to be found out before anything is
    /// ordered.
    pub rests_on: Vec<String>,
    /// What may do with less, and what has to come out well for it.
    pub maybe: Option<Maybe>,
    /// The next best of those that are sure.
    pub runner_up: Vec<String>,
    /// The one further reading that could change most.
    pub next: Option<Next>,
    /// The clearances this leads to.
    pub clearances: Vec<Row3>,
    /// Which size cleans up what is machined.
    pub sizes: Vec<SizesView>,
    /// Displacement and compression, before and after.
    pub volumes: Vec<String>,
    /// How far sizes of shells may be mixed.
    pub mixing: Option<MixingView>,
    /// What is paid for.
    pub bill: Vec<BillRow>,
    /// The sum, or what is missing for it.
    pub total: String,
    /// The word for every part.
    pub parts: Vec<PartRow>,
    /// What to tell the machine shop.
    pub shop: Vec<String>,
    /// What to look at again afterwards.
    pub recheck: Vec<&'static str>,
    /// Why the plan is partial.
    pub troubles: Vec<String>,
}

/// One line of the plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PlanLine {
    /// About what.
    pub about: &'static str,
    /// What to do.
    pub what: String,
    /// The parts that decide it, in words.
    pub why: Option<String>,
    /// About what a choice can be fixed here.
    pub pin: Pin,
    /// Whether the person has fixed it.
    pub fixed: bool,
    /// What else there is, and what it would lead to.
    pub others: Vec<Other>,
}

/// Another choice.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Other {
    /// In words.
    pub what: String,
    /// Its word in files.
    pub word: String,
    /// What fixing it leads to.
    pub leads_to: String,
}

/// A lighter way that open questions still allow.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Maybe {
    /// What would be done instead.
    pub instead: Vec<String>,
    /// What has to come out well.
    pub if_well: Vec<String>,
}

/// The one further reading that could change most.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Next {
    /// What to find out.
    pub what: String,
    /// What changes if it comes out well.
    pub well: Vec<String>,
    /// What changes if it comes out badly.
    pub badly: Vec<String>,
}

/// One item of the bill.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BillRow {
    /// What.
    pub item: Item,
    /// In words.
    pub what: &'static str,
    /// How many.
    pub count: usize,
    /// The price of one, as typed; empty where it is not known.
    pub price: String,
}

/// The plan of a session as shown.
#[must_use]
pub fn what_to_do(session: &Session, advice: &Advice) -> PlanView {
    let unit = session.display_unit();
    let plan = &advice.plan;
    let way = &plan.way;
    let works = words::works(way);
    let lines = works.iter().map(|work| line(session, advice, *work, unit));
    let differ = |other: &Way| differences(advice, way, other, unit);
    PlanView {
        lines: lines.collect(),
        basis: match plan.basis {
            Basis::Price => "The cheapest by your prices that is proved to be enough.",
            Basis::Weight => {
                "The lightest that is proved to be enough. With all prices below it \
                              goes by cost."
            }
        },
        rests_on: words::questions(advice, &way.rests_on),
        maybe: plan.hope.as_ref().map(|hope| Maybe {
            instead: differ(hope),
            if_well: words::questions(advice, &hope.rests_on),
        }),
        runner_up: plan.runner_up.as_ref().map(differ).unwrap_or_default(),
        next: plan.next.as_ref().map(|next| Next {
            what: words::questions(advice, &[next.question]).concat(),
            well: differ(&next.if_well),
            badly: differ(&next.if_badly),
        }),
        clearances: clearances(advice, unit),
        sizes: sizes(session, advice, unit),
        volumes: volume_words::lines(session, advice),
        mixing: mixing(session, advice),
        bill: bill(session, way),
        total: total(advice),
        parts: parts(advice),
        shop: shop_words::shop(advice, way, unit),
        recheck: way.recheck.iter().map(|one| words::recheck(*one)).collect(),
        troubles: plan
            .troubles
            .iter()
            .filter(|(about, trouble)| !is_met(way, *about, *trouble))
            .map(|(about, trouble)| words::trouble(*about, *trouble))
            .collect(),
    }
}

/// The edit that fixes a choice, or leaves it to the plan again.
#[must_use]
pub fn fix(pin: Pin, word: Option<String>) -> Edit {
    Edit::Set(Field::Pin(pin, word))
}

/// The edit that sets a price from its text; blank takes it back.
///
/// # Errors
/// A sentence that says what is wrong with it.
pub fn set_price(item: Item, text: &str) -> Result<Edit, String> {
    let text = text.trim();
    let price = if text.is_empty() {
        None
    } else {
        Some(Price::parse(text).map_err(|why| why.to_string())?)
    };
    Ok(Edit::Set(Field::Price(item, price)))
}

fn line(session: &Session, advice: &Advice, work: Work, unit: Unit) -> PlanLine {
    let (pin, _) = word(session, &advice.job, work);
    let effects = advice.plan.effects.iter();
    let here = effects.filter(|effect| effect.work.is_about_the_same(work));
    let other = |effect: &Effect| Other {
        what: words::work(advice, effect.work, unit),
        word: word(session, &advice.job, effect.work).1,
        leads_to: match (effect.is_enough, effect.total) {
            (false, _) => "not proved to be enough".to_owned(),
            (true, Some(total)) => format!("enough; {} together", amount(total)),
            (true, None) => match effect.sleeve {
                Some(index) => format!("enough with a sleeve in bore {}", index + 1),
                None => "enough".to_owned(),
            },
        },
    };
    PlanLine {
        about: words::about(work),
        what: in_way(advice, &advice.plan.way, work, unit),
        why: why(advice, work, unit),
        pin,
        fixed: session.pin(pin).is_some(),
        others: here.map(other).collect(),
    }
}

/// A choice of a way in words, with the sleeve that one bore may need beside
/// what is done to all.
fn in_way(advice: &Advice, way: &Way, work: Work, unit: Unit) -> String {
    let what = words::work(advice, work, unit);
    match (work, way.top.and_then(|top| top.sleeve)) {
        (Work::Bores(_), Some(index)) => format!("{what}, a sleeve in bore {}", index + 1),
        _ => what,
    }
}

/// Whether a way does without the sizes that none is enough of: shells that
/// are bought for the journals as machined.
fn is_met(way: &Way, about: About, trouble: Trouble) -> bool {
    let About::Shells(row) = about else {
        return false;
    };
    let done = way.row(row);
    trouble == Trouble::OutOfReach && done.is_some_and(|done| done.shells == ShellWork::ToFit)
}

/// The parts that decide about a choice, in words.
fn why(advice: &Advice, work: Work, unit: Unit) -> Option<String> {
    let is_heavy = match work {
        Work::Bores(work) => work != BoreWork::UseAgain,
        Work::Pistons(work) => work != PistonWork::Keep,
        Work::Journals(_, work) => work != JournalWork::Keep,
        Work::Housings(_, work) => work != HousingWork::Keep,
        Work::Shells(_, work) => work != ShellWork::Keep,
    };
    if let Work::Shells(row, ShellWork::Places) = work {
        return Some(places(advice, row, unit));
    }
    if let Work::Pistons(PistonWork::Keep) = work {
        return sorted(advice, unit);
    }
    let of_work = |part: Part| match (work, part) {
        (Work::Bores(_), Part::Cylinder(_)) | (Work::Pistons(_), Part::Piston(_)) => true,
        (Work::Journals(a, _), Part::Journal(b, _))
        | (Work::Housings(a, _), Part::Housing(b, _))
        | (Work::Shells(a, _), Part::Shells(b, _)) => a == b,
        _ => false,
    };
    let own = |word: &Word| {
        matches!(
            word,
            Word::Shop | Word::Replace | Word::HandWork | Word::AskSpecialist
        )
    };
    let judged = advice.plan.parts.iter();
    let decide = judged.filter(|judged| {
        of_work(judged.part)
            && own(&judged.word)
            && judged
                .gate
                .is_some_and(|gate| gate != crate::remedy::Gate::Set)
    });
    let decide: Vec<_> = decide.collect();
    let first = decide.first().filter(|_| is_heavy)?;
    let gate = first.gate?;
    let alike = decide.iter().filter(|judged| judged.gate == Some(gate));
    let alike: Vec<_> = alike.map(|judged| judged.part).collect();
    Some(format!("{}: {}", words::parts(&alike), words::gate(gate)))
}

/// What sorting pistons that run again would gain, where that is proved.
fn sorted(advice: &Advice, unit: Unit) -> Option<String> {
    let pairing = advice.pairing.as_ref();
    let pairing = pairing.filter(|pairing| pairing.gain == Decision::In)?;
    let apart = |spread: &Option<Measured>| {
        let shown = show(spread.as_ref()?.value(), unit, unit.decimals());
        Some(format!("{} {}", wording::number(&shown), unit.sign()))
    };
    Some(format!(
        "sorted by size their clearances would differ by {} instead of {}. Used pistons stay at \
         home all the same: each has worn to its bore",
        apart(&pairing.spread)?,
        apart(&pairing.as_given)?
    ))
}

/// Which sizes of shell go where.
fn places(advice: &Advice, row: Row, unit: Unit) -> String {
    let halves = advice.plan.way.row(row).map(|done| done.halves.clone());
    let size = |index| words::size_of_shell(advice, row, index, unit);
    let each = halves.unwrap_or_default().into_iter().zip(1_usize..);
    let each = each.map(|([upper, lower], place)| {
        if upper == lower {
            format!("{place} {}", size(upper))
        } else {
            format!("{place} upper {}, lower {}", size(upper), size(lower))
        }
    });
    each.collect::<Vec<_>>().join("; ")
}

/// What another way does otherwise, a line each.
fn differences(advice: &Advice, way: &Way, other: &Way, unit: Unit) -> Vec<String> {
    let here = words::works(way);
    let there = words::works(other).into_iter();
    let sleeve = |way: &Way| way.top.and_then(|top| top.sleeve);
    let is_sleeved_else =
        |work: &Work| matches!(work, Work::Bores(_)) && sleeve(way) != sleeve(other);
    let differ = there.filter(|work| !here.contains(work) || is_sleeved_else(work));
    differ
        .map(|work| {
            format!(
                "{}: {}",
                words::about(work),
                in_way(advice, other, work, unit)
            )
        })
        .collect()
}

fn bill(session: &Session, way: &Way) -> Vec<BillRow> {
    let prices = session.prices();
    let row = |(item, count): &(Item, usize)| BillRow {
        item: *item,
        what: words::item(*item),
        count: *count,
        price: prices
            .get(item)
            .map(ToString::to_string)
            .unwrap_or_default(),
    };
    way.items.iter().map(row).collect()
}

/// An amount in the smallest coin, as people write it.
fn amount(coins: u64) -> String {
    format!("{}.{:02}", coins / 100, coins % 100)
}

fn total(advice: &Advice) -> String {
    let plan = &advice.plan;
    match plan.way.total {
        _ if plan.way.items.is_empty() => "Nothing to pay for.".to_owned(),
        Some(total) => format!("All together {}", amount(total)),
        None => {
            let blank = |item: &&Item| plan.way.items.iter().any(|(of, _)| of == *item);
            let blanks = plan.blanks.iter().filter(blank).count();
            match blanks {
                1 => "One price is missing for the sum.".to_owned(),
                _ => format!("{blanks} prices are missing for the sum."),
            }
        }
    }
}
