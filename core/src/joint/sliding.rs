//! Sliding dovetails: a socket along one board and a tongue on another's end or edge, both with the same
//! dovetail bit on the router table.

use serde::Serialize;

use crate::check::{Checker, optional_part, part};
use crate::given::{Given, request};
use crate::joint::box_joint::BoardRequest;
use crate::limits;
use crate::math::tan;
use crate::message;
use crate::problem::{Checked, Code, Note, Planned, Severity};
use crate::units::Mm;

request! {
    /// A sliding dovetail.
    pub struct SlidingDovetailRequest {
        /// The bit.
        pub bit: Given<BitRequest> = "bit",
        /// Depth of the socket, mm.
        pub depth: Given<f64> = "depth",
        /// Width of the socket at its floor, mm; the bit's own when left out.
        pub socket_floor: Given<f64> = "socketFloor",
        /// The board that gets the tongue.
        pub board: Given<BoardRequest> = "board",
        /// Glue gap at each flank, mm; 0.05 when left out.
        pub glue_gap: Given<f64> = "glueGap",
        /// A socket that opens towards one end, so that the tongue only grips at last.
        pub taper: Given<TaperRequest> = "taper",
    }

    /// A dovetail bit.
    pub struct BitRequest {
        /// Diameter at its tip, where it is widest, mm.
        pub tip_diameter: Given<f64> = "tipDiameter",
        /// Angle of its flank to its axis, degrees.
        pub flank_degrees: Given<f64> = "flankDegrees",
        /// Length of its cutting edge, mm; no bound when left out.
        pub cutting_length: Given<f64> = "cuttingLength",
    }

    /// A tapered socket.
    pub struct TaperRequest {
        /// How much wider the socket is where the tongue enters, mm.
        pub by: Given<f64> = "by",
        /// Length of the socket, mm.
        pub length: Given<f64> = "length",
    }
}

/// A sliding dovetail, ready to rout.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct SlidingDovetailPlan {
    /// Width of the socket at the board's face, mm.
    pub mouth: Mm,
    /// Width of the socket at its floor, mm.
    pub floor: Mm,
    /// Depth of the socket, and length of the tongue, mm.
    pub depth: Mm,
    /// Width of the tongue at its tip, mm.
    pub tongue_tip: Mm,
    /// Width of the tongue at its shoulder, mm.
    pub tongue_mouth: Mm,
    /// Moves of the fence from one pass of the socket to the next, mm; none for a socket of one pass.
    pub socket_fence_moves: Vec<Mm>,
    /// First setting of the fence from the one that puts the bit on the socket's middle, mm.
    pub first_from_middle: Mm,
    /// How deep each side of the tongue's board is cut at the tip, mm.
    pub tongue_cut_per_side: Mm,
    /// How a tapered socket is turned.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub taper: Option<Taper>,
}

/// The turn of a tapered socket's flank.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Taper {
    /// How far each flank runs out over the socket's length, mm: the shim under one end of the board.
    pub per_side: Mm,
    /// The same as an angle, degrees.
    pub degrees: f64,
}

struct Job {
    tip: Mm,
    slope: f64,
    depth: Mm,
    floor: Mm,
    board: Mm,
    gap: Mm,
    taper: Option<(Mm, Mm)>,
}

impl Job {
    fn mouth_of_one(&self) -> Mm {
        self.tip - self.depth * (2.0 * self.slope)
    }
}

/// Plans a sliding dovetail: mouth `D − 2·e·tan α` for a bit of tip `D` and flank `α`, `e` deep; tongue at its tip
/// as wide as the socket's floor less both glue gaps (derived).
///
/// # Errors
/// Every problem of the request at once.
pub fn sliding_dovetail(request: &SlidingDovetailRequest) -> Checked<SlidingDovetailPlan> {
    let mut problems = Vec::new();
    match read(request, &mut Checker::new(&mut problems)) {
        Some(job) if problems.is_empty() => Ok(Planned {
            plan: plan(&job),
            notes: notes(&job),
        }),
        _ => Err(problems),
    }
}

const USUAL_GAP: Mm = Mm::constant(0.05);

fn read(request: &SlidingDovetailRequest, check: &mut Checker<'_>) -> Option<Job> {
    let bit = part("bit", &request.bit, check, |bit, check| {
        let tip = check.length("tipDiameter", &bit.tip_diameter, &limits::BIT);
        let degrees = check.number("flankDegrees", &bit.flank_degrees, &limits::FLANK);
        let longest =
            check.optional_length("cuttingLength", &bit.cutting_length, &limits::GROOVE_DEPTH);
        Some((tip?, degrees?, longest?))
    });
    let depth = check.length("depth", &request.depth, &limits::GROOVE_DEPTH);
    let floor = check.optional_length("socketFloor", &request.socket_floor, &limits::GROOVE_WIDTH);
    let board = part("board", &request.board, check, |board, check| {
        check.length("thickness", &board.thickness, &limits::BOARD_THICKNESS)
    });
    let gap = check.length_or("glueGap", &request.glue_gap, &limits::GLUE_GAP, USUAL_GAP);
    let taper = optional_part("taper", &request.taper, check, |taper, check| {
        let by = check.length("by", &taper.by, &limits::GLUE_GAP);
        let length = check.length("length", &taper.length, &limits::BOARD_WIDTH);
        Some((by?, length?))
    });
    let (tip, degrees, longest) = bit?;
    let job = Job {
        tip,
        slope: tan(degrees.to_radians()),
        depth: depth?,
        floor: floor?.unwrap_or(tip),
        board: board?,
        gap: gap?,
        taper: taper?,
    };
    can_be_cut(&job, longest, check);
    Some(job)
}

fn can_be_cut(job: &Job, longest: Option<Mm>, check: &mut Checker<'_>) {
    depth_leaves_necks(job, longest, check);
    if job.floor.is_below(job.tip) {
        let message = message![
            "The socket's floor cannot be narrower than the bit, ",
            job.tip,
            "."
        ];
        check.refuse("socketFloor", Code::TooSmall, message, Some(job.tip.mm()));
    }
    socket_is_narrow_enough(job, check);
}

/// Its passes must be few, and its tongue no wider than the board.
fn socket_is_narrow_enough(job: &Job, check: &mut Checker<'_>) {
    let by_board = job.board + job.gap * 2.0;
    let by_neck = job.tip + stride(job) * MOST_MOVES;
    let has_neck = job.mouth_of_one().is_above(Mm::ZERO);
    if has_neck && by_neck < by_board {
        if count(job) > MOST_MOVES {
            let message = message![
                "The bit's neck is too thin for a socket so wide: a floor of at most ",
                by_neck,
                " would work, a larger bit, or a shallower socket."
            ];
            check.refuse("socketFloor", Code::TooLarge, message, Some(by_neck.mm()));
        }
    } else if job.floor.is_above(by_board) {
        let message = message![
            "The tongue would be wider than its board. A socket floor of at most ",
            by_board,
            " would work, or a smaller bit."
        ];
        check.refuse("socketFloor", Code::TooLarge, message, Some(by_board.mm()));
    }
}

/// The bit, and the tongue that has the glue gap taken off, are narrowest at the mouth.
fn depth_leaves_necks(job: &Job, longest: Option<Mm>, check: &mut Checker<'_>) {
    let tongue = job.floor - job.gap * 2.0;
    if !tongue.is_above(Mm::ZERO) {
        let most = job.floor / 2.0;
        let message = message![
            "The glue gap would eat the tongue: less than ",
            most,
            " would work."
        ];
        check.refuse("glueGap", Code::TooLarge, message, Some(most.mm()));
    }
    let bound = |narrowest: Mm| narrowest / (2.0 * job.slope);
    let neck = bound(job.tip);
    let neck = if tongue.is_above(Mm::ZERO) {
        neck.min(bound(tongue))
    } else {
        neck
    };
    if let Some(longest) = longest.filter(|longest| longest.is_below(neck)) {
        if job.depth.is_above(longest) {
            let message = message!["The bit cuts at most ", longest, " deep in one pass."];
            check.refuse("depth", Code::TooLarge, message, Some(longest.mm()));
        }
    } else if !job.depth.is_below(neck) {
        let message = message![
            "So deep, the neck of the bit or of the tongue would be thinner than nothing: less than ",
            neck,
            " would work."
        ];
        check.refuse("depth", Code::TooLarge, message, Some(neck.mm()));
    }
}

fn plan(job: &Job) -> SlidingDovetailPlan {
    let both = job.depth * (2.0 * job.slope);
    let tip = job.floor - job.gap * 2.0;
    let widening = job.floor - job.tip;
    SlidingDovetailPlan {
        mouth: job.floor - both,
        floor: job.floor,
        depth: job.depth,
        tongue_tip: tip,
        tongue_mouth: tip - both,
        first_from_middle: -widening / 2.0,
        socket_fence_moves: moves(job),
        // A tongue may be wider than its board by what arithmetic leaves behind.
        tongue_cut_per_side: ((job.board - tip) / 2.0).max(Mm::ZERO),
        taper: job.taper.map(|(by, length)| {
            let per_side = by / 2.0;
            Taper {
                per_side,
                degrees: crate::math::atan2(per_side.mm(), length.mm()).to_degrees(),
            }
        }),
    }
}

/// Passes overlap by this share of what the bit cuts at the mouth, where it is narrowest.
const OVERLAP: f64 = 0.1;
/// A socket of more passes is a groove, cut with another bit first.
const MOST_MOVES: f64 = 100.0;

fn stride(job: &Job) -> Mm {
    job.mouth_of_one() * (1.0 - OVERLAP)
}

/// How many moves it takes so that no wood is left between two passes at the mouth.
fn count(job: &Job) -> f64 {
    ((job.floor - job.tip) / stride(job) - 1e-9).ceil().max(0.0)
}

fn moves(job: &Job) -> Vec<Mm> {
    let count = count(job);
    let one = (job.floor - job.tip) / count.max(1.0);
    (0..MOST_MOVES as u32)
        .take_while(|made| f64::from(*made) < count)
        .map(|_| one)
        .collect()
}

fn notes(job: &Job) -> Vec<Note> {
    let swelling = message![
        "Wood swells across its grain: leave the tongue a little shorter than the socket is deep, and glue only \
         the front end where a wide panel must move (common practice, no source)."
    ];
    let waste = message![
        "A dovetail bit cannot be fed in steps of depth: clear most of a deep socket with a narrower straight bit \
         first (common practice, no source)."
    ];
    let mut notes = vec![Note::new("swelling", Severity::Info, swelling)];
    if job.depth.is_above(job.tip / 2.0) {
        notes.push(Note::new("clear-first", Severity::Info, waste));
    }
    notes.push(Note::new("router", Severity::Caution, router()));
    notes
}

fn router() -> crate::message::Message {
    message![
        "Unplug the router before you set the bit or the fence. Feed against the bit's rotation, hold the tongue's board \
         upright against a tall fence, and keep hands away from where the bit comes out. The router's manual, local \
         codes and a qualified person come before this program."
    ]
}

#[cfg(test)]
mod tests;
