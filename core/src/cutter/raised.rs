//! A blade standing through a base: chords of a circle.

use crate::units::Mm;

/// A blade raised to a height above the table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RaisedBlade {
    radius: Mm,
    height: Mm,
}

impl RaisedBlade {
    /// A blade of this diameter, `height` above the table; `None` when it would have to be raised past its own axis.
    #[must_use]
    pub fn new(diameter: Mm, height: Mm) -> Option<Self> {
        let radius = diameter / 2.0;
        (height < radius && height >= Mm::ZERO).then_some(Self { radius, height })
    }

    /// How high a blade of this diameter stands where half its chord is `half`: `R − √(R² − c²)`; its
    /// radius where no chord is as long.
    #[must_use]
    pub fn height_of(diameter: Mm, half: Mm) -> Mm {
        let blade = Self {
            radius: diameter / 2.0,
            height: Mm::ZERO,
        };
        blade.short_by(half)
    }

    /// Half the blade's chord at `z` above the table: `√(R² − (R − H + z)²)`; zero above its top.
    ///
    /// The circular-segment formula of any engineering handbook.
    #[must_use]
    pub fn half_chord(self, z: Mm) -> Mm {
        let above_axis = self.radius - self.height + z;
        let (r, a) = (self.radius.mm(), above_axis.mm());
        Mm::new(((r - a) * (r + a)).max(0.0).sqrt()).unwrap_or_default()
    }

    /// How much shallower the cut is, `short` before or after the blade's top: `R − √(R² − d²)`.
    #[must_use]
    pub fn short_by(self, short: Mm) -> Mm {
        let (r, d) = (self.radius.mm(), short.abs().mm().min(self.radius.mm()));
        Mm::new(r - ((r - d) * (r + d)).sqrt()).unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::RaisedBlade;
    use crate::units::Mm;

    fn mm(mm: f64) -> Mm {
        Mm::new(mm).unwrap()
    }

    #[test]
    fn chords_of_segments() {
        // Machinery's Handbook, 31st ed.: p. 79, r 60, h 8 → c 59.86 as printed (59.867); p. 79, c 16, h 6 → r 8 1/3;
        // p. 50, r 12, h 2 → c 13.27.
        for (radius, height, chord, tolerance) in [
            (60.0, 8.0, 59.867, 5e-4),
            (25.0 / 3.0, 6.0, 16.0, 1e-9),
            (12.0, 2.0, 13.27, 5e-3),
        ] {
            let blade = RaisedBlade::new(mm(2.0 * radius), mm(height)).unwrap();
            let got = blade.half_chord(Mm::ZERO).mm() * 2.0;
            assert!(
                (got - chord).abs() < tolerance,
                "r {radius}, h {height}: {got} for {chord}"
            );
        }
    }

    #[test]
    fn nothing_is_cut_above_the_top() {
        let blade = RaisedBlade::new(mm(254.0), mm(33.5)).unwrap();
        assert_eq!(blade.half_chord(mm(33.5)), Mm::ZERO);
        assert_eq!(blade.half_chord(mm(40.0)), Mm::ZERO);
    }

    #[test]
    fn stopping_short_leaves_the_floor_high() {
        // Derived: R 127, d 10 → 127 − √(127² − 10²) = 0.3943.
        let blade = RaisedBlade::new(mm(254.0), mm(33.5)).unwrap();
        assert!((blade.short_by(mm(10.0)).mm() - 0.394_3).abs() < 5e-5);
    }

    #[test]
    fn a_blade_is_not_raised_past_its_axis() {
        assert_eq!(RaisedBlade::new(mm(254.0), mm(127.0)), None);
    }
}
