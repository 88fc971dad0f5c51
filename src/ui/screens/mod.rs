//! One file a screen.

mod bench;
mod findings;
mod limits;
mod new;
mod open_file;
mod route;
mod safety;
mod set_up;
mod set_up_fields;
mod stations;

pub use bench::Bench;
pub use findings::Findings;
pub use limits::Limits;
pub use new::New;
pub use route::Route;
pub use set_up::SetUp;
pub use stations::Stations;
