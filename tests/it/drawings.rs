//! The drawings beside what can be seen: one for each look, all of one kind.

use fenderbench::remedy::{Look, Subject};

use crate::repository::sources;

const DRAWN: [Subject; 4] = [
    Subject::MainShell,
    Subject::RodShell,
    Subject::Piston,
    Subject::Bore,
];

#[test]
fn every_look_at_shells_pistons_and_bores_is_drawn_and_nothing_else() {
    let drawn = |look: &Look| look.subjects().iter().any(|s| DRAWN.contains(s));
    let mut expected: Vec<_> = Look::all()
        .filter(drawn)
        .map(|look| format!("public/drawings/{}.svg", look.key()))
        .collect();
    expected.sort();
    let mut found: Vec<_> = sources("public/drawings")
        .into_iter()
        .map(|drawing| drawing.path)
        .collect();
    found.sort();
    assert_eq!(found, expected);
}

#[test]
fn drawings_are_small_alike_and_each_its_own() {
    let head = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 96 96\" fill=\"none\" \
                stroke=\"#101c26\" stroke-width=\"2\" stroke-linejoin=\"round\">";
    let drawings = sources("public/drawings");
    for (n, drawing) in drawings.iter().enumerate() {
        let text = &drawing.text;
        assert!(text.starts_with(head), "{}", drawing.path);
        assert!(text.len() <= 1024, "{}: {} bytes", drawing.path, text.len());
        // One ink, which a dark theme turns over; no words, nothing that runs
        // or is fetched.
        let inks = text.split('#').skip(1).map(|rest| &rest[..6]);
        assert!(inks.clone().all(|ink| ink == "101c26"), "{}", drawing.path);
        for word in ["<text", "<script", "href", "style", "<image", "<use"] {
            assert!(!text.contains(word), "{}: {word}", drawing.path);
        }
        let twin = drawings[..n].iter().find(|other| other.text == *text);
        assert!(twin.is_none(), "{} is {}", drawing.path, twin.unwrap().path);
    }
}
