//! A value that screens follow and change.

use std::any::Any;
use std::cell::RefCell;
use std::marker::PhantomData;
use std::rc::Rc;
use std::sync::Arc;

use leptos::prelude::*;

use super::field::Chosen;
use super::live::text;

/// A value held for as long as the part of the app that made it, copied as a
/// handle. The framework is compiled for one type of it, whatever it holds:
/// its own signals would be compiled anew for each.
///
/// Once the part is gone, it reads as the default of its type, and a change
/// is of no effect.
pub struct Held<T> {
    value: StoredValue<Rc<dyn Any>, LocalStorage>,
    changed: Trigger,
    of: PhantomData<fn() -> T>,
}

impl<T> Clone for Held<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Held<T> {}

impl<T: Default + 'static> Held<T> {
    /// Holds this value.
    pub fn new(value: T) -> Self {
        Self::hold(Rc::new(RefCell::new(value)))
    }

    #[inline(never)]
    fn hold(value: Rc<dyn Any>) -> Self {
        Self {
            value: StoredValue::new_local(value),
            changed: Trigger::new(),
            of: PhantomData,
        }
    }

    #[inline(never)]
    fn cell(self) -> Rc<RefCell<T>> {
        let value = self.value.try_get_value();
        let cell = value.and_then(|value| value.downcast().ok());
        cell.unwrap_or_default()
    }

    /// Looks at it, and again when it changes.
    pub fn with<R>(self, look: impl FnOnce(&T) -> R) -> R {
        self.changed.track();
        self.peek(look)
    }

    /// Looks at it once.
    pub fn peek<R>(self, look: impl FnOnce(&T) -> R) -> R {
        look(&self.cell().borrow())
    }

    /// Changes it, and tells those who follow.
    pub fn update<R>(self, change: impl FnOnce(&mut T) -> R) -> R {
        let told = change(&mut self.cell().borrow_mut());
        self.changed.notify();
        told
    }

    /// Puts another value in its place.
    pub fn set(self, value: T) {
        self.update(|held| *held = value);
    }
}

impl<T: Clone + Default + 'static> Held<T> {
    /// The value, and again when it changes.
    pub fn get(self) -> T {
        self.with(T::clone)
    }

    /// The value, once.
    pub fn now(self) -> T {
        self.peek(T::clone)
    }
}

impl From<Held<String>> for Signal<String> {
    fn from(held: Held<String>) -> Self {
        text(move || held.get())
    }
}

impl From<Held<usize>> for Chosen {
    fn from(held: Held<usize>) -> Self {
        Arc::new(move || held.get())
    }
}
