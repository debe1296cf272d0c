//! Which sled on which saw, and everything that is measured of both.

use yew::{AttrValue, Callback, Html, html};

use crate::msg::{Edit, Msg, Shelf};
use crate::state::{
    CutField, CutterField, Field, Item, List, MeasuredFrom, Named, Saw, SawField, Section, Side,
    Sled, SledField,
};
use crate::view::context::Context;
use crate::view::segment::Segment;
use crate::view::select::Select;
use crate::view::tool::{entries, entry, folded, hinted, said};

/// The form.
pub(super) fn form(context: Context<'_>) -> Html {
    let shop = &context.model.state.work.shop;
    html! {
        <>
            { pair(context) }
            { for shop.saws.chosen().map(|saw| table(saw, context)) }
            { for shop.sleds.chosen().map(|sled| sled_measures(sled, context)) }
            { blade(context) }
            { measured(context) }
        </>
    }
}

/// The pair, and the cutter on the arbor.
pub(super) fn pair(context: Context<'_>) -> Html {
    let shop = &context.model.state.work.shop;
    html! {
        <section class="section pair" aria-label="Saw, sled and cutter">
            { choice("Saw", Shelf::Saws, &shop.saws, context) }
            { choice("Sled", Shelf::Sleds, &shop.sleds, context) }
            { choice("Cutter", Shelf::Cutters, &shop.cutters, context) }
        </section>
    }
}

/// One of a shelf's things, chosen in the device's own list.
pub(super) fn choice<T: Named>(
    label: &'static str,
    shelf: Shelf,
    list: &List<T>,
    context: Context<'_>,
) -> Html {
    let ids: Vec<_> = list.items().iter().map(Item::id).collect();
    let named = |item: &T| match item.name().text.trim() {
        "" => AttrValue::from("without a name"),
        name => AttrValue::from(name.to_owned()),
    };
    let options: Vec<_> = list.items().iter().map(named).collect();
    let chosen = ids.iter().position(|id| list.is_chosen(*id)).unwrap_or(0);
    let emit = context.emit.clone();
    let choose = Callback::from(move |index: usize| {
        if let Some(id) = ids.get(index) {
            emit.emit(Msg::Edit(Edit::Choose(shelf, *id)));
        }
    });
    html! {
        <label class="rule">
            <span class="quiet">{ label }</span>
            <Select id={format!("choose-{label}")} {label} {options} {chosen} {choose} />
        </label>
    }
}

fn table(saw: &Saw, context: Context<'_>) -> Html {
    let field = |field| Field::Saw(saw.id, field);
    let id = saw.id;
    let side = Segment {
        name: "slot-side",
        legend: "The runner's slot, seen from the operator",
        is_plain: false,
        options: &[
            (Side::Left, "left of the blade"),
            (Side::Right, "right of it"),
        ],
        chosen: saw.side,
    };
    let from = Segment {
        name: "measured-from",
        legend: "Measured from the blade's",
        is_plain: false,
        options: &[
            (MeasuredFrom::NearTooth, "nearer tooth"),
            (MeasuredFrom::Centre, "middle"),
        ],
        chosen: saw.measured_from,
    };
    let section = Segment {
        name: "section",
        legend: "Section of the slots",
        is_plain: false,
        options: &[(Section::Plain, "plain"), (Section::T, "T-shaped")],
        chosen: saw.section,
    };
    let fields = SawField::ALL.iter().skip(1).map(|of| field(*of));
    let fields: Vec<_> = fields.collect();
    let says = said(
        &[SawField::ToSlot, SawField::Front, SawField::Rear].map(field),
        context,
    );
    folded(
        "The saw's table",
        says,
        &fields,
        html! {
            <>
                { side.view(|side| Msg::Edit(Edit::Side(id, side)), context) }
                { from.view(|from| Msg::Edit(Edit::MeasuredFrom(id, from)), context) }
                <div class="fields">
                    { entry(field(SawField::ToSlot), context) }
                    { hinted(field(SawField::SecondSlot), "Blank for a single runner.", context) }
                    { entries([SawField::Front, SawField::Rear, SawField::GreatestHeight].map(field), context) }
                </div>
                { section.view(|section| Msg::Edit(Edit::Section(id, section)), context) }
            </>
        },
        context,
    )
}

fn sled_measures(sled: &Sled, context: Context<'_>) -> Html {
    let field = |field| Field::Sled(sled.id, field);
    let fields = SledField::ALL.iter().skip(1).map(|of| field(*of));
    let fields: Vec<_> = fields.collect();
    let says = said(
        &[SledField::Width, SledField::Length, SledField::Base].map(field),
        context,
    );
    folded(
        "The sled",
        says,
        &fields,
        html! {
            <>
                <p class="quiet">{ "Distances along the feed count from the base's near edge, the operator's." }</p>
                <div class="fields">
                    { entries([
                        SledField::Width,
                        SledField::Length,
                        SledField::Base,
                    ].map(field), context) }
                    { hinted(field(SledField::BladeLine), "Blank: in the middle.", context) }
                    { entries([
                        SledField::CarriageFace,
                        SledField::FrontRail,
                        SledField::RunnerWidth,
                        SledField::Margin,
                        SledField::ContactNear,
                        SledField::ContactFar,
                    ].map(field), context) }
                    { hinted(field(SledField::Travel), "Of the screw, sideways.", context) }
                    { hinted(field(SledField::HoleClearance), "Blank for round holes.", context) }
                </div>
                { hinted(field(SledField::Holes), "One after another, with semicolons between.", context) }
            </>
        },
        context,
    )
}

fn blade(context: Context<'_>) -> Html {
    let cutter = context.model.state.work.shop.cutters.chosen();
    let of_cutter = cutter.map(|cutter| {
        [CutterField::Diameter, CutterField::Kerf].map(|field| Field::Cutter(cutter.id, field))
    });
    let cut = [
        CutField::Depth,
        CutField::Thickness,
        CutField::Width,
        CutField::Clearance,
        CutField::Over,
    ];
    let fields: Vec<_> = of_cutter
        .into_iter()
        .flatten()
        .chain(cut.map(Field::Cut))
        .collect();
    folded(
        "Blade and cut",
        said(&fields, context),
        &fields,
        html! {
            <>
                <p class="quiet">{ "What is left blank of the cut is the joint's." }</p>
                <div class="fields">
                    { entries(of_cutter.into_iter().flatten(), context) }
                    { entries([
                        CutField::Depth,
                        CutField::Thickness,
                        CutField::Width,
                    ].map(Field::Cut), context) }
                    { hinted(Field::Cut(CutField::Clearance), "Before the cut; blank for 5 mm.", context) }
                    { hinted(Field::Cut(CutField::Over), "At the end; blank for 2 mm.", context) }
                </div>
            </>
        },
        context,
    )
}

fn measured(context: Context<'_>) -> Html {
    let fields = [CutField::Near, CutField::Far, CutField::Play].map(Field::Cut);
    folded(
        "Measured on the saw",
        said(&fields, context),
        &fields,
        html! {
            <>
                <p class="quiet">
                    { "Table beyond the runner's outermost contact: at the near end with the sled pulled back, at the \
                       far end pushed through. Off the table counts below zero." }
                </p>
                <div class="fields">{ entries(fields, context) }</div>
            </>
        },
        context,
    )
}
