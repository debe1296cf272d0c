//! The slope of a dovetail's flanks.

use super::request::SlopeRequest;
use crate::check::Checker;
use crate::limits;
use crate::math::{atan2, cos, hypot, sin, tan};

/// A checked slope.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Slope {
    /// Tangent: how far a flank runs across the width for each millimetre through the board.
    pub(super) tan: f64,
    pub(super) cos: f64,
    pub(super) sin: f64,
    pub(super) degrees: f64,
}

impl Slope {
    pub(super) fn check(request: &SlopeRequest, check: &mut Checker<'_>) -> Option<Self> {
        let kinds = [("ratio", true), ("angle", false)];
        if check.word("kind", &request.kind, &kinds)? {
            check.unused("a ratio", &[("degrees", request.degrees.is_missing())]);
            let run = check.number("run", &request.run, &limits::SLOPE_RUN)?;
            return Some(Self::ratio(run));
        }
        check.unused("an angle", &[("run", request.run.is_missing())]);
        let degrees = check.number("degrees", &request.degrees, &limits::SLOPE_ANGLE)?;
        let radians = degrees.to_radians();
        Some(Self {
            tan: tan(radians),
            cos: cos(radians),
            sin: sin(radians),
            degrees,
        })
    }

    /// A slope of 1 in `run`.
    pub(super) fn ratio(run: f64) -> Self {
        let long = hypot(1.0, run);
        Self {
            tan: 1.0 / run,
            cos: run / long,
            sin: 1.0 / long,
            degrees: atan2(1.0, run).to_degrees(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Slope, SlopeRequest};
    use crate::check::Checker;

    #[test]
    fn ratios_in_degrees() {
        // Arctangent; trade press prints 9.5° for 1:6 and 7.1° for 1:8.
        for (run, degrees) in [(5.0, 11.310), (6.0, 9.462), (7.0, 8.130), (8.0, 7.125)] {
            let slope = Slope::ratio(run);
            assert!(
                (slope.degrees - degrees).abs() < 5e-4,
                "1:{run}: {}",
                slope.degrees
            );
            let request = SlopeRequest::angle(slope.degrees);
            let angle = Slope::check(&request, &mut Checker::new(&mut Vec::new())).unwrap();
            for (x, y) in [
                (angle.tan, slope.tan),
                (angle.cos, slope.cos),
                (angle.sin, slope.sin),
            ] {
                assert!((x - y).abs() < 1e-14, "1:{run}: {x} and {y}");
            }
        }
    }
}
