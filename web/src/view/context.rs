//! What every view is given.

use notchwright_core::message::Message;
use notchwright_core::units::{Mm, Unit};
use yew::{Callback, InputEvent, TargetCast};

use super::field::{names_unit, short};
use super::show;
use crate::model::Model;
use crate::msg::{Edit, Msg};
use crate::state::{Entry, Field, Kind};

/// The model, and where to send what happens.
#[derive(Clone, Copy, Debug)]
pub(super) struct Context<'a> {
    pub(super) model: &'a Model,
    pub(super) emit: &'a Callback<Msg>,
}

impl Context<'_> {
    /// The unit in use.
    pub(super) fn unit(self) -> Unit {
        self.model.state.units
    }

    /// A length with its unit.
    pub(super) fn length(self, length: Mm) -> String {
        show::length(length, self.unit())
    }

    /// A sentence with its lengths.
    pub(super) fn message(self, message: &Message) -> String {
        show::message(message, self.unit())
    }

    /// Sends `msg` at whatever event.
    pub(super) fn send<E>(self, msg: Msg) -> Callback<E> {
        self.emit.reform(move |_| msg.clone())
    }

    /// Sends an edit at whatever event.
    pub(super) fn edit<E>(self, edit: Edit) -> Callback<E> {
        self.send(Msg::Edit(edit))
    }

    /// Sends what is typed into `field`.
    pub(super) fn typed(self, field: Field) -> Callback<InputEvent> {
        self.emit.reform(move |event: InputEvent| {
            let input: web_sys::HtmlInputElement = event.target_unchecked_into();
            Msg::Edit(Edit::Type(field, input.value()))
        })
    }

    /// The length that was typed into a field, with its unit.
    pub(super) fn typed_length(self, field: Field) -> String {
        let entry = self.model.state.work.entry(field);
        self.entered_length(entry.unwrap_or(&Entry::default()))
    }

    /// A length as it was typed, with its unit unless it names one itself.
    pub(super) fn entered_length(self, entry: &Entry) -> String {
        let text = entry.shown(Kind::Length, self.unit());
        let text = match text.trim() {
            "" => "?",
            text => text,
        };
        if names_unit(text) {
            text.to_owned()
        } else {
            format!("{text} {}", short(self.unit()))
        }
    }

    /// The unit of what is shown in `field`: a sum is shown as it was typed.
    pub(super) fn unit_of(self, field: Field) -> Unit {
        let entry = self.model.state.work.entry(field);
        let typed = entry.filter(|entry| entry.shown(field.kind(), self.unit()) == entry.text);
        typed.map_or(self.unit(), |entry| entry.unit)
    }

    /// What is shown in `field`.
    pub(super) fn text(self, field: Field) -> String {
        let entry = self.model.state.work.entry(field);
        entry.map_or_else(String::new, |entry| {
            entry.shown(field.kind(), self.unit()).into_owned()
        })
    }
}
