//! How often a wrong number stands, and how many touches a reading takes:
//! engines by chance, typed along their routes by a finger that slips, through
//! the keypad and the check of slips as they are; beside it the same numbers
//! typed in full into plain fields.
//!
//! The engines, hands and gauges are those of the study of slips, with their
//! figures and reasons; every second one is made to sizes at which the leading
//! digits change by wear.

use std::collections::BTreeMap;
use std::fmt::Write;

mod finger;
mod person;
mod plain;

use fenderbench::session::{Kind, Reading, Session};

use super::chance::Chance;
use super::slips::engines::{Engine, Sizes};
use crate::Answer;
use person::follow;

/// Engines, and where their seeds start: those the keypad was built with, and
/// those it is judged by. Those from 0x4e0a_0000_0000 and
/// 0x4e0b_0000_0000 on were looked at while rules were still set, and judge no
/// more.
const ENGINES: u64 = 1_000;
const BUILT_WITH: u64 = 0x0000_4b11_0000_0000;
const JUDGED_BY: u64 = 0x0000_4e0c_0000_0000;

/// Half a thou, from which on a wrong number can turn a verdict. Quanta.
const HALF_A_THOU: i64 = 127_000;

/// What is held to: in a hundred thousand readings wrong ones, and those of
/// journals and bores wrong by half a thou; touches in a thousand readings.
const WRONG_MOST: usize = 600;
const JOURNALS_MOST: usize = 140;
const BORES_MOST: usize = 350;
const TAPS_MOST: usize = 4_300;

/// What is wanted of bores and not reached. A bore that has run differs within
/// itself by as much as a key beside or two digits that have changed places,
/// the last but one among them; odds that ask about more of these ask about
/// more honest readings than the study of slips allows (0.58 % for 0.310 here,
/// 0.66 % for 0.301, both on the seeds for building). A better guess does not
/// help: with places at the same level counting three times, the farthest two in
/// a hundred honest readings come nearer to it at three levels of four, at the
/// bottom by a third, and 0.320 to 0.330 still stand on the seeds for building.
const BORES_WANTED: usize = 300;

/// What the gauges show that the bounds are for. On a coarser scale the last
/// digit is half a thou or more by itself, and a dial shows one or two digits
/// with nothing to check them by: both are told, neither is held to a bound.
const FINE: [&str; 3] = ["0.0001 in", "0.001 mm", "0.01 mm"];

/// Readings that stand, typed on the keypad and into plain fields.
#[derive(Clone, Copy, Default)]
struct Typed {
    readings: usize,
    keypad: Count,
    plain: Count,
}

#[derive(Clone, Copy, Default)]
pub struct Count {
    taps: usize,
    wrong: usize,
    /// Of these, by half a thou or more.
    far: usize,
}

/// What stands together in the table: sort of part, what the gauge shows, and
/// whether that is counted on a dial.
type Row = (&'static str, String, bool);

/// Judges the keypad, and whether it holds what it is held to; `building`
/// takes the other seeds.
pub fn command(building: bool) -> Result<Answer, String> {
    let start = if building { BUILT_WITH } else { JUDGED_BY };
    let mut rows = BTreeMap::new();
    for seed in start..start + ENGINES {
        engine(seed, &mut rows)?;
    }
    Ok(told(&rows))
}

fn engine(seed: u64, rows: &mut BTreeMap<Row, Typed>) -> Result<(), String> {
    let sizes = if seed.is_multiple_of(2) {
        Sizes::Usual
    } else {
        Sizes::RollingOver
    };
    let engine = Engine::draw(seed, sizes)?;
    let finished = follow(engine, &mut Chance::part(seed, 1))?;
    let mut plain = Chance::part(seed, 2);
    for stood in &finished.stood {
        let row = row(&finished.session, &stood.reading).ok_or("A reading without a gauge.")?;
        let typed = rows.entry(row).or_default();
        typed.readings += 1;
        let meant = Reading {
            entered: stood.meant.clone(),
            ..stood.reading.clone()
        };
        let size = |reading| finished.session.size_of(reading);
        let apart = size(&stood.reading).zip(size(&meant));
        let (stands, meant) = apart.ok_or("A reading of no size.")?;
        typed.keypad.wrong(stands.quanta() - meant.quanta());
        let decimals = finished.session.gauges.get(&stood.reading.gauge);
        let decimals = decimals.map_or(0, |gauge| gauge.value.decimals());
        let unit = stood.reading.entered.unit();
        plain::typed(&mut plain, meant, unit, decimals, &mut typed.plain);
    }
    for (station, taps) in &finished.taps {
        let mut at = finished.stood.iter().map(|stood| &stood.reading);
        let here = at.find(|reading| reading.station == *station);
        let row = here.and_then(|reading| row(&finished.session, reading));
        let row = row.ok_or("A place without a reading.")?;
        rows.entry(row).or_default().keypad.taps += taps;
    }
    Ok(())
}

fn row(session: &Session, reading: &Reading) -> Option<Row> {
    let sort = match reading.station.kind {
        Kind::Bore => "bores",
        Kind::Piston => "pistons",
        _ => "journals",
    };
    let gauge = &session.gauges.get(&reading.gauge)?.value;
    let shows = gauge.graduation.to_string();
    Some((sort, shows, gauge.kind.reads_deviations()))
}

impl Count {
    /// A number that stands, by so much off what was meant.
    fn wrong(&mut self, by: i64) {
        self.wrong += usize::from(by != 0);
        self.far += usize::from(HALF_A_THOU <= by.abs());
    }

    fn add(&mut self, other: Self) {
        self.taps += other.taps;
        self.wrong += other.wrong;
        self.far += other.far;
    }
}

fn told(rows: &BTreeMap<Row, Typed>) -> Answer {
    let mut text = format!(
        "Typed with {} % of keys slipping\n{:<36} on the keypad               into plain fields\n\
         {:<27} {:>8}  {:>5} {:>7} {:>10}    {:>5} {:>7} {:>10}\n",
        finger::SLIPS,
        "",
        "",
        "readings",
        "taps",
        "wrong %",
        "half thou %",
        "taps",
        "wrong %",
        "half thou %"
    );
    let mut line = |what: &str, typed: &Typed| {
        let (on, plain) = (typed.keypad, typed.plain);
        let _ = write!(text, "{what:<27} {:>8}", typed.readings);
        for count in [on, plain] {
            let of = |part| thousandths(part, typed.readings);
            let _ = write!(
                text,
                "  {:>6} {:>7} {:>10}",
                thousandths(count.taps, typed.readings * 100),
                of(count.wrong),
                of(count.far)
            );
        }
        text.push('\n');
    };
    for ((sort, shows, dial), typed) in rows {
        let dial = if *dial { ", dial" } else { "" };
        line(&format!("{sort}, {shows}{dial}"), typed);
    }
    let sum = |wanted: &dyn Fn(&str) -> bool| {
        let mut all = Typed::default();
        let fine = rows
            .iter()
            .filter(|((_, shows, dial), _)| !dial && FINE.contains(&shows.as_str()));
        for (_, typed) in fine.filter(|((sort, ..), _)| wanted(sort)) {
            all.readings += typed.readings;
            all.keypad.add(typed.keypad);
            all.plain.add(typed.plain);
        }
        all
    };
    let (all, journals, bores) = (
        sum(&|_| true),
        sum(&|sort| sort == "journals"),
        sum(&|sort| sort == "bores"),
    );
    line("fine scales: all", &all);
    line("fine scales: journals", &journals);
    line("fine scales: bores", &bores);
    let (mut holds, mut bores_told) = (true, String::new());
    let mut bound = |what: &str, part: usize, of: usize, most: usize| {
        let held = 100_000 * part <= most * of;
        holds &= held;
        let verdict = if held { "holds" } else { "DOES NOT HOLD" };
        let most = thousandths(most, 100_000);
        let part = thousandths(part, of);
        let _ = writeln!(text, "{what}: {part}, at most {most}: {verdict}");
    };
    let (typed, far) = (all.keypad, |of: Typed| of.keypad.far);
    bound(
        "wrong numbers that stand, %",
        typed.wrong,
        all.readings,
        WRONG_MOST,
    );
    bound(
        "journals half a thou off, %",
        far(journals),
        journals.readings,
        JOURNALS_MOST,
    );
    bound(
        "bores half a thou off, %",
        far(bores),
        bores.readings,
        BORES_MOST,
    );
    if BORES_WANTED * bores.readings < 100_000 * far(bores) {
        let wanted = thousandths(BORES_WANTED, 100_000);
        bores_told = format!("bores half a thou off: {wanted} is wanted and NOT REACHED\n");
    }
    bound(
        "touches a reading",
        typed.taps,
        all.readings * 100,
        TAPS_MOST,
    );
    text.push_str(&bores_told);
    Answer { text, holds }
}

/// A part of a whole in per cent, to thousandths.
fn thousandths(part: usize, of: usize) -> String {
    let n = (part * 100_000 + of / 2).checked_div(of).unwrap_or(0);
    format!("{}.{:03}", n / 1_000, n % 1_000)
}
