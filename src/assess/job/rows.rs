//! The bearings of a session: journals, housings and shells.

use super::pins::{is_thin, shells_of, thin_steps};
use super::{Making, NEW_WALL, middle, stocked};
use crate::assess::oil::Bearing;
use crate::assess::{FindingKey, Way, Which};
use crate::quantity::{Exact, Size};
use crate::remedy::{Bearings, Journal, Mixing, NEIGHBOURS_APART, Place, Row, Shell, WornJournal};
use crate::session::{Direction, Feature, Kind, Pin, Quantity, Station};
use crate::uncertainty::{Measured, Source};
use crate::verdict::{Band, Decision};

/// The kinds of features a row is made of.
#[derive(Clone, Copy)]
struct Kinds {
    journal: Kind,
    score: Kind,
    housing: Kind,
    shell: Kind,
}

const fn kinds(row: Row) -> Kinds {
    match row {
        Row::Mains => Kinds {
            journal: Kind::MainJournal,
            score: Kind::MainScore,
            housing: Kind::MainHousing,
            shell: shells_of(row),
        },
        Row::Rods => Kinds {
            journal: Kind::RodJournal,
            score: Kind::RodScore,
            housing: Kind::BigEnd,
            shell: shells_of(row),
        },
    }
}

/// What holds the shells of a row.
pub(super) const fn housing_of(row: Row) -> Kind {
    kinds(row).housing
}

impl Making<'_> {
    pub(super) fn bearings(&mut self, row: Row) -> Bearings {
        let session = self.session;
        let kinds = kinds(row);
        let standard = self.standard(kinds.journal);
        let as_made = session.nominal(kinds.journal).map(Exact::from);
        let limits = self.band(kinds.shell, Quantity::Clearance);
        let journals = session.features_of(kinds.journal);
        let journals = journals.map(|journal| self.journal(row, journal, standard));
        let journals = journals.collect();
        let places = session.features_of(kinds.housing);
        let places = places.map(|housing| self.place(row, housing)).collect();
        let steps = stocked(session, kinds.shell).into_iter();
        let undersizes = steps.filter(|step| !is_thin(step));
        Bearings {
            journals,
            places,
            standard,
            as_made: as_made.unwrap_or(standard),
            undersizes: undersizes.map(|step| step.size().into()).collect(),
            greatest: None,
            recentred: false,
            shells: self.shells(row),
            mixing: self.mixing(),
            allowed: limits.service_or_new(),
            wanted: limits.new,
            target: middle(&limits.new),
            neighbours: (row == Row::Mains).then_some(NEIGHBOURS_APART),
            can_be_machined: true,
        }
    }

    /// What the person allows; places may differ unless somebody said no, and
    /// halves are mixed only where somebody said so.
    fn mixing(&self) -> Mixing {
        match self.session.pin(Pin::Mixing).as_deref() {
            Some("set") => Mixing::Set,
            Some("halves") => Mixing::Halves,
            _ => Mixing::Places,
        }
    }

    fn journal(&mut self, row: Row, journal: Feature, standard: Exact) -> Journal {
        let stations: Vec<_> = self.view.stations_of(journal).collect();
        let smallest = self.extreme(&stations, |a, b| a < b);
        let smallest = smallest.unwrap_or_else(|| Measured::new(standard, &[]));
        let quantities = [
            Quantity::Size,
            Quantity::OutOfRound,
            Quantity::Taper,
            Quantity::Barrel,
        ];
        Journal {
            worn: WornJournal {
                smallest,
                score: self.amount(kinds(row).score, journal.position),
                runout: match row {
                    Row::Mains => self.amount(Kind::RunOut, journal.position),
                    Row::Rods => None,
                },
            },
            form: self.form(journal, &quantities),
        }
    }

    fn place(&mut self, row: Row, housing: Feature) -> Place {
        let kinds = kinds(row);
        let shell = Feature {
            kind: kinds.shell,
            ..housing
        };
        let bearing = Bearing::of(self.session, shell);
        let journal = bearing.map_or(housing, |bearing| bearing.journal);
        let position = journal.position;
        let journal = self.view.mean_of(journal, |_| true);
        let square = |station: Station| station.direction == Direction::D0;
        let square = self.view.mean_of(housing, square);
        let clearance = self.clearance(shell);
        let quantities = [Quantity::Size, Quantity::OutOfRound, Quantity::Taper];
        let own = self.form(housing, &quantities);
        // Where the clearance of the fitted shells is as it should be, the
        // bore that holds them is taken to be good unless it was measured.
        let fits = || {
            let limits = self.band(kinds.shell, Quantity::Clearance).service_or_new();
            let (clearance, _) = clearance.as_ref().filter(|(_, is_fitted)| *is_fitted)?;
            let held = limits.excess(clearance.value()).is_none();
            (!limits.is_open() && held).then_some(Decision::In)
        };
        let form = own.or_else(fits);
        let gap_of = |making: &mut Self, bore: Option<Measured>| {
            let gap = &bore? - &making.measured(journal.as_ref()?)?;
            Some(making.with_new_walls(&gap))
        };
        let bore = square.and_then(|square| self.measured(&square));
        let made = self.as_finished(kinds.housing);
        let thrust = self.session.pin(Pin::ThrustMain);
        let is_thrust = thrust.is_none_or(|main| main == housing.position.to_string());
        Place {
            journal: usize::from(position).saturating_sub(1),
            form,
            gap: gap_of(self, bore),
            gap_made: gap_of(self, made),
            clearance: clearance.map(|(clearance, _)| clearance),
            thrust: row == Row::Mains && is_thrust,
        }
    }

    /// A housing that the shop finishes: anywhere in its limits as made.
    fn as_finished(&mut self, kind: Kind) -> Option<Measured> {
        let new = self.band(kind, Quantity::Size).new;
        let width = new.high? - new.low?;
        let width = Size::from_quanta(width.numerator().try_into().ok()?);
        Some(self.doubted(middle(&new), Source::resolution(width)))
    }

    /// The doubt of both walls is in the gap for new shells.
    pub(super) fn with_new_walls(&mut self, gap: &Measured) -> Measured {
        let wall = Source::resolution(NEW_WALL);
        let [upper, lower] = [(); 2].map(|()| self.doubted(Exact::ZERO, wall));
        &(gap + &upper) + &lower
    }

    /// Shells for journals as they are: standard ones and those for slight
    /// wear; none while nobody knows how thick they are.
    fn shells(&self, row: Row) -> Vec<Shell> {
        let kind = shells_of(row);
        let limits: Band = self.band(kind, Quantity::Size).new;
        let wall = match (limits.low, limits.high) {
            (None, None) => self.session.nominal(kind).map(Exact::from),
            _ => Some(middle(&limits)),
        };
        let of = |wall| {
            let steps = thin_steps(self.session, row).into_iter();
            let steps = steps.map(move |step| Shell::undersize(wall, step.size().into()));
            core::iter::once(Shell::undersize(wall, Exact::ZERO)).chain(steps)
        };
        wall.into_iter().flat_map(of).collect()
    }

    /// The clearance with the shells that ran here, by the surest way, and
    /// whether it was read on them as they sit.
    fn clearance(&self, shell: Feature) -> Option<(Measured, bool)> {
        let of = |which| {
            let key = FindingKey::new(shell, Quantity::Clearance, which);
            self.assessment.get(key)
        };
        let surest = of(Which::Surest)?.sure.as_ref()?.measured.clone();
        let as_they_sit = [Way::Fitted, Way::Strip].map(|way| of(Which::By(way)));
        Some((surest, as_they_sit.iter().any(Option::is_some)))
    }
}
