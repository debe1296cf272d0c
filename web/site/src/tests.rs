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

fn ask(port: u16, request: &str) -> String {
    let mut connection = TcpStream::connect(("127.0.0.1", port)).unwrap();
    write!(connection, "{request} HTTP/1.1\r\nHost: here\r\n\r\n").unwrap();
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
fn once_stopped_nobody_answers() {
    let site = Site::start(&folder("stop"), 0).unwrap();
    let port = site.port();
    assert!(ask(port, "GET /").contains("200 OK"));
    drop(site);
    assert!(TcpStream::connect(("127.0.0.1", port)).is_err());
}
