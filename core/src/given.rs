//! Requests as they arrive, before anything in them is believed.
//!
//! Serde stops at the first thing it dislikes; a person who mistyped three fields wants to hear of
//! three. So every field of a request is a [`Given`]: it takes whatever stood there, and the check
//! phase ([`crate::check`]) turns all of it into checked values or into problems, in one go.

use core::fmt;
use core::marker::PhantomData;

use serde::de::value::MapAccessDeserializer;
use serde::de::{Deserialize, Deserializer, IgnoredAny, MapAccess, SeqAccess, Visitor};

use crate::message;
use crate::problem::{Code, Problem};

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

/// A kind of thing that can stand in a request: it takes what fits and declines the rest.
pub trait Shape: Sized {
    /// What belongs here, for the message: "a number".
    const EXPECTED: &'static str;

    /// From a number.
    fn number(_: f64) -> Option<Self> {
        None
    }
    /// From a text.
    fn text(_: &str) -> Option<Self> {
        None
    }
    /// From `true` or `false`.
    fn truth(_: bool) -> Option<Self> {
        None
    }
    /// From a list.
    ///
    /// # Errors
    /// Whatever the source of the list fails with.
    fn list<'de, A: SeqAccess<'de>>(mut list: A) -> Result<Option<Self>, A::Error> {
        while list.next_element::<IgnoredAny>()?.is_some() {}
        Ok(None)
    }
    /// From an object.
    ///
    /// # Errors
    /// Whatever the source of the object fails with.
    fn object<'de, A: MapAccess<'de>>(mut object: A) -> Result<Option<Self>, A::Error> {
        while object.next_entry::<IgnoredAny, IgnoredAny>()?.is_some() {}
        Ok(None)
    }
}

impl Shape for f64 {
    const EXPECTED: &'static str = "a number";
    fn number(number: f64) -> Option<Self> {
        Some(number)
    }
}

impl Shape for String {
    const EXPECTED: &'static str = "a text";
    fn text(text: &str) -> Option<Self> {
        Some(text.to_owned())
    }
}

impl Shape for bool {
    const EXPECTED: &'static str = "true or false";
    fn truth(truth: bool) -> Option<Self> {
        Some(truth)
    }
}

impl<T: Shape> Shape for Vec<Given<T>> {
    const EXPECTED: &'static str = "a list";
    fn list<'de, A: SeqAccess<'de>>(mut list: A) -> Result<Option<Self>, A::Error> {
        let mut items = Self::new();
        while let Some(item) = list.next_element()? {
            items.push(item);
        }
        Ok(Some(items))
    }
}

/// Makes structs with `Given` fields and a derived `Deserialize` into objects of a request.
macro_rules! object_shapes {
    ($($name:ty),+ $(,)?) => {$(
        impl $crate::given::Shape for $name {
            const EXPECTED: &'static str = "an object";
            fn object<'de, A: serde::de::MapAccess<'de>>(object: A) -> Result<Option<Self>, A::Error> {
                $crate::given::read_object(object).map(Some)
            }
        }
    )+};
}
pub(crate) use object_shapes;

pub(crate) fn read_object<'de, T: Deserialize<'de>, A: MapAccess<'de>>(
    object: A,
) -> Result<T, A::Error> {
    T::deserialize(MapAccessDeserializer::new(object))
}

impl<'de, T: Shape> Deserialize<'de> for Given<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(Taker(PhantomData))
    }
}

struct Taker<T>(PhantomData<T>);

impl<T: Shape> Taker<T> {
    fn or_wrong(value: Option<T>, what: impl FnOnce() -> String) -> Given<T> {
        value.map_or_else(|| Given::Wrong(what()), Given::Value)
    }
}

impl<'de, T: Shape> Visitor<'de> for Taker<T> {
    type Value = Given<T>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(T::EXPECTED)
    }
    fn visit_unit<E>(self) -> Result<Self::Value, E> {
        Ok(Given::Missing)
    }
    fn visit_none<E>(self) -> Result<Self::Value, E> {
        Ok(Given::Missing)
    }
    fn visit_some<D: Deserializer<'de>>(self, deserializer: D) -> Result<Self::Value, D::Error> {
        Given::deserialize(deserializer)
    }
    fn visit_bool<E>(self, truth: bool) -> Result<Self::Value, E> {
        Ok(Self::or_wrong(T::truth(truth), || truth.to_string()))
    }
    #[expect(
        clippy::cast_precision_loss,
        reason = "beyond 2^53 every bound is passed by far"
    )]
    fn visit_i64<E>(self, number: i64) -> Result<Self::Value, E> {
        Ok(Self::or_wrong(T::number(number as f64), || {
            format!("the number {number}")
        }))
    }
    #[expect(
        clippy::cast_precision_loss,
        reason = "beyond 2^53 every bound is passed by far"
    )]
    fn visit_u64<E>(self, number: u64) -> Result<Self::Value, E> {
        Ok(Self::or_wrong(T::number(number as f64), || {
            format!("the number {number}")
        }))
    }
    fn visit_f64<E>(self, number: f64) -> Result<Self::Value, E> {
        Ok(Self::or_wrong(T::number(number), || {
            format!("the number {number}")
        }))
    }
    fn visit_str<E>(self, text: &str) -> Result<Self::Value, E> {
        Ok(Self::or_wrong(T::text(text), || {
            format!("the text «{}»", shortened(text))
        }))
    }
    fn visit_bytes<E>(self, _: &[u8]) -> Result<Self::Value, E> {
        Ok(Given::Wrong("a block of bytes".to_owned()))
    }
    fn visit_seq<A: SeqAccess<'de>>(self, list: A) -> Result<Self::Value, A::Error> {
        Ok(Self::or_wrong(T::list(list)?, || "a list".to_owned()))
    }
    fn visit_map<A: MapAccess<'de>>(self, object: A) -> Result<Self::Value, A::Error> {
        Ok(Self::or_wrong(T::object(object)?, || {
            "an object".to_owned()
        }))
    }
}

fn shortened(text: &str) -> String {
    const ENOUGH: usize = 24;
    match text.char_indices().nth(ENOUGH) {
        Some((end, _)) => format!("{}…", text.get(..end).unwrap_or_default()),
        None => text.to_owned(),
    }
}

/// Reads a whole request from any serde source, with a problem for each field that no request has.
///
/// A source that fails part-way (it is no plain data) yields one problem for the request as a whole.
pub fn read<'de, T: Shape, D: Deserializer<'de>>(source: D) -> (Given<T>, Vec<Problem>) {
    let mut problems = Vec::new();
    let request = serde_ignored::deserialize(source, |path| {
        problems.push(unknown_field(&path.to_string()));
    });
    match request {
        Ok(request) => (request, problems),
        Err(_) => (
            Given::Wrong("something that is not plain data".to_owned()),
            problems,
        ),
    }
}

fn unknown_field(path: &str) -> Problem {
    // serde_ignored marks the inside of an optional value with "?", which is no part of the field's name.
    let field = path
        .split('.')
        .filter(|part| *part != "?")
        .collect::<Vec<_>>()
        .join(".");
    let message = message![
        "There is no field «",
        &field,
        "»; leave it out or correct its name."
    ];
    Problem {
        field,
        code: Code::UnknownField,
        message,
        limit: None,
    }
}
