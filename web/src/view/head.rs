//! The head of the page: what is worked on, the places, undo, the unit.

use notchwright_core::units::Unit;
use yew::{Html, html};

use super::context::Context;
use super::icon::Icon;
use super::segment::Segment;
use crate::msg::Msg;
use crate::state::{Field, JointField, JointKind, Place};

/// The head.
pub(super) fn view(context: Context<'_>) -> Html {
    html! {
        <header class="head">
            { title(context) }
            { places(context) }
            { history(context) }
            { units(context) }
        </header>
    }
}

fn title(context: Context<'_>) -> Html {
    match context.model.state.place {
        Place::Joint => names(context),
        Place::Sled => html! { <h1 class="title">{ "Sled" }</h1> },
        Place::Parts => html! { <h1 class="title">{ "Parts" }</h1> },
        Place::Jobs => html! { <h1 class="title">{ "Jobs" }</h1> },
        Place::Shop => html! { <h1 class="title">{ "Shop" }</h1> },
    }
}

/// The names are typed where they are read.
fn names(context: Context<'_>) -> Html {
    let name = |field: Field, class: &'static str, label: &'static str| {
        html! {
            <input
                id={field.id()}
                {class}
                aria-label={label}
                placeholder={label}
                value={context.text(field)}
                autocomplete="off"
                spellcheck="false"
                oninput={context.typed(field)}
            />
        }
    };
    html! {
        <div class="title">
            <h1 class="for-readers">{ kind(context.model.state.work.joint.kind) }</h1>
            { name(Field::Job, "job", "Name of the piece") }
            { name(Field::Joint(JointField::Name), "name", "Name of the joint") }
        </div>
    }
}

/// What a kind of joint is called.
pub(super) fn kind(kind: JointKind) -> &'static str {
    match kind {
        JointKind::Box => "Box joint",
        JointKind::Dovetail => "Dovetails",
        JointKind::Sliding => "Sliding dovetail",
    }
}

fn places(context: Context<'_>) -> Html {
    let place = |place, icon: Icon, name: &'static str| {
        let is_here = context.model.state.place == place;
        html! {
            <button type="button" aria-current={is_here.then_some("page")} onclick={context.send(Msg::Go(place))}>
                { icon.view() }{ name }
            </button>
        }
    };
    html! {
        <nav class="places" aria-label="Places">
            { place(Place::Joint, Icon::Joint, "Joint") }
            { place(Place::Sled, Icon::Sled, "Sled") }
            { place(Place::Parts, Icon::Parts, "Parts") }
            { place(Place::Jobs, Icon::Jobs, "Jobs") }
            { place(Place::Shop, Icon::Shop, "Shop") }
        </nav>
    }
}

fn history(context: Context<'_>) -> Html {
    let step = |icon: Icon, label: &'static str, can: bool, msg: Msg| {
        html! {
            <button type="button" class="button plain" aria-label={label} title={label} disabled={!can} onclick={context.send(msg)}>
                { icon.view() }
            </button>
        }
    };
    html! {
        <div class="history">
            { step(Icon::Undo, "Undo", context.model.can_undo, Msg::Undo) }
            { step(Icon::Redo, "Redo", context.model.can_redo, Msg::Redo) }
        </div>
    }
}

fn units(context: Context<'_>) -> Html {
    let units = Segment {
        name: "units",
        legend: "Lengths in",
        is_plain: true,
        options: &[(Unit::Mm, "mm"), (Unit::Inch, "in")],
        chosen: context.model.state.units,
    };
    units.view(Msg::Units, context)
}
