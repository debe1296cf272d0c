//! Every numeric bound of a request, in one table that also writes the messages.
//!
//! The bounds are wide: they keep out slips of the finger and what the arithmetic could not carry,
//! not unusual work. What is merely unusual gets a note instead.

/// What a bounded number counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// Millimetres, shown in the reader's unit.
    Length,
    /// Degrees.
    Degrees,
    /// A plain number.
    Number,
}

/// The range of one kind of field, both ends allowed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limit {
    /// What the field is called in a sentence: "The board's width".
    pub name: &'static str,
    /// Least value allowed.
    pub least: f64,
    /// Greatest value allowed.
    pub most: f64,
    /// What both count.
    pub unit: Unit,
    /// Why the range ends where it does.
    pub reason: &'static str,
}

const fn length(name: &'static str, least: f64, most: f64, reason: &'static str) -> Limit {
    Limit {
        name,
        least,
        most,
        unit: Unit::Length,
        reason,
    }
}

const fn number(name: &'static str, least: f64, most: f64, reason: &'static str) -> Limit {
    Limit {
        name,
        least,
        most,
        unit: Unit::Number,
        reason,
    }
}

macro_rules! limits {
    ($($(#[$doc:meta])* $name:ident = $value:expr;)+) => {
        $($(#[$doc])* pub const $name: Limit = $value;)+
        /// Every limit, for tests and documentation.
        pub const ALL: &[Limit] = &[$($name),+];
    };
}

limits! {
    /// Width of a board, mm.
    BOARD_WIDTH = length("The board's width", 2.0, 3000.0, "wider than any panel that stands on a sled");
    /// Thickness of a board, mm.
    BOARD_THICKNESS = length("The board's thickness", 0.5, 200.0, "thicker than any saw cuts in one pass");
    /// Width of cut of a cutter, mm.
    KERF = length("The kerf", 0.2, 60.0, "from a slitting saw to the widest grooving stack");
    /// Width of a shim, mm.
    SHIM = length("The shim", 0.01, 10.0, "from foil to a chipper");
    /// Kerfs side by side in one slot.
    KERFS_IN_SLOT = number("The number of kerfs", 1.0, 1000.0, "nobody counts more");
    /// Step from kerf to kerf in a slot, mm.
    STEP = length("The step", 0.0, 60.0, "less than a kerf");
    /// Width of a slot of several kerfs, mm.
    SLOT_WIDTH = length("The slot's width", 0.2, 3000.0, "within a board");
    /// Diameter of a cutter, mm.
    DIAMETER = length("The cutter's diameter", 1.0, 1000.0, "from a router bit to the largest saw blade");
    /// Overlap of neighbouring passes, mm.
    OVERLAP = length("The overlap of passes", 0.0, 30.0, "at most half the kerf");
    /// Travel of the carriage per turn, mm.
    LEAD = length("The screw's lead", 0.05, 100.0, "from a micrometer to a fast multi-start screw");
    /// Threads per inch.
    THREADS_PER_INCH = number("Threads per inch", 0.25, 500.0, "the same range as the lead");
    /// Graduations of the wheel.
    DIVISIONS = number("The wheel's divisions", 1.0, 10_000.0, "more could not be read");
    /// Lost motion of the screw, mm.
    BACKLASH = length("The backlash", 0.0, 25.0, "more is not a screw");
    /// Travel of the carriage, mm.
    TRAVEL = length("The carriage's travel", 1.0, 5000.0, "longer than any sled");
    /// A reading of the dial or a distance to a test kerf, mm.
    READING = length("The reading", -5000.0, 5000.0, "longer than any screw");
    /// Glue gap at each flank, mm.
    GLUE_GAP = length("The glue gap", 0.0, 2.0, "glue bridges no more");
    /// How far pins stand proud, mm.
    PROUD = length("The pins' projection", 0.0, 200.0, "at most the board's thickness");
    /// Width of a finger, mm.
    FINGER = length("The finger's width", 0.2, 1500.0, "half of the widest board");
    /// Number of fingers, pins and sockets together.
    FINGER_COUNT = number("The number of fingers", 2.0, 500.0, "nobody cuts more");
    /// Number of tails.
    TAILS = number("The number of tails", 1.0, 60.0, "nobody cuts more");
    /// Narrow width of a pin or a half-pin, mm.
    PIN = length("The pin's narrow width", 0.1, 1500.0, "half of the widest board");
    /// Run of a slope, for a rise of 1.
    SLOPE_RUN = number("The slope's run", 1.0, 500.0, "from 45° to what nobody can see");
    /// A slope, degrees.
    SLOPE_ANGLE = Limit { name: "The slope", least: 0.1, most: 45.0, unit: Unit::Degrees, reason: "from what nobody can see to what no blade leans to" };
    /// Tail to pin at mid thickness.
    TAIL_TO_PIN = number("Tail to pin", 0.1, 100.0, "beyond any proportion that is cut");
    /// Lap of a half-blind joint, mm.
    LAP = length("The lap", 0.0, 200.0, "less than the board's thickness");
    /// Number of passes for one joint.
    PASSES = number("The number of passes", 1.0, 2000.0, "nobody has the patience for more");
    /// A weight of a pattern.
    WEIGHT = number("A weight of the pattern", 1e-3, 1e6, "a space of no width is no space");
    /// Bevel of an alternately ground tooth, degrees.
    BEVEL = Limit { name: "The tooth's bevel", least: 0.0, most: 45.0, unit: Unit::Degrees, reason: "blades are ground from 5° to 40° (FDMC magazine)" };
    /// Distance of a groove from an edge, mm.
    GROOVE_PLACE = length("The groove's distance", 0.0, 3000.0, "within the board");
    /// Width of a groove, mm.
    GROOVE_WIDTH = length("The groove's width", 0.2, 200.0, "within the board");
    /// Depth of a groove, mm.
    GROOVE_DEPTH = length("The groove's depth", 0.1, 200.0, "within the board");
    /// Diameter of a router bit, mm.
    BIT = length("The bit's diameter", 0.5, 100.0, "from engraving to panel raising");
    /// Flank of a dovetail bit to its axis, degrees.
    FLANK = Limit { name: "The bit's flank", least: 1.0, most: 45.0, unit: Unit::Degrees, reason: "bits are ground from 7° to 18° (general articles)" };
    /// Blade to slot, mm.
    SLOT_PLACE = length("The distance to the slot", 5.0, 1000.0, "within a table");
    /// Part of a table's length, mm.
    TABLE = length("The table's length to the arbor", 10.0, 3000.0, "longer than any table");
    /// Width or length of a sled's base, mm.
    SLED = length("The base's size", 20.0, 3000.0, "larger than any sled");
    /// A place on a sled, mm.
    ON_SLED = length("The place on the sled", 0.0, 3000.0, "within the largest base");
    /// A place on a runner, which may reach past the base, mm.
    ON_RUNNER = length("The contact's place", -2000.0, 5000.0, "beyond any runner");
    /// Width of a runner, mm.
    RUNNER_WIDTH = length("The runner's width", 1.0, 200.0, "wider than any slot");
    /// Side play, mm.
    PLAY = length("The play", 0.0, 10.0, "more is not a fit");
    /// A margin, a clearance or an overrun, mm.
    MARGIN = length("The distance", 0.0, 500.0, "more than any sled needs");
    /// Depth of a cut, mm.
    CUT_DEPTH = length("The depth of cut", 0.1, 400.0, "deeper than any blade");
    /// Table left over, mm.
    LEFT_OVER = length("The table left over", -3000.0, 3000.0, "longer than any table");
    /// Width of a test strip, mm.
    STRIP = length("The strip's width", 0.1, 1000.0, "wider than any strip");
    /// Length of a test strip, mm.
    STRIP_LENGTH = length("The distance", 10.0, 5000.0, "from a small panel to the longest fence");
    /// Uncertainty of a reading, mm.
    UNCERTAINTY = length("The reading's uncertainty", 0.0, 5.0, "more is not a measurement");
    /// Points of a screw check.
    POINTS = number("The number of points", 3.0, 500.0, "nobody measures more");
    /// Blade height a saw reaches above its table, mm.
    SAW_HEIGHT = length("The saw's greatest height", 1.0, 500.0, "taller than any saw");
    /// Thickness of the sled's base, mm.
    SLED_BASE = length("The base's thickness", 0.0, 100.0, "thicker than any base");
    /// A length to be written, mm.
    WRITTEN = length("The length", -1e6, 1e6, "beyond a kilometre");
    /// Parts of an inch that a length is written in.
    INCH_PARTS = number("The finest part of an inch", 1.0, 1024.0, "finer than any rule is marked");
    /// Thickness of what parts are cut from, mm.
    STOCK = length("The stock's thickness", 0.1, 500.0, "from veneer to timber");
    /// Length or width of a part, mm.
    PART = length("The part's size", 0.5, 20_000.0, "longer than any board");
    /// What a part is cut larger by on each side, mm.
    TRIM = length("The trim", 0.0, 200.0, "more is a part of its own");
    /// How many of a part.
    PIECES = number("The count", 1.0, 999.0, "nobody cuts more");
    /// Number of a part.
    PART_NUMBER = number("The part's number", 1.0, 9999.0, "twenty lists in a row");
    /// Temperature of the air, °C.
    TEMPERATURE = number("The temperature", -1.1, 54.4, "as table 4-2 of the Wood Handbook, from memory");
    /// Relative humidity of the air, percent.
    HUMIDITY = number("The relative humidity", 5.0, 95.0, "as table 4-2 of the Wood Handbook");
    /// Moisture of wood, percent.
    MOISTURE = number("The wood's moisture", 0.0, 30.0, "wood does not move above its fibre saturation, about 30 %");
    /// Shrinkage from green to oven-dry, percent.
    SHRINKAGE = number("The shrinkage", 0.5, 20.0, "from along the grain to the most of any wood across it");
    /// Number of drawers in one opening.
    DRAWERS = number("The number of drawers", 1.0, 60.0, "more than any chest");
    /// Width, height or depth of a drawer or of its opening, mm.
    DRAWER = length("The size", 20.0, 3000.0, "from a trinket box to a plan chest");
    /// Space around a drawer, mm.
    CLEARANCE = length("The clearance", 0.0, 300.0, "more is no drawer's opening");
    /// Divider or gap between two drawers, mm.
    BETWEEN = length("The divider", 0.0, 300.0, "thicker than any divider");
    /// How much higher each drawer is than the one above, mm.
    GRADUATION = length("The step from drawer to drawer", 0.1, 500.0, "more than any chest");
    /// How many times as high each drawer is as the one above.
    GRADUATION_RATIO = number("The ratio from drawer to drawer", 1.001, 4.0, "from what nobody sees to what nobody builds");
    /// Room left around a panel in its groove, mm.
    PANEL_CLEARANCE = length("The panel's clearance", 0.0, 50.0, "less than any groove's depth");
    /// How far an applied front reaches past what is behind it, mm; negative within it.
    FRONT_LAP = length("The front's lap", -50.0, 200.0, "from a deep inset to the widest overlay");
    /// Side of a sheet, or of an off-cut on hand, mm.
    SHEET_SIDE = length("The sheet's side", 10.0, 10_000.0, "longer than any sheet is made");
    /// Side of a part, mm.
    PART_SIDE = length("The part's side", 1.0, 10_000.0, "longer than any sheet");
    /// Side of an off-cut worth keeping, mm.
    OFFCUT = length("The off-cut's side", 0.0, 10_000.0, "longer than any sheet");
    /// Width of cut through a sheet, mm.
    SAW_KERF = length("The kerf", 0.0, 20.0, "from a knife to more than any saw blade");
    /// Kinds of sheets.
    SHEET_KINDS = number("The number of kinds of sheets", 1.0, 50.0, "no rack holds more");
    /// Sheets of one kind.
    SHEETS = number("The number of sheets", 1.0, 2000.0, "as many as there may be pieces");
    /// Entries of a parts list.
    PARTS = number("The number of parts", 1.0, 500.0, "more are several jobs");
    /// Pieces to be laid out together.
    PIECES_LAID = number("The number of pieces", 1.0, 2000.0, "more are several jobs");
    /// Number of a part in its list.
    LAID_NUMBER = number("The part's number", 0.0, 1e6, "nobody numbers higher");
    /// Price of a sheet, in any money.
    PRICE = number("The price", 0.0, 1e6, "no sheet costs more");
    /// Mass of a sheet, kg.
    SHEET_MASS = number("The mass", 0.01, 1000.0, "from a leaf of veneer to what no person lifts");
    /// Rounds of a search.
    ROUNDS = number("The number of rounds", 0.0, 1e6, "a night on a phone");
}

#[cfg(test)]
mod tests {
    #[test]
    fn every_range_is_a_range() {
        for limit in super::ALL {
            assert!(limit.least < limit.most, "{}", limit.name);
            assert!(!limit.reason.is_empty(), "{}", limit.name);
        }
    }
}
