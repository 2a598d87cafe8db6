//! A small static server for this computer alone.

use std::fs;
use std::io::{ErrorKind, Read, Write};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::{Component, Path, PathBuf};
use std::sync::Arc;
use std::thread;
use std::time::Duration;

const PATIENCE: Duration = Duration::from_secs(10);
const LONGEST_HEAD: usize = 16 * 1024;

/// Opens the port on the loopback address.
pub fn listen(port: u16) -> Result<TcpListener, String> {
    TcpListener::bind((Ipv4Addr::LOCALHOST, port)).map_err(|error| {
        if error.kind() == ErrorKind::AddrInUse {
            let next = if port < u16::MAX { port + 1 } else { port - 1 };
            format!(
                "Port {port} is taken by another program, perhaps an earlier start of this one. \
                 Stop that one, or choose another port: cargo start --port {next}"
            )
        } else {
            format!("Port {port} can't be opened: {error}. Another may work: cargo start --port 9017")
        }
    })
}

/// Serves the folder until the program is ended.
pub fn forever(site: &Path, listener: TcpListener, port: u16) -> Result<(), String> {
    let site = site.canonicalize().map_err(|error| format!("target/site: {error}."))?;
    let site: Arc<Path> = Arc::from(site);
    println!("\nOutshot is at http://127.0.0.1:{port}/   (Ctrl+C ends it)");
    for stream in listener.incoming() {
        let Ok(stream) = stream else { continue };
        let site = Arc::clone(&site);
        thread::spawn(move || {
            // A browser that goes away mid-answer is no trouble of the server.
            converse(stream, &site).unwrap_or_default();
        });
    }
    Ok(())
}

fn converse(mut stream: TcpStream, site: &Path) -> std::io::Result<()> {
    stream.set_read_timeout(Some(PATIENCE))?;
    stream.set_write_timeout(Some(PATIENCE))?;
    let head = read_head(&mut stream)?;
    let answer = answer(&head, site);
    let mut text = format!("HTTP/1.1 {}\r\n", answer.status);
    text += &format!("Content-Type: {}\r\n", answer.kind);
    text += &format!("Content-Length: {}\r\n", answer.body.len());
    if answer.status == METHOD_REFUSED {
        text += "Allow: GET, HEAD\r\n";
    }
    text += "Cache-Control: no-cache\r\nX-Content-Type-Options: nosniff\r\nConnection: close\r\n\r\n";
    stream.write_all(text.as_bytes())?;
    if !head.starts_with("HEAD ") {
        stream.write_all(&answer.body)?;
    }
    stream.flush()
}

/// The request up to its empty line; a body, if any, is not read.
fn read_head(stream: &mut TcpStream) -> std::io::Result<String> {
    let mut head = Vec::new();
    let mut part = [0; 2048];
    while !head.windows(4).any(|four| four == b"\r\n\r\n") && head.len() < LONGEST_HEAD {
        let n_read = stream.read(&mut part)?;
        if n_read == 0 {
            break;
        }
        head.extend_from_slice(part.get(..n_read).unwrap_or_default());
    }
    Ok(String::from_utf8_lossy(&head).into_owned())
}

const METHOD_REFUSED: &str = "405 Method Not Allowed";

struct Answer {
    status: &'static str,
    kind: &'static str,
    body: Vec<u8>,
}

impl Answer {
    fn short(status: &'static str) -> Self {
        Self { status, kind: "text/plain; charset=utf-8", body: status.as_bytes().to_vec() }
    }
}

fn answer(head: &str, site: &Path) -> Answer {
    let mut words = head.split_whitespace();
    let (method, target) = (words.next().unwrap_or(""), words.next().unwrap_or(""));
    if !matches!(method, "GET" | "HEAD") {
        return Answer::short(METHOD_REFUSED);
    }
    let Some(relative) = relative_path(target) else {
        return Answer::short("400 Bad Request");
    };
    let mut file = site.join(relative);
    if file.is_dir() {
        file.push("index.html");
    }
    // Resolved once more, so that a link inside the folder leads nowhere else either.
    let inside = file.canonicalize().is_ok_and(|file| file.starts_with(site));
    match fs::read(&file) {
        Ok(body) if inside => Answer { status: "200 OK", kind: kind(&file), body },
        _ => Answer::short("404 Not Found"),
    }
}

/// The path below the site's folder that a request names; none if it would lead out of it.
fn relative_path(target: &str) -> Option<PathBuf> {
    let path = target.split(['?', '#']).next()?.strip_prefix('/')?;
    let path = PathBuf::from(percent_decoded(path)?);
    path.components().all(|part| matches!(part, Component::Normal(_))).then_some(path)
}

fn percent_decoded(text: &str) -> Option<String> {
    let mut bytes = Vec::with_capacity(text.len());
    let mut rest = text.bytes();
    while let Some(byte) = rest.next() {
        if byte == b'%' {
            let digits = [rest.next()?, rest.next()?];
            let digits = std::str::from_utf8(&digits).ok()?;
            bytes.push(u8::from_str_radix(digits, 16).ok()?);
        } else {
            bytes.push(byte);
        }
    }
    let text = String::from_utf8(bytes).ok()?;
    (!text.contains(['\0', '\\'])).then_some(text)
}

fn kind(file: &Path) -> &'static str {
    let extension = file.extension().unwrap_or_default().to_string_lossy();
    match extension.as_ref() {
        "html" => "text/html; charset=utf-8",
        "js" | "mjs" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "wasm" => "application/wasm",
        "json" => "application/json",
        "webmanifest" => "application/manifest+json",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "ico" => "image/x-icon",
        "woff2" => "font/woff2",
        "txt" => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_request_stays_inside_the_folder() {
        for target in [
            "/../Cargo.toml",
            "/a/../../b",
            "/%2e%2e/Cargo.toml",
            "/%2E%2E%2fCargo.toml",
            "//etc/passwd",
            "/..%5cCargo.toml",
            "/a%00.html",
            "/%zz",
            "/%",
            "index.html",
            "",
        ] {
            assert_eq!(relative_path(target), None, "{target}");
        }
    }

    #[test]
    fn ordinary_requests_are_understood() {
        assert_eq!(relative_path("/"), Some(PathBuf::new()));
        assert_eq!(relative_path("/fonts/a%20b.woff2?v=1"), Some(PathBuf::from("fonts/a b.woff2")));
    }

    #[test]
    fn only_reading_is_answered() {
        let root = Path::new(env!("CARGO_MANIFEST_DIR"));
        assert_eq!(answer("POST / HTTP/1.1\r\n\r\n", root).status, METHOD_REFUSED);
        assert_eq!(answer("", root).status, METHOD_REFUSED);
        let page = answer("GET /public/index.html HTTP/1.1\r\n\r\n", root);
        assert_eq!((page.status, page.kind), ("200 OK", "text/html; charset=utf-8"));
        let folder = answer("HEAD /public HTTP/1.1\r\n\r\n", root);
        assert_eq!(folder.body, page.body);
        assert_eq!(answer("GET /none HTTP/1.1\r\n\r\n", root).status, "404 Not Found");
    }

    #[test]
    fn wasm_has_the_type_that_browsers_insist_on() {
        assert_eq!(kind(Path::new("a.wasm")), "application/wasm");
        assert_eq!(kind(Path::new("m.webmanifest")), "application/manifest+json");
    }

    #[test]
    #[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    fn a_taken_port_names_the_way_out() {
        let held = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).unwrap();
        let why = listen(held.local_addr().unwrap().port()).unwrap_err();
        assert!(why.contains("--port"), "{why}");
    }
}
