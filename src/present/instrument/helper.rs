//! The reading helper as a state machine: the way there from the fender and
//! back, a micrometer in the hand, and the quiz while there is one.

use super::{Micrometer, Quiz};
use crate::assess::Assessment;
use crate::present::{self, Draft, Purpose};
use crate::quantity::Size;
use crate::session::{Feature, Session};

/// The reading helper.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Helper {
    /// The micrometer as it is set.
    pub held: Micrometer,
    /// The one in use where the reading goes.
    in_use: Micrometer,
    /// The number under way there; `None` where nothing is read so.
    draft: Option<Draft>,
    /// The quiz, while there is one.
    pub quiz: Option<Quiz>,
}

impl Helper {
    /// For the place where somebody is, else for the next open one, with the
    /// micrometer in use there, closed.
    #[must_use]
    pub fn start(session: &Session, assessment: &Assessment, draft: Option<Draft>) -> Self {
        let draft = draft.or_else(|| {
            let station = present::next_open(&present::route(session, assessment), None)?;
            Some(Draft::to_read(station, Purpose::Add))
        });
        Self::at(session, draft).unwrap_or_default()
    }

    fn at(session: &Session, draft: Option<Draft>) -> Option<Self> {
        let station = draft.as_ref()?.station;
        let (_, gauge, _) = session.gauge_for(station.kind)?;
        // A shaft wears below its size, out of a range that starts there.
        let worn = i64::from(!station.kind.is_hole());
        let near = present::about(session, station);
        let near = near.map(|near| Size::from_quanta(near.quanta() - worn));
        let in_use = Micrometer::of_gauge(gauge, near)?;
        let reads_so = gauge.decimals() == in_use.decimals();
        Some(Self {
            held: in_use,
            in_use,
            draft: draft.filter(|_| reads_so),
            quiz: None,
        })
    }

    /// The number for the keypad where somebody was, typed and not entered;
    /// `None` where the gauge in use there reads otherwise.
    #[must_use]
    pub fn take(&self) -> Option<Draft> {
        let draft = self
            .draft
            .clone()
            .filter(|_| self.held.is_like(self.in_use))?;
        Some(Draft {
            whole: true,
            typed: self.held.text(),
            ..draft
        })
    }

    /// Where the number goes, in words.
    #[must_use]
    pub fn place(&self) -> String {
        self.draft.as_ref().map_or_else(String::new, |draft| {
            let feature = present::feature(Feature::of(draft.station));
            [&*feature, ", ", &present::place(draft.station)].concat()
        })
    }

    /// What is drawn; `None` at the end of a quiz.
    #[must_use]
    pub fn drawn(&self) -> Option<Micrometer> {
        self.quiz.as_ref().map_or(Some(self.held), Quiz::micrometer)
    }

    /// The drawing, marked but for what a quiz asks.
    #[must_use]
    pub fn drawing(&self) -> String {
        let asked = self.quiz.as_ref().is_some_and(|quiz| quiz.told().is_none());
        self.drawn().map_or_else(String::new, |m| m.drawing(!asked))
    }
}
