//! Plan and causes → JSON for other programs.

use expect_test::expect;
use fenderbench::assess::assess;
use fenderbench::report::json;
use fenderbench::session::{Field, Session};
use serde_json::Value;

use crate::make::{edited, sample, session};

fn report(session: &Session) -> Value {
    let text = json(session, &assess(session)).unwrap();
    serde_json::from_str(&text).unwrap()
}

fn pretty(value: &Value) -> String {
    serde_json::to_string_pretty(value).unwrap()
}

#[test]
fn keys_and_words_of_a_way_are_stable() {
    let mut report = report(&sample("quarry-v-twin"));
    let hope = report["plan"]["hope"].as_object_mut().unwrap();
    for (list, few) in [("items", 2), ("recheck", 3), ("clearances", 3)] {
        hope[list].as_array_mut().unwrap().truncate(few);
    }
    expect![[r#"
        {
          "clearances": [
            {
              "guard": null,
              "made": true,
              "part": "bore/1",
              "value": "0.0032"
            },
            {
              "guard": null,
              "made": true,
              "part": "bore/2",
              "value": "0.0032"
            },
            {
              "guard": "0.0005",
              "made": false,
              "part": "main_housing/1",
              "value": "0.0022"
            }
          ],
          "items": [
            {
              "count": 1,
              "item": "wash",
              "price": "60.00"
            },
            {
              "count": 1,
              "item": "crack_test",
              "price": "45.00"
            }
          ],
          "recheck": [
            "ring_set",
            "gasket_bore",
            "wall"
          ],
          "rests_on": [
            {
              "ask": "clean_up",
              "part": "rod_journal/1",
              "reason": "axis"
            },
            {
              "ask": "soundness",
              "part": "big_end/2",
              "reason": "unknown"
            }
          ],
          "total": "864.00",
          "works": {
            "bores": "oversize 0.020 in",
            "mains": {
              "halves": [
                [
                  "standard",
                  "standard"
                ],
                [
                  "standard",
                  "standard"
                ]
              ],
              "housings": [
                "keep",
                "keep"
              ],
              "journals": "polish",
              "shells": "size standard"
            },
            "pistons": "new 0.020 in",
            "rods": {
              "halves": [],
              "housings": [
                "keep",
                "machine"
              ],
              "journals": "grind 0.010 in",
              "shells": "to_fit"
            },
            "sleeve": null
          }
        }"#]]
    .assert_eq(&pretty(&report["plan"]["hope"]));
}

#[test]
fn keys_and_words_around_the_ways_are_stable() {
    let mut report = report(&sample("quarry-v-twin"));
    let plan = report["plan"].as_object_mut().unwrap();
    for way in ["way", "hope", "runner_up"] {
        plan.remove(way).unwrap();
    }
    for (list, few) in [("choices", 2), ("parts", 3)] {
        plan[list].as_array_mut().unwrap().truncate(few);
    }
    for next in ["if_well", "if_badly"] {
        let works = plan["next"].as_object_mut().unwrap().remove(next);
        assert!(works.unwrap()["rods"]["journals"].is_string());
    }
    let undersizes = plan.remove("undersizes").unwrap();
    assert_eq!(undersizes["main_journals"]["plan"], "0.0100");
    assert_eq!(undersizes["rod_journals"]["sweep"], "0.0100");
    let sizes = plan["oversizes"]["sizes"].as_array_mut().unwrap();
    sizes.truncate(2);
    expect![[r#"
        {
          "basis": "price",
          "blanks": [],
          "choices": [
            {
              "about": "bores",
              "enough": false,
              "total": null,
              "word": "keep"
            },
            {
              "about": "bores",
              "enough": false,
              "total": null,
              "word": "deglaze"
            }
          ],
          "next": {
            "question": {
              "ask": "soundness",
              "part": "big_end/2",
              "reason": "unknown"
            }
          },
          "oversizes": {
            "plan": "0.0200",
            "sizes": [
              {
                "cut": "3.5078",
                "decision": "out",
                "reason": "wear",
                "rests_on": "bore/1",
                "step": "0.0100"
              },
              {
                "cut": "3.5178",
                "decision": "in",
                "reason": "proved",
                "rests_on": "bore/1",
                "step": "0.0200"
              }
            ],
            "sweep": null,
            "worst": "bore/1"
          },
          "parts": [
            {
              "gate": "set",
              "part": "block",
              "word": "shop"
            },
            {
              "gate": "set",
              "part": "crank",
              "word": "shop"
            },
            {
              "gate": "surface",
              "part": "bore/1",
              "word": "shop"
            }
          ],
          "troubles": [
            {
              "about": "rod_shells",
              "trouble": "out_of_reach"
            }
          ],
          "unit": "in",
          "unseen": [
            "crank",
            "main_housing/1",
            "main_housing/2"
          ]
        }"#]]
    .assert_eq(&pretty(&report["plan"]));
}

#[test]
fn keys_and_words_of_causes_are_stable() {
    let report = report(&sample("quarry-v-twin"));
    let causes = report["causes"].as_array().unwrap();
    let of = |word: &str| {
        let found = causes.iter().find(|cause| cause["cause"] == word);
        pretty(found.unwrap())
    };
    expect![[r#"
        {
          "cause": "loose_shells",
          "check": "size of the housing; crush; tangs",
          "contradicts": [],
          "needs": [],
          "place": "cylinder/2",
          "source": "common practice",
          "standing": "measured",
          "supports": [
            {
              "at": "rod_shell/2",
              "of": "bright_back",
              "sign": "seen",
              "source": "common practice"
            },
            {
              "at": "rod_shell/2",
              "of": "spun",
              "sign": "seen",
              "source": "common practice"
            },
            {
              "at": "rod_shell/2",
              "of": "housing_too_large",
              "sign": "proved",
              "source": "common practice"
            }
          ]
        }"#]]
    .assert_eq(&of("loose_shells"));
    expect![[r#"
        {
          "cause": "bent_rod",
          "check": "the rod's alignment; the wear of its piston",
          "contradicts": [],
          "needs": [
            "rod_bent"
          ],
          "place": "cylinder/1",
          "source": "common practice",
          "standing": "hint",
          "supports": [
            {
              "at": "piston/1",
              "of": "one_skirt",
              "sign": "seen",
              "source": "common practice"
            }
          ]
        }"#]]
    .assert_eq(&of("bent_rod"));
    expect![[r#"
        {
          "because": [
            {
              "at": "oil/1",
              "look": "debris_soft"
            },
            {
              "at": "oil/1",
              "look": "debris_copper"
            },
            {
              "at": "rod_shell/1",
              "look": "wiped"
            },
            {
              "at": "rod_shell/2",
              "look": "spun"
            }
          ],
          "to_do": [
            {
              "source": "common practice",
              "what": "cooler"
            },
            {
              "source": "common practice",
              "what": "lines"
            },
            {
              "source": "common practice",
              "what": "filter"
            },
            {
              "source": "common practice",
              "what": "pump"
            },
            {
              "source": "common practice",
              "what": "pickup"
            },
            {
              "source": "common practice",
              "what": "galleries"
            },
            {
              "source": "common practice; US Navy Engineman (NAVEDTRA 14076), chapter 3: washed and blown dry",
              "what": "crank_drillings"
            },
            {
              "source": "common practice",
              "what": "small_ways"
            }
          ]
        }"#]].assert_eq(&pretty(&report["aftermath"]));
    assert_eq!(report["clashes"], Value::Array(Vec::new()));
}

#[test]
fn what_cannot_both_be_is_told() {
    use fenderbench::remedy::{Look, Spot, Subject};
    use fenderbench::session::Edit;
    let spot = Spot {
        subject: Subject::Bore,
        position: 1,
    };
    let look = |look| Edit::Set(Field::Look(spot, look, Some(true)));
    let both = vec![look(Look::Hatch), look(Look::Glazed)];
    let report = report(&edited(session(vec![Field::Cylinders(1)]), both));
    let clash = serde_json::json!([{"at": "bore/1", "looks": ["hatch", "glazed"]}]);
    assert_eq!(report["clashes"], clash);
    assert_eq!(report["aftermath"]["to_do"], Value::Array(Vec::new()));
}

#[test]
fn every_sample_names_only_parts_that_there_are() {
    for name in ["hill-climb-six", "pump-twin", "quarry-v-twin"] {
        let session = sample(name);
        let report = report(&session);
        let plan = &report["plan"];
        let known: Vec<&Value> = plan["parts"].as_array().unwrap().iter().collect();
        let known: Vec<&str> = known.iter().map(|p| p["part"].as_str().unwrap()).collect();
        for way in ["way", "hope", "runner_up"] {
            for list in ["rests_on", "clearances"] {
                for one in plan[way][list].as_array().into_iter().flatten() {
                    let part = one["part"].as_str().unwrap();
                    assert!(known.contains(&part), "{name}: {part}");
                }
            }
        }
        let cylinders = known.iter().filter(|part| part.starts_with("bore/"));
        assert_eq!(cylinders.count(), usize::from(session.cylinders()));
    }
}
