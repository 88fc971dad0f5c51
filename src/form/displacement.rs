//! Volumes: what pistons displace, and how far the charge is compressed.

use core::ops::{Add, Sub};

use super::ring_gap::PI;
use crate::quantity::{Exact, SIZE_MAX, round_half_even};

/// A volume, in whole cubic quanta (10⁻³⁰ m³); negative where it takes away
/// from another.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Volume(i128);

impl Volume {
    /// Nothing.
    pub const ZERO: Self = Self(0);

    /// One cubic centimetre.
    pub const CUBIC_CENTIMETRE: Self = Self(100_000_000_i128.pow(3));

    /// One litre.
    pub const LITRE: Self = Self(1_000_000_000_i128.pow(3));

    /// One cubic inch, an inch being 25.4 mm.
    pub const CUBIC_INCH: Self = Self(254_000_000_i128.pow(3));

    /// So many cubic millimetres.
    #[must_use]
    pub fn cubic_millimetres(number: i32) -> Self {
        Self(i128::from(number) * 10_000_000_i128.pow(3))
    }

    /// π/4 × diameter² × height: a cylinder's sweep with its stroke, a
    /// gasket's opening, or what the piston leaves below the deck (negative
    /// where it stands above). Lengths count to the whole quantum and to
    /// [`SIZE_MAX`]; the volume is right to 15 digits.
    ///
    /// ```
    /// use fenderbench::form::Volume;
    /// use fenderbench::quantity::Exact;
    /// // 4.000 in × 0.010 in off the deck is 2.059 cm³.
    /// let [bore, cut] = [1_016_000_000, 2_540_000].map(Exact::whole);
    /// let cut = Volume::cylinder(bore, cut);
    /// assert_eq!(cut.per(Volume::CUBIC_CENTIMETRE, 3), Some(2_059));
    /// ```
    #[must_use]
    pub fn cylinder(diameter: Exact, height: Exact) -> Self {
        let [diameter, height] = [diameter, height].map(whole);
        let area = round_half_even(diameter * diameter * PI.0, 4 * PI.1);
        Self(area * height)
    }

    /// So many of it.
    #[must_use]
    pub fn times(self, number: u8) -> Self {
        Self(self.0 * i128::from(number))
    }

    /// How often another is in it, in steps of the last of so many decimals;
    /// `None` where that other is not above nothing, or for more decimals
    /// than can be told.
    #[must_use]
    pub fn per(self, other: Self, decimals: u8) -> Option<i128> {
        let steps = 10_i128.checked_pow(decimals.into())?;
        let all = self.0.checked_mul(steps)?;
        (0 < other.0).then(|| round_half_even(all, other.0))
    }
}

impl Add for Volume {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl Sub for Volume {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
}

/// The compression ratio (swept + clearance volume) / clearance volume, in
/// thousandths; `None` where nothing is left above the piston. The clearance
/// volume is that of chamber, gasket, deck and piston (a dish adds, a dome
/// takes away).
#[must_use]
pub fn compression_ratio(swept: Volume, clearance: Volume) -> Option<i128> {
    (swept + clearance).per(clearance, 3)
}

fn whole(length: Exact) -> i128 {
    let most = i128::from(SIZE_MAX.quanta());
    round_half_even(length.numerator(), length.denominator()).clamp(-most, most)
}
