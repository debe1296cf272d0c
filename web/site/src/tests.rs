use std::fs;
use std::io::{Read, Write};
use std::net::TcpStream;
use std::path::PathBuf;

use super::Site;

/// A folder `site` to serve, with a file beside it that must stay out of reach.
fn folder(name: &str) -> PathBuf {
    let top = std::env::temp_dir().join(format!("notchwright-site-{}-{name}", std::process::id()));
    let site = top.join("site");
    fs::create_dir_all(site.join("pkg")).unwrap();
    fs::write(site.join("index.html"), "<p>page").unwrap();
    fs::write(site.join("pkg/a.wasm"), [0, 97, 115, 109]).unwrap();
    fs::write(top.join("secret.txt"), "secret").unwrap();
    site
}

/// Asks once, with the headers in `request` after its first line if it has any, and hears all of the answer.
fn ask(port: u16, request: &str) -> String {
    let mut connection = TcpStream::connect(("127.0.0.1", port)).unwrap();
    write!(
        connection,
        "{request} HTTP/1.1\r\nHost: here\r\nConnection: close\r\n\r\n"
    )
    .unwrap();
    let mut reply = Vec::new();
    connection.read_to_end(&mut reply).unwrap();
    String::from_utf8_lossy(&reply).into_owned()
}

#[test]
fn files_come_with_their_type() {
    let site = Site::start(&folder("types"), 0).unwrap();
    let page = ask(site.port(), "GET /?job=1");
    assert!(page.starts_with("HTTP/1.1 200 OK"), "{page}");
    assert!(
        page.contains("Content-Type: text/html; charset=utf-8"),
        "{page}"
    );
    assert!(page.ends_with("<p>page"), "{page}");
    assert!(ask(site.port(), "GET /pkg/a.wasm").contains("Content-Type: application/wasm"));
}

#[test]
fn a_head_request_gets_the_length_and_no_body() {
    let site = Site::start(&folder("head"), 0).unwrap();
    let reply = ask(site.port(), "HEAD /index.html");
    assert!(reply.contains("Content-Length: 7"), "{reply}");
    assert!(reply.ends_with("\r\n\r\n"), "{reply}");
}

#[test]
fn nothing_outside_the_folder_is_served() {
    let site = Site::start(&folder("outside"), 0).unwrap();
    for path in [
        "/../secret.txt",
        "/%2e%2e/secret.txt",
        "/pkg/../../secret.txt",
        "//etc/hostname",
        "/missing",
        "/pkg",
    ] {
        let reply = ask(site.port(), &format!("GET {path}"));
        assert!(reply.starts_with("HTTP/1.1 404"), "{path}: {reply}");
    }
}

#[test]
fn what_lies_there_compressed_is_sent_so() {
    let folder = folder("brotli");
    fs::write(folder.join("index.html.br"), "short").unwrap();
    let site = Site::start(&folder, 0).unwrap();
    let reply = ask(
        site.port(),
        "GET / HTTP/1.1\r\nAccept-Encoding: gzip, br\r\nX:",
    );
    assert!(reply.contains("Content-Encoding: br"), "{reply}");
    assert!(
        reply.contains("Content-Type: text/html; charset=utf-8"),
        "{reply}"
    );
    assert!(reply.ends_with("\r\n\r\nshort"), "{reply}");
    for plain in [
        "GET /",
        "GET / HTTP/1.1\r\nAccept-Encoding: gzip\r\nX:",
        "GET /pkg/a.wasm HTTP/1.1\r\nAccept-Encoding: br\r\nX:",
    ] {
        let reply = ask(site.port(), plain);
        assert!(reply.starts_with("HTTP/1.1 200 OK"), "{plain}: {reply}");
        assert!(!reply.contains("Content-Encoding"), "{plain}: {reply}");
    }
}

#[test]
fn what_is_known_already_is_not_sent_again() {
    let folder = folder("known");
    let site = Site::start(&folder, 0).unwrap();
    let reply = ask(site.port(), "GET /");
    let (_, rest) = reply.split_once("ETag: ").unwrap();
    let (tag, _) = rest.split_once("\r\n").unwrap();
    let again = format!("GET / HTTP/1.1\r\nIf-None-Match: {tag}\r\nX:");
    let reply = ask(site.port(), &again);
    assert!(reply.starts_with("HTTP/1.1 304 Not Modified"), "{reply}");
    assert!(reply.ends_with("\r\n\r\n"), "{reply}");
    fs::write(folder.join("index.html"), "<p>next").unwrap();
    assert!(ask(site.port(), &again).ends_with("<p>next"));
}

/// Reads one answer whose body ends with `end`, and leaves the connection open.
fn hear(connection: &mut TcpStream, end: &str) {
    let mut reply = String::new();
    while !reply.ends_with(end) {
        let mut bytes = [0; 1024];
        let count = connection.read(&mut bytes).unwrap();
        assert!(count > 0, "{reply}");
        reply += std::str::from_utf8(&bytes[..count]).unwrap();
    }
}

#[test]
fn a_connection_is_kept_until_the_server_stops() {
    let site = Site::start(&folder("kept"), 0).unwrap();
    let mut connection = TcpStream::connect(("127.0.0.1", site.port())).unwrap();
    let request = "GET / HTTP/1.1\r\nHost: here\r\n\r\n";
    for _ in 0..2 {
        connection.write_all(request.as_bytes()).unwrap();
        hear(&mut connection, "<p>page");
    }
    drop(site);
    connection.write_all(request.as_bytes()).unwrap();
    let mut reply = Vec::new();
    // It may hang up at once, or by a reset.
    let _ = connection.read_to_end(&mut reply);
    assert!(reply.is_empty());
}

#[test]
fn once_stopped_nobody_answers() {
    let site = Site::start(&folder("stop"), 0).unwrap();
    let port = site.port();
    assert!(ask(port, "GET /").contains("200 OK"));
    drop(site);
    assert!(TcpStream::connect(("127.0.0.1", port)).is_err());
}
