//! The project's commands: `cargo xtask build`, `serve`, `test`, `size`, `bench` and
//! `lighthouse`.

mod args;
mod bench;
mod build;
mod bundle;
mod command;
mod compress;
mod fence;
mod layout;
mod lighthouse;
mod npm;
mod serve;
mod single;
mod size;
mod split;
mod steps;
mod styles;
mod test;
mod test_runner;
mod tools;
mod worker;

use std::process::ExitCode;

use args::Task;
use layout::Layout;

fn main() -> ExitCode {
    let task = match Task::parse(std::env::args_os().skip(1)) {
        Ok(task) => task,
        Err(problem) => {
            eprintln!("{problem}\n\n{}", args::USAGE);
            return ExitCode::from(2);
        }
    };
    match run(task) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("error: {error:#}");
            ExitCode::FAILURE
        }
    }
}

fn run(task: Task) -> anyhow::Result<()> {
    // The runner is called once a test file, and needs nothing of the layout.
    if let Task::TestRunner(args) = task {
        return test_runner::run(args);
    }
    let layout = Layout::find()?;
    match task {
        Task::Build => build::run(&layout),
        Task::Serve { port, build } => serve::run(&layout, port, build),
        Task::Test => test::run(&layout),
        Task::Size => size::run(&layout),
        Task::Bench => bench::run(&layout),
        Task::Lighthouse => lighthouse::run(&layout),
        Task::TestRunner(args) => test_runner::run(args),
    }
}
