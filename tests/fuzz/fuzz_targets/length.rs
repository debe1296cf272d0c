//! What `hostile::length` takes, whatever the fuzzer makes up.
#![no_main]

notchwright_fuzz::fuzz_target!(|bytes: &[u8]| notchwright_tests::hostile::length(bytes).unwrap());
