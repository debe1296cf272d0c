//! The runner that Cargo calls for each wasm test file.

use std::ffi::OsString;

use anyhow::Result;

/// Runs the compiled tests in a browser, as the `webdriver.json` beside the crate describes it.
pub(crate) fn run(args: Vec<OsString>) -> Result<()> {
    let program = OsString::from("wasm-bindgen-test-runner");
    wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(
        std::iter::once(program).chain(args),
    )
}
