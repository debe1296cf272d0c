//! What cannot be cut is refused with what would work.

use super::super::{ByRequest, DovetailRequest, SlopeRequest};
use super::{board, cutter, plan, problems, request, screw};
use crate::dial::ScrewRequest;
use crate::given::Given;
use crate::joint::box_joint::SawRequest;
use crate::problem::Code;

fn with(change: fn(&mut DovetailRequest)) -> DovetailRequest {
    let mut request = request();
    change(&mut request);
    request
}

#[track_caller]
fn refused(request: &DovetailRequest, field: &str, code: Code) -> Option<f64> {
    let found = problems(request);
    let matching = found
        .iter()
        .find(|(got, got_code, _)| got == field && *got_code == code);
    matching
        .unwrap_or_else(|| panic!("{field} {code:?}: {found:?}"))
        .2
}

#[test]
fn refusals_say_what_would_work() {
    let narrowest = 3.2 * (1.0_f64 + 1.0 / 64.0).sqrt() - 0.05;
    // Derived: two roundings of 0.02 / cos θ for each board on top of half a gap.
    let half_pin = 0.025 + 0.04 * (1.0_f64 + 1.0 / 64.0).sqrt();
    let cases: [(&str, DovetailRequest, &str, Code, Option<f64>); 21] = [
        // Derived: (140 + 5 − 12) / (5 + 4.5 + 3.175) = 10.5.
        (
            "tails that meet",
            with(|r| r.tails = 15.0.into()),
            "tails",
            Code::TooLarge,
            Some(10.0),
        ),
        (
            "a socket narrower than the kerf",
            with(|r| r.tails = 11.0.into()),
            "tails",
            Code::CutterTooWide,
            Some(10.0),
        ),
        (
            "a pin narrower than the kerf",
            with(|r| r.narrow_pin = 3.0.into()),
            "narrowPin",
            Code::CutterTooWide,
            Some(narrowest),
        ),
        (
            "no half-pin",
            with(|r| r.half_pin = 0.0.into()),
            "halfPin",
            Code::TooSmall,
            Some(0.1),
        ),
        (
            "a half-pin that the gap eats",
            with(|r| {
                r.half_pin = 0.1.into();
                r.glue_gap = 0.3.into()
            }),
            "halfPin",
            Code::TooSmall,
            Some(half_pin + 0.125),
        ),
        (
            "half-pins too wide for any tail",
            with(|r| r.half_pin = 69.0.into()),
            "halfPin",
            Code::TooLarge,
            None,
        ),
        (
            "a board too narrow for any tail",
            with(|r| {
                r.width = 6.0.into();
                r.half_pin = 2.0.into()
            }),
            "width",
            Code::TooSmall,
            None,
        ),
        (
            "no slope",
            with(|r| r.slope = SlopeRequest::angle(0.0).into()),
            "slope.degrees",
            Code::TooSmall,
            Some(0.1),
        ),
        (
            "a slope beyond 45°",
            with(|r| r.slope = SlopeRequest::ratio(0.9).into()),
            "slope.run",
            Code::TooSmall,
            Some(1.0),
        ),
        (
            "a lap as thick as the board",
            with(|r| r.lap = 18.0.into()),
            "lap",
            Code::TooLarge,
            Some(17.5),
        ),
        (
            "proud behind a lap",
            with(|r| {
                r.lap = 5.0.into();
                r.proud = 1.0.into()
            }),
            "proud",
            Code::Conflict,
            Some(0.0),
        ),
        (
            "proud beyond the board",
            with(|r| r.proud = 18.5.into()),
            "proud",
            Code::TooLarge,
            Some(18.0),
        ),
        (
            "no tails",
            with(|r| r.tails = 0.0.into()),
            "tails",
            Code::TooSmall,
            Some(1.0),
        ),
        (
            "too many tails",
            with(|r| r.tails = 61.0.into()),
            "tails",
            Code::TooLarge,
            Some(60.0),
        ),
        (
            "too few weights",
            with(|r| r.weights = vec![Given::Value(1.0)].into()),
            "weights",
            Code::TooSmall,
            Some(4.0),
        ),
        (
            "a tail of hardly any weight",
            with(|r| r.weights = [1.0, 0.1, 1.0, 1.0].map(Given::from).to_vec().into()),
            "weights.1",
            Code::TooSmall,
            None,
        ),
        (
            "widths beside a proportion",
            with(|r| r.by = ByRequest::ratio(3.0).into()),
            "narrowPin",
            Code::Conflict,
            None,
        ),
        (
            "steps wider than the kerf",
            with(|r| {
                r.screw = ScrewRequest {
                    lead: 4.0.into(),
                    divisions: 1.0.into(),
                    ..ScrewRequest::default()
                }
                .into()
            }),
            "screw.divisions",
            Code::DialTooCoarse,
            None,
        ),
        (
            "wider than the travel",
            with(|r| {
                r.screw = ScrewRequest {
                    travel: 100.0.into(),
                    ..screw("division")
                }
                .into()
            }),
            "width",
            Code::BeyondTravel,
            None,
        ),
        // Derived: 32 · cos θ − 15 above the base.
        (
            "a blade too low when it leans",
            with(|r| {
                r.saw = SawRequest {
                    greatest_height: 32.0.into(),
                    base: 15.0.into(),
                    ..SawRequest::default()
                }
                .into()
            }),
            "pin.thickness",
            Code::BeyondHeight,
            Some(32.0 * 8.0 / 65.0_f64.sqrt() - 15.0),
        ),
        (
            "a blade too low for the pin board",
            with(|r| {
                r.tail = board(20.0).into();
                r.saw = SawRequest {
                    greatest_height: 34.0.into(),
                    base: 15.0.into(),
                    ..SawRequest::default()
                }
                .into()
            }),
            "tail.thickness",
            Code::BeyondHeight,
            Some(19.0),
        ),
    ];
    for (what, request, field, code, limit) in cases {
        let got = refused(&request, field, code);
        if let Some(limit) = limit {
            assert!(
                got.is_some_and(|got| (got - limit).abs() < 1e-9),
                "{what}: {got:?}, not {limit}"
            );
        }
    }
}

#[test]
fn what_a_refusal_proposes_does_work() {
    let most = refused(&with(|r| r.tails = 15.0.into()), "tails", Code::TooLarge);
    plan(&DovetailRequest {
        tails: most.unwrap().into(),
        ..request()
    });
    let narrowest = refused(
        &with(|r| r.narrow_pin = 3.0.into()),
        "narrowPin",
        Code::CutterTooWide,
    );
    plan(&DovetailRequest {
        narrow_pin: narrowest.unwrap().into(),
        ..request()
    });
    let one_tail = with(|r| {
        r.half_pin = 69.0.into();
        r.tails = 1.0.into();
    });
    let widest = refused(&one_tail, "halfPin", Code::TooLarge);
    plan(&DovetailRequest {
        half_pin: widest.unwrap().into(),
        ..one_tail
    });
    for by in [
        Given::Missing,
        ByRequest::kind("equal").into(),
        ByRequest::kind("narrowest").into(),
    ] {
        let widths = |width: f64| {
            if by.is_missing() {
                width.into()
            } else {
                Given::Missing
            }
        };
        let narrow = DovetailRequest {
            width: 6.0.into(),
            tails: 1.0.into(),
            half_pin: widths(2.0),
            narrow_pin: widths(4.0),
            by: by.clone(),
            ..request()
        };
        let least = refused(&narrow, "width", Code::TooSmall);
        plan(&DovetailRequest {
            width: least.unwrap().into(),
            ..narrow
        });
    }
    let short = with(|r| {
        r.screw = ScrewRequest {
            travel: 100.0.into(),
            ..screw("division")
        }
        .into()
    });
    let widest = refused(&short, "width", Code::BeyondTravel);
    plan(&DovetailRequest {
        width: widest.unwrap().into(),
        ..short
    });
}

#[test]
fn bounds_may_be_typed_as_they_are_shown() {
    // Two decimals of each bound, rounded down and up.
    let shown = |limit: f64| {
        [
            (limit * 100.0).floor() / 100.0,
            (limit * 100.0).ceil() / 100.0,
        ]
    };
    let narrowest = refused(
        &with(|r| r.narrow_pin = 3.0.into()),
        "narrowPin",
        Code::CutterTooWide,
    );
    for narrow_pin in shown(narrowest.unwrap()) {
        let joint = DovetailRequest {
            narrow_pin: narrow_pin.into(),
            ..request()
        };
        let plan = plan(&joint);
        assert!(plan.pin_outer.mm() >= narrow_pin);
        assert!(!plan.dry_fit.clash);
    }
    let one_tail = with(|r| {
        r.half_pin = 69.0.into();
        r.tails = 1.0.into();
    });
    let widest = refused(&one_tail, "halfPin", Code::TooLarge);
    for half_pin in shown(widest.unwrap()) {
        plan(&DovetailRequest {
            half_pin: half_pin.into(),
            ..one_tail.clone()
        });
    }
}

#[test]
fn an_empty_request_names_what_it_needs() {
    let fields: Vec<_> = problems(&DovetailRequest::default())
        .into_iter()
        .map(|(field, ..)| field)
        .collect();
    assert_eq!(
        fields,
        [
            "width",
            "tail",
            "pin",
            "slope",
            "tails",
            "halfPin",
            "narrowPin",
            "cutter",
            "screw"
        ]
    );
}

#[test]
fn a_joint_of_thousands_of_passes_is_refused() {
    let request = DovetailRequest {
        width: 3000.0.into(),
        tails: 1.0.into(),
        cutter: cutter(0.5).into(),
        ..request()
    };
    refused(&request, "cutter.kerf", Code::TooSmall);
}
