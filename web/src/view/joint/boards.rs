//! The two boards.

use notchwright_core::units::Unit;
use yew::{Html, classes, html};

use crate::state::{Field, JointField};
use crate::view::context::Context;
use crate::view::field::{self, Entry};

/// A board's field and its label.
type Labelled = (JointField, &'static str);

const FIELDS: [Labelled; 3] = [
    (JointField::Width, "Board width"),
    (JointField::ThicknessA, "A thick"),
    (JointField::ThicknessB, "B thick"),
];

/// The boards of a box joint.
pub(super) fn view(context: Context<'_>) -> Html {
    view_as(FIELDS, context)
}

/// Width and thicknesses in a row, and below it what is wrong with them: the row must not move while
/// somebody types in it.
pub(in crate::view) fn view_as(fields: [Labelled; 3], context: Context<'_>) -> Html {
    let entry = |(field, label)| Entry::new(Field::Joint(field), label).bare().view(context);
    // Inches take more figures.
    let is_in_inches = context.unit() == Unit::Inch;
    let problem = |(field, _)| field::problem(Field::Joint(field), context);
    html! {
        <section class="section" aria-labelledby="boards">
            <h2 id="boards" class="for-readers">{ "Boards" }</h2>
            <div class={classes!("fields", "boards", is_in_inches.then_some("roomy"))}>
                { for fields.map(entry) }
                { for fields.map(problem) }
            </div>
        </section>
    }
}
