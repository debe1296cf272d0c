//! A drawing as SVG: one element for each item, dressed by its role in `drawing.css`.

use std::fmt::Write as _;

use notchwright_core::drawing::{Anchor, Drawing, Item, Point, Shape};
use notchwright_core::units::{Mm, write_number};
use yew::{AttrValue, Html, classes, html};

/// The drawing; `label` says to readers what is to be seen, `write` puts lengths into the reader's unit.
pub(super) fn view(
    drawing: &Drawing,
    class: &'static str,
    label: impl Into<AttrValue>,
    write: &dyn Fn(Mm) -> String,
) -> Html {
    let box_ = format!("0 0 {} {}", number(drawing.width), number(drawing.height));
    html! {
        <svg class={classes!("drawing", class)} viewBox={box_} role="img" aria-label={label.into()}>
            { for drawing.items.iter().map(|item| shape(item, write)) }
        </svg>
    }
}

fn shape(item: &Item, write: &dyn Fn(Mm) -> String) -> Html {
    let role = item.role.name();
    match &item.shape {
        Shape::Polygons { polygons } => {
            html! { <path class={classes!("area", role)} d={path(polygons, true)} /> }
        }
        Shape::Lines { lines } => {
            html! { <path class={classes!("line", role)} d={path(lines, false)} /> }
        }
        Shape::Text {
            at,
            anchor,
            size,
            text,
        } => html! {
            <text
                class={role}
                x={number(at.x)}
                y={number(at.y)}
                font-size={number(*size)}
                text-anchor={anchored(*anchor)}
            >{ text.show(write) }</text>
        },
    }
}

fn anchored(anchor: Anchor) -> &'static str {
    match anchor {
        Anchor::Start => "start",
        Anchor::Middle => "middle",
        Anchor::End => "end",
    }
}

fn path(parts: &[Vec<Point>], closed: bool) -> String {
    let mut path = String::new();
    for part in parts {
        for (index, point) in part.iter().enumerate() {
            let verb = if index == 0 { 'M' } else { 'L' };
            let _ = write!(path, "{verb}{} {}", number(point.x), number(point.y));
        }
        if closed {
            path.push('Z');
        }
    }
    path
}

/// To the hundredth of a millimetre, finer than any screen.
fn number(length: Mm) -> String {
    write_number(length.mm(), 2)
}
