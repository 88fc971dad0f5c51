//! Texts damaged by chance: cut off at every byte, every byte changed.

use fenderbench::archive::{import, read, write};
use fenderbench::session::Session;

use crate::archive::{newer_sample, sample};
use crate::make::PHONE;

/// The facts of a session: what the check sum of its file covers. Unknown
/// fields beside them are kept as they come.
pub fn facts(session: &Session) -> Session {
    let mut facts = session.clone();
    let covered = session
        .extras
        .iter()
        .filter(|((section, _), _)| !section.is_empty());
    facts.extras = covered
        .map(|(key, text)| (key.clone(), text.clone()))
        .collect();
    facts
}

/// A changed text is refused, told to be changed, or holds the same facts.
fn check(bytes: &[u8], session: &Session) -> Result<(), String> {
    let text = String::from_utf8_lossy(bytes);
    let _ = import(&text);
    match read(&text) {
        Ok(incoming) if incoming.untouched && facts(&incoming.session) != facts(session) => {
            Err(format!("taken for untouched:\n{text}"))
        }
        _ => Ok(()),
    }
}

#[test]
fn a_text_cut_off_anywhere_is_refused() {
    for session in [sample(), newer_sample()] {
        let text = write(&session, PHONE);
        for end in (0..text.len()).filter(|end| text.is_char_boundary(*end)) {
            let refused = read(&text[..end]).is_err() && import(&text[..end]).is_err();
            assert!(refused, "cut off after {end} bytes");
        }
        assert_eq!(read(&text).unwrap().session, session);
    }
}

/// Two thousand changes of one byte, spread over the text.
pub fn check_flips(session: &Session, part: impl Fn(&str) -> core::ops::Range<usize>) {
    let text = write(session, PHONE);
    let range = part(&text);
    let mut wrong = Vec::new();
    for n in 0..2000 {
        // 7919 is a prime that shares no factor with the length, so this
        // reaches everywhere; 37 n walks through the values of a byte.
        let at = range.start + (n * 7919) % range.len();
        let flip = u8::try_from(1 + (n * 37) % 255).unwrap();
        let mut bytes = text.clone().into_bytes();
        bytes[at] ^= flip;
        if let Err(why) = check(&bytes, session) {
            wrong.push(format!("byte {at} flipped by {flip}: {why}"));
        }
    }
    assert!(wrong.is_empty(), "{} of 2000\n{}", wrong.len(), wrong[0]);
}

#[test]
fn a_changed_byte_of_the_session_is_noticed() {
    let body = |text: &str| text.find("\"session\":").unwrap()..text.len();
    check_flips(&sample(), body);
}

#[test]
fn a_changed_byte_anywhere_is_noticed() {
    check_flips(&sample(), |text| 0..text.len());
}

#[test]
fn a_changed_byte_of_a_newer_file_is_noticed() {
    check_flips(&newer_sample(), |text| 0..text.len());
}

#[test]
fn every_single_bit_of_a_short_file_counts() {
    let session = crate::make::session(vec![]);
    let text = write(&session, PHONE);
    for at in 0..text.len() {
        for bit in 0..8 {
            let mut bytes = text.clone().into_bytes();
            bytes[at] ^= 1 << bit;
            check(&bytes, &session).unwrap();
        }
    }
}

#[test]
fn pieces_torn_out_or_doubled_are_noticed() {
    let session = newer_sample();
    let text = write(&session, PHONE);
    let lines: Vec<_> = text.lines().collect();
    for (n, line) in lines.iter().enumerate() {
        let mut without = lines.clone();
        without.remove(n);
        let mut doubled = lines.clone();
        doubled.insert(n, line);
        for lines in [without, doubled] {
            check(lines.join("\n").as_bytes(), &session).unwrap();
        }
    }
}
