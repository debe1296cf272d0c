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

/// How often a driver that has been started is asked whether it listens.
const PAUSE: Duration = Duration::from_millis(50);
const KNOCKS: usize = 400;
/// How long a driver may take over what it is asked, such as closing its browser.
const ANSWER: Duration = Duration::from_secs(10);

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
    /// Starts one, and waits until it answers.
    pub(super) fn start(engine: Engine) -> Result<Self> {
        let port = if engine.picks_port() { 0 } else { free_port()? };
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
        driver.wait_until_it_answers()?;
        Ok(driver)
    }

    fn wait_until_it_answers(&mut self) -> Result<()> {
        let mut said = Vec::new();
        for _ in 0..KNOCKS {
            said.extend(self.said());
            if self.port == 0 {
                let port = said.iter().find_map(|line| self.engine.port(line));
                self.port = port.unwrap_or_default();
            }
            let answers = self.port != 0 && self.ask("GET /status").is_ok();
            // One that has ended may have left its port to somebody who answers.
            if let Some(status) = self.process.try_wait()? {
                said.extend(self.said());
                bail!("{:?}'s driver ended with {status}: {said:#?}", self.engine);
            }
            if answers {
                return Ok(());
            }
            std::thread::sleep(PAUSE);
        }
        bail!("{:?}'s driver does not answer: {said:#?}", self.engine)
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

    /// It answers when it has done what it was asked, and need not hang up.
    fn ask(&self, what: &str) -> Result<(), Error> {
        let mut connection = TcpStream::connect(("127.0.0.1", self.port))?;
        connection.set_read_timeout(Some(ANSWER))?;
        let request = format!("{what} HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n");
        connection.write_all(request.as_bytes())?;
        connection.read_exact(&mut [0])?;
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
