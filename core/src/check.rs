//! From [`Given`] fields to checked values: every problem of a request is gathered, none ends the look.

use crate::given::{Given, Shape};
use crate::limits::{Limit, Unit};
use crate::message;
use crate::message::Message;
use crate::problem::{Code, Problem};
use crate::units::{Mm, write_number};

/// Reads fields below one place of a request and gathers their problems.
///
/// Each reader returns `None` for a field that has a problem, so that a check can go on with the
/// other fields and give up only once, at the end.
#[derive(Debug)]
pub struct Checker<'a> {
    path: String,
    problems: &'a mut Vec<Problem>,
}

impl<'a> Checker<'a> {
    /// A checker for a whole request.
    pub fn new(problems: &'a mut Vec<Problem>) -> Self {
        Self {
            path: String::new(),
            problems,
        }
    }

    /// A checker for what is inside `field`.
    pub fn at(&mut self, field: &str) -> Checker<'_> {
        Checker {
            path: self.path_of(field),
            problems: self.problems,
        }
    }

    fn path_of(&self, field: &str) -> String {
        match (self.path.as_str(), field) {
            ("", field) => field.to_owned(),
            (path, "") => path.to_owned(),
            (path, field) => format!("{path}.{field}"),
        }
    }

    /// Adds a problem with `field`.
    pub fn refuse(&mut self, field: &str, code: Code, message: Message, limit: Option<f64>) {
        let field = self.path_of(field);
        self.problems.push(Problem {
            field,
            code,
            message,
            limit,
        });
    }

    /// A value that must be there and of its kind.
    pub fn required<'g, T: Shape>(&mut self, field: &str, given: &'g Given<T>) -> Option<&'g T> {
        if given.is_missing() {
            let message = message!["This is needed: give ", T::EXPECTED, "."];
            self.refuse(field, Code::Missing, message, None);
        }
        self.optional(field, given).flatten()
    }

    /// A value that may be left out: `Some(None)` when it was, `None` when it has a problem.
    pub fn optional<'g, T: Shape>(
        &mut self,
        field: &str,
        given: &'g Given<T>,
    ) -> Option<Option<&'g T>> {
        match given {
            Given::Missing => Some(None),
            Given::Value(value) => Some(Some(value)),
            Given::Wrong(what) => {
                let message = message![T::EXPECTED, " belongs here, not ", what, "."];
                self.refuse(field, Code::WrongKind, message, None);
                None
            }
        }
    }

    /// A number within a limit.
    pub fn number(&mut self, field: &str, given: &Given<f64>, limit: &Limit) -> Option<f64> {
        let number = *self.required(field, given)?;
        self.within(field, number, limit)
    }

    /// A number within a limit, or `default` when it was left out.
    pub fn number_or(
        &mut self,
        field: &str,
        given: &Given<f64>,
        limit: &Limit,
        default: f64,
    ) -> Option<f64> {
        match self.optional(field, given)? {
            Some(number) => self.within(field, *number, limit),
            None => Some(default),
        }
    }

    /// A length within a limit.
    pub fn length(&mut self, field: &str, given: &Given<f64>, limit: &Limit) -> Option<Mm> {
        self.number(field, given, limit).and_then(Mm::new)
    }

    /// A length within a limit, or `default` when it was left out.
    pub fn length_or(
        &mut self,
        field: &str,
        given: &Given<f64>,
        limit: &Limit,
        default: Mm,
    ) -> Option<Mm> {
        self.number_or(field, given, limit, default.mm())
            .and_then(Mm::new)
    }

    /// A length within a limit, if one was given; `None` only for a problem.
    pub fn optional_length(
        &mut self,
        field: &str,
        given: &Given<f64>,
        limit: &Limit,
    ) -> Option<Option<Mm>> {
        match given {
            Given::Missing => Some(None),
            given => self.length(field, given, limit).map(Some),
        }
    }

    /// A list of lengths in mm, each within its limit.
    pub fn lengths(&mut self, field: &str, list: &[Given<f64>], limit: &Limit) -> Option<Vec<Mm>> {
        let mut check = self.at(field);
        let lengths: Vec<_> = list
            .iter()
            .enumerate()
            .map(|(index, length)| check.length(&index.to_string(), length, limit))
            .collect();
        lengths.into_iter().collect()
    }

    /// The same where the list may be left out: then it is empty.
    pub fn optional_lengths(
        &mut self,
        field: &str,
        given: &Given<Vec<Given<f64>>>,
        limit: &Limit,
    ) -> Option<Vec<Mm>> {
        match self.optional(field, given)? {
            Some(list) => self.lengths(field, list, limit),
            None => Some(Vec::new()),
        }
    }

    /// A whole number within a limit.
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "whole and within a limit's range"
    )]
    pub fn count(&mut self, field: &str, given: &Given<f64>, limit: &Limit) -> Option<u32> {
        let number = self.number(field, given, limit)?;
        if number.fract() == 0.0 {
            return Some(number as u32);
        }
        let message = message![
            limit.name,
            " must be a whole number; ",
            write_number(number, 6),
            " was given."
        ];
        self.refuse(field, Code::NotWhole, message, None);
        None
    }

    /// One of a few words.
    pub fn word<T: Copy>(
        &mut self,
        field: &str,
        given: &Given<String>,
        words: &[(&str, T)],
    ) -> Option<T> {
        let word = self.required(field, given)?;
        self.known_word(field, word, words)
    }

    /// One of a few words, or `default` when it was left out.
    pub fn word_or<T: Copy>(
        &mut self,
        field: &str,
        given: &Given<String>,
        words: &[(&str, T)],
        default: T,
    ) -> Option<T> {
        match self.optional(field, given)? {
            Some(word) => self.known_word(field, word, words),
            None => Some(default),
        }
    }

    fn known_word<T: Copy>(&mut self, field: &str, given: &str, words: &[(&str, T)]) -> Option<T> {
        let known = words
            .iter()
            .find(|(word, _)| *word == given)
            .map(|(_, value)| *value);
        if known.is_none() {
            let list = words
                .iter()
                .map(|(word, _)| format!("\"{word}\""))
                .collect::<Vec<_>>()
                .join(", ");
            let message = message!["One of these words belongs here: ", list, "."];
            self.refuse(field, Code::UnknownWord, message, None);
        }
        known
    }

    /// Refuses fields that mean nothing beside the ones that were chosen.
    pub fn unused(&mut self, because: &str, fields: &[(&str, bool)]) {
        for (field, missing) in fields {
            if !missing {
                let message = message!["This is not used with ", because, "; leave it out."];
                self.refuse(field, Code::Conflict, message, None);
            }
        }
    }

    fn within(&mut self, field: &str, number: f64, limit: &Limit) -> Option<f64> {
        if !number.is_finite() {
            let message = message![limit.name, " must be a finite number."];
            self.refuse(field, Code::NotFinite, message, None);
            return None;
        }
        let (code, bound) = match number {
            number if number < limit.least => (Code::TooSmall, limit.least),
            number if number > limit.most => (Code::TooLarge, limit.most),
            number => return Some(number),
        };
        let [least, most, number] =
            [limit.least, limit.most, number].map(|value| shown(value, limit.unit));
        let message = Message::new(
            [
                limit.name.into(),
                " must be from ".into(),
                least,
                " to ".into(),
                most,
                "; ".into(),
                number,
            ]
            .into_iter()
            .chain([" was given.".into()])
            .collect(),
        );
        self.refuse(field, code, message, Some(bound));
        None
    }
}

/// A part of the request that must be there.
pub(crate) fn part<R: Shape, T>(
    field: &str,
    given: &Given<R>,
    check: &mut Checker<'_>,
    read: impl Fn(&R, &mut Checker<'_>) -> Option<T>,
) -> Option<T> {
    let request = check.required(field, given)?;
    read(request, &mut check.at(field))
}

/// A part of the request that may be left out: `Some(None)` when it was.
pub(crate) fn optional_part<R: Shape, T>(
    field: &str,
    given: &Given<R>,
    check: &mut Checker<'_>,
    read: impl Fn(&R, &mut Checker<'_>) -> Option<T>,
) -> Option<Option<T>> {
    match check.optional(field, given)? {
        Some(request) => read(request, &mut check.at(field)).map(Some),
        None => Some(None),
    }
}

fn shown(value: f64, unit: Unit) -> message::Piece {
    match (unit, Mm::new(value)) {
        (Unit::Length, Some(length)) => length.into(),
        (Unit::Degrees, _) => format!("{}°", write_number(value, 6)).into(),
        (Unit::Length | Unit::Number, _) => write_number(value, 6).into(),
    }
}
