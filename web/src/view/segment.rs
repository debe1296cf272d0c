//! One of a few, as radio buttons in one frame.

use yew::{Html, classes, html};

use super::context::Context;
use crate::msg::Msg;

/// What is asked.
#[derive(Clone, Copy, Debug)]
pub(super) struct Segment<'a, T> {
    /// Name of the group in the page, of its own.
    pub(super) name: &'a str,
    /// The question.
    pub(super) legend: &'a str,
    /// Whether the question is only for readers, where it can be seen from what stands around.
    pub(super) is_plain: bool,
    /// Values and their labels.
    pub(super) options: &'a [(T, &'a str)],
    /// What is chosen.
    pub(super) chosen: T,
}

impl<T: Copy + PartialEq> Segment<'_, T> {
    /// The buttons; `choose` makes the message for a value.
    pub(super) fn view(&self, choose: impl Fn(T) -> Msg, context: Context<'_>) -> Html {
        let part = |(value, label): &(T, &str)| {
            let is_chosen = *value == self.chosen;
            html! {
                <label class={is_chosen.then_some("on")}>
                    <input
                        type="radio"
                        name={self.name.to_owned()}
                        checked={is_chosen}
                        onchange={context.send(choose(*value))}
                    />
                    <span>{ (*label).to_owned() }</span>
                </label>
            }
        };
        let legend = if self.is_plain {
            "for-readers"
        } else {
            "quiet"
        };
        html! {
            <fieldset key={self.name} class={classes!("segment", (!self.is_plain).then_some("wide"))}>
                <legend class={legend}>{ self.legend.to_owned() }</legend>
                <div class="parts">{ for self.options.iter().map(part) }</div>
            </fieldset>
        }
    }
}
