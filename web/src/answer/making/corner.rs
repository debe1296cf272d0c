//! The joint of the drawers' corners, with the shop's cutter and screw.

use notchwright_core::cutter::CutterRequest;
use notchwright_core::drawer::{DrawerJointRequest, DrawerLayoutRequest};
use notchwright_core::given::Given;
use notchwright_core::joint::dovetail::{ByRequest, SlopeRequest};

use super::drawer::word;
use super::{Draft, joint};
use crate::state::Id;
use crate::state::fields::{Known, drawer};

/// The joint.
pub(super) fn corner(draft: &mut Draft<'_>) -> DrawerJointRequest {
    let (saw, sled) = joint::chosen_pair(draft);
    let tools = DrawerJointRequest {
        cutter: joint::chosen_cutter(draft),
        screw: joint::chosen_screw(draft, sled),
        saw: joint::reach(draft, saw, sled).into(),
        ..DrawerJointRequest::default()
    };
    let request = match word(draft, drawer::JOINT) {
        "dovetail" => dovetails(draft, tools),
        _ => fingers(draft, tools),
    };
    for (place, here) in OF_SHOP {
        draft.answers_for(place, here);
    }
    request
}

/// Where the shop's fields are in a joint's request, and where in this.
const OF_SHOP: [(&str, &str); 19] = [
    ("cutter", "joint.cutter"),
    ("cutter.kerf", "joint.cutter.kerf"),
    ("cutter.diameter", "joint.cutter.diameter"),
    (
        "cutter.grind.bevelDegrees",
        "joint.cutter.grind.bevelDegrees",
    ),
    ("cutter.overlap", "joint.cutter.overlap"),
    ("pinCutter", "joint.pinCutter"),
    ("pinCutter.kerf", "joint.pinCutter.kerf"),
    ("pinCutter.diameter", "joint.pinCutter.diameter"),
    (
        "pinCutter.grind.bevelDegrees",
        "joint.pinCutter.grind.bevelDegrees",
    ),
    ("pinCutter.overlap", "joint.pinCutter.overlap"),
    ("screw", "joint.screw"),
    ("screw.lead", "joint.screw.lead"),
    ("screw.threadsPerInch", "joint.screw.threadsPerInch"),
    ("screw.divisions", "joint.screw.divisions"),
    ("screw.backlash", "joint.screw.backlash"),
    ("screw.travel", "joint.screw.travel"),
    ("saw.greatestHeight", "joint.saw.greatestHeight"),
    ("saw.base", "joint.saw.base"),
    ("saw.window", "joint.saw.window"),
];

fn fingers(draft: &mut Draft<'_>, tools: DrawerJointRequest) -> DrawerJointRequest {
    let first = match word(draft, drawer::FIRST) {
        "" => "pin",
        first => first,
    };
    DrawerJointRequest {
        kind: "box".into(),
        layout: layout(draft).into(),
        first: first.into(),
        ..tools
    }
}

fn layout(draft: &mut Draft<'_>) -> DrawerLayoutRequest {
    let kind = |kind: &str| DrawerLayoutRequest {
        kind: kind.into(),
        ..DrawerLayoutRequest::default()
    };
    match word(draft, drawer::LAYOUT) {
        "count" => DrawerLayoutRequest {
            count: draft.number("joint.layout.count", drawer::FINGERS.alone()),
            ..kind("count")
        },
        "finger" => DrawerLayoutRequest {
            width: draft.length("joint.layout.width", drawer::FINGER.alone()),
            ..kind("finger")
        },
        _ => kind("onePass"),
    }
}

fn dovetails(draft: &mut Draft<'_>, tools: DrawerJointRequest) -> DrawerJointRequest {
    let by = match word(draft, drawer::PINS) {
        "" => "widths",
        by => by,
    };
    let mut length = |is_asked: bool, path, field: Known| match is_asked {
        true => draft.length(path, field.alone()),
        false => Given::Missing,
    };
    let narrow_pin = length(by == "widths", "joint.narrowPin", drawer::NARROW_PIN);
    let asks_half_pin = matches!(by, "widths" | "narrowest");
    let half_pin = length(asks_half_pin, "joint.halfPin", drawer::HALF_PIN);
    let tail_to_pin = match by {
        "ratio" => draft.number("joint.by.tailToPin", drawer::TAIL_TO_PIN.alone()),
        _ => Given::Missing,
    };
    let by = ByRequest {
        kind: by.into(),
        tail_to_pin,
    };
    DrawerJointRequest {
        kind: "dovetail".into(),
        slope: slope(draft).into(),
        tails: draft.number("joint.tails", drawer::TAILS.alone()),
        half_pin,
        narrow_pin,
        by: by.into(),
        lap: draft.length("joint.lap", drawer::LAP.alone()),
        back_lap: draft.length("joint.backLap", drawer::BACK_LAP.alone()),
        pin_cutter: pin_cutter(draft),
        ..tools
    }
}

fn slope(draft: &mut Draft<'_>) -> SlopeRequest {
    match word(draft, drawer::SLOPE) {
        "degrees" => SlopeRequest {
            kind: "angle".into(),
            degrees: draft.number("joint.slope.degrees", drawer::DEGREES.alone()),
            ..SlopeRequest::default()
        },
        _ => SlopeRequest {
            kind: "ratio".into(),
            run: draft.number("joint.slope.run", drawer::RUN.alone()),
            ..SlopeRequest::default()
        },
    }
}

fn pin_cutter(draft: &mut Draft<'_>) -> Given<CutterRequest> {
    let id = word(draft, drawer::PIN_CUTTER).parse().map(Id);
    let cutters = &draft.work().shop.cutters;
    let cutter = id.ok().and_then(|id| cutters.get(id));
    cutter.map_or(Given::Missing, |cutter| {
        joint::cutter_at(draft, "pinCutter", cutter).into()
    })
}
