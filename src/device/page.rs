//! The page around the app: start, panic, worker, what was chosen.
//!
//! The scripts in `public/` and this module talk through attributes of the
//! root element and events of the window, named here and there alike.

use js_sys::Reflect;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{CssStyleDeclaration, Element, Event, HtmlElement, NodeList};

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

/// Every element of the app that this selector names.
#[must_use]
pub fn all(selector: &str) -> Vec<Element> {
    let place = place();
    let found = place.and_then(|place| place.query_selector_all(selector).ok());
    let nodes = (0..found.as_ref().map_or(0, NodeList::length))
        .filter_map(|at| found.as_ref()?.item(at)?.dyn_into().ok());
    nodes.collect()
}

/// An element for a drawing, of this class.
#[must_use]
pub fn drawn(tag: &str, class: &str) -> Option<Element> {
    let document = web_sys::window()?.document()?;
    let element = document.create_element_ns(Some("http://www.w3.org/2000/svg"), tag);
    let element = element.ok()?;
    element.set_attribute("class", class).ok()?;
    Some(element)
}

/// How many sixteenths of a pixel of the device a pixel of the page has.
#[must_use]
#[expect(clippy::cast_possible_truncation, reason = "a few hundred at most")]
pub fn pixel_sixteenths() -> i32 {
    let ratio = web_sys::window().map_or(1.0, |window| window.device_pixel_ratio());
    libm::scalbn(ratio, 4) as i32
}

/// The size of type in pixels, to which a person may have set it.
#[must_use]
pub fn type_size() -> i32 {
    let root = root();
    let size = root.and_then(|root| style(&root)?.get_property_value("font-size").ok());
    size.and_then(|size| whole(&size).next()).unwrap_or(16)
}

/// The colours a canvas is drawn in: those its style gives to its text and to
/// lines about it, which it has none of.
#[must_use]
pub fn inks<const N: usize>(canvas: &Element) -> [(u8, u8, u8); N] {
    let names = [
        "color",
        "caret-color",
        "outline-color",
        "text-decoration-color",
        "column-rule-color",
    ];
    let style = style(canvas);
    core::array::from_fn(|at| {
        let name = names.get(at).copied().unwrap_or("color");
        let colour = style
            .as_ref()
            .and_then(|style| style.get_property_value(name).ok());
        let colour = colour.unwrap_or_default();
        let mut parts = whole(&colour).map(|part| u8::try_from(part).unwrap_or(u8::MAX));
        let mut part = || parts.next().unwrap_or_default();
        (part(), part(), part())
    })
}

fn style(element: &Element) -> Option<CssStyleDeclaration> {
    web_sys::window()?.get_computed_style(element).ok()?
}

/// The whole numbers in a text, parts of them left out.
fn whole(text: &str) -> impl Iterator<Item = i32> {
    let numbers = text.split(|c: char| !c.is_ascii_digit() && c != '.');
    let numbers = numbers.filter_map(|number| number.split('.').next());
    numbers.filter_map(|number| number.parse().ok())
}

/// Prints the page.
pub fn print() {
    if let Some(window) = web_sys::window() {
        let _ = window.print();
    }
}
