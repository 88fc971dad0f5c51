//! What is chosen for this phone.

use fenderbench::present::PHONE;

#[test]
fn the_first_word_stands_until_another_is_chosen() {
    let usual = PHONE.map(|choice| (choice.name, choice.word(None)));
    let expected = [
        ("theme", "sun"),
        ("hand", "right"),
        ("sound", "on"),
        ("spoken", "off"),
        ("awake", "on"),
    ];
    assert_eq!(usual, expected);
}

#[test]
fn each_word_is_read_as_it_is_kept() {
    for choice in PHONE {
        for (word, _) in choice.options {
            assert_eq!(choice.word(Some(word)), word, "{}", choice.name);
        }
        let [(one, _), (other, _)] = choice.options;
        assert_ne!(one, other, "{}", choice.name);
    }
}

#[test]
fn what_is_no_word_of_a_choice_counts_as_the_usual() {
    for choice in PHONE {
        let usual = choice.word(None);
        for bad in ["", "ON", "on ", "purple", "left\"><b>", "0", "\u{0}"] {
            assert_eq!(choice.word(Some(bad)), usual, "{}: {bad:?}", choice.name);
        }
    }
}
