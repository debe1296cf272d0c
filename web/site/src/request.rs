//! The part of a request that decides which file is sent.

use std::io::{self, BufRead, Read};

/// The longest request, in bytes, that is read.
const LONGEST: u64 = 64 * 1024;

/// A `GET` or `HEAD` request.
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct Request {
    /// The path, percent signs decoded, without the query.
    pub(crate) path: String,
    /// Whether the file itself is asked for, or only what is known of it.
    pub(crate) body_wanted: bool,
}

impl Request {
    /// Reads one request with its headers; `None` for one that is not understood.
    pub(crate) fn read(from: &mut impl BufRead) -> io::Result<Option<Self>> {
        let mut from = from.take(LONGEST);
        let mut first = String::new();
        from.read_line(&mut first)?;
        let mut header = String::new();
        while from.read_line(&mut header)? > 2 {
            header.clear();
        }
        Ok(Self::parse(&first))
    }

    fn parse(first_line: &str) -> Option<Self> {
        let mut words = first_line.split_whitespace();
        let body_wanted = match words.next()? {
            "GET" => true,
            "HEAD" => false,
            _ => return None,
        };
        let target = words.next()?;
        let path = target.split_once('?').map_or(target, |(path, _)| path);
        Some(Self {
            path: decode(path)?,
            body_wanted,
        })
    }
}

/// Undoes percent-encoding; `None` where a percent sign leads nowhere or the bytes are no text.
fn decode(path: &str) -> Option<String> {
    let mut bytes = Vec::with_capacity(path.len());
    let mut rest = path.bytes();
    while let Some(byte) = rest.next() {
        if byte == b'%' {
            let high = char::from(rest.next()?).to_digit(16)?;
            let low = char::from(rest.next()?).to_digit(16)?;
            bytes.push(u8::try_from(high * 16 + low).ok()?);
        } else {
            bytes.push(byte);
        }
    }
    String::from_utf8(bytes).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_query_is_left_out_and_the_path_decoded() {
        let request = Request::parse("GET /a%20b.css?x=1%2F HTTP/1.1\r\n").unwrap();
        assert_eq!(request.path, "/a b.css");
        assert!(request.body_wanted);
    }

    #[test]
    fn other_requests_are_not_understood() {
        for line in [
            "",
            "GET",
            "POST / HTTP/1.1",
            "GET /%zz HTTP/1.1",
            "GET /%ff HTTP/1.1",
        ] {
            assert_eq!(Request::parse(line), None, "{line:?}");
        }
    }
}
