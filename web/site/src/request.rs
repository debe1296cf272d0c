//! The part of a request that decides what is sent.

use std::io::{self, BufRead, Read};

/// The longest request, in bytes, that is read.
const LONGEST: u64 = 64 * 1024;

/// What a caller sends.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum Call {
    /// A request that is understood.
    Asks(Request),
    /// Anything else.
    Babbles,
    /// Nothing more.
    HungUp,
}

/// A `GET` or `HEAD` request.
#[derive(Debug, Default, PartialEq, Eq)]
pub(crate) struct Request {
    /// The path, percent signs decoded, without the query.
    pub(crate) path: String,
    /// Whether the file itself is asked for, or only what is known of it.
    pub(crate) body_wanted: bool,
    /// Whether it may come compressed by Brotli.
    pub(crate) takes_brotli: bool,
    /// The tags of what the caller has already, as it sent them.
    pub(crate) known: String,
    /// Whether the caller has more to ask.
    pub(crate) goes_on: bool,
}

impl Call {
    /// Reads one request with its headers.
    pub(crate) fn read(from: &mut impl BufRead) -> io::Result<Self> {
        let mut from = from.take(LONGEST);
        let mut first = String::new();
        if from.read_line(&mut first)? == 0 {
            return Ok(Self::HungUp);
        }
        let mut request = Request::parse(&first);
        let mut header = String::new();
        while from.read_line(&mut header)? > 2 {
            if let (Some(request), Some((name, value))) = (&mut request, header.split_once(':')) {
                request.heed(&name.to_ascii_lowercase(), value.trim());
            }
            header.clear();
        }
        Ok(request.map_or(Self::Babbles, Self::Asks))
    }
}

impl Request {
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
            goes_on: words.next() == Some("HTTP/1.1"),
            ..Self::default()
        })
    }

    fn heed(&mut self, name: &str, value: &str) {
        match name {
            "accept-encoding" => self.takes_brotli = value.split(',').any(|it| it.trim() == "br"),
            "if-none-match" => value.clone_into(&mut self.known),
            "connection" => self.goes_on &= !value.eq_ignore_ascii_case("close"),
            _ => {}
        }
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

    fn read(text: &str) -> Call {
        Call::read(&mut text.as_bytes()).unwrap()
    }

    #[test]
    fn the_query_is_left_out_and_the_path_decoded() {
        let plain = Request {
            path: "/a b.css".to_owned(),
            body_wanted: true,
            goes_on: true,
            ..Request::default()
        };
        let call = read("GET /a%20b.css?x=1%2F HTTP/1.1\r\nHost: here\r\n\r\n");
        assert_eq!(call, Call::Asks(plain));
    }

    #[test]
    fn headers_that_matter_are_heeded() {
        let call = read(
            "HEAD / HTTP/1.1\r\nACCEPT-Encoding: gzip, br\r\nIf-None-Match: \"a\"\r\nConnection: Close\r\n\r\n",
        );
        let all = Request {
            path: "/".to_owned(),
            takes_brotli: true,
            known: "\"a\"".to_owned(),
            ..Request::default()
        };
        assert_eq!(call, Call::Asks(all));
    }

    #[test]
    fn other_requests_are_not_understood() {
        for line in [
            "\r\n",
            "GET\r\n",
            "POST / HTTP/1.1\r\n",
            "GET /%zz HTTP/1.1\r\n",
            "GET /%ff HTTP/1.1\r\n",
        ] {
            assert_eq!(read(line), Call::Babbles, "{line:?}");
        }
        assert_eq!(read(""), Call::HungUp);
    }
}
