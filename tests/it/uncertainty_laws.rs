//! Laws of measured values by chance: what they mean in algebra, and that
//! nothing that can be put in gives "not a number".
#![allow(
    clippy::float_arithmetic,
    reason = "uncertainties and what they are held against, no lengths"
)]

use fenderbench::quantity::{Exact, SIZE_MAX, Size, Weights};
use fenderbench::uncertainty::{
    Budget, Combined, DOF_MIN, Draw, Instrument, Measured, Probability, Sample, Source, SourceId,
    Spread, U_MAX, dof_from_reliability, pooled, repeatability, t_cdf, t_quantile,
};
use proptest::prelude::*;

use crate::generators::config;
use crate::published::square;

const SOURCES: usize = 6;

/// Any float a caller could come up with.
fn odd() -> impl Strategy<Value = f64> {
    prop_oneof![
        4 => -1e3..1e3,
        2 => any::<f64>(),
        1 => Just(f64::NAN),
        1 => Just(f64::INFINITY),
        1 => Just(f64::NEG_INFINITY),
        1 => Just(0.0),
        1 => Just(-0.0),
        1 => Just(f64::MIN_POSITIVE / 4.0),
    ]
}

fn draw() -> impl Strategy<Value = Draw> {
    (0..4_usize, 0..SOURCES + 2).prop_map(|(number, source)| {
        let source = SourceId(source);
        Draw { number, source }
    })
}

fn measured(c: impl Strategy<Value = f64>) -> impl Strategy<Value = Measured> {
    let terms = prop::collection::vec((draw(), c), 0..8);
    let value = (-1_000_000_000_i128..1_000_000_000, 1_i128..50);
    (value, terms).prop_map(|((n, d), terms)| Measured::new(Exact::new(n, d), &terms))
}

fn sources() -> impl Strategy<Value = Vec<Source>> {
    let source = (0.0..1e5_f64, prop_oneof![0.5..100.0, Just(f64::INFINITY)]);
    let source = source.prop_map(|(u, dof)| Source::normal(u).with_dof(dof));
    prop::collection::vec(source, SOURCES)
}

fn odd_source() -> impl Strategy<Value = Source> {
    (odd(), odd(), odd(), 0..9).prop_map(|(a, b, dof, kind)| {
        let source = match kind {
            0 => Source::normal(a),
            1 => Source::rectangular(a),
            2 => Source::triangular(a),
            3 => Source::arcsine(a),
            4 => Source::from_expanded(a, b),
            5 => Source::from_interval(a, b),
            6 => Source::estimated(Spread { s: a, dof: b }),
            7 => repeatability(Some(Spread { s: a, dof: b }), Instrument::Feeler),
            _ => return Source::normal(a).with_dof(dof_from_reliability(b)),
        };
        source.with_dof(dof)
    })
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * (a.abs() + b.abs()) + 1e-6
}

fn variance(measured: &Measured, sources: &[Source]) -> f64 {
    square(measured.combined(sources).u())
}

proptest! {
    #![proptest_config(config(256))]

    #[test]
    fn a_value_less_itself_is_certainly_nothing(a in measured(-9.0..9.0), of in sources()) {
        let nothing = &a - &a;
        prop_assert_eq!(nothing.value(), Exact::ZERO);
        prop_assert!(nothing.terms().is_empty());
        prop_assert_eq!(nothing.combined(&of), Combined::new(0.0, f64::INFINITY));
    }

    #[test]
    fn twice_a_value_is_twice_as_uncertain(a in measured(-9.0..9.0), of in sources()) {
        let twice = &a + &a;
        prop_assert_eq!(twice.value(), a.value() + a.value());
        let (one, two) = (a.combined(&of), twice.combined(&of));
        prop_assert!(near(two.u(), 2.0 * one.u()), "{:?} {:?}", one, two);
        prop_assert!(near(two.nu().min(1e9), one.nu().min(1e9)), "{:?} {:?}", one, two);
    }

    #[test]
    fn sum_and_difference_keep_the_parallelogram(
        a in measured(-9.0..9.0), b in measured(-9.0..9.0), of in sources()
    ) {
        let both = variance(&(&a + &b), &of) + variance(&(&a - &b), &of);
        let each = 2.0 * (variance(&a, &of) + variance(&b, &of));
        prop_assert!((both - each).abs() <= 1e-9 * each, "{both} {each}");
    }

    #[test]
    fn what_is_apart_adds_in_squares(u in prop::collection::vec(0.0..1e6_f64, 1..9)) {
        let terms: Vec<_> = (0..u.len()).map(|n| {
            let draw = Draw { number: 0, source: SourceId(n) };
            (draw, 1.0)
        }).collect();
        let sources: Vec<_> = u.iter().copied().map(Source::normal).collect();
        let sum: f64 = u.iter().map(|u| u * u).sum();
        let combined = Measured::new(Exact::ZERO, &terms).combined(&sources);
        prop_assert!(near(combined.u(), sum.sqrt()));
    }

    #[test]
    fn weights_give_the_same_value_with_and_without_uncertainty(
        sizes in prop::collection::vec(0..2_000_000_000_i64, 2..9), split in 1..8_usize
    ) {
        let sizes: Vec<_> = sizes.into_iter().map(Size::from_quanta).collect();
        let split = split.min(sizes.len() - 1);
        let weights = &Weights::mean_of(0..split) - &Weights::mean_of(split..sizes.len());
        let readings: Vec<_> = (0..).zip(&sizes).map(|(number, size)| {
            let shared = Draw { number: 0, source: SourceId(0) };
            let own = Draw { number, source: SourceId(1) };
            Measured::new((*size).into(), &[(shared, 1.0), (own, 1.0)])
        }).collect();
        let difference = Measured::weighted(&weights, &readings).unwrap();
        prop_assert_eq!(Some(difference.value()), weights.value(&sizes));
        // The weights sum to nothing, so what all share is gone to the last bit
        // of doubles.
        let shared = difference.combined(&[Source::normal(1e6), Source::normal(0.0)]);
        prop_assert!(shared.u() < 1e-9, "{shared:?}");
        let (near, far) = (split as f64, (sizes.len() - split) as f64);
        let own = difference.combined(&[Source::normal(0.0), Source::normal(1.0)]);
        let expected = (1.0 / near + 1.0 / far).sqrt();
        prop_assert!((own.u() / expected - 1.0).abs() < 1e-12, "{own:?} {expected}");
        prop_assert!(Measured::weighted(&weights, &readings[1..]).is_none());
    }

    #[test]
    fn the_order_of_gathering_does_not_matter(
        a in measured(-9.0..9.0), b in measured(-9.0..9.0), of in sources()
    ) {
        let (ab, ba) = (&a + &b, &b + &a);
        prop_assert_eq!(ab.value(), ba.value());
        prop_assert_eq!(ab.combined(&of), ba.combined(&of));
        let linear = Measured::linearised(ab.value(), &[(1.0, &a), (1.0, &b)]);
        prop_assert_eq!(linear.combined(&of), ab.combined(&of));
        prop_assert_eq!((-&a).combined(&of), a.combined(&of));
    }

    #[test]
    fn a_budget_is_complete_and_sorted(a in measured(-9.0..9.0), of in sources()) {
        let budget = Budget::of(&a, &of);
        prop_assert_eq!(budget.combined, a.combined(&of));
        let squares = budget.rows.iter().map(|row| square(row.contribution));
        prop_assert!(near(squares.sum::<f64>().sqrt(), budget.combined.u()));
        let shares: f64 = budget.rows.iter().map(|row| row.share).sum();
        let is_something = 0.0 < budget.combined.u();
        prop_assert!((shares - f64::from(u8::from(is_something))).abs() < 1e-9, "{shares}");
        let sorted = budget.rows.windows(2).all(|w| w[1].contribution <= w[0].contribution);
        prop_assert!(sorted, "{:?}", budget.rows);
    }

    /// Between the least of the parts' and all of them together.
    #[test]
    fn degrees_of_freedom_lie_between_their_bounds(a in measured(-9.0..9.0), of in sources()) {
        let budget = Budget::of(&a, &of);
        prop_assume!(0.0 < budget.combined.u());
        let dof = budget.rows.iter().map(|row| row.dof);
        let least = dof.clone().fold(f64::INFINITY, f64::min);
        let all: f64 = dof.sum();
        let nu = budget.combined.nu();
        prop_assert!(least * (1.0 - 1e-9) <= nu, "{nu} {least}");
        prop_assert!(nu <= all * (1.0 + 1e-9), "{nu} {all}");
    }

    #[test]
    fn nothing_gives_not_a_number(
        a in measured(odd()), b in measured(odd()), slope in odd(), weight in any::<i32>(),
        of in prop::collection::vec(odd_source(), 0..SOURCES),
        p in odd(), nu in odd(), u in odd(),
    ) {
        for source in &of {
            prop_assert!((0.0..=U_MAX).contains(&source.u()), "{source:?}");
            prop_assert!(DOF_MIN <= source.dof(), "{source:?}");
        }
        let values = [
            &a + &b,
            &a - &b,
            a.scaled(weight.into(), 3),
            a.scaled(1, weight.into()),
            Measured::linearised(a.value(), &[(slope, &a), (slope, &b)]),
        ];
        let p = Probability::new(p);
        prop_assert!((0.0..=1.0).contains(&p.value()));
        let mut combined = vec![Combined::new(u, nu)];
        for value in &values {
            let budget = Budget::of(value, &of);
            for row in &budget.rows {
                prop_assert!((0.0..=1.0 + 1e-9).contains(&row.share), "{row:?}");
                prop_assert!(row.contribution.is_finite() && row.sensitivity.is_finite());
            }
            combined.push(budget.combined);
        }
        for combined in combined {
            prop_assert!(combined.u().is_finite() && 0.0 <= combined.u(), "{combined:?}");
            prop_assert!(DOF_MIN <= combined.nu() && DOF_MIN <= combined.nu_of_table());
            prop_assert!(combined.factor(p).is_finite() && !combined.expanded(p).is_nan());
            let band = combined.guard_band(p);
            let most = Exact::new(SIZE_MAX.quanta().into(), 1);
            prop_assert!(band.abs() <= most, "{band:?}");
            let within = combined.within(a.value(), Some(b.value()), Some(Exact::ZERO));
            prop_assert!((0.0..=1.0).contains(&within.value()), "{within:?}");
        }
        prop_assert!(t_quantile(slope, nu).is_finite());
        prop_assert!((0.0..=1.0).contains(&t_cdf(slope, nu)));
    }

    #[test]
    fn pooling_odd_spreads_gives_a_spread_or_nothing(
        of in prop::collection::vec((odd(), odd()), 0..6)
    ) {
        let spreads = of.into_iter().map(|(s, dof)| Spread { s, dof });
        if let Some(spread) = pooled(spreads) {
            prop_assert!((0.0..=U_MAX).contains(&spread.s) && 0.0 < spread.dof, "{spread:?}");
        }
    }

    #[test]
    fn a_sample_does_not_hang_on_where_its_zero_is(
        values in prop::collection::vec(-1_000_i64..1_000, 2..30), far in -1_000_000_000..1_000_000_000_i64
    ) {
        let of = |shift: i64| values.iter().map(|v| Size::from_quanta(v + shift)).collect::<Sample>();
        let (near, away) = (of(0), of(far));
        prop_assert_eq!(near.variance(), away.variance());
        let shift = Exact::new(far.into(), 1);
        prop_assert_eq!(near.mean().map(|mean| mean + shift), away.mean());
    }
}
