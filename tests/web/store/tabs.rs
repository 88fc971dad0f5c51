//! Other tabs, played by other channels in this page, and the browser's promise to keep data.

use std::cell::RefCell;
use std::rc::Rc;

use fenderbench::store::others::Others;
use fenderbench::store::persist;
use wasm_bindgen_test::wasm_bindgen_test;

use super::{pair, replace, restore, run, window};

type Heard = Rc<RefCell<Vec<(String, String)>>>;

fn tab() -> (Others, Heard) {
    let heard = Heard::default();
    let ear = Rc::clone(&heard);
    let others = Others::open(move |session, text| ear.borrow_mut().push((session, text)));
    (others.unwrap(), heard)
}

/// Long enough for a message that has been sent.
async fn a_moment() {
    run("setTimeout(yes, 100);").await;
}

#[wasm_bindgen_test]
async fn tabs_hear_each_other_and_not_themselves() {
    let (one, heard_by_one) = tab();
    let (two, heard_by_two) = tab();
    one.tell("s1", "first");
    two.tell("s2", "Ø \u{1f527}");
    one.tell("s1", "third");
    a_moment().await;
    assert_eq!(
        *heard_by_two.borrow(),
        [pair("s1", "first"), pair("s1", "third")]
    );
    assert_eq!(*heard_by_one.borrow(), [pair("s2", "Ø \u{1f527}")]);
}

#[wasm_bindgen_test]
async fn a_closed_tab_hears_nothing() {
    run("window.failures = 0; window.addEventListener('error', () => failures++); yes();").await;
    let (one, _keep) = tab();
    let (two, heard_by_two) = tab();
    one.tell("s", "on its way");
    drop(two);
    one.tell("s", "too late");
    a_moment().await;
    assert!(heard_by_two.borrow().is_empty());
    assert_eq!(Rc::strong_count(&heard_by_two), 1, "the handler is freed");
    let failures = run("yes(window.failures);").await;
    assert_eq!(failures, 0, "and it is not called any more");
}

#[wasm_bindgen_test]
async fn other_talk_is_not_heard() {
    let (_one, heard) = tab();
    run(
        "const c = new BroadcastChannel('fenderbench');
         for (const m of [7, null, 'text', { session: 1, text: 't' }, { session: 's' }]) c.postMessage(m);
         c.postMessage({ session: 's', text: 't' });
         c.close(); yes();",
    )
    .await;
    a_moment().await;
    assert_eq!(*heard.borrow(), [pair("s", "t")]);
}

#[wasm_bindgen_test]
fn without_channels_a_tab_is_alone() {
    let original = replace(&window(), "BroadcastChannel", "return undefined");
    let others = Others::open(|_, _| ());
    restore(&window(), "BroadcastChannel", &original);
    assert!(others.is_none());
}

#[wasm_bindgen_test]
async fn asking_to_persist_is_answered() {
    let granted = persist::persist().await;
    assert_eq!(persist::persisted().await, granted);
    for body in [
        "return undefined",
        "return {}",
        "return { persist: () => Promise.reject(1), persisted: () => Promise.reject(1) }",
    ] {
        let original = replace(&window().navigator(), "storage", body);
        let seen = (persist::persist().await, persist::persisted().await);
        restore(&window().navigator(), "storage", &original);
        assert_eq!(seen, (false, false), "{body}");
    }
}
