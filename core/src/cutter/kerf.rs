//! The kerf from one wide slot, where a single kerf is too narrow for the calliper.

use core::fmt;

use crate::units::Mm;

/// Why a slot says nothing about a kerf. Its `Display` says what would work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum KerfFault {
    /// No kerf was cut at all.
    NoKerfs,
    /// The carriage did not move on from kerf to kerf.
    StepNotAhead,
    /// The slot is not wider than the steps alone.
    SlotTooNarrow {
        /// The steps from the first kerf to the last, together.
        steps: Mm,
    },
    /// The step reaches past the kerf, so wood stands between the kerfs and they are no slot.
    StepPastKerf {
        /// The kerf that the numbers would give.
        kerf: Mm,
    },
}

impl fmt::Display for KerfFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoKerfs => write!(f, "Cut at least one kerf and count it."),
            Self::StepNotAhead => write!(f, "Move by a step greater than zero between kerfs."),
            Self::SlotTooNarrow { steps } => {
                write!(
                    f,
                    "The slot is wider than its steps, {steps}: measure it again."
                )
            }
            Self::StepPastKerf { kerf } => {
                write!(
                    f,
                    "Each step must be less than the kerf, {kerf}: cut again with less."
                )
            }
        }
    }
}

impl core::error::Error for KerfFault {}

/// The kerf that, cut `kerfs` times and moved by `step` between, makes a slot `slot_width` wide.
///
/// `kerf = slot_width − (kerfs − 1) · step` (derived); it includes the blade's run-out. With one
/// kerf the slot is the kerf and `step` means nothing.
///
/// # Errors
/// [`KerfFault`] when there is no kerf, or when neighbouring kerfs would not overlap.
pub fn kerf_from_slot(kerfs: u32, step: Mm, slot_width: Mm) -> Result<Mm, KerfFault> {
    if kerfs == 0 {
        return Err(KerfFault::NoKerfs);
    }
    let stepped = kerfs > 1;
    if stepped && !step.is_above(Mm::ZERO) {
        return Err(KerfFault::StepNotAhead);
    }
    let steps = step * f64::from(kerfs - 1);
    let kerf = slot_width - steps;
    if !kerf.is_above(Mm::ZERO) {
        return Err(KerfFault::SlotTooNarrow { steps });
    }
    if stepped && !step.is_below(kerf) {
        return Err(KerfFault::StepPastKerf { kerf });
    }
    Ok(kerf)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::{KerfFault, kerf_from_slot};
    use crate::units::Mm;

    #[test]
    fn the_steps_are_taken_off_the_slot() {
        // Derived: w − (n − 1) · p.
        for (kerfs, step, slot, kerf) in [
            (1, 0.0, 3.2, 3.2),
            (1, 99.0, 3.2, 3.2),
            (2, 3.0, 6.2, 3.2),
            (5, 2.5, 13.2, 3.2),
        ] {
            let found = kerf_from_slot(kerfs, Mm::constant(step), Mm::constant(slot));
            assert!(
                found.unwrap().is_same(Mm::constant(kerf)),
                "{kerfs} × {step} in {slot}"
            );
        }
    }

    #[test]
    fn slots_that_no_kerf_makes_are_refused() {
        let mm = Mm::constant;
        for (kerfs, step, slot, fault) in [
            (0, 1.0, 3.2, KerfFault::NoKerfs),
            (2, 0.0, 3.2, KerfFault::StepNotAhead),
            (2, -1.0, 3.2, KerfFault::StepNotAhead),
            (1, 0.0, 0.0, KerfFault::SlotTooNarrow { steps: Mm::ZERO }),
            (3, 2.0, 4.0, KerfFault::SlotTooNarrow { steps: mm(4.0) }),
            (3, 2.0, 6.0, KerfFault::StepPastKerf { kerf: mm(2.0) }),
            (3, 2.0, 5.0, KerfFault::StepPastKerf { kerf: mm(1.0) }),
        ] {
            assert_eq!(
                kerf_from_slot(kerfs, mm(step), mm(slot)),
                Err(fault),
                "{kerfs} × {step} in {slot}"
            );
        }
    }

    proptest! {
        #[test]
        fn the_kerf_that_cut_a_slot_comes_back(kerfs in 1_u32..100, kerf in 0.2..60.0_f64, share in 0.01..0.99_f64) {
            let (kerf, step) = (Mm::new(kerf).unwrap(), Mm::new(kerf * share).unwrap());
            let slot = step * f64::from(kerfs - 1) + kerf;
            prop_assert!(kerf_from_slot(kerfs, step, slot).unwrap().is_same(kerf));
        }
    }
}
