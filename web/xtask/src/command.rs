//! Other programs, run and judged.

use std::ffi::OsStr;
use std::process::{Command, Stdio};

use anyhow::{Context, Result, bail};

/// The Cargo that started this program.
pub(crate) fn cargo() -> Command {
    Command::new(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()))
}

/// Runs a program with its output passed on; fails when it fails.
pub(crate) fn perform(command: &mut Command) -> Result<()> {
    let status = command
        .status()
        .with_context(|| format!("could not start `{}`", line(command)))?;
    if !status.success() {
        bail!("`{}` ended with {status}", line(command));
    }
    Ok(())
}

/// Runs a program and returns what it printed; fails when it fails.
pub(crate) fn output(command: &mut Command) -> Result<String> {
    let output = command
        .stderr(Stdio::inherit())
        .output()
        .with_context(|| format!("could not start `{}`", line(command)))?;
    if !output.status.success() {
        bail!("`{}` ended with {}", line(command), output.status);
    }
    String::from_utf8(output.stdout).with_context(|| format!("`{}` printed no text", line(command)))
}

/// The command as one would type it.
pub(crate) fn line(command: &Command) -> String {
    std::iter::once(command.get_program())
        .chain(command.get_args())
        .map(OsStr::to_string_lossy)
        .collect::<Vec<_>>()
        .join(" ")
}
