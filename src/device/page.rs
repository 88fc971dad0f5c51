//! The page around the app: start, panic, worker, what was chosen.
//!
//! The scripts in `public/` and this module talk through attributes of the
//! root element and events of the window, named here and there alike.

use js_sys::Reflect;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Element, Event, HtmlElement};

/// What is known of working offline.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Worker {
    /// Not known yet.
    #[default]
    Starting,
    /// The page can be opened without a network.
    Ready,
    /// As ready, and a new version waits.
    Waiting,
    /// Another tab took a new version over.
    Replaced,
    /// The copy for working offline could not be made.
    Failed,
    /// No worker can run at this address.
    Impossible,
}

/// What is known of working offline now.
#[must_use]
pub fn worker() -> Worker {
    let state = root().and_then(|root| root.get_attribute("data-worker"));
    match state.as_deref() {
        Some("ready") => Worker::Ready,
        Some("waiting") => Worker::Waiting,
        Some("replaced") => Worker::Replaced,
        Some("failed") => Worker::Failed,
        Some("none") => Worker::Impossible,
        _ => Worker::Starting,
    }
}

/// Calls back whenever what [`worker`] says changes, as long as the page
/// lives.
pub fn on_worker(changed: impl Fn() + 'static) {
    listen("fenderbench-worker", changed);
}

fn listen(event: &str, changed: impl Fn() + 'static) {
    let changed = Closure::<dyn Fn()>::new(changed);
    if let Some(window) = web_sys::window() {
        let listener = changed.as_ref().unchecked_ref();
        let _ = window.add_event_listener_with_callback(event, listener);
        changed.forget();
    }
}

/// Whether the second module is there, with the screens that a start does not
/// need.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Later {
    /// It is.
    Here,
    /// It is being loaded.
    #[default]
    OnItsWay,
    /// It could not be loaded.
    NotHere,
}

/// Whether the second module is there now.
#[must_use]
pub fn later() -> Later {
    let state = root().and_then(|root| root.get_attribute("data-later"));
    match state.as_deref() {
        Some("here") => Later::Here,
        Some("failed") => Later::NotHere,
        _ => Later::OnItsWay,
    }
}

/// Calls back whenever what [`later`] says changes, as long as the page
/// lives.
pub fn on_later(changed: impl Fn() + 'static) {
    listen("fenderbench-later", changed);
}

/// Lets the version that waits take over; the page loads again once it has.
pub fn take_over() {
    tell("fenderbench-take-over");
}

/// Tells the page that the app has stopped; it offers the data as a file.
pub fn panicked() {
    tell("fenderbench-panic");
}

/// Tells the page that the app stands, and takes the shell away.
pub fn started() {
    if let Some(root) = root() {
        let _ = root.set_attribute("data-started", "yes");
    }
    if let Some(shell) = by_id("shell") {
        shell.remove();
    }
}

/// The element the app lives in.
#[must_use]
pub fn place() -> Option<HtmlElement> {
    by_id("app")?.dyn_into().ok()
}

/// Tells styles and scripts something by an attribute of the root element:
/// `data-hand="left"`.
pub fn set(name: &str, word: &str) {
    if let Some(root) = root() {
        let _ = root.set_attribute(&["data-", name].concat(), word);
    }
}

/// Whether the root element has this attribute.
#[must_use]
pub fn is_set(name: &str, word: &str) -> bool {
    let now = root().and_then(|root| root.get_attribute(&["data-", name].concat()));
    now.as_deref() == Some(word)
}

/// Whether this phone can do what is chosen by this name.
#[must_use]
pub fn is_able(name: &str) -> bool {
    let Some(window) = web_sys::window() else {
        return false;
    };
    let has = |of: &JsValue, what: &str| Reflect::has(of, &what.into()).unwrap_or(false);
    match name {
        "sound" => has(&window, "AudioContext"),
        "spoken" => has(&window, "speechSynthesis"),
        "awake" => has(&window.navigator(), "wakeLock"),
        _ => true,
    }
}

fn tell(event: &str) {
    if let (Some(window), Ok(event)) = (web_sys::window(), Event::new(event)) {
        let _ = window.dispatch_event(&event);
    }
}

fn root() -> Option<Element> {
    web_sys::window()?.document()?.document_element()
}

fn by_id(id: &str) -> Option<Element> {
    web_sys::window()?.document()?.get_element_by_id(id)
}

/// Gives the focus to the element of this id, if it is there.
pub fn focus(id: &str) {
    if let Some(element) = by_id(id).and_then(|e| e.dyn_into::<HtmlElement>().ok()) {
        let _ = element.focus();
    }
}
