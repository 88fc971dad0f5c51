//! Starts the app in the page.

use fenderbench::{device::page, ui::App};

fn main() {
    // The release has no words for a panic, see `.ci/xtask/src/app.rs`; its
    // trap alone tells the page.
    #[cfg(debug_assertions)]
    std::panic::set_hook(Box::new(|info| {
        console_error_panic_hook::hook(info);
        page::panicked();
    }));
    if let Some(place) = page::place() {
        leptos::mount::mount_to(place, App).forget();
    }
}
