//! Which screen is shown: the part of the address after `#`.

use leptos::ev;
use leptos::prelude::*;

use crate::session::SessionId;

/// A screen.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Screen {
    /// The sessions.
    Bench,
    /// A new session.
    New,
    /// A screen of a session.
    Of(SessionId, Sheet),
}

/// A screen of a session.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sheet {
    /// The route with the keypad.
    Route,
    /// Every station of the route, to go to.
    Stations,
    /// What can be seen, and what is behind it.
    Looks,
    /// What the readings say.
    Findings,
    /// The plan for the set.
    Plan,
    /// The limits of the manual.
    Limits,
    /// Layout, gauges, handing on.
    SetUp,
    /// What is measured with what, and what each gauge is set to.
    Gauges,
    /// What to measure.
    Kinds,
    /// How a micrometer is read.
    Instrument,
}

impl Sheet {
    const ALL: [Self; 10] = [
        Self::Route,
        Self::Stations,
        Self::Looks,
        Self::Findings,
        Self::Plan,
        Self::Limits,
        Self::SetUp,
        Self::Gauges,
        Self::Kinds,
        Self::Instrument,
    ];

    const fn key(self) -> &'static str {
        match self {
            Self::Route => "route",
            Self::Stations => "stations",
            Self::Looks => "looks",
            Self::Findings => "findings",
            Self::Plan => "plan",
            Self::Limits => "limits",
            Self::SetUp => "set-up",
            Self::Gauges => "gauges",
            Self::Kinds => "what-to-measure",
            Self::Instrument => "how-to-read",
        }
    }
}

/// The address of a screen of a session.
pub fn sheet_address(id: &SessionId, sheet: Sheet) -> String {
    format!("#/{}/{}", id.as_str(), sheet.key())
}

fn screen(hash: &str) -> Screen {
    let path = hash.trim_start_matches('#').trim_start_matches('/');
    match path.split_once('/') {
        None if path == "new" => Screen::New,
        Some((id, sheet)) => {
            let sheet = Sheet::ALL.into_iter().find(|s| s.key() == sheet);
            match SessionId::parse(id).zip(sheet) {
                Some((id, sheet)) => Screen::Of(id, sheet),
                None => Screen::Bench,
            }
        }
        None => Screen::Bench,
    }
}

fn hash() -> String {
    window().location().hash().unwrap_or_default()
}

/// The screen in the address, followed.
pub fn follow() -> ReadSignal<Screen> {
    let (read, write) = signal(screen(&hash()));
    let handle = window_event_listener(ev::hashchange, move |_| {
        write.set(screen(&hash()));
        to_top();
    });
    on_cleanup(move || handle.remove());
    read
}

/// Shows the screen from its top.
pub fn to_top() {
    window().scroll_to_with_x_and_y(0.0, 0.0);
}

/// Goes to an address.
pub fn go(address: &str) {
    // The only way this fails is a document that is going away.
    let _ = window().location().set_hash(address);
}
