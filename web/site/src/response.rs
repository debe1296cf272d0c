//! What is sent back.

use std::io::{self, Write};
use std::path::Path;

use crate::media_type;

/// One whole answer.
#[derive(Debug)]
pub(crate) struct Response {
    status: u16,
    reason: &'static str,
    media_type: &'static str,
    length: usize,
    body: Vec<u8>,
}

impl Response {
    /// The file's bytes, or only their number.
    pub(crate) fn file(path: &Path, body: Vec<u8>, body_wanted: bool) -> Self {
        Self {
            status: 200,
            reason: "OK",
            media_type: media_type::of(path),
            length: body.len(),
            body: if body_wanted { body } else { Vec::new() },
        }
    }

    /// A plain sentence instead of a file.
    pub(crate) fn refusal(status: u16, reason: &'static str) -> Self {
        Self {
            status,
            reason,
            media_type: "text/plain; charset=utf-8",
            length: reason.len(),
            body: reason.into(),
        }
    }

    /// Sends it and says that the connection ends here.
    pub(crate) fn write(&self, mut to: impl Write) -> io::Result<()> {
        // Whoever builds and reloads wants the new files: let the browser ask each time.
        write!(
            to,
            "HTTP/1.1 {} {}\r\nContent-Type: {}\r\nContent-Length: {}\r\nCache-Control: no-cache\r\n\
             X-Content-Type-Options: nosniff\r\nConnection: close\r\n\r\n",
            self.status, self.reason, self.media_type, self.length
        )?;
        to.write_all(&self.body)?;
        to.flush()
    }
}
