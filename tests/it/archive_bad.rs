//! Texts that are no session, each with its sentence.

use expect_test::{Expect, expect};
use fenderbench::archive::{BYTES_MAX, DEPTH_MAX, import, write};

use crate::archive::sample;
use crate::make::{DESK, PHONE};

pub fn check(text: &str, expect: &Expect) {
    match import(text) {
        Ok(incoming) => panic!("taken in: {:?}", incoming.session),
        Err(why) => expect.assert_eq(&why.to_string()),
    }
}

/// The sample with one piece of text changed and no check sum.
pub fn changed(from: &str, to: &str) -> String {
    let text = write(&sample(), PHONE);
    assert!(text.contains(from), "{from}\n{text}");
    text.replacen("\"check\":", "\"old_check\":", 1)
        .replacen(from, to, 1)
}

pub fn check_changed(from: &str, to: &str, expect: &Expect) {
    check(&changed(from, to), expect);
}

#[test]
fn other_files() {
    check(
        "",
        &expect![["The file is cut off: it ends at line 1, column 0."]],
    );
    check(
        "PK\u{3}\u{4}",
        &expect![["The file is damaged at line 1, column 1: that is not JSON."]],
    );
    check("{}", &expect![["This is not a Fenderbench session."]]);
    check("[]", &expect!["In the file: there is no object."]);
    check("7", &expect!["In the file: there is no object."]);
    check(
        r#"{"format":"fenderbench-assessment","version":1}"#,
        &expect![["This is not a Fenderbench session."]],
    );
    check(
        r#"{"format":7}"#,
        &expect![["This is not a Fenderbench session."]],
    );
    check(
        r#"{"format":"fenderbench-session"}"#,
        &expect![["In the file: “version” is missing."]],
    );
    check(
        r#"{"format":"fenderbench-session","version":1}"#,
        &expect![["In the file: “app” is missing."]],
    );
    check(
        r#"{"format":"fenderbench-session","version":1,"app":"0","replica":"1"}"#,
        &expect![["In the file: “session” is missing."]],
    );
    check(
        r#"{"format":"fenderbench-session","version":1,"app":"0","replica":"1","session":{}}"#,
        &expect![["In session: “id” is missing."]],
    );
    check(
        "{\n\"format\":\"fenderbench-session\",\n",
        &expect![["The file is cut off: it ends at line 3, column 0."]],
    );
    check(
        "{\"format\":\"fenderbench-session\",}",
        &expect![["The file is damaged at line 1, column 33: that is not JSON."]],
    );
}

#[test]
fn versions() {
    check_changed(
        "\"version\":1",
        "\"version\":2",
        &expect![[
            "The file has format version 2; this program reads up to 1. Update it and try again."
        ]],
    );
    check_changed(
        "\"version\":1",
        "\"version\":4000000000",
        &expect![[
            "The file has format version 4000000000; this program reads up to 1. Update it and try again."
        ]],
    );
    // A newer version may differ in everything else.
    check(
        r#"{"format":"fenderbench-session","version":2,"session":[]}"#,
        &expect![[
            "The file has format version 2; this program reads up to 1. Update it and try again."
        ]],
    );
    check_changed(
        "\"version\":1",
        "\"version\":-1",
        &expect![["In the file: “version” is not a whole number."]],
    );
    check_changed(
        "\"version\":1",
        "\"version\":1.5",
        &expect![["In the file: “version” is not a whole number."]],
    );
    check_changed(
        "\"version\":1",
        "\"version\":1e400",
        &expect![["In the file: “version” is not a whole number."]],
    );
    check_changed(
        "\"version\":1",
        "\"version\":\"1\"",
        &expect![["In the file: “version” is not a whole number."]],
    );
}

#[test]
fn sizes_and_depths() {
    let large = "x".repeat(BYTES_MAX + 1);
    let most = BYTES_MAX / 1024;
    let why = import(&large).unwrap_err().to_string();
    assert_eq!(
        why,
        format!("The file has {most} kB; a session has at most {most} kB.")
    );
    let deep = format!("{}{}", "[".repeat(100_000), "]".repeat(100_000));
    check(
        &deep,
        &expect![["The file is nested deeper than 16 levels."]],
    );
    let open = "{\"a\":".repeat(100_000);
    check(
        &open,
        &expect![["The file is nested deeper than 16 levels."]],
    );
    let inside = |levels: usize| {
        let deep = format!("{}{}", "[".repeat(levels), "]".repeat(levels));
        changed("\"session\":", &format!("\"deep\":{deep},\"session\":"))
    };
    check(
        &inside(DEPTH_MAX),
        &expect![["The file is nested deeper than 16 levels."]],
    );
    assert!(import(&inside(DEPTH_MAX - 1)).is_ok());
    // Brackets in texts are no depth.
    let brackets = "[{\\\"".repeat(40);
    assert!(import(&changed("Straight four", &brackets)).is_ok());
    let long = format!("\"long\":\"{}\",\"session\":", "x".repeat(5000));
    check_changed(
        "\"session\":",
        &long,
        &expect![["In the file: what this version does not know is longer than 4096 bytes."]],
    );
}

#[test]
fn ids() {
    let id = sample().id.as_str().to_owned();
    check_changed(
        &id,
        &id.to_uppercase(),
        &expect![["In session: “id” is not 16 hex digits."]],
    );
    check_changed(
        &id,
        "../../etc/passwd",
        &expect![["In session: “id” is not 16 hex digits."]],
    );
    let text = changed("\"gauges\":{", "\"gauges\":{\"__proto__\":{},");
    check(
        &text,
        &expect![["In gauges, __proto__: “__proto__” is not an id."]],
    );
    check_changed(
        "\"at\":\"1@a1\"",
        "\"at\":\"01@a1\"",
        &expect![["In set_up, name: “at” is not an id."]],
    );
    check_changed(
        "\"at\":\"1@a1\"",
        "\"at\":1",
        &expect![["In set_up, name: “at” is not a text."]],
    );
    check_changed(
        "\"at\":\"1@a1\"",
        "\"at\":\"1@a1\",\"at\":\"2@a1\"",
        &expect![["In set_up, name: “at” appears twice."]],
    );
}

#[test]
fn duplicate_readings() {
    let text = changed("", "");
    let line = text
        .lines()
        .find(|line| line.contains("bore/1/whole/top/0"))
        .unwrap();
    let twice = text.replacen(line, &format!("{line}\n{line}"), 1);
    check(&twice, &expect![["In readings: “11@a1” appears twice."]]);
}

#[test]
fn set_up_that_cannot_be() {
    check_changed(
        "\"cylinders\":{\"value\":2",
        "\"cylinders\":{\"value\":200",
        &expect![["In set_up, cylinders: The number of cylinders must be from 1 to 16."]],
    );
    check_changed(
        "\"cylinders\":{\"value\":2",
        "\"cylinders\":{\"value\":2000",
        &expect![["In set_up, cylinders: “value” is too large."]],
    );
    check_changed(
        "\"cylinders\":{\"value\":2",
        "\"cylinders\":{\"value\":-2",
        &expect![["In set_up, cylinders: “value” is not a whole number."]],
    );
    check_changed(
        "\"cylinders\":{\"value\":2",
        "\"cylinders\":{\"value\":1e400",
        &expect![["In set_up, cylinders: “value” is not a whole number."]],
    );
    check_changed(
        "\"cylinders\":{\"value\":2",
        "\"cylinders\":{\"value\":NaN",
        &expect!["The file is damaged at line 12, column 22: that is not JSON."],
    );
    check_changed(
        "Straight four",
        &"x".repeat(201),
        &expect![["In set_up, name: At most 200 characters can be kept here: shorten it."]],
    );
}

#[test]
fn readings_without_their_gauge() {
    let text = changed("", "");
    let gauge = sample().gauges.keys().next_back().unwrap().to_string();
    let telescoping = format!("\"gauge\":\"{gauge}\",\"setting\"");
    let without = text.replacen(&telescoping, "\"gauge\":\"77@b2\",\"setting\"", 1);
    check(
        &without,
        &expect![["In readings, 11@a1: the gauge 77@b2 is not in the file."]],
    );
    let setting = sample().readings.values().next().unwrap().setting;
    let named = format!("\"setting\":\"{setting}\"");
    let without = text.replacen(&named, "\"setting\":\"77@b2\"", 1);
    check(
        &without,
        &expect![["In readings, 11@a1: the setting 77@b2 is not in the file."]],
    );
}

#[test]
fn the_gauge_of_a_reading_may_be_of_an_unknown_kind() {
    let text = changed("telescoping_gauge", "air_gauge");
    let incoming = import(&text).unwrap();
    assert_eq!(incoming.session.readings, sample().readings);
    assert_eq!(incoming.session.gauges.len(), 1);
    // It is handed on as it came.
    let again = import(&write(&incoming.session, DESK)).unwrap();
    assert_eq!(again.session, incoming.session);
}

#[test]
fn nasty_names_are_kept_as_unknown() {
    let text = changed(
        "\"session\":",
        "\"__proto__\":{\"polluted\":true},\"session\":",
    );
    let session = import(&text).unwrap().session;
    let key = (String::new(), "__proto__".to_owned());
    assert_eq!(session.extras[&key], "{\"polluted\":true}");
    assert_eq!(import(&write(&session, PHONE)).unwrap().session, session);
}

#[test]
fn a_change_by_hand_is_told() {
    let text = write(&sample(), PHONE);
    assert!(import(&text).unwrap().untouched);
    let by_hand = import(&text.replacen("82.031", "82.030", 1)).unwrap();
    assert!(!by_hand.untouched);
    assert_eq!(by_hand.session.readings.len(), 3);
}
