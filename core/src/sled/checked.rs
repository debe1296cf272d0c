//! From a request to a fit that can exist.

use super::fields::{Table, blade, cut, left_over, sled, table};
use super::fit;
use super::request::SledFitRequest;
use crate::check::{Checker, optional_part, part};
use crate::cutter::RaisedBlade;
use crate::limits;
use crate::message;
use crate::problem::{Code, Problem};
use crate::units::Mm;

/// Side of the blade, seen from the operator.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Side {
    Left,
    Right,
}

/// A slot's middle from the blade line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Sideways {
    pub(crate) side: Side,
    pub(crate) from_blade: Mm,
}

/// Section of the table's slot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Section {
    Plain,
    T,
}

/// A sled, a saw and a cut that go together.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Job {
    pub(crate) blade: RaisedBlade,
    pub(crate) diameter: Mm,
    pub(crate) kerf: Mm,
    pub(crate) first: Sideways,
    pub(crate) second: Option<Sideways>,
    pub(crate) section: Section,
    pub(crate) front_to_arbor: Mm,
    pub(crate) arbor_to_rear: Mm,
    pub(crate) greatest_height: Mm,
    pub(crate) base_thickness: Mm,
    pub(crate) base_width: Mm,
    pub(crate) base_length: Mm,
    pub(crate) margin: Mm,
    pub(crate) blade_line: Mm,
    pub(crate) carriage_face: Mm,
    pub(crate) front_rail: Mm,
    pub(crate) contact_near: Mm,
    pub(crate) contact_far: Mm,
    pub(crate) runner_width: Mm,
    pub(crate) holes: Vec<Mm>,
    pub(crate) hole_clearance: Option<Mm>,
    pub(crate) depth: Mm,
    pub(crate) board_thickness: Mm,
    pub(crate) board_width: Option<Mm>,
    pub(crate) clearance: Mm,
    pub(crate) over: Mm,
    pub(crate) carriage_travel: Option<Mm>,
    pub(crate) measured: Option<(Mm, Mm)>,
    pub(crate) play: Option<Mm>,
}

impl Job {
    pub(crate) fn height(&self) -> Mm {
        self.base_thickness + self.depth
    }

    /// As deep as blade and saw go through this base, and as this board leaves room for in the window.
    pub(crate) fn deepest_cut(&self) -> Mm {
        let room = (self.window() - self.board_thickness - self.clearance).max(Mm::ZERO);
        let by_window = RaisedBlade::height_of(self.diameter, room / 2.0);
        deepest(self.diameter, self.greatest_height, self.base_thickness).min(by_window)
    }

    pub(crate) fn window(&self) -> Mm {
        self.front_rail - self.carriage_face
    }

    pub(crate) fn span(&self) -> Mm {
        self.contact_far - self.contact_near
    }

    /// First to last screw hole, where there are two.
    pub(crate) fn hole_span(&self) -> Option<Mm> {
        let (first, last) = (self.holes.first()?, self.holes.last()?);
        (last > first).then(|| *last - *first)
    }

    pub(crate) fn table(&self) -> Mm {
        self.front_to_arbor + self.arbor_to_rear
    }

    /// Whether a runner with its middle there lies on the base with its margin.
    pub(crate) fn is_on_base(&self, from_left: Mm) -> bool {
        let reach = self.runner_width / 2.0 + self.margin;
        !(from_left - reach).is_below(Mm::ZERO) && !(from_left + reach).is_above(self.base_width)
    }
}

/// A blade cannot come up farther than to its own axis, whatever the saw allows.
fn deepest(diameter: Mm, greatest_height: Mm, base: Mm) -> Mm {
    (greatest_height.min(diameter / 2.0) - base).max(Mm::ZERO)
}

/// Checks a whole request; the problems come all at once.
pub(crate) fn check(request: &SledFitRequest) -> Result<Job, Vec<Problem>> {
    let mut problems = Vec::new();
    let job = read(request, &mut Checker::new(&mut problems));
    match job {
        Some(job) if problems.is_empty() => Ok(job),
        _ => Err(problems),
    }
}

fn read(request: &SledFitRequest, check: &mut Checker<'_>) -> Option<Job> {
    let blade = part("blade", &request.blade, check, blade);
    let saw = part("saw", &request.saw, check, table);
    let sled = part("sled", &request.sled, check, sled);
    let cut = part("cut", &request.cut, check, cut);
    let measured = optional_part("measured", &request.measured, check, left_over);
    let play = check.optional_length("play", &request.play, &limits::PLAY);
    let ((diameter, kerf), saw, sled, cut) = (blade?, saw?, sled?, cut?);
    let raised = raised(diameter, &saw, sled.thickness, cut.depth, check);
    let from_blade = |measured: Mm| {
        if saw.from_near_tooth {
            measured + kerf / 2.0
        } else {
            measured
        }
    };
    let other = if saw.side == Side::Left {
        Side::Right
    } else {
        Side::Left
    };
    let job = Job {
        blade: raised?,
        diameter,
        kerf,
        first: Sideways {
            side: saw.side,
            from_blade: from_blade(saw.to_slot),
        },
        second: saw.second.map(|second| Sideways {
            side: other,
            from_blade: from_blade(second),
        }),
        section: saw.section,
        front_to_arbor: saw.front_to_arbor,
        arbor_to_rear: saw.arbor_to_rear,
        greatest_height: saw.greatest_height,
        base_thickness: sled.thickness,
        base_width: sled.width,
        base_length: sled.length,
        margin: sled.margin,
        blade_line: sled.blade_line.unwrap_or(sled.width / 2.0),
        carriage_face: sled.carriage_face,
        front_rail: sled.front_rail,
        contact_near: sled.runner.near,
        contact_far: sled.runner.far,
        runner_width: sled.runner.width,
        holes: sled.runner.holes,
        hole_clearance: sled.runner.hole_clearance,
        depth: cut.depth,
        board_thickness: cut.board_thickness,
        board_width: cut.board_width,
        clearance: cut.clearance,
        over: cut.over,
        carriage_travel: cut.carriage_travel,
        measured: measured?,
        play: play?,
    };
    can_exist(&job, check);
    Some(job)
}

fn raised(
    diameter: Mm,
    saw: &Table,
    base: Mm,
    depth: Mm,
    check: &mut Checker<'_>,
) -> Option<RaisedBlade> {
    let height = base + depth;
    let deepest = deepest(diameter, saw.greatest_height, base);
    if height.is_beyond(saw.greatest_height) {
        let message = message![
            "The blade would stand ",
            height,
            " above the table and this saw raises it ",
            saw.greatest_height,
            "; through this base the deepest cut is ",
            deepest,
            "."
        ];
        check
            .at("cut")
            .refuse("depth", Code::BeyondHeight, message, Some(deepest.mm()));
        return None;
    }
    let raised = RaisedBlade::new(diameter, height);
    if raised.is_none() {
        let message = message![
            "A blade of ",
            diameter,
            " cannot stand ",
            height,
            " above the table; it must be more than ",
            height * 2.0,
            " across."
        ];
        check.at("blade").refuse(
            "diameter",
            Code::TooSmall,
            message,
            Some((height * 2.0).mm()),
        );
    }
    raised
}

/// What each field allows by itself may still not go together.
fn can_exist(job: &Job, check: &mut Checker<'_>) {
    let window = fit::smallest_window(job, job.blade.half_chord(job.base_thickness));
    let mut sled = check.at("sled");
    if window.is_beyond(job.window()) {
        let rail = job.carriage_face + window;
        let message = message![
            "The window between carriage face and front rail is ",
            job.window(),
            "; this cut needs ",
            window,
            ", or the board would stand in the blade at the start. The rail's near face must be at least ",
            rail,
            " from the base's near edge."
        ];
        sled.refuse("frontRail", Code::TooSmall, message, Some(rail.mm()));
    }
    if !job.contact_far.is_above(job.contact_near) {
        let message = message![
            "The far contact must lie beyond the near one, which is at ",
            job.contact_near,
            "; ",
            job.contact_far,
            " was given."
        ];
        sled.at("runner").refuse(
            "contactFar",
            Code::TooSmall,
            message,
            Some(job.contact_near.mm()),
        );
    } else if job.span().is_above(job.table()) {
        let most = job.contact_near + job.table();
        let message = message![
            "The runner touches over ",
            job.span(),
            " and the whole table is ",
            job.table(),
            " long: the far contact can be at most at ",
            most,
            "."
        ];
        sled.at("runner")
            .refuse("contactFar", Code::TooLarge, message, Some(most.mm()));
    }
    if job.front_rail.is_above(job.base_length) {
        let message = message![
            "The front rail must stand on the base, which is ",
            job.base_length,
            " long."
        ];
        sled.refuse(
            "frontRail",
            Code::TooLarge,
            message,
            Some(job.base_length.mm()),
        );
    }
    let place = fit::side(job, job.first).from_base_left;
    if !job.is_on_base(place) {
        let room = job.base_width - job.runner_width / 2.0 - job.margin;
        let message = message![
            "The runner's middle would be ",
            place,
            " from the base's left edge; with its width and the margin it must lie between ",
            job.base_width - room,
            " and ",
            room,
            ". Move the blade line or take a wider base."
        ];
        sled.refuse(
            "bladeLine",
            if place < job.base_width / 2.0 {
                Code::TooSmall
            } else {
                Code::TooLarge
            },
            message,
            None,
        );
    }
}
