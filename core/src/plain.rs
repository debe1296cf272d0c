//! Plain data as it comes from outside, before it is anything.

use core::fmt;

use crate::units::write_number;
use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};

/// What JSON can say, and numbers that it cannot.
#[derive(Clone, Debug, PartialEq)]
pub enum Plain {
    /// `null`, or nothing at all.
    Nothing,
    /// `true` or `false`.
    Truth(bool),
    /// A number; `NaN` and the infinite are only refused where they are used.
    Number(f64),
    /// A text.
    Text(String),
    /// A list.
    List(Vec<Plain>),
    /// An object, its fields in the order given.
    Object(Vec<(String, Plain)>),
    /// Something that is no data, described for the message: "a function".
    Foreign(&'static str),
}

impl Plain {
    /// What stands here, in a sentence: "the text «abc»".
    #[must_use]
    pub fn described(&self) -> String {
        match self {
            Self::Nothing => "nothing".into(),
            Self::Truth(truth) => truth.to_string(),
            Self::Number(number) => format!("the number {}", write_number(*number, 6)),
            Self::Text(text) => format!("the text «{}»", shortened(text)),
            Self::List(_) => "a list".into(),
            Self::Object(_) => "an object".into(),
            Self::Foreign(what) => (*what).into(),
        }
    }
}

fn shortened(text: &str) -> String {
    const ENOUGH: usize = 24;
    match text.char_indices().nth(ENOUGH) {
        Some((end, _)) => format!("{}…", text.get(..end).unwrap_or_default()),
        None => text.to_owned(),
    }
}

impl<'de> Deserialize<'de> for Plain {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(Taker)
    }
}

struct Taker;

impl<'de> Visitor<'de> for Taker {
    type Value = Plain;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("plain data")
    }
    fn visit_unit<E>(self) -> Result<Plain, E> {
        Ok(Plain::Nothing)
    }
    fn visit_bool<E>(self, truth: bool) -> Result<Plain, E> {
        Ok(Plain::Truth(truth))
    }
    fn visit_i64<E>(self, number: i64) -> Result<Plain, E> {
        Ok(Plain::Number(number as f64))
    }
    fn visit_u64<E>(self, number: u64) -> Result<Plain, E> {
        Ok(Plain::Number(number as f64))
    }
    fn visit_f64<E>(self, number: f64) -> Result<Plain, E> {
        Ok(Plain::Number(number))
    }
    fn visit_str<E>(self, text: &str) -> Result<Plain, E> {
        Ok(Plain::Text(text.to_owned()))
    }
    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Plain, A::Error> {
        let mut items = Vec::new();
        while let Some(item) = list.next_element()? {
            items.push(item);
        }
        Ok(Plain::List(items))
    }
    fn visit_map<A: MapAccess<'de>>(self, mut object: A) -> Result<Plain, A::Error> {
        let mut fields = Vec::new();
        while let Some(field) = object.next_entry()? {
            fields.push(field);
        }
        Ok(Plain::Object(fields))
    }
}
