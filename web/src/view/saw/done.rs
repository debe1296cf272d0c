//! All is cut.

use notchwright_core::stop::Board;
use yew::{Html, html};

use super::{Here, button, buttons, over};
use crate::answer::Of;
use crate::msg::SawMove;
use crate::view::context::Context;
use crate::view::icon::Icon;
use crate::view::show;

/// The page.
pub(super) fn view(here: &Here<'_>, context: Context<'_>) -> Html {
    let sets = here.course.sets();
    let is_both = sets.iter().any(|set| set.board == Board::B);
    let (title, dry) = if is_both {
        (
            "Both boards are cut",
            "Put the joint together dry, reference edges on the same side, before any glue.",
        )
    } else {
        (
            "The tail board is cut",
            "Mark the pin board out from it, reference edges on the same side, and chop its sockets by hand.",
        )
    };
    let is_many = here.course.ends() > if is_both { 2 } else { 1 };
    let says = counted(here, is_both, is_many);
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

/// `13 passes at each end of board A and 12 of board B, 32 ends in all.`
fn counted(here: &Here<'_>, is_both: bool, is_many: bool) -> String {
    let [a, b] = match here.cut.of {
        Of::Box(_) => ["board A", "board B"],
        Of::Dovetail(_) => ["the tail board", "the pin board"],
    };
    let passes = |board| {
        let own = here.course.sets().iter().filter(|set| set.board == board);
        own.map(|set| set.stops.len()).sum::<usize>()
    };
    let first = show::count(passes(Board::A), "pass", "passes");
    let end = if is_many { "each end" } else { "one end" };
    let other = match is_both {
        true => format!(" and {} of {b}", passes(Board::B)),
        false => String::new(),
    };
    let all = match is_many {
        true => format!(", {} ends in all", here.course.ends()),
        false => String::new(),
    };
    format!("{first} at {end} of {a}{other}{all}.")
}
