//! Requests as they arrive, before anything in them is believed.
//!
//! A reader that stops at the first thing it dislikes makes a person who mistyped three fields hear of
//! one. So every field of a request is a [`Given`]: it takes whatever stood there, and the check phase
//! ([`crate::check`]) turns all of it into checked values or into problems, in one go.

use serde::{Serialize, Serializer};

use crate::check::Checker;
use crate::message;
use crate::plain::Plain;
use crate::problem::{Checked, Code, Problem};

/// One field of a request.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Given<T> {
    /// Nothing stood there (or `null`).
    #[default]
    Missing,
    /// Something of the right kind, not yet looked at.
    Value(T),
    /// Something of another kind, described for the message: "the text «abc»".
    Wrong(String),
}

impl<T> From<T> for Given<T> {
    fn from(value: T) -> Self {
        Self::Value(value)
    }
}

impl From<&str> for Given<String> {
    fn from(word: &str) -> Self {
        Self::Value(word.to_owned())
    }
}

impl<T> Given<T> {
    /// Whether nothing was given.
    pub fn is_missing(&self) -> bool {
        matches!(self, Self::Missing)
    }
}

impl<T: Shape> Given<T> {
    /// Takes what stands at the checker's place; fields inside it that nobody knows become problems.
    pub fn take(plain: &Plain, check: &mut Checker<'_>) -> Self {
        match plain {
            Plain::Nothing => Self::Missing,
            plain => {
                T::take(plain, check).map_or_else(|| Self::Wrong(plain.described()), Self::Value)
            }
        }
    }
}

/// A kind of thing that can stand in a request.
pub trait Shape: Sized {
    /// What belongs here, for the message: "a number".
    const EXPECTED: &'static str;

    /// The thing itself, or `None` for plain data of another kind.
    fn take(plain: &Plain, check: &mut Checker<'_>) -> Option<Self>;
}

impl Shape for f64 {
    const EXPECTED: &'static str = "a number";
    fn take(plain: &Plain, _: &mut Checker<'_>) -> Option<Self> {
        match plain {
            // What is handed on must not say −0 because somebody did.
            Plain::Number(number) => Some(*number + 0.0),
            _ => None,
        }
    }
}

impl Shape for String {
    const EXPECTED: &'static str = "a text";
    fn take(plain: &Plain, _: &mut Checker<'_>) -> Option<Self> {
        match plain {
            Plain::Text(text) => Some(text.clone()),
            _ => None,
        }
    }
}

impl Shape for bool {
    const EXPECTED: &'static str = "true or false";
    fn take(plain: &Plain, _: &mut Checker<'_>) -> Option<Self> {
        match plain {
            Plain::Truth(truth) => Some(*truth),
            _ => None,
        }
    }
}

impl<T: Shape> Shape for Vec<Given<T>> {
    const EXPECTED: &'static str = "a list";
    fn take(plain: &Plain, check: &mut Checker<'_>) -> Option<Self> {
        let Plain::List(items) = plain else {
            return None;
        };
        let item = |(i, item): (usize, &Plain)| Given::take(item, &mut check.at(&i.to_string()));
        Some(items.iter().enumerate().map(item).collect())
    }
}

/// Structs of a request: each field with its name outside.
///
/// Plain code instead of a derived reader: that would be made anew for every struct and every source,
/// and made up a third of what a phone had to fetch.
macro_rules! request {
    ($($(#[$about:meta])* pub struct $name:ident {
        $($(#[$doc:meta])* pub $field:ident: $kind:ty = $outside:literal,)+
    })+) => {$(
        $(#[$about])*
        #[derive(Clone, Debug, Default, PartialEq)]
        pub struct $name {
            $($(#[$doc])* pub $field: $kind,)+
        }

        impl $crate::given::Shape for $name {
            const EXPECTED: &'static str = "an object";

            fn take(plain: &$crate::plain::Plain, check: &mut $crate::check::Checker<'_>) -> Option<Self> {
                let $crate::plain::Plain::Object(fields) = plain else {
                    return None;
                };
                let mut request = Self::default();
                for (name, value) in fields {
                    match name.as_str() {
                        $($outside => request.$field = $crate::given::Given::take(value, &mut check.at($outside)),)+
                        name => $crate::given::refuse_unknown(name, &[$($outside),+], check),
                    }
                }
                Some(request)
            }
        }

        /// As it is read: fields that are missing are left out.
        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                let mut map = serializer.serialize_map(None)?;
                $(if !self.$field.is_missing() {
                    serde::ser::SerializeMap::serialize_entry(&mut map, $outside, &self.$field)?;
                })+
                serde::ser::SerializeMap::end(map)
            }
        }
    )+};
}
pub(crate) use request;

/// As what stands there; a value of a wrong kind has only its description left.
impl<T: Serialize> Serialize for Given<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Missing => serializer.serialize_none(),
            Self::Value(value) => value.serialize(serializer),
            Self::Wrong(what) => serializer.serialize_str(what),
        }
    }
}

pub(crate) fn refuse_unknown(name: &str, known: &[&str], check: &mut Checker<'_>) {
    let message = message![
        "There is no such field; leave it out or correct its name. The fields here are: ",
        known.join(", "),
        "."
    ];
    check.refuse(name, Code::UnknownField, message, None);
}

/// Reads a whole request, with a problem for each field that no request has.
#[must_use]
pub fn read<T: Shape>(plain: &Plain) -> (Given<T>, Vec<Problem>) {
    let mut problems = Vec::new();
    let request = Given::take(plain, &mut Checker::new(&mut problems));
    (request, problems)
}

/// What a tool says to plain data: its plan, or its problems together with those of fields that no request has.
///
/// # Errors
/// Every problem of the request at once.
pub fn answer<T: Shape, P>(plain: &Plain, tool: impl Fn(&T) -> Checked<P>) -> Checked<P> {
    let (request, mut problems) = read(plain);
    let answer = Checker::new(&mut problems).required("", &request).map(tool);
    match answer {
        Some(Ok(planned)) if problems.is_empty() => Ok(planned),
        Some(Err(more)) => {
            problems.extend(more);
            Err(problems)
        }
        _ => Err(problems),
    }
}

#[cfg(test)]
mod tests {
    use serde_json::{Value, json};

    use super::{Given, read};
    use crate::joint::box_joint::{BoxJointRequest, box_joint};
    use crate::problem::Code;

    fn taken(json: Value) -> (Given<BoxJointRequest>, Vec<(String, Code)>) {
        let (request, problems) = read(&serde_json::from_value(json).unwrap());
        (
            request,
            problems
                .into_iter()
                .map(|problem| (problem.field, problem.code))
                .collect(),
        )
    }

    #[test]
    fn every_unknown_field_is_named_where_it_stands() {
        let (_, problems) = taken(json!({
            "with": 140, "cutter": { "kref": 3, "grind": { "angle": 15 } }, "layout": { "weights": [1, { "x": 1 }] }
        }));
        let fields: Vec<_> = problems.iter().map(|(field, _)| field.as_str()).collect();
        // The JSON library sorts fields by name.
        assert_eq!(fields, ["cutter.grind.angle", "cutter.kref", "with"]);
        assert!(problems.iter().all(|(_, code)| *code == Code::UnknownField));
    }

    #[test]
    fn whatever_stands_in_a_field_is_kept_for_the_check() {
        let (request, problems) = taken(json!({
            "width": "wide", "a": 12, "b": [], "cutter": null, "layout": { "kind": 3, "weights": [1, "x", null] }
        }));
        assert_eq!(problems, []);
        let Given::Value(request) = request else {
            panic!("an object")
        };
        assert_eq!(request.width, Given::Wrong("the text «wide»".to_owned()));
        assert_eq!(request.a, Given::Wrong("the number 12".to_owned()));
        assert_eq!(request.b, Given::Wrong("a list".to_owned()));
        assert!(request.cutter.is_missing());
        let problems = box_joint(&request).unwrap_err();
        let fields: Vec<_> = problems
            .iter()
            .map(|problem| problem.field.as_str())
            .collect();
        assert_eq!(
            fields,
            ["width", "a", "b", "cutter", "screw", "layout.kind"]
        );
    }

    #[test]
    fn a_request_is_written_as_it_is_read() {
        let json = json!({
            "width": 140.0, "a": { "thickness": 12.0 }, "first": "socket",
            "cutter": { "grind": { "kind": "alternate", "bevelDegrees": 15.0 }, "kerf": 3.2 },
            "layout": { "kind": "pattern", "mirrored": true, "weights": [1.0, 2.0] }
        });
        let (Given::Value(request), problems) = taken(json.clone()) else {
            panic!("an object")
        };
        assert_eq!(problems, []);
        assert_eq!(serde_json::to_value(&request).unwrap(), json);
    }

    #[test]
    fn zero_has_no_sign() {
        let (Given::Value(request), _) = taken(json!({ "proud": -0.0 })) else {
            panic!("an object")
        };
        let Given::Value(proud) = request.proud else {
            panic!("a number")
        };
        assert!(proud == 0.0 && proud.is_sign_positive());
    }

    #[test]
    fn what_is_no_request_is_said_to_be_none() {
        for json in [json!(3), json!("x"), json!([]), json!(true)] {
            assert!(matches!(taken(json).0, Given::Wrong(_)));
        }
        assert!(taken(json!(null)).0.is_missing());
    }
}
