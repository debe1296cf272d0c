//! Fractions of an inch to tap, for hands that find no slash on a number pad.

use yew::{Html, MouseEvent, html};

use super::context::Context;
use crate::msg::Edit;
use crate::state::Field;

/// Shown and typed, the most used first.
const FRACTIONS: [(&str, &str); 17] = [
    ("½", "1/2"),
    ("¼", "1/4"),
    ("¾", "3/4"),
    ("⅛", "1/8"),
    ("⅜", "3/8"),
    ("⅝", "5/8"),
    ("⅞", "7/8"),
    ("1⁄16", "1/16"),
    ("3⁄16", "3/16"),
    ("5⁄16", "5/16"),
    ("7⁄16", "7/16"),
    ("9⁄16", "9/16"),
    ("11⁄16", "11/16"),
    ("13⁄16", "13/16"),
    ("15⁄16", "15/16"),
    ("1⁄32", "1/32"),
    ("3⁄32", "3/32"),
];

/// The fractions for one field; the style sheet shows them while it has the focus.
pub(super) fn view(field: Field, label: &str, context: Context<'_>) -> Html {
    let text = context.text(field);
    let button = |(shown, typed): &(&str, &str)| {
        // The field keeps the focus, and with it the keyboard and these buttons.
        let keep_focus = |event: MouseEvent| event.prevent_default();
        html! {
            <button
                type="button"
                class="button"
                tabindex="-1"
                aria-label={format!("{typed} in")}
                onmousedown={keep_focus}
                onclick={context.edit(Edit::Type(field, with_fraction(&text, typed)))}
            >{ *shown }</button>
        }
    };
    html! {
        <div class="fractions" role="group" aria-label={format!("Fractions for {label}")}>
            { for FRACTIONS.iter().map(button) }
        </div>
    }
}

/// `text` with its fraction replaced by `fraction`, or with it appended.
fn with_fraction(text: &str, fraction: &str) -> String {
    let whole: Vec<_> = text
        .trim_end_matches(['"', '″'])
        .split([' ', '-'])
        .filter(|word| !word.is_empty() && !is_fraction(word))
        .collect();
    if whole.is_empty() {
        fraction.to_owned()
    } else {
        format!("{} {fraction}", whole.join(" "))
    }
}

fn is_fraction(word: &str) -> bool {
    word.contains(['/', '⁄', '½', '¼', '¾', '⅛', '⅜', '⅝', '⅞'])
        || word.starts_with("0.")
        || word.starts_with('.')
}

#[cfg(test)]
mod tests {
    use notchwright_core::units::{Unit, parse_length};

    use super::{FRACTIONS, with_fraction};

    #[test]
    fn a_fraction_is_appended_or_takes_the_place_of_another() {
        let rows = [
            ("", "1/2"),
            ("3", "3 1/2"),
            ("3 ", "3 1/2"),
            ("3 1/4", "3 1/2"),
            ("3-1/8\"", "3 1/2"),
            ("1/8", "1/2"),
            ("2' 3", "2' 3 1/2"),
            (".75", "1/2"),
        ];
        for (text, wanted) in rows {
            assert_eq!(with_fraction(text, "1/2"), wanted, "{text}");
        }
    }

    #[test]
    fn every_fraction_is_typed_as_it_is_shown() {
        for (shown, typed) in FRACTIONS {
            assert_eq!(
                parse_length(shown, Unit::Inch),
                parse_length(typed, Unit::Inch),
                "{shown}"
            );
        }
    }
}
