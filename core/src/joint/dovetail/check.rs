//! From a request to a job: everything checked that can be checked before cutting begins.

use super::divide::{Needs, divide};
use super::layout::{Ground, Layout};
use super::request::{DovetailRequest, MeasuredRequest};
use super::rule;
use super::slope::Slope;
use crate::check::{Checker, optional_part, part};
use crate::cutter::Cutter;
use crate::dial::{Screw, Zero};
use crate::dryfit::slanted::Measured;
use crate::given::Given;
use crate::joint::box_joint::BoardRequest;
use crate::joint::reach::{Cut, Reach};
use crate::limits;
use crate::math::tan;
use crate::message;
use crate::problem::{Code, Problem};
use crate::units::Mm;

/// A dovetail whose request holds together.
#[derive(Clone, Debug)]
pub(super) struct Job {
    pub(super) boards: Boards,
    pub(super) ground: Ground,
    pub(super) layout: Layout,
    pub(super) tools: Tools,
    pub(super) gap: Mm,
    pub(super) measured: Measured,
}

/// The two boards and how far they go into one another.
#[derive(Clone, Copy, Debug)]
pub(super) struct Boards {
    pub(super) tail: Mm,
    pub(super) pin: Mm,
    pub(super) lap: Mm,
    pub(super) proud: Mm,
}

/// What cuts them.
#[derive(Clone, Copy, Debug)]
pub(super) struct Tools {
    pub(super) cutter: Cutter,
    pub(super) pin_cutter: Cutter,
    pub(super) screw: Screw,
    pub(super) zero: Zero,
}

impl Boards {
    /// Through the pin board as far as the tails go.
    pub(super) fn through(&self) -> Mm {
        self.pin - self.lap
    }

    /// Depth of cut in the tail board.
    pub(super) fn depth_a(&self) -> Mm {
        self.through() + self.proud
    }

    /// Depth of cut in the pin board.
    pub(super) fn depth_b(&self) -> Mm {
        self.tail + self.proud
    }

    pub(super) fn is_half_blind(&self) -> bool {
        self.lap.is_above(Mm::ZERO)
    }
}

impl Job {
    /// Depth of cut in the tail board.
    pub(super) fn depth(&self) -> Mm {
        self.boards.depth_a()
    }

    pub(super) fn slope(&self) -> Slope {
        self.ground.slope
    }

    /// How far a flank runs across the width over the whole depth of the cut.
    pub(super) fn lean(&self) -> Mm {
        self.depth() * self.slope().tan
    }

    /// How far the end of the tail board stands past the outer face, across the width.
    pub(super) fn lean_of_proud(&self) -> Mm {
        self.boards.proud * self.slope().tan
    }

    /// The upright cutter's kerf along the face of the turned pin board.
    pub(super) fn turned_kerf(&self) -> Mm {
        self.tools.pin_cutter.kerf() / self.slope().cos
    }

    /// How far two flanks run across the width through the whole pin board, together.
    pub(super) fn both_turns(&self) -> Mm {
        self.boards.pin * self.slope().tan * 2.0
    }

    /// The leaning cutter's kerf across the width.
    pub(super) fn leaning_kerf(&self) -> Mm {
        self.tools.cutter.kerf() / self.slope().cos
    }
}

/// Checks a whole request; the problems come all at once.
pub(super) fn check(request: &DovetailRequest, width: &Given<f64>) -> Result<Job, Vec<Problem>> {
    let mut problems = Vec::new();
    let job = read(request, width, &mut Checker::new(&mut problems));
    match job {
        Some(job) if problems.is_empty() => Ok(job),
        _ => Err(problems),
    }
}

fn read(request: &DovetailRequest, width: &Given<f64>, check: &mut Checker<'_>) -> Option<Job> {
    let width = check.length("width", width, &limits::BOARD_WIDTH);
    let boards = boards(request, check);
    let slope = part("slope", &request.slope, check, Slope::check);
    let division = rule::check(request, check);
    let gap = glue_gap(&request.glue_gap, check);
    let tools = tools(request, check);
    let saw = optional_part("saw", &request.saw, check, Reach::check);
    let measured = optional_part("measured", &request.measured, check, measured);

    let (width, boards, slope) = (width?, boards?, slope?);
    let (division, gap, tools) = (division?, gap?, tools?);
    if let Some(saw) = saw? {
        reaches(&saw, &boards, &tools, slope, check);
    }
    let ground = ground(width, &boards, slope, &tools, gap);
    let layout = divide(
        &ground,
        &division,
        &needs(&boards, slope, &tools, gap),
        check,
    )?;
    Some(Job {
        boards,
        ground,
        layout,
        tools,
        gap,
        measured: measured?.unwrap_or_default(),
    })
}

/// The glue gap of a request, or the usual one.
pub(super) fn glue_gap(given: &Given<f64>, check: &mut Checker<'_>) -> Option<Mm> {
    const USUAL: Mm = Mm::constant(0.05);
    check.length_or("glueGap", given, &limits::GLUE_GAP, USUAL)
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

fn boards(request: &DovetailRequest, check: &mut Checker<'_>) -> Option<Boards> {
    let tail = thickness("tail", &request.tail, check);
    let pin = thickness("pin", &request.pin, check);
    let lap = check.length_or("lap", &request.lap, &limits::LAP, Mm::ZERO);
    let proud = check.length_or("proud", &request.proud, &limits::PROUD, Mm::ZERO);
    let boards = Boards {
        tail: tail?,
        pin: pin?,
        lap: lap?,
        proud: proud?,
    };
    lap_leaves_room(&boards, check)?;
    proud_is_within(&boards, check)?;
    Some(boards)
}

fn lap_leaves_room(boards: &Boards, check: &mut Checker<'_>) -> Option<()> {
    let least = Mm::constant(limits::BOARD_THICKNESS.least);
    if !boards.is_half_blind() || !boards.through().is_below(least) {
        return Some(());
    }
    let most = boards.pin - least;
    let message = message![
        "The lap must leave wood for the pins: at most ",
        most,
        " on this board. A quarter to a third of its thickness, ",
        boards.pin / 4.0,
        " to ",
        boards.pin / 3.0,
        ", is usual."
    ];
    check.refuse("lap", Code::TooLarge, message, Some(most.mm()));
    None
}

fn proud_is_within(boards: &Boards, check: &mut Checker<'_>) -> Option<()> {
    if boards.is_half_blind() && boards.proud.is_above(Mm::ZERO) {
        let message = message!["Behind a lap nothing can stand proud; leave out one of the two."];
        check.refuse("proud", Code::Conflict, message, Some(0.0));
        return None;
    }
    let thinner = boards.tail.min(boards.pin);
    if boards.proud.is_above(thinner) {
        let message = message![
            "Tails and pins may stand proud by at most the thinner board's thickness, ",
            thinner,
            "."
        ];
        check.refuse("proud", Code::TooLarge, message, Some(thinner.mm()));
        return None;
    }
    Some(())
}

fn tools(request: &DovetailRequest, check: &mut Checker<'_>) -> Option<Tools> {
    let cutter = part("cutter", &request.cutter, check, Cutter::check);
    let pin_cutter = optional_part("pinCutter", &request.pin_cutter, check, Cutter::check);
    let screw = part("screw", &request.screw, check, Screw::check);
    let zero =
        optional_part("zero", &request.zero, check, Zero::check).map(Option::unwrap_or_default);
    let cutter = cutter?;
    let tools = Tools {
        cutter,
        pin_cutter: pin_cutter?.unwrap_or(cutter),
        screw: screw?,
        zero: zero?,
    };
    steps_cover(&tools, check)?;
    Some(tools)
}

/// The dial must step by less than a kerf, or wood would be left between passes.
fn steps_cover(tools: &Tools, check: &mut Checker<'_>) -> Option<()> {
    let (step, kerf) = (
        tools.screw.step(),
        tools.cutter.kerf().min(tools.pin_cutter.kerf()),
    );
    if !step.is_above(kerf) {
        return Some(());
    }
    let message = message![
        "The dial steps by ",
        step,
        ", more than the cutter's ",
        kerf,
        ": wood would be left between passes. More divisions or half divisions would work."
    ];
    check
        .at("screw")
        .refuse("divisions", Code::DialTooCoarse, message, None);
    None
}

fn measured(request: &MeasuredRequest, check: &mut Checker<'_>) -> Option<Measured> {
    let mut slope = |field, given: &Given<f64>| match given {
        Given::Missing => Some(None),
        given => check
            .number(field, given, &limits::SLOPE_ANGLE)
            .map(|degrees| Some(tan(degrees.to_radians()))),
    };
    let lean = slope("leanDegrees", &request.lean_degrees);
    let turn = slope("turnDegrees", &request.turn_degrees);
    Some(Measured {
        lean: lean?,
        turn: turn?,
    })
}

fn reaches(saw: &Reach, boards: &Boards, tools: &Tools, slope: Slope, check: &mut Checker<'_>) {
    let leaning = Cut {
        thickness: boards.tail,
        mate: "pin",
        depth: boards.depth_a(),
        beyond: boards.proud - boards.lap,
        cos: slope.cos,
    };
    saw.allows(&leaning, tools.cutter.blade_diameter(), check);
    if !boards.is_half_blind() {
        let turned = Cut {
            thickness: boards.pin / slope.cos,
            mate: "tail",
            depth: boards.depth_b(),
            beyond: boards.proud,
            cos: 1.0,
        };
        saw.allows(&turned, tools.pin_cutter.blade_diameter(), check);
    }
}

/// The board to be divided with these tools.
///
/// The narrowest pin leaves a place between the tails, a glue gap wider, that takes the leaning kerf at
/// the end of the board; it must also be left standing itself.
pub(super) fn ground(width: Mm, boards: &Boards, slope: Slope, tools: &Tools, gap: Mm) -> Ground {
    let end = boards.proud * slope.tan;
    let place = tools.cutter.kerf() / slope.cos + end * 2.0;
    Ground {
        width,
        slope,
        through: boards.through(),
        narrowest_pin: (place - gap).max(gap + rounding(tools, slope)),
    }
}

/// Four roundings, half a step each at most, stand between both sides of a piece of wood.
fn rounding(tools: &Tools, slope: Slope) -> Mm {
    tools.screw.step() / slope.cos * 2.0
}

/// What these cutters leave standing at the narrow ends.
pub(super) fn needs(boards: &Boards, slope: Slope, tools: &Tools, gap: Mm) -> Needs {
    let rounding = rounding(tools, slope);
    let end = boards.proud * slope.tan;
    let standing = gap + rounding;
    let turned_kerf = tools.pin_cutter.kerf() / slope.cos;
    let base = if boards.is_half_blind() {
        standing
    } else {
        standing.max(turned_kerf - gap)
    };
    Needs {
        half_pin: (end - gap / 2.0).max(gap / 2.0) + rounding,
        base,
    }
}
