//! What is refused, and what would work.

use super::{cutter, groove, problems, request, screw};
use crate::cutter::CutterRequest;
use crate::dial::ScrewRequest;
use crate::given::Given;
use crate::joint::box_joint::{BoardRequest, BoxJointRequest, LayoutRequest, SawRequest};
use crate::problem::Code;

#[test]
fn every_problem_is_told_at_once() {
    let bad = BoxJointRequest {
        width: Given::Wrong("the text «wide»".to_owned()),
        a: BoardRequest {
            thickness: 0.0.into(),
        }
        .into(),
        b: BoardRequest {
            thickness: f64::NAN.into(),
        }
        .into(),
        cutter: CutterRequest {
            kerf: (-3.2).into(),
            overlap: 1e9.into(),
            ..CutterRequest::default()
        }
        .into(),
        screw: screw(0.0, 0.0).into(),
        layout: LayoutRequest::pattern(&[1.0, 0.0, 1.0], false).into(),
        first: "tail".into(),
        glue_gap: f64::INFINITY.into(),
        ..BoxJointRequest::default()
    };
    let fields: Vec<_> = problems(&bad)
        .into_iter()
        .map(|(field, code, _)| (field, code))
        .collect();
    let expected = [
        ("width", Code::WrongKind),
        ("a.thickness", Code::TooSmall),
        ("b.thickness", Code::NotFinite),
        ("cutter.kerf", Code::TooSmall),
        ("cutter.overlap", Code::TooLarge),
        ("screw.lead", Code::TooSmall),
        ("screw.divisions", Code::TooSmall),
        ("layout.weights.1", Code::TooSmall),
        ("first", Code::UnknownWord),
        ("glueGap", Code::NotFinite),
    ];
    assert_eq!(
        fields,
        expected.map(|(field, code)| (field.to_owned(), code))
    );
}

#[test]
fn an_empty_request_names_what_it_needs() {
    let fields: Vec<_> = problems(&BoxJointRequest::default())
        .into_iter()
        .map(|(field, ..)| field)
        .collect();
    assert_eq!(fields, ["width", "a", "b", "cutter", "screw", "layout"]);
}

fn blade(diameter: f64) -> Given<CutterRequest> {
    CutterRequest {
        kerf: 3.07.into(),
        diameter: diameter.into(),
        ..CutterRequest::default()
    }
    .into()
}

#[test]
fn refusals_say_what_would_work() {
    let base = || request(LayoutRequest::count(9.0));
    let with = |change: fn(&mut BoxJointRequest)| {
        let mut request = base();
        change(&mut request);
        request
    };
    let cases: [(&str, BoxJointRequest, &str, Code, Option<f64>); 17] = [
        (
            "cutter wider than a socket",
            with(|r| r.cutter = cutter(16.0).into()),
            "layout.count",
            Code::CutterTooWide,
            Some(8.0),
        ),
        (
            "finger narrower than the cutter",
            with(|r| r.layout = LayoutRequest::finger(3.0).into()),
            "layout.width",
            Code::CutterTooWide,
            // Derived: sockets of 3.15 take the cutter, 44.4 of them; the next lower odd number is 43.
            Some(140.0 / 43.0),
        ),
        (
            "finger wider than half",
            with(|r| r.layout = LayoutRequest::finger(71.0).into()),
            "layout.width",
            Code::TooLarge,
            Some(70.0),
        ),
        (
            "narrow space",
            with(|r| r.layout = LayoutRequest::pattern(&[5.0, 1.0, 60.0], true).into()),
            "layout.weights.1",
            Code::CutterTooWide,
            None,
        ),
        (
            "too many fingers",
            with(|r| r.layout = LayoutRequest::count(501.0).into()),
            "layout.count",
            Code::TooLarge,
            Some(500.0),
        ),
        (
            "a part of a finger",
            with(|r| r.layout = LayoutRequest::count(9.5).into()),
            "layout.count",
            Code::NotWhole,
            None,
        ),
        (
            "overlap over half the kerf",
            with(|r| {
                r.cutter = CutterRequest {
                    overlap: 1.7.into(),
                    ..cutter(3.2)
                }
                .into()
            }),
            "cutter.overlap",
            Code::TooLarge,
            Some(1.6),
        ),
        (
            "wider than the travel",
            with(|r| {
                r.screw = ScrewRequest {
                    travel: 100.0.into(),
                    ..screw(2.0, 100.0)
                }
                .into()
            }),
            "width",
            Code::BeyondTravel,
            // Derived: the last pass of B starts at 124.44 + 15.58 − … and reads 142.0: 42 too far.
            None,
        ),
        (
            "blade too low",
            with(|r| {
                r.saw = SawRequest {
                    greatest_height: 32.0.into(),
                    base: 15.0.into(),
                    ..SawRequest::default()
                }
                .into()
            }),
            "b.thickness",
            Code::BeyondHeight,
            Some(17.0),
        ),
        (
            "a blade that comes up to its axis first",
            with(|r| {
                r.cutter = blade(60.0);
                r.saw = SawRequest {
                    base: 15.0.into(),
                    ..SawRequest::default()
                }
                .into()
            }),
            "b.thickness",
            Code::BeyondHeight,
            Some(15.0),
        ),
        (
            // Derived: R 127; for A, 12 thick and cut 18 deep, (145 − 12 − 5) / 2 = 64 → 127 − √(127² − 64²) = 17.305.
            "a window too small for the deeper cut",
            with(|r| {
                r.cutter = blade(254.0);
                r.saw = SawRequest {
                    window: 145.0.into(),
                    ..SawRequest::default()
                }
                .into()
            }),
            "b.thickness",
            Code::BeyondWindow,
            Some(127.0 - (127.0_f64 * 127.0 - 64.0 * 64.0).sqrt()),
        ),
        (
            "proud beyond the board",
            with(|r| r.proud = 12.5.into()),
            "proud",
            Code::TooLarge,
            Some(12.0),
        ),
        (
            "steps wider than the kerf",
            with(|r| r.screw = screw(10.0, 2.0).into()),
            "screw.divisions",
            Code::DialTooCoarse,
            None,
        ),
        (
            "board narrower than two fingers",
            with(|r| {
                r.layout = LayoutRequest::one_pass("far").into();
                r.width = 5.3.into();
                r.cutter = cutter(6.0).into();
                r.screw = screw(2.0, 20.0).into();
            }),
            "cutter.kerf",
            Code::CutterTooWide,
            // Derived: two fingers of 26 steps of 0.1 fit, and the gap comes on top.
            Some(2.65),
        ),
        (
            "board narrower than two steps",
            with(|r| {
                r.layout = LayoutRequest::one_pass("far").into();
                r.width = 5.4.into();
                r.screw = screw(3.0, 1.0).into();
            }),
            "screw.divisions",
            Code::DialTooCoarse,
            None,
        ),
        (
            "gap that eats the pins",
            with(|r| {
                r.layout = LayoutRequest::count(43.0).into();
                r.cutter = cutter(1.0).into();
                r.glue_gap = 2.0.into();
                r.screw = screw(100.0, 65.0).into();
            }),
            "glueGap",
            Code::TooLarge,
            None,
        ),
        (
            "groove off the board",
            with(|r| r.groove = groove(136.0, 6.0, 4.0).into()),
            "groove.fromEdge",
            Code::TooLarge,
            Some(134.0),
        ),
    ];
    for (what, request, field, code, limit) in cases {
        let found = problems(&request);
        let matching = found
            .iter()
            .find(|(got, got_code, _)| got == field && *got_code == code);
        let (_, _, got) = matching.unwrap_or_else(|| panic!("{what}: {found:?}"));
        if let Some(limit) = limit {
            assert!(
                got.is_some_and(|got| (got - limit).abs() < 1e-9),
                "{what}: {got:?}"
            );
        }
    }
}
