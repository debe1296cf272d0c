//! Units and theme.

use notchwright_core::units::Unit;
use yew::{Html, html};

use crate::msg::Msg;
use crate::state::Theme;
use crate::view::context::Context;
use crate::view::segment::Segment;

/// The settings.
pub(super) fn view(context: Context<'_>) -> Html {
    let state = &context.model.state;
    let units = Segment {
        name: "settings-units",
        legend: "Lengths in",
        is_plain: false,
        options: &[(Unit::Mm, "millimetres"), (Unit::Inch, "inches")],
        chosen: state.units,
    };
    let theme = Segment {
        name: "theme",
        legend: "Light or dark",
        is_plain: false,
        options: &[
            (Theme::Device, "as the device"),
            (Theme::Light, "light"),
            (Theme::Dark, "dark"),
        ],
        chosen: state.theme,
    };
    html! {
        <section class="tool" aria-labelledby="settings">
            <h2 id="settings">{ "The page" }</h2>
            { units.view(Msg::Units, context) }
            { theme.view(Msg::Theme, context) }
        </section>
    }
}
