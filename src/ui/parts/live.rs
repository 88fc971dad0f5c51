//! What follows the state. Closures are boxed at once, so that the framework
//! is compiled for one type of each, see [`super::el`].

use leptos::prelude::*;

/// Text that follows the state.
pub fn text(read: impl Fn() -> String + Send + Sync + 'static) -> Signal<String> {
    text_of(Box::new(read))
}

// On their own: a closure in a function of a type is a type of its own for
// each, and the framework would be compiled anew for it.
#[inline(never)]
fn text_of(read: Box<dyn Fn() -> String + Send + Sync>) -> Signal<String> {
    Memo::new(move |_| read()).into()
}

/// A yes or no that follows the state.
pub fn flag(read: impl Fn() -> bool + Send + Sync + 'static) -> Signal<bool> {
    flag_of(Box::new(read))
}

#[inline(never)]
fn flag_of(read: Box<dyn Fn() -> bool + Send + Sync>) -> Signal<bool> {
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
    act_of(Box::new(act))
}

#[inline(never)]
fn act_of(act: Box<dyn Fn() + Send + Sync>) -> Callback<()> {
    Callback::new(move |()| act())
}

/// No part of a screen, of the type that a list of parts has.
pub fn nothing() -> AnyView {
    Vec::<AnyView>::new().into_any()
}
