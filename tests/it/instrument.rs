//! A micrometer: what its scales show.

use expect_test::{Expect, expect};
use fenderbench::present::instrument::Micrometer;
use fenderbench::quantity::{Entered, Size, Unit};
use fenderbench::session::{Gauge, GaugeKind};

use crate::golden::golden;
use crate::make::{INCH, MM, size, unit};

/// What a micrometer is read to, as on its gauge, in the order of its grain.
pub fn micrometer(of: Unit, grain: i64, start: &str) -> Micrometer {
    let finest = if of == INCH {
        ["0.0001", "0.0005", "0.001"]
    } else {
        ["0.001", "0.005", "0.01"]
    };
    let graduation = match grain {
        1 => finest[0],
        5 => finest[1],
        _ => finest[2],
    };
    let length = |text| Entered::parse(text, of).unwrap();
    let mut gauge = Gauge::usual(GaugeKind::OutsideMicrometer, of).unwrap();
    gauge.graduation = length(graduation);
    gauge.range = Some((length(start), length(if of == INCH { "24" } else { "600" })));
    let found = Micrometer::of_gauge(&gauge, None).unwrap();
    assert_eq!(found.grain(), grain);
    found
}

/// Every setting of every kind of micrometer, in order.
pub fn every() -> impl Iterator<Item = Vec<Micrometer>> {
    let kinds = [INCH, MM]
        .into_iter()
        .flat_map(|of| [1, 5, 10].map(|grain| (of, grain)));
    kinds.map(|(of, grain)| {
        let closed = micrometer(of, grain, if of == INCH { "1" } else { "25" });
        let span = if of == INCH { 10_000 } else { 25_000 };
        let all = (0..=span / grain).map(|n| closed.set_at(n * grain));
        all.collect()
    })
}

/// A gauge's count of tenths of a thimble line, in quanta.
fn quanta(of: Unit) -> i64 {
    if of == INCH { 25_400 } else { 10_000 }
}

#[test]
fn scales_add_up() {
    for row in golden!("micrometer_readings.csv") {
        let of = unit(row.get("unit"));
        let whole = |column| i64::try_from(row.whole(column)).unwrap();
        let grain = whole("grain");
        let turn = if of == INCH { 250 } else { 500 };
        let fine = if grain == 10 {
            0
        } else {
            whole("fine") * grain
        };
        let at = whole("upper") * 1_000 + whole("lines") * turn + whole("thimble") * 10 + fine;
        let set = micrometer(of, grain, row.get("start")).set_at(at);
        assert_eq!(set.text(), row.get("reading"), "{}", row.place());
        let counts = set.parts().map(|(_, count, _)| count);
        let expected = [
            1,
            whole("upper"),
            whole("lines"),
            whole("thimble"),
            fine / grain,
        ];
        assert_eq!(counts, expected, "{}", row.place());
    }
}

#[test]
fn every_setting_is_its_parts_and_its_text() {
    for settings in every() {
        for set in settings {
            let sum: i64 = set
                .parts()
                .iter()
                .map(|(_, count, each)| count * each)
                .sum();
            assert_eq!(sum, set.reading());
            let read = Entered::parse(&set.text(), set.unit()).unwrap();
            assert_eq!(read.size().quanta(), sum * quanta(set.unit()));
            assert_eq!(read.decimals(), set.decimals());
            // And the sum that is written down.
            let lines = set.sum();
            let (last, amounts) = lines.split_last().unwrap();
            let length = |text: &str| Entered::parse(text, set.unit()).unwrap().size().quanta();
            let added: i64 = amounts.iter().map(|line| length(&line[2])).sum();
            assert_eq!(added, length(&last[2]), "{lines:?}");
        }
    }
}

#[test]
fn a_reading_is_written_as_a_sum() {
    let check = |set: Micrometer, expect: &Expect| {
        let lines = set.sum().into_iter().map(|line| line.join(" | "));
        expect.assert_eq(&lines.collect::<Vec<_>>().join("\n"));
    };
    check(
        micrometer(INCH, 1, "2").set_at(2_683),
        &expect![[r#"
        Range starts at |  | 2.0000
        Sleeve numbers | 2 × 0.1 | 0.2000
        Sleeve lines | 2 × 0.025 | 0.0500
        Thimble line | 18 × 0.001 | 0.0180
        Vernier line | 3 × 0.0001 | 0.0003
        It reads, in |  | 2.2683"#]],
    );
    check(
        micrometer(MM, 10, "0").set_at(5_780),
        &expect![[r#"
        Sleeve whole mm | 5 × 1 | 5.00
        Sleeve half mm | 1 × 0.5 | 0.50
        Thimble line | 28 × 0.01 | 0.28
        It reads, mm |  | 5.78"#]],
    );
    check(
        micrometer(INCH, 5, "0").set_at(4_375),
        &expect![[r#"
        Sleeve numbers | 4 × 0.1 | 0.4000
        Sleeve lines | 1 × 0.025 | 0.0250
        Thimble line | 12 × 0.001 | 0.0120
        Half a line more | 1 × 0.0005 | 0.0005
        It reads, in |  | 0.4375"#]],
    );
}

#[test]
fn the_micrometer_is_the_one_of_the_gauge() {
    let of = |kind, of, range: Option<(&str, &str)>, near: Option<Size>| {
        let length = |text| Entered::parse(text, of).unwrap();
        let mut gauge = Gauge::usual(kind, of).unwrap();
        gauge.range = range.map(|(least, greatest)| (length(least), length(greatest)));
        Micrometer::of_gauge(&gauge, near).map(|m| format!("{}, {}", m.name(), m.row_text(3)))
    };
    let mic = GaugeKind::OutsideMicrometer;
    let found = |text: &str| Some(text.to_owned());
    assert_eq!(of(mic, INCH, None, None), found("0.0001 in, vernier, 0–1"));
    assert_eq!(
        of(mic, MM, Some(("50", "75")), None),
        found("0.001 mm, vernier, 50–75")
    );
    let near = Some(size("61.2 mm"));
    assert_eq!(of(mic, MM, None, near), found("0.001 mm, vernier, 50–75"));
    // One with several anvils has several ranges.
    assert_eq!(
        of(mic, INCH, Some(("0", "6")), near),
        found("0.0001 in, vernier, 2–3")
    );
    // What the gauge cannot reach does not move its range.
    assert_eq!(
        of(mic, MM, Some(("75", "100")), near),
        found("0.001 mm, vernier, 75–100")
    );
    assert_eq!(
        of(mic, MM, None, Some(size("2000 mm"))),
        found("0.001 mm, vernier, 575–600")
    );
    for kind in GaugeKind::ALL {
        let read_so = [
            mic,
            GaugeKind::InsideMicrometer,
            GaugeKind::TelescopingGauge,
        ];
        assert_eq!(
            of(kind, MM, None, None).is_some(),
            read_so.contains(&kind),
            "{kind:?}"
        );
    }
}

#[test]
fn keys_reach_every_setting_and_stop_at_the_ends() {
    for settings in every() {
        for set in &settings {
            for (row, (name, big, small)) in set.rows().into_iter().enumerate() {
                for by in [-big, -small, small, big] {
                    let turned = set.turned(row, by);
                    if name == "Range" {
                        assert!(turned.is_none_or(|t| t.at() == set.at()));
                        continue;
                    }
                    let within = settings.first().unwrap().at() <= set.at() + by
                        && set.at() + by <= settings.last().unwrap().at();
                    assert_eq!(
                        turned,
                        within.then(|| set.set_at(set.at() + by)),
                        "{name} {by}"
                    );
                }
            }
        }
    }
    let first = micrometer(MM, 1, "0");
    assert_eq!(first.turned(3, -25_000), None);
    let next = first.turned(3, 25_000).unwrap();
    assert_eq!(next.row_text(3), "25–50");
    assert_eq!(next.turned(3, -25_000), Some(first));
    let signs = [-1_000, 250, 10, 1].map(|by| micrometer(INCH, 1, "0").sign(by));
    assert_eq!(signs, ["−.1", "+.025", "+.001", "+.0001"]);
    assert_eq!(
        [-5_000, 500, 10].map(|by| first.sign(by)),
        ["−5", "+0.5", "+0.01"]
    );
}

#[test]
fn others_are_offered_once() {
    let names = |m: Micrometer| m.others().iter().map(|m| m.name()).collect::<Vec<_>>();
    let usual = [
        "0.001 mm, vernier",
        "0.01 mm",
        "0.0001 in, vernier",
        "0.001 in",
    ];
    assert_eq!(names(micrometer(MM, 1, "50").set_at(7)), usual);
    let half = names(micrometer(INCH, 5, "0"));
    assert_eq!(half[0], "0.0005 in");
    assert_eq!(half[1..], usual);
    let others = micrometer(MM, 1, "50").others();
    assert_eq!(others.map_ranges(), ["50–75", "50–75", "0–1", "0–1"]);
}

trait Ranges {
    fn map_ranges(&self) -> Vec<String>;
}

impl Ranges for Vec<Micrometer> {
    fn map_ranges(&self) -> Vec<String> {
        self.iter().map(|m| m.row_text(3)).collect()
    }
}
