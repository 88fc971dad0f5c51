//! Chance with a seed: the same numbers wherever the study runs.

/// SplitMix64 (Steele, Lea and Flood 2014; the constants from memory).
#[derive(Clone, Debug)]
pub struct Chance(u64);

impl Chance {
    pub const fn new(seed: u64) -> Self {
        Self(seed)
    }

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

    /// Anything in a band, equally likely.
    pub fn within_band(&mut self, (low, high): (f64, f64)) -> f64 {
        self.within(low, high)
    }

    /// True in so many of a hundred cases.
    pub fn in_a_hundred(&mut self, cases: f64) -> bool {
        100.0 * self.unit() < cases
    }

    /// A factor about one that is as likely to double as to halve.
    pub fn factor(&mut self, log_sd: f64) -> f64 {
        libm::exp(self.normal(log_sd))
    }

    /// One of these, equally likely; `None` of none.
    pub fn one_of<T: Copy>(&mut self, of: &[T]) -> Option<T> {
        let count = u64::try_from(of.len()).ok().filter(|n| 0 < *n)?;
        of.get(usize::try_from(self.next() % count).ok()?).copied()
    }

    /// One of these by its share of a hundred; the last takes the rest.
    pub fn by_share<T: Copy>(&mut self, of: &[(T, f64)]) -> Option<T> {
        let mut left = 100.0 * self.unit();
        for (one, share) in of {
            left -= share;
            if left < 0.0 {
                return Some(*one);
            }
        }
        of.last().map(|(one, _)| *one)
    }
}
