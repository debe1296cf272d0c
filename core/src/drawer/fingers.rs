//! Fingers of the corners: how they come to their width, and the narrowest that the cutter makes.

use super::corner::length;
use super::request::{DrawerJointRequest, DrawerLayoutRequest};
use crate::check::{Checker, part};
use crate::cutter::Cutter;
use crate::dial::Screw;
use crate::limits;
use crate::message;
use crate::problem::Code;
use crate::units::Mm;

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

/// A layout before the cutter has its say.
#[derive(Clone, Copy)]
pub(super) enum LayoutRule {
    Count(u32),
    Finger(Mm),
    OnePass,
}

impl LayoutRule {
    /// Checks the request at the checker's place.
    pub(super) fn check(request: &DrawerLayoutRequest, check: &mut Checker<'_>) -> Option<Self> {
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
pub(super) fn fingers(
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

/// The least odd number that is not below a ratio, forgiving arithmetic's noise.
pub(super) fn odd_from(ratio: f64) -> u32 {
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
