//! What was seen and what can be behind it, as JSON.

use serde::Serialize;

use super::words;
use crate::assess::{Assessment, facts};
use crate::remedy::{self, Found, Look, Region, Sight, Sign, Spot};
use crate::session::Session;

/// What was seen, weighed.
pub(super) struct Evidence {
    pub causes: Vec<Cause>,
    pub clashes: Vec<Clash>,
    pub aftermath: Aftermath,
}

#[derive(Serialize)]
pub(super) struct Cause {
    cause: &'static str,
    place: String,
    standing: &'static str,
    supports: Vec<Clue>,
    contradicts: Vec<Clue>,
    needs: Vec<&'static str>,
    check: &'static str,
    source: &'static str,
}

#[derive(Serialize)]
struct Clue {
    at: String,
    sign: &'static str,
    of: &'static str,
    source: &'static str,
}

#[derive(Serialize)]
pub(super) struct Clash {
    at: String,
    looks: [&'static str; 2],
}

/// What follows from metal in the oil, and what put it there; both empty
/// where nothing did.
#[derive(Serialize)]
pub(super) struct Aftermath {
    because: Vec<Seen>,
    to_do: Vec<ToDo>,
}

#[derive(Serialize)]
struct Seen {
    at: String,
    look: &'static str,
}

#[derive(Serialize)]
struct ToDo {
    what: &'static str,
    source: &'static str,
}

pub(super) fn evidence(session: &Session, assessment: &Assessment) -> Evidence {
    let sights: Vec<Sight> = session.sights().collect();
    let found = remedy::causes(&sights, &facts(session, assessment));
    let clash = |(spot, one, other): (Spot, Look, Look)| Clash {
        at: at(spot),
        looks: [one.key(), other.key()],
    };
    let because: Vec<_> = remedy::debris(&sights)
        .map(|sight| Seen {
            at: at(sight.spot),
            look: sight.look.key(),
        })
        .collect();
    let follows = remedy::Aftermath::ALL.into_iter();
    let follows = follows.filter(|_| !because.is_empty());
    let to_do = follows.map(|one| ToDo {
        what: words::aftermath(one),
        source: one.source(),
    });
    Evidence {
        causes: found.iter().map(cause).collect(),
        clashes: remedy::clashes(&sights).into_iter().map(clash).collect(),
        aftermath: Aftermath {
            to_do: to_do.collect(),
            because,
        },
    }
}

fn cause(found: &Found) -> Cause {
    let (check, source) = found.cause.check();
    Cause {
        cause: found.cause.key(),
        place: match found.place {
            Region::Engine => "engine".to_owned(),
            Region::Main(position) => format!("main/{position}"),
            Region::Cylinder(position) => format!("cylinder/{position}"),
        },
        standing: words::standing(found.standing),
        supports: found.supports.iter().map(clue).collect(),
        contradicts: found.contradicts.iter().map(clue).collect(),
        needs: found.needs.iter().map(|fact| words::fact(*fact)).collect(),
        check,
        source: source.text(),
    }
}

fn clue(clue: &remedy::Clue) -> Clue {
    let (sign, of) = match clue.sign {
        Sign::Seen(look) => ("seen", look.key()),
        Sign::NotSeen(look) => ("not_seen", look.key()),
        Sign::Number(fact) if clue.is_so => ("proved", words::fact(fact)),
        Sign::Number(fact) => ("excluded", words::fact(fact)),
    };
    Clue {
        at: at(clue.spot),
        sign,
        of,
        source: clue.source.text(),
    }
}

/// A spot as files have it.
fn at(spot: Spot) -> String {
    format!("{}/{}", spot.subject.key(), spot.position)
}
