//! What a tool answers besides its plan: problems when there can be none, notes when there is one.

use serde::{Serialize, Serializer};

use crate::message::Message;

/// What is wrong with one field of a request.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Problem {
    /// Path of the field, parts joined by points: `cutter.kerf`, `layout.weights.2`; empty for the request itself.
    pub field: String,
    /// What kind of wrong, for programs.
    pub code: Code,
    /// What was given and what would work, for people.
    pub message: Message,
    /// The bound that was passed, in the field's own unit, where there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub limit: Option<f64>,
}

/// Kinds of [`Problem`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Code {
    /// A field that must be there is not.
    Missing,
    /// A field that no tool knows by this name.
    UnknownField,
    /// Text where a number belongs, a number where a list belongs, and so on.
    WrongKind,
    /// A word that is not one of the words allowed.
    UnknownWord,
    /// `NaN` or infinite.
    NotFinite,
    /// A fraction where a whole number belongs.
    NotWhole,
    /// Below what is allowed.
    TooSmall,
    /// Above what is allowed.
    TooLarge,
    /// Two fields that exclude each other.
    Conflict,
    /// A cutter wider than what it should cut.
    CutterTooWide,
    /// A dial whose steps are too coarse for this cut.
    DialTooCoarse,
    /// A joint beyond the carriage's travel.
    BeyondTravel,
    /// A blade height beyond the saw's.
    BeyondHeight,
    /// The blade does not fit into the sled's window with the board.
    BeyondWindow,
    /// A name that stands for nothing.
    UnknownName,
    /// A text that is no length and no expression.
    NotReadable,
    /// A measure that leads back to itself.
    Cycle,
    /// A dimension over a measure that has a problem of its own.
    Unresolved,
    /// A product of lengths, or a ratio, where a length belongs.
    NotALength,
    /// A division by zero.
    DivisionByZero,
    /// A part that no sheet is large enough for.
    LargerThanSheet,
    /// Fewer sheets than the parts need.
    TooFewSheets,
}

/// How much a [`Note`] matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Severity {
    /// Somebody can get hurt.
    Caution,
    /// A board can be spoiled.
    Warning,
    /// Good to know.
    Info,
}

/// Something the person should know about a plan.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Note {
    /// A short name for programs, such as `floor-ridge`.
    pub code: &'static str,
    /// How much it matters.
    pub severity: Severity,
    /// What it says.
    pub message: Message,
    /// The field it is about, if it is about one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub field: Option<&'static str>,
}

impl Note {
    /// A note about the whole plan.
    #[must_use]
    pub fn new(code: &'static str, severity: Severity, message: Message) -> Self {
        Self {
            code,
            severity,
            message,
            field: None,
        }
    }

    /// The same note, pointing at a field of the request.
    #[must_use]
    pub fn about(self, field: &'static str) -> Self {
        Self {
            field: Some(field),
            ..self
        }
    }
}

/// A plan with what should be known about it.
#[derive(Clone, Debug, PartialEq)]
pub struct Planned<T> {
    /// What was asked for.
    pub plan: T,
    /// What to know about it, cautions included.
    pub notes: Vec<Note>,
}

impl<T> Planned<T> {
    /// A plan without notes.
    #[must_use]
    pub fn plain(plan: T) -> Self {
        Self {
            plan,
            notes: Vec::new(),
        }
    }
}

/// A plan, or every problem of its request at once.
pub type Checked<T> = Result<Planned<T>, Vec<Problem>>;

/// A [`Checked`] as it leaves the module: `{ ok: true, plan, notes }` or `{ ok: false, problems }`.
#[derive(Clone, Debug)]
pub struct Reply<T>(pub Checked<T>);

impl<T: Serialize> Serialize for Reply<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        #[derive(Serialize)]
        struct Good<'a, T> {
            ok: bool,
            plan: &'a T,
            notes: &'a [Note],
        }
        #[derive(Serialize)]
        struct Bad<'a> {
            ok: bool,
            problems: &'a [Problem],
        }
        match &self.0 {
            Ok(planned) => Good {
                ok: true,
                plan: &planned.plan,
                notes: &planned.notes,
            }
            .serialize(serializer),
            Err(problems) => Bad {
                ok: false,
                problems,
            }
            .serialize(serializer),
        }
    }
}
