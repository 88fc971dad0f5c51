//! What can be seen, what was, and which causes that supports.

use super::look_words::{self, is_drawn};
use crate::assess::{Assessment, facts};
use crate::remedy::{
    Clue, Fact, Found, Look, Number, Region, Sight, Sign, Spot, Standing, Subject, causes, clashes,
    debris,
};
use crate::session::{Edit, Field, FieldKey, Kind, Session};

/// All parts with what was seen of them, and what is behind it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct LooksView {
    /// What is asked before strip-down first.
    pub groups: Vec<LookGroup>,
    /// Answers that cannot both be, each a sentence.
    pub clashes: Vec<String>,
    /// Causes, the best made out first.
    pub causes: Vec<CauseRow>,
    /// What put metal into the oil; with it, [`aftermath`] follows.
    pub debris: Vec<String>,
}

/// Parts of one kind.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LookGroup {
    /// What they are, all of them.
    pub title: &'static str,
    /// Whether they are looked at before strip-down.
    pub before: bool,
    /// Each of them.
    pub spots: Vec<SpotRow>,
}

/// One part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SpotRow {
    /// Which.
    pub spot: Spot,
    /// Its name.
    pub name: String,
    /// What was seen of it.
    pub told: String,
    /// Whether anything was answered.
    pub answered: bool,
}

/// One look at a part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LookRow {
    /// Which.
    pub look: Look,
    /// What is looked for.
    pub words: &'static str,
    /// The address of its drawing.
    pub drawing: Option<String>,
    /// Seen or not; `None` where nobody answered.
    pub answer: Option<bool>,
}

/// Something with who says so.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Said {
    /// What.
    pub text: String,
    /// Who says so.
    pub source: &'static str,
}

/// A cause.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CauseRow {
    /// What it is, and where.
    pub title: String,
    /// How far it is made out.
    pub standing: Standing,
    /// The same in words.
    pub word: &'static str,
    /// What supports it.
    pub supports: Vec<Said>,
    /// What contradicts it.
    pub contradicts: Vec<Said>,
    /// What would decide it.
    pub needs: Option<String>,
    /// What to check besides.
    pub check: Said,
}

/// Every part that can be looked at, in the order of asking.
#[must_use]
pub fn spots(session: &Session) -> Vec<Spot> {
    let mut spots = Vec::new();
    for subject in Subject::ALL {
        for position in 1..=count(session, subject) {
            spots.push(Spot { subject, position });
        }
    }
    spots
}

fn count(session: &Session, subject: Subject) -> u8 {
    use Subject::{
        Bore, Cylinder, Head, MainJournal, MainShell, Piston, Rod, RodJournal, RodShell,
    };
    match subject {
        Cylinder | RodShell | Piston | Bore | Rod => session.cylinders(),
        MainShell | MainJournal => session.mains(),
        RodJournal => session.count(Kind::RodJournal),
        Head => session.bank(1).map_or(1, |_| 2),
        Subject::Engine | Subject::Oil | Subject::Block => 1,
    }
}

/// The name of a part.
#[must_use]
pub fn spot_name(session: &Session, spot: Spot) -> String {
    let name = look_words::subject(spot.subject);
    match count(session, spot.subject) {
        1 if !matches!(spot.subject, Subject::Piston | Subject::Bore) => name.to_owned(),
        _ => format!("{name} {}", spot.position),
    }
}

/// What can be seen of a part, and the answers.
#[must_use]
pub fn looks_at(sights: &[Sight], spot: Spot) -> Vec<LookRow> {
    let row = |look: Look| LookRow {
        look,
        words: look_words::look(look),
        drawing: is_drawn(spot.subject).then(|| format!("drawings.svg#{}", look.key())),
        answer: answer(sights, spot, look),
    };
    spot.subject.looks().map(row).collect()
}

fn answer(sights: &[Sight], spot: Spot, look: Look) -> Option<bool> {
    let of = |sight: &&Sight| sight.spot == spot && sight.look == look;
    sights.iter().find(of).map(|sight| sight.seen)
}

/// What nobody answered of a part and an eye alone can: not cracks, which
/// take a test.
#[must_use]
pub fn open_looks(sights: &[Sight], spot: Spot) -> Vec<Look> {
    let open = |look: &Look| !look.is_crack() && answer(sights, spot, *look).is_none();
    spot.subject.looks().filter(open).collect()
}

/// Whether something was seen; `None` where nobody answered.
#[must_use]
pub fn look_answer(session: &Session, spot: Spot, look: Look) -> Option<bool> {
    match session.field(FieldKey::Look(spot, look)) {
        Field::Look(_, _, seen) => seen,
        _ => None,
    }
}

/// The edit that answers the open looks of a part with not seen.
#[must_use]
pub fn nothing_else(session: &Session, spot: Spot) -> Edit {
    let sights: Vec<_> = session.sights().collect();
    let open = open_looks(&sights, spot).into_iter();
    Edit::Batch(
        open.map(|look| Edit::Set(Field::Look(spot, look, Some(false))))
            .collect(),
    )
}

/// The part that is asked for after this one.
#[must_use]
pub fn next_spot(session: &Session, spot: Spot) -> Option<Spot> {
    let mut after = spots(session).into_iter().skip_while(|one| *one != spot);
    after.nth(1)
}

/// What the screen of looks shows.
#[must_use]
pub fn looks_view(session: &Session, assessment: &Assessment) -> LooksView {
    let sights: Vec<_> = session.sights().collect();
    looks(session, &sights, &facts(session, assessment))
}

/// All of it, by answers and facts.
#[must_use]
pub fn looks(session: &Session, sights: &[Sight], numbers: &[Number]) -> LooksView {
    let mut groups: Vec<LookGroup> = Vec::new();
    let mut last = None;
    for spot in spots(session) {
        let row = spot_row(session, sights, spot);
        match groups.last_mut() {
            Some(group) if last == Some(spot.subject) => group.spots.push(row),
            _ => groups.push(LookGroup {
                title: look_words::subject(spot.subject),
                before: spot.subject.is_before(),
                spots: vec![row],
            }),
        }
        last = Some(spot.subject);
    }
    // What was seen of parts that the layout does not have is kept, not used.
    let has = |sight: &&Sight| sight.spot.position <= count(session, sight.spot.subject);
    let sights: Vec<Sight> = sights.iter().filter(has).copied().collect();
    let sights = sights.as_slice();
    let by_cylinder = by_cylinder(session, sights);
    let found = causes(&by_cylinder, numbers);
    let clash = |(spot, one, other): (Spot, Look, Look)| {
        let name = spot_name(session, spot);
        let (one, other) = (look_words::look(one), look_words::look(other));
        format!(
            "{name}: \u{201c}{one}\u{201d} and \u{201c}{other}\u{201d} cannot both be. Look again."
        )
    };
    LooksView {
        groups,
        clashes: clashes(sights).into_iter().map(clash).collect(),
        causes: found.into_iter().map(|f| cause_row(session, f)).collect(),
        debris: debris(sights)
            .map(|s| seen_at(session, s.spot, s.look))
            .collect(),
    }
}

fn spot_row(session: &Session, sights: &[Sight], spot: Spot) -> SpotRow {
    let here = || sights.iter().filter(|sight| sight.spot == spot);
    let seen: Vec<_> = here()
        .filter(|sight| sight.seen)
        .map(|sight| look_words::look(sight.look))
        .collect();
    let answered = here().next().is_some();
    let told = match (answered, seen.is_empty()) {
        (false, _) => "not looked at".to_owned(),
        (true, true) => "nothing seen".to_owned(),
        (true, false) => seen.join("; "),
    };
    SpotRow {
        spot,
        name: spot_name(session, spot),
        told,
        answered,
    }
}

/// A journal of two rods is looked at once and bears on both of them.
fn by_cylinder(session: &Session, sights: &[Sight]) -> Vec<Sight> {
    let mut all = Vec::new();
    for sight in sights {
        if sight.spot.subject != Subject::RodJournal {
            all.push(*sight);
            continue;
        }
        for position in session.cylinders_on(sight.spot.position) {
            let spot = Spot {
                position,
                ..sight.spot
            };
            all.push(Sight { spot, ..*sight });
        }
    }
    all
}

fn cause_row(session: &Session, found: Found) -> CauseRow {
    let place = match found.place {
        Region::Engine => String::new(),
        Region::Main(n) => format!("Main {n}: "),
        Region::Cylinder(n) => format!("Cylinder {n}: "),
    };
    let word = match (found.standing, found.needs.is_empty()) {
        (Standing::Measured, _) => "measured",
        (Standing::Likely, true) => "likely: clues from two kinds of part agree",
        (Standing::Likely, false) => {
            "clues from two kinds of part agree; not proved until measured"
        }
        (Standing::Hint, _) => "a hint",
        (Standing::Reopened, _) => "a measurement says no: look again",
    };
    let needs: Vec<_> = found
        .needs
        .iter()
        .map(|fact| look_words::fact(*fact))
        .collect();
    let (check, source) = found.cause.check();
    let all = |clues: &[Clue]| clues.iter().map(|clue| said(session, clue)).collect();
    CauseRow {
        title: format!("{place}{}", look_words::cause(found.cause)),
        standing: found.standing,
        word,
        supports: all(&found.supports),
        contradicts: all(&found.contradicts),
        needs: (!needs.is_empty()).then(|| needs.join("; ")),
        check: Said {
            text: check.to_owned(),
            source: source.text(),
        },
    }
}

fn said(session: &Session, clue: &Clue) -> Said {
    let here = spot_here(session, clue.spot);
    let text = match clue.sign {
        Sign::Seen(look) => seen_at(session, here, look),
        Sign::NotSeen(look) => {
            let name = spot_name(session, here);
            format!("{name}: looked for, not seen: {}", look_words::look(look))
        }
        Sign::Number(fact) => number(session, here, fact, clue.is_so),
    };
    Said {
        text,
        source: clue.source.text(),
    }
}

fn number(session: &Session, spot: Spot, fact: Fact, so: bool) -> String {
    let name = spot_name(session, spot);
    let how = if so {
        "measured"
    } else {
        "measured, and not so"
    };
    format!("{name}, {how}: {}", look_words::fact(fact))
}

fn seen_at(session: &Session, spot: Spot, look: Look) -> String {
    format!("{}: {}", spot_name(session, spot), look_words::look(look))
}

/// The part itself, of a spot counted by cylinder.
fn spot_here(session: &Session, spot: Spot) -> Spot {
    if spot.subject != Subject::RodJournal {
        return spot;
    }
    let throws = 1..=count(session, spot.subject);
    let mut throws = throws.filter(|throw| session.cylinders_on(*throw).contains(&spot.position));
    Spot {
        position: throws.next().unwrap_or(spot.position),
        ..spot
    }
}
