//! From looks and numbers to causes.
//!
//! One clue is a hint; clues of two kinds of part that agree make a cause
//! likely; where a number exists it decides, and a number that says no
//! opens the question again (common practice).

use super::cause::{Cause, Fact, Scope, Source};
use super::look::{Look, Subject};
use super::rules::RULES;
use super::sight::{Sight, Spot};

/// What a rule says of a cause.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Says {
    /// It points to the cause.
    PointsTo,
    /// It agrees with the cause once something points to it.
    AgreesWith,
    /// It speaks against the cause.
    Against,
    /// A number by which the cause stands or falls.
    Decides,
}

/// What a rule goes by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Sign {
    /// It was seen.
    Seen(Look),
    /// It was looked for and not seen.
    NotSeen(Look),
    /// A number proves it.
    Number(Fact),
}

/// A line of what the trade knows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rule {
    /// By what it goes.
    pub sign: Sign,
    /// What that says.
    pub says: Says,
    /// Of which cause.
    pub cause: Cause,
    /// Who says so.
    pub source: Source,
}

/// What the readings say of a fact.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Known {
    /// It is so.
    Proved,
    /// It is not so.
    Excluded,
    /// Not measured, or too close to call.
    Unknown,
}

/// A fact at a spot. A cause of the whole engine is excluded only where it is
/// excluded at every spot, so spots that were not measured are given too.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Number {
    /// Where.
    pub spot: Spot,
    /// What.
    pub fact: Fact,
    /// What is known of it.
    pub known: Known,
}

/// Where a cause is at work.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Region {
    /// In the engine, or at a place not known.
    Engine,
    /// At a main bearing.
    Main(u8),
    /// In a cylinder, from its bore down to its rod bearing.
    Cylinder(u8),
}

/// How far a cause is made out, the least first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Standing {
    /// Something points to it and a number says no: look again.
    Reopened,
    /// Something points to it.
    Hint,
    /// Clues of two kinds of part agree and nothing speaks against it.
    Likely,
    /// A number proves it.
    Measured,
}

/// Something that speaks for or against a cause.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Clue {
    /// Where.
    pub spot: Spot,
    /// What.
    pub sign: Sign,
    /// Whether a number proves it; else it excludes it. Of looks, true.
    pub is_so: bool,
    /// Who says that it counts.
    pub source: Source,
}

/// A cause with what is known of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Found {
    /// Which.
    pub cause: Cause,
    /// Where.
    pub place: Region,
    /// How far it is made out.
    pub standing: Standing,
    /// What supports it, at least one clue.
    pub supports: Vec<Clue>,
    /// What contradicts it.
    pub contradicts: Vec<Clue>,
    /// Numbers that would decide it and are not known.
    pub needs: Vec<Fact>,
}

impl Spot {
    /// Where causes of this spot are at work. Rods, their shells and rod
    /// journals count by cylinder: of a throw with two rods, each look at its
    /// journal is given once for each of its cylinders.
    #[must_use]
    pub const fn place(self) -> Region {
        match self.subject {
            Subject::Engine | Subject::Oil | Subject::Block | Subject::Head => Region::Engine,
            Subject::MainShell | Subject::MainJournal => Region::Main(self.position),
            _ => Region::Cylinder(self.position),
        }
    }
}

impl Region {
    /// Whether a cause of this scope can be made out here. What is known of
    /// the whole engine bears on every place.
    const fn is_of(self, scope: Scope) -> bool {
        match scope {
            Scope::Engine => true,
            Scope::Cylinder => !matches!(self, Self::Main(_)),
            Scope::Main => !matches!(self, Self::Cylinder(_)),
            Scope::Bearing => true,
        }
    }
}

/// The causes that something seen points to, the best made out first. Facts
/// that are not given are not known.
#[must_use]
pub fn causes(sights: &[Sight], numbers: &[Number]) -> Vec<Found> {
    let mut found: Vec<Found> = Vec::new();
    for cause in Cause::all() {
        for one in find(cause, sights, numbers) {
            // In place of a sort, which would be compiled for causes alone.
            let at = found.partition_point(|found| found.rank() <= one.rank());
            found.insert(at, one);
        }
    }
    found
}

impl Found {
    /// The best made out first, then by place.
    const fn rank(&self) -> (core::cmp::Reverse<Standing>, Region) {
        (core::cmp::Reverse(self.standing), self.place)
    }
}

/// A rule that holds, at a spot.
struct Hit {
    rule: &'static Rule,
    spot: Spot,
    known: Known,
}

fn find(cause: Cause, sights: &[Sight], numbers: &[Number]) -> Vec<Found> {
    let mut found = Vec::new();
    let scope = cause.scope();
    let mut hits = Vec::new();
    for rule in RULES.iter().filter(|rule| rule.cause == cause) {
        let mut hit = |spot: Spot, known| {
            if spot.place().is_of(scope) {
                hits.push(Hit { rule, spot, known });
            }
        };
        match rule.sign {
            Sign::Number(fact) => {
                for number in numbers.iter().filter(|number| number.fact == fact) {
                    hit(number.spot, number.known);
                }
            }
            Sign::Seen(look) | Sign::NotSeen(look) => {
                let seen = matches!(rule.sign, Sign::Seen(_));
                for sight in sights {
                    if sight.look == look && sight.seen == seen {
                        hit(sight.spot, Known::Proved);
                    }
                }
            }
        }
    }
    let points = |hit: &Hit| hit.rule.says == Says::PointsTo;
    if !hits.iter().any(points) {
        return found;
    }
    // Places that something points to or a number proves; a cause of a place
    // that nothing tells of stands at the engine.
    let mut places = Vec::new();
    for hit in &hits {
        let place = hit.spot.place();
        let proves = hit.rule.says == Says::Decides && hit.known == Known::Proved;
        if scope != Scope::Engine
            && place != Region::Engine
            && (points(hit) || proves)
            && !places.contains(&place)
        {
            places.push(place);
        }
    }
    for place in places {
        found.extend(weigh(cause, place, &hits));
    }
    // What points to it somewhere is not answered where a number says no.
    let open = |found: &Found| found.standing != Standing::Reopened;
    let somewhere = |hit: &Hit| points(hit) && hit.spot.place() == Region::Engine;
    if hits.iter().any(somewhere) && !found.iter().any(open) {
        let whole = weigh(cause, Region::Engine, &hits);
        found.extend(whole.filter(|whole| found.is_empty() || open(whole)));
    }
    found
}

/// What is known of a cause at a place, by what is known there and of the
/// whole engine; of the engine, by everything. `None` unless something points
/// to it.
fn weigh(cause: Cause, place: Region, hits: &[Hit]) -> Option<Found> {
    let here =
        |spot: Spot| place == Region::Engine || [Region::Engine, place].contains(&spot.place());
    let (mut supports, mut contradicts) = (Vec::new(), Vec::new());
    let (mut pointed, mut proved, mut refuted) = (false, false, false);
    let mut known = Vec::new();
    for Hit {
        rule,
        spot,
        known: state,
    } in hits.iter().filter(|hit| here(hit.spot))
    {
        let Rule { sign, source, .. } = **rule;
        let clue = Clue {
            spot: *spot,
            sign,
            is_so: *state != Known::Excluded,
            source,
        };
        let is_number = matches!(sign, Sign::Number(_));
        match (rule.says, state) {
            (Says::PointsTo | Says::AgreesWith, _) => {
                pointed |= rule.says == Says::PointsTo;
                supports.push(clue);
            }
            (Says::Against, Known::Proved) => {
                refuted |= is_number;
                contradicts.push(clue);
            }
            (Says::Decides, Known::Proved) => {
                proved = true;
                supports.push(clue);
            }
            (Says::Decides, Known::Excluded) => contradicts.push(clue),
            (Says::Against | Says::Decides, _) => {}
        }
        if let (Says::Decides, Sign::Number(fact)) = (rule.says, sign) {
            known.push((fact, *state));
        }
    }
    if !pointed {
        return None;
    }
    let deciding = RULES
        .iter()
        .filter_map(|rule| match (rule.says, rule.sign) {
            (Says::Decides, Sign::Number(fact)) if rule.cause == cause => Some(fact),
            _ => None,
        });
    let mut any = false;
    let mut needs = Vec::new();
    for fact in deciding {
        any = true;
        let mut states = known.iter().filter(|(of, _)| *of == fact).peekable();
        if states.peek().is_none() || states.any(|(_, state)| *state == Known::Unknown) {
            needs.push(fact);
        }
    }
    let standing = if proved {
        Standing::Measured
    } else if refuted || any && needs.is_empty() {
        Standing::Reopened
    } else if contradicts.is_empty() && agree(&supports) {
        Standing::Likely
    } else {
        Standing::Hint
    };
    if proved {
        needs.clear();
    }
    Some(Found {
        cause,
        place,
        standing,
        supports,
        contradicts,
        needs,
    })
}

/// Whether clues come from two kinds of part: two looks at one part may be
/// one mistake.
fn agree(clues: &[Clue]) -> bool {
    let mut subjects = clues.iter().map(|clue| clue.spot.subject);
    let first = subjects.next();
    subjects.any(|subject| Some(subject) != first)
}
