//! How safe the data is, how to install, this phone, and the cautions.

use leptos::task::spawn_local;

use crate::device::page::Worker;
use crate::store::persist;
use crate::ui::parts::el::{El, el};
use crate::ui::parts::held::Held;
use crate::ui::parts::live::text;
use crate::ui::parts::phone::this_phone;
use crate::ui::parts::press::{heading, para};
use crate::ui::state::State;

const WHERE: &str = "On this device, in this browser, nowhere else. Nothing leaves it unless you \
                     share a file. Clearing the browser's data erases it; files are the backup.";

const INSTALL: &str = "To keep it at hand: in the browser's menu choose “Install” or “Add to home \
                       screen”.";

const CAUTION: &str = "Fenderbench does arithmetic on your readings; it approves nothing. The \
                       service manual, licensed practice and local rules come first. Not for \
                       aircraft, lifting engines or pressure vessels. An engine that fails at \
                       speed throws parts: have cranks, rods and bolts crack-tested. Support the \
                       engine on a rated stand, never work under it hanging; keep solvents from \
                       flames and eyes; broken rings cut.";

/// The foot of the bench.
pub fn safety() -> El {
    let worker = State::get().worker;
    let offline = text(move || offline(worker.get()).to_owned());
    let lasting = Held::new(false);
    spawn_local(async move { lasting.set(persist::persist().await) });
    let lasts = text(move || {
        let told = if lasting.get() {
            "The browser has agreed not to clear it by itself."
        } else {
            "The browser may clear it when space runs short: export a file."
        };
        told.to_owned()
    });
    el("section", "safety")
        .with(heading("Where your data is"))
        .with(para("", offline).id("offline"))
        .with(para("", WHERE))
        .with(para("", lasts))
        .with(para("", INSTALL))
        .with(heading("This phone"))
        .with(this_phone())
        .with(heading("Before you trust it"))
        .with(para("caution", CAUTION))
}

const fn offline(worker: Worker) -> &'static str {
    match worker {
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
}
