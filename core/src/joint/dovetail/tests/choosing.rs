//! Numbers of tails to choose from.

use super::super::{ByRequest, DovetailChoicesRequest, DovetailRequest, dovetail_choices};
use super::{board, plan, request};
use crate::given::Given;

/// The same joint with its number of tails left open.
fn open(request: &DovetailRequest) -> DovetailChoicesRequest {
    let request = request.clone();
    DovetailChoicesRequest {
        width: request.width,
        tail: request.tail,
        pin: request.pin,
        slope: request.slope,
        half_pin: request.half_pin,
        narrow_pin: request.narrow_pin,
        by: request.by,
        lap: request.lap,
        glue_gap: request.glue_gap,
        proud: request.proud,
        cutter: request.cutter,
        pin_cutter: request.pin_cutter,
        screw: request.screw,
    }
}

#[test]
fn the_best_comes_first() {
    // Derived: (128 − 5(n − 1))/n is 39.3 for 3 tails and 28.25 for 4; twice 18 is 36.
    let choices = dovetail_choices(&open(&request())).unwrap().plan.choices;
    assert_eq!(choices[0].count, 3);
    let counts: Vec<_> = choices.iter().map(|choice| choice.count).collect();
    // Derived: tips of at least half of 18 mm; 3 to 6 tails are in proportion, and of the others 7 of 14 mm
    // and 8 of 11.6 mm are nearer to 36 mm than 2 of 61.5 mm.
    assert_eq!(counts, [3, 4, 5, 6, 7, 8, 2, 9]);
}

#[test]
fn every_choice_can_be_made_and_takes_the_passes_it_says() {
    let by = ByRequest::kind("narrowest");
    for by in [Given::Missing, by.into(), ByRequest::ratio(3.0).into()] {
        let widths = |width: f64| {
            if by.is_missing() {
                width.into()
            } else {
                Given::Missing
            }
        };
        let joint = DovetailRequest {
            width: 217.3.into(),
            half_pin: widths(6.0),
            narrow_pin: widths(5.0),
            by: by.clone(),
            ..request()
        };
        let choices = dovetail_choices(&open(&joint)).unwrap().plan.choices;
        assert!(choices.len() > 3, "{by:?}");
        for choice in choices {
            let plan = plan(&DovetailRequest {
                tails: f64::from(choice.count).into(),
                ..joint.clone()
            });
            let stops: usize = plan.sets.iter().map(|set| set.stops.len()).sum();
            assert_eq!(stops, choice.total_passes, "{by:?} {}", choice.count);
            assert_eq!(
                (plan.tail_tip, plan.pin_outer),
                (choice.tail_tip, choice.pin_outer)
            );
        }
    }
}

#[test]
fn a_board_far_wider_than_it_is_thick_still_gets_one() {
    let thin = DovetailRequest {
        width: 1500.0.into(),
        tail: board(3.0).into(),
        pin: board(3.0).into(),
        ..request()
    };
    let choices = dovetail_choices(&open(&thin)).unwrap().plan.choices;
    // Derived: tips of (1488 − 5·59)/60 = 19.9 are the narrowest, more than six times 3 mm.
    assert_eq!(choices.len(), 1);
    assert_eq!(choices[0].count, 60);
}

#[test]
fn a_board_too_narrow_for_one_tail_is_refused() {
    let narrow = DovetailRequest {
        width: 10.0.into(),
        ..request()
    };
    assert!(dovetail_choices(&open(&narrow)).is_err());
    let problems = dovetail_choices(&DovetailChoicesRequest::default()).unwrap_err();
    assert_eq!(problems.len(), 8);
}
