//! Fits of the standards: what a hole and a shaft at the ends of their
//! tolerances leave between them, as an oil clearance.

use fenderbench::assess::{FindingKey, Way, Which, assess};
use fenderbench::quantity::Exact;
use fenderbench::session::{Field, Kind, Quantity};

use crate::golden::golden;
use crate::make::{INCH, MM, feature, length, measured};

#[test]
fn the_clearances_of_standard_fits_come_out() {
    for row in golden!("standard_fits.csv") {
        let unit = if row.get("unit") == "in" { INCH } else { MM };
        let of = |column| format!("{} {}", row.get(column), row.get("unit"));
        let session = measured(
            vec![Field::DisplayUnit(unit)],
            &[
                ("main_fitted/1/whole/first/0", &of("hole")),
                ("main_journal/1/whole/first/0", &of("shaft")),
            ],
        );
        let shells = feature(Kind::MainShell, 1);
        let key = FindingKey::new(shells, Quantity::Clearance, Which::By(Way::Fitted));
        let assessment = assess(&session);
        let clearance = assessment.get(key).and_then(|finding| finding.value());
        let told = Exact::from(length(&of("clearance")).size());
        assert_eq!(clearance, Some(told), "{}", row.place());
    }
}
