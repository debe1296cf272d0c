//! Grooves on the router table: fence settings, stop marks, passes.

use serde::Serialize;

use crate::check::{Checker, optional_part};
use crate::given::{Given, request};
use crate::limits;
use crate::message;
use crate::problem::{Checked, Code, Note, Planned, Severity};
use crate::units::Mm;

request! {
    /// A groove to be routed along a board.
    pub struct GrooveSetupRequest {
        /// Reference edge to the middle of the groove, mm.
        pub from_edge: Given<f64> = "fromEdge",
        /// Width of the groove, mm; for a real sheet its measured thickness and the clearance.
        pub width: Given<f64> = "width",
        /// Diameter of the bit, mm; at most the width.
        pub bit: Given<f64> = "bit",
        /// Where the groove begins and ends, from the board's leading end; from end to end when left out.
        pub stopped: Given<StoppedRequest> = "stopped",
        /// Deepest that one pass may go, mm.
        pub pass_depth: Given<f64> = "passDepth",
        /// Depth of the groove, mm.
        pub depth: Given<f64> = "depth",
    }

    /// Both ends of a stopped groove.
    pub struct StoppedRequest {
        /// Leading end of the board to where the groove begins, mm.
        pub from: Given<f64> = "from",
        /// Leading end of the board to where the groove ends, mm.
        pub to: Given<f64> = "to",
    }
}

/// How to rout a groove.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct GrooveSetupPlan {
    /// Fence settings, nearest first.
    pub passes: Vec<FencePass>,
    /// Depths to set one after another, mm; empty when no depth was given.
    pub depths: Vec<Mm>,
    /// Marks for a stopped groove.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub marks: Option<Marks>,
    /// Radius of a stopped groove's round ends, mm.
    pub end_radius: Mm,
    /// What was asked for, for drawings.
    #[serde(skip)]
    pub(crate) job: Job,
}

/// One setting of the fence.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct FencePass {
    /// Fence to the bit's nearer side, mm.
    pub fence_to_bit: Mm,
}

/// Where the board's leading end is when a stopped groove begins and ends.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Marks {
    /// At the start: leading end past the mark at the bit's far side (the side the board is fed towards), mm.
    pub start_past_far_mark: Mm,
    /// At the end: leading end past the mark at the bit's near side (the side the board comes from), mm.
    pub stop_past_near_mark: Mm,
    /// The same two from the middle of the bit, mm: at the start.
    pub start_from_middle: Mm,
    /// From the middle of the bit, at the end, mm.
    pub stop_from_middle: Mm,
    /// How far the board is fed, mm.
    pub feed: Mm,
}

/// A groove in checked measures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Job {
    pub(crate) from_edge: Mm,
    pub(crate) width: Mm,
    pub(crate) bit: Mm,
    stopped: Option<(Mm, Mm)>,
    pub(crate) depth: Option<Mm>,
    pass_depth: Option<Mm>,
}

/// Sets up a groove of width `w` centred `e` from the reference edge with a bit `d`: first pass `e − w/2`, last
/// `e + w/2 − d` (derived); both grooves of a pair from the same edge are parallel even on a base that is
/// not square (common practice).
///
/// # Errors
/// Every problem of the request at once.
pub fn groove_setup(request: &GrooveSetupRequest) -> Checked<GrooveSetupPlan> {
    let mut problems = Vec::new();
    match read(request, &mut Checker::new(&mut problems)) {
        Some(job) if problems.is_empty() => Ok(answer(&job)),
        _ => Err(problems),
    }
}

fn read(request: &GrooveSetupRequest, check: &mut Checker<'_>) -> Option<Job> {
    let from_edge = check.length("fromEdge", &request.from_edge, &limits::GROOVE_PLACE);
    let width = check.length("width", &request.width, &limits::GROOVE_WIDTH);
    let bit = check.length("bit", &request.bit, &limits::BIT);
    let stopped = optional_part("stopped", &request.stopped, check, |stopped, check| {
        let from = check.length("from", &stopped.from, &limits::GROOVE_PLACE);
        let to = check.length("to", &stopped.to, &limits::GROOVE_PLACE);
        Some((from?, to?))
    });
    let depth = check.optional_length("depth", &request.depth, &limits::GROOVE_DEPTH);
    let pass_depth = check.optional_length("passDepth", &request.pass_depth, &limits::GROOVE_DEPTH);
    let job = Job {
        from_edge: from_edge?,
        width: width?,
        bit: bit?,
        stopped: stopped?,
        depth: depth?,
        pass_depth: pass_depth?,
    };
    goes_together(&job, check);
    Some(job)
}

fn goes_together(job: &Job, check: &mut Checker<'_>) {
    if job.bit.is_above(job.width) {
        let message = message![
            "The bit cuts ",
            job.bit,
            " and the groove is ",
            job.width,
            " wide; take a bit of at most ",
            job.width,
            "."
        ];
        check.refuse("bit", Code::CutterTooWide, message, Some(job.width.mm()));
    }
    if job.from_edge.is_below(job.width / 2.0) {
        let least = job.width / 2.0;
        let message = message![
            "The groove would run over the edge; its middle must be at least ",
            least,
            " from it."
        ];
        check.refuse("fromEdge", Code::TooSmall, message, Some(least.mm()));
    }
    if let Some((from, to)) = job.stopped
        && (to - from).is_below(job.bit)
    {
        let least = from + job.bit;
        let message = message![
            "The groove must be at least as long as the bit is wide: end it at ",
            least,
            " or later."
        ];
        check
            .at("stopped")
            .refuse("to", Code::TooSmall, message, Some(least.mm()));
    }
    if job.pass_depth.is_some() && job.depth.is_none() {
        let message = message!["Give the groove's depth, or no depth of pass."];
        check.refuse("depth", Code::Missing, message, None);
    }
}

/// Side by side, passes overlap by at least a fifth of the bit, so that no ridge is left between them.
const SIDE_STEP: f64 = 0.8;

fn answer(job: &Job) -> Planned<GrooveSetupPlan> {
    let first = job.from_edge - job.width / 2.0;
    let room = job.width - job.bit;
    let gaps = count(room / (job.bit * SIDE_STEP));
    let passes = (0..=gaps)
        .map(|i| FencePass {
            fence_to_bit: first + room * (f64::from(i) / f64::from(gaps.max(1))),
        })
        .collect();
    let plan = GrooveSetupPlan {
        passes,
        depths: depths(job),
        marks: job.stopped.map(|(from, to)| marks(from, to, job.bit)),
        end_radius: job.bit / 2.0,
        job: *job,
    };
    Planned {
        plan,
        notes: notes(job),
    }
}

/// Steps to cover a ratio of lengths, none for nothing at all.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a groove over a bit: a thousand at most"
)]
fn count(ratio: f64) -> u32 {
    (ratio - 1e-9).ceil().max(0.0) as u32
}

fn depths(job: &Job) -> Vec<Mm> {
    let Some(depth) = job.depth else {
        return Vec::new();
    };
    let passes = job.pass_depth.map_or(1, |pass| count(depth / pass).max(1));
    (1..=passes)
        .map(|i| depth * (f64::from(i) / f64::from(passes)))
        .collect()
}

fn marks(from: Mm, to: Mm, bit: Mm) -> Marks {
    Marks {
        start_past_far_mark: from,
        stop_past_near_mark: to,
        start_from_middle: from + bit / 2.0,
        stop_from_middle: to - bit / 2.0,
        feed: to - from - bit,
    }
}

fn notes(job: &Job) -> Vec<Note> {
    let same_edge = message![
        "Rout both grooves of a pair with the same reference edge against the fence: they are then parallel even on a \
         base that is not square (common practice)."
    ];
    let round = message![
        "The groove's ends are round: square them with a chisel, or round the part that goes in."
    ];
    let unplug = message![
        "Unplug the router before you change the bit or measure at it; feed against the bit's turning, hands away from it."
    ];
    let mut notes = vec![Note::new("same-edge", Severity::Info, same_edge)];
    if job.stopped.is_some() {
        notes.push(Note::new("round-ends", Severity::Info, round));
    }
    notes.push(Note::new("unplug-router", Severity::Caution, unplug));
    notes
}

#[cfg(test)]
mod tests {
    use super::{GrooveSetupRequest, StoppedRequest, groove_setup};
    use crate::problem::Code;

    fn request(from_edge: f64, width: f64, bit: f64) -> GrooveSetupRequest {
        GrooveSetupRequest {
            from_edge: from_edge.into(),
            width: width.into(),
            bit: bit.into(),
            ..GrooveSetupRequest::default()
        }
    }

    /// Fence settings in whole micrometres.
    fn fences(request: &GrooveSetupRequest) -> Vec<f64> {
        let passes = groove_setup(request).unwrap().plan.passes;
        passes
            .iter()
            .map(|pass| (pass.fence_to_bit.mm() * 1e3).round())
            .collect()
    }

    #[test]
    fn the_fence_is_set_from_the_edge() {
        // Derived: first e − w/2, last e + w/2 − d.
        assert_eq!(fences(&request(12.0, 6.0, 6.0)), [9000.0]);
        assert_eq!(fences(&request(12.0, 10.0, 6.0)), [7000.0, 11_000.0]);
        assert_eq!(
            fences(&request(20.0, 16.0, 6.0)),
            [12_000.0, 15_333.0, 18_667.0, 22_000.0]
        );
    }

    #[test]
    fn a_stopped_groove_is_marked_at_the_bits_sides() {
        // Derived: a 6 mm bit from 40 to 100 feeds 54 and leaves ends of radius 3.
        let stopped = StoppedRequest {
            from: 40.0.into(),
            to: 100.0.into(),
        };
        let plan = groove_setup(&GrooveSetupRequest {
            stopped: stopped.into(),
            ..request(12.0, 6.0, 6.0)
        })
        .unwrap()
        .plan;
        let marks = plan.marks.unwrap();
        assert_eq!(
            (
                marks.start_past_far_mark.mm(),
                marks.stop_past_near_mark.mm()
            ),
            (40.0, 100.0)
        );
        assert_eq!(
            (
                marks.start_from_middle.mm(),
                marks.stop_from_middle.mm(),
                marks.feed.mm()
            ),
            (43.0, 97.0, 54.0)
        );
        assert_eq!(plan.end_radius.mm(), 3.0);
    }

    #[test]
    fn depth_is_reached_in_equal_passes() {
        let deep = GrooveSetupRequest {
            depth: 7.0.into(),
            pass_depth: 3.0.into(),
            ..request(12.0, 6.0, 6.0)
        };
        let depths: Vec<_> = groove_setup(&deep)
            .unwrap()
            .plan
            .depths
            .iter()
            .map(|depth| (depth.mm() * 1e3).round())
            .collect();
        assert_eq!(depths, [2333.0, 4667.0, 7000.0]);
    }

    #[test]
    fn what_does_not_go_together_is_said_at_once() {
        let stopped = StoppedRequest {
            from: 40.0.into(),
            to: 43.0.into(),
        };
        let bad = GrooveSetupRequest {
            stopped: stopped.into(),
            pass_depth: 3.0.into(),
            ..request(2.0, 6.0, 8.0)
        };
        let problems = groove_setup(&bad).unwrap_err();
        let found: Vec<_> = problems
            .iter()
            .map(|problem| (problem.field.as_str(), problem.code))
            .collect();
        assert_eq!(
            found,
            [
                ("bit", Code::CutterTooWide),
                ("fromEdge", Code::TooSmall),
                ("stopped.to", Code::TooSmall),
                ("depth", Code::Missing),
            ]
        );
    }
}
