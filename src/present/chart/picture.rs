//! A chart laid out: shapes and words at their places.

use plotters::backend::DrawingBackend;
use plotters::drawing::{DrawingArea, DrawingAreaErrorKind, IntoDrawingArea};
use plotters::element::{PathElement, Polygon, Rectangle};
use plotters::style::{Color, RGBColor};

/// Parts of a pixel of the page that shapes are placed by.
pub(super) const FINE: i32 = 16;

/// What a shape is drawn in; the page says which colour that is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ink {
    /// What was read.
    Ink,
    /// What only helps to read it.
    Soft,
    /// Within limits.
    Blue,
    /// Limits, and what is beyond them.
    Orange,
    /// Areas.
    Tint,
}

/// How many inks there are.
pub const INKS: usize = 5;

/// Something to draw, in sixteenths of a pixel from the upper left corner.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Shape {
    /// A filled rectangle; every upright and level line is one, so that it is
    /// sharp.
    Area(Ink, [(i32, i32); 2]),
    /// A line of this width.
    Line(Ink, i32, Vec<(i32, i32)>),
    /// A filled shape.
    Fill(Ink, Vec<(i32, i32)>),
}

/// To which side of its place a word stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// It starts there.
    Start,
    /// It stands across it.
    Middle,
    /// It ends there.
    End,
}

/// A word and its place in pixels; the place is on its base line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Word {
    /// Its place.
    pub at: (i32, i32),
    /// How it stands there.
    pub anchor: Anchor,
    /// What it says.
    pub text: String,
    /// True of what a row or a part is called by.
    pub is_title: bool,
}

/// Shapes and words, the words in pixels of the page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Picture {
    /// Its width in pixels.
    pub width: i32,
    /// Its height in pixels.
    pub height: i32,
    /// What is drawn, in this order.
    pub shapes: Vec<Shape>,
    /// What is written.
    pub words: Vec<Word>,
    /// The size of type in pixels.
    pub(super) type_size: i32,
}

impl Picture {
    pub(super) const fn new(width: i32, type_size: i32) -> Self {
        Self {
            width,
            height: 0,
            shapes: Vec::new(),
            words: Vec::new(),
            type_size,
        }
    }

    /// So many tenths of the size of type, in pixels.
    pub(super) const fn em(&self, tenths: i32) -> i32 {
        self.type_size * tenths / 10
    }

    /// How wide a word is at most, in pixels: its figures are the widest.
    pub(super) fn width_of(&self, text: &str) -> i32 {
        let letters = i32::try_from(text.chars().count()).unwrap_or(i32::MAX);
        letters * self.type_size * 64 / 100
    }

    /// Writes a word, moved aside where it would leave the picture.
    pub(super) fn write(&mut self, at: (i32, i32), anchor: Anchor, text: &str, is_title: bool) {
        let width = self.width_of(text);
        let before = match anchor {
            Anchor::Start => 0,
            Anchor::Middle => width / 2,
            Anchor::End => width,
        };
        let most = (self.width - width + before).max(before);
        self.words.push(Word {
            at: (at.0.clamp(before, most), at.1),
            anchor,
            text: text.to_owned(),
            is_title,
        });
    }

    pub(super) fn area(&mut self, ink: Ink, from: (i32, i32), to: (i32, i32)) {
        self.shapes.push(Shape::Area(ink, [from, to]));
    }

    /// A line in dashes of this length, as much between them; whole without.
    pub(super) fn line(&mut self, ink: Ink, width: i32, points: &[(i32, i32)], dash: i32) {
        if dash == 0 {
            self.shapes.push(Shape::Line(ink, width, points.to_vec()));
            return;
        }
        for ends in points.windows(2) {
            let &[from, to] = ends else { continue };
            let (wide, high) = (to.0 - from.0, to.1 - from.1);
            let length = (wide * wide + high * high).isqrt().max(1);
            let at = |along: i32| {
                let along = along.min(length);
                (
                    from.0 + wide * along / length,
                    from.1 + high * along / length,
                )
            };
            for start in (0..length).step_by(usize::try_from(2 * dash).unwrap_or(1)) {
                let dash = vec![at(start), at(start + dash)];
                self.shapes.push(Shape::Line(ink, width, dash));
            }
        }
    }

    /// Draws the shapes, a pixel of the page being so many sixteenths of one
    /// of the backend.
    ///
    /// # Errors
    /// What the backend says.
    pub fn draw<B: DrawingBackend>(
        &self,
        backend: B,
        sixteenths: i32,
        inks: [(u8, u8, u8); INKS],
    ) -> Result<(), DrawingAreaErrorKind<B::ErrorType>> {
        let area: DrawingArea<B, _> = backend.into_drawing_area();
        let scale = |length: i32| (length * sixteenths + FINE * FINE / 2) / (FINE * FINE);
        let place = |&(x, y): &(i32, i32)| (scale(x), scale(y));
        let colour = |ink: Ink| {
            let (red, green, blue) = inks.get(ink as usize).copied().unwrap_or_default();
            RGBColor(red, green, blue)
        };
        for shape in &self.shapes {
            match shape {
                Shape::Area(ink, [from, to]) => {
                    let (from, to) = (place(from), place(to));
                    // However fine, a line is seen.
                    let to = (to.0.max(from.0 + 1), to.1.max(from.1 + 1));
                    area.draw(&Rectangle::new([from, to], colour(*ink).filled()))?;
                }
                Shape::Line(ink, width, points) => {
                    let points: Vec<_> = points.iter().map(place).collect();
                    let width = u32::try_from(scale(*width)).unwrap_or(1).max(1);
                    area.draw(&PathElement::new(points, colour(*ink).stroke_width(width)))?;
                }
                Shape::Fill(ink, points) => {
                    let points: Vec<_> = points.iter().map(place).collect();
                    area.draw(&Polygon::new(points, colour(*ink).filled()))?;
                }
            }
        }
        area.present()
    }

    /// The size of the backend in its own pixels.
    #[must_use]
    pub fn size(&self, sixteenths: i32) -> (u32, u32) {
        let scale = |length: i32| u32::try_from((length * sixteenths + 15) / 16).unwrap_or(1);
        (scale(self.width), scale(self.height))
    }
}
