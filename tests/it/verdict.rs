//! Comparison with limits as the numbers stand.

use expect_test::{Expect, expect};
use fenderbench::quantity::{Exact, show_signed};
use fenderbench::verdict::{Band, Comparison, Limits, Wear, check, compare};
use proptest::prelude::*;

use crate::golden::golden;
use crate::make::{MM, exact, size};

fn words(comparison: Comparison) -> String {
    let signed = |by| show_signed(by, MM, 3).text;
    match comparison {
        Comparison::InsideNew => "inside new".to_owned(),
        Comparison::InsideService => "inside service".to_owned(),
        Comparison::BeyondLimit(by) => format!("beyond limit {}", signed(by)),
        Comparison::OutsideNew(by) => format!("outside new {}", signed(by)),
        Comparison::NoLimit => "no limit".to_owned(),
    }
}

#[test]
fn compares_as_worked_by_hand() {
    for row in golden!("comparisons.csv") {
        let limit = |column| match row.get(column) {
            "" => None,
            text => Some(exact(&format!("{text} mm"))),
        };
        let limits = Limits {
            new: Band::new(limit("new_low"), limit("new_high")),
            service: Band::new(limit("service_low"), limit("service_high")),
        };
        let value = limit("value").unwrap();
        let found = words(compare(value, &limits));
        assert_eq!(found, row.get("comparison"), "{value:?}: {}", row.place());
    }
}

#[test]
fn an_inch_limit_and_a_millimetre_value_compare_exactly() {
    // 1.9685 in is 49.9999 mm.
    let limits = Limits {
        new: Band::new(Some(exact("1.9680 in")), Some(exact("1.9685 in"))),
        service: Band::default(),
    };
    assert_eq!(compare(exact("49.9999 mm"), &limits), Comparison::InsideNew);
    let over = Comparison::OutsideNew(exact("0.0001 mm"));
    assert_eq!(compare(exact("50.0000 mm"), &limits), over);
}

#[test]
fn a_shape_counts_either_way() {
    let limits = Limits {
        new: Band::either_way(Some(exact("0.010 mm"))),
        service: Band::either_way(Some(exact("0.050 mm"))),
    };
    for (value, expected) in [
        ("0.010 mm", "inside new"),
        ("-0.010 mm", "inside new"),
        ("0.011 mm", "inside service"),
        ("-0.011 mm", "inside service"),
        ("-0.050 mm", "inside service"),
        ("-0.051 mm", "beyond limit -0.001"),
        ("0.051 mm", "beyond limit +0.001"),
    ] {
        assert_eq!(words(compare(exact(value), &limits)), expected, "{value}");
    }
}

/// Low, high and service limit, and on which side the part wears.
fn refusal(limits: [&str; 3], wear: Wear, expect: &Expect) {
    let [low, high, service] = limits.map(|text| match text {
        "" => None,
        text => Some(size(&format!("{text} mm"))),
    });
    let said = check(low, high, service, wear).map_or_else(|why| why.to_string(), |()| "ok".into());
    expect.assert_eq(&said);
}

#[test]
fn limits_that_cannot_stand_are_refused() {
    use Wear::{Larger, Smaller};
    let ok = expect![["ok"]];
    for limits in [
        ["", "", ""],
        ["82.000", "82.020", "82.100"],
        ["82.000", "82.000", "82.000"],
        ["82.000", "", "82.100"],
        ["", "82.020", ""],
        ["", "", "82.100"],
    ] {
        refusal(limits, Larger, &ok);
    }
    for limits in [
        ["49.982", "50.000", "49.960"],
        ["49.982", "50.000", "49.982"],
        ["49.982", "", "49.960"],
        ["", "50.000", "49.960"],
    ] {
        refusal(limits, Smaller, &ok);
    }
    let crossed =
        expect![["the low limit is above the high limit: look both up again, and their unit"]];
    refusal(["82.020", "82.000", ""], Larger, &crossed);
    refusal(["82.020", "82.000", "82.100"], Smaller, &crossed);
    let worn = expect![[
        "the service limit lies inside the limits as made, so a new part would be worn out: look them up again"
    ]];
    refusal(["82.000", "82.020", "82.019"], Larger, &worn);
    refusal(["82.000", "", "81.999"], Larger, &worn);
    refusal(["49.982", "50.000", "49.983"], Smaller, &worn);
    refusal(["", "50.000", "50.001"], Smaller, &worn);
    let zero = expect![["a limit of zero cannot be: leave blank what the manual does not give"]];
    refusal(["0", "82.000", ""], Larger, &zero);
    refusal(["", "0.000", ""], Larger, &zero);
    refusal(["", "", "0"], Smaller, &zero);
}

fn value() -> impl Strategy<Value = Exact> {
    (-60_i128..60, 1_i128..4).prop_map(|(n, d)| Exact::new(n, d))
}

fn band() -> impl Strategy<Value = Band> {
    let end = || prop::option::of(value());
    (end(), end()).prop_map(|(a, b)| match (a, b) {
        (Some(a), Some(b)) => Band::new(Some(a.min(b)), Some(a.max(b))),
        (a, b) => Band::new(a, b),
    })
}

proptest! {
    #![proptest_config(crate::generators::config(1024))]

    #[test]
    fn excess_and_margin_agree(band in band(), value in value()) {
        let excess = band.excess(value);
        let margin = band.margin(value);
        prop_assert_eq!(margin.is_none(), band.is_open());
        let inside = margin.is_none_or(|margin| !margin.is_negative());
        prop_assert_eq!(excess.is_none(), inside);
        if let Some(by) = excess {
            prop_assert_eq!(margin, Some(-by.abs()));
            prop_assert_eq!(band.excess(value - by), None);
        }
    }

    #[test]
    fn nothing_beyond_the_service_limit_passes(
        new in band(),
        service in band(),
        value in value(),
    ) {
        let comparison = compare(value, &Limits { new, service });
        let beyond = matches!(comparison, Comparison::BeyondLimit(_));
        prop_assert_eq!(beyond, service.excess(value).is_some());
        let open = new.is_open() && service.is_open();
        prop_assert_eq!(comparison == Comparison::NoLimit, open);
    }
}
