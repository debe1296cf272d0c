//! From a request to drawers whose numbers hold together, before fingers divide them.

use super::bottom::Bottom;
use super::corner::{Boards, Corner};
use super::fronts::Applied;
use super::heights::Heights;
use super::request::DrawerBoxRequest;
use super::space::Space;
use crate::check::{Checker, optional_part, part};
use crate::given::Given;
use crate::joint::box_joint::BoardRequest;
use crate::limits;
use crate::message;
use crate::problem::{Code, Problem};
use crate::units::Mm;
use crate::wood::{Climate, SolidWood};

/// Drawers whose request holds together.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Job {
    pub(crate) space: Space,
    pub(crate) count: u32,
    pub(super) heights: Heights,
    pub(crate) between: Mm,
    pub(crate) side: Mm,
    pub(crate) front: Mm,
    pub(crate) back: Mm,
    /// The field that the back's thickness was read from.
    pub(super) back_field: &'static str,
    pub(crate) applied: Option<Applied>,
    pub(super) corner: Corner,
    pub(crate) bottom: Bottom,
    pub(super) wood: Option<SolidWood>,
    pub(super) climate: Option<Climate>,
}

/// The board at one end of a drawer, and the lap of its corners.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct End {
    pub(crate) thickness: Mm,
    pub(crate) lap: Mm,
}

impl End {
    /// Whether corners are cut alike at both.
    pub(crate) fn is_as(self, other: Self) -> bool {
        self.thickness.is_same(other.thickness) && self.lap.is_same(other.lap)
    }
}

/// A drawer that holds less than this from side to side or front to back holds nothing.
const LEAST_INSIDE: Mm = Mm::constant(10.0);
/// Boards stand above their groove at least by this, and have room for as much below it.
const LEAST_BESIDE: Mm = Mm::constant(1.0);

impl Job {
    /// Outside, from side to side.
    pub(crate) fn width(&self) -> Mm {
        self.space.width - self.space.clearances().side * 2.0
    }

    /// Outside, from front to back without an applied front.
    pub(crate) fn depth(&self) -> Mm {
        self.space.depth - self.taken_from_depth()
    }

    fn taken_from_depth(&self) -> Mm {
        let front = self.applied.filter(|_| self.space.opening.is_some());
        self.space.clearances().behind + front.map_or(Mm::ZERO, |front| front.inside())
    }

    /// Width of the bottom's groove.
    pub(crate) fn groove_width(&self) -> Mm {
        self.bottom.groove_width(self.climate)
    }

    /// Greatest and least height of a drawer, as shares of the one it is cut to.
    pub(super) fn extremes(&self) -> (f64, f64) {
        match (self.climate, self.wood) {
            (Some(climate), Some(wood)) => climate.extremes(wood.across, wood.moisture),
            _ => (1.0, 1.0),
        }
    }

    /// Heights at the dampest, from the top; one for drawers of a given outside.
    pub(super) fn greatest_heights(&self) -> Vec<Mm> {
        match self.space.opening {
            Some(_) => self
                .heights
                .share(self.space.height - self.fixed(), self.count),
            None => vec![self.space.height * self.extremes().0],
        }
    }

    /// What dividers and clearances take of an opening's height.
    pub(super) fn fixed(&self) -> Mm {
        let gaps = f64::from(self.count) - 1.0;
        self.between * gaps + self.space.clearances().upright() * f64::from(self.count)
    }

    /// Opening, or outside, whose topmost drawer is cut to this height.
    pub(super) fn height_for(&self, top: Mm) -> Mm {
        match self.space.opening {
            Some(_) => self.heights.room_for(top * self.extremes().0, self.count) + self.fixed(),
            None => top,
        }
    }

    /// Whether one drawer is like the other.
    pub(super) fn is_alike(&self) -> bool {
        self.heights == Heights::Equal || self.count == 1
    }

    /// Whether the sides have a pin at the lower edge.
    pub(crate) fn starts_with_pin(&self) -> bool {
        self.corner.starts_with_pin()
    }

    /// Least height that the groove and the fingers asked for need.
    pub(super) fn least_height(&self) -> Mm {
        self.corner.lowest_as_asked(self.lowest_board())
    }

    /// Least height that the groove alone needs.
    pub(super) fn lowest_board(&self) -> Mm {
        self.groove_width() + LEAST_BESIDE * 2.0
    }

    /// Farthest that the groove may be from the lower edge of a board of this height.
    pub(super) fn highest_groove(&self, height: Mm) -> Mm {
        height - self.groove_width() - LEAST_BESIDE
    }

    /// Front and back.
    pub(crate) fn ends(&self) -> [End; 2] {
        let [lap, back_lap] = self.corner.laps();
        let end = |thickness, lap| End { thickness, lap };
        [end(self.front, lap), end(self.back, back_lap)]
    }

    /// The back, where its corners are not cut as the front's.
    pub(crate) fn own_back(&self) -> Option<End> {
        let [front, back] = self.ends();
        (!front.is_as(back)).then_some(back)
    }

    /// Deepest that a groove may be: half of the thinnest board.
    pub(super) fn deepest_groove(&self) -> Mm {
        self.thinnest() / 2.0
    }

    /// Thinnest of the boards.
    fn thinnest(&self) -> Mm {
        self.side.min(self.front).min(self.back)
    }
}

/// Checks a whole request; the problems come all at once.
pub(super) fn check(request: &DrawerBoxRequest) -> Result<Job, Vec<Problem>> {
    let mut problems = Vec::new();
    let job = read(request, &mut Checker::new(&mut problems));
    match job {
        Some(job) if problems.is_empty() => Ok(job),
        _ => Err(problems),
    }
}

fn read(request: &DrawerBoxRequest, check: &mut Checker<'_>) -> Option<Job> {
    let space = part("size", &request.size, check, Space::check);
    let count = if request.count.is_missing() {
        Some(1)
    } else {
        check.count("count", &request.count, &limits::DRAWERS)
    };
    let row = space
        .zip(count)
        .and_then(|(space, count)| row(request, space, count, check));
    let side = thickness("side", &request.side, check);
    let front = thickness("front", &request.front, check);
    let (back_field, back) = match &request.back {
        Given::Missing => ("front", front),
        back => ("back", thickness("back", back, check)),
    };
    let applied = optional_part("applied", &request.applied, check, Applied::check);
    let boards = Boards {
        side: &request.side,
        front: &request.front,
        back: &request.back,
    };
    let corner = part("joint", &request.joint, check, |joint, check| {
        Corner::check(joint, boards, check)
    });
    let bottom = part("bottom", &request.bottom, check, Bottom::check);
    let wood = optional_part("wood", &request.wood, check, SolidWood::check);
    let climate = climate(request, check);
    let (heights, between) = row?;
    let job = Job {
        space: space?,
        count: count?,
        heights,
        between,
        side: side?,
        front: front?,
        back: back?,
        back_field,
        applied: applied?,
        corner: corner?,
        bottom: bottom?,
        wood: wood?,
        climate: climate?,
    };
    goes_together(&job, check);
    Some(job)
}

fn thickness(field: &str, given: &Given<BoardRequest>, check: &mut Checker<'_>) -> Option<Mm> {
    part(field, given, check, |board, check| {
        check.length("thickness", &board.thickness, &limits::BOARD_THICKNESS)
    })
}

/// How several drawers share an opening; drawers of a given outside do not.
fn row(
    request: &DrawerBoxRequest,
    space: Space,
    count: u32,
    check: &mut Checker<'_>,
) -> Option<(Heights, Mm)> {
    if space.opening.is_none() {
        let fields = [
            ("heights", request.heights.is_missing()),
            ("between", request.between.is_missing()),
        ];
        check.unused("the drawer's outside", &fields);
        return Some((Heights::Equal, Mm::ZERO));
    }
    let heights = optional_part("heights", &request.heights, check, Heights::check);
    let between = if count > 1 {
        check.length("between", &request.between, &limits::BETWEEN)
    } else {
        check.length_or("between", &request.between, &limits::BETWEEN, Mm::ZERO)
    };
    Some((heights?.unwrap_or(Heights::Equal), between?))
}

/// The air, which matters to solid wood alone.
fn climate(request: &DrawerBoxRequest, check: &mut Checker<'_>) -> Option<Option<Climate>> {
    let solid_bottom = match &request.bottom {
        Given::Value(bottom) => !bottom.wood.is_missing(),
        _ => false,
    };
    if !request.wood.is_missing() || solid_bottom {
        return part("climate", &request.climate, check, Climate::check).map(Some);
    }
    check.unused("sheets", &[("climate", request.climate.is_missing())]);
    Some(None)
}

fn goes_together(job: &Job, check: &mut Checker<'_>) {
    job.bottom
        .fits_a_groove(job.climate, &mut check.at("bottom"));
    let groove = &job.bottom.groove;
    let most = job.deepest_groove();
    if groove.depth.is_above(most) {
        let message = message![
            "The groove would take more than half of the thinnest board, ",
            job.thinnest(),
            "; at most ",
            most,
            " deep."
        ];
        let mut check = check.at("bottom");
        let mut check = check.at("groove");
        check.refuse("depth", Code::TooLarge, message, Some(most.mm()));
    }
    if let Some(bit) = groove.bit
        && bit.is_above(job.groove_width())
    {
        let most = job.groove_width();
        let message = message![
            "The bit cuts ",
            bit,
            " and the groove is ",
            most,
            " wide; take a bit of at most that."
        ];
        let mut check = check.at("bottom");
        let mut check = check.at("groove");
        check.refuse("bit", Code::CutterTooWide, message, Some(most.mm()));
    }
    large_enough(job, check);
    fronts_fit(job, check);
}

/// An applied front of some size must be left between its gaps.
fn fronts_fit(job: &Job, check: &mut Checker<'_>) {
    let Some(applied) = job.applied else { return };
    let least = job.greatest_heights().into_iter().min().unwrap_or_default();
    let most = (job.between + job.space.clearances().upright() + least) / 2.0;
    if job.count > 1 && job.space.opening.is_some() && applied.gap.is_above(most) && most > Mm::ZERO
    {
        let message = message![
            "These gaps would leave little of the fronts; at most ",
            most,
            "."
        ];
        check
            .at("applied")
            .refuse("gap", Code::TooLarge, message, Some(most.mm()));
    }
    let inside = -applied.lap;
    let across = job.width().min(least) / 4.0;
    if inside.is_above(across) && across > Mm::ZERO {
        let message = message![
            "The gap around the fronts would leave little of them; at most ",
            across,
            " inside."
        ];
        check
            .at("applied")
            .refuse("lap", Code::TooSmall, message, Some(-across.mm()));
    }
}

fn large_enough(job: &Job, check: &mut Checker<'_>) {
    let clearances = job.space.clearances();
    let least = clearances.side * 2.0 + job.side * 2.0 + LEAST_INSIDE;
    if job.space.width.is_below(least) {
        refuse_size(
            "width",
            "Clearances and both sides need at least ",
            least,
            check,
        );
    }
    let least = job.taken_from_depth() + job.front + job.back + LEAST_INSIDE;
    if job.space.depth.is_below(least) {
        refuse_size(
            "depth",
            "Clearances, front and back need at least ",
            least,
            check,
        );
    }
    let top = job.greatest_heights().into_iter().min().unwrap_or_default() / job.extremes().0;
    if top.is_below(job.corner.lowest(job.lowest_board())) {
        let words =
            "Clearances, dividers, fingers and groove of the shallowest drawer need at least ";
        refuse_size("height", words, job.height_for(job.least_height()), check);
        return;
    }
    let most = job.highest_groove(top);
    if job.bottom.groove.from_edge.is_above(most) {
        let message = message![
            "Hardly any of the board, ",
            top,
            " high, would be left above the groove; at most ",
            most,
            " from its edge."
        ];
        let mut check = check.at("bottom");
        let mut check = check.at("groove");
        check.refuse("fromEdge", Code::TooLarge, message, Some(most.mm()));
    }
}

/// What is missing of a size; sometimes that is more than any size can be.
fn refuse_size(field: &str, words: &str, least: Mm, check: &mut Checker<'_>) {
    let possible = least.mm() <= limits::DRAWER.most;
    let message = if possible {
        message![words, least, "."]
    } else {
        message![
            words,
            least,
            ", more than is planned: fewer drawers, or less around them, would work."
        ]
    };
    let limit = possible.then_some(least.mm());
    check
        .at("size")
        .refuse(field, Code::TooSmall, message, limit);
}
