//! Drawings as SVG text, for files; the page builds its own elements from the same paths.

use core::fmt::Write;

use super::item::{Anchor, Drawing, Item, Point, Shape};
use crate::units::{Mm, write_number};

/// A micrometre: finer than any screen or printer.
const DECIMALS: u8 = 3;

/// The drawing as a complete SVG file of the same names as its roles, its lengths written by `length`.
///
/// `style` is put in as it stands: rules for the classes, which are the roles' names. Roles look like
/// nothing without it.
#[must_use]
pub fn svg(drawing: &Drawing, style: &str, length: impl Fn(Mm) -> String) -> String {
    let mut text = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"{}\">\n<style>\n{style}</style>\n",
        view_box(drawing)
    );
    for item in &drawing.items {
        element(item, &length, &mut text);
    }
    text.push_str("</svg>\n");
    text
}

/// The value of `viewBox` that shows all of a drawing.
#[must_use]
pub fn view_box(drawing: &Drawing) -> String {
    format!("0 0 {} {}", number(drawing.width), number(drawing.height))
}

/// The value of `d` for a path along these corners, one subpath for each.
#[must_use]
pub fn path(lines: &[Vec<Point>], closed: bool) -> String {
    let mut d = String::new();
    for corners in lines {
        for (index, corner) in corners.iter().enumerate() {
            d.push(if index == 0 { 'M' } else { 'L' });
            d.push_str(&number(corner.x));
            d.push(' ');
            d.push_str(&number(corner.y));
        }
        if closed {
            d.push('Z');
        }
    }
    d
}

/// The value of `text-anchor`.
#[must_use]
pub const fn anchor(anchor: Anchor) -> &'static str {
    match anchor {
        Anchor::Start => "start",
        Anchor::Middle => "middle",
        Anchor::End => "end",
    }
}

/// A length as a number of user units, which are millimetres.
#[must_use]
pub fn number(length: Mm) -> String {
    write_number(length.mm(), DECIMALS)
}

fn element(item: &Item, length: &impl Fn(Mm) -> String, text: &mut String) {
    let class = item.role.name();
    // Writing to a string cannot fail.
    let _ = match &item.shape {
        Shape::Polygons { polygons } => writeln!(
            text,
            "<path class=\"{class}\" d=\"{}\"/>",
            path(polygons, true)
        ),
        Shape::Lines { lines } => writeln!(
            text,
            "<path class=\"{class} line\" d=\"{}\"/>",
            path(lines, false)
        ),
        Shape::Text {
            at,
            anchor: side,
            size,
            text: message,
        } => writeln!(
            text,
            "<text class=\"{class}\" x=\"{}\" y=\"{}\" font-size=\"{}\" text-anchor=\"{}\">{}</text>",
            number(at.x),
            number(at.y),
            number(*size),
            anchor(*side),
            escaped(&message.show(length)),
        ),
    };
}

fn escaped(words: &str) -> String {
    words
        .replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
}
