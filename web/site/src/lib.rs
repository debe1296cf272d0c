//! A static file server for one folder, on this machine only.
//!
//! It answers `GET` and `HEAD`, one request a connection: once it is stopped nothing answers on
//! its port any more, which is what an honest test of working offline needs.

mod media_type;
mod request;
mod response;

use std::io::{self, BufReader};
use std::net::{Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread::{self, JoinHandle};
use std::time::Duration;

use request::Request;
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

fn accept(listener: &TcpListener, folder: &Arc<Path>, stopping: &AtomicBool) {
    for connection in listener.incoming() {
        if stopping.load(Ordering::SeqCst) {
            return;
        }
        let Ok(connection) = connection else { continue };
        let folder = Arc::clone(folder);
        // A caller that hangs up half-way is its own affair, not the server's.
        thread::spawn(move || answer(&connection, &folder).ok());
    }
}

fn answer(connection: &TcpStream, folder: &Path) -> io::Result<()> {
    connection.set_read_timeout(Some(PATIENCE))?;
    connection.set_write_timeout(Some(PATIENCE))?;
    let response = match Request::read(&mut BufReader::new(connection))? {
        Some(request) => respond(&request, folder),
        None => Response::refusal(400, "Bad Request"),
    };
    response.write(connection)
}

fn respond(request: &Request, folder: &Path) -> Response {
    let Some(path) = file_below(folder, &request.path) else {
        return Response::refusal(404, "Not Found");
    };
    match std::fs::read(&path) {
        Ok(body) => Response::file(&path, body, request.body_wanted),
        Err(_) => Response::refusal(404, "Not Found"),
    }
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
