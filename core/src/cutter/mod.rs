//! What does the cutting: its measured kerf, its teeth, and how passes overlap.

mod blade;

pub use blade::{Cutter, CutterRequest, Grind, GrindRequest};
