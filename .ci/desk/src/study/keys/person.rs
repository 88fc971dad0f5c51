//! A person who follows the route with their eyes on the gauge.
//!
//! They type what the gauge shows, as far as the keypad wants it, and look at
//! the screen only for where to go next and when something is refused or
//! asked. What is refused they take back and type again. Where a slip is
//! asked about they read again and type again; who has typed the same number
//! twice stands by it. Nobody notices a wrong number by looking at it.

use std::collections::BTreeMap;

use fenderbench::assess::assess;
use fenderbench::present::{Face, Fender, Key, Stop, Why, route};
use fenderbench::session::{Edit, Indication, Reading, Replica, Session, Station};
use fenderbench::slip::review;

use super::finger::{Press, keys, means, pressed};
use crate::study::chance::Chance;
use crate::study::slips::engines::Engine;

const REPLICA: Replica = Replica::new(0x6e1);

/// So often a person tries to type one number before the study gives up: it
/// would hang if the keypad refused what is right.
const TRIES: usize = 100;

/// How many digits of a size are typed where the others are completed.
const LAST_DIGITS: usize = 3;

/// A reading that stands, what was meant by it, and its gauge.
pub struct Stood {
    pub reading: Reading,
    pub meant: Indication,
}

/// What a session came to.
pub struct Finished {
    pub session: Session,
    pub stood: Vec<Stood>,
    /// Touches for each place, however often it was read.
    pub taps: BTreeMap<Station, usize>,
}

struct Person<'a> {
    session: Session,
    stops: Vec<Stop>,
    fender: Fender,
    chance: &'a mut Chance,
    meant: BTreeMap<String, Indication>,
    taps: usize,
    /// The name of the next reading, by which what was meant is found again.
    next: usize,
}

/// What a press came to.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Came {
    Taken,
    Refused,
    Asked,
    Entered,
}

/// Reads an engine along its whole route.
pub fn follow(mut engine: Engine, chance: &mut Chance) -> Result<Finished, String> {
    let session = engine.session.clone();
    let stops = stops(&session);
    let mut person = Person {
        fender: Fender::start(&session, &stops, None),
        session,
        stops,
        chance,
        meant: BTreeMap::new(),
        taps: 0,
        next: 0,
    };
    let mut taps = BTreeMap::<Station, usize>::new();
    while person.is_under_way() {
        let station = person.fender.station().ok_or("There is nowhere to go.")?;
        let shows = engine.read(station)?.entered;
        person.taps = 0;
        person.read(&shows)?;
        *taps.entry(station).or_default() += person.taps;
    }
    let mut stood = Vec::new();
    for (_, reading) in person.session.standing() {
        let meant = person.meant.get(&reading.taken);
        stood.push(Stood {
            reading: reading.clone(),
            meant: meant.ok_or("A reading nobody took.")?.clone(),
        });
    }
    Ok(Finished {
        session: person.session,
        stood,
        taps,
    })
}

/// The route without what settles a close call: that is asked for without
/// end, and is the same place over and over.
fn stops(session: &Session) -> Vec<Stop> {
    let mut stops = route(session, &assess(session));
    stops.retain(|stop| !matches!(stop.why, Why::Settle(..)));
    stops
}

impl Person<'_> {
    /// True while the route asks for something, or sends back to what looks
    /// like a slip.
    fn is_under_way(&self) -> bool {
        self.stops.iter().any(|stop| !stop.is_read()) || !review(&self.session).is_empty()
    }

    /// Types what the gauge shows until it is entered.
    fn read(&mut self, shows: &Indication) -> Result<(), String> {
        let mut asked_of = None;
        for _ in 0..TRIES {
            match self.type_it(shows)? {
                Came::Entered => return Ok(()),
                Came::Asked => {
                    let number = self.number();
                    self.taps += 1;
                    if asked_of.replace(number.clone()) == Some(number) {
                        let (name, meant) = (self.next.to_string(), shows.clone());
                        let kept = self.fender.keep(&self.session, &name);
                        self.add(kept, name, meant)?;
                        return Ok(());
                    }
                    self.fender.read_again(&self.session, false);
                }
                Came::Refused => self.take_back(),
                // ENTER was left out: the place has not moved on.
                Came::Taken => {
                    if self.press(Press::Enter, shows)? == Came::Entered {
                        return Ok(());
                    }
                }
            }
        }
        Err(format!("{shows} cannot be typed: {:?}", self.fender))
    }

    /// Types a number and ENTER once, up to where something is refused or
    /// asked. The second of two keys that have changed places is under way by
    /// then.
    fn type_it(&mut self, shows: &Indication) -> Result<Came, String> {
        let face = self.fender.face().ok_or("There is no keypad.")?;
        let mut meant = self.wanted(shows, &face)?;
        meant.push(Press::Enter);
        let (mut entered, mut stopped) = (false, None);
        for movement in pressed(self.chance, &meant) {
            for press in movement {
                match self.press(press, shows)? {
                    Came::Taken => {}
                    Came::Entered => entered = true,
                    came => stopped = Some(came),
                }
            }
            match stopped {
                // What was typed after an ENTER that came too early landed at
                // the next place.
                Some(_) if entered => {
                    self.take_back();
                    break;
                }
                Some(came) => return Ok(came),
                None => {}
            }
        }
        Ok(if entered { Came::Entered } else { Came::Taken })
    }

    fn press(&mut self, press: Press, shows: &Indication) -> Result<Came, String> {
        self.taps += 1;
        let face = self.fender.face().ok_or("There is no keypad.")?;
        if let Some(key) = means(press, left(&face)) {
            let taken = self.fender.press(&self.session, key);
            return Ok(if taken { Came::Taken } else { Came::Refused });
        }
        let name = self.next.to_string();
        let edit = self.fender.enter(&self.session, &name);
        if edit.is_none() {
            let asked = self.fender.asked().is_some();
            return Ok(if asked { Came::Asked } else { Came::Refused });
        }
        self.add(edit, name, shows.clone())
    }

    fn add(&mut self, edit: Option<Edit>, name: String, meant: Indication) -> Result<Came, String> {
        let edit = edit.ok_or("Nothing to add.")?;
        if let Err(why) = self.session.apply(&edit, REPLICA) {
            self.fender.refuse(why.to_string());
            return Ok(Came::Refused);
        }
        self.meant.insert(name, meant);
        self.next += 1;
        self.stops = stops(&self.session);
        self.fender.after(&self.session, &self.stops);
        Ok(Came::Entered)
    }

    /// Takes back whatever is typed, key by key.
    fn take_back(&mut self) {
        let typed = self.fender.draft().map_or(0, |draft| draft.typed.len());
        for _ in 0..typed {
            self.taps += 1;
            self.fender.press(&self.session, Key::Back);
        }
    }

    /// The keys of what the gauge shows that the keypad wants.
    fn wanted(&self, shows: &Indication, face: &Face) -> Result<Vec<Press>, String> {
        Ok(match shows {
            Indication::Size(size) if face.whole => keys(size.text()),
            Indication::Size(size) => {
                let digits: String = size.text().chars().filter(char::is_ascii_digit).collect();
                let from = digits.len().saturating_sub(LAST_DIGITS);
                keys(digits.get(from..).unwrap_or_default())
            }
            Indication::Deviation(by) => {
                let kind = self.fender.station().ok_or("There is nowhere to go.")?.kind;
                let (_, gauge, _) = self.session.gauge_for(kind).ok_or("There is no gauge.")?;
                let count = by.deviation().quanta() / gauge.graduation.size().quanta();
                keys(&count.to_string())
            }
        })
    }

    /// The number as it stands on the screen.
    fn number(&self) -> String {
        let face = self.fender.face().unwrap_or_default();
        format!("{}{}", face.lead, face.typed)
    }
}

/// What the key to the left of 0 means.
const fn left(face: &Face) -> Key {
    match (face.dial.is_some(), face.whole) {
        (true, _) => Key::Sign,
        (false, true) => Key::Point,
        (false, false) => Key::Whole,
    }
}
