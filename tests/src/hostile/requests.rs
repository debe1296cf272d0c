//! Requests as they usually are: every field of every function, with values that can mostly be planned.

use super::shapes::Field::{self, May, Must};
use super::shapes::Shape::{self, Either, List, Near, Number, Object, Truth, Typed, Whole, Word};

pub(super) const UNIT: Shape = Word(&["mm", "in"]);

pub(super) const BOARD: Shape = Object(&[Must("thickness", &Number(6.0, 30.0))]);

pub(super) const CUTTER: Shape = Object(&[
    Must("kerf", &Number(1.5, 7.0)),
    May("diameter", &Number(150.0, 350.0)),
    May("grind", &GRIND),
    May("overlap", &Number(0.0, 0.7)),
]);

const GRIND: Shape = Either(&[
    Object(&[Must("kind", &Word(&["flat", "slope"]))]),
    Object(&[
        Must("kind", &Word(&["alternate"])),
        Must("bevelDegrees", &Number(0.0, 45.0)),
    ]),
]);

pub(super) const SCREW: Shape = Object(&[
    Field::Either(&[
        &[Must("lead", &Number(0.5, 10.0))],
        &[Must("threadsPerInch", &Whole(4, 40))],
    ]),
    Must("divisions", &Whole(20, 400)),
    May("backlash", &Number(0.0, 1.0)),
    May("rounding", &Word(&["division", "half", "none"])),
    May("rises", &Word(&["away", "towards"])),
    May("travel", &Number(100.0, 900.0)),
]);

pub(super) const ZERO: Shape = Either(&[
    Object(&[Must("kind", &Word(&["touch", "flush"]))]),
    Object(&[
        Must("kind", &Word(&["testKerf"])),
        Must("reading", &Number(-200.0, 200.0)),
        Must("measured", &Near(60.0)),
    ]),
]);

pub(super) const SAW: Shape = Object(&[
    May("greatestHeight", &Number(60.0, 100.0)),
    May("base", &Number(0.0, 20.0)),
    May("window", &Number(200.0, 400.0)),
]);

const LAYOUT: Shape = Either(&[
    Object(&[
        Must("kind", &Word(&["count"])),
        Must("count", &Whole(2, 25)),
    ]),
    Object(&[
        Must("kind", &Word(&["finger"])),
        Must("width", &Number(7.0, 40.0)),
    ]),
    Object(&[
        Must("kind", &Word(&["onePass"])),
        Must("leftover", &Word(&["ends", "far", "rip"])),
    ]),
    Object(&[
        Must("kind", &Word(&["pattern"])),
        Must("weights", &List(2, 12, &Number(1.0, 3.0))),
        May("mirrored", &Truth),
    ]),
]);

/// A box joint.
pub(super) const BOX_JOINT: Shape = Object(&[
    Must("width", &Number(60.0, 500.0)),
    Must("a", &BOARD),
    Must("b", &BOARD),
    Must("cutter", &CUTTER),
    Must("screw", &SCREW),
    May("zero", &ZERO),
    Must("layout", &LAYOUT),
    May("first", &Word(&["pin", "socket"])),
    May("glueGap", &Number(0.0, 0.2)),
    May("proud", &Number(0.0, 1.0)),
    May(
        "groove",
        &Object(&[
            Must("fromEdge", &Number(0.0, 40.0)),
            Must("width", &Number(3.0, 10.0)),
            Must("depth", &Number(2.0, 6.0)),
            May("edge", &Word(&["reference", "far"])),
        ]),
    ),
    May("saw", &SAW),
]);

/// Numbers of fingers to choose from.
pub(super) const BOX_JOINT_CHOICES: Shape = Object(&[
    Must("width", &Number(60.0, 500.0)),
    Must("a", &BOARD),
    Must("b", &BOARD),
    Must("cutter", &CUTTER),
    Must("screw", &SCREW),
    May("glueGap", &Number(0.0, 0.2)),
]);

pub(super) const SLOPE: Shape = Either(&[
    Object(&[
        Must("kind", &Word(&["ratio"])),
        Must("run", &Number(4.0, 12.0)),
    ]),
    Object(&[
        Must("kind", &Word(&["angle"])),
        Must("degrees", &Number(3.0, 15.0)),
    ]),
]);

pub(super) const PINS: Field = Field::Either(&[
    &[
        Must("narrowPin", &Number(6.0, 14.0)),
        Must("halfPin", &Number(5.0, 16.0)),
    ],
    &[Must(
        "by",
        &Object(&[
            Must("kind", &Word(&["ratio"])),
            Must("tailToPin", &Number(0.5, 4.0)),
        ]),
    )],
    &[Must("by", &Object(&[Must("kind", &Word(&["equal"]))]))],
    &[
        Must("by", &Object(&[Must("kind", &Word(&["narrowest"]))])),
        May("halfPin", &Number(4.0, 16.0)),
    ],
]);

pub(super) const FINE_CUTTER: Shape = Object(&[
    Must("kerf", &Number(1.5, 3.2)),
    May("diameter", &Number(150.0, 350.0)),
    May("grind", &GRIND),
    May("overlap", &Number(0.0, 0.7)),
]);

/// A dovetail.
pub(super) const DOVETAIL: Shape = Object(&[
    Must("width", &Number(80.0, 500.0)),
    Must("tail", &BOARD),
    Must("pin", &BOARD),
    Must("slope", &SLOPE),
    Must("tails", &Whole(1, 8)),
    PINS,
    May("weights", &List(1, 8, &Number(1.0, 1.5))),
    May("lap", &Number(1.0, 6.0)),
    May("glueGap", &Number(0.0, 0.2)),
    May("proud", &Number(0.0, 1.0)),
    Must("cutter", &FINE_CUTTER),
    May("pinCutter", &FINE_CUTTER),
    Must("screw", &SCREW),
    May("zero", &ZERO),
    May("saw", &SAW),
    May(
        "measured",
        &Object(&[
            May("leanDegrees", &Number(3.0, 15.0)),
            May("turnDegrees", &Near(1.0)),
        ]),
    ),
]);

/// Numbers of tails to choose from.
pub(super) const DOVETAIL_CHOICES: Shape = Object(&[
    Must("width", &Number(80.0, 500.0)),
    Must("tail", &BOARD),
    Must("pin", &BOARD),
    Must("slope", &SLOPE),
    PINS,
    May("lap", &Number(1.0, 6.0)),
    May("glueGap", &Number(0.0, 0.2)),
    May("proud", &Number(0.0, 1.0)),
    Must("cutter", &FINE_CUTTER),
    May("pinCutter", &FINE_CUTTER),
    Must("screw", &SCREW),
]);

/// A sliding dovetail.
pub(super) const SLIDING_DOVETAIL: Shape = Object(&[
    Must(
        "bit",
        &Object(&[
            Must("tipDiameter", &Number(8.0, 20.0)),
            Must("flankDegrees", &Number(5.0, 18.0)),
            May("cuttingLength", &Number(9.0, 25.0)),
        ]),
    ),
    Must("depth", &Number(3.0, 12.0)),
    May("socketFloor", &Near(30.0)),
    Must("board", &BOARD),
    May("glueGap", &Number(0.0, 0.2)),
    May(
        "taper",
        &Object(&[
            Must("by", &Number(0.0, 2.0)),
            Must("length", &Number(50.0, 900.0)),
        ]),
    ),
]);

/// The stacks nearest a wanted width.
pub(super) const CUTTER_STACK: Shape = Object(&[
    Must("outer", &List(1, 3, &Number(2.0, 4.0))),
    May("chippers", &List(0, 12, &Number(1.0, 4.0))),
    May("shims", &List(0, 22, &Number(0.05, 0.5))),
    Must("want", &Number(4.0, 30.0)),
]);

/// The kerf that made a stepped slot.
pub(super) const KERF_FROM_SLOT: Shape = Object(&[
    Must("steps", &Whole(1, 12)),
    Must("step", &Number(0.5, 4.0)),
    Must("slotWidth", &Number(2.0, 50.0)),
]);

/// A text to be read as a length.
pub(super) const PARSE_LENGTH: Shape = Object(&[Must("text", &Typed), Must("unit", &UNIT)]);

/// A length to be written.
pub(super) const FORMAT_LENGTH: Shape = Object(&[
    Must("mm", &Number(-2000.0, 2000.0)),
    Must("unit", &UNIT),
    May("fraction", &Whole(1, 1024)),
]);

/// A sled on a saw.
pub(super) const SLED_FIT: Shape = Object(&[
    Must(
        "saw",
        &Object(&[
            Must("bladeToSlot", &Number(80.0, 200.0)),
            May("measuredFrom", &Word(&["centre", "nearTooth"])),
            Must("slotSide", &Word(&["left", "right"])),
            Must("frontToArbor", &Number(300.0, 500.0)),
            Must("arborToRear", &Number(250.0, 450.0)),
            Must("greatestHeight", &Number(60.0, 100.0)),
            May("secondSlot", &Number(80.0, 200.0)),
            May("slotSection", &Word(&["plain", "t"])),
        ]),
    ),
    Must(
        "blade",
        &Object(&[
            Must("diameter", &Number(200.0, 350.0)),
            Must("kerf", &Number(1.5, 7.0)),
        ]),
    ),
    Must(
        "sled",
        &Object(&[
            Must(
                "base",
                &Object(&[
                    Must("thickness", &Number(6.0, 20.0)),
                    Must("width", &Number(450.0, 900.0)),
                    Must("length", &Number(500.0, 800.0)),
                    May("margin", &Number(0.0, 40.0)),
                ]),
            ),
            Must("carriageFace", &Number(120.0, 220.0)),
            Must("frontRail", &Number(330.0, 480.0)),
            Must(
                "runner",
                &Object(&[
                    Must("contactNear", &Number(-30.0, 60.0)),
                    Must("contactFar", &Number(350.0, 650.0)),
                    Must("width", &Number(12.0, 20.0)),
                    May("holes", &List(0, 5, &Number(30.0, 500.0))),
                    May("holeClearance", &Number(0.0, 2.0)),
                ]),
            ),
            May("bladeLine", &Number(200.0, 500.0)),
        ]),
    ),
    Must(
        "cut",
        &Object(&[
            Must("depth", &Number(5.0, 40.0)),
            Must("boardThickness", &Number(6.0, 30.0)),
            May("boardWidth", &Number(60.0, 400.0)),
            May("clearance", &Number(0.0, 20.0)),
            May("over", &Number(0.0, 20.0)),
            May("carriageTravel", &Number(100.0, 500.0)),
        ]),
    ),
    May(
        "measured",
        &Object(&[
            Must("near", &Number(-50.0, 200.0)),
            Must("far", &Near(50.0)),
        ]),
    ),
    May("play", &Number(0.0, 1.0)),
]);

/// How square a fence is.
pub(super) const SQUARE_TEST: Shape = Object(&[
    Must("fenceEnd", &Number(5.0, 40.0)),
    Must("freeEnd", &Near(0.5)),
    Must("apart", &Number(200.0, 600.0)),
    Must("pivotToAdjuster", &Number(300.0, 900.0)),
    May("readingUncertainty", &Number(0.0, 0.1)),
    May("boardThickness", &Number(6.0, 30.0)),
]);

/// What measured positions say of a screw.
pub(super) const SCREW_CHECK: Shape = Object(&[
    Must("screw", &SCREW),
    Must(
        "points",
        &List(
            3,
            24,
            &Object(&[
                Must("commanded", &Number(0.0, 300.0)),
                Must("measured", &Near(0.5)),
                May("approach", &Word(&["up", "down"])),
            ]),
        ),
    ),
]);

/// A groove on the router table.
pub(super) const GROOVE_SETUP: Shape = Object(&[
    Must("fromEdge", &Number(15.0, 100.0)),
    Must("width", &Number(6.0, 25.0)),
    Must("bit", &Number(3.0, 12.0)),
    May(
        "stopped",
        &Object(&[
            Must("from", &Number(0.0, 100.0)),
            Must("to", &Number(110.0, 900.0)),
        ]),
    ),
    May("passDepth", &Number(1.0, 6.0)),
    May("depth", &Number(2.0, 12.0)),
]);
