//! A new session in one screen, and its set-up later: every field has a
//! default that names itself.

use crate::quantity::{Entered, ParseLengthError, Unit};
use crate::session::{
    Arrangement, Counting, Edit, Field, FieldKey, FirstEnd, Kind, RouteChoice, Session, Use,
};
use crate::uncertainty::{Climate, Material};

/// The materials asked for, each with what it may be.
pub const BLOCKS: [Material; 3] = [Material::GreyIron, Material::CastAluminium, Material::Steel];
/// Of pistons.
pub const PISTONS: [Material; 3] = [Material::PistonAlloy, Material::GreyIron, Material::Steel];
/// Of crankshafts.
pub const CRANKS: [Material; 2] = [Material::Steel, Material::DuctileIron];
/// Of the shop's warmth, in words.
pub const CLIMATES: [Climate; 3] = [Climate::Cold, Climate::Mild, Climate::Hot];

/// What the screen asks.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NewSession {
    /// What the person calls it.
    pub name: String,
    /// Number of cylinders.
    pub cylinders: u8,
    /// How they stand.
    pub arrangement: Arrangement,
    /// Number of main journals.
    pub mains: u8,
    /// Rods on each throw.
    pub rods_per_throw: u8,
    /// Unit of the findings and of the default gauges.
    pub unit: Unit,
    /// Which stations are asked for.
    pub route: RouteChoice,
    /// What the machine is used for.
    pub machine_use: Use,
    /// Which end position 1 is at.
    pub first_end: FirstEnd,
    /// How two banks are counted.
    pub counting: Counting,
    /// The size the bores were made to, as typed; empty where unknown.
    pub bore: String,
    /// How warm it is where the gauges are, in a word.
    pub climate: Climate,
    /// The same by a thermometer in °C, as typed; empty without one.
    pub degrees: String,
    /// What the block is made of.
    pub block: Material,
    /// What the pistons are made of.
    pub pistons: Material,
    /// What the crankshaft is made of.
    pub crank: Material,
}

impl Default for NewSession {
    fn default() -> Self {
        Self {
            name: String::new(),
            cylinders: 4,
            arrangement: Arrangement::InLine,
            mains: 5,
            rods_per_throw: 1,
            unit: Unit::Millimetre,
            route: RouteChoice::Standard,
            machine_use: Use::Street,
            first_end: FirstEnd::Timing,
            counting: Counting::Across,
            bore: String::new(),
            climate: Climate::default(),
            degrees: String::new(),
            block: Kind::Bore.usual_material(),
            pistons: Kind::Piston.usual_material(),
            crank: Kind::MainJournal.usual_material(),
        }
    }
}

impl NewSession {
    /// The set-up of a session.
    #[must_use]
    pub fn of(session: &Session) -> Self {
        let bore = match session.field(BORE) {
            Field::Nominal(_, bore) => bore,
            _ => None,
        };
        Self {
            name: session.name(),
            cylinders: session.cylinders(),
            arrangement: session.arrangement(),
            mains: session.mains(),
            rods_per_throw: session.rods_per_throw(),
            unit: session.display_unit(),
            route: session.route(),
            machine_use: session.machine_use(),
            first_end: session.first_end(),
            counting: session.counting(),
            bore: bore.map_or_else(String::new, |bore| in_unit(&bore, session.display_unit())),
            climate: session.climate(),
            degrees: match session.climate() {
                degrees @ Climate::Degrees(_) => degrees.to_string(),
                _ => String::new(),
            },
            block: session.material(Kind::Bore),
            pistons: session.material(Kind::Piston),
            crank: session.material(Kind::MainJournal),
        }
    }

    /// Another number of cylinders, with the usual crank for it.
    pub fn set_cylinders(&mut self, cylinders: u8) {
        self.cylinders = cylinders;
        if (self.arrangement == Arrangement::Single) != (cylinders == 1) {
            self.arrangement = if cylinders == 1 {
                Arrangement::Single
            } else {
                Arrangement::InLine
            };
        }
        self.usual_crank();
    }

    /// Another arrangement, with the usual crank for it.
    pub fn set_arrangement(&mut self, arrangement: Arrangement) {
        self.arrangement = arrangement;
        if arrangement == Arrangement::Single {
            self.cylinders = 1;
        } else if self.cylinders == 1 {
            self.cylinders = 2;
        }
        self.usual_crank();
    }

    const fn usual_crank(&mut self) {
        self.rods_per_throw = self.arrangement.usual_rods_per_throw();
        self.mains = self.arrangement.usual_mains(self.cylinders);
    }

    /// True if there are two banks, so that it matters how they are counted.
    #[must_use]
    pub const fn has_banks(&self) -> bool {
        matches!(self.arrangement, Arrangement::Vee | Arrangement::Flat)
    }

    /// The set-up fields; without a name the session is called after its
    /// engine.
    ///
    /// # Errors
    /// The sentence why what is typed is no length.
    pub fn fields(&self) -> Result<Vec<Field>, String> {
        let name = match self.name.trim() {
            "" => self.usual_name(),
            name => name.to_owned(),
        };
        let bore = match self.bore.trim() {
            "" => None,
            text => {
                let bore = length(text, self.unit);
                Some(bore.map_err(|why| format!("Bore as made: {why}"))?)
            }
        };
        let climate = match (self.degrees.trim(), self.climate) {
            ("", Climate::Degrees(_)) => Climate::default(),
            ("", climate) => climate,
            (text, _) => degrees(text).ok_or("How warm it is: type degrees Celsius, as 14.5.")?,
        };
        Ok(vec![
            Field::Name(name),
            Field::Cylinders(self.cylinders),
            Field::Arrangement(self.arrangement),
            Field::Mains(self.mains),
            Field::RodsPerThrow(self.rods_per_throw),
            Field::DisplayUnit(self.unit),
            Field::Route(self.route),
            Field::Use(self.machine_use),
            Field::FirstEnd(self.first_end),
            Field::Counting(self.counting),
            Field::Nominal(Kind::Bore, bore),
            Field::Climate(climate),
            Field::Material(Kind::Bore, self.block),
            Field::Material(Kind::Piston, self.pistons),
            Field::Material(Kind::MainHousing, self.block),
            Field::Material(Kind::Deck, self.block),
            Field::Material(Kind::PinBore, self.pistons),
            Field::Material(Kind::MainJournal, self.crank),
            Field::Material(Kind::RodJournal, self.crank),
        ])
    }

    /// What a session without a name is called.
    #[must_use]
    pub fn usual_name(&self) -> String {
        let arrangement = super::wording::arrangement(self.arrangement);
        match self.arrangement {
            Arrangement::Single => "Single cylinder".to_owned(),
            _ => format!("{arrangement} {}", self.cylinders),
        }
    }

    /// The first field that cannot be, as a sentence.
    ///
    /// # Errors
    /// The sentence.
    pub fn check(&self) -> Result<(), String> {
        let fields = self.fields()?;
        let refused = fields.iter().find_map(|field| field.check().err());
        refused.map_or(Ok(()), |why| Err(why.to_string()))
    }

    /// The edit that brings a session to this set-up.
    ///
    /// # Errors
    /// The sentence of [`NewSession::fields`].
    pub fn edit(&self, session: &Session) -> Result<Edit, String> {
        let changed = |field: &Field| session.field(field.key()) != *field;
        let fields = self.fields()?.into_iter().filter(changed);
        Ok(Edit::Batch(fields.map(Edit::Set).collect()))
    }
}

/// Degrees as typed, with a point or a comma.
fn degrees(text: &str) -> Option<Climate> {
    let text = text.replace(',', ".").replace('−', "-");
    let short = match text.split_once('.') {
        Some(_) => text.trim_end_matches('0').trim_end_matches('.'),
        None => &text,
    };
    match Climate::parse(short)? {
        climate @ Climate::Degrees(_) => Some(climate),
        _ => None,
    }
}

/// A length as typed, in its own unit where it names one.
pub(super) fn length(text: &str, unit: Unit) -> Result<Entered, ParseLengthError> {
    let (number, unit) = named_unit(text, unit);
    Entered::parse(number, unit)
}

/// What is typed before a unit, and that unit; else this one.
pub(super) fn named_unit(text: &str, unit: Unit) -> (&str, Unit) {
    let named = Unit::ALL
        .into_iter()
        .find_map(|unit| Some((text.strip_suffix(unit.sign())?, unit)));
    named.unwrap_or((text, unit))
}

/// A length as it was typed, with its unit where that is another than this.
pub(super) fn in_unit(length: &Entered, unit: Unit) -> String {
    if length.unit() == unit {
        length.text().to_owned()
    } else {
        length.to_string()
    }
}

const BORE: FieldKey = FieldKey::Nominal(Kind::Bore);
