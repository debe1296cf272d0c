//! What solid wood does with the air: the boards, the bottom, and where the drawers will stand.

use notchwright_core::wood::SPECIES;
use yew::{AttrValue, Callback, Html, html};

use super::{all, choice, word};
use crate::msg::{Edit, MakingEdit, Msg};
use crate::state::fields::{Known, drawer};
use crate::view::context::Context;
use crate::view::select::Select;
use crate::view::tool::{entries, folded, hinted};

/// What may move: its species, how it is sawn, and its moisture.
type Piece = [Known; 3];

const BOARDS: Piece = [drawer::WOOD, drawer::SAWN, drawer::MOISTURE];
const BOTTOM: Piece = [
    drawer::BOTTOM_WOOD,
    drawer::BOTTOM_SAWN,
    drawer::BOTTOM_MOISTURE,
];

/// The section, folded away.
pub(super) fn view(context: Context<'_>) -> Html {
    let inside = all([
        drawer::MOISTURE,
        drawer::BOTTOM_MOISTURE,
        drawer::DRIEST,
        drawer::WETTEST,
        drawer::TEMPERATURE,
    ]);
    let [boards, bottom] = [BOARDS, BOTTOM].map(|[species, ..]| word(species, context));
    let says = match (boards, bottom) {
        ("", "") => "nothing that moves".to_owned(),
        (boards, "") => format!("boards of {}", spelled(boards)),
        ("", bottom) => format!("bottom of {}", spelled(bottom)),
        (boards, bottom) => format!(
            "boards of {}, bottom of {}",
            spelled(boards),
            spelled(bottom)
        ),
    };
    let moves = !(boards.is_empty() && bottom.is_empty());
    folded(
        "Swelling",
        says,
        &inside,
        html! {
            <>
                { piece(BOARDS, "As a meter reads it.", context) }
                { piece(BOTTOM, "Its grain runs from side to side.", context) }
                if moves { { air(context) } }
            </>
        },
        context,
    )
}

fn piece([species, sawn, moisture]: Piece, hint: &'static str, context: Context<'_>) -> Html {
    html! {
        <>
            { species_list(species, context) }
            if !word(species, context).is_empty() {
                { choice(sawn, &[("", "flat"), ("quarter", "quarter")], context) }
                <div class="fields">{ hinted(moisture.alone(), hint, context) }</div>
            }
        </>
    }
}

fn air(context: Context<'_>) -> Html {
    let by_humidity = word(drawer::AIR, context).is_empty();
    html! {
        <>
            { choice(drawer::AIR, &[("", "air of this humidity"), ("moisture", "wood of this moisture")], context) }
            <div class="fields">
                { entries(all([drawer::DRIEST, drawer::WETTEST]), context) }
                if by_humidity {
                    { hinted(drawer::TEMPERATURE.alone(), "20 °C when blank.", context) }
                }
            </div>
        </>
    }
}

/// `white-ash` as it is written.
fn spelled(species: &str) -> String {
    species.replace('-', " ")
}

fn species_list(field: Known, context: Context<'_>) -> Html {
    let names: Vec<&'static str> = [""]
        .into_iter()
        .chain(SPECIES.iter().map(|wood| wood.name))
        .collect();
    let species = word(field, context);
    let chosen = names.iter().position(|name| *name == species);
    let options = names.iter().map(|name| match *name {
        "" => AttrValue::from("none that moves: plywood"),
        name => spelled(name).into(),
    });
    let options: Vec<_> = options.collect();
    let spot = field.spot(Default::default());
    let emit = context.emit.clone();
    let choose = Callback::from(move |index: usize| {
        if let Some(name) = names.get(index) {
            emit.emit(Msg::Edit(Edit::Making(MakingEdit::Choose(spot, name))));
        }
    });
    html! {
        <div class="field">
            <label class="box">
                <span class="label">{ spot.label }</span>
                <Select id={field.alone().id()} label={spot.label} {options} chosen={chosen.unwrap_or_default()} {choose} />
            </label>
        </div>
    }
}
