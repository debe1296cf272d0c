//! How solid wood moves with the air around it, by the Wood Handbook.
//!
//! Source of every number here: *Wood Handbook: Wood as an Engineering Material*, USDA Forest Products
//! Laboratory, FPL-GTR-190 (2010), the same in FPL-GTR-282 (2021). Wood takes on the moisture that the air's
//! temperature and humidity hold it at, and widens across its grain in proportion; along the grain it hardly
//! moves, and that is left out.

mod moisture;
mod movement;
mod request;
mod species;
#[cfg(test)]
mod tests;

pub use moisture::{Moisture, equilibrium_moisture};
pub use movement::{Coefficient, is_linear};
pub use request::{Climate, ClimateRequest, SolidWood, SolidWoodRequest};
pub use species::{Grade, SPECIES, Species};
