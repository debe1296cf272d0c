//! What a drawing is made of.

use serde::Serialize;

use crate::message::Message;
use crate::units::Mm;

/// A drawing, from its upper left corner.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Drawing {
    /// Extent across, mm.
    pub width: Mm,
    /// Extent downwards, mm.
    pub height: Mm,
    /// What is drawn, later items over earlier ones.
    pub items: Vec<Item>,
}

/// One thing in a drawing; things that play the same part are gathered into one item, so that a
/// consumer needs few elements however many passes there are.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Item {
    /// The part it plays.
    pub role: Role,
    /// Its shape and place.
    #[serde(flatten)]
    pub shape: Shape,
}

/// A place: `x` to the right and `y` downwards from the drawing's upper left corner. On a board, `x`
/// runs from the reference edge and `y` is the depth from the end.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Point {
    /// Across, mm.
    pub x: Mm,
    /// Downwards, mm.
    pub y: Mm,
}

impl Point {
    /// The place at `x` and `y`.
    #[must_use]
    pub fn new(x: Mm, y: Mm) -> Self {
        Self { x, y }
    }
}

/// Shape and place of an item.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase", tag = "shape")]
pub enum Shape {
    /// Closed areas without holes.
    Polygons {
        /// The corners of each.
        polygons: Vec<Vec<Point>>,
    },
    /// Open lines.
    Lines {
        /// The corners of each.
        lines: Vec<Vec<Point>>,
    },
    /// A line of text.
    Text {
        /// Where the anchor is, on the baseline.
        at: Point,
        /// Which part of the text is there.
        anchor: Anchor,
        /// Height of the type, mm.
        size: Mm,
        /// The words, with lengths still to be written in the reader's unit.
        text: Message,
    },
}

/// Which part of a text stands at its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Anchor {
    /// Its left end.
    Start,
    /// Its middle.
    Middle,
    /// Its right end.
    End,
}

macro_rules! roles {
    ($($(#[$doc:meta])* $role:ident $name:literal,)+) => {
        /// The part that an item plays in a drawing.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
        pub enum Role {
            $($(#[$doc])* #[serde(rename = $name)] $role,)+
        }

        impl Role {
            /// Every role, for style sheets and their tests.
            pub const ALL: &[Self] = &[$(Self::$role),+];

            /// The role's name, as it is serialised: lower case, words joined by hyphens.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self {
                    $(Self::$role => $name,)+
                }
            }
        }
    };
}

roles! {
    /// Wood of board A.
    BoardA "board-a",
    /// Wood of board B.
    BoardB "board-b",
    /// Grain of the wood, along the board.
    Grain "grain",
    /// What the cutter leaves: edges, pins, socket floors, and anything left standing.
    Outline "outline",
    /// The same where fingers are so narrow that usual lines would run together.
    FineOutline "fine-outline",
    /// Where the reference edge is.
    ReferenceEdge "reference-edge",
    /// A pass of the cutter.
    Pass "pass",
    /// The pass that is next at the saw.
    CurrentPass "current-pass",
    /// Sockets whose passes are still to come.
    ToCome "to-come",
    /// Wood that no pass reaches.
    Uncut "uncut",
    /// Open space between mating flanks.
    Gap "gap",
    /// Both boards have wood here.
    Clash "clash",
    /// A dimension: its lines, and its number.
    Dimension "dimension",
    /// The letter of a board.
    Letter "letter",
    /// Words beside a thing.
    Words "words",
    /// Ground of an enlarged part, and the frame around it.
    Frame "frame",
    /// From a place to its enlargement.
    Leader "leader",
    /// The saw's table.
    Table "table",
    /// A sled's base, or another piece of sheet.
    SledBase "sled-base",
    /// A rail, a fence or the carriage's face.
    Rail "rail",
    /// The bar that rides in the table's slot.
    Runner "runner",
    /// An open slot or window.
    Opening "opening",
    /// A blade or a bit as it stands.
    Blade "blade",
    /// The line of the blade, or another middle.
    CentreLine "centre-line",
    /// A screw hole.
    Hole "hole",
    /// Where the runner touches the slot, on the table.
    Contact "contact",
    /// Where it would touch, off the table.
    ContactOff "contact-off",
    /// Which way something moves.
    Arrow "arrow",
    /// Axes of a plot.
    Axis "axis",
    /// Places that were measured as readings rose.
    MeasuredUp "measured-up",
    /// Places that were measured as readings fell.
    MeasuredDown "measured-down",
    /// What was fitted to the places.
    Fitted "fitted",
}

#[cfg(test)]
mod tests {
    use super::Role;

    #[test]
    fn roles_have_one_name_each() {
        for (index, role) in Role::ALL.iter().enumerate() {
            let name = role.name();
            assert_eq!(serde_json::to_value(role).unwrap(), name);
            assert!(Role::ALL[..index].iter().all(|other| other.name() != name));
        }
    }
}
