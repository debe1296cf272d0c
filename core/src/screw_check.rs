//! A lead screw against a rule: its true lead, its once-per-turn error, its backlash.

mod iso230;
mod request;
#[cfg(test)]
mod tests;

pub use iso230::Iso230;
pub use request::{PointRequest, ScrewCheckRequest};

use serde::Serialize;

use crate::check::Checker;
use crate::dial::Screw;
use crate::least_squares;
use crate::math::{atan2, cos, hypot, sin};
use crate::message;
use crate::problem::{Checked, Code, Note, Planned, Severity};
use crate::units::Mm;

/// What a table of commanded and measured positions says of a screw.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct ScrewCheckPlan {
    /// True travel per turn, mm.
    pub lead: Mm,
    /// How much longer the true lead is than the stated one, in thousandths.
    pub scale_per_mille: f64,
    /// Measured position where 0 is commanded, mm.
    pub offset: Mm,
    /// The error that comes back with every turn, where the points can tell it.
    #[serde(rename = "onceperTurn", skip_serializing_if = "Option::is_none")]
    pub once_per_turn: Option<OncePerTurn>,
    /// Lost motion, mm, where positions were approached from both sides.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub backlash: Option<Mm>,
    /// Standard deviation of what the fit does not explain, mm.
    pub residual: Mm,
    /// Greatest of what the fit does not explain, mm.
    pub worst: Mm,
    /// What the fit does not explain, point by point as given, mm.
    pub residuals: Vec<Mm>,
    /// What the lead's error comes to over boards of some widths.
    pub over_board: Vec<OverBoard>,
    /// Positioning figures by ISO 230-2, where every position was approached twice or more from both sides.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub iso230: Option<Iso230>,
    /// The points as given, for drawings.
    #[serde(skip)]
    pub(crate) points: Vec<Point>,
    /// Travel per turn as it was stated, mm, for drawings.
    #[serde(skip)]
    pub(crate) stated_lead: Mm,
}

/// An error that comes back with every turn: `amplitude · sin(2π·turns + phase)`.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct OncePerTurn {
    /// Half of its range, mm.
    pub amplitude: Mm,
    /// Where in the turn it begins, degrees.
    pub phase_degrees: f64,
}

/// What the lead's error comes to over a length.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct OverBoard {
    /// The length, mm.
    pub length: Mm,
    /// The error over it, mm.
    pub error: Mm,
}

/// A position that was commanded and then measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Point {
    pub(crate) commanded: Mm,
    pub(crate) measured: Mm,
    pub(crate) approach: Option<Approach>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Approach {
    Up,
    Down,
}

/// Widths of boards that the lead's error is said for.
const BOARDS: [Mm; 4] = [
    Mm::constant(100.0),
    Mm::constant(140.0),
    Mm::constant(200.0),
    Mm::constant(300.0),
];

/// Fits `measured = offset + scale · commanded ± backlash/2 + a · sin 2πt + b · cos 2πt`, `t` in turns, the
/// last two only when the points can tell them apart.
///
/// # Errors
/// Every problem of the request at once.
pub fn screw_check(request: &ScrewCheckRequest) -> Checked<ScrewCheckPlan> {
    let mut problems = Vec::new();
    let mut check = Checker::new(&mut problems);
    let screw = crate::check::part("screw", &request.screw, &mut check, Screw::check);
    let points = check
        .required("points", &request.points)
        .and_then(|points| request::points(points, &mut check));
    let (Some(screw), Some(points)) = (screw, points) else {
        return Err(problems);
    };
    match Fitted::new(&screw, &points) {
        Some(fitted) => Ok(answer(&screw, &points, &fitted)),
        None => {
            let message = message![
                "These points lie too close together: measure at places some turns apart."
            ];
            check.refuse("points", Code::TooSmall, message, None);
            Err(problems)
        }
    }
}

struct Fitted {
    offset: f64,
    scale: f64,
    reversal: Option<f64>,
    wobble: Option<(f64, f64)>,
    residuals: Vec<f64>,
    unknowns: usize,
}

impl Fitted {
    fn new(screw: &Screw, points: &[Point]) -> Option<Self> {
        let both_ways = has_both(points);
        let turns = |point: &Point| 2.0 * core::f64::consts::PI * (point.commanded / screw.lead());
        let wobble = [
            points
                .iter()
                .map(|point| sin(turns(point)))
                .collect::<Vec<_>>(),
            points.iter().map(|point| cos(turns(point))).collect(),
        ];
        let mut columns = vec![
            vec![1.0; points.len()],
            points.iter().map(|point| point.commanded.mm()).collect(),
        ];
        if both_ways {
            columns.push(
                points
                    .iter()
                    .map(|point| half_way(point.approach))
                    .collect(),
            );
        }
        let plain = columns.len();
        if tells_wobble(&wobble) && points.len() > plain + 2 {
            columns.extend(wobble);
        }
        let observed: Vec<f64> = points.iter().map(|point| point.measured.mm()).collect();
        let fit = least_squares::fit(&columns, &observed)
            .or_else(|| least_squares::fit(columns.get(..plain)?, &observed))?;
        let mut found = fit.coefficients.iter().copied();
        let (offset, scale) = (found.next()?, found.next()?);
        let reversal = if both_ways { found.next() } else { None };
        let wobble = found.next().zip(found.next());
        Some(Self {
            offset,
            scale,
            reversal,
            wobble,
            residuals: fit.residuals,
            unknowns: fit.coefficients.len(),
        })
    }
}

fn half_way(approach: Option<Approach>) -> f64 {
    match approach {
        Some(Approach::Up) => 0.5,
        Some(Approach::Down) => -0.5,
        None => 0.0,
    }
}

fn has_both(points: &[Point]) -> bool {
    let has = |approach| points.iter().any(|point| point.approach == Some(approach));
    has(Approach::Up) && has(Approach::Down)
}

/// Points at the same place of every turn, or at two opposite ones, cannot tell a wobble from an offset.
fn tells_wobble(wobble: &[Vec<f64>; 2]) -> bool {
    const APART: f64 = 1e-3;
    let [sines, cosines] = wobble;
    let mut seen: Vec<(f64, f64)> = Vec::new();
    for place in sines.iter().copied().zip(cosines.iter().copied()) {
        if seen
            .iter()
            .all(|other| hypot(other.0 - place.0, other.1 - place.1) > APART)
        {
            seen.push(place);
        }
        if seen.len() > 2 {
            return true;
        }
    }
    false
}

fn answer(screw: &Screw, points: &[Point], fitted: &Fitted) -> Planned<ScrewCheckPlan> {
    let mm = |value: f64| Mm::new(value).unwrap_or_default();
    let free = points.len().saturating_sub(fitted.unknowns);
    let squares: f64 = fitted.residuals.iter().map(|value| value * value).sum();
    let residual = if free > 0 {
        (squares / free as f64).sqrt()
    } else {
        0.0
    };
    let error = fitted.scale - 1.0;
    let plan = ScrewCheckPlan {
        lead: screw.lead() * fitted.scale,
        scale_per_mille: error * 1000.0,
        offset: mm(fitted.offset),
        once_per_turn: fitted.wobble.map(|(a, b)| OncePerTurn {
            amplitude: mm(hypot(a, b)),
            phase_degrees: atan2(b, a).to_degrees(),
        }),
        backlash: fitted.reversal.map(|reversal| mm(reversal.abs())),
        residual: mm(residual),
        worst: fitted
            .residuals
            .iter()
            .map(|value| mm(value.abs()))
            .max()
            .unwrap_or_default(),
        residuals: fitted.residuals.iter().map(|value| mm(*value)).collect(),
        over_board: BOARDS
            .map(|length| OverBoard {
                length,
                error: length * error,
            })
            .to_vec(),
        iso230: iso230::figures(points),
        points: points.to_vec(),
        stated_lead: screw.lead(),
    };
    let notes = [few(free), wrong_scale(error)]
        .into_iter()
        .flatten()
        .collect();
    Planned { plan, notes }
}

fn few(free: usize) -> Option<Note> {
    let message = message![
        "There are hardly more points than unknowns: measure more of them before you trust this."
    ];
    (free < 3).then(|| Note::new("few-points", Severity::Warning, message))
}

/// No screw is off by this much: a lead, an inch or a start has been mistaken.
const MISTAKEN: f64 = 0.02;

fn wrong_scale(error: f64) -> Option<Note> {
    let message = message![
        "The lead is off by more than two hundredths: check the lead, the number of starts and the unit first."
    ];
    (error.abs() > MISTAKEN)
        .then(|| Note::new("mistaken-lead", Severity::Warning, message).about("screw.lead"))
}
