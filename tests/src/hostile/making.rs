//! Requests for drawers, parts and sheets, as [`super::requests`] has them for the rest.

use super::requests::{BOARD, CUTTER, FINE_CUTTER, PINS, SAW, SCREW, SLOPE, UNIT, ZERO};
use super::shapes::Field::{self, May, Must};
use super::shapes::Shape::{self, Either, List, Near, Number, Object, Truth, Typed, Whole, Word};

const TWO_STOCKS: Shape = Word(&["ply", "ash"]);

const EDGES: Shape = Either(&[
    Number(0.0, 12.0),
    Object(&[
        May("start", &Number(0.0, 12.0)),
        May("end", &Number(0.0, 12.0)),
        May("near", &Number(0.0, 12.0)),
        May("far", &Number(0.0, 12.0)),
    ]),
]);

macro_rules! sheet {
    ($($stock:expr)?) => {
        Object(&[
            Must("length", &Number(600.0, 2600.0)),
            Must("width", &Number(500.0, 1600.0)),
            $(Must("stock", &$stock),)?
            May("name", &Word(&["birch", "rest"])),
            May("thickness", &Number(3.0, 25.0)),
            May("grain", &Word(&["length", "width", "none"])),
            May("edgeTrim", &EDGES),
            May("quantity", &Whole(1, 30)),
            May("price", &Number(0.0, 90.0)),
            May("mass", &Number(3.0, 60.0)),
            May("offcut", &Truth),
        ])
    };
}

macro_rules! piece {
    ($($stock:expr)?) => {
        Object(&[
            Must("length", &Number(20.0, 700.0)),
            Must("width", &Number(20.0, 500.0)),
            $(Must("stock", &$stock),)?
            May("name", &Word(&["side", "shelf"])),
            May("number", &Whole(1, 40)),
            May("count", &Whole(1, 6)),
            May("mayTurn", &Truth),
            May("trim", &EDGES),
            May("later", &Truth),
        ])
    };
}

/// Parts laid out on sheets.
pub(super) const SHEET_LAYOUT: Shape = Object(&[
    Field::Either(&[
        &[
            Must("sheets", &List(1, 3, &sheet!())),
            Must("parts", &List(1, 8, &piece!())),
        ],
        &[
            Must("sheets", &List(2, 4, &sheet!(TWO_STOCKS))),
            Must("parts", &List(1, 6, &piece!(TWO_STOCKS))),
        ],
    ]),
    Must("kerf", &Number(0.0, 5.0)),
    May(
        "rough",
        &Object(&[
            May("longest", &Number(900.0, 2000.0)),
            May("widest", &Number(700.0, 1300.0)),
            May("heaviest", &Number(8.0, 40.0)),
            May("allowance", &Number(0.0, 12.0)),
            May("kerf", &Number(0.8, 5.0)),
        ]),
    ),
    May(
        "leastOffcut",
        &Object(&[
            Must("length", &Number(0.0, 600.0)),
            Must("width", &Number(0.0, 200.0)),
        ]),
    ),
    May(
        "search",
        &Object(&[
            May("from", &Whole(0, 60)),
            May("steps", &Whole(0, 6)),
            May(
                "best",
                &Word(&[
                    "0:0",
                    "0:0t",
                    "0:[2*0]",
                    "0:[0,1,2]",
                    "0:(0,[1,2*2])",
                    "0:{0,<0t,1>}",
                    "0:[[0]]",
                    "1:0;0:1",
                ]),
            ),
        ]),
    ),
]);

/// Sums without the name of a measure.
const SUM: Shape = Word(&[
    "300 - 2*t",
    "11 1/2\"",
    "40 + t/3",
    "2' 3-1/8\" - t",
    "max(60; 4*t)",
    "round(200 + t; 0.5)",
    "(900 - 3×t) ÷ 4",
    "12 mm + 6 in",
    "-(t - 100)",
]);

/// Names that may be those of measures, and texts that may be none.
const RISKY: Shape = Either(&[
    Word(&["inside", "inside - 2*T", "min(rise; inside)", "w_2/2 + t"]),
    Typed,
]);

const DIMENSION: Shape = Either(&[
    Number(5.0, 900.0),
    Number(5.0, 900.0),
    Number(5.0, 900.0),
    SUM,
    SUM,
    SUM,
    Object(&[Must("text", &SUM), May("unit", &UNIT)]),
    RISKY,
]);

const MEASURE: Shape = Object(&[
    Must("name", &Word(&["inside", "rise", "w_2", "Größe"])),
    Must("value", &DIMENSION),
]);

macro_rules! stock {
    ($name:expr) => {
        Object(&[
            Must("name", &$name),
            Must("thickness", &Number(3.0, 25.0)),
            May("former", &Near(1.0)),
        ])
    };
}

macro_rules! part {
    ($($stock:expr)?) => {
        Object(&[
            Must("name", &Word(&["Side", " Top", "Bottom", "=1+1"])),
            May("number", &Whole(1, 60)),
            Must("count", &Whole(1, 12)),
            Must("length", &DIMENSION),
            Must("width", &DIMENSION),
            $(Must("stock", &$stock),)?
            May("mayTurn", &Truth),
            May("trim", &Either(&[Number(0.0, 6.0), Word(&["", "1/8\"", "t/4", "2"])])),
            May("later", &Truth),
        ])
    };
}

/// Parts whose dimensions follow the stock.
pub(super) const PARTS_LIST: Shape = Object(&[
    May("unit", &UNIT),
    Field::Either(&[
        &[
            Must("stocks", &List(1, 1, &stock!(Word(&["Ply", "x\ty"])))),
            Must("parts", &List(1, 4, &part!())),
        ],
        &[
            Must("stocks", &List(2, 2, &stock!(TWO_STOCKS))),
            Must("parts", &List(1, 3, &part!(Word(&["ply", "ash", " Ash"])))),
        ],
    ]),
    May("measures", &List(0, 3, &MEASURE)),
]);

const WOOD: Shape = Either(&[
    Object(&[
        Must(
            "species",
            &Word(&["white-ash", "black-cherry", "red-alder"]),
        ),
        Must("sawn", &Word(&["flat", "quarter"])),
        Must("moisture", &Number(5.0, 14.0)),
    ]),
    Object(&[
        Must("shrinkage", &Number(2.0, 12.0)),
        Must("moisture", &Number(5.0, 14.0)),
    ]),
]);

const CLIMATE: Shape = Either(&[
    Object(&[
        Must("kind", &Word(&["humidity"])),
        Must("driest", &Number(25.0, 45.0)),
        Must("wettest", &Number(50.0, 80.0)),
        Must("temperature", &Number(5.0, 30.0)),
    ]),
    Object(&[
        Must("kind", &Word(&["moisture"])),
        Must("driest", &Number(5.0, 8.0)),
        Must("wettest", &Number(9.0, 14.0)),
    ]),
]);

macro_rules! bottom {
    ($($wood:expr)?) => {
        Object(&[
            Must("thickness", &Number(3.0, 10.0)),
            Must(
                "groove",
                &Object(&[
                    Must("fromEdge", &Number(4.0, 16.0)),
                    Must("depth", &Number(2.0, 6.0)),
                    May("clearance", &Number(0.0, 0.4)),
                    May("bit", &Number(2.0, 6.0)),
                ]),
            ),
            May("clearance", &Number(0.0, 1.0)),
            $(Must("wood", &$wood),)?
        ])
    };
}

macro_rules! opening {
    ($slides:expr; $($more:expr),*) => {
        Object(&[
            Must("kind", &Word(&["opening"])),
            Must("width", &Number(200.0, 1200.0)),
            Must("height", &Number(120.0, 1200.0)),
            Must("depth", &Number(200.0, 700.0)),
            Must("slides", &$slides),
            Must("sideClearance", &Number(0.0, 14.0)),
            Must("above", &Number(0.0, 6.0)),
            $($more,)*
            May("behind", &Number(0.0, 20.0)),
        ])
    };
}

const OPENING: Shape = Either(&[
    opening!(Word(&["runners"]);),
    opening!(Word(&["side", "under"]); Must("below", &Number(0.0, 14.0))),
]);

const OUTSIDE: Shape = Object(&[
    Must("kind", &Word(&["outside"])),
    Must("width", &Number(150.0, 1200.0)),
    Must("height", &Number(50.0, 300.0)),
    Must("depth", &Number(150.0, 700.0)),
]);

const HEIGHTS: Shape = Either(&[
    Object(&[Must("kind", &Word(&["equal"]))]),
    Object(&[
        Must("kind", &Word(&["graduated"])),
        Must("step", &Number(2.0, 25.0)),
    ]),
    Object(&[
        Must("kind", &Word(&["ratio"])),
        Must("ratio", &Number(1.01, 1.3)),
    ]),
]);

macro_rules! corner {
    ($kind:literal, $cutter:expr; $($own:expr),+) => {
        Object(&[
            Must("kind", &Word(&[$kind])),
            $($own,)+
            Must("cutter", &$cutter),
            Must("screw", &SCREW),
            May("zero", &ZERO),
            May("glueGap", &Number(0.0, 0.2)),
            May("proud", &Number(0.0, 1.0)),
            May("saw", &SAW),
        ])
    };
}

const LAYOUT: Shape = Either(&[
    Object(&[
        Must("kind", &Word(&["count"])),
        Must("count", &Whole(3, 11)),
    ]),
    Object(&[
        Must("kind", &Word(&["finger"])),
        Must("width", &Number(7.0, 16.0)),
    ]),
    Object(&[Must("kind", &Word(&["onePass"]))]),
]);

const CORNER: Shape = Either(&[
    corner!("box", CUTTER; Must("layout", &LAYOUT), May("first", &Word(&["pin", "socket"]))),
    corner!(
        "dovetail", FINE_CUTTER;
        Must("slope", &SLOPE),
        Must("tails", &Whole(1, 4)),
        PINS,
        May("lap", &Number(1.0, 4.0)),
        May("backLap", &Number(0.0, 4.0)),
        May("pinCutter", &FINE_CUTTER)
    ),
]);

/// Drawers of one opening, or of one outside.
pub(super) const DRAWER_BOX: Shape = Object(&[
    Field::Either(&[
        &[
            Must("size", &OPENING),
            Must("count", &Whole(1, 6)),
            Must("between", &Number(0.0, 20.0)),
            May("heights", &HEIGHTS),
        ],
        &[Must("size", &OUTSIDE), May("count", &Whole(1, 6))],
    ]),
    Must("side", &BOARD),
    Must("front", &BOARD),
    May("back", &BOARD),
    May(
        "applied",
        &Object(&[
            Must("thickness", &Number(6.0, 25.0)),
            Must("lap", &Number(-3.0, 12.0)),
            May("gap", &Number(0.0, 6.0)),
        ]),
    ),
    Must("joint", &CORNER),
    Field::Either(&[
        &[Must("bottom", &bottom!())],
        &[
            Must("bottom", &bottom!()),
            Must("wood", &WOOD),
            Must("climate", &CLIMATE),
        ],
        &[
            Must("bottom", &bottom!(WOOD)),
            May("wood", &WOOD),
            Must("climate", &CLIMATE),
        ],
    ]),
]);
