//! Box joints: square interlocking pins and sockets.

mod plan;
mod request;

pub use plan::{BoxJointPlan, GrooveEnd, GroovePlace, GroovePlan, Make, RipTo, Through};
pub use request::{BoardRequest, BoxJointRequest, GrooveRequest, LayoutRequest, SawRequest};
