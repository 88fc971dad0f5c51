//! Where the data is and what can erase it, how to install, and what the
//! app's word is worth.

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::device::page::Worker;
use crate::store::persist;
use crate::ui::parts::el::el;
use crate::ui::parts::held::Held;
use crate::ui::parts::live::text;
use crate::ui::parts::press::para;
use crate::ui::state::State;

const WHERE: &str = "In this browser on this device, nowhere else. Nothing leaves it unless you \
                     share a file. Clearing the browser’s data erases it; a file opens again here \
                     or on any other device.";

const INSTALL: &str = "To keep it at hand: in the browser’s menu choose “Install” or “Add to home \
                       screen”, before you measure. An installed app may keep its data apart.";

/// What stands under the line on the bench.
pub fn safety() -> AnyView {
    let worker = State::get().worker;
    let offline = text(move || offline(worker.get()).to_owned());
    let lasting = Held::new(false);
    spawn_local(async move { lasting.set(persist::persisted().await) });
    let lasts = text(move || {
        let told = if lasting.get() {
            "The browser has agreed not to clear it by itself."
        } else {
            "The browser may clear it when space runs short: export a file."
        };
        told.to_owned()
    });
    el("div", "fields")
        .with(para("", WHERE))
        .with(para("", lasts))
        .with(para("", offline).id("offline"))
        .with(para("", INSTALL))
        .done()
}

const fn offline(worker: Worker) -> &'static str {
    match worker {
        Worker::Ready | Worker::Waiting => "Ready to work without a network.",
        Worker::Starting => "Getting ready to work without a network …",
        Worker::Replaced => "Another tab started a new version. Load this page again.",
        Worker::Failed => {
            "It could not be made ready to work without a network. Load the page again while \
             there is one; until then keep this page open."
        }
        Worker::Impossible => {
            "This address cannot work without a network: that needs HTTPS or localhost. Keep this \
             page open while you measure."
        }
    }
}
