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
    // What there is to do and why has tests of its own.
    for key in ["plan", "causes", "clashes", "aftermath"] {
        report.as_object_mut().unwrap().remove(key).unwrap();
    }
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
              "impossible": null,
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
              "sure": {
                "at_most": null,
                "budget": [
                  {
                    "contribution": "0.0073323",
                    "dof": null,
                    "sensitivity": 1.0,
                    "share": 0.7796130744121513,
                    "source": "as_found",
                    "u": 73323.48418708247
                  },
                  {
                    "contribution": "0.0024698",
                    "dof": null,
                    "sensitivity": 7129.708,
                    "share": 0.08845403720088015,
                    "source": "temperature",
                    "u": 3.464101615137755
                  },
                  {
                    "contribution": "0.0022446",
                    "dof": 8.0,
                    "sensitivity": 0.5773502691896257,
                    "share": 0.07306096977441005,
                    "source": "repeatability",
                    "u": 38878.26541765863
                  },
                  {
                    "contribution": "0.0019399",
                    "dof": null,
                    "sensitivity": 16799.88666666667,
                    "share": 0.054568795428237844,
                    "source": "part_temperature",
                    "u": 1.1547005383792517
                  },
                  {
                    "contribution": "0.0004319",
                    "dof": null,
                    "sensitivity": 2992415249.061336,
                    "share": 0.002705175264140286,
                    "source": "part_expansion",
                    "u": 1.4433756729740647e-6
                  },
                  {
                    "contribution": "0.0002887",
                    "dof": null,
                    "sensitivity": 1.0,
                    "share": 0.0012084026821441987,
                    "source": "resolution",
                    "u": 2886.751345948129
                  },
                  {
                    "contribution": "0.0001639",
                    "dof": null,
                    "sensitivity": 2838854367.6161575,
                    "share": 0.00038954523803620087,
                    "source": "gauge_expansion",
                    "u": 5.773502691896258e-7
                  }
                ],
                "guard_band": "0.0136679",
                "nu": 1498.7152345021436,
                "probability_inside": 0.9999999994396781,
                "settle": null,
                "u": "0.0083043",
                "value_at_20_c": "81.95067"
              },
              "two_ways": null,
              "unit": "mm",
              "value": "81.951",
              "verdict": "within_service_limit",
              "which": "mean"
            },
            {
              "axis_degrees": null,
              "beyond_by": null,
              "comparison": "not_measured",
              "exact": false,
              "feature": "piston/1",
              "guide": null,
              "impossible": null,
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
              "sure": null,
              "two_ways": null,
              "unit": "mm",
              "value": null,
              "verdict": null,
              "which": "smallest"
            }
          ],
          "format": "fenderbench-assessment",
          "kept": [],
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
          "rule": "one-sided-95",
          "session": "000000000000f00d",
          "slips": [],
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
