//! Sessions of one engine meet: the laws of merging.

use fenderbench::quantity::Entered;
use fenderbench::session::{Field, FieldKey, Session};
use proptest::prelude::*;
use proptest::sample::Index;

use crate::generators::{config, devices, event, happen, three};
use crate::make::{MM, PHONE, TABLET, add, document, measured};
use crate::newer::newer;

fn merged(a: &Session, b: &Session) -> Session {
    let mut both = a.clone();
    both.merge(b);
    both
}

/// A copy in which somebody wrote into facts without giving them a new id.
fn damaged(mut session: Session, at: Index, text: String) -> Session {
    let field = session.fields.get_mut(&FieldKey::Name);
    field.unwrap().value = Field::Name(text);
    let ids: Vec<_> = session.readings.keys().copied().collect();
    if !ids.is_empty() {
        let reading = session.readings.get_mut(at.get(&ids)).unwrap();
        reading.entered = Entered::parse("77.7", MM).unwrap().into();
        reading.strikes = 5;
    }
    session
}

proptest! {
    #![proptest_config(config(192))]

    #[test]
    fn order_and_repetition_make_no_difference(
        sessions in three(),
        strangers in prop::array::uniform3(newer()),
        (at, text) in (any::<Index>(), "[a-c]{0,2}"),
    ) {
        let [a, b, c] = sessions;
        let [x, y, z] = strangers;
        let a = damaged(x.into_session(a), at, text);
        let (b, c) = (y.into_session(b), z.into_session(c));
        prop_assert_eq!(merged(&a, &b), merged(&b, &a));
        prop_assert_eq!(merged(&merged(&a, &b), &c), merged(&a, &merged(&b, &c)));
        prop_assert_eq!(merged(&a, &a), a.clone());
        let both = merged(&a, &b);
        prop_assert_eq!(merged(&both, &b), both);
    }

    #[test]
    fn a_change_brings_the_older_copy_up_to_date(
        early in prop::collection::vec(event(), 0..20),
        late in prop::collection::vec(event(), 0..20),
    ) {
        let mut devices = devices();
        early.iter().for_each(|event| happen(&mut devices, event));
        let older = devices.clone().map(|device| device.session().clone());
        late.iter().for_each(|event| happen(&mut devices, event));
        for (older, newer) in older.iter().zip(&devices) {
            let newer = newer.session();
            prop_assert_eq!(&merged(older, &newer.beyond(older)), newer);
            prop_assert!(newer.beyond(newer).is_empty());
            prop_assert_eq!(&merged(newer, older), newer);
        }
    }

    #[test]
    fn parts_in_any_order_make_the_whole(
        events in prop::collection::vec(event(), 0..25),
        order in any::<u64>(),
    ) {
        let mut devices = devices();
        let mut parts = vec![devices[0].session().clone()];
        for event in &events {
            let before = devices[0].session().clone();
            happen(&mut devices, event);
            parts.push(devices[0].session().beyond(&before));
        }
        let whole = devices[0].session().clone();
        // Any order that hangs on the number, and every part twice.
        parts.sort_by_key(|part| (part.readings.len() as u64 + 1).wrapping_mul(order) >> 7);
        let mut put_together = Session::empty(whole.id.clone());
        for part in parts.iter().chain(parts.iter().rev()) {
            put_together.merge(part);
        }
        prop_assert_eq!(put_together, whole);
    }

    #[test]
    fn ids_are_given_out_once(events in prop::collection::vec(event(), 0..40)) {
        let mut devices = devices();
        let mut seen = std::collections::BTreeMap::new();
        for event in &events {
            happen(&mut devices, event);
            for device in &devices {
                for (id, reading) in &device.session().readings {
                    let fact = (reading.station, reading.entered.clone());
                    let first = seen.entry(*id).or_insert_with(|| fact.clone());
                    prop_assert_eq!(&*first, &fact);
                }
            }
        }
    }
}

#[test]
fn a_part_of_a_session_is_a_change_of_it() {
    let mut document = document(vec![]);
    let edit = add(document.session(), "bore/1/whole/top/0", "82.01 mm");
    let added = document.dispatch(&edit).unwrap();
    assert_eq!((added.readings.len(), added.fields.len()), (1, 0));
    let id = *added.readings.keys().next().unwrap();
    assert_eq!(id.replica, PHONE);
    let undone = document.undo().unwrap().unwrap();
    assert_eq!(undone.readings[&id].strikes, 1);
    assert!(document.session().standing().next().is_none());
}

#[test]
fn strikes_of_two_devices_meet() {
    let start = measured(vec![], &[("bore/1/whole/top/0", "82.01 mm")]);
    let id = *start.readings.keys().next().unwrap();
    let strike = fenderbench::session::Edit::Strike(id);
    let (mut phone, mut tablet) = (start.clone(), start);
    phone.apply(&strike, PHONE).unwrap();
    tablet.apply(&strike, TABLET).unwrap();
    // Both struck it: it is struck, not struck and put back.
    let both = merged(&phone, &tablet);
    assert!(both.readings[&id].is_struck());
    // One puts it back: that is the later word.
    tablet.apply(&strike, TABLET).unwrap();
    assert!(!merged(&phone, &tablet).readings[&id].is_struck());
}
