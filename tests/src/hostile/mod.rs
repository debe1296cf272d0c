//! Input made up of bytes by somebody who means harm, and what must hold whatever they are.
//!
//! A fuzzer that watches which lines are reached turns the bytes over (`tests/fuzz`); a plain test does the
//! same with few of them (`tests/tests/hostile.rs`). Every function takes bytes and fails with the rule
//! that is broken; it is for the caller to see that nothing panics, hangs, or eats memory.

mod build;
mod drawers;
mod joints;
mod kept;
mod length;
mod lists;
mod making;
mod page;
mod plans;
mod replies;
mod requests;
mod shapes;
mod sheets;
mod spoil;
mod tools;

pub use kept::{file, link};
pub use length::length;
pub use tools::{TOOLS, Tool};

/// Whether a rule holds, with what breaks it.
pub type Held = anyhow::Result<()>;
