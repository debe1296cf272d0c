//! From fields to a request, remembering which field each part of it came from.

use std::borrow::Cow;

use notchwright_core::given::Given;
use notchwright_core::message;
use notchwright_core::message::Message;
use notchwright_core::parts::DimensionRequest;
use notchwright_core::problem::Problem;
use notchwright_core::units::{Mm, Unit, parse_length, read_number};

use super::FieldProblem;
use crate::state::{Field, Work, split_lengths};

/// A place in a request.
type Path = Cow<'static, str>;

/// Reads fields into a request.
///
/// A text that cannot be read leaves its problem here and its place in the request empty, so that the
/// rest of the request is still checked.
pub(super) struct Draft<'a> {
    work: &'a Work,
    sources: Vec<(Path, Field)>,
    unread: Vec<Path>,
    problems: Vec<FieldProblem>,
}

impl<'a> Draft<'a> {
    pub(super) fn new(work: &'a Work) -> Self {
        Self {
            work,
            sources: Vec::new(),
            unread: Vec::new(),
            problems: Vec::new(),
        }
    }

    pub(super) fn work(&self) -> &'a Work {
        self.work
    }

    /// A length of the request at `path`; missing when the field is blank.
    pub(super) fn length(&mut self, path: &'static str, field: Field) -> Given<f64> {
        self.length_at(path.into(), field)
    }

    /// The same at a path that was put together.
    pub(super) fn length_at(&mut self, path: Path, field: Field) -> Given<f64> {
        self.one(path, field, |text, unit| {
            parse_length(text, unit)
                .map(Mm::mm)
                .map_err(|error| message![error.to_string()])
        })
    }

    /// A plain number of the request at `path`; missing when the field is blank.
    pub(super) fn number(&mut self, path: &'static str, field: Field) -> Given<f64> {
        self.number_at(path.into(), field)
    }

    /// The same at a path that was put together.
    pub(super) fn number_at(&mut self, path: Path, field: Field) -> Given<f64> {
        self.one(path, field, |text, _| number(text))
    }

    /// A text of the request at `path`; missing when the field is blank.
    pub(super) fn text_at(&mut self, path: Path, field: Field) -> Given<String> {
        self.one(path, field, |text, _| Ok(text.trim().to_owned()))
    }

    /// A length or a sum of the request at `path`; missing when the field is blank.
    pub(super) fn sum_at(&mut self, path: Path, field: Field) -> Given<DimensionRequest> {
        self.one(path, field, |text, unit| {
            Ok(DimensionRequest::TextIn(text.to_owned(), unit))
        })
    }

    /// A list of lengths of the request at `path`; missing when the field is blank.
    pub(super) fn lengths(&mut self, path: &'static str, field: Field) -> Given<Vec<Given<f64>>> {
        self.one(path.into(), field, |text, unit| {
            split_lengths(text)
                .map(|length| match parse_length(length, unit) {
                    Ok(length) => Ok(length.mm().into()),
                    Err(error) => Err(message!["«", length.trim(), "»: ", error.to_string()]),
                })
                .collect()
        })
    }

    /// A list of plain numbers of the request at `path`; missing when the field is blank.
    pub(super) fn numbers(&mut self, path: &'static str, field: Field) -> Given<Vec<Given<f64>>> {
        self.one(path.into(), field, |text, _| {
            text.split(|c: char| c == ';' || c.is_whitespace())
                .map(|number| number.trim_end_matches(','))
                .filter(|number| !number.is_empty())
                .map(|text| number(text).map(Given::from))
                .collect()
        })
    }

    fn one<T>(
        &mut self,
        path: Path,
        field: Field,
        read: impl Fn(&str, Unit) -> Result<T, Message>,
    ) -> Given<T> {
        self.sources.push((path.clone(), field));
        let Some(entry) = self.work.entry(field).filter(|entry| !entry.is_blank()) else {
            return Given::Missing;
        };
        match read(&entry.text, entry.unit) {
            Ok(value) => Given::Value(value),
            Err(message) => {
                self.leave_out(path, Some(field), message);
                Given::Missing
            }
        }
    }

    /// Adds a problem of the page's own in place of whatever the request will say about `path`.
    pub(super) fn refuse(&mut self, path: &'static str, field: Option<Field>, message: Message) {
        self.leave_out(path.into(), field, message);
    }

    /// Lets the field read for `path` answer for `other` as well, which the request may have in its place.
    pub(super) fn answers_for(&mut self, path: &str, other: &'static str) {
        if let Some(field) = self.source(path) {
            self.sources.push((other.into(), field));
        }
        if self.unread.iter().any(|unread| unread == path) {
            self.unread.push(other.into());
        }
    }

    fn leave_out(&mut self, path: Path, field: Option<Field>, message: Message) {
        self.unread.push(path);
        self.problems.push(FieldProblem { field, message });
    }

    /// The field that is blank where the request lacks something; none where a text could not be read.
    pub(super) fn blank(&self, path: &str) -> Option<Field> {
        let is_unread = self.unread.iter().any(|unread| unread == path);
        self.source(path).filter(|_| !is_unread)
    }

    /// Whether every text within these parts of the request could be read.
    pub(super) fn has_read(&self, parts: &[&str]) -> bool {
        let is_unread = |part: &&str| self.unread.iter().any(|path| is_within(path, part));
        !parts.iter().any(is_unread)
    }

    /// The problems of the fields, and after them those of the request, each with its field.
    pub(super) fn finish(mut self, problems: Vec<Problem>) -> Vec<FieldProblem> {
        for problem in problems {
            // Where a text could not be read, that is what is wrong, not that the request lacks it.
            if !self.unread.iter().any(|path| *path == problem.field) {
                let field = self.source(&problem.field);
                let message = problem.message;
                self.problems.push(FieldProblem { field, message });
            }
        }
        self.problems
    }

    /// The field that the place at `path` of the request came from; one item of a list comes from the list's.
    fn source(&self, path: &str) -> Option<Field> {
        let mut sources = self.sources.iter();
        sources
            .find(|(place, _)| is_within(path, place))
            .map(|(_, field)| *field)
    }
}

/// Whether `path` is `part` or a place inside it.
fn is_within(path: &str, part: &str) -> bool {
    path.strip_prefix(part)
        .is_some_and(|rest| rest.is_empty() || rest.starts_with('.'))
}

/// Reads a plain number with a point or a comma.
fn number(text: &str) -> Result<f64, Message> {
    let text = text.trim();
    let is_plain = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',' | '-' | '+');
    let plain = text.chars().all(is_plain).then(|| text.replace(',', "."));
    plain
        .and_then(|plain| read_number(&plain))
        .ok_or_else(|| message!["«", text, "» is no number: write one like 9 or 2.5."])
}
