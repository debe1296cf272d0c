//! Woods by name, with what table 13-5 says of them.

use super::movement::Coefficient;

/// Where a pair of coefficients was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grade {
    /// Read in table 13-5 of the Wood Handbook.
    Table,
    /// Worked out with [`Coefficient::from_shrinkage`] from shrinkages read in its table 4-3.
    Shrinkage,
}

/// A wood and how it moves across its grain.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Species {
    /// Its name in requests: lower case, words joined by hyphens.
    pub name: &'static str,
    /// Across the growth rings: the width of a quarter-sawn board.
    pub radial: Coefficient,
    /// Along the growth rings: the width of a flat-sawn board.
    pub tangential: Coefficient,
    /// Where both were found.
    pub grade: Grade,
}

const fn wood(name: &'static str, radial: f64, tangential: f64, grade: Grade) -> Species {
    Species {
        name,
        radial: Coefficient::new(radial),
        tangential: Coefficient::new(tangential),
        grade,
    }
}

use Grade::{Shrinkage, Table};

/// Every wood known by name; for another one, its shrinkage can be given.
pub const SPECIES: &[Species] = &[
    wood("red-alder", 0.001_51, 0.002_56, Table),
    wood("white-ash", 0.001_69, 0.002_74, Table),
    wood("basswood", 0.002_30, 0.003_30, Table),
    wood("american-beech", 0.001_90, 0.004_31, Table),
    wood("paper-birch", 0.002_19, 0.003_04, Table),
    wood("yellow-birch", 0.002_56, 0.003_38, Table),
    wood("black-cherry", 0.001_26, 0.002_48, Table),
    wood("pecan-hickory", 0.001_69, 0.003_15, Table),
    wood("red-maple", 0.001_37, 0.002_89, Table),
    wood("sugar-maple", 0.001_65, 0.003_53, Table),
    wood("red-oak", 0.001_58, 0.003_69, Table),
    wood("white-oak", 0.001_80, 0.003_65, Table),
    wood("sweetgum", 0.001_83, 0.003_65, Table),
    wood("american-sycamore", 0.001_72, 0.002_96, Table),
    wood("black-walnut", 0.001_90, 0.002_74, Table),
    wood("yellow-poplar", 0.001_58, 0.002_89, Shrinkage),
    wood("coast-douglas-fir", 0.001_65, 0.002_67, Shrinkage),
    wood("white-fir", 0.001_12, 0.002_45, Shrinkage),
];

impl Species {
    /// The wood of this name.
    #[must_use]
    pub fn named(name: &str) -> Option<&'static Self> {
        SPECIES.iter().find(|species| species.name == name)
    }
}
