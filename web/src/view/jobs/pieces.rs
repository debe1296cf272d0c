//! The boards that the open joint is cut on.

use notchwright_core::stop::Board;
use yew::{Html, html};

use crate::msg::{Edit, Msg};
use crate::state::{Ends, Field, JointKind, PiecesField};
use crate::view::context::Context;
use crate::view::field::Entry;
use crate::view::segment::Segment;
use crate::view::show;

/// The section; a sliding dovetail has no stops to count boards for.
pub(super) fn view(context: Context<'_>) -> Html {
    let joint = &context.model.state.work.joint;
    let (a, b) = match joint.kind {
        JointKind::Box => ("board A", "board B"),
        JointKind::Dovetail => ("tail board", "pin board"),
        JointKind::Sliding => return Html::default(),
    };
    let entry = |field, label: String| Entry::new(Field::Pieces(field), label);
    html! {
        <section class="tool" aria-labelledby="pieces">
            <h2 id="pieces">{ "Pieces with the open joint" }</h2>
            <p class="quiet">{ "Every end is named at the saw, and ticked off when it is cut." }</p>
            <div class="fields">
                { entry(PiecesField::What, "What is made".into()).hint("Such as drawer.").view(context) }
                { entry(PiecesField::Count, "How many".into()).view(context) }
            </div>
            { entry(PiecesField::NamesA, format!("Each one's boards that are cut as {a}"))
                .hint("Names between semicolons; blank for a single one.")
                .view(context) }
            { ends(Board::A, joint.pieces.ends_a, context) }
            { entry(PiecesField::NamesB, format!("Each one's boards that are cut as {b}")).view(context) }
            { ends(Board::B, joint.pieces.ends_b, context) }
            <p>{ sum(context) }</p>
        </section>
    }
}

fn ends(board: Board, chosen: Ends, context: Context<'_>) -> Html {
    let (name, legend) = match board {
        Board::A => ("ends-a", "Ends of each that are cut so"),
        Board::B => ("ends-b", "Ends of each that are cut so "),
    };
    let ends = Segment {
        name,
        legend,
        is_plain: false,
        options: &[(Ends::One, "one"), (Ends::Both, "both")],
        chosen,
    };
    ends.view(|ends| Msg::Edit(Edit::Ends(board, ends)), context)
}

fn sum(context: Context<'_>) -> String {
    let pieces = &context.model.answer.pieces;
    let (a, b) = (pieces.count(Board::A), pieces.count(Board::B));
    format!(
        "{} of one board and {} of the other.",
        show::count(a, "end", "ends"),
        show::count(b, "end", "ends")
    )
}
