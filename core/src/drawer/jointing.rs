//! Where a drawer meets its joint: a height that whole fingers fill, and a groove behind one of them.

use super::checked::{End, Job};
use super::corner::{Kind, with_more};
use super::fingers::{Fingers, Rule, odd_within};
use super::groove::{Seat, behind_finger, behind_tail};
use super::plan::{DrawerBackJoint, DrawerJoint};
use crate::joint::box_joint::{
    BoardRequest, BoxJointRequest, GrooveRequest, LayoutRequest, box_joint,
};
use crate::joint::dovetail::dovetail;
use crate::limits;
use crate::message;
use crate::message::Message;
use crate::problem::{Checked, Code, Note, Problem, Severity};
use crate::units::Mm;

/// A drawer's corners, and what they did to it.
pub(super) struct Corners {
    pub(super) height: Mm,
    /// Why the height was lowered, if it was.
    pub(super) reason: Message,
    pub(super) seat: Seat,
    pub(super) joint: DrawerJoint,
}

/// Divides a drawer of this height at most, and finds its groove a place.
pub(super) fn corners(
    job: &Job,
    nominal: Mm,
    warnings: &mut Vec<Note>,
) -> Result<Corners, Vec<Problem>> {
    match &job.corner.kind {
        Kind::Box(fingers) => fingered(job, nominal, fingers, warnings),
        Kind::Dovetail { .. } => dovetailed(job, nominal, warnings),
    }
}

fn fingered(
    job: &Job,
    nominal: Mm,
    fingers: &Fingers,
    warnings: &mut Vec<Note>,
) -> Result<Corners, Vec<Problem>> {
    let (count, finger) = divide(job, nominal, fingers).map_err(|problem| vec![problem])?;
    let whole = finger * f64::from(count);
    let height = if whole.is_same(nominal) {
        nominal
    } else {
        whole
    };
    let (layout, finger) = match fingers.rule {
        Rule::OnePass(_) => (LayoutRequest::one_pass("ends"), finger),
        // A height that is taken for whole fingers is divided as it is.
        Rule::Count(_) | Rule::Finger(_) => {
            let count = f64::from(count);
            (LayoutRequest::count(count), height / count)
        }
    };
    let request = |from_edge: Mm| {
        let groove = GrooveRequest {
            from_edge: from_edge.mm().into(),
            width: job.groove_width().mm().into(),
            depth: job.bottom.groove.depth.mm().into(),
            ..GrooveRequest::default()
        };
        let boards = [job.side, job.front];
        job.corner.box_joint(height, boards, layout.clone(), groove)
    };
    // A lowered height may leave the groove beside the board: it is looked for from within.
    let most = job.highest_groove(height);
    let asked = job.bottom.groove.from_edge.min(most);
    let back = |front: &BoxJointRequest| job.own_back().map(|back| at_back(front, back));
    let asked_for = request(asked);
    let both = Both {
        front: box_joint(&asked_for),
        back: back(&asked_for).map(|request| box_joint(&request)),
    };
    let (planned, _) = both.settled(job, warnings)?;
    let seat = planned.groove.map_or(Seat::shown(asked), |groove| {
        behind_finger(job, asked, most, &groove)
    });
    let reason = match fingers.rule {
        Rule::OnePass(_) => message![
            count,
            " fingers of one pass each, ",
            finger,
            " on this dial, fill it without a rest."
        ],
        Rule::Count(_) | Rule::Finger(_) => {
            message![count, " fingers of ", finger, " fill it without a rest."]
        }
    };
    let front = request(seat.from_edge);
    Ok(Corners {
        height,
        reason,
        seat,
        joint: DrawerJoint {
            count,
            finger_width: Some(finger),
            back: back(&front).map(|request| DrawerBackJoint {
                box_joint: Some(request),
                dovetail: None,
            }),
            box_joint: Some(front),
            dovetail: None,
        },
    })
}

/// The same fingers on a back of its own.
fn at_back(front: &BoxJointRequest, back: End) -> BoxJointRequest {
    let thickness = back.thickness.mm().into();
    BoxJointRequest {
        b: BoardRequest { thickness }.into(),
        ..front.clone()
    }
}

fn dovetailed(job: &Job, height: Mm, warnings: &mut Vec<Note>) -> Result<Corners, Vec<Problem>> {
    let request = job.corner.dovetail(height, [job.side, job.front]);
    let front = dovetail(&request);
    let planned = front.as_ref().ok().map(|planned| &planned.plan);
    let back = job
        .own_back()
        .map(|back| job.corner.back_dovetail(&request, planned, back));
    let both = Both {
        back: back.as_ref().map(dovetail),
        front,
    };
    let (planned, at_back) = both.settled(job, warnings)?;
    let most = job.highest_groove(height);
    Ok(Corners {
        height,
        reason: Message::default(),
        seat: behind_tail(job, most, &planned, at_back.as_ref().unwrap_or(&planned)),
        joint: DrawerJoint {
            count: u32::try_from(planned.count).unwrap_or_default(),
            finger_width: None,
            box_joint: None,
            dovetail: Some(request),
            back: back.map(|request| DrawerBackJoint {
                box_joint: None,
                dovetail: Some(request),
            }),
        },
    })
}

/// What the joint says of the front's corners, and of the back's where they have their own.
struct Both<P> {
    front: Checked<P>,
    back: Option<Checked<P>>,
}

impl<P> Both<P> {
    /// Both plans, or the problems of both at once.
    fn settled(self, job: &Job, warnings: &mut Vec<Note>) -> Result<(P, Option<P>), Vec<Problem>> {
        let back = self.back.transpose();
        match (self.front, back) {
            (Ok(front), Ok(back)) => {
                keep_warnings(front.notes, warnings);
                let back = back.map(|back| {
                    keep_warnings(back.notes, warnings);
                    back.plan
                });
                Ok((front.plan, back))
            }
            (front, back) => {
                let front = renamed(job, front.err().unwrap_or_default(), "front");
                let back = renamed(job, back.err().unwrap_or_default(), job.back_field);
                let back = back.into_iter().map(of_back).collect();
                Err(with_more(front, back))
            }
        }
    }
}

/// Number and width of the fingers in at most this height, an odd number of them.
fn divide(job: &Job, height: Mm, fingers: &Fingers) -> Result<(u32, Mm), Problem> {
    let narrowest = fingers.narrowest;
    let most = odd_within(height / narrowest);
    match fingers.rule {
        Rule::Count(count) if count > most => {
            let message = message![
                "This cutter makes at most ",
                most,
                " fingers in a drawer ",
                height,
                " high."
            ];
            let limit = Some(f64::from(most));
            Err(problem(
                "joint.layout.count",
                Code::CutterTooWide,
                message,
                limit,
            ))
        }
        Rule::Count(count) => Ok((count, height / f64::from(count))),
        Rule::Finger(finger) if finger.is_below(narrowest) => {
            let message = message![
                "Fingers of ",
                finger,
                " are narrower than this cutter makes them; at least ",
                narrowest,
                "."
            ];
            let limit = Some(narrowest.mm());
            Err(problem(
                "joint.layout.width",
                Code::CutterTooWide,
                message,
                limit,
            ))
        }
        Rule::Finger(finger) | Rule::OnePass(finger) if !holds_groove(job, height, finger) => {
            let least = job.height_for(job.least_height());
            let message = message![
                "Whole fingers of ",
                finger,
                " would leave no room for the bottom's groove; at least ",
                least,
                " would."
            ];
            let limit = Some(least.mm()).filter(|least| *least <= limits::DRAWER.most);
            Err(problem("size.height", Code::TooSmall, message, limit))
        }
        Rule::Finger(finger) => few_enough(height, finger, "joint.layout.width", |least| least),
        Rule::OnePass(finger) => few_enough(height, finger, "joint.cutter.kerf", |least| {
            fingers.step * (least / fingers.step).ceil() + fingers.gap
        }),
    }
}

/// `proposed` is what the field would have to be for fingers of a width.
fn few_enough(
    height: Mm,
    finger: Mm,
    field: &str,
    proposed: impl Fn(Mm) -> Mm,
) -> Result<(u32, Mm), Problem> {
    let count = odd_within(height / finger);
    if count < 3 {
        let most = height / 3.0;
        let message = message![
            "A drawer ",
            height,
            " high takes less than three fingers of ",
            finger,
            "; fingers of at most ",
            most,
            " would work."
        ];
        return Err(problem(field, Code::TooLarge, message, Some(most.mm())));
    }
    let allowed = limits::FINGER_COUNT.most;
    if f64::from(count) > allowed {
        let least = proposed(height / (allowed - 1.0));
        let message = message![
            "This would be ",
            count,
            " fingers; at least ",
            least,
            " would make few enough."
        ];
        return Err(problem(field, Code::TooSmall, message, Some(least.mm())));
    }
    Ok((count, finger))
}

/// Whether whole fingers in this height, where there are three at all, are high enough for the groove.
fn holds_groove(job: &Job, height: Mm, finger: Mm) -> bool {
    let count = odd_within(height / finger);
    let whole = finger * f64::from(count);
    count < 3 || !whole.is_below(job.lowest_board())
}

/// Problems of the joint with one board, at the drawer's own fields.
fn renamed(job: &Job, problems: Vec<Problem>, board: &str) -> Vec<Problem> {
    let rename = |problem: Problem| {
        let (field, limit) = match problem.field.as_str() {
            "width" if problem.code == Code::TooSmall => return higher(job, problem),
            // Its bound is a board's width, not the opening's.
            "width" => ("size.height".to_owned(), None),
            "a.thickness" | "tail.thickness" => ("side.thickness".to_owned(), problem.limit),
            "b.thickness" | "pin.thickness" => (format!("{board}.thickness"), problem.limit),
            field => (format!("joint.{field}"), problem.limit),
        };
        Problem {
            field,
            limit,
            ..problem
        }
    };
    problems.into_iter().map(rename).collect()
}

/// The bound of a board's width, as that of all drawers together.
fn higher(job: &Job, problem: Problem) -> Problem {
    let least = problem.limit.and_then(Mm::new);
    let least = least.map(|board| job.height_for(board));
    let least = least.filter(|least| least.mm() <= limits::DRAWER.most);
    let says = least.map(|least| message![" The height must be at least ", least, "."]);
    Problem {
        field: "size.height".to_owned(),
        message: problem.message.and(says.unwrap_or_default()),
        limit: least.map(Mm::mm),
        ..problem
    }
}

/// What is wrong only there says so, where its field does not.
fn of_back(problem: Problem) -> Problem {
    if problem.field.starts_with("back") {
        return problem;
    }
    Problem {
        message: message!["At the back: "].and(problem.message),
        ..problem
    }
}

/// What spoils a joint is said once for all drawers.
fn keep_warnings(notes: Vec<Note>, warnings: &mut Vec<Note>) {
    for note in notes {
        let is_new = warnings.iter().all(|said| said.code != note.code);
        if note.severity == Severity::Warning && is_new {
            warnings.push(note.about("joint"));
        }
    }
}

/// A problem of one drawer.
pub(super) fn problem(field: &str, code: Code, message: Message, limit: Option<f64>) -> Problem {
    Problem {
        field: field.to_owned(),
        code,
        message,
        limit,
    }
}
