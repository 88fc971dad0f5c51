//! The normal distribution and Student's t, one of them with infinite
//! degrees of freedom. Unlike the tables, for any real number of them.

use core::f64::consts::{PI, SQRT_2};

use super::float;

/// From here the corrected normal tail stands for Student's t.
const DOF_OF_THE_NORMAL_TAIL: f64 = 60.0;

/// From here the t is the normal distribution to the last digit that counts.
const DOF_OF_THE_NORMAL: f64 = 1e12;

/// Largest argument; its square is still a number.
const T_MAX: f64 = 1e100;

/// Probabilities nearer to 0 or 1 than this count as this near.
const P_MIN: f64 = 1e-15;

/// The probability of at most `z` standard deviations. What is not a number
/// counts as far above.
#[must_use]
pub fn normal_cdf(z: f64) -> f64 {
    t_cdf(z, f64::INFINITY)
}

/// The number of standard deviations not exceeded with probability `p`.
#[must_use]
pub fn normal_quantile(p: f64) -> f64 {
    t_quantile(p, f64::INFINITY)
}

/// The probability that Student's t with `nu` degrees of freedom is at most
/// `t`. What is not a number counts as far above.
///
/// Right to 1e-13, and where little lies beyond `t` to nine digits of that
/// down to 1e-7.
///
/// ```
/// use fenderbench::uncertainty::t_cdf;
/// // With one degree of freedom a quarter lies beyond 1, with two beyond 0.8165.
/// assert!((t_cdf(1.0, 1.0) - 0.75).abs() < 1e-15);
/// assert!((t_cdf(2.0_f64.sqrt() / 3.0_f64.sqrt(), 2.0) - 0.75).abs() < 1e-15);
/// ```
#[must_use]
pub fn t_cdf(t: f64, nu: f64) -> f64 {
    let beyond = upper_tail(t.abs(), nu);
    if t < 0.0 { beyond } else { 1.0 - beyond }
}

/// The value that Student's t with `nu` degrees of freedom does not exceed
/// with probability `p`, which is taken as at least 1e-15 away from 0 and 1;
/// what is not a number counts as near 1.
#[must_use]
pub fn t_quantile(p: f64, nu: f64) -> f64 {
    let nu = float::dof(nu);
    let p = float::within(p, P_MIN, 1.0 - P_MIN);
    if p < 0.5 {
        -upper_quantile(p, nu)
    } else {
        upper_quantile(1.0 - p, nu)
    }
}

/// The probability of more than `t`, which is not below zero. Keeps its
/// digits where one minus the rest would lose them.
pub(super) fn upper_tail(t: f64, nu: f64) -> f64 {
    tail(float::within(t, 0.0, T_MAX), float::dof(nu)).both / 2.0
}

/// The `t` beyond which the probability is `upper`, at most a half.
///
/// Newton's steps on the logarithms of tail and t: there the tail is concave,
/// so that steps from the right never pass the root. The start lies right of
/// it, since the tail is at most (1 + t²/ν)^(−ν/2), in the limit exp(−t²/2).
fn upper_quantile(upper: f64, nu: f64) -> f64 {
    let both = 2.0 * upper;
    let exponent = -2.0 * libm::log(both);
    let square = if nu < DOF_OF_THE_NORMAL {
        nu * libm::expm1(exponent / nu)
    } else {
        exponent
    };
    let mut t = square.sqrt();
    // Fewer than ten unless `both` is close to 1, where each takes t by a
    // factor of e at most.
    for _ in 0..60 {
        if t <= 0.0 {
            break;
        }
        let here = tail(t, nu);
        let slope = 2.0 * t * here.density / here.both;
        let step = libm::log(here.both / both) / slope;
        t *= libm::exp(step);
        if step.abs() < 1e-14 {
            break;
        }
    }
    t
}

/// The probability beyond `t` on both sides and the density at `t`.
struct Tail {
    both: f64,
    density: f64,
}

/// The tail of ν degrees of freedom is that of ν + 2k at the same t²/ν, and
/// k terms more: the incomplete beta function's recurrence in its second
/// parameter,
///
/// 1 − I(y; ½, b) = 1 − I(y; ½, b + 1) + √y (1 − y)^b Γ(b + ½) / (√π Γ(b + 1))
///
/// with y = t²/(ν + t²) and b = ν/2. All terms are above zero, so that none
/// of them costs digits. With enough degrees of freedom the normal tail at
/// the argument of Hill (1970, Communications of the ACM 13, algorithm 395)
/// is right to ten digits.
fn tail(t: f64, nu: f64) -> Tail {
    if DOF_OF_THE_NORMAL <= nu {
        return Tail {
            both: libm::erfc(t / SQRT_2),
            density: libm::exp(-t * t / 2.0) / (2.0 * PI).sqrt(),
        };
    }
    let ratio = t * t / nu;
    let log = libm::log1p(ratio);
    let (mut sum, mut term, mut b) = (0.0, 1.0, nu / 2.0);
    // Γ(b + ½) / Γ(b + 1) at ν, over the same at ν + 2k.
    let mut gammas = 1.0;
    while b < DOF_OF_THE_NORMAL_TAIL / 2.0 {
        sum += term;
        let step = (b + 1.0) / (b + 0.5);
        term /= step * (1.0 + ratio);
        gammas *= step;
        b += 1.0;
    }
    gammas *= gamma_ratio(b);
    let first = (ratio / (1.0 + ratio)).sqrt() * libm::exp(-nu / 2.0 * log) * gammas / PI.sqrt();
    let density = gammas * nu / 2.0 / (PI * nu).sqrt() * libm::exp(-(nu + 1.0) / 2.0 * log);
    Tail {
        both: first * sum + libm::erfc(hill(2.0 * b, log) / SQRT_2),
        density,
    }
}

/// Γ(b + ½) / Γ(b + 1) of a large b: the asymptotic series in 1/w² about
/// w = b + ¼ (Tricomi and Erdélyi 1951), right to 14 digits from b = 30.
fn gamma_ratio(b: f64) -> f64 {
    let w = b + 0.25;
    let x = 1.0 / (w * w);
    let series = 1.0 - x * (1.0 / 64.0 - x * (21.0 / 8192.0 - x * 671.0 / 524_288.0));
    series / w.sqrt()
}

/// The normal deviate whose tail is that of t, from log(1 + t²/ν).
fn hill(nu: f64, log: f64) -> f64 {
    let a = nu - 0.5;
    let b = 48.0 * a * a;
    let s = a * log;
    let first = (s + 3.0) / b;
    let below = 10.0 * b * (b + 0.8 * s * s + 100.0);
    let second = (((4.0 * s + 33.0) * s + 240.0) * s + 855.0) / below;
    s.sqrt() * (1.0 + first - second)
}
