//! How safe the data is, how to install, the theme, and the cautions.

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::device::page::Worker;
use crate::store::persist;
use crate::ui::parts::live::text;
use crate::ui::parts::theme::ThemeChoice;
use crate::ui::state::State;

/// The foot of the bench.
#[component]
pub fn Safety() -> impl IntoView {
    let worker = State::get().worker;
    let offline = text(move || {
        match worker.get() {
            Worker::Ready | Worker::Waiting => "Ready to work without a network.",
            Worker::Starting => "Getting ready to work without a network …",
            Worker::Replaced => "Another tab started a new version. Load this page again.",
            Worker::Failed => {
                "It could not be made ready to work without a network. Load the page again while \
             there is one."
            }
            Worker::Impossible => {
                "This address cannot work without a network: that needs HTTPS or localhost."
            }
        }
        .to_owned()
    });
    let lasting = RwSignal::new(false);
    spawn_local(async move { lasting.set(persist::persist().await) });
    let lasts = text(move || {
        let told = if lasting.get() {
            "The browser has agreed not to clear it by itself."
        } else {
            "The browser may clear it when space runs short: export a file."
        };
        told.to_owned()
    });
    view! {
        <section class="safety">
            <h2>"Where your data is"</h2>
            <p data-testid="offline">{offline}</p>
            <p>
                "On this device, in this browser, nowhere else. Nothing leaves it unless you share a \
                file. Clearing the browser's data erases it; files are the backup. "
                {lasts}
            </p>
            <p>
                "To keep it at hand: in the browser's menu choose “Install” or “Add to home screen”."
            </p>
            <ThemeChoice/>
            <h2>"Before you trust it"</h2>
            <p class="caution">
                "Fenderbench does arithmetic on your readings; it approves nothing. The service \
                manual, licensed practice and local rules come first. Not for aircraft, lifting \
                engines or pressure vessels. An engine that fails at speed throws parts: have \
                cranks, rods and bolts crack-tested. Support the engine on a rated stand, never work \
                under it hanging; keep solvents from flames and eyes; broken rings cut."
            </p>
        </section>
    }
}
