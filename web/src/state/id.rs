//! Names for things in lists that stay the same while others come and go.

use core::fmt;

use notchwright_core::plain::Plain;

use super::stored::{Stored, read_whole};

/// Which item of a list.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Id(pub u16);

impl fmt::Display for Id {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.0)
    }
}

impl Stored for Id {
    fn write(&self) -> Plain {
        u32::from(self.0).write()
    }
    fn read(&mut self, plain: &Plain) -> bool {
        read_whole(&mut self.0, plain)
    }
    fn is_usual(&self) -> bool {
        self.0 == 0
    }
}
