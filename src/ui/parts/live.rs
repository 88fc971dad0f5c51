//! What follows the state. Each use of the framework with a closure of its
//! own type is compiled anew; these give all of them one type, which halves
//! the screens in the app.

use leptos::prelude::*;

/// Text that follows the state.
pub fn text(read: impl Fn() -> String + Send + Sync + 'static) -> Signal<String> {
    Signal::derive(read)
}

/// A yes or no that follows the state.
pub fn flag(read: impl Fn() -> bool + Send + Sync + 'static) -> Signal<bool> {
    Signal::derive(read)
}

/// A part of the screen that follows the state.
pub type Live = Box<dyn FnMut() -> AnyView + Send>;

/// A part of the screen that is made anew when what it reads changes.
pub fn live<V: IntoAny>(mut view: impl FnMut() -> V + Send + 'static) -> Live {
    Box::new(move || view().into_any())
}

/// A part of the screen that is there as long as there is something to show.
pub fn some<T, V: IntoAny>(
    read: impl Fn() -> Option<T> + Send + 'static,
    view: impl Fn(T) -> V + Send + 'static,
) -> Live {
    live(move || match read() {
        Some(shown) => view(shown).into_any(),
        None => ().into_any(),
    })
}

/// A paragraph with this class, and with this name for the tests.
pub fn said(class: &'static str, testid: &'static str, text: String) -> AnyView {
    view! { <p class=class data-testid=testid>{text}</p> }.into_any()
}
