//! The heading of a page that has taken the place of another.

use yew::{AttrValue, Html, Properties, component, html, use_effect_with, use_node_ref};

/// What it says.
#[derive(Clone, Debug, PartialEq, Properties)]
pub(super) struct HeadingProps {
    /// The words.
    pub(super) text: AttrValue,
}

/// A heading that takes the focus when it appears, so that a reader hears where it is and the keyboard
/// goes on from there.
#[component]
pub(super) fn Heading(props: &HeadingProps) -> Html {
    let node = use_node_ref();
    use_effect_with(node.clone(), |node| {
        if let Some(heading) = node.cast::<web_sys::HtmlElement>() {
            // The heading is on the page, so nothing can keep it from the focus.
            let _ = heading.focus();
        }
    });
    html! { <h1 ref={node} tabindex="-1">{ &props.text }</h1> }
}
