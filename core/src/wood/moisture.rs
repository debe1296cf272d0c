//! The moisture that wood comes to in air of one kind.

/// Moisture content of wood: water as a percentage of the oven-dry wood's mass. Never negative, never `NaN`.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Moisture(f64);

impl Moisture {
    /// So many percent, if that can be said of wood.
    #[must_use]
    pub fn percent(percent: f64) -> Option<Self> {
        (percent.is_finite() && percent >= 0.0).then_some(Self(percent))
    }

    /// The number of percent.
    #[must_use]
    pub const fn in_percent(self) -> f64 {
        self.0
    }
}

/// The moisture that wood comes to in air of `celsius` degrees and a relative humidity of `humidity` percent:
/// equation 4-5 of the Wood Handbook (quoted), which meets its table 4-2 within 0.06 %.
///
/// Both are held within [`crate::limits::TEMPERATURE`] and [`crate::limits::HUMIDITY`], the table's own range.
#[must_use]
pub fn equilibrium_moisture(celsius: f64, humidity: f64) -> Moisture {
    let [t, h] = [
        (celsius, &crate::limits::TEMPERATURE),
        (humidity, &crate::limits::HUMIDITY),
    ]
    .map(|(value, limit)| crate::math::within(value, limit.least, limit.most));
    let h = h / 100.0;
    let w = 349.0 + 1.29 * t + 0.0135 * t * t;
    let k = 0.805 + 0.000_736 * t - 0.000_002_73 * t * t;
    let k1 = 6.27 - 0.009_38 * t - 0.000_303 * t * t;
    let k2 = 1.91 + 0.0407 * t - 0.000_293 * t * t;
    let kh = k * h;
    let held = k1 * kh + 2.0 * k1 * k2 * kh * kh;
    Moisture(1800.0 / w * (kh / (1.0 - kh) + held / (1.0 + k1 * kh + k1 * k2 * kh * kh)))
}
