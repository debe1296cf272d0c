//! One of several, in the device's own list.

use yew::{
    AttrValue, Callback, Event, Html, Properties, TargetCast, component, html, use_effect_with,
    use_node_ref,
};

/// What is asked.
#[derive(Clone, Debug, PartialEq, Properties)]
pub(super) struct SelectProps {
    /// The id of the list in the page.
    pub(super) id: AttrValue,
    /// The question, for readers.
    pub(super) label: AttrValue,
    /// What can be chosen.
    pub(super) options: Vec<AttrValue>,
    /// Which of them is.
    pub(super) chosen: usize,
    /// Is told which was chosen.
    pub(super) choose: Callback<usize>,
}

/// The list. Once somebody has chosen in it, the attribute `selected` no longer moves it, so what is
/// chosen is also set as a property: undo must be seen.
#[component]
pub(super) fn Select(props: &SelectProps) -> Html {
    let node = use_node_ref();
    use_effect_with((node.clone(), props.chosen), |(node, chosen)| {
        if let Some(list) = node.cast::<web_sys::HtmlSelectElement>() {
            list.set_selected_index(i32::try_from(*chosen).unwrap_or(-1));
        }
    });
    let onchange = props.choose.reform(|event: Event| {
        let list: web_sys::HtmlSelectElement = event.target_unchecked_into();
        usize::try_from(list.selected_index()).unwrap_or_default()
    });
    let option = |(index, label): (usize, &AttrValue)| {
        html! { <option selected={index == props.chosen}>{ label }</option> }
    };
    html! {
        <select ref={node} id={&props.id} aria-label={&props.label} {onchange}>
            { for props.options.iter().enumerate().map(option) }
        </select>
    }
}
