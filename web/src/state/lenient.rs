//! Reading a stored state field by field: what cannot be read takes its default, the rest stays.

use serde::de::DeserializeOwned;
use serde::{Deserialize, Deserializer};
use serde_json::Value;

/// Reads one field, or leaves it at its default when something else stands there.
pub(super) fn lenient<'de, D: Deserializer<'de>, T: DeserializeOwned + Default>(
    deserializer: D,
) -> Result<T, D::Error> {
    let value = Value::deserialize(deserializer)?;
    Ok(T::deserialize(value).unwrap_or_default())
}

/// Reads a list up to `most` items and leaves out those that cannot be read.
pub(super) fn lenient_list<'de, D: Deserializer<'de>, T: DeserializeOwned>(
    deserializer: D,
    most: usize,
) -> Result<Vec<T>, D::Error> {
    let Value::Array(items) = Value::deserialize(deserializer)? else {
        return Ok(Vec::new());
    };
    let readable = items
        .into_iter()
        .filter_map(|item| T::deserialize(item).ok());
    Ok(readable.take(most).collect())
}

/// Whether a field may be left out of what is stored.
pub(super) fn is_default<T: Default + PartialEq>(value: &T) -> bool {
    *value == T::default()
}

/// Structs whose every field is read on its own and left out of what is stored while it has its default.
macro_rules! stored {
    ($(#[$about:meta])* pub struct $name:ident { $($(#[$doc:meta])* pub $field:ident: $kind:ty,)+ }) => {
        $(#[$about])*
        #[derive(Clone, Debug, Default, PartialEq, serde::Serialize, serde::Deserialize)]
        #[serde(rename_all = "camelCase", default)]
        pub struct $name {
            $(
                $(#[$doc])*
                #[serde(
                    deserialize_with = "crate::state::lenient::lenient",
                    skip_serializing_if = "crate::state::lenient::is_default"
                )]
                pub $field: $kind,
            )+
        }
    };
}
pub(super) use stored;
