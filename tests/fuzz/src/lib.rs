//! What all targets have in common.

pub use libfuzzer_sys::fuzz_target;

/// A target that asks one of the functions that scripts call.
#[macro_export]
macro_rules! tool {
    ($name:literal) => {
        $crate::fuzz_target!(|bytes: &[u8]| {
            let tool = notchwright_tests::hostile::Tool::named($name).unwrap();
            tool.ask(bytes).unwrap();
        });
    };
}
