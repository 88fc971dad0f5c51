//! What follows the state. Each use of the framework with a closure of its
//! own type is compiled anew; these give all of them one type, which halves
//! the screens in the app.

use leptos::prelude::*;

/// Text that follows the state.
pub fn text(read: impl Fn() -> String + Send + Sync + 'static) -> Signal<String> {
    let read: Box<dyn Fn() -> String + Send + Sync> = Box::new(read);
    Memo::new(move |_| read()).into()
}

/// A yes or no that follows the state.
pub fn flag(read: impl Fn() -> bool + Send + Sync + 'static) -> Signal<bool> {
    let read: Box<dyn Fn() -> bool + Send + Sync> = Box::new(read);
    Memo::new(move |_| read()).into()
}

/// A part of the screen that follows the state.
pub type Live = Box<dyn FnMut() -> AnyView + Send>;

/// A part of the screen that is made anew when what it reads changes.
pub fn live(view: impl FnMut() -> AnyView + Send + 'static) -> Live {
    Box::new(view)
}

/// A part of the screen that is there as long as there is something to show.
pub fn some<T>(
    read: impl Fn() -> Option<T> + Send + 'static,
    view: impl Fn(T) -> AnyView + Send + 'static,
) -> Live {
    live(move || read().map_or_else(|| ().into_any(), &view))
}

/// A paragraph with this class, and with this name for the tests.
pub fn said(class: &'static str, testid: &'static str, text: String) -> AnyView {
    view! { <p class=class data-testid=testid>{text}</p> }.into_any()
}
