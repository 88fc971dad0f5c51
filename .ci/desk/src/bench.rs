//! How long the pure half takes on sessions of growing size.

use std::fmt::Write;
use std::hint::black_box;
use std::time::{Duration, Instant};

use fenderbench::archive;
use fenderbench::assess::assess;
use fenderbench::quantity::{Entered, Unit};
use fenderbench::session::{
    CYLINDERS_MAX, Edit, Feature, Field, Kind, Reading, Replica, Session, SessionId, Station,
};

use crate::{Answer, plan, sample};

/// A usual session, a large one, and the largest there can be.
const USUAL: usize = 200;
const LARGE: usize = 1_000;
const LARGEST: usize = 10_000;

/// What an assessment may take here, so that a phone, several times slower,
/// still shows what a reading says without a wait: our own choice.
const BUDGETS: [(&str, usize, Duration); 3] = [
    ("assess", USUAL, Duration::from_millis(2)),
    ("assess", LARGEST, Duration::from_millis(50)),
    (PLAN, CYLINDERS, Duration::from_millis(10)),
];

/// The work that counts cylinders instead of readings, and the largest set.
const PLAN: &str = "plan";
const CYLINDERS: usize = 16;

/// As long as the numbers that devices draw, so that files have their size.
const OURS: Replica = Replica::new(0xfe0d_e4be_0000_0001);

/// How often work on so many readings is repeated: enough for a median that
/// a busy machine does not move, little enough to wait for. Odd, so that the
/// median is one of the times.
const fn runs(readings: usize) -> usize {
    if readings < LARGEST { 201 } else { 41 }
}

/// How long one kind of work took.
struct Row {
    work: &'static str,
    readings: usize,
    median: Duration,
}

/// The table of medians, and whether the budgets are met.
pub fn command() -> Result<Answer, String> {
    let mut rows = Vec::new();
    for readings in [USUAL, LARGE, LARGEST] {
        let session = generated(readings)?;
        rows.push(row("assess", readings, || (), |()| assess(&session)));
    }
    for readings in [USUAL, LARGEST] {
        let session = generated(readings)?;
        let (half, other) = halves(&session);
        let merge = |mut half: Session| {
            half.merge(&other);
            half
        };
        if merge(half.clone()) != session {
            return Err("the halves of a session do not merge into it.".to_owned());
        }
        rows.push(row("merge", readings, || half.clone(), merge));
    }
    for readings in [USUAL, LARGEST] {
        let session = generated(readings)?;
        rows.push(row(
            "write",
            readings,
            || (),
            |()| archive::write(&session, OURS),
        ));
    }
    for readings in [USUAL, LARGEST] {
        let session = generated(readings)?;
        let text = archive::write(&session, OURS);
        // A refusal is quick, and would pass for a quick reading.
        if archive::import(&text).map(|incoming| incoming.session) != Ok(session) {
            return Err(format!("{readings} readings do not read back."));
        }
        rows.push(row("read", readings, || (), |()| archive::import(&text)));
    }
    let set = plan::set(CYLINDERS);
    rows.push(row(PLAN, CYLINDERS, || (), |()| set.plan()));
    let (told, holds) = judged(&rows);
    let text = format!("{}\n{told}", table(&rows));
    Ok(Answer { text, holds })
}

/// Times `run`, each time on what `prepare` gives it, which is not timed.
fn row<P, T>(
    work: &'static str,
    readings: usize,
    prepare: impl Fn() -> P,
    run: impl Fn(P) -> T,
) -> Row {
    let mut times: Vec<Duration> = (0..runs(readings))
        .map(|_| {
            let prepared = prepare();
            let start = now();
            let done = black_box(run(black_box(prepared)));
            let time = start.elapsed();
            // What was made is given back outside of the time taken.
            drop(done);
            time
        })
        .collect();
    times.sort_unstable();
    let middle = times.len() / 2;
    let median = times.get(middle).copied().unwrap_or_default();
    Row {
        work,
        readings,
        median,
    }
}

/// The session the bench uses, as the app would export it.
pub fn text(readings: usize) -> Result<String, String> {
    if LARGEST < readings {
        return Err(format!("a session has at most {LARGEST} readings."));
    }
    Ok(archive::write(&generated(readings)?, OURS))
}

/// A session of so many readings on the largest layout: every station there
/// is, round and round, so that the many are repeats as on a real bench.
fn generated(readings: usize) -> Result<Session, String> {
    let fields = vec![
        Field::Name("Generated for the bench".to_owned()),
        Field::Cylinders(CYLINDERS_MAX),
        Field::Mains(CYLINDERS_MAX + 1),
    ];
    let mut session = Session::create(SessionId::from_number(1), fields, OURS);
    let stations = stations(&session);
    // One batch: an edit by itself copies the session first.
    let adds: Result<Vec<Edit>, String> = (0..readings)
        .zip(stations.iter().cycle())
        .map(|(number, station)| reading(&session, number, *station).map(Edit::Add))
        .collect();
    for edit in [sample::limits()?, Edit::Batch(adds?)] {
        let done = session.apply(&edit, OURS);
        done.map_err(|why| why.to_string())?;
    }
    Ok(session)
}

fn stations(session: &Session) -> Vec<Station> {
    let of_feature = |feature: Feature| {
        let levels = feature.kind.levels().iter();
        levels.flat_map(move |level| {
            let directions = feature.kind.directions().iter();
            directions.map(move |direction| feature.station(*level, *direction))
        })
    };
    session.features().flat_map(of_feature).collect()
}

fn reading(session: &Session, number: usize, station: Station) -> Result<Reading, String> {
    let micrometres = match station.kind {
        Kind::Bore => 82_010,
        Kind::Piston => 81_955,
        Kind::MainJournal => 59_980,
        _ => 49_980,
    };
    // A steady pattern of 13 steps: scatter, and the same one at every run.
    let micrometres = micrometres + number * 7 % 13;
    let text = format!("{}.{:03}", micrometres / 1_000, micrometres % 1_000);
    let gauge = session.gauge_for(station.kind);
    let (gauge, _, setting) = gauge.ok_or("The session has no gauge.")?;
    Ok(Reading {
        station,
        entered: Entered::parse(&text, Unit::Millimetre)
            .map_err(|why| why.to_string())?
            .into(),
        gauge,
        setting,
        taken: "2026-05-09T09:00:00.000Z".to_owned(),
        kept: false,
        strikes: 0,
        extra: String::new(),
    })
}

/// Two copies of a session that each lack every other reading.
fn halves(session: &Session) -> (Session, Session) {
    let half = |odd: bool| {
        let mut half = session.clone();
        half.readings.retain(|id, _| (id.counter % 2 == 1) == odd);
        half
    };
    (half(true), half(false))
}

fn table(rows: &[Row]) -> String {
    let mut text = format!("{:<8}{:>9}{:>14}   growth\n", "work", "size", "median");
    let mut before: Option<&Row> = None;
    for row in rows {
        let growth = before
            .filter(|before| before.work == row.work)
            .map_or_else(String::new, |before| growth(before, row));
        let (work, readings, median) = (row.work, row.readings, shown(row.median));
        let line = format!("{work:<8}{readings:>9}{median:>14}   {growth}");
        // Writing to a string cannot fail.
        let _ = writeln!(text, "{}", line.trim_end());
        before = Some(row);
    }
    text
}

/// How many times the work for how many times the readings.
fn growth(before: &Row, row: &Row) -> String {
    let times = row.median.as_secs_f64() / before.median.as_secs_f64();
    let more = row.readings / before.readings;
    format!("{times:.1} times the work for {more} times the readings")
}

fn shown(time: Duration) -> String {
    format!("{:.3} ms", time.as_secs_f64() * 1_000.0)
}

/// A sentence for each budget, and whether all are met.
fn judged(rows: &[Row]) -> (String, bool) {
    let mut told = String::new();
    let mut holds = true;
    for (work, readings, budget) in BUDGETS {
        let of_budget = |row: &&Row| row.work == work && row.readings == readings;
        let took = rows.iter().find(of_budget).map(|row| row.median);
        let met = took.is_some_and(|took| took <= budget);
        holds &= met;
        let word = if met { "met" } else { "NOT met" };
        let budget = budget.as_millis();
        let unit = if work == PLAN {
            "cylinders"
        } else {
            "readings"
        };
        let _ = writeln!(
            told,
            "Budget of {budget} ms to {work} {readings} {unit}: {word}."
        );
    }
    (told, holds)
}

#[expect(
    clippy::disallowed_methods,
    reason = "on the desk only, where there is a clock and no browser"
)]
pub fn now() -> Instant {
    Instant::now()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn assessed(readings: usize, micros: u64) -> Row {
        done("assess", readings, micros)
    }

    fn done(work: &'static str, readings: usize, micros: u64) -> Row {
        Row {
            work,
            readings,
            median: Duration::from_micros(micros),
        }
    }

    #[test]
    fn a_budget_is_met_up_to_its_last_microsecond() {
        let plan = |micros| done(PLAN, CYLINDERS, micros);
        let rows = [
            assessed(USUAL, 2_000),
            assessed(LARGEST, 50_000),
            plan(10_000),
        ];
        let (told, holds) = judged(&rows);
        assert!(holds, "{told}");
        for late in [
            [
                assessed(USUAL, 2_001),
                assessed(LARGEST, 50_000),
                plan(10_000),
            ],
            [
                assessed(USUAL, 2_000),
                assessed(LARGEST, 50_001),
                plan(10_000),
            ],
            [
                assessed(USUAL, 2_000),
                assessed(LARGEST, 50_000),
                plan(10_001),
            ],
        ] {
            let (told, holds) = judged(&late);
            assert!(!holds, "{told}");
            assert_eq!(told.matches("NOT met").count(), 1, "{told}");
        }
    }

    #[test]
    fn a_budget_of_what_was_not_timed_is_not_met() {
        let (told, holds) = judged(&[assessed(USUAL, 1)]);
        assert!(!holds, "{told}");
    }

    #[test]
    fn the_table_tells_growth_within_one_kind_of_work_only() {
        let merge = Row {
            work: "merge",
            ..assessed(USUAL, 10)
        };
        let text = table(&[assessed(USUAL, 100), assessed(LARGE, 600), merge]);
        let lines: Vec<&str> = text.lines().collect();
        assert!(
            lines[2].ends_with("6.0 times the work for 5 times the readings"),
            "{text}"
        );
        assert!(lines[1].ends_with("0.100 ms"), "{text}");
        assert!(lines[3].ends_with("0.010 ms"), "{text}");
    }

    #[test]
    fn a_generated_session_is_as_large_as_asked_and_reads_back() {
        for readings in [USUAL, LARGEST] {
            let session = generated(readings).unwrap();
            assert_eq!(session.standing().count(), readings);
            let text = archive::write(&session, OURS);
            assert_eq!(archive::import(&text).unwrap().session, session);
            let (mut half, other) = halves(&session);
            assert!(half.readings.len().abs_diff(other.readings.len()) <= 1);
            half.merge(&other);
            assert_eq!(half, session);
        }
    }
}
