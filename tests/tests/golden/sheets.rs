//! Drawings of laid-out sheets, compared byte for byte with those in `golden/`.

use super::compare;

use notchwright_core::drawing::sheet_layout_drawing;
use notchwright_core::given::Given;
use notchwright_core::sheet::{
    PartRequest, RoughRequest, SearchRequest, SheetLayoutRequest, SheetRequest, SidesRequest,
    sheet_layout,
};
use notchwright_core::units::{Mm, write_number};

const STYLE: &str = include_str!("../../golden/sheets-style.css");

fn golden(name: &str, request: &SheetLayoutRequest, cuts: bool) {
    let plan = sheet_layout(request).expect("a good request").plan;
    for laid in &plan.sheets {
        let drawing = sheet_layout_drawing(&plan, laid, cuts);
        compare(
            &format!("sheets-{name}-{}", laid.number),
            STYLE,
            &drawing,
            |length: Mm| write_number(length.mm(), 2),
        );
    }
}

/// Bottoms and carcass of a chart chest.
fn chest() -> SheetLayoutRequest {
    let sheet = SheetRequest {
        length: 2440.0.into(),
        width: 1220.0.into(),
        edge_trim: SidesRequest::All(5.0).into(),
        ..SheetRequest::default()
    };
    let part = |length: f64, width: f64, count: f64, later: bool| {
        Given::from(PartRequest {
            length: length.into(),
            width: width.into(),
            count: count.into(),
            later: later.into(),
            ..PartRequest::default()
        })
    };
    let parts = vec![
        part(1100.0, 600.0, 2.0, false),
        part(960.0, 600.0, 2.0, false),
        part(880.0, 545.0, 4.0, false),
        part(930.0, 60.0, 6.0, false),
        part(400.0, 90.0, 3.0, true),
    ];
    SheetLayoutRequest {
        sheets: vec![Given::from(sheet)].into(),
        parts: parts.into(),
        kerf: 3.2.into(),
        search: SearchRequest {
            steps: 60.0.into(),
            ..SearchRequest::default()
        }
        .into(),
        ..SheetLayoutRequest::default()
    }
}

#[test]
fn a_chart_chest() {
    golden("chest", &chest(), false);
}

#[test]
fn cuts_by_hand_first() {
    let rough = RoughRequest {
        longest: 1400.0.into(),
        widest: 1230.0.into(),
        kerf: 2.2.into(),
        ..RoughRequest::default()
    };
    let request = SheetLayoutRequest {
        rough: rough.into(),
        ..chest()
    };
    golden("by-hand", &request, true);
}
