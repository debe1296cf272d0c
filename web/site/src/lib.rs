//! A static file server for one folder, on this machine only.
//!
//! It answers `GET` and `HEAD` as a host would: connections are kept, what a browser has already is not sent again,
//! and what lies there compressed is sent so. Once it is stopped nothing answers on its port any more, which is
//! what an honest test of working offline needs.

mod media_type;
mod request;
mod response;

use std::fs;
use std::io::{self, BufReader};
use std::net::{Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread::{self, JoinHandle};
use std::time::Duration;

use request::{Call, Request};
use response::Response;

/// How long a connection may stay silent, in seconds, before it is dropped.
const PATIENCE: Duration = Duration::from_secs(10);

/// A running server; dropping it stops it.
#[derive(Debug)]
pub struct Site {
    address: SocketAddr,
    stopping: Arc<AtomicBool>,
    accepting: Option<JoinHandle<()>>,
}

impl Site {
    /// Serves `folder` on 127.0.0.1 at `port`; port 0 takes any free one.
    ///
    /// # Errors
    ///
    /// When the folder does not exist or the port is taken.
    pub fn start(folder: &Path, port: u16) -> io::Result<Self> {
        let folder: Arc<Path> = folder.canonicalize()?.into();
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, port))?;
        let address = listener.local_addr()?;
        let stopping = Arc::new(AtomicBool::new(false));
        let told = Arc::clone(&stopping);
        let accepting = thread::spawn(move || accept(&listener, &folder, &told));
        Ok(Self {
            address,
            stopping,
            accepting: Some(accepting),
        })
    }

    /// The port it listens on.
    #[must_use]
    pub fn port(&self) -> u16 {
        self.address.port()
    }

    /// The address of the page, with a slash at its end.
    #[must_use]
    pub fn url(&self) -> String {
        format!("http://{}/", self.address)
    }

    /// Waits for as long as the server runs.
    pub fn wait(mut self) {
        if let Some(accepting) = self.accepting.take() {
            // The accepting thread only ends early by a panic, which it has already reported.
            let _ = accepting.join();
        }
    }
}

impl Drop for Site {
    fn drop(&mut self) {
        let Some(accepting) = self.accepting.take() else {
            return;
        };
        self.stopping.store(true, Ordering::SeqCst);
        // The listener sleeps until somebody calls; a failed call means it is gone already.
        let _ = TcpStream::connect(self.address);
        let _ = accepting.join();
    }
}

fn accept(listener: &TcpListener, folder: &Arc<Path>, stopping: &Arc<AtomicBool>) {
    for connection in listener.incoming() {
        if stopping.load(Ordering::SeqCst) {
            return;
        }
        let Ok(connection) = connection else { continue };
        let (folder, stopping) = (Arc::clone(folder), Arc::clone(stopping));
        // A caller that hangs up half-way is its own affair, not the server's.
        thread::spawn(move || answer(&connection, &folder, &stopping).ok());
    }
}

/// Answers one request after the other, until the caller has no more or the server has been stopped.
fn answer(connection: &TcpStream, folder: &Path, stopping: &AtomicBool) -> io::Result<()> {
    connection.set_read_timeout(Some(PATIENCE))?;
    connection.set_write_timeout(Some(PATIENCE))?;
    let mut reader = BufReader::new(connection);
    loop {
        let call = Call::read(&mut reader)?;
        if stopping.load(Ordering::SeqCst) {
            return Ok(());
        }
        let (response, goes_on) = match call {
            Call::Asks(request) => (respond(&request, folder), request.goes_on),
            Call::Babbles => (Response::refusal("400 Bad Request"), false),
            Call::HungUp => return Ok(()),
        };
        response.write(connection, goes_on)?;
        if !goes_on {
            return Ok(());
        }
    }
}

fn respond(request: &Request, folder: &Path) -> Response {
    let missing = || Response::refusal("404 Not Found");
    let Some(path) = file_below(folder, &request.path) else {
        return missing();
    };
    let compressed = request
        .takes_brotli
        .then(|| fs::read(brotli_of(&path)).ok());
    if let Some(body) = compressed.flatten() {
        return Response::file(&path, body, true, request);
    }
    match fs::read(&path) {
        Ok(body) => Response::file(&path, body, false, request),
        Err(_) => missing(),
    }
}

/// Where a file lies that has been compressed by Brotli, if it has been: beside it, under its name and `.br`.
#[must_use]
pub fn brotli_of(file: &Path) -> PathBuf {
    let mut name = file.as_os_str().to_owned();
    name.push(".br");
    name.into()
}

/// The file that a decoded request path names, if it is a file inside the folder.
fn file_below(folder: &Path, path: &str) -> Option<PathBuf> {
    let mut file = folder.join(path.strip_prefix('/')?);
    if file.is_dir() {
        file.push("index.html");
    }
    let file = file.canonicalize().ok()?;
    (file.starts_with(folder) && file.is_file()).then_some(file)
}

#[cfg(test)]
mod tests;
