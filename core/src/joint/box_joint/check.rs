//! From a request to a job: everything checked that can be checked before cutting begins.

use super::groove::Groove;
use super::layout::{Ground, Layout, lay_out};
use super::request::{BoardRequest, BoxJointRequest};
use super::rule::Rule;
use crate::check::{Checker, optional_part, part};
use crate::cutter::Cutter;
use crate::dial::{Scale, Screw, Zero};
use crate::given::Given;
use crate::joint::reach::{Cut, Reach};
use crate::limits;
use crate::message;
use crate::problem::{Code, Problem};
use crate::units::Mm;

/// A box joint whose request holds together.
#[derive(Clone, Debug)]
pub(super) struct Job {
    pub(super) asked_width: Mm,
    pub(super) thickness_a: Mm,
    pub(super) thickness_b: Mm,
    pub(super) cutter: Cutter,
    pub(super) scale: Scale,
    pub(super) layout: Layout,
    pub(super) asked_gap: Mm,
    pub(super) proud: Mm,
    pub(super) groove: Option<Groove>,
}

impl Job {
    /// Each board is cut as deep as its mate is thick, and as far as its pins shall stand proud.
    pub(super) fn depth_a(&self) -> Mm {
        self.thickness_b + self.proud
    }

    pub(super) fn depth_b(&self) -> Mm {
        self.thickness_a + self.proud
    }
}

const USUAL_GAP: Mm = Mm::constant(0.05);

/// Checks a whole request, for a board of this width; the problems come all at once.
pub(super) fn check(request: &BoxJointRequest, width: &Given<f64>) -> Result<Job, Vec<Problem>> {
    let mut problems = Vec::new();
    let job = read(request, width, &mut Checker::new(&mut problems));
    match job {
        Some(job) if problems.is_empty() => Ok(job),
        _ => Err(problems),
    }
}

fn read(request: &BoxJointRequest, width: &Given<f64>, check: &mut Checker<'_>) -> Option<Job> {
    let width = check.length("width", width, &limits::BOARD_WIDTH);
    let thickness_a = thickness("a", &request.a, check);
    let thickness_b = thickness("b", &request.b, check);
    let cutter = part("cutter", &request.cutter, check, Cutter::check);
    let screw = part("screw", &request.screw, check, Screw::check);
    let zero =
        optional_part("zero", &request.zero, check, Zero::check).map(Option::unwrap_or_default);
    let rule = part("layout", &request.layout, check, Rule::check);
    let first_is_pin = check.word_or(
        "first",
        &request.first,
        &[("pin", true), ("socket", false)],
        true,
    );
    let gap = check.length_or("glueGap", &request.glue_gap, &limits::GLUE_GAP, USUAL_GAP);
    let proud = proud(request, thickness_a, thickness_b, check);
    let groove = optional_part("groove", &request.groove, check, Groove::check);
    let saw = optional_part("saw", &request.saw, check, Reach::check);

    let groove = match (groove, width) {
        (Some(Some(groove)), Some(width)) => groove
            .fits(width, thickness_a, thickness_b, check)
            .map(Some),
        (groove, _) => groove,
    };
    if let (Some(Some(saw)), Some(proud), Some(a), Some(b)) = (saw, proud, thickness_a, thickness_b)
    {
        let diameter = cutter.as_ref().and_then(Cutter::blade_diameter);
        // Each board is cut as deep as the other is thick.
        for (thickness, mate, depth) in [(a, "b", b + proud), (b, "a", a + proud)] {
            let cut = Cut {
                thickness,
                mate,
                depth,
                beyond: proud,
                cos: 1.0,
            };
            saw.allows(&cut, diameter, check);
        }
    }
    let (width, cutter, screw, zero) = (width?, cutter?, screw?, zero?);
    let (gap, first_is_pin) = (gap?, first_is_pin?);
    let scale = Scale::new(screw, zero, cutter.kerf());
    let ground = Ground {
        width,
        gap,
        first_is_pin,
        cutter: &cutter,
        scale: &scale,
    };
    let layout = lay_out(&rule?, &ground, check)?;
    steps_cover(&layout, &cutter, &scale, check)?;
    Some(Job {
        asked_width: width,
        thickness_a: thickness_a?,
        thickness_b: thickness_b?,
        cutter,
        scale,
        layout,
        asked_gap: gap,
        proud: proud?,
        groove: groove?,
    })
}

/// The thickness of one board.
pub(super) fn thickness(
    field: &str,
    given: &Given<BoardRequest>,
    check: &mut Checker<'_>,
) -> Option<Mm> {
    part(field, given, check, |board, check| {
        check.length("thickness", &board.thickness, &limits::BOARD_THICKNESS)
    })
}

fn proud(
    request: &BoxJointRequest,
    a: Option<Mm>,
    b: Option<Mm>,
    check: &mut Checker<'_>,
) -> Option<Mm> {
    let proud = check.length_or("proud", &request.proud, &limits::PROUD, Mm::ZERO)?;
    let thinner = [a, b].into_iter().flatten().min();
    match thinner {
        Some(thinner) if proud.is_above(thinner) => {
            let message = message![
                "Pins may stand proud by at most the thinner board's thickness, ",
                thinner,
                "."
            ];
            check.refuse("proud", Code::TooLarge, message, Some(thinner.mm()));
            None
        }
        _ => Some(proud),
    }
}

/// Where more than one pass is needed, the dial must step by less than a kerf.
pub(super) fn steps_cover(
    layout: &Layout,
    cutter: &Cutter,
    scale: &Scale,
    check: &mut Checker<'_>,
) -> Option<()> {
    let several = |space| layout.width_of(space).is_above(cutter.kerf());
    if scale.step().is_above(cutter.kerf()) && (0..layout.count()).any(several) {
        let message = message![
            "The dial steps by ",
            scale.step(),
            ", more than the cutter's ",
            cutter.kerf(),
            ": wood would be left between passes. More divisions or half divisions would work."
        ];
        check
            .at("screw")
            .refuse("divisions", Code::DialTooCoarse, message, None);
        return None;
    }
    Some(())
}
