//! Widths of tails and pins.

use super::super::{ByRequest, DovetailRequest, SlopeRequest};
use super::{board, near, plan, request, screw};
use crate::given::Given;

#[test]
fn tails_and_pins_of_the_trade() {
    // Derived: a = (W − (n−1)p − 2h)/n at the tip, a − 2·s·T at the baseline, p + 2·s·T, h + s·T.
    let plan_of = |width: f64, tails: f64, run: f64, thick: f64, pin: f64, half: f64| {
        plan(&DovetailRequest {
            width: width.into(),
            tail: board(thick).into(),
            pin: board(thick).into(),
            slope: SlopeRequest::ratio(run).into(),
            tails: tails.into(),
            half_pin: half.into(),
            narrow_pin: pin.into(),
            ..request()
        })
    };
    let plan = plan_of(140.0, 4.0, 8.0, 18.0, 5.0, 6.0);
    near(plan.tail_tip, 28.25);
    near(plan.tail_base, 23.75);
    near(plan.pin_outer, 5.0);
    near(plan.pin_inner, 9.5);
    near(plan.half_pin_inner, 8.25);
    assert!(plan.symmetric);
    let plan = plan_of(90.0, 3.0, 6.0, 12.0, 4.0, 5.0);
    near(plan.tail_tip, 24.0);
    near(plan.tail_base, 20.0);
    near(plan.pin_inner, 8.0);
    near(plan.half_pin_inner, 7.0);
}

#[test]
fn a_layout_by_division() {
    // W. B. Compton, First Lessons in Wood-Working, lesson XVII: side 5 11/16 in wide, five tails, tail and
    // pin together a fifth of it, 1.1375 in, half spaces at the ends.
    let inch = 25.4;
    let plan = plan(&DovetailRequest {
        width: (5.6875 * inch).into(),
        tails: 5.0.into(),
        tail: board(0.5 * inch).into(),
        pin: board(0.5 * inch).into(),
        half_pin: Given::Missing,
        narrow_pin: Given::Missing,
        by: ByRequest::kind("equal").into(),
        ..request()
    });
    near(plan.tail_tip + plan.pin_outer, 1.1375 * inch);
    near(plan.tail_base + plan.pin_inner, 1.1375 * inch);
    near(plan.half_pin_outer * 2.0, plan.pin_outer.mm());
    near((plan.tail_tip + plan.tail_base) / 2.0, 1.1375 * inch / 2.0);
    for (i, tail) in plan.tails.iter().enumerate() {
        let middle = (tail.from_tip + tail.to_tip) / 2.0;
        near(middle, 1.1375 * inch * (i as f64 + 0.5));
    }
}

#[test]
fn every_gap_is_the_one_asked_for() {
    let exact = plan(&DovetailRequest {
        screw: screw("none").into(),
        ..request()
    });
    assert_eq!(exact.dry_fit.flanks.len(), 8);
    near(exact.dry_fit.smallest_gap, 0.05);
    near(exact.dry_fit.largest_gap, 0.05);
    assert!(!exact.dry_fit.clash);
    // Derived: eight gaps of 0.05 over 18 mm.
    assert!((exact.dry_fit.gap_area_a - 8.0 * 0.05 * 18.0).abs() < 1e-5);
    assert_eq!(exact.dry_fit.clash_area_a, 0.0);
}
