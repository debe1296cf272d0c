//! What holds for every dovetail that can be made.

use proptest::prelude::*;

use super::super::{DovetailPlan, DovetailRequest, SlopeRequest, dovetail};
use super::{board, cutter, legal};
use crate::check::Checker;
use crate::cutter::{Cutter, CutterRequest, GrindRequest};
use crate::dial::Screw;
use crate::dryfit::DryFit;
use crate::dryfit::slanted::dry_fit;
use crate::given::Given;
use crate::problem::Problem;
use crate::stop::{Board, Set};
use crate::units::Mm;

/// Arithmetic's noise in a sum of lengths up to some metres.
const NOISE: f64 = 1e-8;

fn screw(request: &DovetailRequest) -> Screw {
    let Given::Value(screw) = &request.screw else {
        panic!("a screw")
    };
    Screw::check(screw, &mut Checker::new(&mut Vec::new())).unwrap()
}

fn upright_kerf(request: &DovetailRequest) -> Mm {
    let ((Given::Value(cutter), _) | (_, Given::Value(cutter))) =
        (&request.pin_cutter, &request.cutter)
    else {
        panic!("a cutter")
    };
    Cutter::check(cutter, &mut Checker::new(&mut Vec::new()))
        .unwrap()
        .kerf()
}

fn check(request: &DovetailRequest) -> Result<bool, TestCaseError> {
    let Ok(planned) = dovetail(request) else {
        return Ok(false);
    };
    let plan = planned.plan;
    stops_are_orderly(&plan, &screw(request))?;
    everything_is_a_number(&plan)?;
    if request.measured.is_missing() {
        flanks_are_what_was_asked(&plan, request)?;
    }
    let told = |code| planned.notes.iter().any(|note| note.code == code);
    prop_assert_eq!(told("clash"), plan.dry_fit.clash);
    Ok(true)
}

/// Every gap is within half a step of the one asked, along the face; every flank of the tail board within
/// half a step of its place. A place hardly wider than the kerf is rounded outwards: a whole step.
fn flanks_are_what_was_asked(
    plan: &DovetailPlan,
    request: &DovetailRequest,
) -> Result<(), TestCaseError> {
    let secant = (1.0 + plan.slope * plan.slope).sqrt();
    let step = screw(request).step().mm();
    let proud = plan.bench.proud.mm() * plan.slope;
    let leaning = plan.sets[0].kerf.mm() * secant;
    let is_tight = |width: f64, kerf: f64| width < kerf + 2.0 * step * secant + NOISE;
    let tight_tails = is_tight(
        plan.pin_outer.mm() + plan.glue_gap.mm() - 2.0 * proud,
        leaning,
    );
    let bases = plan.tails.iter().map(|tail| tail.to_base - tail.from_base);
    let base = bases.min().unwrap().mm() + plan.glue_gap.mm() - 2.0 * step;
    let tight_pins = is_tight(base, upright_kerf(request).mm() * secant);
    let allowed = |tight: bool| step * if tight { 1.0 } else { 0.5 } * (1.0 + 4e-6) + NOISE;
    let flanks = &plan.dry_fit.flanks;
    if plan.lap > Mm::ZERO {
        prop_assert!(flanks.is_empty());
        return Ok(());
    }
    prop_assert_eq!(flanks.len(), 2 * plan.count);
    for (index, flank) in flanks.iter().enumerate() {
        let off = (flank.gap_at_outer - plan.glue_gap).abs().mm();
        prop_assert!(
            off <= allowed(tight_pins) * secant,
            "{flank:?}: off by {off}"
        );
        // Both flanks are straight and parallel: no pass of the other turn has touched them.
        let skew = (flank.gap_at_outer - flank.gap_at_inner).abs().mm();
        prop_assert!(skew < NOISE, "{flank:?}");
        let tail = plan.tails[index / 2];
        let asked = if index % 2 == 0 {
            tail.from_tip + plan.glue_gap / 2.0
        } else {
            tail.to_tip - plan.glue_gap / 2.0
        };
        let off = (flank.x - asked).abs().mm();
        prop_assert!(off <= allowed(tight_tails), "{flank:?} asked at {asked}");
    }
    Ok(())
}

fn stops_are_orderly(plan: &DovetailPlan, screw: &Screw) -> Result<(), TestCaseError> {
    for set in &plan.sets {
        let mut before = set.run_up.reading;
        let first = set.stops[0].dial.reading;
        prop_assert!(
            first - before > screw.backlash(),
            "the run-up takes the backlash up"
        );
        let mut sum = Mm::ZERO;
        for (i, stop) in set.stops.iter().enumerate() {
            prop_assert_eq!(stop.number, i + 1);
            prop_assert!(stop.dial.reading > before, "readings rise in {}", set.name);
            prop_assert!(stop.pass >= 1 && stop.pass <= stop.passes);
            prop_assert_eq!(stop.socket, stop.space / 2);
            prop_assert_eq!(stop.space % 2 == 1, set.board == Board::B);
            let shown =
                screw.lead() * stop.dial.turns as f64 + screw.division() * stop.dial.division;
            prop_assert!(
                (shown - stop.dial.reading).abs().mm() < 1e-6,
                "{shown} shown"
            );
            sum += stop.travel;
            prop_assert!((sum - stop.dial.reading).abs().mm() < 1e-6, "moves add up");
            before = stop.dial.reading;
        }
        passes_overlap(set)?;
    }
    Ok(())
}

/// Passes side by side in one socket leave nothing between them.
fn passes_overlap(set: &Set) -> Result<(), TestCaseError> {
    let slope = crate::math::tan((set.tilt_degrees.abs() + set.yaw_degrees.abs()).to_radians());
    let width = set.kerf.mm() * (1.0 + slope * slope).sqrt();
    let pairs = set.stops.windows(2);
    for pair in pairs.filter(|pair| pair[0].space == pair[1].space) {
        let apart = (pair[1].at - pair[0].at).abs().mm();
        prop_assert!(
            apart <= width + NOISE,
            "{}: {apart} apart, {width} wide",
            set.name
        );
    }
    Ok(())
}

fn everything_is_a_number(plan: &DovetailPlan) -> Result<(), TestCaseError> {
    let fit = &plan.dry_fit;
    for area in [
        fit.gap_area_a,
        fit.gap_area_b,
        fit.clash_area_a,
        fit.clash_area_b,
    ] {
        prop_assert!(area.is_finite() && area >= 0.0, "{area}");
    }
    for uncut in &fit.uncut {
        prop_assert!(uncut.area.is_finite() && uncut.area > 0.0, "{uncut:?}");
        let deepest = match uncut.board {
            Board::A => plan.depth_a,
            Board::B => plan.depth_b,
        };
        prop_assert!(uncut.height.mm() <= deepest.mm() + NOISE, "{uncut:?}");
        prop_assert!(
            uncut.near > Mm::ZERO && uncut.near < plan.width,
            "{uncut:?}"
        );
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2000, failure_persistence: None, max_global_rejects: 200_000, ..ProptestConfig::default() })]

    /// Anything legal is either planned within the rounding rule or refused; nothing panics.
    #[test]
    fn any_legal_request(request in legal::request()) {
        check(&request)?;
    }

    /// The same where nearly everything can be made, so that the rule is really exercised.
    #[test]
    fn usual_requests(request in legal::usual_request()) {
        let planned = check(&request)?;
        prop_assume!(planned);
    }

    /// Turned over, a symmetric board is cut by the same stops.
    #[test]
    fn symmetric_boards_are_cut_alike_from_both_faces(request in legal::usual_request()) {
        let request = DovetailRequest { weights: Given::Missing, ..request };
        let Ok(planned) = dovetail(&request) else { return Err(TestCaseError::reject("refused")) };
        let plan = planned.plan;
        prop_assert!(plan.symmetric);
        let stops = |flipped| {
            let mut leaning = plan.sets.iter().filter(|set| set.tilt_degrees > 0.0);
            let set = leaning.find(|set| set.flipped == flipped).unwrap();
            set.stops.iter().map(|stop| stop.at).collect::<Vec<_>>()
        };
        prop_assert_eq!(stops(false), stops(true));
    }
}

/// Boards thick enough for their slope that leaning passes from both sides do not meet at the baseline:
/// run, thickness, and how much of the way from the kerf to `s·D` the pin is wide.
fn narrow_pins() -> impl Strategy<Value = (f64, f64, f64)> {
    (3.0..6.0_f64, 15.0..30.0_f64, 0.0..1.0_f64)
}

fn narrow_pin_joint((run, thick, share): (f64, f64, f64)) -> (DovetailRequest, f64) {
    let kerf = 1.6 * (1.0 + 1.0 / (run * run)).sqrt();
    let opening = kerf + 0.01 + share * (thick / run - kerf - 0.01);
    let ground = GrindRequest {
        kind: "slope".into(),
        ..GrindRequest::default()
    };
    let joint = DovetailRequest {
        width: 200.0.into(),
        tail: board(15.0).into(),
        pin: board(thick).into(),
        slope: SlopeRequest::ratio(run).into(),
        tails: 3.0.into(),
        half_pin: 8.0.into(),
        narrow_pin: (opening - 0.05).into(),
        cutter: CutterRequest {
            grind: ground.into(),
            ..cutter(1.6)
        }
        .into(),
        pin_cutter: cutter(1.6).into(),
        screw: super::screw("none").into(),
        ..DovetailRequest::default()
    };
    (joint, opening)
}

/// What is left in the inner sockets of the tail board: area and height of each.
fn left_inside(fit: &DryFit) -> Vec<(f64, f64)> {
    let uncut = fit.uncut.iter().filter(|uncut| uncut.board == Board::A);
    let inside = uncut.filter(|uncut| uncut.near.mm() > 20.0 && uncut.near.mm() < 180.0);
    inside
        .map(|uncut| (uncut.area, uncut.height.mm()))
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1000, failure_persistence: None, ..ProptestConfig::default() })]

    /// Derived: leaning passes alone leave a triangle with a base of `2·s·D − p` and its apex at a depth of
    /// `p/(2·s)`, p being the opening at the board's end.
    #[test]
    fn leaning_passes_leave_a_triangle(shape in narrow_pins()) {
        let (joint, opening) = narrow_pin_joint(shape);
        let plan = super::plan(&joint);
        let leaning: Vec<_> = plan.sets.iter().filter(|set| set.tilt_degrees > 0.0).cloned().collect();
        let (slope, depth) = (plan.slope, plan.depth_a.mm());
        let (base, height) = (2.0 * slope * depth - opening, depth - opening / (2.0 * slope));
        let left = left_inside(&dry_fit(&leaning, &plan.bench));
        prop_assert_eq!(left.len(), 2);
        for (area, top) in left {
            prop_assert!((area - base * height / 2.0).abs() < 1e-4, "{area} for {base} by {height}");
            prop_assert!((top - height).abs() < 1e-4, "{top} for {height}");
        }
    }

    /// Derived: upright passes take the triangle's middle as wide as the opening; two corners are left, each
    /// `s·D − p` wide and `D − p/s` high.
    #[test]
    fn upright_passes_leave_two_corners_of_it(shape in narrow_pins()) {
        let (joint, opening) = narrow_pin_joint(shape);
        let plan = super::plan(&joint);
        let (slope, depth) = (plan.slope, plan.depth_a.mm());
        let (base, height) = (slope * depth - opening, depth - opening / slope);
        // Corners of less than a thousandth of a square millimetre may count as none.
        prop_assume!(base * height > 1e-3);
        let left = left_inside(&plan.dry_fit);
        prop_assert_eq!(left.len(), 2);
        for (area, top) in left {
            prop_assert!((area - base * height).abs() < 1e-4, "{area} for {base} by {height}");
            prop_assert!((top - height).abs() < 1e-4, "{top} for {height}");
        }
    }
}

/// The request with one field set to what a refusal proposes; `None` for fields that are not followed here.
fn followed(request: &DovetailRequest, problem: &Problem) -> Option<DovetailRequest> {
    let mut request = request.clone();
    let limit = problem.limit?;
    match problem.field.as_str() {
        "tails" => request.tails = limit.into(),
        "narrowPin" if !request.narrow_pin.is_missing() => request.narrow_pin = limit.into(),
        "halfPin" => request.half_pin = limit.into(),
        "width" => request.width = limit.into(),
        "lap" => request.lap = limit.into(),
        _ => return None,
    }
    Some(request)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1000, failure_persistence: None, max_global_rejects: 200_000, ..ProptestConfig::default() })]

    /// Whoever follows a refusal is not refused for the same field and reason again.
    #[test]
    fn what_a_refusal_proposes_settles_it(request in legal::request()) {
        let Err(problems) = dovetail(&request) else { return Err(TestCaseError::reject("planned")) };
        for problem in &problems {
            if let Some(next) = followed(&request, problem)
                && let Err(again) = dovetail(&next)
            {
                let same = again.iter().find(|other| (&other.field, other.code) == (&problem.field, problem.code));
                prop_assert!(same.is_none(), "{problem:?} then {same:?}");
            }
        }
    }
}
