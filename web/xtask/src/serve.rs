//! `cargo xtask serve`: the built page on this machine.

use anyhow::{Context, Result};
use notchwright_site::Site;

use crate::build;
use crate::layout::Layout;

/// Serves `dist/` until it is interrupted.
pub(crate) fn run(layout: &Layout, port: u16, build_first: bool) -> Result<()> {
    if build_first {
        build::run(layout)?;
    }
    let site = Site::start(&layout.dist(), port)
        .with_context(|| format!("could not serve {} on port {port}", layout.dist().display()))?;
    println!("Open {}", site.url());
    println!("Stop with Ctrl+C");
    site.wait();
    Ok(())
}
