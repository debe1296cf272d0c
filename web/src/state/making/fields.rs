//! The fields of each form by name.

use super::{Group, Spot};
use crate::state::{Field, Id, Kind};

/// A field that a form has.
#[derive(Clone, Copy, Debug)]
pub struct Known {
    group: Group,
    name: &'static str,
    label: &'static str,
    kind: Kind,
}

impl Known {
    const fn new(group: Group, name: &'static str, label: &'static str, kind: Kind) -> Self {
        Self {
            group,
            name,
            label,
            kind,
        }
    }

    /// The field of a row.
    #[must_use]
    pub fn of(self, row: Id) -> Field {
        Field::Making(self.spot(row))
    }

    /// The field of a form that is no row.
    #[must_use]
    pub fn alone(self) -> Field {
        self.of(Id::default())
    }

    /// Where it is.
    #[must_use]
    pub fn spot(self, row: Id) -> Spot {
        let Self {
            group,
            name,
            label,
            kind,
        } = self;
        Spot {
            group,
            row,
            name,
            label,
            kind,
        }
    }

    /// What belongs into it.
    #[must_use]
    pub fn kind(self) -> Kind {
        self.kind
    }

    /// Its name.
    #[must_use]
    pub fn name(self) -> &'static str {
        self.name
    }
}

macro_rules! fields {
    ($($(#[$doc:meta])* $module:ident of $group:ident {
        $($name:ident: $kind:ident = $word:literal, $label:literal;)+
    })+) => {$(
        $(#[$doc])*
        pub mod $module {
            use super::{Group, Kind, Known};

            /// All of them.
            pub const ALL: &[Known] = &[$($name),+];

            $(
                #[doc = $label]
                pub const $name: Known = Known::new(Group::$group, $word, $label, Kind::$kind);
            )+
        }
    )+};
}

fields! {
    /// A part.
    part of Parts {
        NAME: Name = "name", "Name";
        COUNT: Number = "count", "Pieces";
        LENGTH: Sum = "length", "Length";
        WIDTH: Sum = "width", "Width";
        STOCK: Name = "stock", "Stock";
        MAY_TURN: Name = "mayTurn", "Grain";
        TRIM: Sum = "trim", "To trim, each side";
        LATER: Name = "later", "Cut";
    }

    /// What parts are cut from.
    stock of Stocks {
        NAME: Name = "name", "Name";
        THICKNESS: Length = "thickness", "Measured";
        FORMER: Length = "former", "Thickness before";
    }

    /// A length with a name.
    measure of Measures {
        NAME: Name = "name", "Name";
        VALUE: Sum = "value", "Length";
    }
}
