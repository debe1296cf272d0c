//! Every field that is typed into, by name.

use super::{
    CutField, CutterField, DovetailField, Entry, Id, JointField, PiecesField, PointField,
    RoutField, SawField, ScrewField, SledField, SlidingField, SlotField, Spot, SquareField,
    StackField, Work,
};

/// Which field.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Field {
    /// The open job's name.
    Job,
    /// A field of the joint.
    Joint(JointField),
    /// A field of the pieces that the joint is cut on.
    Pieces(PiecesField),
    /// A field of the dovetails.
    Dovetail(DovetailField),
    /// A field of the sliding dovetail.
    Sliding(SlidingField),
    /// A field of a saw.
    Saw(Id, SawField),
    /// A field of a sled.
    Sled(Id, SledField),
    /// A field of a cutter.
    Cutter(Id, CutterField),
    /// A field of a screw.
    Screw(Id, ScrewField),
    /// A field of the stack builder.
    Stack(StackField),
    /// A field of the kerf measured from a stepped slot.
    Slot(SlotField),
    /// A field of the cut that a sled is fitted for.
    Cut(CutField),
    /// A field of the five-cut test.
    Square(SquareField),
    /// A field of a measured position.
    Point(Id, PointField),
    /// A field of the groove on the router table.
    Rout(RoutField),
    /// A field of what is made.
    Making(Spot),
}

/// What belongs into a field.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Kind {
    /// Any text.
    Name,
    /// A length.
    Length,
    /// A length, or a sum over names: `300 - 2*t`.
    Sum,
    /// Lengths, one a line or separated by semicolons.
    Lengths,
    /// A plain number.
    Number,
    /// Plain numbers separated by spaces or semicolons.
    Numbers,
}

impl Field {
    /// What belongs into it.
    #[must_use]
    pub fn kind(self) -> Kind {
        match self {
            Self::Job => Kind::Name,
            Self::Joint(field) => field.kind(),
            Self::Pieces(field) => field.kind(),
            Self::Dovetail(field) => field.kind(),
            Self::Sliding(field) => field.kind(),
            Self::Saw(_, field) => field.kind(),
            Self::Cutter(_, field) => field.kind(),
            Self::Screw(_, field) => field.kind(),
            Self::Stack(field) => field.kind(),
            Self::Slot(field) => field.kind(),
            Self::Sled(_, field) => field.kind(),
            Self::Cut(field) => field.kind(),
            Self::Square(field) => field.kind(),
            Self::Point(_, field) => field.kind(),
            Self::Rout(field) => field.kind(),
            Self::Making(spot) => spot.kind,
        }
    }

    /// The id of its input in the page: `joint-width`, `cutter-3-kerf`.
    #[must_use]
    pub fn id(self) -> String {
        match self {
            Self::Job => "job-name".to_owned(),
            Self::Joint(field) => format!("joint-{}", field.id()),
            Self::Pieces(field) => format!("pieces-{}", field.id()),
            Self::Dovetail(field) => format!("dovetail-{}", field.id()),
            Self::Sliding(field) => format!("sliding-{}", field.id()),
            Self::Saw(item, field) => format!("saw-{item}-{}", field.id()),
            Self::Cutter(item, field) => format!("cutter-{item}-{}", field.id()),
            Self::Screw(item, field) => format!("screw-{item}-{}", field.id()),
            Self::Stack(field) => format!("stack-{}", field.id()),
            Self::Slot(field) => format!("slot-{}", field.id()),
            Self::Sled(item, field) => format!("sled-{item}-{}", field.id()),
            Self::Cut(field) => format!("cut-{}", field.id()),
            Self::Square(field) => format!("square-{}", field.id()),
            Self::Point(item, field) => format!("point-{item}-{}", field.id()),
            Self::Rout(field) => format!("rout-{}", field.id()),
            Self::Making(spot) => spot.id(),
        }
    }
}

impl Work {
    /// What was typed into `field`; `None` when its item is gone.
    #[must_use]
    pub fn entry(&self, field: Field) -> Option<&Entry> {
        match field {
            Field::Job => Some(&self.job.name),
            Field::Joint(field) => Some(self.joint.entry(field)),
            Field::Pieces(field) => Some(self.joint.pieces.entry(field)),
            Field::Dovetail(field) => Some(self.joint.dovetail.entry(field)),
            Field::Sliding(field) => Some(self.joint.sliding.entry(field)),
            Field::Saw(item, field) => Some(self.shop.saws.get(item)?.entry(field)),
            Field::Cutter(item, field) => Some(self.shop.cutters.get(item)?.entry(field)),
            Field::Screw(item, field) => Some(self.shop.screws.get(item)?.entry(field)),
            Field::Stack(field) => Some(self.shop.stack.entry(field)),
            Field::Slot(field) => Some(self.shop.slot.entry(field)),
            Field::Sled(item, field) => Some(self.shop.sleds.get(item)?.entry(field)),
            Field::Cut(field) => Some(self.sled.cut.entry(field)),
            Field::Square(field) => Some(self.sled.square.entry(field)),
            Field::Point(item, field) => Some(self.sled.points.get(item)?.entry(field)),
            Field::Rout(field) => Some(self.sled.rout.entry(field)),
            Field::Making(spot) => self.job.making.entry(spot),
        }
    }

    /// What was typed into `field`, to be changed; `None` when its item is gone, and for what is made, where
    /// fields come into being when something is typed: see [`super::Making::enter`].
    pub fn entry_mut(&mut self, field: Field) -> Option<&mut Entry> {
        match field {
            Field::Job => Some(&mut self.job.name),
            Field::Joint(field) => Some(self.joint.entry_mut(field)),
            Field::Pieces(field) => Some(self.joint.pieces.entry_mut(field)),
            Field::Dovetail(field) => Some(self.joint.dovetail.entry_mut(field)),
            Field::Sliding(field) => Some(self.joint.sliding.entry_mut(field)),
            Field::Saw(item, field) => Some(self.shop.saws.get_mut(item)?.entry_mut(field)),
            Field::Cutter(item, field) => Some(self.shop.cutters.get_mut(item)?.entry_mut(field)),
            Field::Screw(item, field) => Some(self.shop.screws.get_mut(item)?.entry_mut(field)),
            Field::Stack(field) => Some(self.shop.stack.entry_mut(field)),
            Field::Slot(field) => Some(self.shop.slot.entry_mut(field)),
            Field::Sled(item, field) => Some(self.shop.sleds.get_mut(item)?.entry_mut(field)),
            Field::Cut(field) => Some(self.sled.cut.entry_mut(field)),
            Field::Square(field) => Some(self.sled.square.entry_mut(field)),
            Field::Point(item, field) => Some(self.sled.points.get_mut(item)?.entry_mut(field)),
            Field::Rout(field) => Some(self.sled.rout.entry_mut(field)),
            Field::Making(_) => None,
        }
    }
}

/// Names the entries of a form: one row each with the field, what belongs into it, where it is kept,
/// and the word for it in ids.
macro_rules! typed_fields {
    ($(#[$about:meta])* $fields:ident of $form:ident {
        $($(#[$doc:meta])* $field:ident: $kind:ident = $($place:ident).+ as $id:literal;)+
    }) => {
        $(#[$about])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum $fields {
            $($(#[$doc])* $field),+
        }

        impl $fields {
            /// All of them.
            pub const ALL: &'static [Self] = &[$(Self::$field),+];

            /// What belongs into it.
            #[must_use]
            pub fn kind(self) -> $crate::state::Kind {
                match self { $(Self::$field => $crate::state::Kind::$kind),+ }
            }

            pub(super) fn id(self) -> &'static str {
                match self { $(Self::$field => $id),+ }
            }
        }

        impl $form {
            /// What was typed into `field`.
            #[must_use]
            pub fn entry(&self, field: $fields) -> &$crate::state::Entry {
                match field { $($fields::$field => &self.$($place).+),+ }
            }

            /// What was typed into `field`, to be changed.
            pub fn entry_mut(&mut self, field: $fields) -> &mut $crate::state::Entry {
                match field { $($fields::$field => &mut self.$($place).+),+ }
            }
        }
    };
}
pub(super) use typed_fields;
