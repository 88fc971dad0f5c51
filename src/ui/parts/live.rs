//! What follows the state. Closures are boxed at once, so that the framework
//! is compiled for one type of each, see [`super::el`].

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

/// What is done at a touch.
pub fn act(act: impl Fn() + Send + Sync + 'static) -> Callback<()> {
    let act: Box<dyn Fn() + Send + Sync> = Box::new(act);
    Callback::new(move |()| act())
}

/// No part of a screen, of the type that a list of parts has.
pub fn nothing() -> AnyView {
    Vec::<AnyView>::new().into_any()
}
