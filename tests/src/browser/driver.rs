//! The program that drives the browser.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::process::{Child, Command, Stdio};
use std::time::Duration;

use anyhow::{Context, Result, bail};

const TRIES: usize = 5;

/// A running chromedriver; dropping it ends it, and every browser that it started.
#[derive(Debug)]
pub(super) struct Driver {
    process: Child,
    port: u16,
}

impl Driver {
    /// Starts one on a free port. It takes its port twice, for each of two protocols, and gives up when
    /// somebody else had it in between: then it is started again.
    pub(super) fn start() -> Result<Self> {
        let mut outcome = Self::start_once();
        for _ in 1..TRIES {
            if outcome.is_ok() {
                break;
            }
            outcome = Self::start_once();
        }
        outcome
    }

    fn start_once() -> Result<Self> {
        let mut process = Command::new("chromedriver")
            .arg("--port=0")
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .context("could not start chromedriver")?;
        let said = process.stdout.take().context("chromedriver says nothing")?;
        let mut lines = BufReader::new(said).lines().map_while(Result::ok);
        match lines.find_map(|line| port_in(&line)) {
            Some(port) => Ok(Self { process, port }),
            None => {
                let status = process.wait()?;
                bail!("chromedriver ended with {status} before it said its port")
            }
        }
    }

    /// Where it listens.
    pub(super) fn url(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }

    /// Asks it to close its browsers and end. It hangs up when it has.
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
        // Ended the hard way it would leave its browser behind: that is the last resort.
        if self.shut_down().is_err() {
            let _ = self.process.kill();
        }
        let _ = self.process.wait();
    }
}

fn port_in(line: &str) -> Option<u16> {
    let (_, port) = line.rsplit_once("started successfully on port ")?;
    port.trim_end_matches('.').parse().ok()
}

#[cfg(test)]
mod tests {
    use super::port_in;

    #[test]
    fn the_port_is_read_from_what_the_driver_says() {
        let line = "ChromeDriver was started successfully on port 40123.";
        assert_eq!(port_in(line), Some(40123));
        assert_eq!(port_in("Only local connections are allowed."), None);
    }
}
