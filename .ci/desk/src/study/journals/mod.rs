//! Does the decision rule keep what it promises? Journals by chance, read and
//! judged as a person with the app would.

mod generator;
mod journal;
mod run;

pub use generator::REPEATS;

use std::fmt::Write;

use crate::Answer;
use generator::{
    Along, BY_HALF, BY_HALF_OF_LEVELS, JOURNALS, REPEATABILITIES, SAME, SEED, SEEDS_FOR_BUILDING,
};
use journal::{Design, FOUR, PLAIN, STAGGERED, STAGGERED_3};
use run::{Case, Stage, plainly, run};

/// What a row must keep to; `None` where a figure is only printed.
#[derive(Clone, Copy, Default)]
struct Bounds {
    /// Bad ones passed, in percent: at first, and in the end.
    bad: Option<(f64, f64)>,
    /// Good ones among those rejected, in percent: at first, and in the end.
    good: Option<(f64, f64)>,
    /// Open, in percent: at first, and in the end.
    open: Option<(f64, f64)>,
    /// Readings in the end for each one of the first pass.
    times: Option<f64>,
    /// Of those far beyond the limit, passed in a thousand.
    far: Option<f64>,
}

struct Row {
    design: Design,
    along: Along,
    repeatability: f64,
    known: bool,
    bounds: Bounds,
}

const FAR: Option<f64> = Some(1.0);

fn rows() -> Vec<Row> {
    let settled = |design, bad, good, open, times| Row {
        design,
        along: SAME,
        repeatability: 1.0,
        known: true,
        bounds: Bounds {
            bad: Some(bad),
            good: Some(good),
            open: Some(open),
            times: Some(times),
            far: FAR,
        },
    };
    let any = f64::INFINITY;
    let mut rows = vec![
        settled(STAGGERED, (1.0, 1.5), (3.5, 4.0), (50.0, 18.0), 1.8),
        settled(STAGGERED_3, (1.0, any), (3.0, any), (any, 15.0), 1.6),
        settled(FOUR, (1.0, any), (2.5, any), (any, 12.0), 1.5),
    ];
    let designs = [STAGGERED, STAGGERED_3, FOUR];
    let printed = |design, along, repeatability, known, bad| Row {
        design,
        along,
        repeatability,
        known,
        bounds: Bounds {
            bad,
            ..Bounds::default()
        },
    };
    for design in designs {
        rows.push(printed(design, BY_HALF, 1.0, true, Some((4.0, 4.0))));
        rows.push(printed(design, BY_HALF_OF_LEVELS, 1.0, true, None));
    }
    for design in designs {
        for &repeatability in REPEATABILITIES.iter().skip(1) {
            rows.push(printed(design, SAME, repeatability, true, Some((2.0, 2.0))));
        }
        for repeatability in REPEATABILITIES {
            rows.push(printed(
                design,
                SAME,
                repeatability,
                false,
                Some((2.0, 2.0)),
            ));
        }
    }
    rows
}

pub fn command(building: bool) -> Result<Answer, String> {
    let seed = if building {
        SEEDS_FOR_BUILDING[0]
    } else {
        SEED
    };
    let plain = plainly(PLAIN, seed, JOURNALS);
    let mut text = format!(
        "{JOURNALS} journals of seed {seed} in each row. {} compared plainly passes {plain:.1} % of the \
         bad ones.\n\
         Bad passed, good among rejected, open (in %), far beyond passed (in a thousand), readings: at \
         first | after one round of advice | after two\n\n",
        PLAIN.name
    );
    let mut holds = true;
    for row in rows() {
        let case = Case {
            design: row.design,
            along: row.along,
            repeatability: row.repeatability,
            known: row.known,
        };
        let stages = run(case, seed, JOURNALS)?;
        let known = if row.known { "known" } else { "estimated" };
        let _ = write!(
            text,
            "{:<18}{:<24}s {} {known:<10}",
            row.design.name, row.along.name, row.repeatability
        );
        for stage in &stages {
            let _ = write!(
                text,
                "| {:.2} {:.2} {:.2} {:.2} x{:.2} ",
                stage.bad_passed(),
                stage.good_among_rejected(),
                stage.open(),
                stage.far_passed(),
                stage.times(&stages[0])
            );
        }
        let missed = missed(&row.bounds, &stages[0], &stages[2]);
        let word = if missed.is_empty() {
            String::from("ok")
        } else {
            format!("MISSED: {}", missed.join(", "))
        };
        holds &= missed.is_empty();
        let _ = writeln!(text, "{word}");
    }
    Ok(Answer { text, holds })
}

fn missed(bounds: &Bounds, first: &Stage, last: &Stage) -> Vec<String> {
    let pair = |bound: Option<(f64, f64)>, name, of: fn(&Stage) -> f64| {
        let (at_first, in_the_end) = bound.unwrap_or((f64::INFINITY, f64::INFINITY));
        let one = |stage, most, when| {
            let is = of(stage);
            (most < is).then(|| format!("{name} {when}: {is:.2} of {most}"))
        };
        [
            one(first, at_first, "at first"),
            one(last, in_the_end, "in the end"),
        ]
    };
    let times = last.times(first);
    let times = bounds
        .times
        .filter(|most| *most < times)
        .map(|most| format!("readings: {times:.3} of {most}"));
    let far = last.far_passed().max(first.far_passed());
    let far = bounds
        .far
        .filter(|most| *most < far)
        .map(|most| format!("far beyond passed: {far:.2} of {most}"));
    let pairs = [
        pair(bounds.bad, "bad passed", Stage::bad_passed),
        pair(
            bounds.good,
            "good among rejected",
            Stage::good_among_rejected,
        ),
        pair(bounds.open, "open", Stage::open),
    ];
    pairs
        .into_iter()
        .flatten()
        .chain([times, far])
        .flatten()
        .collect()
}
