//! The quiz on reading a micrometer, and the way to the fender.

use std::collections::BTreeSet;

use fenderbench::assess::assess;
use fenderbench::present::instrument::{Helper, QUESTIONS, Quiz};
use fenderbench::present::{Draft, Fender, Key, Purpose, route};
use fenderbench::quantity::Entered;
use fenderbench::session::{Edit, Field, Gauge, GaugeKind, Indication, Kind, Session};
use proptest::prelude::*;
use proptest::sample::select;

use crate::generators::config;
use crate::instrument::micrometer;
use crate::make::{INCH, MM, edited, measured, session, station};

/// Types a reading and enters it.
fn answer(quiz: &mut Quiz, text: &str) -> bool {
    for c in text.chars() {
        let digit = c.to_digit(10).map(|digit| u8::try_from(digit).unwrap());
        assert!(quiz.press(digit.map_or(Key::Point, Key::Digit)), "{text}");
    }
    quiz.enter()
}

/// The text of the setting asked for, off by so many counts.
fn off(quiz: &Quiz, by: i64) -> String {
    let asked = quiz.micrometer().unwrap();
    asked.set_at(asked.at() + by).text()
}

#[test]
fn nine_right_and_one_wrong_by_a_turn() {
    let mut quiz = Quiz::new(micrometer(INCH, 1, "1"), 6);
    let mut wrong = None;
    for n in 1..=QUESTIONS {
        assert_eq!(quiz.title(), format!("{n} of 10: what does it read?"));
        assert_eq!(quiz.told(), None);
        let by = if n == 4 { 250 } else { 0 };
        let typed = off(&quiz, by);
        assert!(answer(&mut quiz, &typed));
        let told = quiz.told().unwrap();
        assert_eq!(
            told.starts_with(&format!("{typed}: right.")),
            by == 0,
            "{told}"
        );
        if by != 0 {
            assert!(
                told.contains("One turn of the thimble too much, 0.025 in."),
                "{told}"
            );
            wrong = Some((quiz.micrometer().unwrap(), told));
        }
        // Still the same one, until somebody goes on.
        assert_eq!(quiz.title(), format!("{n} of 10: what does it read?"));
        assert!(quiz.enter());
    }
    assert_eq!(quiz.title(), "9 of 10 right");
    assert_eq!(quiz.micrometer(), None);
    assert_eq!(quiz.wrong(), Vec::from_iter(wrong));
    assert!(!quiz.enter());
}

#[test]
fn a_reading_is_typed_in_full() {
    let mut quiz = Quiz::new(micrometer(MM, 1, "25"), 1);
    assert!(!quiz.enter());
    assert_eq!(quiz.refused(), "Type all decimals, zeros too.");
    assert!(!answer(&mut quiz, "30.5"));
    assert_eq!(quiz.face().open, 2);
    assert_eq!(quiz.refused(), "Type all decimals, zeros too.");
    assert!(quiz.press(Key::Digit(0)) && quiz.refused().is_empty());
    assert!(quiz.press(Key::Digit(0)));
    assert!(!quiz.press(Key::Digit(0)));
    assert_eq!(quiz.refused(), "This gauge reads 3 decimals.");
    assert!(quiz.press(Key::Back) && quiz.press(Key::Digit(1)));
    assert!(quiz.enter());
    assert!(quiz.told().unwrap().starts_with("30.501: "));
}

proptest! {
    #![proptest_config(config(200))]

    #[test]
    fn a_quiz_is_what_its_seed_says(
        seed: u64,
        other: u64,
        of in select(&[INCH, MM][..]),
        grain in select(&[1_i64, 5, 10][..]),
    ) {
        let closed = micrometer(of, grain, if of == INCH { "2" } else { "50" });
        let span = if of == INCH { 10_000 } else { 25_000 };
        let turn = if of == INCH { 250 } else { 500 };
        let settings = |seed| {
            let mut quiz = Quiz::new(closed, seed);
            let mut found = Vec::new();
            while let Some(asked) = quiz.micrometer() {
                found.push(asked);
                assert!(answer(&mut quiz, &asked.text()) && quiz.enter());
            }
            assert_eq!(quiz.title(), "10 of 10 right");
            found
        };
        let asked = settings(seed);
        prop_assert_eq!(asked.len(), QUESTIONS);
        prop_assert_eq!(&asked, &settings(seed));
        prop_assert!(seed == other || asked != settings(other));
        let different: BTreeSet<i64> = asked.iter().map(|one| one.at()).collect();
        prop_assert_eq!(different.len(), QUESTIONS);
        for (n, one) in asked.iter().enumerate() {
            prop_assert!(one.is_like(closed) && one.row_text(3) == closed.row_text(3));
            prop_assert!(0 <= one.at() && one.at() <= span && one.at() % grain == 0);
            let beyond = one.at() % turn;
            let at_turn = beyond < turn / 10 || turn * 4 / 5 <= beyond;
            prop_assert!(n % 3 != 1 || at_turn, "{}", one.text());
            let misread = [1, 8, 9].contains(&one.tenth());
            prop_assert!(n % 3 != 2 || grain != 1 || misread, "{}", one.text());
        }
    }

    #[test]
    fn right_is_only_what_it_reads(seed: u64, by in -2_000_i64..2_000) {
        let mut quiz = Quiz::new(micrometer(MM, 1, "50"), seed);
        let typed = off(&quiz, by);
        prop_assert!(answer(&mut quiz, &typed));
        prop_assert_eq!(quiz.told().unwrap().ends_with("right."), by == 0);
        prop_assert_eq!(quiz.wrong().len(), usize::from(by != 0));
    }
}

fn start(session: &Session, draft: Option<Draft>) -> Helper {
    Helper::start(session, &assess(session), draft)
}

#[test]
fn the_reading_goes_to_the_keypad_and_enter_stays_the_persons() {
    let session = measured(vec![], &[("main_journal/1/whole/first/0", "50.000 mm")]);
    let here = Draft::to_read(station("main_journal/2/whole/first/0"), Purpose::Add);
    let mut helper = start(&session, Some(here.clone()));
    // The journal wears into the range below.
    assert_eq!(helper.held.row_text(3), "25–50");
    assert_eq!(
        helper.place(),
        "Main journal 2, first end, in line with throw 1"
    );
    helper.held = helper.held.set_at(24_987);
    let taken = helper.take().unwrap();
    assert_eq!((taken.station, taken.purpose), (here.station, Purpose::Add));
    let stops = route(&session, &assess(&session));
    let mut fender = Fender::start(&session, &stops, Some(&taken));
    let face = fender.face().unwrap();
    assert_eq!(
        (face.typed.as_str(), face.open, face.whole),
        ("49.987", 0, true)
    );
    let Some(Edit::Add(reading)) = fender.enter(&session, "") else {
        panic!("not entered");
    };
    assert_eq!(
        reading.entered,
        Indication::from(Entered::parse("49.987", MM).unwrap())
    );
    // The draft survives being stored.
    assert_eq!(Draft::from_text(&taken.to_text()), Some(taken));
}

#[test]
fn without_a_draft_it_is_for_the_next_open_place() {
    let session = session(vec![Field::DisplayUnit(INCH)]);
    let helper = start(&session, None);
    assert_eq!(helper.place(), "Bore 1, top, thrust");
    assert_eq!(helper.held.name(), "0.0001 in, vernier");
    assert_eq!(helper.take().unwrap().typed, "0.0000");
}

#[test]
fn what_the_gauge_in_use_does_not_read_is_not_taken_there() {
    let plain = session(vec![]);
    let mut helper = start(&plain, None);
    let others = helper.held.others();
    let taken: Vec<bool> = others
        .iter()
        .map(|other| {
            helper.held = *other;
            helper.take().is_some()
        })
        .collect();
    assert_eq!(taken, [true, false, false, false]);
    // A dial is no micrometer: there is one to learn with, and nothing to take.
    let dial = Gauge::usual(GaugeKind::DialBoreGauge, MM).unwrap();
    let added = edited(plain, vec![Edit::AddGauge(dial)]);
    let id = added
        .gauges
        .iter()
        .find(|(_, g)| g.value.kind == GaugeKind::DialBoreGauge);
    let id = *id.unwrap().0;
    let session = edited(added, vec![Edit::Set(Field::GaugeOf(Kind::Bore, Some(id)))]);
    let helper = start(&session, None);
    assert_eq!(helper.take(), None);
    assert_eq!(helper.place(), "");
    assert_eq!(helper.held.text(), "0.000");
    assert!(helper.drawing().contains("class=\"on\""));
}

#[test]
fn only_what_a_quiz_asks_is_drawn_without_marks() {
    let mut helper = start(&session(vec![]), None);
    helper.quiz = Some(Quiz::new(helper.held, 3));
    assert!(!helper.drawing().contains("class=\"on\""));
    let quiz = helper.quiz.as_mut().unwrap();
    let typed = off(quiz, 0);
    assert!(answer(quiz, &typed));
    assert!(helper.drawing().contains("class=\"on\""));
    let quiz = helper.quiz.as_mut().unwrap();
    for _ in 1..QUESTIONS {
        quiz.enter();
        let typed = off(quiz, 0);
        assert!(answer(quiz, &typed));
    }
    assert!(quiz.enter());
    assert_eq!(helper.drawn(), None);
    assert_eq!(helper.drawing(), "");
}
