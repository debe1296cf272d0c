//! Where the reading is zero.

use crate::check::Checker;
use crate::given::{Given, request};
use crate::limits;
use crate::units::Mm;

request! {
    /// A zero as a request gives it.
    pub struct ZeroRequest {
        /// `touch`, `flush` or `testKerf`.
        pub kind: Given<String> = "kind",
        /// Test kerf: the reading at which it was made, mm.
        pub reading: Given<f64> = "reading",
        /// Test kerf: measured from the reference edge to its near side, mm.
        pub measured: Given<f64> = "measured",
    }
}

/// Where the reading is zero.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Zero {
    /// The reference edge just touches the side of the stopped cutter: the kerf would cover `[-kerf, 0]`.
    #[default]
    Touch,
    /// The cutter is flush with the reference edge: the kerf covers `[0, kerf]`.
    Flush,
    /// A kerf made at `reading` lies with its near side `measured` from the reference edge.
    TestKerf {
        /// The reading at which the kerf was made.
        reading: Mm,
        /// Reference edge to the near side of that kerf.
        measured: Mm,
    },
}

impl Zero {
    /// Checks the request at the checker's place.
    pub fn check(request: &ZeroRequest, check: &mut Checker<'_>) -> Option<Self> {
        let kinds = [
            ("touch", Self::Touch),
            ("flush", Self::Flush),
            ("testKerf", Self::measured_kerf()),
        ];
        let kind = check.word("kind", &request.kind, &kinds)?;
        if matches!(kind, Self::TestKerf { .. }) {
            let reading = check.length("reading", &request.reading, &limits::READING);
            let measured = check.length("measured", &request.measured, &limits::READING);
            return Some(Self::TestKerf {
                reading: reading?,
                measured: measured?,
            });
        }
        let given = [
            ("reading", request.reading.is_missing()),
            ("measured", request.measured.is_missing()),
        ];
        check.unused("this way to find zero", &given);
        Some(kind)
    }

    const fn measured_kerf() -> Self {
        Self::TestKerf {
            reading: Mm::ZERO,
            measured: Mm::ZERO,
        }
    }
}
