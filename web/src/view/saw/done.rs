//! All is cut.

use notchwright_core::stop::Board;
use yew::{Html, html};

use super::{Here, button, buttons, over};
use crate::msg::SawMove;
use crate::view::context::Context;
use crate::view::icon::Icon;
use crate::view::show;

/// The page.
pub(super) fn view(here: &Here<'_>, context: Context<'_>) -> Html {
    let sets = here.course.sets();
    let is_both = sets.iter().any(|set| set.board == Board::B);
    let (title, boards, dry) = if is_both {
        (
            "Both boards are cut",
            "board A and board B",
            "Put the joint together dry, reference edges on the same side, before any glue.",
        )
    } else {
        (
            "The tail board is cut",
            "the tail board",
            "Mark the pin board out from it, reference edges on the same side, and chop its sockets by hand.",
        )
    };
    let is_many = here.course.cuttings() > sets.len();
    let passes: usize = sets.iter().map(|set| set.stops.len()).sum();
    let passes = show::count(passes, "pass", "passes");
    let says = if is_many {
        format!(
            "{passes} at each end of {boards}, {} in all.",
            show::count(here.course.cuttings(), "end", "ends")
        )
    } else {
        format!("{passes} at one end of {boards}.")
    };
    html! {
        <main class="saw done">
            { over(title, "all steps".into(), here, context) }
            <div class="body">
                <p class="unplug">{ Icon::Tick.sign("fits") }<b>{ says }</b></p>
                <ul class="prose">
                    <li>{ "Switch off, unplug, and lower the cutter." }</li>
                    <li>{ dry }</li>
                    if is_many {
                        <li>{ "Every end of every piece is marked as cut." }</li>
                    } else {
                        <li>{ "For the next corner keep the same edge against the stop, and begin again with the set-up." }</li>
                    }
                </ul>
                if is_many {
                    { button(SawMove::Anew, "Begin anew, with nothing cut", context) }
                }
            </div>
            { buttons(false, SawMove::Next, "To the joint", context) }
        </main>
    }
}
