//! The functions that scripts call: translate, call, translate.
//!
//! Each takes one plain object and returns one plain object, and throws for nothing. Their types are
//! in `notchwright.d.ts` beside this crate's sources, each field with its unit.

mod plain;
#[cfg(test)]
mod tests;

use js_sys::JSON;
use notchwright_core::given::{self, Shape};
use notchwright_core::joint::{box_joint, dovetail, sliding};
use notchwright_core::problem::{Checked, Reply};
use notchwright_core::{cutter, drawer, groove, parts, screw_check, sheet, sled, square, units};
use serde::Serialize;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &'static str = include_str!("notchwright.d.ts");

macro_rules! exports {
    ($($(#[$doc:meta])* $name:ident = $js:literal($tool:path);)+) => {$(
        $(#[$doc])*
        #[must_use]
        #[wasm_bindgen(js_name = $js, skip_typescript)]
        pub fn $name(request: JsValue) -> JsValue {
            answer(&request, $tool)
        }
    )+};
}

exports! {
    /// Plans a box joint.
    box_joint = "boxJoint"(box_joint::box_joint);
    /// Numbers of fingers to choose from.
    box_joint_choices = "boxJointChoices"(box_joint::choices);
    /// Plans dovetails.
    dovetail = "dovetail"(dovetail::dovetail);
    /// Numbers of tails to choose from.
    dovetail_choices = "dovetailChoices"(dovetail::dovetail_choices);
    /// Plans a sliding dovetail.
    sliding_dovetail = "slidingDovetail"(sliding::sliding_dovetail);
    /// The stacks nearest a wanted width.
    cutter_stack = "cutterStack"(cutter::build_stack);
    /// The kerf that made a stepped slot.
    kerf_from_slot = "kerfFromSlot"(cutter::measure_kerf);
    /// Reads a length.
    parse_length = "parseLength"(units::read_length);
    /// Writes a length.
    format_length = "formatLength"(units::write_length);
    /// Fits a sled to a saw.
    sled_fit = "sledFit"(sled::sled_fit);
    /// How square a fence is.
    square_test = "squareTest"(square::square_test);
    /// What measured positions say of a screw.
    screw_check = "screwCheck"(screw_check::screw_check);
    /// Sets up a groove on the router table.
    groove_setup = "grooveSetup"(groove::groove_setup);
    /// Works out parts for the stock as measured.
    parts_list = "partsList"(parts::parts_list);
    /// Plans the drawers of an opening.
    drawer_box = "drawerBox"(drawer::drawer_box);
    /// Lays parts out on sheets.
    sheet_layout = "sheetLayout"(sheet::sheet_layout);
}

fn answer<T: Shape, P: Serialize>(request: &JsValue, tool: fn(&T) -> Checked<P>) -> JsValue {
    let reply = Reply(given::answer(&plain::read(request), tool));
    // A reply can be long: as one text it is across in a third of the time that its values take one by one.
    // Nothing in it is foreign to plain objects.
    let text = serde_json::to_string(&reply).unwrap_or_default();
    JSON::parse(&text).unwrap_or_default()
}
