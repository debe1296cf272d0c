//! The fields of each form by name.

use super::{Group, Spot};
use crate::state::{Field, Id, Kind};

/// A field that a form has.
#[derive(Clone, Copy, Debug)]
pub struct Known {
    group: Group,
    name: &'static str,
    label: &'static str,
    kind: Kind,
}

impl Known {
    const fn new(group: Group, name: &'static str, label: &'static str, kind: Kind) -> Self {
        Self {
            group,
            name,
            label,
            kind,
        }
    }

    /// The field of a row.
    #[must_use]
    pub fn of(self, row: Id) -> Field {
        Field::Making(self.spot(row))
    }

    /// The field of a form that is no row.
    #[must_use]
    pub fn alone(self) -> Field {
        self.of(Id::default())
    }

    /// Where it is.
    #[must_use]
    pub fn spot(self, row: Id) -> Spot {
        let Self {
            group,
            name,
            label,
            kind,
        } = self;
        Spot {
            group,
            row,
            name,
            label,
            kind,
        }
    }

    /// What belongs into it.
    #[must_use]
    pub fn kind(self) -> Kind {
        self.kind
    }

    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        self.name
    }

    /// What it is called in the page.
    #[must_use]
    pub fn label(self) -> &'static str {
        self.label
    }

    /// Which form or list it is of.
    #[must_use]
    pub fn group(self) -> Group {
        self.group
    }
}

macro_rules! fields {
    ($($(#[$doc:meta])* $module:ident of $group:ident {
        $($name:ident: $kind:ident = $word:literal, $label:literal;)+
    })+) => {$(
        $(#[$doc])*
        pub mod $module {
            use super::{Group, Kind, Known};

            /// All of them.
            pub const ALL: &[Known] = &[$($name),+];

            $(
                #[doc = $label]
                pub const $name: Known = Known::new(Group::$group, $word, $label, Kind::$kind);
            )+
        }
    )+};
}

fields! {
    /// Drawers of one opening, or of one outside size.
    drawer of Drawer {
        SIZE: Name = "size", "Measured is";
        SLIDES: Name = "slides", "They run on";
        WIDTH: Length = "width", "Width";
        HEIGHT: Length = "height", "Height";
        DEPTH: Length = "depth", "Depth";
        ROOM: Length = "room", "Room at each side";
        ABOVE: Length = "above", "Room above each";
        BELOW: Length = "below", "Room beneath each";
        BEHIND: Length = "behind", "Room behind";
        COUNT: Number = "count", "Drawers";
        HEIGHTS: Name = "heights", "Heights";
        STEP: Length = "step", "Each higher by";
        RATIO: Number = "ratio", "Each so many times as high";
        BETWEEN: Length = "between", "Divider between two";
        SIDE: Length = "side", "Sides, thickness";
        FRONT: Length = "front", "Front, thickness";
        BACK: Length = "back", "Back, thickness";
        APPLIED: Length = "applied", "Applied front, thickness";
        APPLIED_LAP: Length = "appliedLap", "Reaches past by";
        APPLIED_GAP: Length = "appliedGap", "Gap between two fronts";
        JOINT: Name = "joint", "Corners";
        LAYOUT: Name = "layout", "Fingers";
        FINGERS: Number = "fingers", "Number of fingers";
        FINGER: Length = "finger", "Width of each finger";
        FIRST: Name = "first", "Sides begin below with";
        TAILS: Number = "tails", "Number of tails";
        PINS: Name = "pins", "Pins";
        NARROW_PIN: Length = "narrowPin", "Pin, outer face";
        HALF_PIN: Length = "halfPin", "Half-pin, outer face";
        TAIL_TO_PIN: Number = "tailToPin", "Tail to pin, mid thickness";
        SLOPE: Name = "slope", "Slope of the flanks";
        RUN: Number = "run", "One to";
        DEGREES: Number = "degrees", "Degrees";
        LAP: Length = "lap", "Lap";
        BACK_LAP: Length = "backLap", "Lap at the back";
        PIN_CUTTER: Name = "pinCutter", "Cutter for the pins";
        BOTTOM: Length = "bottom", "Bottom, thickness";
        BOTTOM_ROOM: Length = "bottomRoom", "Room around the bottom";
        GROOVE_FROM: Length = "grooveFrom", "Lower edge to groove";
        GROOVE_DEPTH: Length = "grooveDepth", "Groove depth";
        GROOVE_BIT: Length = "grooveBit", "Bit for the groove";
        GROOVE_ROOM: Length = "grooveRoom", "Groove wider than bottom";
        WOOD: Name = "wood", "Wood of the boards";
        SAWN: Name = "sawn", "Boards are sawn";
        MOISTURE: Number = "moisture", "Boards' moisture now, %";
        BOTTOM_WOOD: Name = "bottomWood", "Wood of the bottom";
        BOTTOM_SAWN: Name = "bottomSawn", "The bottom is sawn";
        BOTTOM_MOISTURE: Number = "bottomMoisture", "Bottom's moisture now, %";
        AIR: Name = "air", "It will stand in";
        DRIEST: Number = "driest", "At the driest, %";
        WETTEST: Number = "wettest", "At the dampest, %";
        TEMPERATURE: Number = "temperature", "Air, °C";
    }

    /// A part.
    part of Parts {
        NAME: Name = "name", "Name";
        COUNT: Number = "count", "Pieces";
        LENGTH: Sum = "length", "Length";
        WIDTH: Sum = "width", "Width";
        STOCK: Name = "stock", "Stock";
        MAY_TURN: Name = "mayTurn", "Grain";
        TRIM: Sum = "trim", "To trim, each side";
        LATER: Name = "later", "Cut";
        FROM: Name = "from", "Comes from";
    }

    /// What parts are cut from.
    stock of Stocks {
        NAME: Name = "name", "Name";
        THICKNESS: Length = "thickness", "Measured";
        FORMER: Length = "former", "Thickness before";
        FROM: Name = "from", "Comes from";
    }

    /// A sheet, a board or an off-cut.
    sheet of Sheets {
        NAME: Name = "name", "Name";
        STOCK: Name = "stock", "Stock";
        LENGTH: Length = "length", "Length";
        WIDTH: Length = "width", "Width";
        GRAIN: Name = "grain", "Grain";
        EDGE_TRIM: Length = "edgeTrim", "To trim, each edge";
        QUANTITY: Number = "quantity", "Count";
        PRICE: Number = "price", "Price of one";
        MASS: Number = "mass", "Mass of one, kg";
        OFFCUT: Name = "offcut", "What it is";
    }

    /// How sheets are cut up.
    cutting of Cutting {
        KERF: Length = "kerf", "Kerf of the saw";
        ROUGH: Name = "rough", "Large sheets";
        LONGEST: Length = "longest", "Longest to lift";
        WIDEST: Length = "widest", "Widest to lift";
        HEAVIEST: Number = "heaviest", "Heaviest to lift, kg";
        ALLOWANCE: Length = "allowance", "Left beside the cut";
        ROUGH_KERF: Length = "roughKerf", "Kerf of the hand-held saw";
        LEAST_LENGTH: Length = "leastLength", "Worth keeping, length";
        LEAST_WIDTH: Length = "leastWidth", "Worth keeping, width";
        CUT: Name = "cut", "Cuts made";
    }

    /// A length with a name.
    measure of Measures {
        NAME: Name = "name", "Name";
        VALUE: Sum = "value", "Length";
        FROM: Name = "from", "Comes from";
    }
}
