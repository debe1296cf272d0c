//! Named and timed steps, of which the first failure is the last.

use std::time::Instant;

use anyhow::{Context, Result};

/// Counts the steps that passed.
#[derive(Debug, Default)]
pub(crate) struct Steps {
    passed: usize,
}

impl Steps {
    /// Runs one step, and says how it went and how long it took.
    pub(crate) fn step(&mut self, name: &str, work: impl FnOnce() -> Result<()>) -> Result<()> {
        println!("\n== {name}");
        let start = Instant::now();
        let outcome = work();
        let seconds = start.elapsed().as_secs_f64();
        if outcome.is_ok() {
            self.passed += 1;
            println!("== {name}: passed in {seconds:.1} s");
        } else {
            println!(
                "== {name}: FAILED after {seconds:.1} s\n\n{} passed, 1 failed",
                self.passed
            );
        }
        outcome.with_context(|| format!("the step \"{name}\" failed"))
    }

    /// The closing line.
    pub(crate) fn close(&self) {
        println!("\n{} passed, 0 failed", self.passed);
    }
}

#[cfg(test)]
mod tests {
    use anyhow::bail;

    use super::*;

    #[test]
    fn a_failure_is_named_and_not_counted() {
        let mut steps = Steps::default();
        steps.step("first", || Ok(())).unwrap();
        let error = steps.step("second", || bail!("it broke")).unwrap_err();
        assert_eq!(format!("{error:#}"), "the step \"second\" failed: it broke");
        assert_eq!(steps.passed, 1);
    }
}
