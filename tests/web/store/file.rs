//! Files: what is read and refused, what is saved, what is handed to other apps.

use fenderbench::store::StoreError;
use fenderbench::store::file::{self, FILE_BYTES_MAX, Shared};
use js_sys::{Array, Reflect, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_test::wasm_bindgen_test;
use web_sys::File;

use super::{replace, restore, run, window};

fn a_file(bytes: &[u8]) -> File {
    let parts = Array::of1(&Uint8Array::from(bytes));
    File::new_with_str_sequence(&parts, "a.json").unwrap()
}

#[wasm_bindgen_test]
async fn text_is_read_as_it_is() {
    for (bytes, text) in [
        ("{\"Ø\":\"\u{1f527}\"}\r\n", "{\"Ø\":\"\u{1f527}\"}\r\n"),
        ("\u{feff}{}", "{}"),
        ("", ""),
    ] {
        assert_eq!(file::read(a_file(bytes.as_bytes())).await.unwrap(), text);
    }
}

#[wasm_bindgen_test]
async fn what_is_not_utf8_is_refused() {
    for bytes in [
        b"{\"a\":\"\xff\"}".as_slice(),
        b"\xed\xa0\x80",
        b"\xff\xfe{\0}\0",
        b"cut \xf0\x9f",
    ] {
        let error = file::read(a_file(bytes)).await.unwrap_err();
        assert!(matches!(error, StoreError::Damaged(_)), "{error:?}");
    }
}

#[wasm_bindgen_test]
async fn the_size_is_asked_before_reading() {
    let most = usize::try_from(FILE_BYTES_MAX).unwrap();
    let largest = file::read(a_file(&vec![b' '; most])).await.unwrap();
    assert_eq!(largest.len(), most);
    let file = a_file(&vec![b' '; most + 1]);
    let original = replace(&file, "arrayBuffer", "throw new Error('was read')");
    assert!(original.is_undefined());
    assert_eq!(
        file::read(file).await,
        Err(StoreError::TooLarge {
            bytes: u64::from(FILE_BYTES_MAX) + 1,
            most: FILE_BYTES_MAX
        })
    );
}

#[wasm_bindgen_test]
async fn a_file_that_is_gone_is_said() {
    let file = a_file(b"{}");
    replace(
        &file,
        "arrayBuffer",
        "return () => Promise.reject(new DOMException('', 'NotReadableError'))",
    );
    let error = file::read(file).await.unwrap_err();
    assert!(error.to_string().contains("Choose it again"), "{error}");
}

/// The browser's part is played here: the click is caught, and the address read.
#[wasm_bindgen_test]
async fn a_saved_file_has_its_name_and_text() {
    for name in ["engine Ø", "engine Ø.json"] {
        let caught = run("window.caught = null;
             window.realClick = HTMLAnchorElement.prototype.click;
             HTMLAnchorElement.prototype.click = function () { window.caught = this; };
             yes();");
        caught.await;
        file::download(name, "{\"Ø\":1}").unwrap();
        let seen = run("HTMLAnchorElement.prototype.click = window.realClick;
             const response = await fetch(window.caught.href);
             yes([window.caught.download, response.headers.get('content-type'),
                  await response.text()].join('|'));")
        .await;
        assert_eq!(
            seen.as_string().unwrap(),
            "engine Ø.json|application/json|{\"Ø\":1}"
        );
    }
}

/// Shares with the browser's part played by two bodies, and tells what came out.
async fn shared(can: &str, share: &str) -> Shared {
    let navigator = window().navigator();
    let real = [
        replace(&navigator, "canShare", can),
        replace(&navigator, "share", share),
    ];
    let seen = file::share("engine.json", "{}").await;
    restore(&navigator, "canShare", &real[0]);
    restore(&navigator, "share", &real[1]);
    seen.unwrap()
}

#[wasm_bindgen_test]
async fn sharing_says_when_to_save_instead() {
    let yes = "return () => true";
    let thrown =
        |name: &str| format!("return () => Promise.reject(new DOMException('', '{name}'))");
    let no = "return () => false";
    for (can, share, what) in [
        (yes, "return () => Promise.resolve()", Shared::Done),
        (yes, &thrown("AbortError"), Shared::LeftBe),
        (yes, &thrown("NotAllowedError"), Shared::CannotBe),
        (yes, &thrown("DataError"), Shared::CannotBe),
        (no, &thrown("AbortError"), Shared::CannotBe),
    ] {
        assert_eq!(shared(can, share).await, what, "{can}: {share}");
    }
}

#[wasm_bindgen_test]
async fn a_shared_file_is_plain_text() {
    let share = "return data => { window.handed = data.files[0]; return Promise.resolve(); }";
    assert_eq!(shared("return () => true", share).await, Shared::Done);
    let handed: File = Reflect::get(&window(), &"handed".into())
        .and_then(|file: JsValue| file.dyn_into())
        .unwrap();
    assert_eq!(handed.name(), "engine.json.txt");
    assert_eq!(handed.type_(), "text/plain");
    assert_eq!(file::read(handed).await.unwrap(), "{}");
}

/// As this browser is, whatever it can do: no panic, and no claim to have shared.
#[wasm_bindgen_test]
async fn sharing_without_a_touch_is_no_success() {
    assert_eq!(file::share("engine", "{}").await, Ok(Shared::CannotBe));
}
