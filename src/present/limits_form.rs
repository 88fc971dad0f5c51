//! The form for the limits of a kind: texts in, an edit out.

use crate::quantity::{Entered, Unit};
use crate::session::{Bound, Edit, Field, FieldKey, Kind, LimitKey, Quantity, Session, limit_keys};

use super::wording;

/// The form of one kind.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LimitsForm {
    /// The kind.
    pub kind: Kind,
    /// The unit the manual prints.
    pub unit: Unit,
    /// Where the limits come from.
    pub source: String,
    /// One row for each limit a manual can give.
    pub rows: Vec<LimitsRow>,
}

/// One limit on the form.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LimitsRow {
    /// Its name.
    pub key: LimitKey,
    /// The quantity in words.
    pub quantity: &'static str,
    /// Which limit of it, in words.
    pub bound: &'static str,
    /// What is typed; empty where the manual is silent.
    pub text: String,
}

impl Default for LimitsForm {
    /// A form with nothing on it.
    fn default() -> Self {
        Self {
            kind: Kind::Bore,
            unit: Unit::Millimetre,
            source: String::new(),
            rows: Vec::new(),
        }
    }
}

impl LimitsForm {
    /// The form as the session stands.
    #[must_use]
    pub fn of(session: &Session, kind: Kind) -> Self {
        let mut unit = session.display_unit();
        let mut rows = Vec::new();
        for &(quantity, bounds) in limit_keys(kind) {
            for &bound in bounds {
                let limit = session.limit(kind, quantity, bound);
                unit = limit.as_ref().map_or(unit, Entered::unit);
                rows.push(row(kind, quantity, bound, limit));
            }
        }
        let source = match session.field(FieldKey::LimitSource(kind)) {
            Field::LimitSource(_, source) => source,
            _ => String::new(),
        };
        Self {
            kind,
            unit,
            source,
            rows,
        }
    }

    /// The edit that brings the session to what the form says; an empty
    /// batch if it says so already.
    ///
    /// # Errors
    /// A sentence that names the first row that is not a length.
    pub fn edit(&self, session: &Session) -> Result<Edit, String> {
        let mut edits = Vec::new();
        let mut set = |field: Field| {
            if session.field(field.key()) != field {
                edits.push(Edit::Set(field));
            }
        };
        // Merged limits can have two units: a row that nobody touched stays.
        let stands = Self::of(session, self.kind);
        for row in &self.rows {
            if self.unit == stands.unit && stands.rows.contains(row) {
                continue;
            }
            let text = row.text.trim();
            let limit = if text.is_empty() {
                None
            } else {
                let parsed = Entered::parse(text, self.unit);
                Some(parsed.map_err(|why| format!("{}, {}: {why}", row.quantity, row.bound))?)
            };
            set(Field::Limit(row.key, limit));
        }
        set(Field::LimitSource(self.kind, self.source.trim().to_owned()));
        Ok(Edit::Batch(edits))
    }
}

fn row(kind: Kind, quantity: Quantity, bound: Bound, limit: Option<Entered>) -> LimitsRow {
    LimitsRow {
        key: LimitKey {
            kind,
            quantity,
            bound,
        },
        quantity: wording::quantity(kind, quantity),
        bound: wording::bound(kind, quantity, bound),
        text: limit.map_or_else(String::new, |limit| limit.text().to_owned()),
    }
}
