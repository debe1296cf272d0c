//! A list as somebody would write it, every problem of a bad one, and lists for other sheets.

use proptest::prelude::*;

use super::{
    DimensionRequest, MeasureRequest, PartRequest, PartsListRequest, StockRequest, draft,
    parts_list,
};
use crate::given::Given;
use crate::problem::Code;
use crate::units::Unit;

pub(super) fn stock(name: &str, thickness: f64) -> StockRequest {
    StockRequest {
        name: name.into(),
        thickness: thickness.into(),
        former: Given::Missing,
    }
}

pub(super) fn measure(name: &str, value: &str) -> Given<MeasureRequest> {
    Given::Value(MeasureRequest {
        name: name.into(),
        value: value.into(),
    })
}

fn part(name: &str, count: f64, length: &str, width: &str, stock: &str) -> PartRequest {
    PartRequest {
        name: name.into(),
        count: count.into(),
        length: length.into(),
        width: width.into(),
        stock: stock.into(),
        ..PartRequest::default()
    }
}

pub(super) fn list(
    stocks: Vec<StockRequest>,
    measures: Vec<Given<MeasureRequest>>,
    parts: Vec<PartRequest>,
) -> PartsListRequest {
    let given = |list: Vec<StockRequest>| list.into_iter().map(Given::Value).collect::<Vec<_>>();
    PartsListRequest {
        unit: Given::Missing,
        stocks: given(stocks).into(),
        measures: measures.into(),
        parts: parts
            .into_iter()
            .map(Given::Value)
            .collect::<Vec<_>>()
            .into(),
    }
}

/// The carcass of a chart chest and one of its drawers' bottoms.
fn chest(ply: f64, former: Given<f64>) -> PartsListRequest {
    let ply = StockRequest {
        former,
        ..stock("Birch ply", ply)
    };
    let bottom = PartRequest {
        trim: "2".into(),
        later: true.into(),
        may_turn: true.into(),
        ..part("Bottom", 8.0, "inside - 4", "depth - 2*t - 10", "thin ply")
    };
    list(
        vec![ply, stock("Thin ply", 4.2)],
        vec![
            measure("inside", "width - 2*15.6"),
            measure("width", "900"),
            measure("depth", "620"),
        ],
        vec![
            part("Side", 2.0, "rise", "depth", "birch ply"),
            part("Top", 1.0, "width - 2*t", "depth - t/2", "Birch ply"),
            bottom,
        ],
    )
}

fn chest_of(ply: f64, former: f64) -> PartsListRequest {
    let mut chest = chest(ply, former.into());
    if let Given::Value(measures) = &mut chest.measures {
        measures.push(measure("rise", "8*62 + 2*t"));
    }
    chest
}

/// Derived: 8·62 + 2·15.6 = 527.2; 900 − 2·15.6 = 868.8; 620 − 7.8 = 612.2; 868.8 − 4 = 864.8; 620 − 8.4 − 10 = 601.6.
#[test]
fn dimensions_follow_the_stock_of_their_part() {
    let planned = parts_list(&chest_of(15.6, 15.0)).unwrap();
    let [side, top, bottom] = planned.plan.parts.as_slice() else {
        panic!("three parts")
    };
    for (got, mm) in [
        (side.length.finished, 527.2),
        (side.width.finished, 620.0),
        (top.length.finished, 868.8),
        (top.width.finished, 612.2),
        (bottom.length.finished, 864.8),
        (bottom.length.rough, 868.8),
        (bottom.width.finished, 601.6),
        (bottom.width.rough, 605.6),
        (bottom.thickness, 4.2),
    ] {
        assert!((got.mm() - mm).abs() < 1e-9, "{got} is not {mm}");
    }
    let change = side.length.change.unwrap();
    assert!((change.was.mm() - 526.0).abs() < 1e-9 && (change.by.mm() - 1.2).abs() < 1e-9);
    assert!((top.length.change.unwrap().by.mm() + 1.2).abs() < 1e-9);
    assert_eq!((side.width.change, bottom.width.change), (None, None));
    assert_eq!([side.number, top.number, bottom.number], [1, 2, 3]);
    assert!(bottom.may_turn && bottom.later && !top.later);
    let [ply, thin] = planned.plan.stocks.as_slice() else {
        panic!("two stocks")
    };
    assert_eq!(
        (ply.parts, ply.pieces, thin.parts, thin.pieces),
        (2, 3, 1, 8)
    );
    // Derived: 2 · 527.2 · 620 + 868.8 · 612.2, and 8 · 868.8 · 605.6 before trimming.
    assert!((ply.area - 1_185_607.36).abs() < 1e-6, "{}", ply.area);
    assert!(
        (thin.rough_area - 4_209_162.24).abs() < 1e-6,
        "{}",
        thin.rough_area
    );
    let notes: Vec<_> = planned.notes.iter().map(|note| note.code).collect();
    assert_eq!(notes, ["thickness-changed", "cut-later"]);
}

/// Derived: 15.6 / 5 = 3.12 and 15 / 5 = 3. A part whose allowance alone changes is cut otherwise too.
#[test]
fn an_allowance_changes_with_its_stock() {
    let with_trim = |trim: &str| PartRequest {
        trim: trim.into(),
        ..part("Shelf", 1.0, "300", "200", "Ply")
    };
    let stock = StockRequest {
        former: 15.0.into(),
        ..stock("Ply", 15.6)
    };
    let parts = vec![with_trim("t/5"), with_trim("2"), with_trim("")];
    let planned = parts_list(&list(vec![stock], Vec::new(), parts)).unwrap();
    let [follows, stays, none] = planned.plan.parts.as_slice() else {
        panic!("three parts")
    };
    let change = follows.trim_change.unwrap();
    assert!((change.was.mm() - 3.0).abs() < 1e-9 && (change.by.mm() - 0.12).abs() < 1e-9);
    assert!((follows.length.rough.mm() - 306.24).abs() < 1e-9);
    assert_eq!(
        (follows.length.change, stays.trim_change, none.trim_change),
        (None, None, None)
    );
    let said = planned.notes[0].message.show(|mm| mm.to_string());
    assert!(said.contains("measured: 1."), "{said}");
}

fn problems(request: &PartsListRequest) -> Vec<(String, Code)> {
    let problems = parts_list(request).unwrap_err();
    problems
        .into_iter()
        .map(|problem| (problem.field, problem.code))
        .collect()
}

#[track_caller]
fn has_problems(request: &PartsListRequest, expected: &[(&str, Code)]) {
    let found = problems(request);
    let found: Vec<_> = found
        .iter()
        .map(|(field, code)| (field.as_str(), *code))
        .collect();
    assert_eq!(found, expected);
}

#[test]
fn every_problem_is_said_beside_its_cell_and_the_rest_is_worked_out() {
    let bad = list(
        vec![stock("Ash", 19.0), stock("ash", 0.0)],
        vec![
            measure("rail", "gap + 1"),
            measure("gap", "rail/2"),
            measure("after", "2*rail"),
            measure("t", "3"),
            measure("two words", "3"),
            measure("tall", "300 - "),
            measure("zero", "3/(t - 19)"),
            measure("good", "100 + t"),
        ],
        vec![
            part("A", 0.0, "good", "rial", "Ash"),
            part("B", 1.5, "after", "t - 19", "Ahs"),
            part("C", 2.0, "2 t", "t*t", "Ash"),
            part("D", 2.0, "zero", "", "Ash"),
            part("E", 2.0, "30000", "good/2", "Ash"),
        ],
    );
    has_problems(
        &bad,
        &[
            ("stocks.1.thickness", Code::TooSmall),
            ("stocks.1.name", Code::Conflict),
            ("measures.3.name", Code::Conflict),
            ("measures.4.name", Code::NotReadable),
            ("measures.5.value", Code::NotReadable),
            ("parts.0.count", Code::TooSmall),
            ("parts.1.count", Code::NotWhole),
            ("parts.1.stock", Code::UnknownName),
            ("parts.2.length", Code::NotReadable),
            ("parts.3.width", Code::Missing),
            ("measures.0.value", Code::Cycle),
            ("measures.1.value", Code::Cycle),
            ("measures.2.value", Code::Unresolved),
            ("measures.6.value", Code::DivisionByZero),
            ("parts.0.width", Code::UnknownName),
            ("parts.1.length", Code::Unresolved),
            ("parts.2.width", Code::NotALength),
            ("parts.3.length", Code::Unresolved),
            ("parts.4.length", Code::TooLarge),
        ],
    );
    let draft = draft(&bad);
    let lengths: Vec<_> = draft
        .rows
        .iter()
        .map(|row| row.length.map(|l| l.finished.mm()))
        .collect();
    assert_eq!(lengths, [Some(119.0), None, None, None, None]);
    assert_eq!(
        draft.rows[4].width.map(|width| width.finished.mm()),
        Some(59.5)
    );
    assert!(draft.rows.iter().all(|row| row.part.is_none()));
    let said = |field: &str| {
        let problem = draft
            .problems
            .iter()
            .find(|problem| problem.field == field)
            .unwrap();
        problem.message.show(|mm| mm.to_string())
    };
    assert!(
        said("parts.1.stock").contains("«Ash»"),
        "{}",
        said("parts.1.stock")
    );
    assert!(
        said("parts.2.length").starts_with("At «t»: "),
        "{}",
        said("parts.2.length")
    );
    assert!(said("measures.0.value").contains("«gap»"));
}

#[test]
fn numbers_that_are_given_stay() {
    let numbered = |number: Option<f64>| PartRequest {
        number: number.map_or(Given::Missing, Given::Value),
        ..part("Side", 1.0, "300", "200", "Ash")
    };
    let ask = |numbers: &[Option<f64>]| {
        let parts = numbers.iter().map(|number| numbered(*number)).collect();
        list(vec![stock("Ash", 19.0)], vec![], parts)
    };
    let plan = parts_list(&ask(&[None, Some(1.0), Some(7.0), None, None]))
        .unwrap()
        .plan;
    let numbers: Vec<_> = plan.parts.iter().map(|part| part.number).collect();
    assert_eq!(numbers, [2, 1, 7, 3, 4]);
    has_problems(
        &ask(&[Some(7.0), Some(7.0)]),
        &[("parts.1.number", Code::Conflict)],
    );
}

#[test]
fn a_list_has_an_end() {
    let many = vec![part("Slat", 1.0, "300", "20", "Ash"); 501];
    let mut request = list(vec![stock("Ash", 19.0)], vec![], many);
    let refused = parts_list(&request).unwrap_err();
    assert_eq!(
        (refused[0].field.as_str(), refused[0].limit),
        ("parts", Some(500.0))
    );
    assert_eq!(draft(&request).rows.len(), 500);
    if let Given::Value(parts) = &mut request.parts {
        parts.truncate(500);
    }
    assert_eq!(parts_list(&request).unwrap().plan.parts.len(), 500);
}

#[test]
fn the_only_stock_need_not_be_named_and_inches_are_asked_for_once() {
    let part = PartRequest {
        stock: Given::Missing,
        ..part("Side", 1.0, "11 1/2 - 2*t", "inset", "")
    };
    let mut request = list(
        vec![stock("Ash", 12.7)],
        vec![measure("inset", "3 1/2")],
        vec![part],
    );
    request.unit = "in".into();
    let plan = parts_list(&request).unwrap().plan;
    // Derived: 11.5 in − 2 · 12.7 mm = 266.7 mm, 3.5 in = 88.9 mm.
    assert!((plan.parts[0].length.finished.mm() - 266.7).abs() < 1e-9);
    assert!((plan.parts[0].width.finished.mm() - 88.9).abs() < 1e-9);
    request.unit = "ell".into();
    has_problems(&request, &[("unit", Code::UnknownWord)]);
}

/// Derived: a measure of 560 mm is that in a sum that was typed in inches, and half an inch is 12.7 mm.
#[test]
fn a_measure_keeps_the_unit_that_it_was_typed_in() {
    let typed = |name: &str, text: &str, unit| {
        Given::Value(MeasureRequest {
            name: name.into(),
            value: Given::Value(DimensionRequest::TextIn(text.into(), unit)),
        })
    };
    let measures = vec![
        typed("deep", "560", Unit::Mm),
        typed("less", "deep - 1/2", Unit::Inch),
        typed("gaps", "4", Unit::Mm),
    ];
    let rows = [
        ("deep", 560.0),
        ("deep - 1/2", 547.3),
        ("-deep + 1/2 + 600 mm", 52.7),
        ("2*deep", 1120.0),
        ("deep/2", 280.0),
        ("less - 1", 521.9),
        ("12/gaps", 76.2),
        ("(deep - 2*t)/gaps", 134.0),
        ("max(deep; 1)", 560.0),
        ("round(deep; 1)", 558.8),
    ];
    let parts = rows.map(|(text, _)| PartRequest {
        length: Given::Value(DimensionRequest::TextIn(text.into(), Unit::Inch)),
        ..part("Rail", 1.0, "1", "40", "Ash")
    });
    let plan = parts_list(&list(vec![stock("Ash", 12.0)], measures, parts.into()));
    let plan = plan.unwrap().plan;
    for ((text, mm), part) in rows.iter().zip(&plan.parts) {
        let found = part.length.finished.mm();
        assert!((found - mm).abs() < 1e-9, "{text}: {found}");
    }
}

proptest! {
    /// Whatever the sheet measures, what two sheets take from a width they give back to it.
    #[test]
    fn what_stands_between_two_sheets_fits_between_them(
        t in 0.1..60.0_f64, former in 0.1..60.0_f64, outside in 200.0..2000.0_f64
    ) {
        let ply = StockRequest { former: former.into(), ..stock("Ply", t) };
        let outside_text = format!("{outside:.3}");
        let outside: f64 = outside_text.parse().unwrap();
        let request = list(
            vec![ply],
            vec![measure("between", "outside - 2*t"), measure("outside", &outside_text)],
            vec![part("Shelf", 1.0, "between", "outside", "Ply")],
        );
        let plan = parts_list(&request).unwrap().plan;
        let length = plan.parts[0].length;
        prop_assert!((length.finished.mm() + 2.0 * t - outside).abs() < 1e-9);
        match length.change {
            Some(change) => {
                prop_assert!((change.by.mm() + 2.0 * (t - former)).abs() < 1e-9);
                prop_assert!((change.was.mm() + change.by.mm() - length.finished.mm()).abs() < 1e-9);
            }
            None => prop_assert!((t - former).abs() * 2.0 <= 0.001 + 1e-9),
        }
    }

    /// Nothing that can stand in a cell stops the others from being worked out.
    #[test]
    fn any_cell_is_worked_out_or_said(cells in prop::collection::vec("[-+*/()t0-9r., ]{0,9}", 1..20)) {
        let parts = cells.iter().map(|cell| part("Part", 1.0, cell, "10 + t", "Ash")).collect();
        let measures = cells.iter().map(|cell| measure("r", cell)).take(1).collect();
        let draft = draft(&list(vec![stock("Ash", 19.0)], measures, parts));
        for (i, row) in draft.rows.iter().enumerate() {
            prop_assert_eq!(row.width.map(|width| width.finished.mm()), Some(29.0));
            let field = format!("parts.{i}.length");
            let is_said = draft.problems.iter().any(|problem| problem.field == field);
            prop_assert_eq!(row.length.is_none(), is_said, "{}", cells[i]);
        }
    }
}
