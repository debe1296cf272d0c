//! A drawing as SVG: one element for each item, dressed by its role in `drawing.css`.

use notchwright_core::drawing::svg::{anchor as anchored, number, path, view_box};
use notchwright_core::drawing::{Drawing, Item, Shape};
use notchwright_core::units::Mm;
use yew::{AttrValue, Html, classes, html};

/// The drawing; `label` says to readers what is to be seen, `write` puts lengths into the reader's unit.
pub(super) fn view(
    drawing: &Drawing,
    class: &'static str,
    label: impl Into<AttrValue>,
    write: &dyn Fn(Mm) -> String,
) -> Html {
    html! {
        <svg class={classes!("drawing", class)} viewBox={view_box(drawing)} role="img" aria-label={label.into()}>
            { for drawing.items.iter().map(|item| shape(item, write)) }
        </svg>
    }
}

/// The drawing in its true size, for paper.
pub(super) fn full_size(
    drawing: &Drawing,
    label: impl Into<AttrValue>,
    write: &dyn Fn(Mm) -> String,
) -> Html {
    let millimetres = |length| format!("{}mm", number(length));
    html! {
        <svg
            class="drawing full-size"
            width={millimetres(drawing.width)}
            height={millimetres(drawing.height)}
            viewBox={view_box(drawing)}
            role="img"
            aria-label={label.into()}
        >
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
