//! Rules that hold for every layout.

use notchwright_core::given::Given;
use notchwright_core::sheet::{
    EachSideRequest, PartRequest, RoughRequest, SearchRequest, SheetLayoutPlan, SheetLayoutRequest,
    SheetRequest, SidesRequest, sheet_layout,
};
use proptest::collection::vec;
use proptest::prelude::*;

use crate::{job, part, sheet};
use notchwright_tests::saw::{SAME, Saws, Wanted, prove};

#[derive(Clone, Debug)]
struct Asked {
    request: SheetLayoutRequest,
    wanted: Vec<Wanted>,
    saws: Saws,
    across: bool,
    lifted: Option<(f64, f64)>,
}

/// A tenth of a millimetre, as a rule is read.
fn tenths(from: f64, to: f64) -> impl Strategy<Value = f64> {
    (from..to).prop_map(|mm: f64| (mm * 10.0).round() / 10.0)
}

fn parts() -> impl Strategy<Value = Vec<(f64, f64, u32, bool, bool, f64)>> {
    let one = (
        tenths(20.0, 900.0),
        tenths(20.0, 700.0),
        1..6_u32,
        any::<bool>(),
        any::<bool>(),
        tenths(0.0, 4.0),
    );
    vec(one, 1..9)
}

prop_compose! {
    fn asked()(
        parts in parts(),
        sheet in (tenths(1000.0, 2600.0), tenths(950.0, 1600.0)),
        trim in (tenths(0.0, 12.0), tenths(0.0, 12.0), tenths(0.0, 12.0), tenths(0.0, 12.0)),
        grain in prop::sample::select(vec!["length", "width", "none"]),
        kerf in prop_oneof![Just(0.0), tenths(0.8, 5.0)],
        offcut in prop::option::of((tenths(300.0, 1000.0), tenths(300.0, 1000.0))),
        rough in prop::option::of((tenths(1100.0, 1500.0), tenths(1100.0, 1300.0), tenths(1.0, 4.0), tenths(0.0, 12.0))),
        steps in 0..50_u32,
    ) -> Asked {
        let each = EachSideRequest { start: trim.0.into(), end: trim.1.into(), near: trim.2.into(), far: trim.3.into() };
        let whole = SheetRequest {
            length: sheet.0.into(),
            width: sheet.1.into(),
            grain: grain.into(),
            edge_trim: SidesRequest::Each(each).into(),
            ..SheetRequest::default()
        };
        let on_hand = offcut.map(|(length, width)| SheetRequest {
            length: length.into(),
            width: width.into(),
            grain: grain.into(),
            offcut: true.into(),
            quantity: 1.0.into(),
            ..SheetRequest::default()
        });
        let requests = parts.iter().map(|(length, width, count, may_turn, later, trim)| PartRequest {
            length: (*length).into(),
            width: (*width).into(),
            count: f64::from(*count).into(),
            may_turn: (*may_turn).into(),
            later: (*later).into(),
            trim: SidesRequest::All(*trim).into(),
            ..PartRequest::default()
        });
        let wanted = (1..).zip(&parts).map(|(number, (length, width, count, may_turn, _, trim))| Wanted {
            number,
            length: length + 2.0 * trim,
            width: width + 2.0 * trim,
            count: *count,
            may_turn: *may_turn || grain == "none",
        });
        let by_hand = RoughRequest {
            longest: rough.map_or(Given::Missing, |rough| rough.0.into()),
            widest: rough.map_or(Given::Missing, |rough| rough.1.into()),
            kerf: rough.map_or(Given::Missing, |rough| rough.2.into()),
            allowance: rough.map_or(Given::Missing, |rough| rough.3.into()),
            ..RoughRequest::default()
        };
        let sheets = on_hand.into_iter().chain([whole]).collect();
        Asked {
            request: SheetLayoutRequest {
                rough: if rough.is_some() { by_hand.into() } else { Given::Missing },
                ..job(sheets, requests.collect(), kerf, steps)
            },
            wanted: wanted.collect(),
            saws: Saws { kerf, by_hand: rough.map_or(kerf, |rough| rough.2) },
            across: grain == "width",
            lifted: rough.map(|rough| (rough.0.max(rough.1), rough.0.min(rough.1))),
        }
    }
}

/// The plan, unless a part of its own is too large for its sheet or for a person.
fn plan(asked: &Asked) -> Option<SheetLayoutPlan> {
    match sheet_layout(&asked.request) {
        Ok(planned) => Some(planned.plan),
        Err(problems) => {
            let known = ["larger-than-sheet", "too-small"];
            let code = |problem| serde_json::to_value(problem).expect("plain data");
            for problem in problems {
                assert!(
                    known.iter().any(|known| code(problem.code) == *known),
                    "{problem:?}"
                );
            }
            None
        }
    }
}

/// Parts that are all different, which are laid in layers most of the time.
fn all_different() -> impl Strategy<Value = Asked> {
    let different = vec(
        (tenths(60.0, 700.0), tenths(40.0, 500.0), any::<bool>()),
        15..40,
    );
    (
        different,
        prop_oneof![Just(0.0), tenths(0.8, 5.0)],
        40..70_u32,
    )
        .prop_map(|(parts, kerf, steps)| {
            let requests = parts.iter().map(|(length, width, may_turn)| PartRequest {
                may_turn: (*may_turn).into(),
                ..part(*length, *width, 1)
            });
            let wanted = (1..)
                .zip(&parts)
                .map(|(number, (length, width, may_turn))| Wanted {
                    number,
                    length: *length,
                    width: *width,
                    count: 1,
                    may_turn: *may_turn,
                });
            Asked {
                request: job(vec![sheet()], requests.collect(), kerf, steps),
                wanted: wanted.collect(),
                saws: Saws {
                    kerf,
                    by_hand: kerf,
                },
                across: false,
                lifted: None,
            }
        })
}

fn any_job() -> impl Strategy<Value = Asked> {
    prop_oneof![4 => asked().boxed(), 1 => all_different().boxed()]
}

fn from(asked: &Asked, from: u32, steps: u32, best: &str) -> Asked {
    let best = if best.is_empty() {
        Given::Missing
    } else {
        best.into()
    };
    Asked {
        request: SheetLayoutRequest {
            search: SearchRequest {
                from: f64::from(from).into(),
                steps: f64::from(steps).into(),
                best,
            }
            .into(),
            ..asked.request.clone()
        },
        ..asked.clone()
    }
}

fn wood(plan: &SheetLayoutPlan) -> (u32, f64, u32, u32) {
    (
        plan.whole_sheets,
        plan.used_length.mm(),
        plan.offcuts_used,
        plan.settings,
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(160))]

    /// Nothing overlaps, each cut goes from edge to edge of the piece in hand, a kerf lies between neighbours, the
    /// grain runs as it must, areas add up, and each part is there as often as it was asked for. Derived.
    #[test]
    fn a_saw_makes_every_part(asked in any_job()) {
        if let Some(plan) = plan(&asked) {
            let benches = prove(&plan, &asked.wanted, asked.saws, asked.across);
            let benches = benches.map_err(TestCaseError::fail)?;
            for (wood, (long, short)) in benches.iter().flat_map(|bench| &bench.at_the_saw).zip(asked.lifted) {
                prop_assert!(wood.length.max(wood.width) <= long + SAME, "{wood:?} is too long to lift");
                prop_assert!(wood.length.min(wood.width) <= short + SAME, "{wood:?} is too wide to lift");
            }
        }
    }

    /// No layout is better than its bound says. Derived.
    #[test]
    fn bounds_are_bounds(asked in asked()) {
        if let Some(plan) = plan(&asked) {
            for bound in &plan.bounds {
                prop_assert!(plan.whole_sheets >= bound.sheets);
                if plan.whole_sheets == bound.sheets {
                    prop_assert!(plan.used_length.mm() >= bound.used_length.mm() - SAME);
                }
            }
        }
    }

    /// A worker may call it in slices.
    #[test]
    fn slices_come_to_what_one_run_comes_to(asked in any_job(), first in 1..50_u32, second in 0..20_u32) {
        let whole = plan(&from(&asked, 0, first + second, ""));
        if let Some(begun) = plan(&from(&asked, 0, first, "")) {
            let search = &begun.search;
            let rest = (first + second).saturating_sub(search.steps);
            let resumed = plan(&from(&asked, search.steps, rest, &search.best)).expect("it has a layout");
            prop_assert!(wood(&resumed) <= wood(&begun), "it got worse");
            prop_assert_eq!(Some(resumed), whole);
        }
    }

    /// Whatever is handed in as a layout, it is refused or it is one.
    #[test]
    fn hostile_layouts_are_harmless(asked in asked(), text in "[0-9:;\\[\\](){}<>,*t]{0,40}") {
        for text in [text.clone(), format!("0:{text}"), "0:".to_owned() + &"[".repeat(100_000), "0:[999999999*0]".to_owned()] {
            let hostile = from(&asked, 0, 1, &text);
            match sheet_layout(&hostile.request) {
                Ok(planned) => {
                    let proven = prove(&planned.plan, &asked.wanted, asked.saws, asked.across);
                    prop_assert!(proven.is_ok(), "{proven:?}");
                }
                Err(problems) => prop_assert!(!problems.is_empty()),
            }
        }
    }
}
