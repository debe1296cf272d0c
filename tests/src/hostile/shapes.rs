//! What a request is made of.

/// What stands somewhere in a request.
pub(super) enum Shape {
    /// A number from this to that.
    Number(f64, f64),
    /// A whole number from this to that.
    Whole(u32, u32),
    /// A number at most so far from the one before it.
    Near(f64),
    /// One of these words.
    Word(&'static [&'static str]),
    /// `true` or `false`.
    Truth,
    /// A length as somebody types it.
    Typed,
    /// At least and at most so many of the same.
    List(usize, usize, &'static Shape),
    /// Fields with their names.
    Object(&'static [Field]),
    /// One of these.
    Either(&'static [Shape]),
}

/// Fields of an object.
pub(super) enum Field {
    /// It must be there.
    Must(&'static str, &'static Shape),
    /// It may be left out.
    May(&'static str, &'static Shape),
    /// One of these groups is there.
    Either(&'static [&'static [Field]]),
}

impl Shape {
    /// Every name of a field and every word in it.
    pub(super) fn names(&self) -> Vec<&'static str> {
        match self {
            Self::Word(words) => words.to_vec(),
            Self::List(_, _, item) => item.names(),
            Self::Object(fields) => fields.iter().flat_map(Field::names).collect(),
            Self::Either(shapes) => shapes.iter().flat_map(Self::names).collect(),
            _ => Vec::new(),
        }
    }
}

impl Field {
    fn names(&self) -> Vec<&'static str> {
        match self {
            Self::Must(name, shape) | Self::May(name, shape) => {
                std::iter::once(*name).chain(shape.names()).collect()
            }
            Self::Either(groups) => groups
                .iter()
                .copied()
                .flatten()
                .flat_map(Self::names)
                .collect(),
        }
    }
}
