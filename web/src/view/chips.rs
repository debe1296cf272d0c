//! One of many, each with a line of its own.

use yew::{AttrValue, Html, html};

use super::context::Context;
use super::icon::Icon;
use crate::msg::Msg;

/// One of them.
#[derive(Clone, Debug)]
pub(super) struct Chip {
    /// What tells it from the others, for the page.
    pub(super) key: String,
    /// What it is called.
    pub(super) name: AttrValue,
    /// What is said about it, line by line.
    pub(super) says: Vec<String>,
    /// Whether it is the one to recommend.
    pub(super) is_best: bool,
    /// Whether it is chosen.
    pub(super) is_chosen: bool,
    /// Sent when it is chosen.
    pub(super) choose: Msg,
}

impl Chip {
    fn view(&self, group: &str, context: Context<'_>) -> Html {
        html! {
            <label key={self.key.clone()} class={yew::classes!("chip", self.is_chosen.then_some("on"))}>
                <input
                    type="radio"
                    name={group.to_owned()}
                    checked={self.is_chosen}
                    onchange={context.send(self.choose.clone())}
                />
                <b class="best">
                    { self.name.clone() }
                    if self.is_best {
                        { Icon::Star.view() }
                        <span class="for-readers">{ ", recommended" }</span>
                    }
                </b>
                { for self.says.iter().map(|line| html! { <small>{ line }</small> }) }
            </label>
        }
    }
}

/// The row of chips and what else stands at its end; `group` is its name in the page.
pub(super) fn view(
    group: &str,
    legend: Html,
    chips: &[Chip],
    end: Html,
    context: Context<'_>,
) -> Html {
    html! {
        <fieldset class="chips">
            <legend>{ legend }</legend>
            <div class="row">
                { for chips.iter().map(|chip| chip.view(group, context)) }
                { end }
            </div>
        </fieldset>
    }
}
