//! How a session lies in storage, and what damage to it costs.

use std::collections::BTreeMap;

use fenderbench::archive::{READINGS_PER_SEGMENT, ROOT, Shelf, key_of, session_of_key, write};
use fenderbench::session::{Document, Edit, Field, Session};
use proptest::prelude::*;
use proptest::sample::Index;

use crate::archive_flips::facts;
use crate::generators::{Act, act, config, devices};
use crate::make::{PHONE, add, document, limit};

/// The most a change may write, in bytes: a head with every limit of every
/// kind and the longest source for each.
const WRITE_MAX: usize = 30_000;

/// A device: its document, its slots and its journal.
struct Device {
    document: Document,
    shelf: Shelf,
    slots: BTreeMap<String, String>,
    journal: Vec<String>,
}

impl Device {
    fn new(document: Document) -> Self {
        let session = document.session().clone();
        let mut device = Self {
            document,
            shelf: Shelf::new(session.id.clone()),
            slots: BTreeMap::new(),
            journal: Vec::new(),
        };
        device.keep(&session);
        device
    }

    fn keep(&mut self, added: &Session) {
        self.journal.push(write(added, PHONE));
        let mut written = 0;
        for (key, text) in self.shelf.store(self.document.session(), PHONE) {
            written += text.len();
            let before = self.slots.insert(key.clone(), text.clone());
            let sealed = key.contains("segment");
            assert!(!sealed || before.is_none(), "{key} was written again");
        }
        assert!(written <= WRITE_MAX, "{written} bytes for one change");
    }

    fn dispatch(&mut self, edit: &Edit) {
        if let Ok(added) = self.document.dispatch(edit) {
            self.keep(&added);
        }
    }

    fn undo(&mut self) {
        if let Some(Ok(added)) = self.document.undo() {
            self.keep(&added);
        }
    }

    fn load(&self, slots: &BTreeMap<String, String>, journal: &[String]) -> Session {
        let slots: Vec<_> = slots.clone().into_iter().collect();
        Shelf::load(&self.document.session().id, &slots, journal).session
    }

    /// A reload with nothing but the slots, going on where they end.
    fn reload(&mut self) {
        let session = self.document.session();
        let slots: Vec<_> = self.slots.clone().into_iter().collect();
        let loaded = Shelf::load(&session.id, &slots, &[]);
        assert_eq!(&loaded.session, session);
        assert_eq!(loaded.damaged, Vec::<String>::new());
        self.shelf = loaded.shelf;
    }
}

/// A device with this many readings, entered one after the other.
fn grown(readings: usize) -> Device {
    let mut device = Device::new(document(vec![
        Field::Name("n".repeat(200)),
        limit("bore/size/new_low", "82.000 mm"),
    ]));
    for n in 0..readings {
        let at = format!("bore/{}/whole/top/0", 1 + n % 4);
        let text = format!("82.{:03} mm", n % 1000);
        let edit = add(device.document.session(), &at, &text);
        device.dispatch(&edit);
    }
    device
}

#[test]
fn a_growing_session_is_found_again_at_every_step() {
    let mut device = grown(0);
    for n in 0..200 {
        let text = format!("82.{n:03} mm");
        let edit = add(device.document.session(), "bore/2/whole/top/0", &text);
        device.dispatch(&edit);
        assert_eq!(
            &device.load(&device.slots, &[]),
            device.document.session(),
            "after {n}"
        );
        if n % 7 == 0 {
            device.reload();
        }
        if n % 11 == 0 {
            device.undo();
        }
    }
    let sealed = device.slots.keys().filter(|key| key.contains("segment"));
    assert_eq!(sealed.count(), 200 / READINGS_PER_SEGMENT);
}

#[test]
fn old_readings_struck_and_put_back_are_found_again() {
    let mut device = grown(100);
    let ids: Vec<_> = device.document.session().readings.keys().copied().collect();
    for (n, id) in ids.iter().chain(ids.iter().rev()).enumerate() {
        device.dispatch(&Edit::Strike(*id));
        if n % 20 == 0 {
            device.reload();
        }
    }
    device.reload();
}

#[test]
fn a_change_of_the_largest_set_up_stays_small() {
    let mut fields: Vec<_> = fenderbench::session::Kind::ALL
        .map(|kind| Field::LimitSource(kind, "ü".repeat(200)))
        .into();
    for kind in fenderbench::session::Kind::ALL {
        for (quantity, bounds) in fenderbench::session::limit_keys(kind) {
            for bound in *bounds {
                let key = crate::make::limit_key(kind, *quantity, *bound);
                fields.push(limit(&key.to_string(), "82.000000 mm"));
            }
        }
    }
    let mut device = Device::new(document(fields));
    for n in 0..40 {
        let text = format!("82.{n:06} mm");
        let at = "main_journal/12/whole/first/135";
        let edit = add(device.document.session(), at, &text);
        device.dispatch(&edit);
    }
    device.reload();
}

/// Ways a stored text can be damaged.
fn damages(text: &str, at: Index) -> Vec<Option<String>> {
    let mut end = at.index(text.len() + 1);
    while !text.is_char_boundary(end) {
        end -= 1;
    }
    let mut flipped = text.as_bytes().to_vec();
    let n = at.index(flipped.len());
    flipped[n] ^= 1 << at.index(8);
    vec![
        None,
        Some(String::new()),
        Some(text[..end].to_owned()),
        Some(String::from_utf8_lossy(&flipped).into_owned()),
        Some(text.replacen("strikes", "strokes", 1)),
    ]
}

proptest! {
    #![proptest_config(config(48))]

    #[test]
    fn any_work_is_found_again(
        acts in prop::collection::vec(act(), 0..60),
        at in any::<Index>(),
    ) {
        let [document, ..] = devices();
        let mut device = Device::new(document);
        for (n, act) in acts.iter().enumerate() {
            let edit = act.edit(device.document.session());
            device.dispatch(&edit);
            if n % 5 == 0 {
                device.undo();
            }
            if at.index(acts.len()) == n {
                device.reload();
            }
        }
        device.reload();
        prop_assert_eq!(&device.load(&BTreeMap::new(), &device.journal), device.document.session());
    }

    #[test]
    fn one_damaged_slot_costs_nothing_while_the_journal_stands(
        acts in prop::collection::vec(act(), 0..12),
        readings in 0_usize..80,
        at in any::<Index>(),
    ) {
        let mut device = grown(readings);
        for act in &acts {
            let edit = Act::edit(act, device.document.session());
            device.dispatch(&edit);
        }
        let session = device.document.session().clone();
        for (key, text) in &device.slots {
            for damage in damages(text, at) {
                let mut slots = device.slots.clone();
                match damage {
                    Some(text) => drop(slots.insert(key.clone(), text)),
                    None => drop(slots.remove(key)),
                }
                let found = device.load(&slots, &device.journal);
                prop_assert!(session.beyond(&found).is_empty(), "{} lost", key);
                prop_assert_eq!(facts(&found), facts(&session), "{} brought in something", key);
            }
        }
    }

    #[test]
    fn one_damaged_record_costs_nothing_while_the_slots_stand(
        readings in 0_usize..40,
        (which, at) in (any::<Index>(), any::<Index>()),
    ) {
        let device = grown(readings);
        let session = device.document.session();
        let n = which.index(device.journal.len());
        for damage in damages(&device.journal[n], at) {
            let mut journal = device.journal.clone();
            match damage {
                Some(text) => journal[n] = text,
                None => drop(journal.remove(n)),
            }
            let found = device.load(&device.slots, &journal);
            prop_assert_eq!(facts(&found), facts(session));
        }
    }
}

#[test]
fn work_goes_on_over_a_damaged_slot() {
    let mut device = grown(70);
    let damaged: Vec<_> = device.slots.keys().cloned().collect();
    for key in damaged {
        let mut slots = device.slots.clone();
        slots.insert(key.clone(), "{".to_owned());
        let list: Vec<_> = slots.clone().into_iter().collect();
        let id = device.document.session().id.clone();
        let loaded = Shelf::load(&id, &list, &device.journal);
        assert_eq!(loaded.damaged, std::slice::from_ref(&key));
        // What is written next makes the slots whole without the journal.
        let mut shelf = loaded.shelf;
        for (key, text) in shelf.store(&loaded.session, PHONE) {
            let segment = key.contains("segment");
            let before = slots.insert(key.clone(), text);
            assert!(!segment || before.is_none(), "{key} was written over");
        }
        assert_eq!(
            &device.load(&slots, &[]),
            device.document.session(),
            "{key}"
        );
    }
    device.reload();
}

#[test]
fn keys_name_their_session() {
    let id = crate::make::session(vec![]).id;
    let key = key_of(&id, "head-a");
    assert!(key.starts_with(ROOT));
    assert_eq!(session_of_key(&key), Some((id, "head-a")));
    for key in [
        "",
        "head-a",
        "fenderbench/1/xyz/head-a",
        "fenderbench/replica",
    ] {
        assert_eq!(session_of_key(key), None);
    }
}

#[test]
fn parts_of_another_session_are_left_alone() {
    let device = grown(3);
    let mut other = device.document.session().clone();
    other.id = fenderbench::session::SessionId::from_number(7);
    let mut slots = device.slots.clone();
    let id = &device.document.session().id;
    slots.insert(key_of(id, "segment-0009"), write(&other, PHONE));
    let found = device.load(&slots, &[write(&other, PHONE)]);
    assert_eq!(&found, device.document.session());
}
