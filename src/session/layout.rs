//! Which features an engine has, and what is said of it as a whole.

use super::{
    Arrangement, Counting, Dimension, Feature, Field, FieldKey, FirstEnd, Kind, RouteChoice,
    Session, Space, Use, Volume,
};
use crate::quantity::{Entered, EnteredDeviation, Size};
use crate::remedy::Sight;
use crate::uncertainty::{Climate, Material};

impl Session {
    /// Number of cylinders.
    #[must_use]
    pub fn cylinders(&self) -> u8 {
        match self.field(FieldKey::Cylinders) {
            Field::Cylinders(n) => n,
            _ => 1,
        }
    }

    /// How the cylinders stand.
    #[must_use]
    pub fn arrangement(&self) -> Arrangement {
        match self.field(FieldKey::Arrangement) {
            Field::Arrangement(arrangement) => arrangement,
            _ => Arrangement::InLine,
        }
    }

    /// Number of main journals.
    #[must_use]
    pub fn mains(&self) -> u8 {
        match self.field(FieldKey::Mains) {
            Field::Mains(n) => n,
            _ => 1,
        }
    }

    /// Rods on each throw.
    #[must_use]
    pub fn rods_per_throw(&self) -> u8 {
        match self.field(FieldKey::RodsPerThrow) {
            Field::RodsPerThrow(n) => n.max(1),
            _ => 1,
        }
    }

    /// Which stations are asked for.
    #[must_use]
    pub fn route(&self) -> RouteChoice {
        match self.field(FieldKey::Route) {
            Field::Route(route) => route,
            _ => RouteChoice::Standard,
        }
    }

    /// What the machine is used for.
    #[must_use]
    pub fn machine_use(&self) -> Use {
        match self.field(FieldKey::Use) {
            Field::Use(machine_use) => machine_use,
            _ => Use::Street,
        }
    }

    /// Which end position 1 is at.
    #[must_use]
    pub fn first_end(&self) -> FirstEnd {
        match self.field(FieldKey::FirstEnd) {
            Field::FirstEnd(end) => end,
            _ => FirstEnd::Timing,
        }
    }

    /// How two banks are counted.
    #[must_use]
    pub fn counting(&self) -> Counting {
        match self.field(FieldKey::Counting) {
            Field::Counting(counting) => counting,
            _ => Counting::Across,
        }
    }

    /// How warm it is where the gauges are.
    #[must_use]
    pub fn climate(&self) -> Climate {
        match self.field(FieldKey::Climate) {
            Field::Climate(climate) => climate,
            _ => Climate::Mild,
        }
    }

    /// What a kind is made of.
    #[must_use]
    pub fn material(&self, kind: Kind) -> Material {
        match self.field(FieldKey::Material(kind)) {
            Field::Material(_, material) => material,
            _ => kind.usual_material(),
        }
    }

    /// Whether one spot of a kind is to be read five times.
    #[must_use]
    pub fn study(&self, kind: Kind) -> bool {
        matches!(self.field(FieldKey::Study(kind)), Field::Study(_, true))
    }

    /// The size a kind was made to, where somebody said it.
    #[must_use]
    pub fn nominal(&self, kind: Kind) -> Option<Size> {
        match self.field(FieldKey::Nominal(kind)) {
            Field::Nominal(_, size) => size.map(|size| size.size()),
            _ => None,
        }
    }

    /// The bank a cylinder stands in, 1 or 2, where there are two.
    #[must_use]
    pub fn bank(&self, cylinder: u8) -> Option<u8> {
        let one = matches!(
            self.arrangement(),
            Arrangement::InLine | Arrangement::Single
        );
        let second = match self.counting() {
            Counting::Across => cylinder.is_multiple_of(2),
            Counting::AlongBanks => self.cylinders().div_ceil(2) < cylinder,
        };
        (!one).then_some(1 + u8::from(second))
    }

    /// The cylinders whose rods run on a throw.
    #[must_use]
    pub fn cylinders_on(&self, throw: u8) -> Vec<u8> {
        let cylinders = self.cylinders();
        let on_it = match (self.rods_per_throw(), self.counting()) {
            (1, _) => vec![throw],
            (_, Counting::Across) => vec![2 * throw - 1, 2 * throw],
            (_, Counting::AlongBanks) => vec![throw, throw + cylinders.div_ceil(2)],
        };
        on_it.into_iter().filter(|c| *c <= cylinders).collect()
    }

    /// The features of a kind in the order that saves walking: down one bank
    /// and back up the other.
    #[must_use]
    pub fn walk(&self, kind: Kind) -> Vec<Feature> {
        let banked = kind.goes_with_cylinders();
        let second = |f: &Feature| banked && self.bank(f.position) == Some(2);
        let down = self.features_of(kind).filter(|f| !second(f));
        let mut walk: Vec<_> = down.collect();
        let mut back: Vec<_> = self.features_of(kind).filter(second).collect();
        back.reverse();
        walk.extend(back);
        walk
    }

    /// What the person calls the session.
    #[must_use]
    pub fn name(&self) -> String {
        match self.field(FieldKey::Name) {
            Field::Name(name) => name,
            _ => String::new(),
        }
    }

    /// How many features of a kind the layout has.
    #[must_use]
    pub fn count(&self, kind: Kind) -> u8 {
        match kind {
            Kind::MainJournal
            | Kind::MainHousing
            | Kind::MainShell
            | Kind::MainFitted
            | Kind::MainStrip
            | Kind::RunOut
            | Kind::MainScore => self.mains(),
            Kind::RodJournal | Kind::RodScore | Kind::RodSide => {
                self.cylinders().div_ceil(self.rods_per_throw())
            }
            Kind::EndPlay => 1,
            Kind::Deck | Kind::Head => 1 + u8::from(self.bank(1).is_some()),
            _ => self.cylinders(),
        }
    }

    /// True if features of a kind are asked for, whether or not some were
    /// read already.
    #[must_use]
    pub fn is_asked(&self, kind: Kind) -> bool {
        match self.field(FieldKey::Measure(kind)) {
            Field::Measure(_, asked) => asked,
            _ => true,
        }
    }

    /// The kinds that are asked for or were read, in the order they are
    /// measured.
    #[must_use]
    pub fn kinds(&self) -> Vec<Kind> {
        let mut read: Vec<Kind> = Vec::new();
        for (_, reading) in self.standing() {
            if !read.contains(&reading.station.kind) {
                read.push(reading.station.kind);
            }
        }
        let counts = |kind: &Kind| read.contains(kind) || self.is_asked(*kind);
        Kind::ALL.into_iter().filter(counts).collect()
    }

    /// Where in a turn the indicator showed most on a main journal, in hours
    /// of a clock seen from the end called first: 12 is in line with the
    /// first throw. `None` where nobody noted it.
    #[must_use]
    pub fn high_spot(&self, main: u8) -> Option<u8> {
        match self.field(FieldKey::HighSpot(main)) {
            Field::HighSpot(_, hour) => hour,
            _ => None,
        }
    }

    /// Every answer to what was looked for.
    pub fn sights(&self) -> impl Iterator<Item = Sight> {
        self.fields.values().filter_map(|register| {
            let Field::Look(spot, look, Some(seen)) = register.value else {
                return None;
            };
            Some(Sight { spot, look, seen })
        })
    }

    /// A length that somebody gave besides those of features.
    #[must_use]
    pub fn length(&self, name: Dimension) -> Option<Entered> {
        match self.field(FieldKey::Length(name)) {
            Field::Length(_, length) => length,
            _ => None,
        }
    }

    /// A volume that somebody gave.
    #[must_use]
    pub fn volume(&self, name: Space) -> Option<Volume> {
        match self.field(FieldKey::Volume(name)) {
            Field::Volume(_, volume) => volume,
            _ => None,
        }
    }

    /// How far the crown stops below the deck; above it, less than nothing.
    #[must_use]
    pub fn deck_clearance(&self) -> Option<EnteredDeviation> {
        match self.field(FieldKey::DeckClearance) {
            Field::DeckClearance(clearance) => clearance,
            _ => None,
        }
    }

    /// The steps from standard in which parts for a kind can be had, as
    /// somebody listed them, in the order told: of pistons oversizes, of main
    /// and rod shells undersizes. `None` where nobody did.
    #[must_use]
    pub fn stock(&self, kind: Kind) -> Option<Vec<Entered>> {
        match self.field(FieldKey::Stock(kind)) {
            Field::Stock(_, steps) => steps,
            _ => None,
        }
    }

    /// The features of a kind.
    pub fn features_of(&self, kind: Kind) -> impl Iterator<Item = Feature> + use<> {
        (1..=self.count(kind)).map(move |position| Feature { kind, position })
    }

    /// All features that are asked for or were read, in the order they are
    /// measured.
    pub fn features(&self) -> impl Iterator<Item = Feature> {
        let kinds = self.kinds().into_iter();
        kinds.flat_map(|kind| self.features_of(kind))
    }

    /// True if the layout has this feature. Readings of others are kept.
    #[must_use]
    pub fn has(&self, feature: Feature) -> bool {
        feature.position <= self.count(feature.kind)
    }
}
