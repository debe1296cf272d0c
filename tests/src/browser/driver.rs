//! The program that drives the browser.

use std::io::{Error, Read, Write};
use std::net::{TcpListener, TcpStream};
use std::os::unix::process::CommandExt;
use std::process::{Child, Command, Stdio};
use std::time::Duration;

use anyhow::{Context, Result, bail};

use super::engine::Engine;
use super::said::Said;
use super::screen::Screen;

const TRIES: usize = 5;
/// How often a driver that has been started is asked whether it listens.
const PAUSE: Duration = Duration::from_millis(50);
const KNOCKS: usize = 400;
/// How long a browser may take to close.
const FAREWELL: Duration = Duration::from_secs(10);

/// A running driver; dropping it ends it, and every browser that it started.
#[derive(Debug)]
pub(super) struct Driver {
    process: Child,
    engine: Engine,
    port: u16,
    said: Said,
    session: Option<String>,
    // Last: its end would be the browser's.
    _screen: Option<Screen>,
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
        let screen = engine.needs_screen().then(Screen::start).transpose()?;
        let mut command = engine.driver(port);
        if let Some(screen) = &screen {
            command.env("DISPLAY", screen.name());
        }
        let mut process = command
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            // With all that it starts, it is ended as one.
            .process_group(0)
            .spawn()
            .with_context(|| format!("could not start the driver of {engine:?}"))?;
        let mut driver = Self {
            said: Said::by(&mut process),
            process,
            engine,
            port,
            session: None,
            _screen: screen,
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

    /// Knows the session that it has to end.
    pub(super) fn serve(&mut self, session: Option<String>) {
        self.session = session;
    }

    /// Where it listens.
    pub(super) fn url(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }

    /// Takes the lines that it and its browser have written since it was last asked.
    pub(super) fn said(&self) -> impl Iterator<Item = String> {
        self.said.take()
    }

    /// Asks it to close its browser: a browser that is killed leaves its profile behind.
    fn close_browser(&self) -> std::io::Result<()> {
        match &self.session {
            _ if self.engine == Engine::Chromium => self.ask("GET /shutdown"),
            Some(session) => self.ask(&format!("DELETE /session/{session}")),
            None => Ok(()),
        }
    }

    /// It hangs up when it has done what it was asked.
    fn ask(&self, what: &str) -> Result<(), Error> {
        let mut connection = TcpStream::connect(("127.0.0.1", self.port))?;
        connection.set_read_timeout(Some(FAREWELL))?;
        let request = format!("{what} HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n");
        connection.write_all(request.as_bytes())?;
        connection.read_to_end(&mut Vec::new())?;
        Ok(())
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        // Chromium makes groups of its own, so its driver must not be killed first; it ends by itself.
        let is_closed = self.close_browser().is_ok();
        if !(is_closed && self.engine == Engine::Chromium) {
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
