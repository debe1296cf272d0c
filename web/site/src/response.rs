//! What is sent back.

use std::hash::{DefaultHasher, Hasher};
use std::io::{self, Write};
use std::path::Path;

use crate::media_type;
use crate::request::Request;

/// One whole answer.
#[derive(Debug)]
pub(crate) struct Response {
    status: &'static str,
    media_type: &'static str,
    is_brotli: bool,
    /// Another for other bytes; none for what is no file.
    tag: Option<String>,
    length: usize,
    body: Vec<u8>,
}

impl Response {
    /// The file's bytes, or only what is known of them, or that the caller has them already.
    pub(crate) fn file(path: &Path, body: Vec<u8>, is_brotli: bool, request: &Request) -> Self {
        let tag = tag(&body);
        let is_known = request.known.contains(&tag);
        Self {
            status: if is_known {
                "304 Not Modified"
            } else {
                "200 OK"
            },
            media_type: media_type::of(path),
            is_brotli,
            tag: Some(tag),
            length: body.len(),
            body: if request.body_wanted && !is_known {
                body
            } else {
                Vec::new()
            },
        }
    }

    /// A plain sentence instead of a file.
    pub(crate) fn refusal(status: &'static str) -> Self {
        Self {
            status,
            media_type: "text/plain; charset=utf-8",
            is_brotli: false,
            tag: None,
            length: status.len(),
            body: status.into(),
        }
    }

    /// Sends it, and says whether the connection ends here.
    pub(crate) fn write(&self, mut to: impl Write, goes_on: bool) -> io::Result<()> {
        // Names stay the same from version to version: the browser has to ask, and is told if it knows already.
        let mut head = format!(
            "HTTP/1.1 {}\r\nContent-Type: {}\r\nContent-Length: {}\r\nCache-Control: no-cache\r\n\
             Vary: Accept-Encoding\r\nX-Content-Type-Options: nosniff\r\n",
            self.status, self.media_type, self.length
        );
        if self.is_brotli {
            head += "Content-Encoding: br\r\n";
        }
        if let Some(tag) = &self.tag {
            head += &format!("ETag: {tag}\r\n");
        }
        if !goes_on {
            head += "Connection: close\r\n";
        }
        head += "\r\n";
        // In one go: a second small packet would wait until the first is acknowledged.
        to.write_all(&[head.as_bytes(), &self.body].concat())?;
        to.flush()
    }
}

fn tag(body: &[u8]) -> String {
    let mut hasher = DefaultHasher::new();
    hasher.write(body);
    format!("\"{:016x}\"", hasher.finish())
}
