//! Drawings compared byte for byte with those in `golden/`.
//!
//! After a change that is meant to show: `NOTCHWRIGHT_UPDATE=1 cargo test -p notchwright-tests --test golden`,
//! then look at every file that differs before committing it.

#![expect(
    clippy::expect_used,
    reason = "what a helper finds wrong fails its test"
)]

mod dovetail;
mod drawer;
mod joints;
mod sheets;
mod sled;
mod tools;

use std::path::PathBuf;
use std::{env, fs};

use notchwright_core::drawing::{Drawing, svg};
use notchwright_core::units::Mm;

/// Compares with the golden file of this name, or writes it when updating.
fn compare(name: &str, style: &str, drawing: &Drawing, written: impl Fn(Mm) -> String) {
    let text = svg::svg(drawing, style, written);
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("golden")
        .join(format!("{name}.svg"));
    if env::var_os("NOTCHWRIGHT_UPDATE").is_some() {
        fs::write(&path, &text).expect("the golden file can be written");
    }
    let kept = fs::read_to_string(&path).unwrap_or_default();
    assert!(
        kept == text,
        "{} is no longer what is drawn; see the top of this test",
        path.display()
    );
}
