//! What is written for other programs, read back by libraries that know nothing of this one.

use dxf::entities::EntityType;
use notchwright_core::cutter::CutterRequest;
use notchwright_core::dial::ScrewRequest;
use notchwright_core::drawing::{
    Drawing, Paper, Shape, box_joint_drawing, box_joint_mated, box_joint_template, dxf::dxf,
};
use notchwright_core::joint::box_joint::{
    BoardRequest, BoxJointPlan, BoxJointRequest, LayoutRequest, box_joint,
};
use notchwright_core::stop::{Board, csv};
use notchwright_core::units::{Mm, write_number};
use proptest::prelude::*;

fn plan(width: f64, thickness: f64, count: f64) -> Option<BoxJointPlan> {
    let board = |thickness: f64| {
        BoardRequest {
            thickness: thickness.into(),
        }
        .into()
    };
    let request = BoxJointRequest {
        width: width.into(),
        a: board(thickness),
        b: board(18.0),
        cutter: CutterRequest {
            kerf: 3.07.into(),
            ..CutterRequest::default()
        }
        .into(),
        screw: ScrewRequest {
            threads_per_inch: 16.0.into(),
            divisions: 80.0.into(),
            ..ScrewRequest::default()
        }
        .into(),
        layout: LayoutRequest::count(count).into(),
        ..BoxJointRequest::default()
    };
    box_joint(&request).ok().map(|planned| planned.plan)
}

fn length(length: Mm) -> String {
    write_number(length.mm(), 2)
}

/// How many entities of each kind, and the length of all lines, as the drawing has them.
fn drawn(drawing: &Drawing) -> (usize, usize, usize, f64) {
    let (mut lines, mut polylines, mut texts, mut total) = (0, 0, 0, 0.0);
    for item in &drawing.items {
        match &item.shape {
            Shape::Polygons { polygons } => {
                polylines += polygons.len();
                total += polygons
                    .iter()
                    .map(|corners| run(corners, true))
                    .sum::<f64>();
            }
            Shape::Lines { lines: all } => {
                let straight = all.iter().filter(|corners| corners.len() == 2).count();
                lines += straight;
                polylines += all.len() - straight;
                total += all.iter().map(|corners| run(corners, false)).sum::<f64>();
            }
            Shape::Text { .. } => texts += 1,
        }
    }
    (lines, polylines, texts, total)
}

fn run(corners: &[notchwright_core::drawing::Point], is_closed: bool) -> f64 {
    let again = corners.first().filter(|_| is_closed);
    let all = corners.iter().chain(again);
    let places: Vec<_> = all.map(|corner| (corner.x.mm(), corner.y.mm())).collect();
    along(&places)
}

fn along(places: &[(f64, f64)]) -> f64 {
    let step = |(from, to): (&(f64, f64), &(f64, f64))| {
        let (x, y) = (to.0 - from.0, to.1 - from.1);
        (x * x + y * y).sqrt()
    };
    places.iter().zip(places.iter().skip(1)).map(step).sum()
}

/// The same as a reader of the format finds them; none when it is no file of the format, or has something
/// else in it.
fn read(text: &str) -> Option<(usize, usize, usize, f64)> {
    let drawing = dxf::Drawing::load(&mut text.as_bytes()).ok()?;
    assert_eq!(drawing.header.version, dxf::enums::AcadVersion::R12);
    let (mut lines, mut polylines, mut texts, mut total) = (0, 0, 0, 0.0);
    for entity in drawing.entities() {
        let layers: Vec<_> = drawing.layers().map(|layer| layer.name.clone()).collect();
        assert!(
            layers.contains(&entity.common.layer),
            "{}",
            entity.common.layer
        );
        match &entity.specific {
            EntityType::Line(line) => {
                lines += 1;
                total += along(&[(line.p1.x, line.p1.y), (line.p2.x, line.p2.y)]);
            }
            EntityType::Polyline(line) => {
                polylines += 1;
                let at = |vertex: &dxf::entities::Vertex| (vertex.location.x, vertex.location.y);
                let mut corners: Vec<_> = line.vertices().map(at).collect();
                if line.is_closed() {
                    corners.extend(corners.first().copied());
                }
                total += along(&corners);
            }
            EntityType::Text(_) => texts += 1,
            _ => return None,
        }
    }
    Some((lines, polylines, texts, total))
}

fn agree(drawing: &Drawing) {
    let text = dxf(drawing, length);
    assert!(text.is_ascii());
    let drawn = drawn(drawing);
    let read = read(&text).unwrap_or_default();
    assert_eq!((drawn.0, drawn.1, drawn.2), (read.0, read.1, read.2));
    // Every corner is written to a micrometre.
    let corners = text.matches("VERTEX").count() + 2 * drawn.0;
    assert!((drawn.3 - read.3).abs() <= 0.001 * (corners + 1) as f64);
}

#[test]
fn every_line_of_a_drawing_is_in_its_dxf_file() {
    let plan = plan(140.0, 12.0, 9.0).unwrap();
    agree(&box_joint_drawing(&plan));
    agree(&box_joint_mated(&plan, Mm::constant(18.0)));
    for tile in box_joint_template(&plan, Paper::Letter) {
        agree(&tile);
    }
}

#[test]
fn a_dxf_file_has_its_origin_at_the_lower_left() {
    let plan = plan(140.0, 12.0, 9.0).unwrap();
    let drawing = box_joint_drawing(&plan);
    let file = dxf::Drawing::load(&mut dxf(&drawing, length).as_bytes()).unwrap();
    let (width, height) = (drawing.width.mm(), drawing.height.mm());
    for entity in file.entities() {
        if let EntityType::Polyline(line) = &entity.specific {
            for vertex in line.vertices() {
                assert!((-1e-6..=width + 1e-6).contains(&vertex.location.x));
                assert!((-1e-6..=height + 1e-6).contains(&vertex.location.y));
            }
        }
    }
    // Board A lies above B.
    let top = |layer: &str| {
        let of = file
            .entities()
            .filter(|entity| entity.common.layer == layer);
        let heights = of.filter_map(|entity| match &entity.specific {
            EntityType::Polyline(line) => line.vertices().map(|v| v.location.y).reduce(f64::max),
            _ => None,
        });
        heights.reduce(f64::max).unwrap()
    };
    assert!(top("BOARD-A") > top("BOARD-B"));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    #[test]
    fn stops_come_back_from_their_csv_file(
        width in 40.0..400.0_f64,
        thickness in 5.0..30.0_f64,
        count in 3_u32..20,
    ) {
        let Some(plan) = plan(width, thickness, f64::from(count)) else { return Ok(()) };
        let text = csv::write(&plan.sets);
        let mut reader = ::csv::Reader::from_reader(text.as_bytes());
        prop_assert_eq!(reader.headers().unwrap().iter().collect::<Vec<_>>(), csv::COLUMNS.to_vec());
        let rows: Vec<_> = reader.records().map(Result::unwrap).collect();
        let stops = plan.sets.iter().flat_map(|set| set.stops.iter().map(move |stop| (set, stop)));
        let stops: Vec<_> = stops.collect();
        prop_assert_eq!(rows.len(), stops.len());
        for (row, (set, stop)) in rows.iter().zip(stops) {
            let number = |name: &str| {
                let column = csv::COLUMNS.iter().position(|other| *other == name).unwrap();
                row[column].parse::<f64>().unwrap()
            };
            let near = |one: f64, other: f64| (one - other).abs() <= 0.000_051;
            prop_assert_eq!(&row[0], set.name.as_str());
            prop_assert_eq!(&row[1], if set.board == Board::A { "A" } else { "B" });
            prop_assert!(near(number("blade_height_mm"), set.height.mm()));
            prop_assert!(near(number("at_mm"), stop.at.mm()));
            prop_assert!(near(number("reading_mm"), stop.dial.reading.mm()));
            prop_assert!(near(number("division"), stop.dial.division));
            prop_assert_eq!(number("turns") as i64, stop.dial.turns);
            prop_assert_eq!(number("socket") as usize, stop.socket + 1);
        }
    }

    /// A template's sockets are as wide as the passes that clear them, whichever paper.
    #[test]
    fn a_template_shows_what_is_cut_away(width in 40.0..300.0_f64, count in 3_u32..15) {
        let Some(plan) = plan(width, 12.0, f64::from(count)) else { return Ok(()) };
        for paper in [Paper::A4, Paper::Letter] {
            let tiles = box_joint_template(&plan, paper);
            prop_assert!(!tiles.is_empty());
            let (across, down) = paper.printable();
            for tile in tiles {
                prop_assert_eq!((tile.width, tile.height), (across, down));
                for item in &tile.items {
                    if let Shape::Lines { lines } = &item.shape {
                        for at in lines.iter().flatten() {
                            prop_assert!(at.x >= Mm::ZERO && !at.x.is_above(across));
                            prop_assert!(at.y >= Mm::ZERO && !at.y.is_above(down));
                        }
                    }
                }
            }
        }
    }
}
