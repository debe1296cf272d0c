//! What every drawing of drawers must be.

use proptest::prelude::*;

use super::{drawer_elevation, drawer_plan_view};
use crate::drawer::{DrawerBoxPlan, drawer_box, example};
use crate::drawing::sled::labels::{Area, text_width};
use crate::drawing::{Drawing, Item, Point, Role, Shape};
use crate::units::Mm;

fn corners(item: &Item) -> Vec<Point> {
    match &item.shape {
        Shape::Polygons { polygons: lines } | Shape::Lines { lines } => lines.concat(),
        Shape::Text { .. } => Vec::new(),
    }
}

fn polygons(drawing: &Drawing, role: Role) -> Vec<Vec<Point>> {
    let items = drawing.items.iter().filter(|item| item.role == role);
    let polygons = items.filter_map(|item| match &item.shape {
        Shape::Polygons { polygons } => Some(polygons.clone()),
        Shape::Lines { .. } | Shape::Text { .. } => None,
    });
    polygons.flatten().collect()
}

fn text_areas(drawing: &Drawing) -> Vec<Area> {
    let area = |item: &Item| match &item.shape {
        Shape::Text {
            at,
            anchor,
            size,
            text,
        } => {
            let (top, bottom) = (at.y - *size * 0.72, at.y + *size * 0.2);
            Some(Area::of_text(
                *at,
                *anchor,
                text_width(text, *size),
                top,
                bottom,
            ))
        }
        Shape::Polygons { .. } | Shape::Lines { .. } => None,
    };
    drawing.items.iter().filter_map(area).collect()
}

fn drawings(plan: &DrawerBoxPlan) -> Vec<Drawing> {
    let views = (0..plan.drawers.len()).filter_map(|drawer| drawer_plan_view(plan, drawer));
    drawer_elevation(plan).into_iter().chain(views).collect()
}

/// An upright rectangle's extents, across and down.
fn extent(corners: &[Point]) -> (Mm, Mm) {
    (
        (corners[2].x - corners[0].x).abs(),
        (corners[2].y - corners[0].y).abs(),
    )
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, max_global_rejects: 200_000, ..ProptestConfig::default() })]

    /// Nothing is drawn beside the sheet, no text lies on another, and drawers are to scale.
    #[test]
    fn everything_is_on_the_sheet(request in example::usual_request()) {
        let Ok(planned) = drawer_box(&request) else {
            return Err(TestCaseError::reject("no such drawers"));
        };
        let plan = planned.plan;
        for drawing in drawings(&plan) {
            let sheet = Area { left: Mm::ZERO, top: Mm::ZERO, right: drawing.width, bottom: drawing.height };
            for corner in drawing.items.iter().flat_map(corners) {
                prop_assert!(corner.x >= Mm::ZERO && corner.x <= drawing.width, "{corner:?}");
                prop_assert!(corner.y >= Mm::ZERO && corner.y <= drawing.height, "{corner:?}");
            }
            let texts = text_areas(&drawing);
            for (index, text) in texts.iter().enumerate() {
                prop_assert!(text.is_within(&sheet), "{text:?}");
                prop_assert!(texts[..index].iter().all(|other| !text.meets(other)), "{text:?}");
            }
        }
        if let Some(drawing) = drawer_elevation(&plan) {
            let fronts = polygons(&drawing, Role::BoardB);
            prop_assert_eq!(fronts.len(), plan.places.len());
            for (place, front) in plan.places.iter().zip(&fronts) {
                let drawer = &plan.drawers[place.drawer];
                let (width, height) = extent(front);
                prop_assert!((width - drawer.width).abs().mm() < 1e-6);
                prop_assert!((height - drawer.height).abs().mm() < 1e-6);
            }
            let opening = &polygons(&drawing, Role::Opening)[0];
            let floor = opening[2].y;
            let below = fronts.last().unwrap()[2].y;
            prop_assert!((floor - below - plan.places.last().unwrap().from_below).abs().mm() < 1e-6);
        }
    }
}

#[test]
fn there_is_no_view_of_what_is_not_there() {
    let plan = drawer_box(&example::chest()).unwrap().plan;
    assert!(drawer_plan_view(&plan, plan.drawers.len()).is_none());
    assert_eq!(drawings(&plan).len(), 2);
}
