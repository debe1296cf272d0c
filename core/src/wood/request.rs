//! Wood and air as a request gives them.

use super::moisture::{Moisture, equilibrium_moisture};
use super::movement::Coefficient;
use super::species::{SPECIES, Species};
use crate::check::Checker;
use crate::given::{Given, request};
use crate::limits;
use crate::message;
use crate::problem::Code;

request! {
    /// Solid wood, either by name or by its shrinkage.
    pub struct SolidWoodRequest {
        /// Its name, one of [`SPECIES`].
        pub species: Given<String> = "species",
        /// Shrinkage of its width from green to oven-dry, percent, in place of a name.
        pub shrinkage: Given<f64> = "shrinkage",
        /// How its boards are sawn, with a name: `flat` (the rings along the width) or `quarter` (across it).
        pub sawn: Given<String> = "sawn",
        /// Its moisture when the boards are cut to width, percent, as a meter reads it.
        pub moisture: Given<f64> = "moisture",
    }

    /// The driest and the dampest air that the piece will stand in.
    pub struct ClimateRequest {
        /// `humidity`: two humidities at one temperature; `moisture`: the wood's own two moistures.
        pub kind: Given<String> = "kind",
        /// Of the driest time, percent.
        pub driest: Given<f64> = "driest",
        /// Of the dampest time, percent.
        pub wettest: Given<f64> = "wettest",
        /// By humidity: temperature of the air, °C.
        pub temperature: Given<f64> = "temperature",
    }
}

/// Checked wood.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SolidWood {
    /// Of a board's width.
    pub across: Coefficient,
    /// Of a board's thickness.
    pub through: Coefficient,
    /// When the boards are cut.
    pub moisture: Moisture,
}

/// Checked air: what wood comes to in it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Climate {
    /// At the driest.
    pub driest: Moisture,
    /// At the dampest.
    pub wettest: Moisture,
}

impl SolidWood {
    /// Checks the request at the checker's place.
    pub fn check(request: &SolidWoodRequest, check: &mut Checker<'_>) -> Option<Self> {
        let moves = Self::check_moves(request, check);
        let moisture = check.number("moisture", &request.moisture, &limits::MOISTURE);
        let (across, through) = moves?;
        Some(Self {
            across,
            through,
            moisture: Moisture::percent(moisture?)?,
        })
    }

    fn check_moves(
        request: &SolidWoodRequest,
        check: &mut Checker<'_>,
    ) -> Option<(Coefficient, Coefficient)> {
        match (request.species.is_missing(), request.shrinkage.is_missing()) {
            (false, true) => Self::check_species(request, check),
            (true, false) => {
                check.unused("the shrinkage", &[("sawn", request.sawn.is_missing())]);
                let shrinkage =
                    check.number("shrinkage", &request.shrinkage, &limits::SHRINKAGE)?;
                let across = Coefficient::from_shrinkage(shrinkage);
                Some((across, across))
            }
            (true, true) => {
                let message = message!["Give the wood's name, or the shrinkage of its width."];
                check.refuse("species", Code::Missing, message, None);
                None
            }
            (false, false) => {
                let message = message!["Give either the wood's name or its shrinkage, not both."];
                check.refuse("shrinkage", Code::Conflict, message, None);
                None
            }
        }
    }

    fn check_species(
        request: &SolidWoodRequest,
        check: &mut Checker<'_>,
    ) -> Option<(Coefficient, Coefficient)> {
        let sawn = check.word("sawn", &request.sawn, &[("flat", true), ("quarter", false)]);
        let name = check.required("species", &request.species)?;
        let Some(species) = Species::named(name) else {
            let names: Vec<_> = SPECIES.iter().map(|species| species.name).collect();
            let message = message![
                "This wood is not in the table; give its shrinkage, or one of these: ",
                names.join(", "),
                "."
            ];
            check.refuse("species", Code::UnknownWord, message, None);
            return None;
        };
        Some(if sawn? {
            (species.tangential, species.radial)
        } else {
            (species.radial, species.tangential)
        })
    }
}

impl Climate {
    /// Checks the request at the checker's place.
    pub fn check(request: &ClimateRequest, check: &mut Checker<'_>) -> Option<Self> {
        let by_humidity = check.word(
            "kind",
            &request.kind,
            &[("humidity", true), ("moisture", false)],
        )?;
        let limit = if by_humidity {
            &limits::HUMIDITY
        } else {
            &limits::MOISTURE
        };
        let driest = check.number("driest", &request.driest, limit);
        let wettest = check.number("wettest", &request.wettest, limit);
        let held = if by_humidity {
            let temperature =
                check.number("temperature", &request.temperature, &limits::TEMPERATURE);
            let (driest, wettest, celsius) = (driest?, wettest?, temperature?);
            [driest, wettest].map(|humidity| Some(equilibrium_moisture(celsius, humidity)))
        } else {
            let missing = request.temperature.is_missing();
            check.unused("the wood's own moistures", &[("temperature", missing)]);
            [driest?, wettest?].map(Moisture::percent)
        };
        if driest > wettest {
            let message = message!["The dampest time must be at least as damp as the driest."];
            check.refuse("wettest", Code::TooSmall, message, driest);
            return None;
        }
        let [driest, wettest] = held;
        Some(Self {
            driest: driest?,
            wettest: wettest?,
        })
    }

    /// How much wider than it was cut a board gets at most, as a share of its width, and how wide it is at
    /// the driest: `(greatest, least)`. A board cut damper than the air ever is has been widest then.
    #[must_use]
    pub fn extremes(&self, coefficient: Coefficient, cut_at: Moisture) -> (f64, f64) {
        let growth = |to| coefficient.growth(cut_at, to);
        (growth(self.wettest).max(1.0), growth(self.driest).min(1.0))
    }
}
