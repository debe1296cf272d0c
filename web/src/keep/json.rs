//! Plain data as JSON.

use notchwright_core::plain::Plain;
use serde::ser::{Serialize, SerializeMap, Serializer};

/// Writes plain data without a space too many; its numbers are whole.
pub(crate) fn write(plain: &Plain) -> String {
    // There is nothing in plain data that JSON cannot hold; no text at all would be refused when read.
    serde_json::to_string(&Json(plain)).unwrap_or_default()
}

/// Reads JSON; `None` when it is none.
pub(super) fn read(text: &[u8]) -> Option<Plain> {
    serde_json::from_slice(text).ok()
}

struct Json<'a>(&'a Plain);

impl Serialize for Json<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self.0 {
            Plain::Nothing | Plain::Foreign(_) => serializer.serialize_unit(),
            Plain::Truth(truth) => serializer.serialize_bool(*truth),
            // A state counts in whole numbers: what is measured is kept as it was typed. A writer of
            // fractions would bring ten kilobytes of tables with it.
            Plain::Number(number) => serializer.serialize_i64(*number as i64),
            Plain::Text(text) => serializer.serialize_str(text),
            Plain::List(items) => serializer.collect_seq(items.iter().map(Json)),
            Plain::Object(fields) => {
                let mut object = serializer.serialize_map(Some(fields.len()))?;
                for (name, value) in fields {
                    object.serialize_entry(name, &Json(value))?;
                }
                object.end()
            }
        }
    }
}
