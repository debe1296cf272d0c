//! A screen that nobody sees.

use std::io::{BufRead, BufReader};
use std::process::{Child, Stdio};

use anyhow::{Context, Result};

use super::engine::program;

/// A running X server without a monitor; dropping it ends it, and with it whatever it shows.
#[derive(Debug)]
pub(super) struct Screen {
    process: Child,
    name: String,
}

impl Screen {
    /// Starts one. It picks a number that is free, and says it once it is ready.
    pub(super) fn start() -> Result<Self> {
        let process = program("Xvfb")
            .args(["-displayfd", "1", "-nolisten", "tcp"])
            .args(["-screen", "0", "1280x1024x24"])
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .context("could not start Xvfb")?;
        let mut screen = Self {
            process,
            name: String::new(),
        };
        let said = screen.process.stdout.take().context("Xvfb says nothing")?;
        let mut number = String::new();
        BufReader::new(said).read_line(&mut number)?;
        anyhow::ensure!(!number.trim().is_empty(), "Xvfb found no screen to be");
        screen.name = format!(":{}", number.trim());
        Ok(screen)
    }

    /// What a program calls it.
    pub(super) fn name(&self) -> &str {
        &self.name
    }
}

impl Drop for Screen {
    fn drop(&mut self) {
        let _ = self.process.kill();
        let _ = self.process.wait();
    }
}
