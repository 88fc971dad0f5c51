//! Limits and readings of a file that cannot be.

use expect_test::expect;

use crate::archive_bad::{changed, check, check_changed};

#[test]
fn limits_that_cannot_be() {
    let low = "\"value\":\"82.000\",\"unit\":\"mm\"";
    check_changed(
        low,
        "\"value\":\"83.000\",\"unit\":\"mm\"",
        &expect![
            "In limits: Limits for bore, size: the service limit lies inside the limits as made, so a new part would be worn out: look them up again."
        ],
    );
    let crossed = changed(low, "\"value\":\"83.000\",\"unit\":\"mm\"");
    let crossed = crossed.replacen("bore/size/service", "bore/size/new_high", 1);
    check(
        &crossed,
        &expect![[
            "In limits: Limits for bore, size: the low limit is above the high limit: look both up again, and their unit."
        ]],
    );
    check_changed(
        low,
        "\"value\":\"0.000\",\"unit\":\"mm\"",
        &expect![[
            "In limits: Limits for bore, size: a limit of zero cannot be: leave blank what the manual does not give."
        ]],
    );
    check_changed(
        low,
        "\"value\":\"82.000\",\"unit\":\"cm\"",
        &expect![["In limits, bore/size/new_low: “unit” is neither “mm” nor “in”."]],
    );
    check_changed(
        low,
        "\"value\":\"82.000\"",
        &expect![["In limits, bore/size/new_low: “unit” is missing."]],
    );
    check_changed(
        low,
        "\"value\":82.000,\"unit\":\"mm\"",
        &expect![["In limits, bore/size/new_low: “value” is not a text."]],
    );
    check_changed(
        low,
        "\"value\":\"NaN\",\"unit\":\"mm\"",
        &expect![[
            "In limits, bore/size/new_low: “NaN” is not a number: digits and one point only."
        ]],
    );
    check_changed(
        low,
        "\"value\":\"1e400\",\"unit\":\"mm\"",
        &expect![[
            "In limits, bore/size/new_low: “1e400” is not a number: digits and one point only."
        ]],
    );
    check_changed(
        low,
        "\"value\":\"-82.0\",\"unit\":\"mm\"",
        &expect![[
            "In limits, bore/size/new_low: “-82.0” is not a number: digits and one point only."
        ]],
    );
    check_changed(
        low,
        "\"value\":\"82,000\",\"unit\":\"mm\"",
        &expect![["In limits, bore/size/new_low: “value” is not written as a plain decimal."]],
    );
    check_changed(
        low,
        "\"value\":\" 82.000\",\"unit\":\"mm\"",
        &expect![["In limits, bore/size/new_low: “value” is not written as a plain decimal."]],
    );
}

#[test]
fn readings_that_cannot_be() {
    let value = "\"value\":\"82.031\"";
    check_changed(
        value,
        "\"value\":\"0.000\"",
        &expect![["In readings, 11@a1: “value” is zero, which is no size."]],
    );
    check_changed(
        value,
        "\"value\":\"20000\"",
        &expect![["In readings, 11@a1: That is larger than 10 m: is the point in its place?"]],
    );
    check_changed(
        value,
        "\"value\":\"82.0310001\"",
        &expect![["In readings, 11@a1: At most 6 decimals can be kept: leave off the rest."]],
    );
    check_changed(
        value,
        "\"value\":null",
        &expect![["In readings, 11@a1: “value” is not a text."]],
    );
    check_changed(
        value,
        "\"val\":\"82.031\"",
        &expect![["In readings, 11@a1: “value” is missing."]],
    );
    check_changed(
        "\"strikes\":0",
        "\"strikes\":4294967296",
        &expect![["In readings, 11@a1: “strikes” is too large."]],
    );
    check_changed(
        "\"strikes\":0",
        "\"strikes\":-1",
        &expect![["In readings, 11@a1: “strikes” is not a whole number."]],
    );
    check_changed(
        "\"strikes\":0",
        "\"strikes\":0,\"kept\":\"yes\"",
        &expect![["In readings, 11@a1: “kept” is neither true nor false."]],
    );
    check_changed(
        "\"taken\":\"",
        &format!("\"taken\":\"{}", "x".repeat(200)),
        &expect![["In readings, 11@a1: “taken” is too long."]],
    );
    check_changed(
        "\"taken\":\"",
        "\"taken\":\"\\ud800",
        &expect![["In readings, 11@a1: “taken” is not a text."]],
    );
}
