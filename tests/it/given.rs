//! Set-up besides limits by chance.

use fenderbench::quantity::Entered;
use fenderbench::remedy::{Spot, Subject};
use fenderbench::session::{Dimension, Field, Kind, Space, Volume};
use proptest::prelude::*;
use proptest::sample::select;

use crate::generators::{deviation, limit};
use crate::make::INCH;

/// What is given besides limits, and what is asked for; some is out of range.
pub fn given() -> impl Strategy<Value = Field> {
    let volume = (-3_000_000..3_000_000).prop_map(Volume::cubic_millimetres);
    let steps = prop::collection::vec(limit().prop_filter_map("a step", |step| step), 0..14);
    let in_one_unit = |steps: Vec<Entered>| {
        let inches = |step: Entered| Entered::parse(step.text(), INCH);
        steps.into_iter().flat_map(inches).collect()
    };
    let looks = Subject::ALL
        .into_iter()
        .flat_map(|subject| subject.looks().map(move |look| (subject, look)));
    let look = (
        select(looks.collect::<Vec<_>>()),
        1_u8..20,
        any::<Option<bool>>(),
    );
    prop_oneof![
        look.prop_map(|((subject, look), position, seen)| {
            Field::Look(Spot { subject, position }, look, seen)
        }),
        (select(&Kind::ALL[..]), any::<bool>()).prop_map(|(kind, on)| Field::Measure(kind, on)),
        (0_u8..40, prop::option::of(0_u8..14)).prop_map(|(main, hour)| Field::HighSpot(main, hour)),
        (select(&Dimension::ALL[..]), limit()).prop_map(|(name, size)| Field::Length(name, size)),
        (select(&Space::ALL[..]), volume).prop_map(|(name, volume)| Field::Volume(name, volume)),
        prop::option::of(deviation()).prop_map(Field::DeckClearance),
        (
            select(&Kind::ALL[..]),
            prop::option::of(steps.prop_map(in_one_unit))
        )
            .prop_map(|(kind, steps)| Field::Stock(kind, steps)),
    ]
}
