//! How many boards are cut with a joint, and what they are called.

use super::entry::Entry;
use super::field::typed_fields;
use super::stored::{stored, words};

stored! {
    /// The pieces that a joint is for: so many drawers, each with these boards.
    pub struct PiecesForm {
        /// What is made: `Drawer`.
        pub what: Entry = "what",
        /// How many of them; blank for one.
        pub count: Entry = "count",
        /// Names of the boards of each that are cut as board A; blank for one without a name.
        pub names_a: Entry = "namesA",
        /// The same for board B.
        pub names_b: Entry = "namesB",
        /// Ends of each board A that are cut.
        pub ends_a: Ends = "endsA",
        /// Ends of each board B that are cut.
        pub ends_b: Ends = "endsB",
    }
}

typed_fields! {
    /// The pieces' fields.
    PiecesField of PiecesForm {
        /// What is made.
        What: Name = what as "what";
        /// How many of them.
        Count: Number = count as "count";
        /// Names of the boards that are cut as board A.
        NamesA: Name = names_a as "names-a";
        /// Names of the boards that are cut as board B.
        NamesB: Name = names_b as "names-b";
    }
}

words! {
    /// Which ends of a board are cut with a joint.
    pub enum Ends {
        /// One.
        #[default]
        One = "one",
        /// Both.
        Both = "both",
    }
}
