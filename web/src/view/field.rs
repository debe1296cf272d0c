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
    is_bare: bool,
}

impl Entry {
    /// A field and its label.
    pub(super) fn new(field: Field, label: impl Into<AttrValue>) -> Self {
        Self {
            field,
            label: label.into(),
            unit: None,
            hint: None,
            is_bare: false,
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

    /// Leaves what is wrong with it to [`problem`], to be shown somewhere near.
    pub(super) fn bare(self) -> Self {
        Self {
            is_bare: true,
            ..self
        }
    }

    /// The field.
    pub(super) fn view(self, context: Context<'_>) -> Html {
        let id = self.field.id();
        let is_wrong = context
            .model
            .answer
            .problems_of(self.field)
            .next()
            .is_some();
        let hint = self.hint.as_ref().map(|hint| {
            html! { <p class="hint" id={hint_id(&id)}>{ hint }</p> }
        });
        html! {
            <div key={id} class={classes!("field", is_wrong.then_some("wrong"))}>
                { self.entry(is_wrong, context) }
                { for self.fractions(context) }
                if !self.is_bare {
                    { problem(self.field, context) }
                }
                { hint }
            </div>
        }
    }

    fn entry(&self, is_wrong: bool, context: Context<'_>) -> Html {
        let id = self.field.id();
        let kind = self.field.kind();
        let is_text = !matches!(kind, Kind::Length | Kind::Number);
        let about = [
            is_wrong.then(|| problem_id(&id)),
            self.hint.as_ref().map(|_| hint_id(&id)),
        ];
        let about: Vec<_> = about.into_iter().flatten().collect();
        html! {
            <label class="box">
                <span class="label">{ &self.label }</span>
                <span class="entry">
                    <input
                        {id}
                        class={is_text.then_some("text")}
                        value={context.text(self.field)}
                        inputmode={keyboard(kind)}
                        autocomplete="off"
                        spellcheck="false"
                        enterkeyhint="done"
                        aria-invalid={is_wrong.then_some("true")}
                        aria-describedby={(!about.is_empty()).then(|| about.join(" "))}
                        oninput={context.typed(self.field)}
                    />
                    // As a child that is always there: without it, the input would be made anew.
                    { self.unit_shown(context) }
                </span>
            </label>
        }
    }

    fn unit_shown(&self, context: Context<'_>) -> Html {
        let unit = match self.field.kind() {
            Kind::Length | Kind::Lengths => {
                let has_own = names_unit(&context.text(self.field));
                (!has_own).then(|| short(context.unit()))
            }
            Kind::Sum => Some(short(context.unit_of(self.field))),
            Kind::Name | Kind::Number | Kind::Numbers => self.unit,
        };
        html! {
            if let Some(unit) = unit {
                <span class="unit">{ unit }</span>
            }
        }
    }

    fn fractions(&self, context: Context<'_>) -> Option<Html> {
        let is_in_inches = self.field.kind() == Kind::Length && context.unit() == Unit::Inch;
        is_in_inches.then(|| fractions::view(self.field, &self.label, context))
    }
}

fn hint_id(id: &str) -> String {
    format!("{id}-hint")
}

fn problem_id(id: &str) -> String {
    format!("{id}-problem")
}

/// Whether a length says itself what it is measured in: `19 mm in` would be read as either.
pub(super) fn names_unit(length: &str) -> bool {
    length.contains(|c: char| c.is_ascii_alphabetic() || "\"'″′”’".contains(c))
}

/// The unit as it stands in a field.
pub(super) fn short(unit: Unit) -> &'static str {
    match unit {
        Unit::Mm => "mm",
        Unit::Inch => "in",
    }
}

/// A list needs a semicolon, which is not on a number pad.
fn keyboard(kind: Kind) -> &'static str {
    match kind {
        Kind::Length | Kind::Number => "decimal",
        Kind::Name | Kind::Lengths | Kind::Numbers | Kind::Sum => "text",
    }
}

/// Everything that is wrong with a field; readers hear it when it comes up.
pub(super) fn problem(field: Field, context: Context<'_>) -> Html {
    let problems = context.model.answer.problems_of(field);
    let texts: Vec<_> = problems.map(|text| context.message(text)).collect();
    html! {
        <p class="problem" id={problem_id(&field.id())} aria-live="polite">
            if !texts.is_empty() {
                { Icon::Exclamation.sign("problem") }
                <span>{ texts.join(" ") }</span>
            }
        </p>
    }
}
