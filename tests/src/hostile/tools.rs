//! The functions that scripts call, each with the shape of its request and the rules of its plan.

use std::fmt::Debug;

use arbitrary::Unstructured;
use notchwright_core::given;
use notchwright_core::joint::{box_joint, dovetail, sliding};
use notchwright_core::plain::Plain;
use notchwright_core::problem::Checked;
use notchwright_core::{cutter, groove, screw_check, sled, square, units};
use serde::Serialize;

use super::build::Builder;
use super::shapes::Shape;
use super::{Held, joints, plans, replies, requests, spoil};

/// A function that scripts call.
pub struct Tool {
    /// Its name outside.
    pub name: &'static str,
    shape: &'static Shape,
    hold: fn(&Plain) -> anyhow::Result<bool>,
}

macro_rules! tools {
    ($($name:literal: $shape:ident, $tool:path, $rules:path;)+) => {
        /// All of them.
        pub const TOOLS: &[Tool] = &[$(Tool {
            name: $name,
            shape: &requests::$shape,
            hold: |request| hold(request, $tool, $rules),
        }),+];
    };
}

tools! {
    "boxJoint": BOX_JOINT, box_joint::box_joint, joints::box_joint;
    "boxJointChoices": BOX_JOINT_CHOICES, box_joint::choices, joints::box_joint_choices;
    "dovetail": DOVETAIL, dovetail::dovetail, joints::dovetail;
    "dovetailChoices": DOVETAIL_CHOICES, dovetail::dovetail_choices, joints::dovetail_choices;
    "slidingDovetail": SLIDING_DOVETAIL, sliding::sliding_dovetail, joints::sliding_dovetail;
    "cutterStack": CUTTER_STACK, cutter::build_stack, plans::cutter_stack;
    "kerfFromSlot": KERF_FROM_SLOT, cutter::measure_kerf, plans::kerf_from_slot;
    "parseLength": PARSE_LENGTH, units::read_length, plans::parse_length;
    "formatLength": FORMAT_LENGTH, units::write_length, plans::format_length;
    "sledFit": SLED_FIT, sled::sled_fit, plans::sled_fit;
    "squareTest": SQUARE_TEST, square::square_test, plans::square_test;
    "screwCheck": SCREW_CHECK, screw_check::screw_check, plans::screw_check;
    "grooveSetup": GROOVE_SETUP, groove::groove_setup, plans::groove_setup;
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
