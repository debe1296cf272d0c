//! The stack builder and the kerf of a stepped slot, on request.

use serde::Serialize;

use super::{KerfFault, MOST_LOOSE, Stack, StackFault, cutter_stack, kerf_from_slot};
use crate::check::Checker;
use crate::given::{Given, request};
use crate::limits;
use crate::message;
use crate::problem::{Checked, Code, Planned};
use crate::units::Mm;

request! {
    /// Pieces in the box and the width wanted of them.
    pub struct CutterStackRequest {
        /// Widths of the outer cutters, mm; all of them are in every stack.
        pub outer: Given<Vec<Given<f64>>> = "outer",
        /// Widths of the chippers, mm, each used at most once; none when left out.
        pub chippers: Given<Vec<Given<f64>>> = "chippers",
        /// Widths of the shims, mm, each used at most once; none when left out.
        pub shims: Given<Vec<Given<f64>>> = "shims",
        /// Width wanted, mm.
        pub want: Given<f64> = "want",
    }

    /// A slot made by several kerfs.
    pub struct KerfFromSlotRequest {
        /// How many kerfs were cut side by side.
        pub steps: Given<f64> = "steps",
        /// How far the carriage moved from each to the next, mm; less than the kerf.
        pub step: Given<f64> = "step",
        /// Width of the slot they made together, mm.
        pub slot_width: Given<f64> = "slotWidth",
    }
}

/// The stacks nearest a wanted width.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct CutterStackPlan {
    /// The widest that is not wider than wanted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub below: Option<StackPlan>,
    /// The narrowest that is not narrower than wanted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub above: Option<StackPlan>,
    /// The nearer of the two.
    pub nearest: StackPlan,
}

/// One stack.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct StackPlan {
    /// What it cuts, mm.
    pub width: Mm,
    /// Its pieces.
    pub uses: StackPieces,
}

/// Pieces of a stack, widths in mm.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct StackPieces {
    /// Outer cutters.
    pub outer: Vec<Mm>,
    /// Chippers between them.
    pub chippers: Vec<Mm>,
    /// Shims.
    pub shims: Vec<Mm>,
}

/// The kerf that was measured.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct KerfPlan {
    /// Width of one cut, run-out included, mm.
    pub kerf: Mm,
}

/// Builds stacks as [`cutter_stack`] does.
///
/// # Errors
/// Every problem of the request at once.
pub fn build_stack(request: &CutterStackRequest) -> Checked<CutterStackPlan> {
    let mut problems = Vec::new();
    let mut check = Checker::new(&mut problems);
    let outer = check
        .required("outer", &request.outer)
        .and_then(|list| check.lengths("outer", list, &limits::KERF));
    let chippers = check.optional_lengths("chippers", &request.chippers, &limits::KERF);
    let shims = check.optional_lengths("shims", &request.shims, &limits::SHIM);
    let want = check.length("want", &request.want, &limits::KERF);
    let (Some(outer), Some(chippers), Some(shims), Some(want)) = (outer, chippers, shims, want)
    else {
        return Err(problems);
    };
    match cutter_stack(&outer, &chippers, &shims, want) {
        Ok(stacks) => Ok(Planned::plain(CutterStackPlan {
            below: stacks.below.map(StackPlan::from),
            above: stacks.above.map(StackPlan::from),
            nearest: stacks.nearest.into(),
        })),
        Err(fault) => {
            let (field, code, limit) = match fault {
                StackFault::NoOuterCutters => ("outer", Code::Missing, None),
                StackFault::TooManyPieces { .. } => {
                    ("chippers", Code::TooLarge, Some(MOST_LOOSE as f64))
                }
            };
            check.refuse(field, code, message![fault.to_string()], limit);
            Err(problems)
        }
    }
}

impl From<Stack> for StackPlan {
    fn from(stack: Stack) -> Self {
        let Stack {
            width,
            outer,
            chippers,
            shims,
        } = stack;
        Self {
            width,
            uses: StackPieces {
                outer,
                chippers,
                shims,
            },
        }
    }
}

/// Finds a kerf as [`kerf_from_slot`] does.
///
/// # Errors
/// Every problem of the request at once.
pub fn measure_kerf(request: &KerfFromSlotRequest) -> Checked<KerfPlan> {
    let mut problems = Vec::new();
    let mut check = Checker::new(&mut problems);
    let kerfs = check.count("steps", &request.steps, &limits::KERFS_IN_SLOT);
    let step = check.length("step", &request.step, &limits::STEP);
    let slot = check.length("slotWidth", &request.slot_width, &limits::SLOT_WIDTH);
    let (Some(kerfs), Some(step), Some(slot)) = (kerfs, step, slot) else {
        return Err(problems);
    };
    match kerf_from_slot(kerfs, step, slot) {
        Ok(kerf) => Ok(Planned::plain(KerfPlan { kerf })),
        Err(fault) => {
            let (field, code, message, limit) = match fault {
                KerfFault::NoKerfs => (
                    "steps",
                    Code::TooSmall,
                    message![fault.to_string()],
                    Some(1.0),
                ),
                KerfFault::StepNotAhead => (
                    "step",
                    Code::TooSmall,
                    message![fault.to_string()],
                    Some(0.0),
                ),
                KerfFault::SlotTooNarrow { steps } => {
                    let message = message![
                        "The slot must be wider than its steps together, ",
                        steps,
                        ": measure it again."
                    ];
                    ("slotWidth", Code::TooSmall, message, Some(steps.mm()))
                }
                KerfFault::StepPastKerf { kerf } => {
                    let message = message![
                        "The step must be less than the kerf, which would be ",
                        kerf,
                        ": cut again with a smaller step."
                    ];
                    ("step", Code::TooLarge, message, Some(kerf.mm()))
                }
            };
            check.refuse(field, code, message, limit);
            Err(problems)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{CutterStackRequest, KerfFromSlotRequest, build_stack, measure_kerf};
    use crate::given::Given;
    use crate::problem::Code;

    fn list(widths: &[f64]) -> Given<Vec<Given<f64>>> {
        widths
            .iter()
            .copied()
            .map(Given::from)
            .collect::<Vec<_>>()
            .into()
    }

    #[test]
    fn a_stack_from_the_box() {
        // Derived: 3.2 + 3.2 + 3.2 = 9.6, with the 0.1 shim 9.7; 9.75 is wanted.
        let request = CutterStackRequest {
            outer: list(&[3.2, 3.2]),
            chippers: list(&[3.2, 1.6]),
            shims: list(&[0.1, 0.3]),
            want: 9.75.into(),
        };
        let plan = build_stack(&request).unwrap().plan;
        let width = |stack: Option<super::StackPlan>| {
            stack.map(|stack| (stack.width.mm() * 1000.0).round() / 1000.0)
        };
        assert_eq!(
            (width(plan.below), width(plan.above)),
            (Some(9.7), Some(9.9))
        );
        assert_eq!(width(Some(plan.nearest)), Some(9.7));
    }

    #[test]
    fn all_that_is_wrong_with_a_box() {
        let request = CutterStackRequest {
            outer: list(&[3.2, f64::NAN]),
            chippers: Given::Wrong("the text «many»".to_owned()),
            shims: list(&[-0.1]),
            want: Given::Missing,
        };
        let problems = build_stack(&request).unwrap_err();
        let fields: Vec<_> = problems
            .iter()
            .map(|problem| problem.field.as_str())
            .collect();
        assert_eq!(fields, ["outer.1", "chippers", "shims.0", "want"]);
        let many = CutterStackRequest {
            outer: list(&[3.2]),
            shims: list(&[0.1; 33]),
            want: 9.0.into(),
            ..CutterStackRequest::default()
        };
        assert_eq!(build_stack(&many).unwrap_err()[0].code, Code::TooLarge);
    }

    #[test]
    fn a_kerf_from_five_steps() {
        // Derived: 15.2 − 4 · 3 = 3.2.
        let request = |steps: f64, step: f64, slot: f64| KerfFromSlotRequest {
            steps: steps.into(),
            step: step.into(),
            slot_width: slot.into(),
        };
        let plan = measure_kerf(&request(5.0, 3.0, 15.2)).unwrap().plan;
        assert!((plan.kerf.mm() - 3.2).abs() < 1e-12);
        for (bad, field) in [
            (request(0.0, 3.0, 15.2), "steps"),
            (request(2.5, 3.0, 15.2), "steps"),
            (request(5.0, 0.0, 15.2), "step"),
            (request(5.0, 3.5, 15.2), "step"),
            (request(5.0, 4.0, 15.2), "slotWidth"),
        ] {
            assert_eq!(measure_kerf(&bad).unwrap_err()[0].field, field, "{bad:?}");
        }
    }
}
