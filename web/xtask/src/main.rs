//! Builds, serves, tests and measures Notchwright.
fn main() {}
