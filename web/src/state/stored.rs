//! How the state is written as plain data and read back: what cannot be read keeps its usual value,
//! the rest stays.

use notchwright_core::plain::Plain;
use notchwright_core::units::Unit;

/// Something that is part of what is stored.
///
/// One writer and one reader go through the fields of every struct: derived ones would be made anew
/// for each, and a phone would have to fetch them all.
pub(crate) trait Stored {
    /// As plain data.
    fn write(&self) -> Plain;

    /// Takes on what stands in plain data. Where something else stands there, nothing changes and the
    /// answer is `false`.
    fn read(&mut self, plain: &Plain) -> bool;

    /// Whether it is as it would be with nothing stored, so that it need not be.
    fn is_usual(&self) -> bool;
}

/// The field of an object.
pub(crate) fn field<'a>(fields: &'a [(String, Plain)], name: &str) -> Option<&'a Plain> {
    fields
        .iter()
        .find(|(other, _)| other == name)
        .map(|(_, value)| value)
}

/// An object of those fields that are not as usual.
pub(super) fn write_fields(fields: &[(&str, &dyn Stored)]) -> Plain {
    let unusual = fields.iter().filter(|(_, value)| !value.is_usual());
    let written = unusual.map(|(name, value)| ((*name).to_owned(), value.write()));
    Plain::Object(written.collect())
}

/// Reads each field of an object on its own.
pub(super) fn read_fields(fields: &mut [(&str, &mut dyn Stored)], plain: &Plain) -> bool {
    let Plain::Object(stored) = plain else {
        return false;
    };
    for (name, value) in fields {
        if let Some(plain) = field(stored, name) {
            value.read(plain);
        }
    }
    true
}

/// Puts a value that was read in its place, if one was.
fn put<T>(place: &mut T, value: Option<T>) -> bool {
    let is_read = value.is_some();
    if let Some(value) = value {
        *place = value;
    }
    is_read
}

/// Takes on what `word` finds for a text.
pub(super) fn read_word<T>(place: &mut T, plain: &Plain, word: fn(&str) -> Option<T>) -> bool {
    match plain {
        Plain::Text(text) => put(place, word(text)),
        _ => false,
    }
}

impl Stored for bool {
    fn write(&self) -> Plain {
        Plain::Truth(*self)
    }
    fn read(&mut self, plain: &Plain) -> bool {
        let truth = match plain {
            Plain::Truth(truth) => Some(*truth),
            _ => None,
        };
        put(self, truth)
    }
    fn is_usual(&self) -> bool {
        !*self
    }
}

impl Stored for u32 {
    fn write(&self) -> Plain {
        Plain::Number(f64::from(*self))
    }
    fn read(&mut self, plain: &Plain) -> bool {
        let whole = match plain {
            Plain::Number(number) if number.fract() == 0.0 => Some(*number),
            _ => None,
        };
        let inside = whole.filter(|number| (0.0..=f64::from(Self::MAX)).contains(number));
        put(self, inside.map(|number| number as Self))
    }
    fn is_usual(&self) -> bool {
        *self == 0
    }
}

/// Reads a whole number that is stored in a narrower or wider kind than `u32`.
pub(super) fn read_whole<T: TryFrom<u32>>(place: &mut T, plain: &Plain) -> bool {
    let mut number = 0_u32;
    number.read(plain) && put(place, number.try_into().ok())
}

impl Stored for usize {
    fn write(&self) -> Plain {
        u32::try_from(*self).unwrap_or(u32::MAX).write()
    }
    fn read(&mut self, plain: &Plain) -> bool {
        read_whole(self, plain)
    }
    fn is_usual(&self) -> bool {
        *self == 0
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
    fn read(&mut self, plain: &Plain) -> bool {
        read_word(self, plain, |word| match word {
            "mm" => Some(Self::Mm),
            "in" => Some(Self::Inch),
            _ => None,
        })
    }
    fn is_usual(&self) -> bool {
        *self == Self::default()
    }
}

/// Structs that are stored as objects, each field under the name beside it.
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
                $crate::state::stored::write_fields(&[
                    $(($outside, &self.$field as &dyn $crate::state::stored::Stored)),+
                ])
            }
            fn read(&mut self, plain: &notchwright_core::plain::Plain) -> bool {
                $crate::state::stored::read_fields(
                    &mut [$(($outside, &mut self.$field as &mut dyn $crate::state::stored::Stored)),+],
                    plain,
                )
            }
            fn is_usual(&self) -> bool {
                $($crate::state::stored::Stored::is_usual(&self.$field))&&+
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
            fn read(&mut self, plain: &notchwright_core::plain::Plain) -> bool {
                $crate::state::stored::read_word(self, plain, |word| match word {
                    $($word => Some(Self::$variant),)+
                    _ => None,
                })
            }
            fn is_usual(&self) -> bool {
                *self == Self::default()
            }
        }
    };
}
pub(super) use words;
