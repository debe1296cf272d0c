//! `cargo xtask test`: every check, the quick ones first.

use std::process::Command;

use anyhow::Result;

use crate::build;
use crate::command::{cargo, perform};
use crate::layout::Layout;
use crate::npm;
use crate::size;
use crate::steps::Steps;
use crate::tools;

const WASM: &str = "--target=wasm32-unknown-unknown";

/// Runs all steps; the first that fails ends the run.
pub(crate) fn run(layout: &Layout) -> Result<()> {
    let mut steps = Steps::default();
    native(&mut steps, layout)?;
    shipped(&mut steps, layout)?;
    steps.step("programs the tests drive", || {
        tools::ensure(&tools::BROWSER)?;
        tools::ensure(&tools::NODE)?;
        npm::install(layout)
    })?;
    module(&mut steps, layout)?;
    steps.step("the person's path in a browser", || {
        browser_tests(layout, "browser")
    })?;
    steps.step("the person's path in three engines", || engines(layout))?;
    steps.step("licences and sources of what is used", || deny(layout))?;
    steps.close();
    Ok(())
}

fn native(steps: &mut Steps, layout: &Layout) -> Result<()> {
    steps.step("format", || in_root(layout, &["fmt", "--all", "--check"]))?;
    steps.step("lints", || {
        lints(layout, &["--workspace", "--all-targets", "--all-features"])
    })?;
    steps.step("unit and reference tests", || unit_tests(layout))?;
    steps.step("documentation", || {
        perform(
            cargo()
                .args([
                    "doc",
                    "--locked",
                    "--workspace",
                    "--no-deps",
                    "--all-features",
                ])
                .env("RUSTDOCFLAGS", "-D warnings")
                .current_dir(&layout.root),
        )
    })
}

/// Properties try new cases in every run, but the same ones where `CI` is set: there, what fails is what changed.
fn unit_tests(layout: &Layout) -> Result<()> {
    const SEED: &str = "PROPTEST_RNG_SEED";
    let mut tests = cargo();
    tests
        .args(["test", "--locked", "--workspace"])
        .current_dir(&layout.root);
    if std::env::var_os("CI").is_some() && std::env::var_os(SEED).is_none() {
        tests.env(SEED, "1");
    }
    perform(&mut tests)
}

fn shipped(steps: &mut Steps, layout: &Layout) -> Result<()> {
    steps.step("build", || build::run(layout))?;
    steps.step("size", || size::run(layout))?;
    steps.step("lints for the browser", || {
        lints(
            layout,
            &["--package=notchwright-web", WASM, "--lib", "--test=*"],
        )?;
        lints(
            layout,
            &[
                "--package=notchwright-web",
                WASM,
                "--lib",
                "--no-default-features",
            ],
        )
    })
}

fn module(steps: &mut Steps, layout: &Layout) -> Result<()> {
    steps.step("the module's boundary in a browser", || {
        perform(
            cargo()
                .args(["test", "--locked", "--package=notchwright-web", WASM])
                .arg("--test=*")
                .env(
                    "CHROMEDRIVER",
                    tools::find("chromedriver").unwrap_or_default(),
                )
                .current_dir(&layout.root),
        )
    })?;
    steps.step("the module in Node", || {
        perform(
            Command::new("node")
                .args(["--test", "--test-reporter=spec"])
                .args(
                    ["module", "random", "fence"].map(|name| format!("tests/node/{name}.test.mjs")),
                )
                .current_dir(&layout.root),
        )
    })?;
    steps.step("the module's types", || {
        perform(
            Command::new("node")
                .arg(layout.npm().join("node_modules/typescript/bin/tsc"))
                .args(["--project", "tests/types"])
                .current_dir(&layout.root),
        )
    })
}

/// An engine that cannot be had here is named by the tests and left out; where `CI` is set they fail.
fn engines(layout: &Layout) -> Result<()> {
    let had = tools::ensure(&tools::ENGINES)
        .and_then(|()| tools::ensure_crate(layout, tools::GECKODRIVER));
    if let Err(error) = had {
        println!("not every engine can be had here: {error:#}");
    }
    browser_tests(layout, "engines")
}

/// Advisories are looked up where their list can be had; licences, sources and bans need no network.
fn deny(layout: &Layout) -> Result<()> {
    let program = tools::ensure_crate(layout, tools::CARGO_DENY)?;
    let check = |what: &[&str]| {
        let mut check = Command::new(&program);
        check
            .args(["--locked", "check", "--hide-inclusion-graph"])
            .args(what);
        check.current_dir(&layout.root);
        perform(&mut check)
    };
    check(&["licenses", "sources", "bans"])?;
    let mut fetch = Command::new(&program);
    fetch.args(["fetch", "db"]).current_dir(&layout.root);
    match perform(&mut fetch) {
        Ok(()) => check(&["advisories"]),
        Err(error) => {
            println!("advisories not looked up, their list cannot be had: {error:#}");
            Ok(())
        }
    }
}

fn browser_tests(layout: &Layout, test: &str) -> Result<()> {
    let mut test_page = cargo();
    if std::env::var_os("CI").is_some() {
        // Where the project is proven, no engine may be missing.
        test_page.env("NOTCHWRIGHT_ENGINES", "all");
    }
    perform(
        test_page
            .args([
                "test",
                "--locked",
                "--package=notchwright-tests",
                "--features=browser",
            ])
            .arg(format!("--test={test}"))
            .env("NOTCHWRIGHT_TARGET", &layout.target)
            // A failing path says what it waited for: a trace of the runtime under it says nothing.
            .env("RUST_LIB_BACKTRACE", "0")
            .current_dir(&layout.root),
    )
}

fn lints(layout: &Layout, what: &[&str]) -> Result<()> {
    perform(
        cargo()
            .args(["clippy", "--locked", "--quiet"])
            .args(what)
            .args(["--", "-D", "warnings"])
            .current_dir(&layout.root),
    )
}

fn in_root(layout: &Layout, args: &[&str]) -> Result<()> {
    perform(cargo().args(args).current_dir(&layout.root))
}
