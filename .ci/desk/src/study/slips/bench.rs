//! One engine at a time: what the check says of honest readings and of every
//! slip that could have been made.

use std::collections::BTreeMap;

use fenderbench::assess::assess;
use fenderbench::present::{Why, keypad, next_open, route};
use fenderbench::report::comparison_key;
use fenderbench::session::{Edit, Feature, Indication, Kind, Reading, Replica, Session, Stamp};
use fenderbench::slip::{Looks, likeliest, review, suspect};

use super::engines::{Engine, Sizes};
use super::inject::{Injected, slips};

const REPLICA: Replica = Replica::new(0x511c);

/// Slips are put on every fourth reading of an engine, from another one on
/// each time; on all of them the study would run for minutes.
const SLIPS_AT_EVERY: usize = 4;

/// Odds for the curve.
pub const ODDS: [i128; 10] = [2, 3, 4, 5, 6, 7, 8, 10, 14, 20];

/// What stands when a reading is entered.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Before {
    /// Nothing of the kind, and nobody has said what it was made to.
    Nothing,
    /// Nothing of the kind, but the size it was made to is known.
    MadeTo,
    /// Others of the kind, nothing of this feature.
    Others,
    /// Something of this feature.
    Itself,
}

impl Before {
    pub const ALL: [Self; 4] = [Self::Nothing, Self::MadeTo, Self::Others, Self::Itself];

    pub const fn words(self) -> &'static str {
        match self {
            Self::Nothing => "nothing known",
            Self::MadeTo => "size made to",
            Self::Others => "others of the kind",
            Self::Itself => "the feature itself",
        }
    }
}

/// How often something happened to slips of one sort.
#[derive(Clone, Copy, Default)]
pub struct Caught {
    pub made: usize,
    /// Not taken by keypad or session at all.
    pub refused: usize,
    /// Asked about when it was entered.
    pub asked: usize,
    /// Asked about, and the value offered was the honest one.
    pub offered: usize,
    /// Not asked about, but the next reading of the kind was.
    pub next: usize,
    /// Neither, but named by the review of the finished session.
    pub reviewed: usize,
}

/// What happened to honest readings.
#[derive(Clone, Copy, Default)]
pub struct Honest {
    pub read: usize,
    /// Asked about when they were entered.
    pub asked: usize,
    /// Named by the review of the finished session, though not asked about.
    pub reviewed: usize,
}

/// What a number of engines came to.
#[derive(Default)]
pub struct Tally {
    pub honest: BTreeMap<(Kind, Before), Honest>,
    /// What honest readings looked like when they were asked about.
    pub looks: BTreeMap<(Looks, Kind, Before), usize>,
    /// Slips by what stood before; last digits only where they change a
    /// comparison.
    pub slips: BTreeMap<(Injected, Before), Caught>,
    /// Of each of [`ODDS`], honest readings and slips asked about: turns and
    /// number lines, and last digits that change a comparison.
    pub curve: [Curve; ODDS.len()],
}

/// One point of the curve.
#[derive(Clone, Copy, Default)]
pub struct Curve {
    pub honest: usize,
    pub steps: usize,
    pub digits: usize,
}

/// What the check says of one reading.
struct Said {
    /// Whether there is anything to compare with.
    knows: bool,
    odds: i128,
    asks: Option<Looks>,
    would_be: Option<Indication>,
}

impl Said {
    fn of(session: &Session, reading: &Reading) -> Self {
        let asked = suspect(session, reading, false);
        let likeliest = likeliest(session, reading);
        Self {
            knows: likeliest.is_some(),
            odds: likeliest.map_or(0, |(odds, _)| odds),
            asks: asked.as_ref().map(|slip| slip.looks),
            would_be: asked.and_then(|slip| slip.would_be),
        }
    }

    /// Whether it would ask from these odds on. What it asks about for
    /// another reason hangs on no odds.
    fn asks_from(&self, odds: i128) -> bool {
        odds <= self.odds || self.asks.is_some() && self.would_be.is_none()
    }
}

/// A reading of the route, what stood before it, and what was said of it.
struct Step {
    before: Session,
    stands: Before,
    reading: Reading,
    said: Said,
}

/// Reads one engine and puts everything it came to into the tally.
pub fn engine(seed: u64, tally: &mut Tally) -> Result<(), String> {
    let (steps, finished) = read(seed)?;
    let named = named(&finished);
    for step in &steps {
        let key = (step.reading.station.kind, step.stands);
        let honest = tally.honest.entry(key).or_default();
        honest.read += 1;
        if let Some(looks) = step.said.asks {
            honest.asked += 1;
            *tally.looks.entry((looks, key.0, key.1)).or_default() += 1;
        } else if named.contains(&step.reading.taken) {
            honest.reviewed += 1;
        }
        for (point, odds) in tally.curve.iter_mut().zip(ODDS) {
            point.honest += usize::from(step.said.asks_from(odds));
        }
    }
    let words = comparisons(&finished);
    let (every, from) = (SLIPS_AT_EVERY, usize::try_from(seed).unwrap_or(0));
    let at = steps.iter().enumerate().skip(from % every).step_by(every);
    for (at, step) in at {
        inject(tally, &finished, &words, step, steps.get(at + 1));
    }
    Ok(())
}

/// The readings of one engine as the route asks for them, and the session
/// they end in.
fn read(seed: u64) -> Result<(Vec<Step>, Session), String> {
    let mut engine = Engine::draw(seed, Sizes::Usual)?;
    let mut session = engine.session.clone();
    let mut steps: Vec<Step> = Vec::new();
    let mut at = None;
    loop {
        let mut stops = route(&session, &assess(&session));
        // What settles a close call is asked for without end, and is the same
        // place over and over: it would drown what is studied.
        stops.retain(|stop| !matches!(stop.why, Why::Settle(..)));
        let Some(station) = next_open(&stops, at) else {
            break;
        };
        let mut reading = engine.read(station)?;
        // A name by which it is found again.
        reading.taken = steps.len().to_string();
        let said = Said::of(&session, &reading);
        // Who is asked about an honest reading stands by it.
        reading.kept = said.asks.is_some();
        steps.push(Step {
            before: session.clone(),
            stands: stands(&session, &reading, &said),
            reading: reading.clone(),
            said,
        });
        let edit = Edit::Add(reading);
        let added = session.apply(&edit, REPLICA);
        added.map_err(|why| why.to_string())?;
        at = Some(station);
    }
    Ok((steps, session))
}

fn stands(session: &Session, reading: &Reading, said: &Said) -> Before {
    let at = reading.station;
    let any = |f: &dyn Fn(&Reading) -> bool| session.standing().any(|(_, r)| f(r));
    if any(&|r| Feature::of(r.station) == Feature::of(at)) {
        Before::Itself
    } else if any(&|r| r.station.kind == at.kind) {
        Before::Others
    } else if said.knows {
        Before::MadeTo
    } else {
        Before::Nothing
    }
}

/// The names of the readings that the review of a session names.
fn named(session: &Session) -> Vec<String> {
    let slips = review(session);
    let reading = |id: &Stamp| session.readings.get(id).map(|r| r.taken.clone());
    slips.iter().filter_map(|(id, _)| reading(id)).collect()
}

fn comparisons(session: &Session) -> Vec<&'static str> {
    let findings = assess(session).findings;
    let words = findings.iter().map(|f| comparison_key(f.comparison()));
    words.collect()
}

/// A finished session in which one reading was another.
fn with(finished: &Session, reading: &Reading) -> Session {
    let mut session = finished.clone();
    let mut standing = finished.standing();
    if let Some((id, _)) = standing.find(|(_, r)| r.taken == reading.taken) {
        session.readings.insert(id, reading.clone());
    }
    session
}

/// Puts every slip that could have been made at a step into the tally.
fn inject(
    tally: &mut Tally,
    finished: &Session,
    words: &[&'static str],
    step: &Step,
    next: Option<&Step>,
) {
    let gauges = &step.before.gauges;
    let Some(gauge) = gauges.get(&step.reading.gauge) else {
        return;
    };
    let mut made = slips(&step.reading.entered, &gauge.value);
    let others = other_kind(finished, &step.reading);
    made.extend(others.map(|read| (Injected::OtherKind, read)));
    for (sort, entered) in made {
        let slip = Reading {
            entered,
            kept: false,
            ..step.reading.clone()
        };
        let changed = with(finished, &slip);
        if sort == Injected::LastDigits && comparisons(&changed) == words {
            continue;
        }
        let caught = tally.slips.entry((sort, step.stands)).or_default();
        caught.made += 1;
        let said = Said::of(&step.before, &slip);
        for (point, odds) in tally.curve.iter_mut().zip(ODDS) {
            let asks = usize::from(said.asks_from(odds) || is_refused(&step.before, &slip));
            match sort {
                Injected::Turn | Injected::NumberLine => point.steps += asks,
                Injected::LastDigits => point.digits += asks,
                _ => {}
            }
        }
        if is_refused(&step.before, &slip) {
            caught.refused += 1;
        } else if said.asks.is_some() {
            caught.asked += 1;
            let honest = said.would_be.as_ref() == Some(&step.reading.entered);
            caught.offered += usize::from(honest);
        } else if next.is_some_and(|next| asks_next(&step.before, &slip, next)) {
            caught.next += 1;
        } else if named(&changed).contains(&slip.taken) {
            caught.reviewed += 1;
        }
    }
}

/// A reading of the other kind of journal, with the same micrometer.
fn other_kind(finished: &Session, reading: &Reading) -> Option<Indication> {
    let other = match reading.station.kind {
        Kind::MainJournal => Kind::RodJournal,
        Kind::RodJournal => Kind::MainJournal,
        _ => return None,
    };
    let mut standing = finished.standing();
    let (_, found) = standing.find(|(_, r)| r.station.kind == other)?;
    Some(found.entered.clone())
}

/// True if the keypad does not take the number or the session the reading.
fn is_refused(session: &Session, slip: &Reading) -> bool {
    let Indication::Size(typed) = &slip.entered else {
        return false;
    };
    let keypad = keypad(session, slip.station, true, typed.text());
    // A wrong unit is that of the gauge for the keypad.
    keypad.is_none_or(|keypad| keypad.enter().is_err())
        || session
            .clone()
            .apply(&Edit::Add(slip.clone()), REPLICA)
            .is_err()
}

/// True if the next reading of the kind is asked about because of a slip that
/// stands.
fn asks_next(before: &Session, slip: &Reading, next: &Step) -> bool {
    let mut session = before.clone();
    let added = session.apply(&Edit::Add(slip.clone()), REPLICA);
    added.is_ok()
        && next.reading.station.kind == slip.station.kind
        && next.said.asks.is_none()
        && Said::of(&session, &next.reading).asks.is_some()
}
