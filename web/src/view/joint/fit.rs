//! How the boards go together.

use yew::{Html, html};

use crate::msg::{Edit, Msg};
use crate::state::{Field, First, JointField};
use crate::view::context::Context;
use crate::view::field::Entry;
use crate::view::segment::Segment;

/// What comes first, the glue gap, and how far pins stand proud.
pub(in crate::view) fn view(context: Context<'_>) -> Html {
    let first = Segment {
        name: "first",
        legend: "At the reference edge, board A has",
        is_plain: false,
        options: &[(First::Pin, "a pin"), (First::Socket, "a socket")],
        chosen: context.model.state.work.joint.first,
    };
    html! {
        <>
            { first.view(|first| Msg::Edit(Edit::First(first)), context) }
            <div class="fields">
                { Entry::new(Field::Joint(JointField::GlueGap), "Glue gap")
                    .hint("At each flank, with the joint centred.")
                    .view(context) }
                { Entry::new(Field::Joint(JointField::Proud), "Pins stand proud")
                    .hint("To be planed flush; blank for none.")
                    .view(context) }
            </div>
        </>
    }
}
