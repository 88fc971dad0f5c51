//! How long the rest of the route takes, by the person's own pace.

use super::route::{Stop, progress, route};
use crate::assess::Assessment;
use crate::session::Session;

/// Seconds a reading takes until the person's own pace is known: our own
/// estimate, a hundred stations in an hour and a half.
const USUAL_S: usize = 54;

/// A longer gap between two readings was a pause: our own choice.
const PAUSE_S: u32 = 300;

/// How many gaps, the latest, make a pace, and how few are none.
const GAPS: usize = 21;
const GAPS_LEAST: usize = 5;

/// How many stations the route has, and how long the rest will take.
#[must_use]
pub fn length_of(session: &Session, assessment: &Assessment) -> String {
    let stops = route(session, assessment);
    let left = time_left(session, &stops);
    let of = progress(&stops).of;
    let many = if of == 1 { "" } else { "s" };
    match (of, left.as_str()) {
        (0, _) => "Nothing is asked for.".to_owned(),
        (_, "") => format!("{of} station{many}, all read"),
        (_, left) => format!("{of} station{many}, {left} left"),
    }
}

/// How long the stops not yet read will take, in words; empty without any.
pub(super) fn time_left(session: &Session, stops: &[Stop]) -> String {
    let open = stops.iter().filter(|stop| !stop.is_read()).count();
    let minutes = (open * pace(session).unwrap_or(USUAL_S)).div_ceil(60);
    match (open, minutes / 60, minutes % 60) {
        (0, ..) => String::new(),
        (_, 0, minutes) => format!("≈ {minutes} min"),
        (_, hours, minutes) => format!("≈ {hours} h {minutes} min"),
    }
}

/// The median of the latest gaps between readings, in seconds.
fn pace(session: &Session) -> Option<usize> {
    let times = session.standing().rev();
    let times: Vec<u32> = times
        .filter_map(|(_, reading)| second_of_day(&reading.taken))
        .take(GAPS + 1)
        .collect();
    let mut gaps: Vec<u32> = Vec::with_capacity(GAPS);
    for pair in times.windows(2) {
        let &[later, earlier] = pair else { continue };
        // Midnight lies between two readings once a night.
        let gap = (later + DAY_S - earlier) % DAY_S;
        if 0 < gap && gap <= PAUSE_S {
            let at = gaps.partition_point(|other| *other < gap);
            gaps.insert(at, gap);
        }
    }
    let median = gaps
        .get(gaps.len() / 2)
        .filter(|_| GAPS_LEAST <= gaps.len());
    usize::try_from(*median?).ok()
}

const DAY_S: u32 = 86_400;

/// The second of the day in an RFC 3339 time; `None` for other text.
fn second_of_day(taken: &str) -> Option<u32> {
    let two_at = |at: usize| taken.get(at..at + 2)?.parse::<u32>().ok();
    let second = two_at(11)? * 3_600 + two_at(14)? * 60 + two_at(17)?;
    (second < DAY_S).then_some(second)
}
