//! The fuzzer's rules over bytes that nobody has chosen: few of them, with every change.

use notchwright_tests::hostile::{self, TOOLS};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{RngAlgorithm, RngSeed, TestRng, TestRunner};

fn broken(error: &anyhow::Error) -> TestCaseError {
    TestCaseError::fail(format!("{error:#}"))
}

proptest! {
    // The same each time: chance is the fuzzer's part.
    #![proptest_config(ProptestConfig {
        failure_persistence: None,
        rng_seed: RngSeed::Fixed(1),
        ..ProptestConfig::with_cases(256)
    })]

    #[test]
    fn whatever_is_asked_the_answer_holds(bytes in vec(any::<u8>(), 0..400)) {
        for tool in TOOLS {
            tool.ask(&bytes).map_err(|error| broken(&error.context(tool.name)))?;
        }
    }

    #[test]
    fn whatever_is_typed_is_a_length_or_none(bytes in vec(any::<u8>(), 0..40)) {
        hostile::length(&bytes).map_err(|error| broken(&error))?;
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(128) })]

    #[test]
    fn whatever_is_opened_comes_back(bytes in vec(any::<u8>(), 0..400)) {
        hostile::link(&bytes).map_err(|error| broken(&error))?;
        hostile::file(&bytes).map_err(|error| broken(&error))?;
    }
}

/// Otherwise the rules of plans would stand there unused.
#[test]
fn a_fair_share_of_what_is_asked_can_be_planned() {
    let rng = TestRng::deterministic_rng(RngAlgorithm::ChaCha);
    let mut runner = TestRunner::new_with_rng(ProptestConfig::default(), rng);
    let mut planned = [0; TOOLS.len()];
    for _ in 0..500 {
        let bytes = vec(any::<u8>(), 400)
            .new_tree(&mut runner)
            .unwrap()
            .current();
        for (tool, planned) in TOOLS.iter().zip(&mut planned) {
            *planned += u32::from(tool.ask(&bytes).unwrap_or_else(|error| panic!("{error:#}")));
        }
    }
    for (tool, planned) in TOOLS.iter().zip(planned) {
        println!("{}: {planned}", tool.name);
        assert!(planned >= 25, "{}: {planned} of 500", tool.name);
    }
}
