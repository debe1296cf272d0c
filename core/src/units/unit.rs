//! The two units a person may work in.

use super::Mm;

/// What a bare number means, and what a length is shown in: `"mm"` or `"in"` in requests.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Unit {
    /// Millimetres.
    #[default]
    Mm,
    /// Inches of exactly 25.4 mm.
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

    /// Both units.
    pub const ALL: [Self; 2] = [Self::Mm, Self::Inch];

    /// The unit's word in requests: `mm` or `in`.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Mm => "mm",
            Self::Inch => "in",
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
    fn requests_name_units_by_their_words() {
        assert_eq!(Unit::ALL.map(Unit::word), ["mm", "in"]);
    }
}
