//! Stands in for the crate of this name. Leptos brings it along for server
//! functions, which a client-only app has not; but what it exports to
//! JavaScript no linker can leave out, 5 kB of the first load. Nothing here
//! is ever called: a stream is empty.

use core::pin::Pin;
use core::task::{Context, Poll};

use futures_core::Stream;
use wasm_bindgen::JsValue;

/// A stream of the browser, only handed through.
pub struct ReadableStream(web_sys::ReadableStream);

impl ReadableStream {
    /// Takes the browser's stream.
    pub fn from_raw(raw: web_sys::ReadableStream) -> Self {
        Self(raw)
    }

    /// A stream of nothing.
    pub fn from_stream(_: impl Stream<Item = Result<JsValue, JsValue>> + 'static) -> Self {
        Self(JsValue::UNDEFINED.into())
    }

    /// Gives the browser's stream back.
    pub fn into_raw(self) -> web_sys::ReadableStream {
        self.0
    }

    /// A stream of nothing.
    pub fn into_stream(self) -> Nothing {
        Nothing
    }
}

/// A stream that has ended.
pub struct Nothing;

impl Stream for Nothing {
    type Item = Result<JsValue, JsValue>;

    fn poll_next(self: Pin<&mut Self>, _: &mut Context<'_>) -> Poll<Option<Self::Item>> {
        Poll::Ready(None)
    }
}
