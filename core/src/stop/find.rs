//! Which stop it is, by what the wheel reads: for whoever has lost count.

use super::Reading;

/// Where a reading is among the stops.
#[derive(Clone, Debug, PartialEq)]
pub struct Sought {
    /// Stops that read so, from 0: several where only the division is known.
    pub at: Vec<usize>,
    /// Where none does and the turns are known, the first stop beyond the reading, from 0; the number of
    /// stops when it is beyond them all.
    pub before: Option<usize>,
}

/// Divisions by which a reading may be off: a wheel is read to half a division.
const READ_TO: f64 = 0.5;

/// Finds the stops where the wheel reads `division`, of `divisions` a turn, after `turns` whole turns;
/// without turns, those that agree in the division.
///
/// Readings are in rising order, as stops are. A division that is no number is found nowhere.
#[must_use]
pub fn find(readings: &[Reading], divisions: u32, turns: Option<i64>, division: f64) -> Sought {
    let round = f64::from(divisions.max(1));
    let all = |reading: &Reading| reading.turns as f64 * round + reading.division;
    let off = |reading: &Reading| match turns {
        Some(turns) => all(reading) - (turns as f64 * round + division),
        // Just before zero is as near to zero as just after it.
        None => {
            let off = (reading.division - division) % round;
            off - (off / round).round() * round
        }
    };
    let is_there = |(_, reading): &(usize, &Reading)| off(reading).abs() <= READ_TO;
    let at: Vec<_> = readings
        .iter()
        .enumerate()
        .filter(is_there)
        .map(|(index, _)| index)
        .collect();
    let is_between = at.is_empty() && turns.is_some() && division.is_finite();
    let before = is_between.then(|| readings.partition_point(|reading| off(reading) < 0.0));
    Sought { at, before }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::units::Mm;

    fn reading(turns: i64, division: f64) -> Reading {
        Reading {
            reading: Mm::ZERO,
            turns,
            division,
        }
    }

    fn stops() -> Vec<Reading> {
        [(-1, 79.5), (2, 10.0), (11, 57.0), (14, 10.0), (14, 70.0)]
            .map(|(turns, division)| reading(turns, division))
            .into()
    }

    #[test]
    fn a_reading_is_found_at_its_stop_or_between_two() {
        for (turns, division, at, before) in [
            (Some(11), 57.0, vec![2], None),
            (Some(11), 57.4, vec![2], None),
            // 79.8 of the turn below zero, read as 0 of the next.
            (Some(0), 0.0, vec![0], None),
            (Some(12), 0.0, vec![], Some(3)),
            (Some(-9), 0.0, vec![], Some(0)),
            (Some(99), 0.0, vec![], Some(5)),
            (None, 10.0, vec![1, 3], None),
            (None, 0.0, vec![0], None),
            (None, 33.0, vec![], None),
            (Some(11), f64::NAN, vec![], None),
        ] {
            let sought = find(&stops(), 80, turns, division);
            assert_eq!(sought, Sought { at, before }, "{turns:?} {division}");
        }
    }

    proptest! {
        #[test]
        fn every_stop_is_found_by_its_own_reading(
            mut places in prop::collection::vec(-2000_i64..20_000, 1..60),
            divisions in 10_u32..200,
        ) {
            places.sort_unstable();
            places.dedup();
            let round = i64::from(divisions);
            let readings: Vec<_> = places
                .iter()
                .map(|place| reading(place.div_euclid(round), place.rem_euclid(round) as f64))
                .collect();
            for (index, of) in readings.iter().enumerate() {
                let known = find(&readings, divisions, Some(of.turns), of.division);
                prop_assert_eq!(known, Sought { at: vec![index], before: None });
                let unknown = find(&readings, divisions, None, of.division);
                prop_assert!(unknown.at.contains(&index));
            }
        }
    }
}
