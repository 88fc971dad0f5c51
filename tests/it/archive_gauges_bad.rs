//! Gauges, settings and deviations of a file that cannot be.

use expect_test::{Expect, expect};

use crate::archive_bad::check;
use crate::archive_gauges::changed;

fn refused(from: &str, to: &str, expect: &Expect) {
    check(&changed(from, to), expect);
}

#[test]
fn gauges_that_cannot_be() {
    let graduation = "\"graduation\":\"0.0001\"";
    let sentence = expect![
        "In gauges, 13@fe0d000000000017: A gauge needs a graduation, and a range that starts below its end."
    ];
    refused(graduation, "\"graduation\":\"0.0000\"", &sentence);
    let range = "\"least\":\"1\",\"greatest\":\"2\"";
    refused(range, "\"least\":\"2\",\"greatest\":\"1\"", &sentence);
    refused(range, "\"least\":\"2\",\"greatest\":\"2.0\"", &sentence);
    refused(
        graduation,
        "\"graduation\":\"0,0001\"",
        &expect!["In gauges, 13@fe0d000000000017: “graduation” is not written as a plain decimal."],
    );
    refused(
        graduation,
        "\"graduation\":0.0001",
        &expect!["In gauges, 13@fe0d000000000017: “graduation” is not a text."],
    );
    refused(
        range,
        "\"least\":\"1\"",
        &expect!["In gauges, 13@fe0d000000000017: “greatest” is missing."],
    );
    refused(
        range,
        "\"least\":\"1\",\"greatest\":\"1e400\"",
        &expect![
            "In gauges, 13@fe0d000000000017: “1e400” is not a number: digits and one point only."
        ],
    );
    refused(
        range,
        "\"least\":\"-1\",\"greatest\":\"2\"",
        &expect![
            "In gauges, 13@fe0d000000000017: “-1” is not a number: digits and one point only."
        ],
    );
    refused(
        "\"0.0001\",\"unit\":\"in\"",
        "\"0.0001\",\"unit\":\"thou\"",
        &expect!["In gauges, 13@fe0d000000000017: “unit” is neither “mm” nor “in”."],
    );
    refused(
        "\"away\":true",
        "\"away\":1",
        &expect!["In gauges, 14@fe0d000000000017: “away” is neither true nor false."],
    );
}

#[test]
fn settings_that_cannot_be() {
    let size = "\"size\":\"3.0000\"";
    refused(
        size,
        "\"size\":\"0.0000\"",
        &expect!["In settings, 25@fe0d000000000017: “size” is zero, which is no size."],
    );
    refused(
        size,
        "\"size\":\"NaN\"",
        &expect![
            "In settings, 25@fe0d000000000017: “NaN” is not a number: digits and one point only."
        ],
    );
    refused(
        size,
        "\"length\":\"3.0000\"",
        &expect!["In settings, 25@fe0d000000000017: “size” is missing."],
    );
    let shows = "\"shows_deviation\":\"-0.0002\"";
    refused(
        shows,
        "\"seen\":\"-0.0002\"",
        &expect!["In settings, 25@fe0d000000000017: “shows” is missing."],
    );
    refused(
        shows,
        "\"shows_deviation\":\"+0.0002\"",
        &expect![
            "In settings, 25@fe0d000000000017: “shows_deviation” is not written as a plain decimal."
        ],
    );
    refused(
        "\"shows\":\"0.9999\"",
        "\"shows\":\"-0.9999\"",
        &expect![
            "In settings, 24@fe0d000000000017: “-0.9999” is not a number: digits and one point only."
        ],
    );
    let sense = "\"sense\":\"plus_is_smaller\"";
    refused(
        sense,
        "\"sense\":-1",
        &expect!["In settings, 25@fe0d000000000017: “sense” is not a text."],
    );
    refused(
        "\"feature\":\"piston/2\",",
        "",
        &expect!["In settings, 26@fe0d000000000017: “feature” is missing."],
    );
    refused(
        "\"note\":\"a ring\"",
        &format!("\"note\":\"{}\"", "x".repeat(201)),
        &expect!["In settings, 27@fe0d000000000017: “note” is too long."],
    );
    refused(
        "\"25@fe0d000000000017\":{\"gauge\":\"15@fe0d000000000017\"",
        "\"25@fe0d000000000017\":{\"gauge\":\"the good one\"",
        &expect!["In settings, 25@fe0d000000000017: “gauge” is not an id."],
    );
}

#[test]
fn deviations_that_cannot_be() {
    let deviation = "\"deviation\":\"-0.0012\"";
    let plain =
        expect!["In readings, 30@fe0d000000000017: “deviation” is not written as a plain decimal."];
    for text in ["+0.0012", "−0.0012", " -0.0012", "-0,0012", "-0.0000"] {
        refused(deviation, &format!("\"deviation\":\"{text}\""), &plain);
    }
    for (text, sentence) in [
        (
            "NaN",
            expect![
                "In readings, 30@fe0d000000000017: “NaN” is not a number: digits and one point only."
            ],
        ),
        (
            "-1e400",
            expect![
                "In readings, 30@fe0d000000000017: “1e400” is not a number: digits and one point only."
            ],
        ),
        (
            "--0.0012",
            expect![
                "In readings, 30@fe0d000000000017: “-0.0012” is not a number: digits and one point only."
            ],
        ),
        (
            "-1.234,5",
            expect![
                "In readings, 30@fe0d000000000017: More than one point or comma: type the number without thousands marks."
            ],
        ),
        (
            "-0.0000012",
            expect![
                "In readings, 30@fe0d000000000017: At most 6 decimals can be kept: leave off the rest."
            ],
        ),
        (
            "-394",
            expect![
                "In readings, 30@fe0d000000000017: That is larger than 10 m: is the point in its place?"
            ],
        ),
        (
            "",
            expect![
                "In readings, 30@fe0d000000000017: Nothing was typed: type a number, as 49.98."
            ],
        ),
    ] {
        refused(deviation, &format!("\"deviation\":\"{text}\""), &sentence);
    }
    for other in ["-0.0012", "null", "[]"] {
        refused(
            deviation,
            &format!("\"deviation\":{other}"),
            &expect!["In readings, 30@fe0d000000000017: “deviation” is not a text."],
        );
    }
    refused(
        "\"deviation\":\"-0.0012\",\"unit\":\"in\"",
        "\"deviation\":\"-0.0012\",\"unit\":\"graduations\"",
        &expect!["In readings, 30@fe0d000000000017: “unit” is neither “mm” nor “in”."],
    );
}

#[test]
fn set_up_of_gauges_and_sizes_that_cannot_be() {
    let nominal = "\"value\":\"3.0000\",\"unit\":\"in\"";
    refused(
        nominal,
        "\"value\":\"0\",\"unit\":\"in\"",
        &expect!["In set_up, nominal/bore: Zero or less is no size: type one above zero."],
    );
    refused(
        nominal,
        "\"value\":\"3.0000\"",
        &expect!["In set_up, nominal/bore: “unit” is missing."],
    );
    refused(
        "\"gauge/bore\":{\"value\":\"15@",
        "\"gauge/bore\":{\"value\":\"15 of ",
        &expect!["In set_up, gauge/bore: “value” is not an id."],
    );
    refused(
        "\"value\":\"boosted\"",
        "\"value\":true",
        &expect!["In set_up, use: “value” is not a text."],
    );
}
