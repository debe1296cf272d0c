//! The corners' joint: what of it is the drawer's own, and the request that is handed on.

use super::request::{DrawerJointRequest, DrawerLayoutRequest};
use crate::check::{Checker, part};
use crate::cutter::Cutter;
use crate::dial::Screw;
use crate::given::Given;
use crate::joint::box_joint::{
    BoardRequest, BoxJointRequest, GrooveRequest, LayoutRequest, box_joint,
};
use crate::joint::dovetail::{DovetailRequest, dovetail};
use crate::limits;
use crate::message;
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
    Dovetail { lap: Mm },
}

/// How fingers come to their width, and the narrowest that the cutter makes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Fingers {
    pub(super) rule: Rule,
    pub(super) narrowest: Mm,
    pub(super) step: Mm,
    pub(super) gap: Mm,
}

#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Rule {
    Count(u32),
    Finger(Mm),
    /// As wide as one pass makes them, on the dial.
    OnePass(Mm),
}

/// As the box joint takes it when it is left out.
const USUAL_GAP: Mm = Mm::constant(0.05);

/// Fields of a joint that the drawer fills in.
const OWN: [&str; 7] = ["width", "a", "b", "tail", "pin", "layout", "groove"];

impl Corner {
    /// Checks the request at the checker's place.
    pub(super) fn check(
        request: &DrawerJointRequest,
        boards: [&Given<BoardRequest>; 2],
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
            let asked = BoxJointRequest {
                a: boards[0].clone(),
                b: boards[1].clone(),
                ..box_request(request)
            };
            pass_on(box_joint(&asked).err(), check)?;
            return Some(corner(Kind::Box(fingers(request, rule?, check)?)));
        }
        let fields = [
            ("layout", request.layout.is_missing()),
            ("first", request.first.is_missing()),
        ];
        check.unused("dovetails", &fields);
        let asked = DovetailRequest {
            tail: boards[0].clone(),
            pin: boards[1].clone(),
            ..dovetail_request(request)
        };
        pass_on(dovetail(&asked).err(), check)?;
        let lap = length(&request.lap, Mm::ZERO);
        Some(corner(Kind::Dovetail { lap }))
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

    /// Wood in front of the tails.
    pub(super) fn lap(&self) -> Mm {
        match self.kind {
            Kind::Box(_) => Mm::ZERO,
            Kind::Dovetail { lap } => lap,
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

    /// The dovetail for boards of this height.
    pub(super) fn dovetail(&self, height: Mm, boards: [Mm; 2]) -> DovetailRequest {
        let [tail, pin] = boards.map(board);
        DovetailRequest {
            width: height.mm().into(),
            tail,
            pin,
            ..dovetail_request(&self.request)
        }
    }
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
        ("pinCutter", request.pin_cutter.is_missing()),
    ];
    check.unused("box joints", &fields);
}

/// The joint is asked without a width, so that it says what is wrong with its own fields; `None` if anything is.
fn pass_on(problems: Option<Vec<Problem>>, check: &mut Checker<'_>) -> Option<()> {
    let is_own = |field: &str| OWN.contains(&field.split('.').next().unwrap_or_default());
    let mut clean = true;
    for problem in problems.into_iter().flatten() {
        if !is_own(&problem.field) {
            clean = false;
            check.refuse(&problem.field, problem.code, problem.message, problem.limit);
        }
    }
    clean.then_some(())
}

/// A layout before the cutter has its say.
#[derive(Clone, Copy)]
enum LayoutRule {
    Count(u32),
    Finger(Mm),
    OnePass,
}

impl LayoutRule {
    fn check(request: &DrawerLayoutRequest, check: &mut Checker<'_>) -> Option<Self> {
        let words = ["count", "finger", "onePass"];
        let kind = check.word("kind", &request.kind, &words.map(|word| (word, word)))?;
        let given = [
            ("count", request.count.is_missing(), "count"),
            ("width", request.width.is_missing(), "finger"),
        ];
        for (field, missing, owner) in given {
            if owner != kind {
                check.unused("this layout", &[(field, missing)]);
            }
        }
        match kind {
            "count" => Self::check_count(request, check),
            "finger" => check
                .length("width", &request.width, &limits::FINGER)
                .map(Self::Finger),
            _ => Some(Self::OnePass),
        }
    }

    fn check_count(request: &DrawerLayoutRequest, check: &mut Checker<'_>) -> Option<Self> {
        let count = check.count("count", &request.count, &limits::FINGER_COUNT)?;
        if count % 2 == 1 {
            return Some(Self::Count(count));
        }
        let odd = (count - 1).max(3);
        let message = message![
            "A drawer's fingers are the same at both edges: an odd number, such as ",
            odd,
            "."
        ];
        check.refuse("count", Code::Conflict, message, Some(f64::from(odd)));
        None
    }
}

/// The joint has already found cutter, screw and gap to be good.
fn fingers(
    request: &DrawerJointRequest,
    rule: LayoutRule,
    check: &mut Checker<'_>,
) -> Option<Fingers> {
    let cutter = part("cutter", &request.cutter, check, Cutter::check)?;
    let screw = part("screw", &request.screw, check, Screw::check)?;
    let gap = length(&request.glue_gap, USUAL_GAP);
    let (step, least) = (screw.step(), cutter.kerf() - gap);
    let rule = match rule {
        LayoutRule::Count(count) => Rule::Count(count),
        LayoutRule::Finger(finger) => Rule::Finger(finger),
        // As the box joint's own rule for one pass a socket has it.
        LayoutRule::OnePass => Rule::OnePass(step * one_pass_steps(least, step, check)?),
    };
    let narrowest = match rule {
        Rule::OnePass(finger) => finger,
        Rule::Count(_) | Rule::Finger(_) => least.max(Mm::constant(limits::FINGER.least)),
    };
    Some(Fingers {
        rule,
        narrowest,
        step,
        gap,
    })
}

/// Steps of the dial in a finger that one pass makes.
fn one_pass_steps(finger: Mm, step: Mm, check: &mut Checker<'_>) -> Option<f64> {
    let steps = (finger / step).round();
    if steps < 1.0 {
        let message = message![
            "One pass per socket needs dial steps of at most ",
            finger,
            "; this screw's are ",
            step,
            ". More divisions, half divisions or another layout would work."
        ];
        let mut check = check.at("screw");
        check.refuse("divisions", Code::DialTooCoarse, message, None);
        return None;
    }
    Some(steps)
}

fn length(given: &Given<f64>, default: Mm) -> Mm {
    match given {
        Given::Value(mm) => Mm::new(*mm).unwrap_or(default),
        _ => default,
    }
}

/// The least odd number that is not below a ratio, forgiving arithmetic's noise.
fn odd_from(ratio: f64) -> u32 {
    odd_within(ratio - 2e-9 + 2.0)
}

/// The greatest odd number that is not above a ratio, forgiving arithmetic's noise; 0 for less than 1.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a drawer's height over a finger"
)]
pub(super) fn odd_within(ratio: f64) -> u32 {
    let whole = (ratio + 1e-9).floor() as u32;
    if whole.is_multiple_of(2) {
        whole.saturating_sub(1)
    } else {
        whole
    }
}
