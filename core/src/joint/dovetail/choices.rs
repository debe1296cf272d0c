//! Every sensible number of tails for a board and a cutter, the best first.

use core::cmp::Ordering;

use serde::Serialize;

use super::request::{ByRequest, DovetailRequest, SlopeRequest};
use super::scales::Scales;
use super::{check, cut, stands};
use crate::cutter::CutterRequest;
use crate::dial::ScrewRequest;
use crate::given::{Given, request};
use crate::joint::box_joint::BoardRequest;
use crate::limits;
use crate::message;
use crate::message::Message;
use crate::order::in_order;
use crate::problem::{Checked, Planned, Problem};
use crate::units::Mm;

request! {
    /// What the choices are made for.
    pub struct DovetailChoicesRequest {
        /// Width of both boards, mm.
        pub width: Given<f64> = "width",
        /// The tail board, board A.
        pub tail: Given<BoardRequest> = "tail",
        /// The pin board, board B.
        pub pin: Given<BoardRequest> = "pin",
        /// Slope of the flanks.
        pub slope: Given<SlopeRequest> = "slope",
        /// Half-pin at each edge, at the outer face, mm.
        pub half_pin: Given<f64> = "halfPin",
        /// Pin between two tails, at the outer face, mm.
        pub narrow_pin: Given<f64> = "narrowPin",
        /// What decides the widths; `narrowPin` and `halfPin` when left out.
        pub by: Given<ByRequest> = "by",
        /// Wood left in front of the tails in a half-blind joint, mm; 0 when left out.
        pub lap: Given<f64> = "lap",
        /// Glue gap at each flank, mm; 0.05 when left out.
        pub glue_gap: Given<f64> = "glueGap",
        /// How far tails and pins stand past the mating face, mm; 0 when left out.
        pub proud: Given<f64> = "proud",
        /// The cutter that leans.
        pub cutter: Given<CutterRequest> = "cutter",
        /// The cutter for upright cuts; the same as `cutter` when left out.
        pub pin_cutter: Given<CutterRequest> = "pinCutter",
        /// The screw.
        pub screw: Given<ScrewRequest> = "screw",
    }
}

/// Numbers of tails to choose from.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct DovetailChoices {
    /// The best first; never empty. Tails' tips are from half to six times as wide as the pin board is
    /// thick, where there are such.
    pub choices: Vec<Choice>,
}

/// One number of tails.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Choice {
    /// Number of tails.
    pub count: u32,
    /// Width of a tail at its tip, mm.
    pub tail_tip: Mm,
    /// Width of a pin at the outer face, mm.
    pub pin_outer: Mm,
    /// Passes for one end of both boards.
    pub total_passes: usize,
    /// Why it stands where it stands.
    pub reason: Message,
}

/// Lists every sensible number of tails that these cutters can make, the best first.
///
/// Tips of one to three times the pin board's thickness look right (common practice); among those the
/// nearest to twice wins, then the fewest passes.
///
/// # Errors
/// Every problem of the request at once; also where not even one tail fits.
pub fn dovetail_choices(request: &DovetailChoicesRequest) -> Checked<DovetailChoices> {
    let first = candidate(request, 1)?;
    let most = limits::TAILS.most as u32;
    let others = (2..=most).filter_map(|tails| candidate(request, tails).ok());
    let mut candidates: Vec<_> = [first].into_iter().chain(others).collect();
    if candidates.iter().any(Candidate::is_sensible) {
        candidates.retain(Candidate::is_sensible);
    } else {
        // A board far wider or far narrower than it is thick: the nearest that can be made.
        candidates = candidates
            .into_iter()
            .min_by(Candidate::better)
            .into_iter()
            .collect();
    }
    let choices = in_order(candidates, Candidate::better).into_iter();
    Ok(Planned::plain(DovetailChoices {
        choices: choices.map(Candidate::choice).collect(),
    }))
}

/// How a tail looks beside the pin board's thickness.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Look {
    Slender,
    Right,
    Broad,
}

struct Candidate {
    count: u32,
    tail_tip: Mm,
    pin_outer: Mm,
    total_passes: usize,
    /// Tip for a thickness of 1.
    proportion: f64,
}

fn candidate(request: &DovetailChoicesRequest, tails: u32) -> Result<Candidate, Vec<Problem>> {
    let job = check::check(&joint(request, tails), &request.width)?;
    let scales = Scales::new(&job.boards, &job.tools, job.slope());
    let cuts = cut::cut(&job, &scales);
    stands::check(&job, &cuts)?;
    Ok(Candidate {
        count: tails,
        tail_tip: job.layout.tail,
        pin_outer: job.layout.pin,
        total_passes: cuts.passes.count(),
        proportion: job.layout.tail / job.boards.pin,
    })
}

fn joint(request: &DovetailChoicesRequest, tails: u32) -> DovetailRequest {
    let request = request.clone();
    DovetailRequest {
        width: request.width,
        tail: request.tail,
        pin: request.pin,
        slope: request.slope,
        tails: f64::from(tails).into(),
        half_pin: request.half_pin,
        narrow_pin: request.narrow_pin,
        by: request.by,
        lap: request.lap,
        glue_gap: request.glue_gap,
        proud: request.proud,
        cutter: request.cutter,
        pin_cutter: request.pin_cutter,
        screw: request.screw,
        ..DovetailRequest::default()
    }
}

impl Candidate {
    /// Nobody looks for a tail narrower than half a board's thickness or wider than six of them.
    fn is_sensible(&self) -> bool {
        (0.5..=6.0).contains(&self.proportion)
    }

    fn look(&self) -> Look {
        if self.proportion < 1.0 {
            Look::Slender
        } else if self.proportion > 3.0 {
            Look::Broad
        } else {
            Look::Right
        }
    }

    /// In proportion first, then nearest to twice the thickness, then fewer passes.
    fn better(&self, other: &Self) -> Ordering {
        let off_look = |it: &Self| it.look() != Look::Right;
        let off = |it: &Self| (it.proportion - 2.0).abs();
        off_look(self)
            .cmp(&off_look(other))
            .then(off(self).total_cmp(&off(other)))
            .then(self.total_passes.cmp(&other.total_passes))
    }

    fn reason(&self) -> Message {
        match self.look() {
            Look::Right => {
                message![
                    "In proportion: tips between one and three times the pin board's thickness."
                ]
            }
            Look::Slender => {
                message![
                    "Slender: tips narrower than the pin board is thick; more glue line, more passes."
                ]
            }
            Look::Broad => message![
                "Broad: tips more than three times the pin board's thickness; quick to cut, plainer to look at."
            ],
        }
    }

    fn choice(self) -> Choice {
        Choice {
            count: self.count,
            tail_tip: self.tail_tip,
            pin_outer: self.pin_outer,
            total_passes: self.total_passes,
            reason: self.reason(),
        }
    }
}
