use super::sheet_layout_drawing;
use crate::drawing::item::{Drawing, Role, Shape};
use crate::given::Given;
use crate::sheet::{
    PartRequest, SearchRequest, SheetLayoutPlan, SheetLayoutRequest, SheetRequest, sheet_layout,
};

fn plan(parts: &[(f64, f64, f64, bool)]) -> SheetLayoutPlan {
    let sheet = SheetRequest {
        length: 2440.0.into(),
        width: 1220.0.into(),
        edge_trim: crate::sheet::SidesRequest::All(6.0).into(),
        ..SheetRequest::default()
    };
    let part = |(length, width, count, later): &(f64, f64, f64, bool)| {
        Given::from(PartRequest {
            length: (*length).into(),
            width: (*width).into(),
            count: (*count).into(),
            later: (*later).into(),
            ..PartRequest::default()
        })
    };
    let request = SheetLayoutRequest {
        sheets: vec![Given::from(sheet)].into(),
        parts: parts.iter().map(part).collect::<Vec<_>>().into(),
        kerf: 3.2.into(),
        search: SearchRequest {
            steps: 5.0.into(),
            ..SearchRequest::default()
        }
        .into(),
        ..SheetLayoutRequest::default()
    };
    sheet_layout(&request).unwrap().plan
}

fn areas(drawing: &Drawing, role: Role) -> usize {
    let of_role = drawing.items.iter().filter(|item| item.role == role);
    of_role
        .map(|item| match &item.shape {
            Shape::Polygons { polygons } => polygons.len(),
            _ => 0,
        })
        .sum()
}

fn texts(drawing: &Drawing, role: Role) -> usize {
    let of_role = drawing.items.iter().filter(|item| item.role == role);
    of_role
        .filter(|item| matches!(item.shape, Shape::Text { .. }))
        .count()
}

#[test]
fn every_part_is_drawn_and_every_cut_numbered() {
    let plan = plan(&[(560.0, 120.0, 8.0, false), (880.0, 545.0, 2.0, true)]);
    let laid = &plan.sheets[0];
    let drawing = sheet_layout_drawing(&plan, laid, true);
    assert_eq!(areas(&drawing, Role::BoardA), 8);
    assert_eq!(areas(&drawing, Role::BoardB), 2);
    assert_eq!(texts(&drawing, Role::Letter), 10);
    assert_eq!(texts(&drawing, Role::CurrentPass), laid.cuts.len());
    let without = sheet_layout_drawing(&plan, laid, false);
    assert_eq!(texts(&without, Role::CurrentPass), 0);
}

#[test]
fn nothing_lies_outside() {
    let plan = plan(&[(300.0, 200.0, 40.0, false), (61.0, 33.0, 30.0, false)]);
    for laid in &plan.sheets {
        let drawing = sheet_layout_drawing(&plan, laid, true);
        for item in &drawing.items {
            let corners = match &item.shape {
                Shape::Polygons { polygons: lines } | Shape::Lines { lines } => lines.concat(),
                Shape::Text { at, .. } => vec![*at],
            };
            for corner in corners {
                assert!(
                    corner.x.mm() >= 0.0 && corner.x <= drawing.width,
                    "{item:?}"
                );
                assert!(
                    corner.y.mm() >= 0.0 && corner.y <= drawing.height,
                    "{item:?}"
                );
            }
        }
    }
}
