//! How fast the pure half is here, and the built app on a slow phone.

use crate::shop::{Result, Shop};
use crate::{e2e, tools};
use std::process::ExitCode;

/// Both are measured, also where the first misses a budget.
pub fn command(shop: &mut Shop) -> Result<ExitCode> {
    let native = shop.desk(&["bench"])?;
    tools::ensure(shop, &e2e::NEEDS)?;
    e2e::perform(shop, "node bench/main.mjs")?;
    Ok(native)
}
