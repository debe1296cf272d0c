//! The two boards.

use yew::{Html, html};

use crate::state::{Field, JointField};
use crate::view::context::Context;
use crate::view::field::Entry;

/// Width and thicknesses.
pub(super) fn view(context: Context<'_>) -> Html {
    let entry = |field, label: &'static str| Entry::new(Field::Joint(field), label).view(context);
    html! {
        <section class="section" aria-labelledby="boards">
            <h2 id="boards" class="for-readers">{ "Boards" }</h2>
            <div class="fields boards">
                { entry(JointField::Width, "Board width") }
                { entry(JointField::ThicknessA, "A thick") }
                { entry(JointField::ThicknessB, "B thick") }
            </div>
        </section>
    }
}
