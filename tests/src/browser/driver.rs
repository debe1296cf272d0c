//! The program that drives the browser.

use std::io::{Read, Write};
use std::net::{TcpListener, TcpStream};
use std::os::unix::process::CommandExt;
use std::process::{Child, Command, Stdio};
use std::time::Duration;

use anyhow::{Context, Result, bail};

use super::engine::Engine;

const TRIES: usize = 5;
/// How often a driver that has been started is asked whether it listens.
const PAUSE: Duration = Duration::from_millis(50);
const KNOCKS: usize = 400;

/// A running driver; dropping it ends it, and every browser that it started.
#[derive(Debug)]
pub(super) struct Driver {
    process: Child,
    engine: Engine,
    port: u16,
}

impl Driver {
    /// Starts one on a free port. It gives up when somebody else took the port in between: then it is started
    /// again.
    pub(super) fn start(engine: Engine) -> Result<Self> {
        let mut outcome = Self::start_once(engine);
        for _ in 1..TRIES {
            if outcome.is_ok() {
                break;
            }
            outcome = Self::start_once(engine);
        }
        outcome
    }

    fn start_once(engine: Engine) -> Result<Self> {
        let port = free_port()?;
        let process = engine
            .driver(port)
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            // With all that it starts, it is ended as one.
            .process_group(0)
            .spawn()
            .with_context(|| format!("could not start the driver of {engine:?}"))?;
        let mut driver = Self {
            process,
            engine,
            port,
        };
        driver.wait_until_it_listens()?;
        Ok(driver)
    }

    fn wait_until_it_listens(&mut self) -> Result<()> {
        for _ in 0..KNOCKS {
            if TcpStream::connect(("127.0.0.1", self.port)).is_ok() {
                return Ok(());
            }
            if let Some(status) = self.process.try_wait()? {
                bail!("the driver of {:?} ended with {status}", self.engine);
            }
            std::thread::sleep(PAUSE);
        }
        bail!("the driver of {:?} does not listen", self.engine)
    }

    /// Where it listens.
    pub(super) fn url(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }

    /// Asks Chromium's driver to close its browsers and end. It hangs up when it has.
    fn shut_down(&self) -> std::io::Result<()> {
        let mut connection = TcpStream::connect(("127.0.0.1", self.port))?;
        connection.set_read_timeout(Some(Duration::from_secs(5)))?;
        connection.write_all(b"GET /shutdown HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n")?;
        connection.read_to_end(&mut Vec::new())?;
        Ok(())
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        // What the other drivers start is in their group; Chromium makes groups of its own.
        let is_down = self.engine == Engine::Chromium && self.shut_down().is_ok();
        if !is_down {
            let group = format!("-{}", self.process.id());
            let _ = Command::new("kill").args(["-TERM", "--", &group]).status();
        }
        let _ = self.process.wait();
    }
}

fn free_port() -> Result<u16> {
    let listener = TcpListener::bind(("127.0.0.1", 0)).context("no free port")?;
    Ok(listener.local_addr()?.port())
}
