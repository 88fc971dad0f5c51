//! The journal: order, commits, and connections that end.

use fenderbench::store::StoreError;
use fenderbench::store::journal::Journal;
use js_sys::Reflect;
use wasm_bindgen::JsValue;
use wasm_bindgen_test::wasm_bindgen_test;

use super::{pair, replace, restore, run, window};

#[wasm_bindgen_test]
async fn the_journal_keeps_order_across_openings() {
    let journal = emptied().await;
    // Futures that are polled backwards: the order is that of the calls.
    let first = journal.append("s1", "1");
    let second = journal.append("s2", "2");
    let third = journal.clone().append("s1", "3");
    third.await.unwrap();
    second.await.unwrap();
    first.await.unwrap();
    // One whose future is thrown away is written all the same.
    drop(journal.append("s2", "4"));
    drop(journal);

    let journal = Journal::open().await.unwrap();
    journal.append("s1", "5 Ø").await.unwrap();
    assert_eq!(
        journal.read_all().await.unwrap(),
        [
            pair("s1", "1"),
            pair("s2", "2"),
            pair("s1", "3"),
            pair("s2", "4"),
            pair("s1", "5 Ø")
        ]
    );
    journal.forget("s1").await.unwrap();
    journal.forget("no such session").await.unwrap();
    let left = [pair("s2", "2"), pair("s2", "4")];
    assert_eq!(journal.read_all().await.unwrap(), left);
    let again = Journal::open().await.unwrap();
    assert_eq!(again.read_all().await.unwrap(), left);
    journal.forget("s2").await.unwrap();
    assert!(again.read_all().await.unwrap().is_empty());
}

#[wasm_bindgen_test]
async fn the_journal_forgets_among_thousands() {
    let journal = emptied().await;
    let appends: Vec<_> = (0..2000)
        .map(|n| journal.append(if n % 4 == 0 { "keep" } else { "go" }, &n.to_string()))
        .collect();
    for append in appends {
        append.await.unwrap();
    }
    journal.forget("go").await.unwrap();
    let kept = journal.read_all().await.unwrap();
    let expected: Vec<_> = (0..2000)
        .step_by(4)
        .map(|n| pair("keep", &n.to_string()))
        .collect();
    assert_eq!(kept, expected);
    journal.forget("keep").await.unwrap();
}

/// What the rescue page relies on, read as it reads it.
#[wasm_bindgen_test]
async fn the_journal_has_the_promised_shape() {
    let journal = emptied().await;
    journal.append("s", "{}").await.unwrap();
    let seen = run(
        "const r = indexedDB.open('fenderbench');
         r.onsuccess = () => {
            const all = r.result.transaction('journal').objectStore('journal').getAll();
            all.onsuccess = () => { yes(r.result.version + JSON.stringify(all.result)); r.result.close(); };
         };",
    )
    .await;
    assert_eq!(
        seen.as_string().unwrap(),
        r#"1[{"session":"s","text":"{}"}]"#
    );
    journal.forget("s").await.unwrap();
}

#[wasm_bindgen_test]
async fn a_foreign_record_is_not_hidden() {
    let journal = emptied().await;
    run("const r = indexedDB.open('fenderbench');
         r.onsuccess = () => {
            const t = r.result.transaction('journal', 'readwrite');
            t.objectStore('journal').add(7);
            t.oncomplete = () => { r.result.close(); yes(); };
         };")
    .await;
    journal.append("s", "t").await.unwrap();
    assert_eq!(
        journal.read_all().await.unwrap(),
        [pair("", ""), pair("s", "t")]
    );
    emptied().await;
}

/// An append that fails when it commits must not look saved.
#[wasm_bindgen_test]
async fn an_aborted_append_is_an_error() {
    let journal = emptied().await;
    let original = run("const add = IDBObjectStore.prototype.add;
         IDBObjectStore.prototype.add = function (v) {
            const request = add.call(this, v);
            request.addEventListener('success', () => this.transaction.abort());
            return request;
         };
         yes(add);")
    .await;
    let seen = journal.append("s", "t").await;
    put_back("IDBObjectStore", "add", &original);
    assert!(matches!(seen, Err(StoreError::Other(_))), "{seen:?}");
    assert!(journal.read_all().await.unwrap().is_empty());
}

/// A newer version of the app, or a wipe, must not wait for this tab; the tab then says so.
#[wasm_bindgen_test]
async fn a_version_change_closes_the_journal() {
    let journal = emptied().await;
    let seen = run("const r = indexedDB.open('fenderbench', 2);
         r.onblocked = () => yes('blocked');
         r.onsuccess = () => { r.result.close(); yes('changed'); };")
    .await;
    assert_eq!(seen.as_string().unwrap(), "changed");
    for error in [
        journal.append("s", "t").await.unwrap_err(),
        journal.read_all().await.unwrap_err(),
        journal.forget("s").await.unwrap_err(),
        Journal::open().await.unwrap_err(),
    ] {
        assert!(matches!(error, StoreError::Other(_)), "{error:?}");
        assert!(!error.to_string().contains("reports"), "{error}");
    }
    wipe().await;
    let journal = Journal::open().await.unwrap();
    journal.append("s", "t").await.unwrap();
    emptied().await;
}

/// Another page holds an older database and does not make way.
#[wasm_bindgen_test]
async fn a_blocked_opening_is_said() {
    // Version 1 is never blocked by an older one, so the browser's part is played here.
    let original = replace(
        &window(),
        "indexedDB",
        "return { open() {
            const request = {};
            setTimeout(() => request.onblocked({ type: 'blocked' }));
            return request;
         } };",
    );
    let error = Journal::open().await.unwrap_err();
    restore(&window(), "indexedDB", &original);
    assert!(error.to_string().contains("Another tab"), "{error}");
}

/// A commit that the browser takes back for want of space.
#[wasm_bindgen_test]
async fn a_full_journal_is_said() {
    let journal = emptied().await;
    let original = run("const real = IDBDatabase.prototype.transaction;
         IDBDatabase.prototype.transaction = () => {
            const error = new DOMException('', 'QuotaExceededError');
            const transaction = { error, objectStore: () => ({ add: () => ({}) }) };
            setTimeout(() => transaction.onabort({ type: 'abort' }));
            return transaction;
         };
         yes(real);")
    .await;
    let seen = journal.append("s", "t").await;
    put_back("IDBDatabase", "transaction", &original);
    assert_eq!(seen, Err(StoreError::Full));
}

/// The journal with nothing in it.
async fn emptied() -> Journal {
    wipe().await;
    Journal::open().await.unwrap()
}

async fn wipe() {
    run("const r = indexedDB.deleteDatabase('fenderbench');
         r.onsuccess = () => yes(); r.onerror = no; r.onblocked = no;")
    .await;
}

/// Puts a browser's own method back in its class.
fn put_back(class: &str, method: &str, original: &JsValue) {
    let prototype = Reflect::get(&js_sys::global(), &class.into())
        .and_then(|class| Reflect::get(&class, &"prototype".into()))
        .unwrap();
    Reflect::set(&prototype, &method.into(), original).unwrap();
}
