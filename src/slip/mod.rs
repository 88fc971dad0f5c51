//! Is this reading likely a slip?
//!
//! There is one law. Readings around a place say which size is to be
//! expected there and how widely sizes scatter. Each slip that the gauge
//! allows is taken back; where a size without it is [so many
//! times](suspect) likelier than the one read, the person is asked. What no
//! slip explains is asked about only where it is far from everything.
//!
//! The same check serves a reading about to be entered ([`suspect`]) and
//! those that stand ([`review`]); there is no other. Nothing is changed here
//! and nothing refused. The scatter is Cauchy's, which has the heavy tails of
//! worn parts and needs no floats: its odds are quotients of whole numbers.

mod bound;
mod expect;
mod nominal;
mod shape;

pub use nominal::{NewNominal, new_nominal};

use crate::quantity::{Deviation, Size};
use crate::session::{Feature, Gauge, Indication, Kind, Reading, Session, Stamp};
use expect::{Expected, Neighbours};

/// What a slip looks like.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Looks {
    /// One turn of the thimble, one line of the sleeve: 0.025 in or 0.5 mm.
    Turn,
    /// More lines of the sleeve: 0.050 or 0.075 in, 1 mm.
    SleeveLines,
    /// One number on the sleeve: 0.1 in or 5 mm.
    NumberLine,
    /// One range of micrometers: 1 in or 25 mm.
    Range,
    /// The thimble line beside the one passed: 0.001 in or 0.01 mm.
    Wrap,
    /// Two digits beside each other have changed places.
    Digits,
    /// The key beside the right one.
    Key,
    /// Plus for minus on a dial.
    Sign,
    /// Inches for millimetres, or the other way about.
    Unit,
    /// It reads as this kind does.
    Elsewhere(Kind),
    /// It reads as this feature does.
    Neighbour(Feature),
    /// The same to the last digit as the readings before it.
    Copies,
    /// Larger or smaller than it can have been made, or larger than the bore
    /// it runs in.
    Impossible,
    /// Far from everything around it.
    Far,
}

/// What a reading looks like, and what it would be without the slip.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Slip {
    /// What it looks like.
    pub looks: Looks,
    /// What the gauge would have shown, where the slip says that.
    pub would_be: Option<Indication>,
}

/// Asks whether a reading that is about to be entered is likely a slip, by
/// the readings that stand. One that comes `instead` of those at its station is
/// not asked about because of them.
///
/// `None` as well where nothing is known to compare with.
#[must_use]
pub fn suspect(session: &Session, reading: &Reading, instead: bool) -> Option<Slip> {
    let but = instead.then_some(reading.station);
    Asked::new(&Neighbours::of(session, but), reading, None)?.answer()
}

/// The likeliest slip, however unlikely, and how many times likelier the size
/// without it is than the one read; `None` where nothing is known to compare
/// with.
#[must_use]
pub fn likeliest(session: &Session, reading: &Reading) -> Option<(i128, Slip)> {
    let neighbours = Neighbours::of(session, None);
    let (odds, _, slip) = Asked::new(&neighbours, reading, None)?.likeliest()?;
    Some((odds, slip))
}

/// The standing readings that are likely slips, each by all others, in the
/// order they were entered. Those that the person stood by are not among
/// them.
#[must_use]
pub fn review(session: &Session) -> Vec<(Stamp, Slip)> {
    let neighbours = Neighbours::of(session, None);
    let asked = session.standing().filter(|(_, reading)| !reading.kept);
    let slips = asked.filter_map(|(id, reading)| {
        let slip = Asked::new(&neighbours, reading, Some(id))?.answer()?;
        Some((id, slip))
    });
    slips.collect()
}

/// One question: a reading among its neighbours.
struct Asked<'a> {
    neighbours: &'a Neighbours<'a>,
    reading: &'a Reading,
    itself: Option<Stamp>,
    gauge: &'a Gauge,
    size: Size,
    expected: Expected,
}

impl<'a> Asked<'a> {
    fn new(
        neighbours: &'a Neighbours<'a>,
        reading: &'a Reading,
        itself: Option<Stamp>,
    ) -> Option<Self> {
        // An amount can be anything, and wear is what it shows.
        if reading.station.kind.is_amount() {
            return None;
        }
        let session = neighbours.session;
        let gauge = &session.gauges.get(&reading.gauge)?.value;
        let step = expect::square(gauge.graduation.size().quanta());
        // And the variance of a size anywhere within one graduation.
        let noise_square = expect::square(bound::noise(gauge.kind)) + step / 12;
        Some(Self {
            neighbours,
            reading,
            itself,
            gauge,
            size: session.size_of(reading)?,
            expected: neighbours.expected(reading.station, itself, noise_square)?,
        })
    }

    fn answer(&self) -> Option<Slip> {
        // Most readings lie so near that nothing could be so much likelier.
        let most = self.expected.unlikeliness(self.size) / self.expected.least().max(1);
        if bound::ODDS <= most
            && let Some((odds, size, slip)) = self.likeliest()
            && bound::ODDS <= odds
            && !self.is_far(size)
        {
            return Some(slip);
        }
        let looks = if self.is_impossible() {
            Looks::Impossible
        } else if self.is_far(self.size) {
            self.elsewhere()
        } else if self.is_copy() {
            Looks::Copies
        } else {
            return None;
        };
        Some(Slip {
            looks,
            would_be: None,
        })
    }

    /// The likeliest slip, how many times likelier the size without it is,
    /// and that size.
    fn likeliest(&self) -> Option<(i128, Size, Slip)> {
        let mut best: Option<(i128, Size, Looks, Indication)> = None;
        for (looks, would_be) in shape::without(&self.reading.entered, self.gauge) {
            let mut other = self.reading.clone();
            other.entered = would_be;
            let size = self.neighbours.session.size_of(&other);
            let size = size.filter(|size| shape::is_within_reach(self.gauge, *size));
            let Some(size) = size else { continue };
            let Some((times, of)) = bound::close_by(looks, self.expected.own) else {
                continue;
            };
            // With so many keys beside one always brings a size a little nearer.
            if looks == Looks::Key && self.expected.is_far(size, bound::AT_HOME, 0) {
                continue;
            }
            let unlikeliness = self.expected.unlikeliness(size) * times / of;
            if best
                .as_ref()
                .is_none_or(|(least, ..)| unlikeliness < *least)
            {
                best = Some((unlikeliness, size, looks, other.entered));
            }
        }
        let (least, size, looks, would_be) = best?;
        let odds = self.expected.unlikeliness(self.size) / least.max(1);
        let would_be = Some(would_be);
        Some((odds, size, Slip { looks, would_be }))
    }

    /// Larger or smaller than it can have been made, while nothing else of
    /// the kind says otherwise; of a piston, larger than its bore reads.
    fn is_impossible(&self) -> bool {
        let station = self.reading.station;
        let beyond = |limit: Size, larger: bool| {
            let by = (self.size - limit).quanta();
            let by = if larger { by } else { -by };
            bound::UNWORN_SIDE < by
        };
        let made = nominal::made(self.neighbours.session, station.kind);
        let unmade = self.expected.from_made
            && made.is_some_and(|made| beyond(made.size(), !station.kind.is_hole()));
        let bore = self.neighbours.bore_of(station);
        unmade || station.kind == Kind::Piston && bore.is_some_and(|bore| beyond(bore, true))
    }

    fn is_far(&self, size: Size) -> bool {
        let reach = bound::far(self.reading.station.kind);
        self.expected.is_far(size, bound::FAR_SPREADS, reach)
    }

    /// Of what is far from where it stands: where it would be at home.
    fn elsewhere(&self) -> Looks {
        let here = Feature::of(self.reading.station);
        let close = |apart: Deviation| {
            expect::square(apart.quanta())
                <= bound::AT_HOME * bound::AT_HOME * self.expected.square()
        };
        let nearest = Kind::ALL.into_iter().filter_map(|kind| {
            let (feature, apart) = self.neighbours.nearest(kind, self.size)?;
            (feature != here && close(apart)).then_some((apart, feature))
        });
        match nearest.min() {
            Some((_, feature)) if feature.kind == here.kind => Looks::Neighbour(feature),
            Some((_, feature)) => Looks::Elsewhere(feature.kind),
            None => Looks::Far,
        }
    }

    /// The same as so many readings before it, each at another place, on a
    /// gauge that is too fine for that.
    fn is_copy(&self) -> bool {
        let reading = self.reading;
        let before = self.neighbours.before(self.itself).iter().rev();
        let mut places = vec![reading.station];
        for (_, other) in before.take(bound::COPIES - 1) {
            let alike = other.entered == reading.entered && other.gauge == reading.gauge;
            if !alike || places.contains(&other.station) {
                return false;
            }
            places.push(other.station);
        }
        places.len() == bound::COPIES
            && self.gauge.graduation.size().quanta() <= bound::noise(self.gauge.kind)
    }
}
