//! `drawerBox`, asked with whatever the fuzzer makes up.
#![no_main]

notchwright_fuzz::tool!("drawerBox");
