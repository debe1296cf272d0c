//! The dial laid along the board: which places can be set, and what the wheel reads there.

use crate::dial::{Rises, Rounding, Screw, Zero};
use crate::stop::Reading;
use crate::units::Mm;

/// One place that can be set; ticks rise away from the reference edge, one smallest step each.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Tick(pub i64);

/// A screw with its zero found for one cutter.
#[derive(Clone, Copy, Debug)]
pub struct Scale {
    screw: Screw,
    /// Where tick 0 puts the kerf's near side.
    origin: Mm,
    /// Distance along the board for each millimetre of the carriage's travel; more than 1 for a board
    /// that is turned.
    along: f64,
}

/// Ties, and what twelve decimals of noise make of ties, all go the same way: away from the reference
/// edge. A whole row of equal sockets then rounds alike.
const TIE: f64 = 0.5 + 1e-6;

impl Scale {
    /// The scale for a cutter of this kerf.
    #[must_use]
    pub fn new(screw: Screw, zero: Zero, kerf: Mm) -> Self {
        let origin = match zero {
            Zero::Touch => -kerf,
            Zero::Flush => Mm::ZERO,
            Zero::TestKerf { reading, measured } => measured - reading * screw.rises().sign(),
        };
        Self {
            screw,
            origin,
            along: 1.0,
        }
    }

    /// The scale for a board that is turned in plan, so that its face runs at an angle to the carriage's
    /// travel: a millimetre along the face takes `cos` of the angle.
    ///
    /// `touch` is how far along the face the kerf's near side lies before the reference edge when the
    /// stopped cutter touches the arris that leads; a test kerf is measured along the face.
    #[must_use]
    pub fn turned(screw: Screw, zero: Zero, touch: Mm, cos: f64) -> Self {
        let along = 1.0 / cos;
        let origin = match zero {
            Zero::Touch => -touch,
            Zero::Flush => Mm::ZERO,
            Zero::TestKerf { reading, measured } => {
                measured - reading * (along * screw.rises().sign())
            }
        };
        Self {
            screw,
            origin,
            along,
        }
    }

    /// The screw behind it.
    #[must_use]
    pub fn screw(&self) -> &Screw {
        &self.screw
    }

    /// The smallest step.
    #[must_use]
    pub fn step(&self) -> Mm {
        self.screw.step()
    }

    /// How far apart neighbouring ticks are along the board: the smallest step, or more of it where the
    /// board is turned.
    #[must_use]
    pub fn spacing(&self) -> Mm {
        self.step() * self.along
    }

    /// The tick that puts the kerf's near side nearest to `at`.
    #[must_use]
    pub fn nearest(&self, at: Mm) -> Tick {
        Tick(whole(((at - self.origin) / self.spacing() + TIE).floor()))
    }

    /// The last tick that does not put the kerf's near side beyond `at`, forgiving arithmetic's noise.
    #[must_use]
    pub fn not_beyond(&self, at: Mm) -> Tick {
        Tick(self.steps_within(at - self.origin))
    }

    /// The first tick that does not put the kerf's near side before `at`, forgiving arithmetic's noise.
    #[must_use]
    pub fn not_before(&self, at: Mm) -> Tick {
        Tick(-self.steps_within(self.origin - at))
    }

    /// How many whole steps fit into a distance along the board, forgiving arithmetic's noise.
    #[must_use]
    pub fn steps_within(&self, distance: Mm) -> i64 {
        whole((distance / self.spacing() + 1e-6).floor())
    }

    /// Where a tick puts the kerf's near side, from the reference edge.
    #[must_use]
    pub fn at(&self, tick: Tick) -> Mm {
        self.origin + self.travel(tick.0) * self.along
    }

    /// What the wheel reads at a tick.
    #[must_use]
    pub fn reading(&self, tick: Tick) -> Reading {
        self.reading_of(self.steps_to(tick))
    }

    /// Steps of the dial from its zero to a tick; they rise with the reading.
    #[must_use]
    pub fn steps_to(&self, tick: Tick) -> i64 {
        match self.screw.rises() {
            Rises::Away => tick.0,
            Rises::Towards => -tick.0,
        }
    }

    /// Steps of the dial nearest to a reading.
    #[must_use]
    pub fn steps_of(&self, reading: Mm) -> i64 {
        whole((reading / self.step()).round())
    }

    /// The reading after so many steps of the dial, which is also how a move of so many steps is said.
    #[must_use]
    pub fn reading_of(&self, steps: i64) -> Reading {
        let reading = self.travel(steps);
        match self.steps_per_turn() {
            Some(per_turn) => Reading {
                reading,
                turns: steps.div_euclid(per_turn),
                division: steps.rem_euclid(per_turn) as f64 * f64::from(self.screw.divisions())
                    / per_turn as f64,
            },
            None => self.unrounded(reading),
        }
    }

    fn unrounded(&self, reading: Mm) -> Reading {
        // A whole turn that noise left a hair short is still that turn.
        let turns = (reading / self.screw.lead() + 1e-9).floor();
        let division = ((reading - self.screw.lead() * turns) / self.screw.division()).max(0.0);
        Reading {
            reading,
            turns: whole(turns),
            division,
        }
    }

    fn steps_per_turn(&self) -> Option<i64> {
        let divisions = i64::from(self.screw.divisions());
        match self.screw.rounding() {
            Rounding::Division => Some(divisions),
            Rounding::Half => Some(2 * divisions),
            Rounding::None => None,
        }
    }

    fn travel(&self, steps: i64) -> Mm {
        match self.steps_per_turn() {
            Some(per_turn) => self.screw.lead() * steps as f64 / per_turn as f64,
            None => self.step() * steps as f64,
        }
    }
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "lengths are below 10⁹ mm and steps above 10⁻⁷ mm"
)]
fn whole(number: f64) -> i64 {
    number as i64
}

#[cfg(test)]
mod tests {
    use super::{Scale, Tick};
    use crate::check::Checker;
    use crate::dial::{Screw, ScrewRequest, Zero};
    use crate::given::Given;
    use crate::units::Mm;

    fn screw(rounding: &str, rises: &str) -> Screw {
        let request = ScrewRequest {
            lead: 2.0.into(),
            divisions: 100.0.into(),
            rounding: rounding.into(),
            rises: rises.into(),
            ..ScrewRequest::default()
        };
        let mut problems = Vec::new();
        let screw = Screw::check(&request, &mut Checker::new(&mut problems)).unwrap();
        assert_eq!(problems, []);
        screw
    }

    fn mm(mm: f64) -> Mm {
        Mm::new(mm).unwrap()
    }

    #[test]
    fn zeros_are_where_the_handbook_of_the_trade_puts_them() {
        // Derived: touch `reading = at + kerf`, flush `reading = at`, test kerf `reading = r0 + (at - m)`.
        let kerf = mm(3.2);
        let test_kerf = Zero::TestKerf {
            reading: mm(40.0),
            measured: mm(12.5),
        };
        for (zero, at, reading) in [
            (Zero::Touch, 10.0, 13.2),
            (Zero::Flush, 10.0, 10.0),
            (test_kerf, 10.0, 37.5),
        ] {
            for (rises, sign) in [("away", 1.0), ("towards", -1.0)] {
                let scale = Scale::new(screw("none", rises), zero, kerf);
                let expected = match zero {
                    Zero::TestKerf { .. } => 40.0 + sign * (at - 12.5),
                    _ => sign * reading,
                };
                let got = scale.reading(scale.nearest(mm(at))).reading;
                assert!(
                    (got.mm() - expected).abs() < 1e-6,
                    "{zero:?} {rises}: {got} for {expected}"
                );
            }
        }
    }

    #[test]
    fn a_turned_board_travels_less_than_its_face_is_long() {
        // Derived: touch `reading = at·cos θ + touch·cos θ`, flush `at·cos θ`, test kerf `r0 + (at − m)·cos θ`.
        let (touch, cos) = (mm(5.0), 0.8);
        let test_kerf = Zero::TestKerf {
            reading: mm(40.0),
            measured: mm(12.5),
        };
        for (zero, expected) in [(Zero::Touch, 12.0), (Zero::Flush, 8.0), (test_kerf, 38.0)] {
            for (rises, sign) in [("away", 1.0), ("towards", -1.0)] {
                let expected = match zero {
                    Zero::TestKerf { .. } => 40.0 + sign * (expected - 40.0),
                    _ => sign * expected,
                };
                let scale = Scale::turned(screw("none", rises), zero, touch, cos);
                let tick = scale.nearest(mm(10.0));
                let got = scale.reading(tick).reading;
                assert!(
                    (got.mm() - expected).abs() < 1e-6,
                    "{zero:?} {rises}: {got}"
                );
                assert!(
                    (scale.at(tick).mm() - 10.0).abs() < 1e-6,
                    "{zero:?} {rises}"
                );
            }
        }
    }

    #[test]
    fn ticks_on_either_side_of_a_place() {
        // Steps of 0.02 mm from 0, along a face 0.025 mm apart (derived).
        let scale = Scale::turned(screw("division", "away"), Zero::Flush, mm(0.0), 0.8);
        assert_eq!(scale.spacing(), mm(0.025));
        for (at, before, after) in [(0.06, 2, 3), (0.05, 2, 2), (-0.06, -3, -2)] {
            assert_eq!(scale.not_beyond(mm(at)), Tick(before), "{at}");
            assert_eq!(scale.not_before(mm(at)), Tick(after), "{at}");
        }
    }

    #[test]
    fn a_reading_is_turns_and_divisions() {
        // Lead 2 mm, 100 divisions: 0.02 mm each (derived).
        let scale = Scale::new(screw("division", "away"), Zero::Flush, mm(3.0));
        for (at, turns, division) in [
            (0.0, 0, 0.0),
            (5.0, 2, 50.0),
            (5.011, 2, 51.0),
            (-0.02, -1, 99.0),
        ] {
            let reading = scale.reading(scale.nearest(mm(at)));
            assert_eq!(
                (reading.turns, reading.division),
                (turns, division),
                "at {at}"
            );
        }
        let halves = Scale::new(screw("half", "away"), Zero::Flush, mm(3.0));
        assert_eq!(halves.reading(Tick(3)).division, 1.5);
    }

    #[test]
    fn ties_go_one_way_whatever_the_noise() {
        let scale = Scale::new(screw("division", "away"), Zero::Flush, mm(3.0));
        for noise in [-1e-12, 0.0, 1e-12] {
            assert_eq!(scale.nearest(mm(0.03 + noise)), Tick(2));
        }
    }

    #[test]
    fn a_screw_is_asked_for_its_lead_once() {
        let both = ScrewRequest {
            lead: 2.0.into(),
            threads_per_inch: 16.0.into(),
            divisions: 0.0.into(),
            rounding: "thirds".into(),
            ..ScrewRequest::default()
        };
        let mut problems = Vec::new();
        assert_eq!(Screw::check(&both, &mut Checker::new(&mut problems)), None);
        let fields: Vec<_> = problems
            .iter()
            .map(|problem| problem.field.as_str())
            .collect();
        assert_eq!(fields, ["threadsPerInch", "divisions", "rounding"]);
        let none = ScrewRequest {
            divisions: Given::Value(10.0),
            ..ScrewRequest::default()
        };
        problems.clear();
        assert_eq!(Screw::check(&none, &mut Checker::new(&mut problems)), None);
        assert_eq!(problems.len(), 1);
    }
}
