//! The functions that scripts call, each with the shape of its request and the rules of its plan.

use std::fmt::Debug;

use arbitrary::Unstructured;
use notchwright_core::given;
use notchwright_core::joint::{box_joint, dovetail, sliding};
use notchwright_core::plain::Plain;
use notchwright_core::problem::Checked;
use notchwright_core::{cutter, drawer, groove, parts, screw_check, sled, square, units};
use serde::Serialize;

use super::build::Builder;
use super::shapes::Shape;
use super::{Held, drawers, joints, lists, making, plans, replies, requests, sheets, spoil};

/// A function that scripts call.
pub struct Tool {
    /// Its name outside.
    pub name: &'static str,
    shape: &'static Shape,
    hold: fn(&Plain) -> anyhow::Result<bool>,
}

macro_rules! tools {
    ($($name:literal: $shape:path, $tool:path, $rules:path;)+) => {
        /// All of them.
        pub const TOOLS: &[Tool] = &[$(Tool {
            name: $name,
            shape: &$shape,
            hold: |request| hold(request, $tool, $rules),
        }),+];
    };
}

tools! {
    "boxJoint": requests::BOX_JOINT, box_joint::box_joint, joints::box_joint;
    "boxJointChoices": requests::BOX_JOINT_CHOICES, box_joint::choices, joints::box_joint_choices;
    "dovetail": requests::DOVETAIL, dovetail::dovetail, joints::dovetail;
    "dovetailChoices": requests::DOVETAIL_CHOICES, dovetail::dovetail_choices, joints::dovetail_choices;
    "slidingDovetail": requests::SLIDING_DOVETAIL, sliding::sliding_dovetail, joints::sliding_dovetail;
    "cutterStack": requests::CUTTER_STACK, cutter::build_stack, plans::cutter_stack;
    "kerfFromSlot": requests::KERF_FROM_SLOT, cutter::measure_kerf, plans::kerf_from_slot;
    "parseLength": requests::PARSE_LENGTH, units::read_length, plans::parse_length;
    "formatLength": requests::FORMAT_LENGTH, units::write_length, plans::format_length;
    "sledFit": requests::SLED_FIT, sled::sled_fit, plans::sled_fit;
    "squareTest": requests::SQUARE_TEST, square::square_test, plans::square_test;
    "screwCheck": requests::SCREW_CHECK, screw_check::screw_check, plans::screw_check;
    "grooveSetup": requests::GROOVE_SETUP, groove::groove_setup, plans::groove_setup;
    "partsList": making::PARTS_LIST, parts::parts_list, lists::parts_list;
    "drawerBox": making::DRAWER_BOX, drawer::drawer_box, drawers::drawer_box;
    "sheetLayout": making::SHEET_LAYOUT, sheets::few_rounds, sheets::sheet_layout;
}

impl Tool {
    /// The tool of this name.
    #[must_use]
    pub fn named(name: &str) -> Option<&'static Self> {
        TOOLS.iter().find(|tool| tool.name == name)
    }

    /// Asks what the bytes say; whether there was a plan.
    ///
    /// # Errors
    /// The rule that the answer breaks.
    pub fn ask(&self, bytes: &[u8]) -> anyhow::Result<bool> {
        match self.request(&mut Unstructured::new(bytes)) {
            Ok(request) => {
                (self.hold)(&request).map_err(|error| error.context(format!("{request:?}")))
            }
            // No text can be made of these bytes.
            Err(_) => Ok(false),
        }
    }

    /// Mostly what people ask; then with numbers from outside; then with something else here and there.
    fn request(&self, bytes: &mut Unstructured<'_>) -> arbitrary::Result<Plain> {
        let names = self.shape.names();
        let (unusual, spoilt) = match bytes.arbitrary::<u8>()? {
            0..=7 => return spoil::anything(&names, bytes, 7),
            8..=119 => (0, 0),
            120..=199 => (1, 0),
            200..=219 => (4, 0),
            220..=239 => (0, 1),
            _ => (1, 3),
        };
        let mut request = Builder::new(bytes, unusual).build(self.shape)?;
        for _ in 0..spoilt {
            spoil::spoil(&mut request, &names, bytes)?;
        }
        Ok(request)
    }
}

fn hold<T: given::Shape, P: Serialize + Debug>(
    request: &Plain,
    tool: fn(&T) -> Checked<P>,
    rules: fn(&Plain, &P) -> Held,
) -> anyhow::Result<bool> {
    let answer = given::answer(request, tool);
    let is_planned = match &answer {
        Ok(planned) => {
            rules(request, &planned.plan)
                .map_err(|error| error.context(format!("{:#?}", planned.plan)))?;
            true
        }
        Err(problems) => {
            replies::refused(request, problems, |request| {
                given::answer(request, tool).err()
            })?;
            false
        }
    };
    replies::reads_back(answer)?;
    Ok(is_planned)
}
