//! Other tabs of the app: each tells the others what it has entered.

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{BroadcastChannel, MessageEvent};

use super::record;

const CHANNEL: &str = "fenderbench";

/// The line to the other tabs. Dropping it hangs up.
#[derive(Debug)]
pub struct Others {
    channel: BroadcastChannel,
    // The browser calls it for as long as the channel is open.
    _heard: Closure<dyn Fn(MessageEvent)>,
}

impl Others {
    /// Listens to the other tabs: `on_text` gets the session's id and the text. Nothing where
    /// the browser has no channel between tabs; each tab is then on its own.
    pub fn open(on_text: impl Fn(String, String) + 'static) -> Option<Self> {
        let channel = BroadcastChannel::new(CHANNEL).ok()?;
        let heard = Closure::<dyn Fn(MessageEvent)>::new(move |message: MessageEvent| {
            // Another version of the app may say other things here.
            if let Some((session, text)) = record::texts(&message.data()) {
                on_text(session, text);
            }
        });
        channel.set_onmessage(Some(heard.as_ref().unchecked_ref()));
        Some(Self {
            channel,
            _heard: heard,
        })
    }

    /// Tells every other tab. Nobody answers, and a failure has no consequence: the journal
    /// has the text, and other tabs read it when they are next loaded.
    pub fn tell(&self, session: &str, text: &str) {
        if let Ok(message) = record::object(session, text) {
            let _ = self.channel.post_message(&message);
        }
    }
}

impl Drop for Others {
    fn drop(&mut self) {
        self.channel.set_onmessage(None);
        self.channel.close();
    }
}
