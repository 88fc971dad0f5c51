//! Fenderbench.
fn main() {}
