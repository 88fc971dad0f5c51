//! Charts: what the readings look like. A chart is made of numbers and words
//! ([`Chart`]), laid out for a width ([`Chart::lay_out`]), and its geometry
//! drawn by any of the backends of plotters ([`Picture::draw`]). Words are
//! never drawn: who shows a picture sets them beside it.

mod bore_map;
mod glyph;
mod ladder;
mod picture;
mod profile;
mod read;
mod repeats;
mod rings;
mod rows;

pub(super) use bore_map::bore_map;
pub(super) use ladder::ladder;
pub use picture::{Anchor, INKS, Ink, Picture, Shape, Word};
pub(super) use profile::profile;
pub(super) use repeats::repeats;
use rings::Rings;
use rows::Rows;

use crate::quantity::{Exact, Unit, round_half_even, show};

/// What the charts of sizes and clearances show.
pub const HOW_TO_READ: &str = "Every row is one part, further right is larger. Thick line: from \
                               its smallest to its largest reading. Thin line: as far as the \
                               doubt reaches. The shape on it is its word, as beside the words. \
                               Tinted: new limits. Upright line: service limit.";

/// A chart with what is to be said of it, and its numbers as a table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Chart {
    /// What it shows.
    pub name: Name,
    /// What is drawn; `None` where there is nothing to draw, which the first
    /// of the notes tells.
    body: Option<Body>,
    /// Sentences under it.
    pub notes: Vec<String>,
    /// The same numbers.
    pub table: Table,
}

/// What a chart shows, and of what.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Name {
    /// Of which feature or kind.
    pub of: String,
    /// What is shown of it.
    pub what: String,
}

impl Name {
    fn new(of: &str, what: &str) -> Self {
        Self {
            of: of.to_owned(),
            what: what.to_owned(),
        }
    }
}

/// The numbers of a chart.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Table {
    /// The titles of its columns.
    pub head: Vec<&'static str>,
    /// Its rows, each as long as the head.
    pub rows: Vec<Vec<String>>,
}

#[derive(Clone, Debug, PartialEq, Eq)]
enum Body {
    Rows(Rows),
    Rings(Rings),
}

impl Chart {
    /// A chart of which one sentence says what is missing.
    fn missing(name: Name, told: &str) -> Self {
        Self {
            name,
            body: None,
            notes: vec![told.to_owned()],
            table: Table::default(),
        }
    }

    /// True if there is something to draw.
    #[must_use]
    pub const fn is_drawn(&self) -> bool {
        self.body.is_some()
    }

    /// Lays it out for a width and a size of type, both in pixels of the
    /// page; nothing to draw gives an empty picture.
    #[must_use]
    pub fn lay_out(&self, width: i32, type_size: i32) -> Picture {
        let mut picture = Picture::new(width, type_size);
        match &self.body {
            Some(Body::Rows(rows)) => rows.lay_out(&mut picture),
            Some(Body::Rings(rings)) => rings.lay_out(&mut picture),
            None => {}
        }
        picture
    }
}

/// A length in whole quanta, near enough for what is drawn.
fn quanta(exact: Exact) -> i64 {
    let whole = round_half_even(exact.numerator(), exact.denominator());
    i64::try_from(whole).unwrap_or_default()
}

/// A length as a table has it, without the unit.
fn told(value: Exact, unit: Unit) -> String {
    super::wording::number(&show(value, unit, unit.decimals()))
}

/// The largest of 1, 2, 5, 10, 20, 50 … times `least` that is not above
/// `most`; `least` where all are.
fn round_step(least: i64, most: i64) -> i64 {
    let mut step = least;
    for (up, down) in [(2, 1), (5, 2), (2, 1)].into_iter().cycle() {
        let next = step * up / down;
        if most < next {
            break;
        }
        step = next;
    }
    step
}

/// A length as it is told beside others: to the decimals of its unit.
fn near(value: Exact, unit: Unit) -> String {
    super::sure::near(value, unit, unit.decimals())
}
