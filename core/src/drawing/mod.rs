//! Drawings as plain data: items at fixed places, each with the part it plays. Knows no SVG.
//!
//! Layout ends in a [`Drawing`]; the page, the printer and exports only consume it. What a role looks
//! like (colour, line width, dashes) is theirs to choose; where things are is decided here.

mod boards;
mod dovetail;
mod drawer;
mod item;
mod layout;
mod lens;
mod marking;
mod mated;
mod progress;
mod sheet;
mod sled;
mod template;
#[cfg(test)]
mod testing;
#[cfg(test)]
mod tests;
mod tools;
mod view;
mod window;

pub mod dxf;
pub mod svg;

pub use boards::box_joint_drawing;
pub use dovetail::{
    dovetail_boards, dovetail_mated, dovetail_progress, marking_template, sliding_drawing,
};
pub use drawer::{drawer_elevation, drawer_plan_view};
pub use item::{Anchor, Drawing, Item, Point, Role, Shape};
pub use layout::sheet_layout_drawing;
pub use marking::box_joint_template;
pub use mated::box_joint_mated;
pub use progress::board_progress;
pub use sled::{Paper, hole_line_tiles, sled_base, sled_travel_plan, sled_travel_side};
pub use tools::{
    HistoryPoint, five_cut_steps, groove_setup_drawing, screw_errors, screw_residuals,
    square_correction, square_history,
};
