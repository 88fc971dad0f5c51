//! Assessment → JSON for other programs.

use expect_test::expect;
use fenderbench::assess::assess;
use fenderbench::report::json;
use fenderbench::session::{Field, Kind};

use crate::assess::worked_example;
use crate::make::{INCH, limit, measured};

#[test]
fn keys_are_stable() {
    let session = measured(
        vec![
            Field::Name("Single".to_owned()),
            Field::Cylinders(1),
            Field::Mains(1),
            limit("piston/size/service", "3.2244 in"),
            Field::LimitSource(Kind::Piston, "the manual".to_owned()),
        ],
        &[
            ("piston/1/skirt/gauge_point/0", "81.950 mm"),
            ("piston/1/skirt/gauge_point/0", "81.951 mm"),
            ("piston/1/skirt/gauge_point/0", "81.951 mm"),
            ("piston/2/skirt/gauge_point/0", "81.950 mm"),
        ],
    );
    let text = json(&session, &assess(&session)).unwrap();
    let mut report: serde_json::Value = serde_json::from_str(&text).unwrap();
    let findings = report["findings"].as_array_mut().unwrap();
    findings.retain(|row| row["feature"] == "piston/1" && row["which"] != "largest");
    report["app"] = "any".into();
    // Sorted by key, so that only the keys and their values count.
    let text = serde_json::to_string_pretty(&report).unwrap();
    expect![[r#"
        {
          "app": "any",
          "compared": "as read, without uncertainty",
          "findings": [
            {
              "axis_degrees": null,
              "beyond_by": null,
              "comparison": "inside_service_limit",
              "exact": false,
              "feature": "piston/1",
              "guide": null,
              "limits": {
                "new_high": null,
                "new_low": null,
                "service": {
                  "unit": "in",
                  "value": "3.2244"
                },
                "source": "the manual"
              },
              "margin": "0.051",
              "missing": [],
              "quantity": "size",
              "readings": [
                "10@a1",
                "11@a1",
                "12@a1"
              ],
              "ring_gap_change": null,
              "unit": "mm",
              "value": "81.951",
              "which": "mean"
            },
            {
              "axis_degrees": null,
              "beyond_by": null,
              "comparison": "not_measured",
              "exact": false,
              "feature": "piston/1",
              "guide": null,
              "limits": {
                "new_high": null,
                "new_low": null,
                "service": null,
                "source": "the manual"
              },
              "margin": null,
              "missing": [
                "bore/1/whole/top/0",
                "bore/1/whole/bottom/0"
              ],
              "quantity": "clearance",
              "readings": [],
              "ring_gap_change": null,
              "unit": "mm",
              "value": null,
              "which": "smallest"
            }
          ],
          "format": "fenderbench-assessment",
          "name": "Single",
          "outside_layout": [
            "13@a1"
          ],
          "repeats": [
            {
              "count": 3,
              "spread": "0.001",
              "station": "piston/1/skirt/gauge_point/0",
              "unit": "mm"
            }
          ],
          "session": "000000000000f00d",
          "unit": "mm",
          "version": 1
        }"#]]
    .assert_eq(&text);
}

#[test]
fn every_finding_is_told_once() {
    let session = worked_example();
    let assessment = assess(&session);
    let text = json(&session, &assessment).unwrap();
    let report: serde_json::Value = serde_json::from_str(&text).unwrap();
    let rows = report["findings"].as_array().unwrap();
    assert_eq!(rows.len(), assessment.findings.len());
    let mut keys = std::collections::BTreeSet::new();
    for row in rows {
        let key = ["feature", "quantity", "which"].map(|key| row[key].to_string());
        assert!(keys.insert(key.clone()), "{key:?} twice");
        assert_eq!(row["value"].is_null(), row["comparison"] == "not_measured");
        assert_eq!(
            row["value"].is_null(),
            row["readings"].as_array().unwrap().is_empty()
        );
    }
}

#[test]
fn a_rounded_value_says_so() {
    let mut fields = vec![Field::DisplayUnit(INCH)];
    fields.push(Field::Cylinders(1));
    let session = measured(fields, &[("piston/1/skirt/gauge_point/0", "81.950 mm")]);
    let text = json(&session, &assess(&session)).unwrap();
    let report: serde_json::Value = serde_json::from_str(&text).unwrap();
    let rows = report["findings"].as_array().unwrap();
    let row = rows.iter().find(|row| !row["value"].is_null()).unwrap();
    // 81.950 / 25.4 is 3.22637...
    assert_eq!(row["value"], "3.2264");
    assert_eq!(row["exact"], false);
    assert_eq!(row["unit"], "in");
}

#[test]
fn a_guide_names_its_rules() {
    let readings = [
        ("main_journal/1/whole/first/0", "50.000 mm"),
        ("main_journal/1/whole/first/90", "49.980 mm"),
    ];
    let session = measured(vec![Field::Cylinders(1)], &readings);
    let text = json(&session, &assess(&session)).unwrap();
    let report: serde_json::Value = serde_json::from_str(&text).unwrap();
    let rows = report["findings"].as_array().unwrap();
    let row = |which| {
        let mut rows = rows.iter();
        let found = rows.find(|row| row["feature"] == "main_journal/1" && row["which"] == which);
        found.unwrap()
    };
    assert_eq!(row("mean")["guide"], serde_json::Value::Null);
    let guide = serde_json::to_string_pretty(&row("at/first/0")["guide"]).unwrap();
    expect![[r#"
        {
          "rules": [
            {
              "high": "0.0127",
              "low": "0.000",
              "source": "common practice",
              "text": "small car engines",
              "unit": "mm"
            }
          ],
          "word": "outside_loosest_rule"
        }"#]]
    .assert_eq(&guide);
}
