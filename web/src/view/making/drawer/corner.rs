//! The boards, and the joint at their corners.

use yew::{Html, html};

use super::{all, choice, word};
use crate::msg::{Edit, MakingEdit, Msg};
use crate::state::fields::{Known, drawer};
use crate::state::{Cutter, Id, Item};
use crate::view::context::Context;
use crate::view::select::Select;
use crate::view::tool::{entries, hinted};

/// The section's inside.
pub(super) fn view(context: Context<'_>) -> Html {
    let is_dovetailed = word(drawer::JOINT, context) == "dovetail";
    html! {
        <>
            <div class="fields">
                { entries(all([drawer::SIDE, drawer::FRONT]), context) }
                { hinted(drawer::BACK.alone(), "As thick as the front when blank.", context) }
            </div>
            { choice(drawer::JOINT, &[("", "box joint"), ("dovetail", "dovetails")], context) }
            if is_dovetailed { { dovetails(context) } } else { { fingers(context) } }
            <p class="quiet">{ tools(is_dovetailed, context) }</p>
        </>
    }
}

fn fingers(context: Context<'_>) -> Html {
    let rule = match word(drawer::LAYOUT, context) {
        "count" => Some(drawer::FINGERS),
        "finger" => Some(drawer::FINGER),
        _ => None,
    };
    html! {
        <>
            { choice(drawer::LAYOUT, &[("", "one pass each"), ("finger", "so wide"), ("count", "so many")], context) }
            <div class="fields">{ entries(rule.map(Known::alone), context) }</div>
            { choice(drawer::FIRST, &[("", "a pin"), ("socket", "a socket")], context) }
        </>
    }
}

/// The ways to pins, in the order of the list: their words, what they are called, and what each asks for.
const WAYS: [(&str, &str, &[Known]); 4] = [
    (
        "",
        "by their widths",
        &[drawer::NARROW_PIN, drawer::HALF_PIN],
    ),
    ("ratio", "tail to pin", &[drawer::TAIL_TO_PIN]),
    ("equal", "tails and pins alike", &[]),
    ("narrowest", "as narrow as the blade", &[drawer::HALF_PIN]),
];

fn dovetails(context: Context<'_>) -> Html {
    let chosen = word(drawer::PINS, context);
    let place = WAYS
        .iter()
        .position(|(way, ..)| *way == chosen)
        .unwrap_or_default();
    let asked = WAYS.get(place).map_or(&[][..], |(.., asked)| *asked);
    let choose = context.emit.reform(|index: usize| {
        let way = WAYS.get(index).map_or("", |(way, ..)| *way);
        Msg::Edit(Edit::Making(MakingEdit::Choose(
            drawer::PINS.spot(Id::default()),
            way,
        )))
    });
    let slope = match word(drawer::SLOPE, context) {
        "degrees" => entries(all([drawer::DEGREES]), context),
        _ => hinted(
            drawer::RUN.alone(),
            "Usual: 6 in softwood, 8 in hardwood (common practice).",
            context,
        ),
    };
    let has_lap = all([drawer::LAP, drawer::BACK_LAP])
        .iter()
        .any(|field| !context.text(*field).is_empty());
    let options = WAYS.map(|(_, label, _)| label.into()).to_vec();
    html! {
        <>
            <div class="fields">{ entries(all([drawer::TAILS]), context) }</div>
            <label class="rule">
                <span class="quiet">{ "Pins" }</span>
                <Select id="drawer-pins" label="How the pins are found" {options} chosen={place} {choose} />
            </label>
            <div class="fields">{ entries(asked.iter().map(|field| field.alone()), context) }</div>
            { choice(drawer::SLOPE, &[("", "1 to a number"), ("degrees", "in degrees")], context) }
            <div class="fields">
                { slope }
                { hinted(drawer::LAP.alone(), "Half-blind; blank for through.", context) }
                if has_lap {
                    { hinted(drawer::BACK_LAP.alone(), "As in front when blank; 0 for a through back.", context) }
                }
            </div>
            { pin_cutter(context) }
        </>
    }
}

fn pin_cutter(context: Context<'_>) -> Html {
    let spot = drawer::PIN_CUTTER.spot(Id::default());
    let cutters = context.model.state.work.shop.cutters.items();
    let name = |cutter: &Cutter| cutter.name.text.clone().into();
    let options = std::iter::once("the same cutter".into()).chain(cutters.iter().map(name));
    let chosen = word(drawer::PIN_CUTTER, context);
    let place = cutters
        .iter()
        .position(|cutter| cutter.id().to_string() == chosen);
    let ids: Vec<Id> = cutters.iter().map(Item::id).collect();
    let choose = context.emit.reform(move |index: usize| {
        let id = index.checked_sub(1).and_then(|index| ids.get(index));
        Msg::Edit(Edit::Making(match id {
            Some(id) => MakingEdit::Refer(spot, *id),
            None => MakingEdit::Choose(spot, ""),
        }))
    });
    html! {
        <label class="rule">
            <span class="quiet">{ "Upright cuts and pins with" }</span>
            <Select
                id="drawer-pin-cutter"
                label="Cutter for upright cuts and pins"
                options={options.collect::<Vec<_>>()}
                chosen={place.map_or(0, |place| place + 1)}
                {choose}
            />
        </label>
    }
}

/// What the joint is cut with.
fn tools(is_dovetailed: bool, context: Context<'_>) -> String {
    let shop = &context.model.state.work.shop;
    let cutter = shop.cutters.chosen().map(|it| it.name.text.trim());
    let screw = shop.screws.chosen().map(|it| it.name.text.trim());
    let called = |name: Option<&str>, none: &str| match name {
        None => none.to_owned(),
        Some("") => "the chosen one without a name".to_owned(),
        Some(name) => name.to_owned(),
    };
    format!(
        "{} with the shop's cutter ({}) and screw ({}).",
        if is_dovetailed {
            "Dovetails, the tails on the sides,"
        } else {
            "A box joint"
        },
        called(cutter, "there is none"),
        called(screw, "there is none")
    )
}
