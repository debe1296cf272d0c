//! The corners' joint: what of it is the drawer's own, and the request that is handed on.

use super::checked::End;
use super::fingers::{Fingers, LayoutRule, Rule, fingers, odd_from};
use super::request::DrawerJointRequest;
use crate::check::{Checker, part};
use crate::given::Given;
use crate::joint::box_joint::{
    BoardRequest, BoxJointRequest, GrooveRequest, LayoutRequest, box_joint,
};
use crate::joint::dovetail::{DovetailPlan, DovetailRequest, dovetail};
use crate::limits;
use crate::problem::{Code, Problem};
use crate::units::Mm;

/// The joint of all four corners.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Corner {
    request: DrawerJointRequest,
    pub(super) kind: Kind,
    pub(super) proud: Mm,
}

#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Kind {
    Box(Fingers),
    Dovetail { laps: [Mm; 2] },
}

/// The boards as they were asked for, before they are checked; the back may be left out.
#[derive(Clone, Copy)]
pub(super) struct Boards<'a> {
    pub(super) side: &'a Given<BoardRequest>,
    pub(super) front: &'a Given<BoardRequest>,
    pub(super) back: &'a Given<BoardRequest>,
}

/// Fields of a joint that the drawer fills in.
const OWN: [&str; 7] = ["width", "a", "b", "tail", "pin", "layout", "groove"];

impl Corner {
    /// Checks the request at the checker's place.
    pub(super) fn check(
        request: &DrawerJointRequest,
        boards: Boards<'_>,
        check: &mut Checker<'_>,
    ) -> Option<Self> {
        let is_box = check.word("kind", &request.kind, &[("box", true), ("dovetail", false)])?;
        let corner = |kind| Self {
            request: request.clone(),
            kind,
            proud: length(&request.proud, Mm::ZERO),
        };
        if is_box {
            refuse_dovetails(request, check);
            let rule = part("layout", &request.layout, check, LayoutRule::check);
            pass_on(box_problems(request, boards), check)?;
            return Some(corner(Kind::Box(fingers(request, rule?, check)?)));
        }
        let fields = [
            ("layout", request.layout.is_missing()),
            ("first", request.first.is_missing()),
        ];
        check.unused("dovetails", &fields);
        pass_on(dovetail_problems(request, boards), check)?;
        let lap = length(&request.lap, Mm::ZERO);
        let laps = [lap, length(&request.back_lap, lap)];
        Some(corner(Kind::Dovetail { laps }))
    }

    /// Below this no division makes a drawer, whatever its number of fingers; `room` is what its groove takes.
    pub(super) fn lowest(&self, room: Mm) -> Mm {
        match self.kind {
            Kind::Box(fingers) => room.max(fingers.narrowest * 3.0),
            Kind::Dovetail { .. } => room,
        }
    }

    /// The same with the fingers that were asked for.
    pub(super) fn lowest_as_asked(&self, room: Mm) -> Mm {
        match self.kind {
            Kind::Box(fingers) => match fingers.rule {
                Rule::Count(count) => room.max(fingers.narrowest * f64::from(count)),
                Rule::Finger(finger) | Rule::OnePass(finger) => {
                    // Narrower ones are refused themselves, once there is room for any.
                    let finger = finger.max(fingers.narrowest);
                    finger * f64::from(odd_from(room / finger).max(3))
                }
            },
            Kind::Dovetail { .. } => room,
        }
    }

    /// Whether the sides have a pin at the lower edge; the joint has already read the word.
    pub(super) fn starts_with_pin(&self) -> bool {
        self.request.first != "socket".into()
    }

    /// Wood in front of the tails, and behind those at the back.
    pub(super) fn laps(&self) -> [Mm; 2] {
        match self.kind {
            Kind::Box(_) => [Mm::ZERO; 2],
            Kind::Dovetail { laps } => laps,
        }
    }

    /// The box joint for boards of this height.
    pub(super) fn box_joint(
        &self,
        height: Mm,
        boards: [Mm; 2],
        layout: LayoutRequest,
        groove: GrooveRequest,
    ) -> BoxJointRequest {
        let [a, b] = boards.map(board);
        BoxJointRequest {
            width: height.mm().into(),
            a,
            b,
            layout: layout.into(),
            groove: groove.into(),
            ..box_request(&self.request)
        }
    }

    /// The dovetail of the front's corners, for boards of this height.
    pub(super) fn dovetail(&self, height: Mm, boards: [Mm; 2]) -> DovetailRequest {
        let [tail, pin] = boards.map(board);
        DovetailRequest {
            width: height.mm().into(),
            tail,
            pin,
            ..dovetail_request(&self.request)
        }
    }

    /// The same for a back of its own. Tails have the same tips at both ends of a side, so that one list of stops
    /// does for both: proportions, which depend on the board's thickness, hold at the front.
    pub(super) fn back_dovetail(
        &self,
        front: &DovetailRequest,
        planned: Option<&DovetailPlan>,
        back: End,
    ) -> DovetailRequest {
        let asked = DovetailRequest {
            pin: board(back.thickness),
            lap: back.lap.mm().into(),
            ..front.clone()
        };
        let Some(plan) = planned.filter(|_| self.is_by_proportion()) else {
            return asked;
        };
        let width = |pin: Mm| pin.max(Mm::constant(limits::PIN.least)).mm().into();
        DovetailRequest {
            by: Given::Missing,
            narrow_pin: width(plan.pin_outer),
            half_pin: width(plan.half_pin_outer),
            ..asked
        }
    }

    fn is_by_proportion(&self) -> bool {
        match &self.request.by {
            Given::Value(by) => ["ratio", "equal"]
                .iter()
                .any(|kind| by.kind == (*kind).into()),
            _ => false,
        }
    }
}

/// What the corners refuse of a box joint; it is asked without a width, so that it says what is wrong with its own
/// fields.
fn box_problems(request: &DrawerJointRequest, boards: Boards<'_>) -> Vec<Problem> {
    let refused = |board: &Given<BoardRequest>| {
        let asked = BoxJointRequest {
            a: boards.side.clone(),
            b: board.clone(),
            ..box_request(request)
        };
        box_joint(&asked).err().unwrap_or_default()
    };
    let front = refused(boards.front);
    if boards.back.is_missing() {
        return front;
    }
    with_more(front, refused(boards.back))
}

/// The same of dovetails.
fn dovetail_problems(request: &DrawerJointRequest, boards: Boards<'_>) -> Vec<Problem> {
    let refused = |board: &Given<BoardRequest>, lap: &Given<f64>| {
        let asked = DovetailRequest {
            tail: boards.side.clone(),
            pin: board.clone(),
            lap: lap.clone(),
            ..dovetail_request(request)
        };
        dovetail(&asked).err().unwrap_or_default()
    };
    let front = refused(boards.front, &request.lap);
    let (has_board, has_lap) = (!boards.back.is_missing(), !request.back_lap.is_missing());
    if !has_board && !has_lap {
        return front;
    }
    let board = if has_board { boards.back } else { boards.front };
    let lap = if has_lap {
        &request.back_lap
    } else {
        &request.lap
    };
    let own = |problem: Problem| match problem.field.as_str() {
        "lap" => Problem {
            field: "backLap".to_owned(),
            ..problem
        },
        _ => problem,
    };
    let back = refused(board, lap).into_iter();
    // What is wrong with the front's lap itself is said there.
    let is_fronts = |problem: &Problem| {
        problem.field == "lap" && !has_lap && front.iter().any(|said| is_same(said, problem))
    };
    let back = back.filter(|problem| !is_fronts(problem));
    let back = back.map(own).collect();
    with_more(front, back)
}

/// Problems, and those of more; of two of the same kind at one field the one that leaves it less.
pub(super) fn with_more(problems: Vec<Problem>, more: Vec<Problem>) -> Vec<Problem> {
    let mut all = problems;
    for problem in more {
        match all.iter_mut().find(|said| is_same(said, &problem)) {
            Some(said) if leaves_less(&problem, said) => *said = problem,
            Some(_) => {}
            None => all.push(problem),
        }
    }
    all
}

fn leaves_less(problem: &Problem, other: &Problem) -> bool {
    match (problem.limit, other.limit) {
        (Some(least), Some(others)) if problem.code == Code::TooSmall => least > others,
        (Some(most), Some(others)) => most < others,
        (limit, others) => limit.is_none() && others.is_some(),
    }
}

fn is_same(problem: &Problem, other: &Problem) -> bool {
    problem.field == other.field && problem.code == other.code
}

fn board(thickness: Mm) -> Given<BoardRequest> {
    let thickness = thickness.mm().into();
    BoardRequest { thickness }.into()
}

fn box_request(request: &DrawerJointRequest) -> BoxJointRequest {
    BoxJointRequest {
        cutter: request.cutter.clone(),
        screw: request.screw.clone(),
        zero: request.zero.clone(),
        first: request.first.clone(),
        glue_gap: request.glue_gap.clone(),
        proud: request.proud.clone(),
        saw: request.saw.clone(),
        ..BoxJointRequest::default()
    }
}

fn dovetail_request(request: &DrawerJointRequest) -> DovetailRequest {
    DovetailRequest {
        slope: request.slope.clone(),
        tails: request.tails.clone(),
        half_pin: request.half_pin.clone(),
        narrow_pin: request.narrow_pin.clone(),
        by: request.by.clone(),
        lap: request.lap.clone(),
        cutter: request.cutter.clone(),
        pin_cutter: request.pin_cutter.clone(),
        screw: request.screw.clone(),
        zero: request.zero.clone(),
        glue_gap: request.glue_gap.clone(),
        proud: request.proud.clone(),
        saw: request.saw.clone(),
        ..DovetailRequest::default()
    }
}

fn refuse_dovetails(request: &DrawerJointRequest, check: &mut Checker<'_>) {
    let fields = [
        ("slope", request.slope.is_missing()),
        ("tails", request.tails.is_missing()),
        ("halfPin", request.half_pin.is_missing()),
        ("narrowPin", request.narrow_pin.is_missing()),
        ("by", request.by.is_missing()),
        ("lap", request.lap.is_missing()),
        ("backLap", request.back_lap.is_missing()),
        ("pinCutter", request.pin_cutter.is_missing()),
    ];
    check.unused("box joints", &fields);
}

/// Problems of the joint's own fields; `None` if there are any.
fn pass_on(problems: Vec<Problem>, check: &mut Checker<'_>) -> Option<()> {
    let is_own = |field: &str| OWN.contains(&field.split('.').next().unwrap_or_default());
    let mut clean = true;
    for problem in problems {
        if !is_own(&problem.field) {
            clean = false;
            check.refuse(&problem.field, problem.code, problem.message, problem.limit);
        }
    }
    clean.then_some(())
}

pub(super) fn length(given: &Given<f64>, default: Mm) -> Mm {
    match given {
        Given::Value(mm) => Mm::new(*mm).unwrap_or(default),
        _ => default,
    }
}
