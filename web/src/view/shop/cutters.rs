//! Cutters: blades, grooving stacks, straight bits.

use yew::{Html, html};

use super::thing::{Rack, length, line};
use crate::msg::{Edit, Msg, Shelf};
use crate::state::{Cutter, CutterField, Field, GrindKind};
use crate::view::context::Context;
use crate::view::field::Entry;
use crate::view::segment::Segment;

/// The shelf.
pub(super) fn view(context: Context<'_>) -> Html {
    let list = &context.model.state.work.shop.cutters;
    let rack = Rack {
        shelf: Shelf::Cutters,
        title: "Cutters",
        one: "cutter",
        list,
    };
    rack.view(
        |cutter| says(cutter, context),
        |cutter| fields(cutter, context),
        context,
    )
}

fn says(cutter: &Cutter, context: Context<'_>) -> String {
    let grind = match cutter.grind {
        GrindKind::Flat => "flat teeth",
        GrindKind::Alternate => "alternate teeth",
        GrindKind::Slope => "teeth ground to the slope",
    };
    line([
        length("cuts", Field::Cutter(cutter.id, CutterField::Kerf), context),
        Some(grind.into()),
    ])
}

fn fields(cutter: &Cutter, context: Context<'_>) -> Html {
    let id = cutter.id;
    let entry = |field, label: &'static str| Entry::new(Field::Cutter(id, field), label);
    let grind = Segment {
        name: &format!("grind-{id}"),
        legend: "Teeth are ground",
        is_plain: false,
        options: &[
            (GrindKind::Flat, "flat"),
            (GrindKind::Alternate, "alternately sloping"),
            (GrindKind::Slope, "to a dovetail's slope"),
        ],
        chosen: cutter.grind,
    };
    html! {
        <>
            <div class="fields">
                { entry(CutterField::Name, "Name").view(context) }
                { entry(CutterField::Kerf, "Kerf").hint("As a test cut measures, not as the box says.").view(context) }
                { entry(CutterField::Diameter, "Diameter").hint("Blank if it does not matter.").view(context) }
                { entry(CutterField::Overlap, "Passes overlap").hint("Blank for the usual 0.3 mm.").view(context) }
            </div>
            { grind.view(|grind| Msg::Edit(Edit::Grind(id, grind)), context) }
            if cutter.grind == GrindKind::Alternate {
                { entry(CutterField::Bevel, "Bevel of the teeth").unit("°").view(context) }
            }
        </>
    }
}
