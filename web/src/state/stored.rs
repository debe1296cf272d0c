//! How the state is written as plain data and read back: what cannot be read takes its default, the
//! rest stays.

use notchwright_core::plain::Plain;
use notchwright_core::units::Unit;

/// Something that is part of what is stored.
///
/// Plain code instead of a derived reader and writer: those would be made anew for every struct, and a
/// phone would have to fetch them all.
pub(crate) trait Stored: Sized {
    /// As plain data.
    fn write(&self) -> Plain;

    /// From plain data; `None` when something else stands there.
    fn read(plain: &Plain) -> Option<Self>;
}

impl Stored for bool {
    fn write(&self) -> Plain {
        Plain::Truth(*self)
    }
    fn read(plain: &Plain) -> Option<Self> {
        match plain {
            Plain::Truth(truth) => Some(*truth),
            _ => None,
        }
    }
}

impl Stored for u32 {
    fn write(&self) -> Plain {
        Plain::Number(f64::from(*self))
    }
    fn read(plain: &Plain) -> Option<Self> {
        match plain {
            Plain::Number(number)
                if number.fract() == 0.0 && (0.0..=f64::from(Self::MAX)).contains(number) =>
            {
                Some(*number as Self)
            }
            _ => None,
        }
    }
}

impl Stored for usize {
    fn write(&self) -> Plain {
        u32::try_from(*self).unwrap_or(u32::MAX).write()
    }
    fn read(plain: &Plain) -> Option<Self> {
        u32::read(plain)?.try_into().ok()
    }
}

impl Stored for Unit {
    fn write(&self) -> Plain {
        let word = match self {
            Self::Mm => "mm",
            Self::Inch => "in",
        };
        Plain::Text(word.to_owned())
    }
    fn read(plain: &Plain) -> Option<Self> {
        match plain {
            Plain::Text(word) if word == "mm" => Some(Self::Mm),
            Plain::Text(word) if word == "in" => Some(Self::Inch),
            _ => None,
        }
    }
}

/// The field of an object.
pub(crate) fn field<'a>(fields: &'a [(String, Plain)], name: &str) -> Option<&'a Plain> {
    fields
        .iter()
        .find(|(other, _)| other == name)
        .map(|(_, value)| value)
}

/// Structs whose every field is read on its own and left out of what is stored while it has its default.
macro_rules! stored {
    ($(#[$about:meta])* pub struct $name:ident {
        $($(#[$doc:meta])* pub $field:ident: $kind:ty = $outside:literal,)+
    }) => {
        $(#[$about])*
        #[derive(Clone, Debug, Default, PartialEq)]
        pub struct $name {
            $($(#[$doc])* pub $field: $kind,)+
        }

        impl $crate::state::stored::Stored for $name {
            fn write(&self) -> notchwright_core::plain::Plain {
                let usual = Self::default();
                let mut fields = Vec::new();
                $(if self.$field != usual.$field {
                    fields.push(($outside.to_owned(), $crate::state::stored::Stored::write(&self.$field)));
                })+
                notchwright_core::plain::Plain::Object(fields)
            }

            fn read(plain: &notchwright_core::plain::Plain) -> Option<Self> {
                let notchwright_core::plain::Plain::Object(fields) = plain else {
                    return None;
                };
                let read = Self {
                    $($field: $crate::state::stored::field(fields, $outside)
                        .and_then($crate::state::stored::Stored::read)
                        .unwrap_or_default(),)+
                };
                Some(read)
            }
        }
    };
}
pub(super) use stored;

/// Enums that are stored as words.
macro_rules! words {
    ($(#[$about:meta])* pub enum $name:ident {
        $($(#[$doc:meta])* $variant:ident = $word:literal,)+
    }) => {
        $(#[$about])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
        pub enum $name {
            $($(#[$doc])* $variant,)+
        }

        impl $crate::state::stored::Stored for $name {
            fn write(&self) -> notchwright_core::plain::Plain {
                let word = match self { $(Self::$variant => $word,)+ };
                notchwright_core::plain::Plain::Text(word.to_owned())
            }

            fn read(plain: &notchwright_core::plain::Plain) -> Option<Self> {
                match plain {
                    notchwright_core::plain::Plain::Text(word) => match word.as_str() {
                        $($word => Some(Self::$variant),)+
                        _ => None,
                    },
                    _ => None,
                }
            }
        }
    };
}
pub(super) use words;
