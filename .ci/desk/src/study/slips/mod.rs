//! How well slips are caught: a thousand engines read honestly in the order
//! of the route, and the slips that could have been made at every fourth reading.

use std::collections::BTreeSet;
use std::fmt::Write;

mod bench;
pub mod engines;
mod inject;
mod parameters;
mod set_up;

use crate::Answer;
use bench::{Before, Caught, Honest, ODDS, Tally, engine};
use inject::Injected;

/// Engines, and where their seeds start: those the check was built with, and
/// those it is judged by.
const ENGINES: u64 = 1_000;
const BUILT_WITH: u64 = 0x0000_b111_0000_0000;
const JUDGED_BY: u64 = 0x0000_e0a2_0000_0000;

/// At least so many in a thousand turns and number lines are to be asked
/// about or refused, and of last digits that change a comparison; at most so
/// many honest readings in a thousand.
const STEPS_LEAST: usize = 995;
const DIGITS_LEAST: usize = 700;
const HONEST_MOST: usize = 5;

/// Judges the check, and whether it holds what it is held to; `building`
/// takes the other seeds.
pub fn command(building: bool) -> Result<Answer, String> {
    let start = if building { BUILT_WITH } else { JUDGED_BY };
    let mut all = Tally::default();
    for seed in start..start + ENGINES {
        engine(seed, &mut all)?;
    }
    Ok(told(&all))
}

fn told(tally: &Tally) -> Answer {
    let mut text = String::new();
    let honest = honest(&mut text, tally);
    slips(&mut text, tally);
    curve(&mut text, tally, honest.read);
    let steps = sum(tally, &[Injected::Turn, Injected::NumberLine], &Before::ALL);
    let known = sum(
        tally,
        &[Injected::Turn, Injected::NumberLine],
        &[Before::MadeTo, Before::Others, Before::Itself],
    );
    let digits = sum(tally, &[Injected::LastDigits], &Before::ALL);
    let mut holds = true;
    let _ = writeln!(text);
    let mut bound = |what: &str, part: usize, of: usize, least: bool, mille: usize| {
        let held = if least {
            mille * of <= 1_000 * part
        } else {
            1_000 * part <= mille * of
        };
        holds &= held;
        let word = if least { "at least" } else { "at most" };
        let verdict = if held { "holds" } else { "DOES NOT HOLD" };
        let _ = writeln!(
            text,
            "{what}: {}, {word} {}: {verdict}",
            share(part, of),
            share(mille, 1_000)
        );
    };
    bound(
        "turns and number lines, where anything is known, as they are entered",
        known.refused + known.asked,
        known.made,
        true,
        STEPS_LEAST,
    );
    bound(
        "turns and number lines, all, by the next reading",
        steps.refused + steps.asked + steps.next,
        steps.made,
        true,
        STEPS_LEAST,
    );
    bound(
        "last digits that change a comparison, before a finding is believed",
        digits.refused + digits.asked + digits.next + digits.reviewed,
        digits.made,
        true,
        DIGITS_LEAST,
    );
    bound(
        "honest readings asked about, at entry or in the review",
        honest.asked + honest.reviewed,
        honest.read,
        false,
        HONEST_MOST,
    );
    Answer { text, holds }
}

fn honest(text: &mut String, tally: &Tally) -> Honest {
    let mut all = Honest::default();
    let _ = writeln!(text, "Honest readings {:>22} read   asked  reviewed", "");
    for ((kind, before), one) in &tally.honest {
        all.read += one.read;
        all.asked += one.asked;
        all.reviewed += one.reviewed;
        let _ = writeln!(
            text,
            "  {:<13} {:<20} {:>7} {:>7} {:>7}",
            kind.key(),
            before.words(),
            one.read,
            share(one.asked, one.read),
            share(one.reviewed, one.read)
        );
    }
    let _ = writeln!(
        text,
        "  {:<34} {:>7} {:>7} {:>7}",
        "all",
        all.read,
        share(all.asked, all.read),
        share(all.reviewed, all.read)
    );
    for ((looks, kind, before), count) in &tally.looks {
        let _ = writeln!(
            text,
            "  {looks:?} {} {}: {count}",
            kind.key(),
            before.words()
        );
    }
    all
}

fn slips(text: &mut String, tally: &Tally) {
    let _ = writeln!(
        text,
        "\nSlips {:>40} made  refused   asked offered    next  review     all",
        ""
    );
    for ((sort, before), one) in &tally.slips {
        row(text, sort.words(), before.words(), one);
    }
    for sort in tally
        .slips
        .keys()
        .map(|(sort, _)| *sort)
        .collect::<BTreeSet<_>>()
    {
        row(
            text,
            sort.words(),
            "all",
            &sum(tally, &[sort], &Before::ALL),
        );
    }
}

fn row(text: &mut String, sort: &str, before: &str, one: &Caught) {
    let all = one.refused + one.asked + one.next + one.reviewed;
    let _ = writeln!(
        text,
        "  {sort:<26} {before:<20} {:>7} {:>7} {:>7} {:>7} {:>7} {:>7} {:>7}",
        one.made,
        share(one.refused, one.made),
        share(one.asked, one.made),
        share(one.offered, one.made),
        share(one.next, one.made),
        share(one.reviewed, one.made),
        share(all, one.made),
    );
}

fn curve(text: &mut String, tally: &Tally, honest: usize) {
    let steps = sum(tally, &[Injected::Turn, Injected::NumberLine], &Before::ALL);
    let digits = sum(tally, &[Injected::LastDigits], &Before::ALL);
    let _ = writeln!(
        text,
        "\nAsked as they are entered, from these odds on\n  odds  honest   turns and lines  last digits"
    );
    for (odds, point) in ODDS.iter().zip(&tally.curve) {
        let _ = writeln!(
            text,
            "  {odds:>4} {:>7} {:>17} {:>12}",
            share(point.honest, honest),
            share(point.steps, steps.made),
            share(point.digits, digits.made)
        );
    }
}

fn sum(tally: &Tally, sorts: &[Injected], before: &[Before]) -> Caught {
    let mut all = Caught::default();
    for ((sort, stands), one) in &tally.slips {
        if sorts.contains(sort) && before.contains(stands) {
            all.add(one);
        }
    }
    all
}

/// A part of a whole in per cent, to hundredths.
fn share(part: usize, of: usize) -> String {
    let hundredths = (part * 10_000 + of / 2).checked_div(of).unwrap_or(0);
    format!("{}.{:02}", hundredths / 100, hundredths % 100)
}

impl Caught {
    fn add(&mut self, other: &Self) {
        self.made += other.made;
        self.refused += other.refused;
        self.asked += other.asked;
        self.offered += other.offered;
        self.next += other.next;
        self.reviewed += other.reviewed;
    }
}
