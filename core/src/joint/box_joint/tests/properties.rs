//! What holds for every box joint that can be made.

use proptest::prelude::*;

use super::super::{BoxJointPlan, BoxJointRequest, box_joint};
use super::{ProptestConfig, legal};
use crate::check::Checker;
use crate::cutter::Cutter;
use crate::dial::Screw;
use crate::given::Given;
use crate::units::Mm;

/// Arithmetic's noise in a sum of lengths up to some metres.
const NOISE: f64 = 1e-9;

fn screw(request: &BoxJointRequest) -> Screw {
    let Given::Value(screw) = &request.screw else {
        panic!("a screw")
    };
    Screw::check(screw, &mut Checker::new(&mut Vec::new())).unwrap()
}

fn cutter(request: &BoxJointRequest) -> Cutter {
    let Given::Value(cutter) = &request.cutter else {
        panic!("a cutter")
    };
    Cutter::check(cutter, &mut Checker::new(&mut Vec::new())).unwrap()
}

/// Which boards have an inner socket that leaves its stops no room: spaces 0, 2, 4… and 1, 3, 5….
fn tight(plan: &BoxJointPlan, kerf: Mm, step: Mm) -> [bool; 2] {
    let widths: Vec<_> = plan
        .boundaries
        .windows(2)
        .map(|pair| pair[1] - pair[0])
        .collect();
    let inner = 1..widths.len().saturating_sub(1);
    let least = kerf + step + Mm::constant(1e-6);
    [0, 1].map(|parity| {
        inner
            .clone()
            .any(|space| space % 2 == parity && widths[space] + plan.glue_gap < least)
    })
}

fn check(request: &BoxJointRequest) -> Result<bool, TestCaseError> {
    let Ok(planned) = box_joint(request) else {
        return Ok(false);
    };
    let (plan, step, cutter) = (planned.plan, screw(request).step(), cutter(request));
    let one_pass =
        matches!(&request.layout, Given::Value(layout) if layout.kind == "onePass".into());
    let tight = tight(&plan, cutter.kerf(), step);
    let bound = match (one_pass, tight) {
        (true, _) => Mm::ZERO,
        (false, [true, true]) => step,
        (false, _) => step / 2.0,
    };
    prop_assert_eq!(plan.dry_fit.flanks.len(), plan.count - 1);
    for flank in &plan.dry_fit.flanks {
        let off = (flank.gap_at_outer - plan.glue_gap).abs();
        // Ties are broken a millionth of a step off the middle.
        prop_assert!(
            off.mm() <= bound.mm() * (1.0 + 4e-6) + NOISE,
            "{flank:?}: off by {off}, allowed {bound}"
        );
    }
    stops_are_orderly(&plan, request)?;
    sockets_are_cleared(&plan, &cutter)?;
    // A single stop can be a whole step from where one of its flanks was asked, and the mate follows it.
    recut_is_what_was_asked(
        &plan,
        if tight.contains(&true) {
            step * 2.0
        } else {
            step
        },
    )?;
    notes_are_told(&plan, &planned.notes)?;
    if plan.dry_fit.smallest_gap > Mm::ZERO && cutter.grind().ridge(cutter.kerf()) == Mm::ZERO {
        prop_assert!(plan.dry_fit.clash_area_a < NOISE && plan.dry_fit.clash_area_b < NOISE);
    }
    Ok(true)
}

fn stops_are_orderly(plan: &BoxJointPlan, request: &BoxJointRequest) -> Result<(), TestCaseError> {
    let screw = screw(request);
    for set in &plan.sets {
        let mut before = set.run_up.reading;
        prop_assert!(
            set.stops[0].dial.reading - before > screw.backlash(),
            "the run-up takes the backlash up"
        );
        let mut sum = Mm::ZERO;
        for (i, stop) in set.stops.iter().enumerate() {
            prop_assert_eq!(stop.number, i + 1);
            prop_assert!(stop.dial.reading > before, "readings rise");
            prop_assert!(stop.pass >= 1 && stop.pass <= stop.passes);
            let (turns, division) = (stop.dial.turns as f64, stop.dial.division);
            prop_assert!(
                (0.0..f64::from(screw.divisions())).contains(&division),
                "{division}"
            );
            let shown = screw.lead() * turns + screw.division() * division;
            prop_assert!(
                (shown - stop.dial.reading).abs().mm() < 1e-6,
                "{shown} shown for {}",
                stop.dial.reading
            );
            sum += stop.travel;
            prop_assert!((sum - stop.dial.reading).abs().mm() < 1e-6, "moves add up");
            before = stop.dial.reading;
        }
    }
    Ok(())
}

fn sockets_are_cleared(plan: &BoxJointPlan, cutter: &Cutter) -> Result<(), TestCaseError> {
    let ridged = cutter.grind().ridge(cutter.kerf()) > Mm::constant(1e-3);
    for uncut in &plan.dry_fit.uncut {
        prop_assert!(ridged, "only ridges are left: {uncut:?}");
        prop_assert!(uncut.height.mm() <= cutter.grind().ridge(cutter.kerf()).mm() + NOISE);
    }
    for set in &plan.sets {
        for pair in set
            .stops
            .windows(2)
            .filter(|pair| pair[0].space == pair[1].space)
        {
            prop_assert!(
                (pair[1].at - pair[0].at).abs().mm() <= cutter.kerf().mm() + NOISE,
                "{pair:?}"
            );
        }
    }
    Ok(())
}

/// The boards as cut are the boards asked for, within the dial's rounding.
fn recut_is_what_was_asked(plan: &BoxJointPlan, rounding: Mm) -> Result<(), TestCaseError> {
    for (j, flank) in plan.dry_fit.flanks.iter().enumerate() {
        let asked = plan.boundaries[j + 1];
        let allowed = rounding.mm() * (1.0 + 4e-6) + plan.glue_gap.abs().mm() / 2.0 + NOISE;
        prop_assert!(
            (flank.x - asked).abs().mm() <= allowed,
            "{flank:?} asked at {asked}"
        );
    }
    Ok(())
}

fn notes_are_told(
    plan: &BoxJointPlan,
    notes: &[crate::problem::Note],
) -> Result<(), TestCaseError> {
    let told = |code| notes.iter().any(|note| note.code == code);
    prop_assert_eq!(told("clash"), plan.dry_fit.clash);
    prop_assert!(!plan.dry_fit.clash || plan.dry_fit.smallest_gap < Mm::ZERO);
    prop_assert_eq!(told("not-symmetric"), !plan.symmetric);
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 4000, failure_persistence: None, max_global_rejects: 200_000, ..ProptestConfig::default() })]

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
}
