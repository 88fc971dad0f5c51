//! The form for lengths, volumes and sizes to be had that somebody gives
//! besides those of features: texts in, an edit out.

use super::new_session::{in_unit, length, named_unit};
use crate::quantity::{Entered, EnteredDeviation, Unit};
use crate::session::{Dimension, Edit, Field, FieldKey, Kind, Session, Space, Volume, usual_steps};

/// One line of the form.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GivenRow {
    /// The field.
    pub key: FieldKey,
    /// Its name, with the unit.
    pub label: String,
    /// What to say about it.
    pub told: String,
    /// What is typed; empty where nobody gave it.
    pub text: String,
}

/// What is asked, in this order.
const KEYS: [FieldKey; 12] = [
    FieldKey::Length(Dimension::Stroke),
    FieldKey::Length(Dimension::GasketBore),
    FieldKey::Length(Dimension::GasketThickness),
    FieldKey::DeckClearance,
    FieldKey::Volume(Space::Chamber),
    FieldKey::Volume(Space::PistonTop),
    FieldKey::Stock(Kind::Piston),
    FieldKey::Stock(Kind::MainShell),
    FieldKey::Stock(Kind::RodShell),
    FieldKey::Length(Dimension::HoningAllowance),
    FieldKey::Length(Dimension::BarOffset),
    FieldKey::Length(Dimension::GreatestBore),
];

/// The form as the session stands.
#[must_use]
pub fn given_form(session: &Session) -> Vec<GivenRow> {
    let unit = session.display_unit();
    let row = |key: FieldKey| {
        let (name, told) = words(key);
        let sign = match key {
            FieldKey::Volume(_) => "cm³",
            _ => unit.sign(),
        };
        let told = match key {
            FieldKey::Stock(kind) => format!(
                "One after the other. Blank: common practice, {}.",
                usual_steps(kind, unit).join(" ")
            ),
            _ => told.to_owned(),
        };
        GivenRow {
            key,
            label: format!("{name}, {sign}"),
            told,
            text: text(&session.field(key), unit),
        }
    };
    KEYS.map(row).into()
}

/// The edit that brings the session to what the form says; an empty batch if
/// it says so already.
///
/// # Errors
/// A sentence that names the first line that cannot be.
pub fn given_edit(session: &Session, rows: &[GivenRow]) -> Result<Edit, String> {
    let mut edits = Vec::new();
    for row in rows {
        let told = |why: &dyn ToString| format!("{}: {}", row.label, why.to_string());
        let read = field(row.key, row.text.trim(), session.display_unit());
        let field = read.map_err(|why| told(&why))?;
        field.check().map_err(|why| told(&why))?;
        if session.field(row.key) != field {
            edits.push(Edit::Set(field));
        }
    }
    Ok(Edit::Batch(edits))
}

pub(super) const fn words(key: FieldKey) -> (&'static str, &'static str) {
    match key {
        FieldKey::Length(Dimension::Stroke) => {
            ("Stroke", "With bores it gives what they displace.")
        }
        FieldKey::Length(Dimension::GasketBore) => ("Head gasket, its bore", ""),
        FieldKey::Length(Dimension::GasketThickness) => {
            ("Head gasket, thickness", "As it is when torqued.")
        }
        FieldKey::DeckClearance => (
            "Crown below the deck",
            "At the top, in line with the pin; with a minus where it stands proud.",
        ),
        FieldKey::Volume(Space::Chamber) => ("Chamber in the head", ""),
        FieldKey::Volume(Space::PistonTop) => ("Dish of the piston", "A dome with a minus."),
        FieldKey::Length(Dimension::HoningAllowance) => (
            "Left for the hone",
            "On diameter. Blank until the shop has said.",
        ),
        FieldKey::Length(Dimension::BarOffset) => (
            "Boring bar off the axis",
            "How far it may stand off the bore. Blank until the shop has said.",
        ),
        FieldKey::Length(Dimension::GreatestBore) => (
            "Greatest bore",
            "That wall and gasket allow. Blank where you do not know.",
        ),
        FieldKey::Stock(Kind::Piston) => ("Piston oversizes you can buy", ""),
        FieldKey::Stock(Kind::MainShell) => ("Main shell undersizes you can buy", ""),
        FieldKey::Stock(_) => ("Rod shell undersizes you can buy", ""),
        _ => ("", ""),
    }
}

/// A value as it was typed, with its unit where that is another.
fn text(field: &Field, unit: Unit) -> String {
    let text = match field {
        Field::Length(_, length) => length.as_ref().map(|length| in_unit(length, unit)),
        Field::Volume(_, volume) => volume.as_ref().map(ToString::to_string),
        Field::DeckClearance(Some(by)) if by.unit() == unit => Some(by.text().to_owned()),
        Field::DeckClearance(by) => by
            .as_ref()
            .map(|by| format!("{} {}", by.text(), by.unit().sign())),
        Field::Stock(_, steps) => steps.as_ref().map(|steps| {
            let texts: Vec<_> = steps.iter().map(Entered::text).collect();
            let other = steps.first().map(Entered::unit).filter(|of| *of != unit);
            let sign = other.map_or_else(String::new, |unit| format!(" {}", unit.sign()));
            format!("{}{sign}", texts.join(" "))
        }),
        _ => None,
    };
    text.unwrap_or_default()
}

fn field(key: FieldKey, text: &str, unit: Unit) -> Result<Field, String> {
    if text.is_empty() {
        return Ok(key.default());
    }
    Ok(match key {
        FieldKey::Length(name) => {
            let length = length(text, unit).map_err(|why| why.to_string())?;
            Field::Length(name, Some(length))
        }
        FieldKey::Volume(name) => {
            let volume = Volume::parse(text).ok_or("type cubic centimetres, as 64.5.")?;
            Field::Volume(name, Some(volume))
        }
        FieldKey::DeckClearance => {
            let (number, unit) = named_unit(text, unit);
            let by = EnteredDeviation::parse(number, unit).map_err(|why| why.to_string())?;
            Field::DeckClearance(Some(by))
        }
        FieldKey::Stock(kind) => {
            let (numbers, unit) = named_unit(text, unit);
            // A comma is a decimal point unless it ends a number.
            let steps = numbers.split([' ', ';']);
            let steps = steps.map(|step| step.trim_end_matches(','));
            let steps = steps.filter(|step| !step.is_empty());
            let steps: Result<Vec<_>, _> = steps.map(|step| Entered::parse(step, unit)).collect();
            Field::Stock(kind, Some(steps.map_err(|why| why.to_string())?))
        }
        _ => key.default(),
    })
}
