//! A field to type into: its label, its unit, what is wrong with it.

use notchwright_core::units::Unit;
use yew::{AttrValue, Html, classes, html};

use super::context::Context;
use super::fractions;
use super::icon::Icon;
use crate::state::{Field, Kind};

/// What is shown around the text.
#[derive(Clone, Debug)]
pub(super) struct Entry {
    field: Field,
    label: AttrValue,
    unit: Option<&'static str>,
    hint: Option<AttrValue>,
}

impl Entry {
    /// A field and its label.
    pub(super) fn new(field: Field, label: impl Into<AttrValue>) -> Self {
        Self {
            field,
            label: label.into(),
            unit: None,
            hint: None,
        }
    }

    /// The unit of a number that is no length.
    pub(super) fn unit(self, unit: &'static str) -> Self {
        Self {
            unit: Some(unit),
            ..self
        }
    }

    /// A line below the field.
    pub(super) fn hint(self, hint: impl Into<AttrValue>) -> Self {
        Self {
            hint: Some(hint.into()),
            ..self
        }
    }

    /// The field.
    pub(super) fn view(self, context: Context<'_>) -> Html {
        let id = self.field.id();
        let (hint_id, problem_id) = (format!("{id}-hint"), format!("{id}-problem"));
        let problem = problem(self.field, context);
        let is_wrong = problem.is_some();
        let described = match (&self.hint, is_wrong) {
            (Some(_), true) => Some(format!("{problem_id} {hint_id}")),
            (Some(_), false) => Some(hint_id.clone()),
            (None, true) => Some(problem_id.clone()),
            (None, false) => None,
        };
        let kind = self.field.kind();
        let is_text = matches!(kind, Kind::Name | Kind::Lengths | Kind::Numbers);
        html! {
            <div key={id.clone()} class={classes!("field", is_wrong.then_some("wrong"))}>
                <div class="box">
                    <label for={id.clone()}>{ self.label.clone() }</label>
                    <span class="entry">
                        <input
                            id={id}
                            class={is_text.then_some("text")}
                            value={context.text(self.field)}
                            inputmode={keyboard(kind)}
                            autocomplete="off"
                            spellcheck="false"
                            enterkeyhint="done"
                            aria-invalid={is_wrong.then_some("true")}
                            aria-describedby={described}
                            oninput={context.typed(self.field)}
                        />
                        { for self.unit_shown(context) }
                    </span>
                </div>
                if kind == Kind::Length && context.unit() == Unit::Inch {
                    { fractions::view(self.field, &self.label, context) }
                }
                <p class="problem" id={problem_id} aria-live="polite">
                    { for problem.map(|text| html! { <>{ Icon::Exclamation.sign("problem") }<span>{ text }</span></> }) }
                </p>
                { for self.hint.map(|hint| html! { <p class="hint" id={hint_id}>{ hint }</p> }) }
            </div>
        }
    }

    fn unit_shown(&self, context: Context<'_>) -> Option<Html> {
        let unit = match self.field.kind() {
            Kind::Length | Kind::Lengths => Some(short(context.unit())),
            Kind::Name | Kind::Number | Kind::Numbers => self.unit,
        };
        unit.map(|unit| html! { <span class="unit">{ unit }</span> })
    }
}

/// The unit as it stands in a field.
pub(super) fn short(unit: Unit) -> &'static str {
    match unit {
        Unit::Mm => "mm",
        Unit::Inch => "in",
    }
}

/// Fractions need a slash, lists a semicolon: neither is on a number pad.
fn keyboard(kind: Kind) -> &'static str {
    match kind {
        Kind::Length | Kind::Number => "decimal",
        Kind::Name | Kind::Lengths | Kind::Numbers => "text",
    }
}

/// Everything that is wrong with a field, in one text.
pub(super) fn problem(field: Field, context: Context<'_>) -> Option<String> {
    let texts: Vec<_> = context
        .model
        .answer
        .problems_of(field)
        .map(|text| context.message(text))
        .collect();
    (!texts.is_empty()).then(|| texts.join(" "))
}
