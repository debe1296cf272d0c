//! The card for the shop: what one needs of a joint at the saw, on one sheet of paper where it fits. Only
//! [`view`] may be called from elsewhere, and only once this part of the program has come.

mod set;

use yew::{Html, classes, html};

use super::context::Context;
use super::{drawing, joint, show};
use crate::answer::{Cut, Of};
use crate::export::pictures;
use crate::state::{Field, JointField, PaperSize};

/// The card, and after it full-size templates where they are wanted.
#[inline(never)]
pub(super) fn view(cut: Cut<'_>, context: Context<'_>) -> Html {
    html! {
        <main class={classes!("shop-card", "for-paper", letter(context))} aria-hidden="true">
            <header>
                <div>
                    <h1>{ context.text(Field::Job) }</h1>
                    <p class="joint-name">{ context.text(Field::Joint(JointField::Name)) }</p>
                    <p>{ measures(cut.of, context) }</p>
                    <p class="quiet">{ date(context) }</p>
                </div>
                { for super::jobs::qr::view(context) }
            </header>
            { for pictures::boards(cut.of).map(|picture| {
                drawing::view(&picture, "boards", "Both boards as cut", &|length| show::bare(length, context.unit()))
            }) }
            { for cut.sets.iter().enumerate().map(|(index, of)| set::view(index, of, cut, context)) }
            <section class="cautions">{ joint::cautions(cut.notes, context) }</section>
            { templates(cut, context) }
        </main>
    }
}

fn letter(context: Context<'_>) -> Option<&'static str> {
    (context.model.state.sled.paper == PaperSize::Letter).then_some("letter")
}

fn measures(of: Of<'_>, context: Context<'_>) -> String {
    let [a, b] = match of {
        Of::Box(_) => ["A", "B"],
        Of::Dovetail(_) => ["tail board", "pin board"],
    };
    let length = |field| context.typed_length(Field::Joint(field));
    format!(
        "Boards {} wide, {a} {} thick, {b} {} thick. Cutter: {}.",
        length(JointField::Width),
        length(JointField::ThicknessA),
        length(JointField::ThicknessB),
        joint::cutter_line(context)
    )
}

fn date(context: Context<'_>) -> String {
    let today = &context.model.today;
    if today.is_empty() {
        "Cut a test joint in scrap first.".to_owned()
    } else {
        format!("Printed {today}. Cut a test joint in scrap first.")
    }
}

/// The template's sheets at full size, where they are wanted.
fn templates(cut: Cut<'_>, context: Context<'_>) -> Html {
    let state = &context.model.state;
    if !state.templates {
        return Html::default();
    }
    let sheets = pictures::template(cut.of, state).into_iter();
    let sheet = |sheet| {
        let write = |length| show::bare(length, context.unit());
        let sheet = drawing::full_size(&sheet, "A sheet of the template", &write);
        html! { <div class={classes!("tile", letter(context))}>{ sheet }</div> }
    };
    sheets.map(sheet).collect()
}
