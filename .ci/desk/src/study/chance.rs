//! Chance with a seed: the same numbers wherever the study runs.

/// SplitMix64 (Steele, Lea and Flood 2014; the constants from memory).
#[derive(Clone, Debug)]
pub struct Chance(u64);

impl Chance {
    /// A part of a seed's chance for itself, so that how the work is shared
    /// out changes nothing.
    pub const fn part(seed: u64, part: u64) -> Self {
        Self(Self(seed ^ part.rotate_left(32)).next())
    }

    const fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// Between 0 and 1, neither of them.
    #[expect(clippy::cast_precision_loss, reason = "53 bits are exact")]
    pub fn unit(&mut self) -> f64 {
        ((self.next() >> 11) as f64 + 0.5) / (1_u64 << 53) as f64
    }

    /// Anything from `low` to `high`, equally likely.
    pub fn within(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    /// Normal about zero, of this standard deviation (Box and Muller 1958).
    pub fn normal(&mut self, sd: f64) -> f64 {
        let radius = (-2.0 * libm::log(self.unit())).sqrt();
        sd * radius * libm::cos(core::f64::consts::TAU * self.unit())
    }

    /// Exponential of this mean.
    pub fn exponential(&mut self, mean: f64) -> f64 {
        -mean * libm::log(self.unit())
    }
}
