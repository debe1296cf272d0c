//! The two units a person may work in.

use serde::{Deserialize, Serialize};

use super::Mm;

/// What a bare number means, and what a length is shown in: `"mm"` or `"in"` in requests.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Unit {
    /// Millimetres.
    #[default]
    #[serde(rename = "mm")]
    Mm,
    /// Inches of exactly 25.4 mm.
    #[serde(rename = "in")]
    Inch,
}

impl Unit {
    /// One of this unit.
    #[must_use]
    pub const fn length(self) -> Mm {
        match self {
            Self::Mm => Mm::constant(1.0),
            Self::Inch => Mm::INCH,
        }
    }

    /// The unit as it is written after a number, without the space: `mm` or `"`.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Mm => "mm",
            Self::Inch => "\"",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Unit;

    #[test]
    fn requests_name_units_by_their_symbols() {
        for (unit, json) in [(Unit::Mm, "\"mm\""), (Unit::Inch, "\"in\"")] {
            assert_eq!(serde_json::to_string(&unit).unwrap(), json);
            assert_eq!(serde_json::from_str::<Unit>(json).unwrap(), unit);
        }
        assert!(serde_json::from_str::<Unit>("\"inch\"").is_err());
    }
}
