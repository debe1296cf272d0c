//! The only door to transcendental functions.
//!
//! The platform's own differ in their last bits between native and wasm, and golden files are shared
//! by both; `libm` computes them in software, the same everywhere. `clippy.toml` closes the other doors.

/// Sine of an angle in radians.
#[must_use]
pub fn sin(radians: f64) -> f64 {
    libm::sin(radians)
}

/// Cosine of an angle in radians.
#[must_use]
pub fn cos(radians: f64) -> f64 {
    libm::cos(radians)
}

/// Angle of a point from the x axis, in radians.
#[must_use]
pub fn atan2(y: f64, x: f64) -> f64 {
    libm::atan2(y, x)
}

/// Length of a right triangle's long side.
#[must_use]
pub fn hypot(x: f64, y: f64) -> f64 {
    libm::hypot(x, y)
}

/// Tangent of an angle in radians.
#[must_use]
pub fn tan(radians: f64) -> f64 {
    libm::tan(radians)
}

/// A number held between two others.
///
/// The standard library's own can panic, with a message that brings the formatting of floats along: kilobytes
/// for a phone to fetch.
#[must_use]
pub fn within(value: f64, least: f64, most: f64) -> f64 {
    value.max(least).min(most)
}
