//! One file a screen.

mod bench;
mod feature_findings;
mod findings;
mod gauges;
mod how_sure;
mod instrument;
mod kinds;
pub mod later;
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
use findings::findings;
use gauges::gauges;
use instrument::instrument;
use kinds::kinds;
use limits::limits;
use looks::looks;
pub use new::new;
use plan::plan;
pub use route::route;
use set_up::set_up;
use stations::stations;
