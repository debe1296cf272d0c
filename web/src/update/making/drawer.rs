//! Drawers gone on with elsewhere: their joint as one of the job's, their boards as parts.

use notchwright_core::drawer::{DrawerBoxPlan, DrawerPlan, Nudged};
use notchwright_core::given::Given;
use notchwright_core::units::{Mm, Unit, write_number};

use super::boards;
use super::joints::{self, Coming};
use crate::answer::making::drawer::plan;
use crate::msg::HandOver;
use crate::state::fields::{Known, drawer};
use crate::state::{
    DovetailForm, Edge, Ends, Entry, First, Form, GrooveForm, Id, JointForm, JointKind, LayoutKind,
    Leftover, PiecesForm, PinsBy, SlopeBy, Work,
};
use crate::update::edit::Outcome;

/// Adds what follows from the drawers; nothing happens while their fields do not say what.
#[inline(never)]
pub(crate) fn hand_over(work: &mut Work, to: HandOver) -> Outcome {
    let Some(plan) = plan(work) else {
        return Outcome::default();
    };
    match to {
        HandOver::Joint(place) => {
            let drawer = plan.drawers.get(place);
            drawer.map_or_else(Outcome::default, |drawer| {
                add_joint(work, &plan, place, drawer)
            })
        }
        HandOver::Parts | HandOver::Sheet => boards::add(&mut work.job.making, &plan.parts),
    }
}

/// To a hundredth, as it is shown: always in millimetres, so that it is the same whenever it is handed over.
pub(super) fn length(length: Mm) -> Entry {
    Entry::mm(&write_number(length.mm(), 2))
}

/// A drawer's height. Where whole fingers of some width make it, it is as they make it.
pub(super) fn height(height: Mm, form: &Form) -> Entry {
    let is_shared = form.text(drawer::LAYOUT.name()) == "count";
    if is_shared || is_dovetailed(form) {
        length(height)
    } else {
        Entry::of(height, Unit::Mm)
    }
}

fn is_dovetailed(form: &Form) -> bool {
    form.text(drawer::JOINT.name()) == "dovetail"
}

/// Ends of a drawer whose corners are cut with one joint.
#[derive(Clone, Copy, PartialEq)]
enum Corners {
    All,
    Front,
    Back,
}

/// Adds the joint of all corners, or the front's and after it the back's, or brings them up to date.
fn add_joint(work: &mut Work, plan: &DrawerBoxPlan, place: usize, drawer: &DrawerPlan) -> Outcome {
    let corners: &[Corners] = match drawer.joint.back {
        Some(_) => &[Corners::Front, Corners::Back],
        None => &[Corners::All],
    };
    let called = match plan.drawers.len() {
        1 => "Drawer".to_owned(),
        _ => format!("Drawer {}", place + 1),
    };
    let key = |corners: Corners| format!("{place};{}", corners.named("front"));
    let mut coming = Vec::new();
    for corners in corners {
        coming.push(Coming {
            key: key(*corners),
            joint: joint(work, &called, drawer, *corners),
        });
    }
    let gone = drawer.joint.back.is_none().then(|| key(Corners::Back));
    joints::bring(work, coming, gone.as_deref())
}

fn joint(work: &Work, called: &str, drawer: &DrawerPlan, corners: Corners) -> JointForm {
    let form = &work.job.making.drawer;
    let thickness = |name: &str| {
        let board = drawer.boards.iter().find(|board| board.name == name);
        board.map_or_else(Entry::default, |board| length(board.thickness))
    };
    let mut joint = work.blank_joint();
    let to = corners.named("front and back");
    joint.name = Entry::mm(&format!("{called}, sides to {to}"));
    joint.width = height(drawer.height, form);
    joint.thickness_a = thickness("side");
    joint.thickness_b = thickness(corners.named("front"));
    joint.glue_gap = Entry::mm("0.05");
    joint.proud = Entry::default();
    joint.pieces = pieces(drawer, corners);
    if is_dovetailed(form) {
        joint.kind = JointKind::Dovetail;
        joint.dovetail = dovetail(form, drawer, corners);
        joint.groove = GrooveForm::default();
        return joint;
    }
    joint.kind = JointKind::Box;
    joint.layout = match form.text(drawer::LAYOUT.name()) {
        "count" | "finger" => LayoutKind::Count,
        _ => LayoutKind::OnePass,
    };
    joint.count = Entry::mm(&drawer.joint.count.to_string());
    joint.leftover = Leftover::Ends;
    joint.first = match form.text(drawer::FIRST.name()) {
        "socket" => First::Socket,
        _ => First::Pin,
    };
    joint.groove = groove(drawer);
    joint
}

impl Corners {
    /// The board at that end, or what is said for both.
    fn named(self, all: &'static str) -> &'static str {
        match self {
            Self::All => all,
            Self::Front => "front",
            Self::Back => "back",
        }
    }
}

fn pieces(drawer: &DrawerPlan, corners: Corners) -> PiecesForm {
    PiecesForm {
        what: Entry::mm("drawer"),
        count: Entry::mm(&drawer.count.to_string()),
        names_a: Entry::mm("left side; right side"),
        names_b: Entry::mm(corners.named("front; back")),
        ends_a: match corners {
            Corners::All => Ends::Both,
            Corners::Front | Corners::Back => Ends::One,
        },
        ends_b: Ends::Both,
    }
}

/// What was typed of the dovetails goes on as it was typed, but for widths that the back has from the front.
fn dovetail(form: &Form, drawer: &DrawerPlan, corners: Corners) -> DovetailForm {
    let front = typed_dovetail(form);
    let back = drawer.joint.back.as_ref();
    let Some(request) = back.and_then(|back| back.dovetail.as_ref()) else {
        return front;
    };
    if corners != Corners::Back {
        return front;
    }
    let lap = form.get(drawer::BACK_LAP.name()).cloned();
    let back = DovetailForm {
        lap: lap.unwrap_or(front.lap.clone()),
        ..front
    };
    match (&back.by, &request.narrow_pin, &request.half_pin) {
        (PinsBy::Ratio | PinsBy::Equal, Given::Value(pin), Given::Value(half_pin)) => {
            let width = |mm: f64| Mm::new(mm).map(length).unwrap_or_default();
            DovetailForm {
                by: PinsBy::Widths,
                narrow_pin: width(*pin),
                half_pin: width(*half_pin),
                ..back
            }
        }
        _ => back,
    }
}

fn typed_dovetail(form: &Form) -> DovetailForm {
    let typed = |field: Known| form.get(field.name()).cloned().unwrap_or_default();
    DovetailForm {
        tails: typed(drawer::TAILS),
        by: match form.text(drawer::PINS.name()) {
            "ratio" => PinsBy::Ratio,
            "equal" => PinsBy::Equal,
            "narrowest" => PinsBy::Narrowest,
            _ => PinsBy::Widths,
        },
        narrow_pin: typed(drawer::NARROW_PIN),
        half_pin: typed(drawer::HALF_PIN),
        ratio: typed(drawer::TAIL_TO_PIN),
        slope_by: match form.text(drawer::SLOPE.name()) {
            "degrees" => SlopeBy::Degrees,
            _ => SlopeBy::Run,
        },
        run: typed(drawer::RUN),
        degrees: typed(drawer::DEGREES),
        lap: typed(drawer::LAP),
        pin_cutter: form
            .text(drawer::PIN_CUTTER.name())
            .parse()
            .map(Id)
            .unwrap_or_default(),
        ..DovetailForm::default()
    }
}

/// A groove that was moved touches the edge of its finger: it is rounded to where it stays behind it.
fn groove(drawer: &DrawerPlan) -> GrooveForm {
    let groove = &drawer.groove;
    let hundredths = groove.from_edge.mm() * 100.0;
    let moved = drawer.nudges.iter().find(|it| it.what == Nudged::Groove);
    let from_edge = match moved {
        Some(nudge) if nudge.to < nudge.from => Mm::new((hundredths - ASIDE).floor() / 100.0),
        Some(_) => Mm::new((hundredths + ASIDE).ceil() / 100.0),
        None => Some(groove.from_edge),
    };
    GrooveForm {
        on: true,
        edge: Edge::Reference,
        from_edge: Entry::of(from_edge.unwrap_or(groove.from_edge), Unit::Mm),
        width: Entry::of(groove.width, Unit::Mm),
        depth: Entry::of(groove.depth, Unit::Mm),
    }
}

/// Hundredths of a millimetre that a finger's edge can be off by, the height being rounded.
const ASIDE: f64 = 1.3;
