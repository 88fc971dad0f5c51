//! One file a screen.

mod bench;
mod findings;
mod gauges;
mod how_sure;
mod kinds;
mod limits;
mod look_at;
mod looks;
mod new;
mod open_file;
mod plan;
mod route;
mod safety;
mod set_up;
mod set_up_fields;
mod set_up_given;
mod set_up_shop;
mod stations;

pub use bench::bench;
pub use findings::findings;
pub use gauges::gauges;
pub use kinds::kinds;
pub use limits::limits;
pub use looks::looks;
pub use new::new;
pub use plan::plan;
pub use route::route;
pub use set_up::set_up;
pub use stations::stations;
