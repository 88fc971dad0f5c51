//! The stores in a real browser: what they keep, and what they say when they cannot.

mod file;
mod journal;
mod local;
mod tabs;

use js_sys::{Function, Object, Promise, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::Window;

pub(crate) fn window() -> Window {
    web_sys::window().unwrap()
}

fn pair(session: &str, text: &str) -> (String, String) {
    (session.into(), text.into())
}

/// Runs a piece of JavaScript that ends by calling `yes` or `no`.
async fn run(body: &str) -> JsValue {
    let body = format!("(async () => {{ {body} }})().catch(no)");
    let function = Function::new_with_args("yes, no", &body);
    let promise = Promise::new(&mut |yes, no| {
        function.call2(&JsValue::NULL, &yes, &no).unwrap();
    });
    JsFuture::from(promise).await.unwrap()
}

/// Replaces a property by a getter with this body, and returns what `restore` needs.
pub(crate) fn replace(target: &Object, name: &str, getter: &str) -> JsValue {
    let original: JsValue = Object::get_own_property_descriptor(target, &name.into());
    let replaced = Object::new();
    let getter = Function::new_no_args(getter);
    Reflect::set(&replaced, &"get".into(), &getter).unwrap();
    Reflect::set(&replaced, &"configurable".into(), &true.into()).unwrap();
    Object::define_property(target, &name.into(), &replaced);
    original
}

/// Undoes a `replace`.
pub(crate) fn restore(target: &Object, name: &str, original: &JsValue) {
    match original.dyn_ref::<Object>() {
        Some(descriptor) => {
            Object::define_property(target, &name.into(), descriptor);
        }
        // It was inherited, so the replacement only has to go.
        None => assert!(Reflect::delete_property(target, &name.into()).unwrap()),
    }
}
