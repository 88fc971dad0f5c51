//! Leptos screens and their parts. No arithmetic and no storage calls: what
//! is shown comes from [`crate::present`], what is done goes to [`state`].

mod app;
mod parts;
mod screens;
mod state;
mod way;

pub use app::App;
