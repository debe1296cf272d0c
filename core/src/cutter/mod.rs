//! What does the cutting: its measured kerf, its teeth, and how passes overlap.

mod blade;
mod kerf;
mod raised;
mod request;
mod stack;

pub use blade::{Cutter, CutterRequest, Grind, GrindRequest};
pub use kerf::{KerfFault, kerf_from_slot};
pub use raised::RaisedBlade;
pub use request::{
    CutterStackPlan, CutterStackRequest, KerfFromSlotRequest, KerfPlan, StackPieces, StackPlan,
    build_stack, measure_kerf,
};
pub use stack::{MOST_LOOSE, Stack, StackFault, Stacks, cutter_stack};
