//! The types that scripts are promised, against what the tools answer.

use std::collections::BTreeMap;

use notchwright_core::dial::ScrewRequest;
use notchwright_core::given::{self, Given, Shape};
use notchwright_core::joint::{box_joint, dovetail, sliding};
use notchwright_core::plain::Plain;
use notchwright_core::problem::Reply;
use notchwright_core::{
    cutter, drawer, groove, parts, screw_check, sheet, sled, square, units, wood,
};
use serde::Serialize;
use serde_json::{Value, json};

fn plain(json: Value) -> Plain {
    serde_json::from_value(json).unwrap()
}

fn request_of<T: Shape>(json: Value) -> T {
    match given::read(&plain(json)) {
        (Given::Value(request), problems) if problems.is_empty() => request,
        (_, problems) => panic!("{problems:#?}"),
    }
}

/// Fields of an interface: name, whether it may be missing, and its type as written.
type Fields = BTreeMap<String, (bool, String)>;

/// The interfaces of `notchwright.d.ts`, by name.
fn interfaces() -> BTreeMap<String, Fields> {
    let mut interfaces = BTreeMap::new();
    let mut open: Option<(String, Fields)> = None;
    for line in include_str!("notchwright.d.ts").lines() {
        if let Some(head) = line.strip_prefix("export interface ") {
            let name = head.split(['<', ' ']).next().unwrap();
            open = Some((name.to_owned(), Fields::new()));
        } else if line == "}" {
            interfaces.extend(open.take());
        } else if let (Some((_, fields)), Some((name, kind))) =
            (&mut open, line.trim().split_once(": "))
            && !line.trim().starts_with(['/', '*'])
        {
            let kind = kind.trim_end_matches(';').to_owned();
            let may_be_missing = name.ends_with('?');
            fields.insert(
                name.trim_end_matches('?').to_owned(),
                (may_be_missing, kind),
            );
        }
    }
    interfaces
}

fn check(value: &Value, kind: &str, path: &str, interfaces: &BTreeMap<String, Fields>) {
    if let Some(item) = kind.strip_suffix("[]") {
        for item_value in value
            .as_array()
            .unwrap_or_else(|| panic!("{path} is no list"))
        {
            check(item_value, item, path, interfaces);
        }
    } else if let Some(fields) = interfaces.get(kind) {
        let object = value
            .as_object()
            .unwrap_or_else(|| panic!("{path} is no object"));
        for name in object.keys() {
            assert!(
                fields.contains_key(name),
                "{kind} has no field {name}: {path}"
            );
        }
        for (name, (may_be_missing, kind)) in fields {
            match object.get(name) {
                Some(field) => check(field, kind, &format!("{path}.{name}"), interfaces),
                None => assert!(may_be_missing, "{path}.{name} is missing"),
            }
        }
    } else if include_str!("notchwright.d.ts").contains(&format!("export type {kind} =")) {
        // One of several objects: the compiler of scripts tells them apart.
        assert!(value.is_object(), "{path}: {value} is no {kind}");
    } else {
        let fits = match kind {
            "number" => value.is_number(),
            "string" => value.is_string(),
            "boolean" => value.is_boolean(),
            words => value
                .as_str()
                .is_some_and(|word| words.contains(&format!("'{word}'"))),
        };
        assert!(fits, "{path}: {value} is no {kind}");
    }
}

fn promised<P: Serialize>(reply: Reply<P>, plan: &str) {
    let interfaces = interfaces();
    let reply = serde_json::to_value(reply).unwrap();
    assert_eq!(reply["ok"], true, "{reply}");
    check(&reply["plan"], plan, plan, &interfaces);
    check(&reply["notes"], "Note[]", "notes", &interfaces);
}

#[test]
fn replies_are_as_the_types_promise() {
    let cutter = json!({ "kerf": 3.2, "grind": { "kind": "alternate", "bevelDegrees": 15 } });
    let screw = json!({ "threadsPerInch": 16, "divisions": 80, "backlash": 0.2 });
    let boards = json!({ "width": 140, "a": { "thickness": 12 }, "b": { "thickness": 18 }, "cutter": cutter, "screw": screw });
    for layout in [
        json!({ "kind": "count", "count": 8 }),
        json!({ "kind": "onePass", "leftover": "rip" }),
    ] {
        let mut request = boards.clone();
        request["layout"] = layout;
        request["groove"] = json!({ "fromEdge": 9, "width": 6, "depth": 6 });
        let request = request_of(request);
        promised(Reply(box_joint::box_joint(&request)), "BoxJointPlan");
    }
    let request = request_of(boards);
    promised(Reply(box_joint::choices(&request)), "BoxJointChoicesPlan");
    let boards = json!({
        "width": 140, "tail": { "thickness": 12 }, "pin": { "thickness": 18 }, "slope": { "kind": "ratio", "run": 8 },
        "cutter": { "kerf": 3.2 }, "screw": screw
    });
    let mut request = boards.clone();
    request["by"] = json!({ "kind": "narrowest" });
    promised(
        Reply(dovetail::dovetail_choices(&request_of(request))),
        "DovetailChoicesPlan",
    );
    let mut request = boards;
    for (name, value) in [("tails", 4), ("narrowPin", 5), ("halfPin", 6)] {
        request[name] = value.into();
    }
    promised(
        Reply(dovetail::dovetail(&request_of(request))),
        "DovetailPlan",
    );
    let request = json!({
        "bit": { "tipDiameter": 12.7, "flankDegrees": 14 }, "depth": 9.5, "board": { "thickness": 18 },
        "taper": { "by": 0.5, "length": 300 }
    });
    promised(
        Reply(sliding::sliding_dovetail(&request_of(request))),
        "SlidingDovetailPlan",
    );
    let request = json!({ "outer": [3.2, 3.2], "chippers": [3.2], "shims": [0.1], "want": 9.65 });
    let request = request_of(request);
    promised(Reply(cutter::build_stack(&request)), "CutterStackPlan");
    let request = request_of(json!({ "steps": 5, "step": 2.5, "slotWidth": 13.2 }));
    promised(Reply(cutter::measure_kerf(&request)), "KerfFromSlotPlan");
    let request = request_of(json!({ "text": "3/4", "unit": "in" }));
    promised(Reply(units::read_length(&request)), "ParseLengthPlan");
    let request = request_of(json!({ "mm": 19.05, "unit": "in" }));
    promised(Reply(units::write_length(&request)), "FormatLengthPlan");
}

#[test]
fn replies_about_the_sled_are_as_the_types_promise() {
    let saw = json!({
        "bladeToSlot": 120, "slotSide": "left", "frontToArbor": 400, "arborToRear": 300, "greatestHeight": 80, "secondSlot": 120
    });
    let runner = json!({ "contactNear": 20, "contactFar": 420, "width": 19, "holes": [90, 215, 340], "holeClearance": 0.5 });
    let sled = json!({
        "base": { "thickness": 15, "width": 500, "length": 600 }, "carriageFace": 180, "frontRail": 380, "runner": runner
    });
    let request = request_of(json!({
        "saw": saw, "sled": sled, "blade": { "diameter": 254, "kerf": 3.2 }, "play": 0.1, "measured": { "near": 20, "far": 60 },
        "cut": { "depth": 18.5, "boardThickness": 12, "boardWidth": 140, "carriageTravel": 320 }
    }));
    promised(Reply(sled::sled_fit(&request)), "SledFitPlan");
    let request = request_of(json!({
        "fenceEnd": 20.1, "freeEnd": 20, "apart": 300, "pivotToAdjuster": 600, "boardThickness": 18
    }));
    promised(Reply(square::square_test(&request)), "SquareTestPlan");
    let point = |i: u32, off: f64, way: &str| {
        let at = f64::from(i) * 12.3;
        json!({ "commanded": at, "measured": at + off, "approach": way })
    };
    let points: Vec<_> = (0..6)
        .flat_map(|i| {
            [
                point(i, 0.1, "up"),
                point(i, 0.12, "up"),
                point(i, 0.0, "down"),
                point(i, 0.01, "down"),
            ]
        })
        .collect();
    let request = request_of(json!({ "screw": { "lead": 2, "divisions": 100 }, "points": points }));
    promised(Reply(screw_check::screw_check(&request)), "ScrewCheckPlan");
    let stopped = json!({ "from": 40, "to": 100 });
    let request = request_of(json!({
        "fromEdge": 12, "width": 10, "bit": 6, "depth": 7, "passDepth": 3, "stopped": stopped
    }));
    promised(Reply(groove::groove_setup(&request)), "GrooveSetupPlan");
}

#[test]
fn replies_about_parts_are_as_the_types_promise() {
    let request = request_of(json!({
        "stocks": [{ "name": "Ash", "thickness": 15.6, "former": 15 }],
        "measures": [{ "name": "width", "value": 480 }],
        "parts": [
            { "name": "Front", "count": 8, "length": "width - 2*t", "width": 60, "stock": "ash", "trim": 2, "later": true },
            { "name": "Side", "count": 16, "length": 600, "width": "60" }
        ]
    }));
    promised(Reply(parts::parts_list(&request)), "PartsListPlan");
}

#[test]
fn replies_about_drawers_are_as_the_types_promise() {
    let opening = json!({
        "kind": "opening", "width": 900, "height": 640, "depth": 600,
        "slides": "under", "sideClearance": 5, "above": 2, "below": 12
    });
    let screw = json!({ "lead": 2, "divisions": 100 });
    let fingers = json!({ "kind": "box", "layout": { "kind": "onePass" }, "cutter": { "kerf": 6.35 }, "screw": screw });
    let tails = json!({
        "kind": "dovetail", "slope": { "kind": "ratio", "run": 7 }, "tails": 2, "halfPin": 8, "narrowPin": 6,
        "cutter": { "kerf": 2.4 }, "screw": screw
    });
    let ash = json!({ "species": "white-ash", "sawn": "quarter", "moisture": 8 });
    for joint in [fingers, tails] {
        let request = request_of(json!({
            "size": opening, "count": 8, "between": 8, "side": { "thickness": 12 }, "front": { "thickness": 14 },
            "applied": { "thickness": 18, "lap": 10 }, "joint": joint,
            "bottom": { "thickness": 6, "groove": { "fromEdge": 10, "depth": 6, "bit": 6 }, "wood": ash },
            "wood": ash, "climate": { "kind": "moisture", "driest": 7, "wettest": 11 }
        }));
        promised(Reply(drawer::drawer_box(&request)), "DrawerBoxPlan");
    }
}

#[test]
fn layouts_of_sheets_are_as_the_types_promise() {
    let sheet = json!({
        "name": "birch", "stock": "ply", "length": 2440, "width": 1220, "thickness": 12, "price": 80, "mass": 25,
        "edgeTrim": 5
    });
    let offcut =
        json!({ "stock": "ply", "length": 900, "width": 600, "offcut": true, "quantity": 1 });
    let hardboard = json!({ "stock": "hardboard", "length": 2440, "width": 1220, "price": 20 });
    let parts = json!([
        { "name": "side", "number": 7, "count": 8, "length": 560, "width": 120, "stock": "ply", "trim": 1 },
        { "length": 880, "width": 545, "count": 5, "stock": "hardboard", "later": true }
    ]);
    let rough = json!({ "longest": 1400, "widest": 1300, "allowance": 5 });
    let request = request_of(json!({
        "sheets": [sheet, offcut, hardboard], "parts": parts, "kerf": 3.2, "rough": rough, "search": { "steps": 3 }
    }));
    promised(Reply(sheet::sheet_layout(&request)), "SheetLayoutPlan");
}

#[test]
fn problems_are_as_the_types_promise() {
    let request =
        json!({ "width": -1, "layout": { "kind": "count", "count": 2.5 }, "first": "tail" });
    let request = request_of(request);
    let reply = serde_json::to_value(Reply(box_joint::box_joint(&request))).unwrap();
    let types = include_str!("notchwright.d.ts");
    let codes = types
        .split_once("export type ProblemCode =")
        .unwrap()
        .1
        .split_once(';')
        .unwrap()
        .0;
    let mut interfaces = interfaces();
    let code = interfaces
        .get_mut("Problem")
        .unwrap()
        .get_mut("code")
        .unwrap();
    assert_eq!(code.1, "ProblemCode");
    code.1 = codes.to_owned();
    check(&reply["problems"], "Problem[]", "problems", &interfaces);
    assert!(reply["problems"].as_array().unwrap().len() > 5);
}

/// The fields of an interface that no request of the kind `T` has.
fn unknown<T: Shape>(interface: &str) -> Vec<String> {
    let fields = interfaces().remove(interface).unwrap().into_keys();
    let request: Value = fields.map(|name| (name, Value::Null)).collect();
    let (_, problems) = given::read::<T>(&plain(request));
    problems.into_iter().map(|problem| problem.field).collect()
}

#[test]
fn scripts_are_promised_no_field_that_requests_do_not_have() {
    for unknown in [
        unknown::<box_joint::BoxJointRequest>("BoxJointRequest"),
        unknown::<box_joint::ChoicesRequest>("BoxJointChoicesRequest"),
        unknown::<box_joint::BoardRequest>("Board"),
        unknown::<box_joint::GrooveRequest>("Groove"),
        unknown::<box_joint::SawRequest>("Saw"),
        unknown::<dovetail::DovetailRequest>("DovetailRequest"),
        unknown::<dovetail::DovetailChoicesRequest>("DovetailChoicesRequest"),
        unknown::<dovetail::SlopeRequest>("Slope"),
        unknown::<dovetail::ByRequest>("Pins"),
        unknown::<dovetail::MeasuredRequest>("MeasuredTurn"),
        unknown::<sliding::SlidingDovetailRequest>("SlidingDovetailRequest"),
        unknown::<sliding::BitRequest>("DovetailBit"),
        unknown::<sliding::TaperRequest>("SocketTaper"),
        unknown::<cutter::CutterRequest>("Cutter"),
        unknown::<ScrewRequest>("ScrewDial"),
        unknown::<cutter::CutterStackRequest>("CutterStackRequest"),
        unknown::<cutter::KerfFromSlotRequest>("KerfFromSlotRequest"),
        unknown::<units::ParseLengthRequest>("ParseLengthRequest"),
        unknown::<units::FormatLengthRequest>("FormatLengthRequest"),
        unknown::<sled::SledFitRequest>("SledFitRequest"),
        unknown::<sled::TableRequest>("SawTable"),
        unknown::<sled::BladeRequest>("SledBlade"),
        unknown::<sled::SledRequest>("Sled"),
        unknown::<sled::BaseRequest>("SledBase"),
        unknown::<sled::RunnerRequest>("Runner"),
        unknown::<sled::CutRequest>("SledCut"),
        unknown::<sled::LeftOverRequest>("LeftOver"),
        unknown::<square::SquareTestRequest>("SquareTestRequest"),
        unknown::<screw_check::ScrewCheckRequest>("ScrewCheckRequest"),
        unknown::<screw_check::PointRequest>("ScrewPoint"),
        unknown::<groove::GrooveSetupRequest>("GrooveSetupRequest"),
        unknown::<groove::StoppedRequest>("StoppedGroove"),
        unknown::<parts::PartsListRequest>("PartsListRequest"),
        unknown::<parts::StockRequest>("Stock"),
        unknown::<parts::MeasureRequest>("Measure"),
        unknown::<parts::PartRequest>("Part"),
        unknown::<drawer::DrawerBoxRequest>("DrawerBoxRequest"),
        unknown::<drawer::AppliedFrontRequest>("AppliedFrontRequest"),
        unknown::<drawer::DrawerJointRequest>("DrawerTools"),
        unknown::<drawer::DrawerBottomRequest>("DrawerBottom"),
        unknown::<drawer::DrawerGrooveRequest>("BottomGroove"),
        unknown::<wood::SolidWoodRequest>("SolidWood"),
        unknown::<sheet::SheetLayoutRequest>("SheetLayoutRequest"),
        unknown::<sheet::SheetRequest>("Sheet"),
        unknown::<sheet::EachSideRequest>("EachSide"),
        unknown::<sheet::PartRequest>("SheetPart"),
        unknown::<sheet::RoughRequest>("RoughCuts"),
        unknown::<sheet::SizeRequest>("OffcutSize"),
        unknown::<sheet::SearchRequest>("SheetSearch"),
    ] {
        assert_eq!(unknown, [""; 0]);
    }
    assert_eq!(unknown::<box_joint::SawRequest>("Board"), ["thickness"]);
}
