//! A micrometer: what its scales show, how they are drawn, what is said where
//! reading goes wrong, and the quiz.

use fenderbench::present::instrument::{Micrometer, QUESTIONS, Quiz, Turn};
use fenderbench::present::{Key, RouteView};
use fenderbench::quantity::{Entered, Unit};
use fenderbench::session::{Gauge, GaugeKind};
use proptest::prelude::*;
use proptest::sample::select;

use crate::generators::config;
use crate::golden::golden;
use crate::make::{INCH, MM, unit};

/// A micrometer read to this, with a range that starts there.
fn micrometer(graduation: &str, of: Unit, start: &str) -> Micrometer {
    let length = |text| Entered::parse(text, of).unwrap();
    let mut gauge = Gauge::usual(GaugeKind::OutsideMicrometer, of).unwrap();
    gauge.graduation = length(graduation);
    gauge.range = Some((length(start), length("590")));
    Micrometer::of_gauge(&gauge, None).unwrap()
}
