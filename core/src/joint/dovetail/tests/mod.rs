//! Dovetails as tables of examples.

use super::{DovetailPlan, DovetailRequest, SlopeRequest, dovetail};
use crate::cutter::CutterRequest;
use crate::dial::ScrewRequest;
use crate::joint::box_joint::BoardRequest;
use crate::problem::Code;
use crate::stop::Set;
use crate::units::Mm;

mod choosing;
mod layouts;
mod legal;
mod properties;
mod refusals;
mod set_ups;
mod telling;

/// W 140, four tails, 1:8, boards 18 thick, pins 5, half-pins 6; kerf 3.2, lead 2 mm, 100 divisions.
fn request() -> DovetailRequest {
    DovetailRequest {
        width: 140.0.into(),
        tail: board(18.0).into(),
        pin: board(18.0).into(),
        slope: SlopeRequest::ratio(8.0).into(),
        tails: 4.0.into(),
        half_pin: 6.0.into(),
        narrow_pin: 5.0.into(),
        cutter: cutter(3.2).into(),
        screw: screw("division").into(),
        ..DovetailRequest::default()
    }
}

fn board(thickness: f64) -> BoardRequest {
    BoardRequest {
        thickness: thickness.into(),
    }
}

fn cutter(kerf: f64) -> CutterRequest {
    CutterRequest {
        kerf: kerf.into(),
        ..CutterRequest::default()
    }
}

fn screw(rounding: &str) -> ScrewRequest {
    ScrewRequest {
        lead: 2.0.into(),
        divisions: 100.0.into(),
        rounding: rounding.into(),
        ..ScrewRequest::default()
    }
}

fn plan(request: &DovetailRequest) -> DovetailPlan {
    dovetail(request)
        .unwrap_or_else(|problems| panic!("{problems:#?}"))
        .plan
}

fn problems(request: &DovetailRequest) -> Vec<(String, Code, Option<f64>)> {
    let problems = dovetail(request).expect_err("a request with problems");
    problems
        .into_iter()
        .map(|problem| (problem.field, problem.code, problem.limit))
        .collect()
}

fn set<'a>(plan: &'a DovetailPlan, name: &str) -> &'a Set {
    plan.sets.iter().find(|set| set.name == name).unwrap()
}

#[track_caller]
fn near(got: Mm, expected: f64) {
    assert!(
        (got.mm() - expected).abs() < 5e-5,
        "{got} for {expected} mm"
    );
}
