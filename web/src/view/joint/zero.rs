//! Where the dial reads zero.

use yew::{Html, html};

use crate::msg::{Edit, Msg};
use crate::state::{Field, JointField, ZeroKind};
use crate::view::context::Context;
use crate::view::field::Entry;
use crate::view::segment::Segment;

/// The three ways, each with a line about it.
pub(in crate::view) fn view(context: Context<'_>) -> Html {
    let kind = context.model.state.work.joint.zero.kind;
    let ways = Segment {
        name: "zero",
        legend: "The dial reads zero",
        is_plain: false,
        options: &[
            (ZeroKind::Touch, "touching"),
            (ZeroKind::Flush, "flush"),
            (ZeroKind::TestKerf, "by a test kerf"),
        ],
        chosen: kind,
    };
    html! {
        <div class="section">
            { ways.view(|kind| Msg::Edit(Edit::Zero(kind)), context) }
            <p class="quiet">{ explained(kind) }</p>
            if kind == ZeroKind::TestKerf {
                <div class="fields">
                    { Entry::new(Field::Joint(JointField::ZeroReading), "The dial read")
                        .hint("Carriage travel at which the test kerf was cut.")
                        .view(context) }
                    { Entry::new(Field::Joint(JointField::ZeroMeasured), "Edge to kerf")
                        .hint("Reference edge to the nearer side of that kerf.")
                        .view(context) }
                </div>
            }
        </div>
    }
}

fn explained(kind: ZeroKind) -> &'static str {
    match kind {
        ZeroKind::Touch => {
            "Zero is where the board's reference edge just touches the side of the stopped cutter."
        }
        ZeroKind::Flush => {
            "Zero is where the cutter's outer side is flush with the reference edge: a cut there takes the edge away."
        }
        ZeroKind::TestKerf => {
            "Cut one kerf anywhere, note the reading, and measure where the kerf came."
        }
    }
}

/// In a word or two.
pub(super) fn short(kind: ZeroKind) -> &'static str {
    match kind {
        ZeroKind::Touch => "touching",
        ZeroKind::Flush => "flush",
        ZeroKind::TestKerf => "by test kerf",
    }
}
