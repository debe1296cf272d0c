//! How many of something there are: the best few to choose from, or any other typed, and the reason for it.

use notchwright_core::message::Message;
use notchwright_core::order::in_order;
use yew::{Html, html};

use super::chips::{self, Chip};
use super::context::Context;
use super::field::{self, Entry};
use crate::msg::{Edit, Msg};
use crate::state::Field;

/// One number, and what is said about it.
pub(super) struct Counted<'a> {
    pub(super) count: u32,
    pub(super) says: Vec<String>,
    pub(super) reason: &'a Message,
}

/// A choice of numbers.
pub(super) struct Counts {
    /// What it is called in the page.
    pub(super) name: &'static str,
    /// What is counted.
    pub(super) legend: &'static str,
    /// Where another is typed.
    pub(super) field: Field,
    /// More chips than this would be a list to search in, not a choice.
    pub(super) most: usize,
    pub(super) choose: fn(usize) -> Edit,
}

impl Counts {
    /// Shows the choice; the best number comes first.
    pub(super) fn view(&self, choices: &[Counted<'_>], context: Context<'_>) -> Html {
        let chosen = context.text(self.field).trim().parse().ok();
        let best = choices.first().map(|choice| choice.count);
        let offered = choices
            .iter()
            .enumerate()
            .filter(|(rank, choice)| *rank < self.most || Some(choice.count) == chosen)
            .map(|(_, choice)| choice);
        let chips: Vec<_> = in_order(offered, |one, other| one.count.cmp(&other.count))
            .into_iter()
            .map(|choice| Chip {
                key: choice.count.to_string(),
                name: choice.count.to_string().into(),
                says: choice.says.clone(),
                is_best: best == Some(choice.count),
                is_chosen: chosen == Some(choice.count),
                choose: Msg::Edit((self.choose)(choice.count as usize)),
            })
            .collect();
        let legend = html! { <span class="for-readers">{ self.legend }</span> };
        let other = Entry::new(self.field, "Or type").bare().view(context);
        html! {
            <>
                { chips::view(self.name, legend, &chips, other, context) }
                { field::problem(self.field, context) }
                <p class="quiet">{ for reason(choices, chosen, context) }</p>
            </>
        }
    }
}

/// Why the chosen number stands where it stands, or the best one while another is typed.
fn reason(choices: &[Counted<'_>], chosen: Option<u32>, context: Context<'_>) -> Option<String> {
    let choice = choices.iter().find(|choice| Some(choice.count) == chosen);
    let best = choices.first()?;
    let reason = context.message(choice.unwrap_or(best).reason);
    Some(match choice {
        Some(choice) => format!("{}: {reason}", choice.count),
        None => format!("Recommended is {}: {reason}", best.count),
    })
}
