//! Certified means of the NIST reference data for statistics, exact as
//! weights over scaled whole numbers.

use fenderbench::quantity::{Exact, Size, Weights};

use crate::golden::golden;

#[test]
fn means_are_exact() {
    for row in golden!("means.csv") {
        let size = |column| Size::from_quanta(row.whole(column).try_into().unwrap());
        let pairs = usize::try_from(row.whole("pairs")).unwrap();
        let mut data = vec![size("first")];
        for _ in 0..pairs {
            data.extend([size("then"), size("and")]);
        }
        let n = data.len();
        assert_eq!(
            n,
            usize::try_from(row.whole("n")).unwrap(),
            "{}",
            row.place()
        );
        let certified = Exact::new(row.whole("mean"), 1);
        let mean = Weights::mean_of(0..n);
        assert_eq!(mean.value(&data), Some(certified), "{}", row.place());
        // Changing one reading by one unit moves the mean by a certain part of it.
        data[n / 2] = Size::from_quanta(data[n / 2].quanta() + 1);
        let step = Exact::new(1, n.try_into().unwrap());
        assert_eq!(mean.value(&data), Some(certified + step), "{}", row.place());
    }
}
