//! The screw that moves the carriage.

use crate::check::Checker;
use crate::given::{Given, request};
use crate::limits;
use crate::message;
use crate::problem::Code;
use crate::units::Mm;

request! {
    /// A screw as a request gives it.
    pub struct ScrewRequest {
        /// Carriage travel per turn, mm; either this or `threads_per_inch`.
        pub lead: Given<f64> = "lead",
        /// Threads per inch of a single-start screw; `lead = 25.4 / threadsPerInch`.
        pub threads_per_inch: Given<f64> = "threadsPerInch",
        /// Graduations of the wheel, per turn.
        pub divisions: Given<f64> = "divisions",
        /// Lost motion when the wheel changes direction, mm; 0 when left out.
        pub backlash: Given<f64> = "backlash",
        /// What readings are rounded to: `division` (when left out), `half` or `none`.
        pub rounding: Given<String> = "rounding",
        /// Where the cut goes as readings rise: `away` from the reference edge (when left out) or `towards` it.
        pub rises: Given<String> = "rises",
        /// How far the carriage can travel, mm; unlimited when left out.
        pub travel: Given<f64> = "travel",
    }
}

/// What readings are rounded to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rounding {
    /// Whole divisions.
    Division,
    /// Half divisions.
    Half,
    /// Nothing: a digital scale, or an eye for vernier readings.
    None,
}

/// Where the cut goes on the board as readings rise.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rises {
    /// Away from the reference edge.
    Away,
    /// Towards the reference edge.
    Towards,
}

impl Rises {
    /// +1 or −1: the change of reading for a move of the cut away from the reference edge.
    #[must_use]
    pub fn sign(self) -> f64 {
        match self {
            Self::Away => 1.0,
            Self::Towards => -1.0,
        }
    }
}

/// A checked screw.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Screw {
    lead: Mm,
    divisions: u32,
    backlash: Mm,
    rounding: Rounding,
    rises: Rises,
    travel: Option<Mm>,
}

/// The step of a dial that is not rounded: finer than wood can tell, so that one path serves all dials.
const UNROUNDED: Mm = Mm::constant(1e-7);

impl Screw {
    /// Checks the request at the checker's place.
    pub fn check(request: &ScrewRequest, check: &mut Checker<'_>) -> Option<Self> {
        let lead = Self::check_lead(request, check);
        let divisions = check.count("divisions", &request.divisions, &limits::DIVISIONS);
        let backlash = check.length_or("backlash", &request.backlash, &limits::BACKLASH, Mm::ZERO);
        let roundings = [
            ("division", Rounding::Division),
            ("half", Rounding::Half),
            ("none", Rounding::None),
        ];
        let rounding = check.word_or(
            "rounding",
            &request.rounding,
            &roundings,
            Rounding::Division,
        );
        let directions = [("away", Rises::Away), ("towards", Rises::Towards)];
        let rises = check.word_or("rises", &request.rises, &directions, Rises::Away);
        let travel = check.optional_length("travel", &request.travel, &limits::TRAVEL);
        Some(Self {
            lead: lead?,
            divisions: divisions?,
            backlash: backlash?,
            rounding: rounding?,
            rises: rises?,
            travel: travel?,
        })
    }

    fn check_lead(request: &ScrewRequest, check: &mut Checker<'_>) -> Option<Mm> {
        match (
            request.lead.is_missing(),
            request.threads_per_inch.is_missing(),
        ) {
            (false, true) => check.length("lead", &request.lead, &limits::LEAD),
            (true, false) => {
                let threads = check.number(
                    "threadsPerInch",
                    &request.threads_per_inch,
                    &limits::THREADS_PER_INCH,
                )?;
                Some(Mm::INCH / threads)
            }
            (true, true) => {
                let message = message!["Give the screw's lead, or its threads per inch."];
                check.refuse("lead", Code::Missing, message, None);
                None
            }
            (false, false) => {
                let message = message!["Give either the lead or threads per inch, not both."];
                check.refuse("threadsPerInch", Code::Conflict, message, None);
                None
            }
        }
    }

    /// Carriage travel per turn.
    #[must_use]
    pub fn lead(&self) -> Mm {
        self.lead
    }

    /// Graduations per turn.
    #[must_use]
    pub fn divisions(&self) -> u32 {
        self.divisions
    }

    /// Lost motion when the wheel changes direction.
    #[must_use]
    pub fn backlash(&self) -> Mm {
        self.backlash
    }

    /// Where the cut goes as readings rise.
    #[must_use]
    pub fn rises(&self) -> Rises {
        self.rises
    }

    /// How far the carriage can go, if that is known.
    #[must_use]
    pub fn travel(&self) -> Option<Mm> {
        self.travel
    }

    /// Carriage travel per division.
    #[must_use]
    pub fn division(&self) -> Mm {
        self.lead / f64::from(self.divisions)
    }

    /// What readings are rounded to.
    #[must_use]
    pub fn rounding(&self) -> Rounding {
        self.rounding
    }

    /// The smallest step that can be set: the resolution.
    #[must_use]
    pub fn step(&self) -> Mm {
        match self.rounding {
            Rounding::Division => self.division(),
            Rounding::Half => self.division() / 2.0,
            Rounding::None => UNROUNDED,
        }
    }
}
