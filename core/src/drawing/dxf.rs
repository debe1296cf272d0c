//! Drawings as DXF files of Release 12 (AC1009): what nearly every drawing and cutting program reads.
//!
//! Lines, closed and open polylines, and texts, each on the layer of its role; one unit is a millimetre, the
//! origin the drawing's lower left corner. Group codes after Autodesk's DXF reference for Release 12, from
//! memory; the tests read the files back with a general-purpose library.

use super::item::{Anchor, Drawing, Item, Point, Role, Shape};
use crate::units::{Mm, write_number};

/// A micrometre.
const DECIMALS: u8 = 3;

/// The drawing as a complete DXF file, its lengths written by `length`.
#[must_use]
pub fn dxf(drawing: &Drawing, length: impl Fn(Mm) -> String) -> String {
    let mut file = File::default();
    file.pair(999, "Notchwright, one unit is a millimetre");
    header(&mut file, drawing);
    tables(&mut file, drawing);
    file.pair(0, "SECTION");
    file.pair(2, "ENTITIES");
    for item in &drawing.items {
        entities(&mut file, item, drawing.height, &length);
    }
    file.pair(0, "ENDSEC");
    file.pair(0, "EOF");
    file.text
}

/// Pairs of a group code and a value, each on a line of its own.
#[derive(Default)]
struct File {
    text: String,
}

impl File {
    fn pair(&mut self, code: u16, value: &str) {
        let code = code.to_string();
        for line in [&*code, value] {
            self.text.push_str(line);
            self.text.push_str("\r\n");
        }
    }

    fn number(&mut self, code: u16, value: Mm) {
        self.pair(code, &write_number(value.mm(), DECIMALS));
    }

    /// A place; `first` is the group code of its x.
    fn place(&mut self, first: u16, x: Mm, y: Mm) {
        self.number(first, x);
        self.number(first + 10, y);
        self.pair(first + 20, "0");
    }

    fn entity(&mut self, kind: &str, role: Role) {
        self.pair(0, kind);
        self.pair(8, &layer(role));
    }
}

fn header(file: &mut File, drawing: &Drawing) {
    file.pair(0, "SECTION");
    file.pair(2, "HEADER");
    file.pair(9, "$ACADVER");
    file.pair(1, "AC1009");
    file.pair(9, "$EXTMIN");
    file.place(10, Mm::ZERO, Mm::ZERO);
    file.pair(9, "$EXTMAX");
    file.place(10, drawing.width, drawing.height);
    file.pair(0, "ENDSEC");
}

fn tables(file: &mut File, drawing: &Drawing) {
    let used = |role: &&Role| drawing.items.iter().any(|item| item.role == **role);
    let roles: Vec<_> = Role::ALL.iter().filter(used).collect();
    file.pair(0, "SECTION");
    file.pair(2, "TABLES");
    file.pair(0, "TABLE");
    file.pair(2, "LAYER");
    file.pair(70, &roles.len().to_string());
    for role in roles {
        file.pair(0, "LAYER");
        file.pair(2, &layer(*role));
        file.pair(70, "0");
        // The colour that is black on paper and white on a dark screen.
        file.pair(62, "7");
        file.pair(6, "CONTINUOUS");
    }
    file.pair(0, "ENDTAB");
    file.pair(0, "ENDSEC");
}

/// Names of layers have capitals, figures and a few signs.
fn layer(role: Role) -> String {
    role.name().to_ascii_uppercase()
}

fn entities(file: &mut File, item: &Item, height: Mm, length: &impl Fn(Mm) -> String) {
    match &item.shape {
        Shape::Polygons { polygons } => {
            for corners in polygons {
                polyline(file, item.role, corners, true, height);
            }
        }
        Shape::Lines { lines } => {
            for corners in lines {
                match corners.as_slice() {
                    [from, to] => line(file, item.role, *from, *to, height),
                    _ => polyline(file, item.role, corners, false, height),
                }
            }
        }
        Shape::Text {
            at,
            anchor,
            size,
            text,
        } => {
            let words = ascii(&text.show(length));
            file.entity("TEXT", item.role);
            file.place(10, at.x, height - at.y);
            // The height of capitals, where a drawing gives that of the type.
            file.number(40, *size * super::sheet::CAP_HEIGHT);
            file.pair(1, &words);
            if *anchor != Anchor::Start {
                file.pair(72, if *anchor == Anchor::Middle { "1" } else { "2" });
                file.place(11, at.x, height - at.y);
            }
        }
    }
}

fn line(file: &mut File, role: Role, from: Point, to: Point, height: Mm) {
    file.entity("LINE", role);
    file.place(10, from.x, height - from.y);
    file.place(11, to.x, height - to.y);
}

fn polyline(file: &mut File, role: Role, corners: &[Point], is_closed: bool, height: Mm) {
    file.entity("POLYLINE", role);
    // Vertices follow.
    file.pair(66, "1");
    file.place(10, Mm::ZERO, Mm::ZERO);
    file.pair(70, if is_closed { "1" } else { "0" });
    for corner in corners {
        file.entity("VERTEX", role);
        file.place(10, corner.x, height - corner.y);
    }
    file.entity("SEQEND", role);
}

/// Signs that the format has codes for, and a question mark for what it cannot hold.
fn ascii(words: &str) -> String {
    let mut text = String::new();
    for letter in words.chars() {
        match letter {
            '°' => text.push_str("%%d"),
            '±' => text.push_str("%%p"),
            '⌀' | 'Ø' => text.push_str("%%c"),
            '%' => text.push_str("%%%"),
            '−' | '–' => text.push('-'),
            '×' => text.push('x'),
            ' '..='~' => text.push(letter),
            _ => text.push('?'),
        }
    }
    text
}
