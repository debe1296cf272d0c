//! Requests that cannot be answered; what a refusal proposes is tried.

use notchwright_core::given::Given;
use notchwright_core::problem::Problem;
use notchwright_core::sheet::{
    PartRequest, RoughRequest, SheetLayoutRequest, SheetRequest, SidesRequest, sheet_layout,
};

use crate::{job, part, sheet};

fn refused(request: &SheetLayoutRequest) -> Vec<(String, String)> {
    let problems = sheet_layout(request).expect_err("it cannot be answered");
    let shown = |problem: Problem| {
        let code = serde_json::to_value(problem.code).expect("plain data");
        (problem.field, code.as_str().expect("a word").to_owned())
    };
    problems.into_iter().map(shown).collect()
}

fn one(field: &str, code: &str) -> Vec<(String, String)> {
    vec![(field.to_owned(), code.to_owned())]
}

#[test]
fn bad_requests_name_their_field() {
    let empty = job(vec![], vec![part(300.0, 200.0, 1)], 3.0, 1);
    assert_eq!(refused(&empty), one("sheets", "too-small"));
    let none = job(vec![sheet()], vec![], 3.0, 1);
    assert_eq!(refused(&none), one("parts", "too-small"));
    let many = job(vec![sheet()], vec![part(300.0, 200.0, 1); 501], 3.0, 1);
    assert_eq!(refused(&many), one("parts", "too-large"));
    let pieces = job(vec![sheet()], vec![part(300.0, 200.0, 1500); 2], 3.0, 1);
    assert_eq!(refused(&pieces), one("parts", "too-large"));
    let narrow = job(vec![sheet()], vec![part(300.0, 3.0, 1)], 3.0, 1);
    assert_eq!(refused(&narrow), one("parts.0.width", "too-small"));
    let no_stock = SheetRequest {
        quantity: 0.0.into(),
        ..sheet()
    };
    let request = job(vec![no_stock], vec![part(300.0, 200.0, 1)], 3.0, 1);
    assert_eq!(refused(&request), one("sheets.0.quantity", "too-small"));
    let mut other = part(300.0, 200.0, 1);
    other.stock = "oak".into();
    let request = job(vec![sheet()], vec![other], 3.0, 1);
    assert_eq!(refused(&request), one("parts.0.stock", "unknown-word"));
}

#[test]
fn what_is_trimmed_away_is_told_of_its_shorter_side() {
    let trimmed = |by: f64| {
        let sheet = SheetRequest {
            edge_trim: SidesRequest::All(by).into(),
            length: 900.0.into(),
            ..sheet()
        };
        job(vec![sheet], vec![part(1.5, 1.5, 1)], 1.0, 1)
    };
    // Less than half of the width of 1220.
    let problems = sheet_layout(&trimmed(450.0)).expect_err("nothing is left");
    let of_edges = problems
        .iter()
        .find(|problem| problem.field == "sheets.0.edgeTrim");
    let of_edges = of_edges.expect("the edges are too much");
    let says = of_edges.message.show(|length| length.to_string());
    assert!(
        says.contains("less than half of its shorter side"),
        "{says}"
    );
    sheet_layout(&trimmed(449.0)).expect("a part is left");
}

#[test]
fn a_part_larger_than_every_sheet_is_told_the_least_that_would_do() {
    let small = SheetRequest {
        edge_trim: SidesRequest::All(5.0).into(),
        ..sheet()
    };
    let long = vec![part(2500.0, 300.0, 1)];
    let request = job(vec![small.clone()], long.clone(), 3.0, 1);
    assert_eq!(
        refused(&request),
        one("parts.0.length", "larger-than-sheet")
    );
    let larger = SheetRequest {
        length: 2510.0.into(),
        ..small
    };
    assert!(sheet_layout(&job(vec![larger], long, 3.0, 1)).is_ok());
    // Across the grain it would fit, and may not.
    let broad = job(vec![sheet()], vec![part(300.0, 1300.0, 1)], 3.0, 1);
    assert_eq!(refused(&broad), one("parts.0.width", "larger-than-sheet"));
}

#[test]
fn too_few_sheets_are_counted() {
    let two = SheetRequest {
        quantity: 2.0.into(),
        ..sheet()
    };
    // Two lie on a sheet: five need three sheets (derived).
    let parts = vec![part(1200.0, 1200.0, 5)];
    let problems = sheet_layout(&job(vec![two], parts.clone(), 3.0, 40)).expect_err("too few");
    assert_eq!(problems.len(), 1);
    assert_eq!(
        (problems[0].field.as_str(), problems[0].limit),
        ("sheets.0.quantity", Some(3.0))
    );
    let three = SheetRequest {
        quantity: 3.0.into(),
        ..sheet()
    };
    assert!(sheet_layout(&job(vec![three], parts, 3.0, 40)).is_ok());
}

#[test]
fn what_nobody_lifts_is_refused_with_what_must_be_lifted() {
    let rough = |longest: f64| SheetLayoutRequest {
        rough: RoughRequest {
            longest: longest.into(),
            allowance: 5.0.into(),
            ..RoughRequest::default()
        }
        .into(),
        ..job(vec![sheet()], vec![part(1500.0, 600.0, 2)], 3.0, 5)
    };
    let problems = sheet_layout(&rough(1400.0)).expect_err("it is too long");
    assert_eq!(problems[0].field, "rough.longest");
    let least = problems[0].limit.expect("a bound");
    assert!((least - 1510.0).abs() < 1e-9, "{least}");
    assert!(sheet_layout(&rough(least)).is_ok());
    let nothing = SheetLayoutRequest {
        rough: RoughRequest::default().into(),
        ..rough(least)
    };
    assert_eq!(refused(&nothing), one("rough", "missing"));
}

#[test]
fn the_part_that_needs_most_speaks_for_all() {
    let heavy = SheetRequest {
        mass: 30.0.into(),
        ..sheet()
    };
    // Derived: 10 more at both edges; 910 · 610 mm of a sheet of 2440 · 1220 mm that weighs 30 kg are 5.5943 kg.
    for (field, bounds, least) in [
        (
            "longest",
            (Given::from(700.0), Given::Missing, Given::Missing),
            910.0,
        ),
        (
            "widest",
            (1500.0.into(), 500.0.into(), Given::Missing),
            610.0,
        ),
        (
            "longest",
            (500.0.into(), 1500.0.into(), Given::Missing),
            610.0,
        ),
        (
            "heaviest",
            (Given::Missing, Given::Missing, 2.0.into()),
            5.596,
        ),
    ] {
        let with = |value: Option<f64>| {
            let mut rough = RoughRequest {
                longest: bounds.0.clone(),
                widest: bounds.1.clone(),
                heaviest: bounds.2.clone(),
                allowance: 5.0.into(),
                ..RoughRequest::default()
            };
            if let Some(value) = value {
                let field = match field {
                    "longest" => &mut rough.longest,
                    "widest" => &mut rough.widest,
                    _ => &mut rough.heaviest,
                };
                *field = value.into();
            }
            let parts = vec![part(800.0, 600.0, 1), part(900.0, 600.0, 1)];
            SheetLayoutRequest {
                rough: rough.into(),
                ..job(vec![heavy.clone()], parts, 3.0, 5)
            }
        };
        let problems = sheet_layout(&with(None)).expect_err("nobody lifts it");
        assert_eq!(problems.len(), 1, "{problems:?}");
        assert_eq!(problems[0].field, format!("rough.{field}"));
        let limit = problems[0].limit.expect("a bound");
        assert!((limit - least).abs() < 1e-9, "{limit}");
        assert!(sheet_layout(&with(Some(limit))).is_ok(), "{field}");
    }
}

/// Derived: half a sheet of 30 kg weighs 15; 910 · 610 mm of it are 5.5943 kg, as of the whole.
#[test]
fn a_sheet_weighs_by_its_area_what_another_of_its_stock_weighs() {
    let of = |stock: &str, length: f64, mass: Given<f64>| SheetRequest {
        stock: stock.into(),
        length: length.into(),
        mass,
        offcut: (length < 2000.0).into(),
        ..sheet()
    };
    let heaviest = |sheets: Vec<SheetRequest>, heaviest: f64| SheetLayoutRequest {
        rough: RoughRequest {
            heaviest: heaviest.into(),
            allowance: 5.0.into(),
            ..RoughRequest::default()
        }
        .into(),
        ..job(
            sheets,
            vec![PartRequest {
                stock: "ply".into(),
                ..part(900.0, 600.0, 1)
            }],
            3.0,
            5,
        )
    };
    let half = of("ply", 1220.0, Given::Missing);
    let whole = of("ply", 2440.0, 30.0.into());
    assert!(sheet_layout(&heaviest(vec![half.clone(), whole.clone()], 5.6)).is_ok());
    let problems = sheet_layout(&heaviest(vec![half.clone(), whole.clone()], 5.5));
    let problems = problems.expect_err("nobody lifts it");
    assert_eq!(problems[0].field, "rough.heaviest");
    let thicker = SheetRequest {
        thickness: 18.0.into(),
        ..whole
    };
    let thin = SheetRequest {
        thickness: 12.0.into(),
        ..half.clone()
    };
    for unknown in [
        vec![half.clone()],
        vec![half, of("ash", 2440.0, 30.0.into())],
        vec![thin, thicker],
    ] {
        assert_eq!(
            refused(&heaviest(unknown, 5.6)),
            one("sheets.0.mass", "missing")
        );
    }
}

#[test]
fn prices_and_offcuts_decide() {
    let dear = SheetRequest {
        price: 100.0.into(),
        ..sheet()
    };
    let half = SheetRequest {
        length: 1220.0.into(),
        price: 45.0.into(),
        ..sheet()
    };
    // Two halves are cheaper than one whole, and take the same.
    let request = job(
        vec![dear.clone(), half],
        vec![part(1200.0, 600.0, 4)],
        3.0,
        60,
    );
    let plan = sheet_layout(&request).expect("a good request").plan;
    assert_eq!((plan.cost, plan.whole_sheets), (Some(90.0), 2));
    let on_hand = SheetRequest {
        length: 1250.0.into(),
        width: 700.0.into(),
        offcut: true.into(),
        quantity: 1.0.into(),
        ..sheet()
    };
    let sheets = vec![dear, on_hand];
    let request = job(sheets.clone(), vec![part(1200.0, 600.0, 1)], 3.0, 60);
    let plan = sheet_layout(&request).expect("a good request").plan;
    let cost = plan.cost.expect("no whole sheet, each with its price");
    assert!(cost == 0.0 && cost.is_sign_positive(), "{cost}");
    let request = job(sheets, vec![part(1200.0, 600.0, 5)], 3.0, 60);
    let plan = sheet_layout(&request).expect("a good request").plan;
    assert_eq!((plan.whole_sheets, plan.offcuts_used), (1, 1));
    assert_eq!(plan.sheets[0].kind, 1);
}

#[test]
fn later_parts_stay_in_a_larger_piece() {
    let mut later = part(400.0, 90.0, 3);
    later.later = true.into();
    let request = job(vec![sheet()], vec![part(900.0, 400.0, 4), later], 3.0, 40);
    let plan = sheet_layout(&request).expect("a good request").plan;
    let cuts = &plan.sheets[0].cuts;
    let first_later = cuts
        .iter()
        .position(|cut| cut.later)
        .expect("some cut is left");
    assert!(cuts.iter().skip(first_later).all(|cut| cut.later));
    let made = |cut: &notchwright_core::sheet::CutStep| {
        cut.yields
            .iter()
            .filter(|yielded| yielded.part == Some(2))
            .count()
    };
    assert_eq!(cuts.iter().skip(first_later).map(made).sum::<usize>(), 3);
}

#[test]
fn kerfs_and_edges_that_fit_exactly_fit() {
    // Three parts and two kerfs are the sheet (derived), in decimals that no float carries.
    for kerf in [3.175, 2.2, 0.1] {
        let length = (2440.0 - 2.0 * kerf) / 3.0;
        let request = job(vec![sheet()], vec![part(length, 1220.0, 3)], kerf, 0);
        let plan = sheet_layout(&request).expect("a good request").plan;
        assert_eq!(
            (plan.whole_sheets, plan.search.proven),
            (1, true),
            "kerf {kerf}"
        );
    }
    assert!(matches!(part(1.0, 1.0, 1).stock, Given::Missing));
}
