//! How the facts of a plan are decided.

use super::facts::{
    Ask, CylinderFacts, Facts, JournalFacts, Pair, PlaceFacts, Question, RowFacts, walls,
};
use super::gates::soundness;
use super::{
    Acceptance, Bearings, Choice, Cylinder, Finish, Harm, Job, Journal, Line, Looks, Mixing, Part,
    Place, Position, Proof, Prover, Reason, Row, Shell, Stock, best,
};
use crate::quantity::Exact;
use crate::uncertainty::Measured;
use crate::verdict::{Band, Decision};

impl Facts {
    pub(super) fn new(job: &Job, prover: &Prover) -> Self {
        let mut book = Book {
            job,
            prover,
            open: Vec::new(),
        };
        let held_up = |decision: Option<Decision>| decision.unwrap_or(Decision::In);
        let unlike = |book: &mut Book, part, decision| {
            book.note(part, Ask::Form, Some(held_up(decision)), Reason::Form)
        };
        let cylinders = 0..job.cylinders.len();
        Self {
            block: book.sound(Part::Block),
            alignment: unlike(&mut book, Part::Block, job.alignment),
            crank: book.sound(Part::Crank),
            straightness: unlike(&mut book, Part::Crank, job.straightness),
            cylinders: cylinders
                .zip(&job.cylinders)
                .map(|(part, cylinder)| book.cylinder(part, cylinder))
                .collect(),
            stock: sorted(&job.stock, |stock| stock.over),
            rows: [Row::Mains, Row::Rods].map(|row| book.row(row)),
            open: book.open,
        }
    }
}

/// Indices, the smallest first; of equals the one that stands first.
fn sorted<T>(all: &[T], size: impl Fn(&T) -> Exact) -> Vec<usize> {
    let mut order: Vec<_> = all.iter().map(size).zip(0..).collect();
    order.sort_unstable();
    order.into_iter().map(|(_, index)| index).collect()
}

/// Decides, and writes down what stays open.
struct Book<'a> {
    job: &'a Job,
    prover: &'a Prover<'a>,
    open: Vec<Question>,
}

impl Book<'_> {
    /// Nothing decided is open, and so is whatever sizes say that contradict
    /// each other.
    fn note(
        &mut self,
        part: Part,
        ask: Ask,
        decision: Option<Decision>,
        reason: Reason,
    ) -> Decision {
        let is_of_sizes = !matches!(ask, Ask::Soundness | Ask::Surface);
        let known = decision.filter(|_| !(is_of_sizes && self.job.looks(part).contradictory));
        let Some(known @ (Decision::In | Decision::Out)) = known else {
            let reason = decision.map_or(Reason::Unknown, |_| reason);
            let question = Question { part, ask, reason };
            let is_known = |open: &&mut Question| (open.part, open.ask) == (part, ask);
            match self.open.iter_mut().find(is_known) {
                // What is missing is to be found out first.
                Some(open) if question.is_missing() => *open = question,
                Some(_) => {}
                None => self.open.push(question),
            }
            // What is missing may be taken to be good; what was read and is in
            // doubt may not.
            return if self.job.measured_later && question.is_missing() {
                Decision::In
            } else {
                Decision::Open
            };
        };
        known
    }

    fn sound(&mut self, part: Part) -> Decision {
        let sound = soundness(self.job.looks(part).harm);
        self.note(part, Ask::Soundness, Some(sound), Reason::Unknown)
    }

    fn form(&mut self, part: Part, form: Option<Decision>) -> Decision {
        let Looks { harm, surface, .. } = self.job.looks(part);
        let is_journal_or_bore = matches!(part, Part::Cylinder(_) | Part::Journal(..));
        let spoilt =
            harm == Some(Harm::Spun) || surface == Some(Finish::Scored) && !is_journal_or_bore;
        let form = if spoilt { Some(Decision::Out) } else { form };
        self.note(part, Ask::Form, form, Reason::Form)
    }

    /// Whether scores may stay that take so much off the diameter, with what
    /// the eye saw: `enough` is the worst look that this work is enough for.
    fn surface(
        &mut self,
        part: Part,
        score: Option<&Measured>,
        most: Exact,
        enough: Finish,
        several: usize,
    ) -> Decision {
        let surface = self.job.looks(part).surface.unwrap_or(Finish::Good);
        let score = score.filter(|score| !score.value().is_negative());
        let decision = match score {
            _ if enough < surface => Some(Decision::Out),
            None if surface == Finish::Scored => None,
            None => Some(Decision::In),
            Some(score) => Some(self.prover.at_most(&score.scaled(2, 1), most, several)),
        };
        self.note(part, Ask::Surface, decision, Reason::Score)
    }

    /// Whether a size cleans up the part. A score that was seen and not
    /// measured may go deeper than any.
    fn cleans(&mut self, part: Part, has_score: bool, proof: Proof) -> Decision {
        let is_hidden = !has_score && self.job.looks(part).surface == Some(Finish::Scored);
        let (decision, reason) = match proof.decision {
            Decision::In | Decision::Open if is_hidden => (Decision::Open, Reason::Score),
            decision => (decision, proof.reason),
        };
        self.note(part, Ask::CleanUp, Some(decision), reason)
    }

    /// Clearances in a cylinder, each a measured value less a piston: as it is
    /// and after a light hone, which takes off at least what the score needs
    /// and at most what is still light.
    fn piston_clearances(
        &mut self,
        index: usize,
        measured: Option<&Measured>,
        band: &Band,
        pistons: &[Option<Exact>],
    ) -> Vec<Pair> {
        let (job, prover) = (self.job, self.prover);
        let several = job.cylinders.len();
        let score = job.cylinders.get(index).and_then(|c| c.worn.score.as_ref());
        let score = score.filter(|score| !score.value().is_negative());
        let ends = measured.map(|measured| {
            let scored = score.map(|score| measured + &score.scaled(2, 1));
            let scored = scored.as_ref().unwrap_or(measured);
            let [from, to] = [Band::new(band.low, None), Band::new(None, band.high)];
            let end =
                |value: &Measured, band| (value.value(), prover.acceptance(value, band, several));
            [end(measured, band), end(scored, &to), end(measured, &from)]
        });
        let pair = |piston: &Option<Exact>| {
            let Some(piston) = *piston else {
                return [Decision::Out; 2];
            };
            let decided = ends.map(|ends| {
                let [(value, whole), (scored, to), (_, from)] = ends;
                let open_end = |end: Option<Acceptance>, value| {
                    end.map_or(Decision::In, |end| end.decide(value))
                };
                let whole = whole?;
                let honed = open_end(to, scored - piston)
                    .and(open_end(from, value + job.light_hone - piston));
                Some([whole.decide(value - piston), honed])
            });
            let decided = decided.flatten();
            let [as_is, honed] = [
                decided.map(|[as_is, _]| as_is),
                decided.map(|[_, honed]| honed),
            ];
            [as_is, honed].map(|decision| {
                let part = Part::Cylinder(index);
                self.note(part, Ask::Clearance, decision, Reason::Clearance)
            })
        };
        pistons.iter().map(pair).collect()
    }

    fn cylinder(&mut self, index: usize, cylinder: &Cylinder) -> CylinderFacts {
        let job = self.job;
        let part = Part::Cylinder(index);
        let several = job.cylinders.len();
        let score = cylinder.worn.score.as_ref();
        let boring = job.boring();
        let need = boring.need(index, &cylinder.worn, several, self.prover);
        let cleans = |stock: &Stock| {
            if stock.over <= Exact::ZERO {
                return Decision::Out;
            }
            let proof = need.proof(boring.bored(stock));
            self.cleans(part, score.is_some(), boring.against(stock).and(proof))
        };
        let cleans = job.stock.iter().map(cleans).collect();
        let pistons: Vec<_> = job.stock.iter().map(|stock| stock.piston).collect();
        let new = self.piston_clearances(index, cylinder.bore.as_ref(), &job.wanted, &pistons);
        let own = cylinder.clearance.as_ref();
        let own = self.piston_clearances(index, own, &job.allowed, &[Some(Exact::ZERO)]);
        let surface = [
            (Exact::ZERO, Finish::Good),
            (Exact::ZERO, Finish::Dull),
            (job.light_hone, Finish::Scored),
        ];
        CylinderFacts {
            sound: self.sound(part),
            form: self.form(part, cylinder.form),
            surface: surface.map(|(most, enough)| self.surface(part, score, most, enough, several)),
            own: own.first().copied().unwrap_or([Decision::Open; 2]),
            new,
            cleans,
            piston_sound: self.sound(Part::Piston(index)),
            piston_form: self.form(
                Part::Piston(index),
                job.pistons.get(index).copied().flatten(),
            ),
        }
    }

    fn journal(&mut self, row: Row, index: usize, journal: &Journal) -> JournalFacts {
        let part = Part::Journal(row, index);
        let bearings = self.job.row(row);
        let several = bearings.journals.len();
        let score = journal.worn.score.as_ref();
        let grinding = bearings.grinding();
        let need = grinding.need(index, &journal.worn, several, self.prover);
        let cleans = |under: &Exact| {
            if *under <= Exact::ZERO {
                return Decision::Out;
            }
            let against = grinding.against(*under);
            let proof = need.proof(-(bearings.standard - *under));
            self.cleans(part, score.is_some(), against.and(proof))
        };
        JournalFacts {
            cleans: bearings.undersizes.iter().map(cleans).collect(),
            sound: self.sound(part),
            form: self.form(part, journal.form),
            surface: [Finish::Good, Finish::Dull]
                .map(|enough| self.surface(part, score, Exact::ZERO, enough, several)),
        }
    }

    fn row(&mut self, row: Row) -> RowFacts {
        let bearings = self.job.row(row);
        let chosen = [false, true].map(|made| self.chosen(bearings, made));
        let journals = bearings.journals.iter().enumerate();
        let journals = journals.map(|(index, journal)| self.journal(row, index, journal));
        let journals = journals.collect();
        let places = bearings.places.iter().enumerate();
        let places = places.map(|(index, place)| self.place(row, index, place, &chosen));
        let places = places.collect();
        let middle = |shell: &Shell| {
            let gaps = bearings
                .places
                .iter()
                .filter_map(|place| place.gap.as_ref());
            let off =
                |gap: &Measured| (gap.value() - shell.wall - shell.wall - bearings.target).abs();
            gaps.map(off).max().unwrap_or(Exact::ZERO)
        };
        let apart = |made, choice: Option<&Choice>| self.apart(bearings, made, choice);
        let [first, second] = &chosen;
        RowFacts {
            journals,
            places,
            apart: [apart(false, None), apart(true, None)],
            chosen_apart: [apart(false, first.as_ref()), apart(true, second.as_ref())],
            sizes: sorted(&bearings.shells, middle),
            undersizes: sorted(&bearings.undersizes, |under| *under),
            chosen,
        }
    }

    fn place(
        &mut self,
        row: Row,
        index: usize,
        place: &Place,
        chosen: &[Option<Choice>; 2],
    ) -> PlaceFacts {
        let bearings = self.job.row(row);
        let part = Part::Housing(row, index);
        let several = bearings.places.len();
        let end = |value: &Option<Measured>, band| {
            let value = value.as_ref()?;
            Some((value.value(), self.prover.acceptance(value, band, several)?))
        };
        let gaps = [&place.gap, &place.gap_made].map(|gap| end(gap, &bearings.wanted));
        let own = end(&place.clearance, &bearings.allowed);
        let mut clear = |end: Option<(Exact, Acceptance)>, walls: Exact| {
            let decided = end.map(|(value, end)| end.decide(value - walls));
            self.note(part, Ask::Clearance, decided, Reason::Clearance)
        };
        let new = |shell: &Shell| gaps.map(|gap| clear(gap, shell.wall + shell.wall));
        let new = bearings.shells.iter().map(new).collect();
        let ([as_is, machined], [gap, gap_made]) = (chosen, gaps);
        let mut picked = |gap, choice: &Option<Choice>| {
            let at = choice.as_ref().and_then(|choice| choice.at.get(index));
            let walls = at.and_then(|halves| walls(bearings, *halves));
            walls.map_or(Decision::Out, |walls| clear(gap, walls))
        };
        PlaceFacts {
            new,
            chosen: [picked(gap, as_is), picked(gap_made, machined)],
            own: match &place.clearance {
                // Nobody runs old shells unseen where new ones are at hand.
                None if !bearings.shells.is_empty() => Decision::Out,
                _ => clear(own, Exact::ZERO),
            },
            sound: self.sound(part),
            form: self.form(part, place.form),
            shells_form: self.form(Part::Shells(row, index), Some(Decision::In)),
        }
    }

    /// The best shells place by place, where sizes may be mixed and every
    /// gap is known.
    fn chosen(&self, bearings: &Bearings, made: bool) -> Option<Choice> {
        if bearings.mixing == Mixing::Set {
            return None;
        }
        let gap = |place: &Place| {
            let gap = if made { &place.gap_made } else { &place.gap };
            let (gap, thrust) = (gap.clone()?, place.thrust);
            Some(Position { gap, thrust })
        };
        let positions: Option<Vec<_>> = bearings.places.iter().map(gap).collect();
        let line = Line {
            positions: &positions?,
            shells: &bearings.shells,
            band: bearings.wanted,
            target: bearings.target,
            neighbours: bearings.neighbours,
            mixing: bearings.mixing,
        };
        best(&line, self.prover)
    }

    /// Out where two neighbours are surely further apart than they may be.
    /// What nobody can tell apart may stay: no gauge for it is in a shop.
    fn apart(&self, bearings: &Bearings, made: bool, choice: Option<&Choice>) -> Decision {
        let band = Band::either_way(bearings.neighbours);
        let clearance = |index: usize| {
            let place = bearings.places.get(index)?;
            let gap = if made { &place.gap_made } else { &place.gap };
            let at = choice.and_then(|choice| choice.at.get(index));
            let walls = at.and_then(|halves| walls(bearings, *halves));
            let walls = Measured::new(walls.unwrap_or(Exact::ZERO), &[]);
            gap.as_ref().map(|gap| gap - &walls)
        };
        let pairs = bearings.places.len().saturating_sub(1);
        let is_apart = (0..pairs).any(|index| {
            let both = clearance(index).zip(clearance(index + 1));
            let decided = both.and_then(|(a, b)| self.prover.decide(&(&a - &b), &band, pairs));
            decided == Some(Decision::Out)
        });
        if is_apart {
            Decision::Out
        } else {
            Decision::In
        }
    }
}
