//! What a parts list is asked with.

use serde::{Serialize, Serializer};

use crate::check::Checker;
use crate::given::{Given, Shape, request};
use crate::plain::Plain;
use crate::units::{UNITS, Unit};

request! {
    /// Parts whose dimensions follow the stock as measured.
    pub struct PartsListRequest {
        /// What numbers without a unit are in, inside texts: `mm` (when left out) or `in`.
        pub unit: Given<String> = "unit",
        /// What parts are cut from; at most 50.
        pub stocks: Given<Vec<Given<StockRequest>>> = "stocks",
        /// Lengths with a name; at most 100, none when left out.
        pub measures: Given<Vec<Given<MeasureRequest>>> = "measures",
        /// The parts; at most 500.
        pub parts: Given<Vec<Given<PartRequest>>> = "parts",
    }

    /// A sheet or a board that parts are cut from.
    pub struct StockRequest {
        /// Its name, by which parts say what they are cut from.
        pub name: Given<String> = "name",
        /// Thickness as measured, mm: `t` in the dimensions of its parts.
        pub thickness: Given<f64> = "thickness",
        /// Thickness that the list was worked out with before, mm.
        pub former: Given<f64> = "former",
    }

    /// A length with a name.
    pub struct MeasureRequest {
        /// One word of letters, digits and `_`.
        pub name: Given<String> = "name",
        /// What it is; may use other measures, and `t` of the stock of the part that uses it.
        pub value: Given<DimensionRequest> = "value",
    }

    /// A dimension with a unit of its own.
    pub struct DimensionInRequest {
        /// A length or an expression.
        pub text: Given<String> = "text",
        /// What its numbers without a unit are in: `mm` (when left out) or `in`.
        pub unit: Given<String> = "unit",
    }

    /// One kind of part.
    pub struct PartRequest {
        /// What it is called.
        pub name: Given<String> = "name",
        /// Its number; the least that no other part has when left out.
        pub number: Given<f64> = "number",
        /// How many are needed.
        pub count: Given<f64> = "count",
        /// Length, along the grain.
        pub length: Given<DimensionRequest> = "length",
        /// Width, across the grain.
        pub width: Given<DimensionRequest> = "width",
        /// Name of its stock; may be left out where there is only one.
        pub stock: Given<String> = "stock",
        /// Whether it may be turned across the grain; not when left out.
        pub may_turn: Given<bool> = "mayTurn",
        /// What it is cut larger by on each side, to be trimmed; nothing when left out.
        pub trim: Given<DimensionRequest> = "trim",
        /// Whether it is cut later, to fit; not when left out.
        pub later: Given<bool> = "later",
    }
}

/// A dimension: millimetres, a text, or a text with the unit of its bare numbers.
#[derive(Clone, Debug, PartialEq)]
pub enum DimensionRequest {
    /// Millimetres.
    Mm(f64),
    /// A length or an expression: `11 1/2"`, `300 - 2*t`.
    Text(String),
    /// The same, whose numbers without a unit are not in the list's unit but in this.
    TextIn(String, Unit),
}

impl Shape for DimensionRequest {
    const EXPECTED: &'static str = "a number, a text, or an object with text and unit";

    fn take(plain: &Plain, check: &mut Checker<'_>) -> Option<Self> {
        match plain {
            Plain::Number(mm) => Some(Self::Mm(*mm)),
            Plain::Text(text) => Some(Self::Text(text.clone())),
            Plain::Object(_) => {
                let with_unit = DimensionInRequest::take(plain, check)?;
                let text = check.required("text", &with_unit.text)?.clone();
                let unit = check.word_or("unit", &with_unit.unit, &UNITS, Unit::Mm)?;
                Some(Self::TextIn(text, unit))
            }
            _ => None,
        }
    }
}

impl Serialize for DimensionRequest {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Mm(mm) => serializer.serialize_f64(*mm),
            Self::Text(text) => serializer.serialize_str(text),
            Self::TextIn(text, unit) => {
                let (unit, _) = UNITS
                    .iter()
                    .find(|(_, known)| known == unit)
                    .unwrap_or(&UNITS[0]);
                DimensionInRequest {
                    text: text.as_str().into(),
                    unit: (*unit).into(),
                }
                .serialize(serializer)
            }
        }
    }
}

impl From<f64> for Given<DimensionRequest> {
    fn from(mm: f64) -> Self {
        Self::Value(DimensionRequest::Mm(mm))
    }
}

impl From<&str> for Given<DimensionRequest> {
    fn from(text: &str) -> Self {
        Self::Value(DimensionRequest::Text(text.to_owned()))
    }
}
