//! Drawers: an opening with what is in it, from the front, and one drawer from above and cut open.

mod corner;
mod elevation;
#[cfg(test)]
mod tests;

pub use corner::drawer_plan_view;
pub use elevation::drawer_elevation;
