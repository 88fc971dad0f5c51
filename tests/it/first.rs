//! What a newcomer sees, on the sample that the app shows.

use fenderbench::archive;
use fenderbench::present::{Filed, Key, Practice, bench_row, first_view, kept_words, unfiled};
use fenderbench::session::Session;

fn sample() -> Session {
    let text = include_str!("../../public/samples/hill-climb-six.json");
    archive::import(text).unwrap().session
}

#[test]
fn the_first_screen_says_what_the_sample_says() {
    let view = first_view(&sample());
    assert_eq!(
        view.told,
        "103 readings of an invented engine, against the limits of its invented manual, say:"
    );
    let parts: Vec<_> = view
        .parts
        .iter()
        .map(|part| format!("{}: {}", part.title, part.words))
        .collect();
    assert_eq!(
        parts,
        [
            "Bore 5: Taper beyond limit by 0.054 mm",
            "Piston 5: Piston-to-wall beyond limit by 0.047 mm (too large)",
            "Rod journal 2: Out-of-round beyond limit by ≈ 0.031 mm",
        ]
    );
    assert_eq!(
        view.plan,
        [
            ["Bores", "bore and hone all to 0.50 mm over"],
            ["Pistons", "buy a set, 0.50 mm over"],
            ["Main journals", "grind all to 0.25 mm under"],
        ]
        .map(|line| line.map(str::to_owned))
    );
}

/// The digits that the task names.
fn digits(practice: &Practice) -> Vec<u8> {
    let task = practice.task();
    let (_, after) = task.split_once("three digits, ").unwrap();
    let (digits, _) = after.split_once(',').unwrap();
    digits.split(' ').map(|d| d.parse().unwrap()).collect()
}

#[test]
fn three_digits_and_enter_read_what_the_micrometer_shows() {
    let mut practice = Practice::of(&sample()).unwrap();
    assert_eq!(
        practice.task(),
        "The micrometer shows 49.979 mm. Type its last three digits, 9 7 9, then ENTER."
    );
    assert_eq!(practice.view().feature, "Rod journal 5");
    assert_eq!(practice.read(), None);
    for digit in digits(&practice) {
        assert!(practice.press(Key::Digit(digit)));
    }
    let face = practice.view().face;
    assert_eq!(format!("{}{}", face.lead, face.typed), "49.979");
    assert!(practice.enter());
    let read = practice.read().unwrap();
    assert_eq!(read.value, "49.979 mm");
    assert_eq!(read.words, "reads inside service limit");
}

#[test]
fn what_is_short_or_looks_like_a_slip_is_not_read() {
    let mut practice = Practice::of(&sample()).unwrap();
    practice.press(Key::Digit(4));
    assert!(!practice.enter());
    assert_eq!(practice.view().said, "Type the last 3 digits: 1 so far.");
    // 49.479 is a turn of the thimble below what it shows: so far that the
    // digits before it may be others.
    for digit in [7, 9] {
        practice.press(Key::Digit(digit));
    }
    assert!(!practice.enter());
    assert!(practice.view().face.whole);
    let in_full = |practice: &mut Practice, text: &str| {
        for c in text.bytes() {
            let key = if c == b'.' {
                Key::Point
            } else {
                Key::Digit(c - b'0')
            };
            assert!(practice.press(key));
        }
        practice.enter()
    };
    assert!(!in_full(&mut practice, "49.479"));
    assert!(practice.view().asked.starts_with("Looks like"));
    assert_eq!(practice.read(), None);
    // Whoever goes on typing reads again.
    assert!(in_full(&mut practice, "49.979"));
}

#[test]
fn without_rod_journals_there_is_nothing_to_practise_on() {
    let mut bare = sample();
    let all: Vec<_> = bare.readings.keys().copied().collect();
    for id in all {
        bare.readings.remove(&id);
    }
    assert!(Practice::of(&bare).is_none());
}

#[test]
fn the_bench_counts_the_readings_that_no_file_holds() {
    let sample = sample();
    let words = |filed: Option<&Filed>| bench_row(&sample, filed).filed;
    // 103 stand, and one that was struck is in the file as well.
    assert_eq!(words(None), "104 readings not in a file yet");
    let at = "2026-05-04T09:08:07.006Z".to_owned();
    let filed = Filed::now(&sample, None, at.clone());
    assert_eq!(words(Some(&filed)), "all in a file of 2026-05-04");
    let but_one = Filed {
        readings: 103,
        at: at.clone(),
    };
    assert_eq!(words(Some(&but_one)), "1 reading not in a file yet");
    // What went into a file is not taken out of it by a smaller one.
    let empty = Session::empty(sample.id.clone());
    let again = Filed::now(&empty, Some(filed.clone()), at);
    assert_eq!(unfiled(&sample, Some(&again)), 0);
    assert_eq!(bench_row(&empty, None).filed, "");

    assert_eq!(Filed::from_text(&filed.to_text()), Some(filed));
    for not_one in ["", "104", "many 2026-05-04", "-1 2026-05-04"] {
        assert_eq!(Filed::from_text(not_one), None, "{not_one}");
    }
}

#[test]
fn one_line_says_how_safe_everything_is() {
    for (unfiled, told) in [
        (&[][..], "Where your data is: on this device only"),
        (&[0, 0], "Kept on this device, and in files"),
        (
            &[12, 0, 1],
            "Kept on this device; 13 readings not in a file yet",
        ),
        (&[0, 1], "Kept on this device; 1 reading not in a file yet"),
    ] {
        assert_eq!(kept_words(unfiled), told);
    }
}
